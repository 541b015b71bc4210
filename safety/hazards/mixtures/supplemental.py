"""EU statements beside the classes, each with its condition; other regimes know none of them.

Source: CLP Annex II, consolidation of 1 Sep 2025. Where the law gives no limit one is chosen here and marked
M: EUH066 sums to 10 % like skin irritants; EUH014, EUH029, EUH031 and EUH032 of an ingredient without a limit
of its own stand from 1 %, and below it are asked. What no rule here knows is asked, too.
"""

import math
from collections.abc import Callable, Iterator

from safety.hazards.mixtures.limits import reaches
from safety.hazards.mixtures.naming import data_sheet, epoxies, isocyanates, sensitisers
from safety.hazards.mixtures.values import Because, Found, Ingredient, Mixture

MAY_BE_BREATHED = ("spray", "aerosol", "gas", "")
DRIES_FROM, REACTS_FROM, CHLORINE_ABOVE = 10.0, 1.0, 1.0
REACTIONS = {
    "EUH014": ("CLP Annex II 1.1, from memory", "M"),
    "EUH029": ("CLP Annex II 1.2.1, from memory", "M"),
    "EUH031": ("CLP Annex II 1.2.2 and the substance's own limit", "S"),
    "EUH032": ("CLP Annex II 1.2.3 and the substance's own limit", "S"),
}
KNOWN = (*REACTIONS, "EUH066", "EUH071", "EUH204", "EUH205", "EUH206", "EUH208", "EUH210")
Statement = Callable[[Mixture, tuple[str, ...]], Iterator[Because]]


def supplemental(mixture: Mixture, regime: str, found_so_far: tuple[str, ...]) -> Found:
    """Return the statements that stand beside the classes found, and what must be asked."""
    if regime != "EU":
        return Found(needs_review=tuple(gas_with_water(mixture)) if regime == "CA" else ())
    because = [reason for statement in STATEMENTS for reason in statement(mixture, found_so_far)]
    return Found(
        because=tuple(because),
        needs_review=(*unreckoned(mixture), *strange(mixture)),
        supplemental=tuple(dict.fromkeys(one.hazard for one in because)),
    )


def carries(one: Ingredient, code: str) -> bool:
    """Return whether an ingredient has a statement, in its list or in its limits."""
    return one.percent > 0 and (code in one.supplemental or own(one, code) is not None)


def own(one: Ingredient, code: str) -> float | None:
    """Return the ingredient's own limit for a statement, None where it has none."""
    return min((limit.from_percent for limit in one.limits if limit.hazard == code), default=None)


def summed(mixture: Mixture, code: str, generic: float) -> tuple[list[dict[str, object]], float]:
    """Return the ingredients that carry a statement and Σ Ci over their own, else the generic limit."""
    carrying = [one for one in mixture.ingredients if carries(one, code)]
    at = {id(one): generic if (limit := own(one, code)) is None else limit for one in carrying}
    rows: list[dict[str, object]] = [
        {"name": one.name, "percent": one.percent, "limit": at[id(one)]} for one in carrying
    ]
    total = math.fsum(one.percent / at[id(one)] if at[id(one)] else 1.0 for one in carrying)
    return rows, total


def reactions(mixture: Mixture, found: tuple[str, ...]) -> Iterator[Because]:
    """Yield EUH014, 029, 031, 032 from the substances' own limits, else from 1 %, which is our choice."""
    for code, (source, mark) in REACTIONS.items():
        rows, total = summed(mixture, code, REACTS_FROM)
        if not rows or not reaches(total, 1.0):
            continue
        chosen = any(own(one, code) is None for one in mixture.ingredients if carries(one, code))
        rule = f"Σ Ci/limit of what carries {code} reaches 1"
        rule += "; 1 % where no limit is known is our choice" if chosen else ""
        yield Because(code, rule, source, "M" if chosen else mark, {"counted": rows, "shares": total})


def dry_skin(mixture: Mixture, found: tuple[str, ...]) -> Iterator[Because]:
    """Yield EUH066, never beside a skin irritant or corrosive class."""
    rows, total = summed(mixture, "EUH066", DRIES_FROM)
    harmed = any(text.startswith(("Skin Corr.", "Skin Irrit.")) for text in found)
    if rows and reaches(total, 1.0) and not harmed:
        rule = "ingredients that dry the skin sum to 10 % (no limit in law: our choice), no skin class beside"
        source = "CLP Annex II 1.2.4; the limit is ours"
        yield Because("EUH066", rule, source, "M", {"counted": rows, "shares": total})


