"""A product in water: a mixture again; what was measured on the concentrate is kept where that is safe.

Sources: percent by weight from parts by volume by the density; water 1 kg/l (common practice, no source).
Dilution with water does not lower the flammable category unless somebody measured (CLP Annex I 2.6, from
memory), so the flash point stays the concentrate's.
"""

from dataclasses import dataclass, replace

from safety.hazards.mixtures.fields import above_zero, number
from safety.hazards.mixtures.values import Ingredient, Mixture

ACID, BASE = 2.0, 11.5
THIN = 14.0  # mm²/s at 40 °C: below it every regime's aspiration limit is met, and water is thinner still


@dataclass(frozen=True)
class Dilution(Mixture):
    """A mixture with water. `assumptions` say, a sentence each, what was not measured on it."""

    assumptions: tuple[str, ...] = ()


def diluted(
    mixture: Mixture, parts_product: float, parts_water: float, product_density_kg_l: float | None = None
) -> Dilution:
    """Return the mixture of parts by volume of a product and of water.

    product_density_kg_l None counts as 1 kg/l, and the result says so. Raises MixtureError for parts or a
    density that are no amounts.
    """
    product = above_zero(parts_product, "Parts of product")
    water = number(parts_water, "Parts of water", 0, 1e12)
    density = 1.0 if product_density_kg_l is None else above_zero(product_density_kg_l, "Density")
    known = () if product_density_kg_l is not None or not water else (
        "The product's density is not known: 1 part by volume counted as 1 part by weight (1 kg/l).",
    )  # fmt: skip
    weight = product * density
    thick = mixture.viscosity_mm2_s_40c is not None and mixture.viscosity_mm2_s_40c > THIN
    return Dilution(
        form=mixture.form,
        ingredients=tuple(thinned(one, weight, water) for one in mixture.ingredients),
        ph=mixture.ph,
        flash_point_c=mixture.flash_point_c,
        boiling_point_c=mixture.boiling_point_c,
        viscosity_mm2_s_40c=None if thick and water else mixture.viscosity_mm2_s_40c,
        assumptions=(*getattr(mixture, "assumptions", ()), *known, *(kept(mixture) if water else ())),
    )


def thinned(one: Ingredient, weight: float, water: float) -> Ingredient:
    """Return an ingredient at its share of product and water by weight."""
    whole = weight + water
    return replace(one, percent=one.percent * weight / whole, least=one.least * weight / whole)


def kept(mixture: Mixture) -> tuple[str, ...]:
    """Return what stays as measured on the concentrate, a sentence each."""
    said = []
    if mixture.ph is not None and (mixture.ph <= ACID or mixture.ph >= BASE):
        said.append(f"pH {mixture.ph:g} is the concentrate's: it is kept until the dilution's is measured.")
    if mixture.flash_point_c is not None and mixture.flash_point_c <= 93:
        said.append(
            f"Flash point {mixture.flash_point_c:g} °C is the concentrate's: water lowers no flammable "
            "category until the dilution's is measured."
        )
    return tuple(said)
