"""What stands in a cabinet or a fire area against the shop's regime, said.

Traps: outside a cabinet the US counts only what stands outside; the UK counts the whole workroom and wants
no more outside than half a day needs. Elsewhere the shop's own limit counts; without one that is told.
"""

import math
from collections.abc import Iterable

from safety.findings import MARKS, Finding, gravest_first
from safety.flammables.bands import ALL, BY_FLASH, IN_WORDS, TYPED, Band, bands, counts_as, in_band
from safety.flammables.sums import ROOM_MAXIMUM_C, Store, Total, standing, sums
from safety.flammables.values import ROUNDING, Held, amount, at_least, listed

IN_AREA = {BY_FLASH: "This workroom"}
GUIDANCE = f"HSE guidance on DSEAR, guidance and no statutory cap ({MARKS['S']})"


def totals(
    held: Iterable[Held],
    regime: str,
    cabinet: bool,
    *,
    room_maximum_c: float = ROOM_MAXIMUM_C,
    half_day_litres: float | None = None,
    typed_litres: float | None = None,
) -> tuple[Finding, ...]:
    """Return the findings on what stands in one cabinet, or in one fire area with its cabinets marked."""
    store = Store(regime, cabinet, room_maximum_c, half_day_litres, typed_litres)
    everything = tuple(held)
    found = [
        *(over(one, store) for one in sums(everything, store) if one.litres > one.band.litres + ROUNDING),
        *no_limit(everything, store),
        *half_day(everything, store),
        *unknown(everything, store),
    ]
    return gravest_first(found)


def over(total: Total, store: Store) -> Finding:
    """Return the finding on a sum that is over its limit."""
    most, regime = total.band.litres, store.regime
    what = IN_WORDS[total.band.band].format(room=store.room_maximum_c)
    where = "This cabinet" if store.cabinet else IN_AREA.get(regime, "Outside its cabinets this fire area")
    says = (
        f"{where} holds {amount(total.litres, regime)} of what burns ({what}); "
        f"at most {amount(most, regime)} may be there."
    )
    parts = listed([f"{one.name} {amount(one.litres, regime)}" for one in total.held])
    because = f"It holds {parts}."
    away = at_least(total.litres - most, regime)
    to = "another flammables cabinet" if store.cabinet else "a flammables cabinet or another fire area"
    if not store.cabinet and regime == BY_FLASH:
        to = "a store outside this workroom"
    do = f"Move at least {away} to {to}{sealed_first(total.held)}."
    code = f"flammables.{store.place.replace(' ', '_')}"
    names = tuple(dict.fromkeys(one.name for one in total.held))
    return Finding(code, "ask", says, because, do, sourced(total.band), names)


def sourced(band: Band) -> str:
    """Return whose limit it is, with its mark in words."""
    return f"{band.source} ({MARKS[band.mark]})" if band.mark else band.source


def sealed_first(held: tuple[Held, ...]) -> str:
    """Return the closed containers, which are the easiest to do without today."""
    names = list(dict.fromkeys(one.name for one in held if one.sealed))
    return f", sealed ones first: {listed(names)}" if names else ""


def no_limit(held: tuple[Held, ...], store: Store) -> list[Finding]:
    """Tell that a regime without limits judges nothing until the shop types its own."""
    burning = in_band(standing(held, store), ALL, store.regime, store.room_maximum_c)
    if bands(store.regime, store.cabinet) or store.typed_litres is not None or not burning:
        return []
    litres = math.fsum(one.litres for one in burning)
    says = f"This {store.place} holds {amount(litres, store.regime)} of what burns; no limit for it is known."
    because = f"Limits are known for the US and the UK; for {store.regime} the shop types its own."
    do = f"Ask the fire authority or the insurer how many litres one {store.place} may hold, and type it in."
    return [Finding("flammables.no_limit", "tell", says, because, do, TYPED)]


def half_day(held: tuple[Held, ...], store: Store) -> list[Finding]:
    """Hold what stands outside a cabinet against half a day's need; unknown, the rule itself is told."""
    if store.cabinet or store.regime != BY_FLASH:
        return []
    outside = in_band((one for one in held if not one.cabinet), ALL, BY_FLASH, store.room_maximum_c)
    litres, need = math.fsum(one.litres for one in outside), store.half_day_litres
    if not outside or (need is not None and litres <= need + ROUNDING):
        return []
    says = f"{amount(litres, BY_FLASH)} of what burns stand outside a cabinet; only half a day's need should."
    if need is None:
        because = "How much half a day needs is not typed in."
        do = f"Keep out what half a day needs and put the rest into the cabinet{sealed_first(outside)}."
    else:
        because = f"Half a day needs {amount(need, BY_FLASH)}."
        away = at_least(litres - need, BY_FLASH)
        do = f"Put at least {away} into the cabinet{sealed_first(outside)}."
    grade = "tell" if need is None else "ask"
    names = tuple(dict.fromkeys(one.name for one in outside))
    return [Finding("flammables.half_day", grade, says, because, do, GUIDANCE, names)]


def unknown(held: tuple[Held, ...], store: Store) -> list[Finding]:
    """Tell what is not counted because nobody knows whether it burns."""
    names = [one.name for one in held if counts_as(one, store.regime, store.room_maximum_c) is None]
    names = list(dict.fromkeys(names))
    if not names:
        return []
    says = f"Nobody knows whether {listed(names)} {'burns' if len(names) == 1 else 'burn'}: not counted here."
    because = "Neither a flash point nor a category is known."
    do = "Type the flash point from section 9 of the data sheet."
    return [Finding("flammables.unknown", "tell", says, because, do, "Data sheet, section 9", tuple(names))]