def corrodes_airways(mixture: Mixture, found: tuple[str, ...]) -> Iterator[Because]:
    """Yield EUH071: a corrosive mixture that may be breathed, or toxicity by breathing that is corrosion."""
    burns = any(text.startswith("Skin Corr.") for text in found)
    toxic = any(text.startswith("Acute Tox.") and "H33" in text for text in found)
    named = [one.name for one in mixture.ingredients if carries(one, "EUH071")]
    numbers: dict[str, object] = {"form": mixture.form or "not given", "named_by": named}
    if burns and mixture.form in MAY_BE_BREATHED:
        rule = "a corrosive mixture that may be breathed and has no inhalation test"
        yield Because("EUH071", rule, "CLP Annex II 1.2.6", "S", numbers)
    elif named and (burns or toxic):
        rule = "an ingredient corrodes the airways, and the mixture is corrosive or toxic by breathing"
        yield Because("EUH071", rule, "CLP Annex II 1.2.6", "S", numbers)


def contains_isocyanates(mixture: Mixture, found: tuple[str, ...]) -> Iterator[Because]:
    """Yield EUH204, in any amount. That the label warns of them already is never assumed."""
    if names := [one.name for one in isocyanates(mixture)]:
        yield Because(
            "EUH204", "isocyanates in any form and amount", "CLP Annex II 2.4", "S", {"named": names}
        )


def contains_epoxies(mixture: Mixture, found: tuple[str, ...]) -> Iterator[Because]:
    """Yield EUH205 where an ingredient carries it; its molar mass is the maker's to know."""
    if names := [one.name for one in epoxies(mixture)]:
        rule = "epoxy constituents, as the maker says"
        yield Because("EUH205", rule, "CLP Annex II 2.5", "M", {"named": names})


def chlorine(mixture: Mixture, found: tuple[str, ...]) -> Iterator[Because]:
    """Yield EUH206 over 1 % active chlorine where the maker's label has it: then it is for the public."""
    total = math.fsum(one.percent for one in mixture.ingredients if carries(one, "EUH206"))
    if total and not reaches(CHLORINE_ABOVE, total):
        rule = "over 1 % active chlorine, on a product for the public"
        yield Because("EUH206", rule, "CLP Annex II 2.6", "S", {"percent": total, "above": CHLORINE_ABOVE})


def names_sensitisers(mixture: Mixture, found: tuple[str, ...]) -> Iterator[Because]:
    """Yield EUH208 with the names. It drops what EUH204 or EUH205 already warns of."""
    warned = [*isocyanates(mixture), *epoxies(mixture)]
    rows = [(one, limit) for one, limit in sensitisers(mixture) if one not in warned]
    if rows:
        names = ", ".join(sorted({one.name for one, _ in rows}))
        counted = [{"name": one.name, "percent": one.percent, "limit": limit} for one, limit in rows]
        rule = (
            "a sensitiser that did not class the mixture, from 0.1 % (1A: 0.01 %) or a tenth of its own limit"
        )
        yield Because(f"EUH208 {names}", rule, "CLP Annex II 2.8, Table 3.4.6", "S", {"counted": counted})


def sheet_on_request(mixture: Mixture, found: tuple[str, ...]) -> Iterator[Because]:
    """Yield EUH210 for a mixture without any class, used by a trade. Workplace limits are not known here."""
    if found:
        return
    if rows := list(data_sheet(mixture)):
        rule = "not classified, not for the public, and an ingredient of Annex II 2.10 is in it"
        yield Because("EUH210", rule, "CLP Annex II 2.10", "S", {"counted": rows})


STATEMENTS: tuple[Statement, ...] = (
    reactions,
    dry_skin,
    corrodes_airways,
    contains_isocyanates,
    contains_epoxies,
    chlorine,
    names_sensitisers,
    sheet_on_request,
)


def unreckoned(mixture: Mixture) -> Iterator[str]:
    """Yield what carries a reaction without a limit of its own, below the 1 % that we chose."""
    for code in REACTIONS:
        if reaches(summed(mixture, code, REACTS_FROM)[1], 1.0):
            continue
        for one in mixture.ingredients:
            if carries(one, code) and own(one, code) is None:
                yield (
                    f"“{one.name}” ({one.percent:g} %) carries {code} and no limit for it: nobody says "
                    "whether so little of it still needs the statement. Ask the maker."
                )


def strange(mixture: Mixture) -> Iterator[str]:
    """Yield statements of ingredients that no rule here carries over to a mixture."""
    for one in mixture.ingredients:
        for code in one.supplemental:
            if one.percent > 0 and code not in KNOWN:
                yield (
                    f"“{one.name}” ({one.percent:g} %) carries {code}: whether the mixture does, only its "
                    "maker can say."
                )


def gas_with_water(mixture: Mixture) -> Iterator[str]:
    """Yield, for Canada, that its own sentence on gases from contact with water must be chosen."""
    for one in mixture.ingredients:
        if carries(one, "EUH029"):
            yield (
                f"“{one.name}” ({one.percent:g} %) gives off toxic gas with water: Canada's label says “In "
                "contact with water, releases gases which are fatal, toxic or harmful if inhaled”; which of "
                "the three, the maker's sheet says."
            )
