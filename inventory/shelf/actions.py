"""What a bottle's page may write, each through the ledger in one transaction."""

from datetime import date, datetime

from django.db import transaction

from inventory.codes import pair
from inventory.models import Container, Head, Lot, Movement, Person, Place, Product
from inventory.precheck.queries import tipped_into
from inventory.stock import ledger
from inventory.stock.fresh_codes import unused
from inventory.stock.rules.acts import Act, LotFacts
from inventory.stock.rules.lines import Refused
from inventory.stock.rules.lots import DATES


def count(container: Container, amount: int, *, by: Person, at: datetime) -> list[Movement]:
    """Book what the bottle was seen to hold."""
    return _record(
        container, Act("count", at, target=container.code, amount=amount, facts={"measured": True}), by, at
    )


def move(container: Container, place: str, *, by: Person, at: datetime) -> list[Movement]:
    """Put the bottle in another place."""
    return _record(container, Act("move", at, target=container.code, place=place), by, at)


@transaction.atomic
def discard(
    container: Container, reason: str, can: Place | None, *, by: Person, at: datetime
) -> list[Movement]:
    """Take the bottle off the shelf with what is in it, tipped into a can or in its own bottle.

    What the can holds is judged once more under the chain's head: somebody may have tipped in a moment ago.
    """
    Head.objects.select_for_update().get(shop=container.shop_id)
    if can and (never := next((one for one in tipped_into(can, container) if one.grade == "stop"), None)):
        raise Refused(f"{never.says} {never.do}", code="never_together")
    into = can.code if can else None
    act = Act("discard", at, target=container.code, place=into, facts={"reason": reason})
    return _record(container, act, by, at)


def hold(container: Container, reason: str, whole_lot: bool, *, by: Person, at: datetime) -> list[Movement]:
    """Make the bottle, or every bottle of its lots, unusable until an owner releases it."""
    facts: dict[str, object] = {"reason": reason, "recalled": reason == "recalled"}
    return _each("quarantine", container, whole_lot, facts, by, at)


def release(
    container: Container, reason: str, whole_lot: bool, *, by: Person, at: datetime
) -> list[Movement]:
    """Make it usable again."""
    return _each("release", container, whole_lot, {"reason": reason}, by, at)


@transaction.atomic
def correct(container: Container, printed: LotFacts, *, by: Person, at: datetime) -> list[Movement]:
    """Book what is really printed on the bottle: another lot, other dates of its own lot, or both.

    Another lot that is here already keeps its dates: they stand on its other bottles too.
    """
    lots = list(container.lots.all())
    if container.product is None or len(lots) > 1:
        named = pair(container.code)
        says = f"{named} holds no single lot. Correct the {container.noun} that it was filled from."
        raise Refused(says, code="lots")
    lot = lots[0] if lots else None
    acts = []
    if lot is None or lot.number != printed.number:
        lot = _other_lot(container.product, printed)
        acts.append(Act("correct", at, target=container.code, facts={"lots": [lot.code]}))
    dates = {name: day.isoformat() if (day := getattr(printed, name)) else None for name in DATES}
    if any(getattr(lot, name) != getattr(printed, name) for name in DATES):
        acts.append(Act("correct", at, lot=lot.code, facts=dict(dates)))
    if not acts:
        raise Refused("That is what the book says already. Nothing was changed.", code="same")
    return ledger.record(container.shop, acts, by=by, recorded_at=at)


def _other_lot(product: Product, printed: LotFacts) -> Lot:
    """Return the lot that a bottle really belongs to; a lot that was not given is nobody else's."""
    known = Lot.objects.filter(product=product, number=printed.number).first() if printed.number else None
    if known is None:
        return Lot.objects.create(product=product, number=printed.number, code=next(unused(Lot, "L", 1)))
    for name in DATES:
        if getattr(known, name) != getattr(printed, name):
            raise Refused(
                f"Lot {known.number} is here with {_dates(known)}. If this bottle says so, enter just that; "
                "if that lot is wrong, correct one of its own bottles.",
                code="other_date",
            )
    return known


def _dates(lot: Lot) -> str:
    words = {"expires_on": "use by", "best_before_on": "best before", "made_on": "made"}
    said = [f"{words[name]} {day:%Y-%m-%d}" for name in DATES if (day := getattr(lot, name))]
    return ", ".join(said) or "no date"


def retest(
    container: Container, test: str, evidence: str, until: date, *, by: Person, at: datetime
) -> list[Movement]:
    """Give the bottle a date of its own in place of the printed one."""
    facts: dict[str, object] = {"test": test, "evidence": evidence, "until": until.isoformat()}
    return _record(container, Act("retest", at, target=container.code, facts=facts), by, at)


def take_back(container: Container, seq: int, *, by: Person, at: datetime) -> list[Movement]:
    """Reverse one entry of this bottle."""
    return _record(container, Act("reverse", at, reverses=seq), by, at)


def _each(
    kind: str, container: Container, whole_lot: bool, facts: dict[str, object], by: Person, at: datetime
) -> list[Movement]:
    if not whole_lot:
        return _record(container, Act(kind, at, target=container.code, facts=facts), by, at)
    lots = list(container.lots.all())
    if not lots:
        says = f"{pair(container.code)} belongs to no lot. Hold the {container.noun} itself."
        raise Refused(says, code="no_lot")
    acts = [Act(kind, at, lot=lot.code, facts=facts) for lot in lots]
    return ledger.record(container.shop, acts, by=by, recorded_at=at)


def _record(container: Container, act: Act, by: Person, at: datetime) -> list[Movement]:
    return ledger.record(container.shop, [act], by=by, recorded_at=at)
