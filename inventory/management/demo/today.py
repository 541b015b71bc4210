"""The last days before the demo opens: a bottle in every state, stock that makes each finding show."""

from datetime import datetime, timedelta

from inventory.codes import new_code
from inventory.management.demo.history import Bottle, Story
from inventory.models import Container, Lot, Order, OrderLine
from inventory.stock import ledger
from inventory.stock.rules.acts import Act, LotFacts, NewBottle

RECALLED = "TW-0666"


def arrange(story: Story, now: datetime) -> None:
    """Write the last fortnight's special cases, then print every label but one."""
    acts = [
        *_short_tar(story, now),
        *_dying_coating(story, now),
        *_expired(story, now),
        *_past_its_best(story, now),
        *_held(story, now),
        *_gone(story, now),
    ]
    acts.sort(key=lambda act: act.at)
    shop, ines = story.cast.shop, story.cast.people["ines"]
    ledger.record(shop, acts, by=ines, recorded_at=now)
    ledger.record(shop, [_recall(story, now)], by=ines, recorded_at=now)
    _label_all_but_one(story, now)
    _order(story, now)


def _one(story: Story, key: str, at: datetime, *, lot: LotFacts) -> tuple[Act, Bottle]:
    product, pack = story.cast.products[key], story.cast.packs[key]
    code = new_code("B", story.chance.choice)
    arriving = NewBottle(product.code, pack.amount, product.noun, code, pack.pk, lot)
    bottle = Bottle(code, key, pack.amount, True, lot.number, lot.expires_on)
    place = story.cast.places["store"].code
    return Act("receive", at, new=arriving, amount=pack.amount, place=place), bottle


def _lot(number: str, at: datetime, days: int) -> LotFacts:
    return LotFacts(number, (at + timedelta(days=days)).date())


def _away(story: Story, key: str, now: datetime, reason: str) -> list[Act]:
    """Clear the shelf of a product, so that what follows is all there is of it."""
    gone = story.bottles.get(key, [])
    story.bottles[key] = []
    at = now - timedelta(minutes=40)
    return [Act("discard", at, target=bottle.code, facts={"reason": reason}) for bottle in gone]


def _taken(bottle: Bottle, at: datetime, amount: int, *, measured: bool = True) -> Act:
    facts: dict[str, object] = {"measured" if measured else "assumed": True}
    return Act("use", at, source=bottle.code, amount=amount, facts=facts)


def _moved(story: Story, bottle: Bottle, at: datetime, place: str) -> Act:
    return Act("move", at, target=bottle.code, place=story.cast.places[place].code)


def _short_tar(story: Story, now: datetime) -> list[Act]:
    came = now - timedelta(days=12)
    arrives, bottle = _one(story, "orlo_tar", came, lot=_lot("OR-3001", came, 700))
    left = 76_000
    taken = _taken(bottle, now - timedelta(days=5), bottle.content - left)
    return [*_away(story, "orlo_tar", now, "leaking cap"), arrives, taken]


def _dying_coating(story: Story, now: datetime) -> list[Act]:
    """One open coating dies tomorrow; after tomorrow's car no lot alone is enough for the next."""
    old, new = now - timedelta(days=165), now - timedelta(days=12)
    dying, bottle = _one(story, "tidewall", old, lot=_lot("TW-2291", old, 420))
    fresh = [_one(story, "tidewall", new, lot=_lot("TW-2310", new, 217))[0] for _ in range(3)]
    other, _ = _one(story, "tidewall", new, lot=_lot("TW-2317", new, 300))
    opened = now - timedelta(days=89)
    return [
        *_away(story, "tidewall", now, "end of the old lot"),
        dying,
        *fresh,
        other,
        Act("open", opened, target=bottle.code),
        _moved(story, bottle, opened + timedelta(minutes=5), "cabinet_a"),
        _taken(bottle, now - timedelta(days=54), 9_000, measured=False),
        _taken(bottle, now - timedelta(days=6), 9_000),
    ]


def _expired(story: Story, now: datetime) -> list[Act]:
    came = now - timedelta(days=170)
    old, bottle = _one(story, "sallow_seal", came, lot=_lot("SA-1188", came, 160))
    gel, tube = _one(story, "ossen_gel", came, lot=_lot("OS-0420", came, 160))
    return [
        old,
        _taken(bottle, now - timedelta(days=60), 200_000),
        gel,
        _moved(story, tube, now - timedelta(days=150), "bay1"),
    ]


def _past_its_best(story: Story, now: datetime) -> list[Act]:
    came = now - timedelta(days=100)
    best = LotFacts("QU-0815", best_before_on=(now + timedelta(days=3)).date())
    cream, bottle = _one(story, "quell_leather", came, lot=best)
    away = _away(story, "quell_leather", now, "dried out")
    return [*away, cream, _taken(bottle, now - timedelta(days=20), 60_000)]


def _held(story: Story, now: datetime) -> list[Act]:
    """A frozen compound that stands in the bay, a drum left open, and a lot that its maker calls back."""
    came = now - timedelta(days=11)
    frozen, compound = _one(story, "marl", came, lot=_lot("MA-0717", came, 800))
    stale, drum = _one(story, "hollin_drum", came, lot=_lot("HO-0533", came, 900))
    recalled, _ = _one(story, "tidewall50", came, lot=_lot(RECALLED, came, 300))
    return [
        *_enough_wipe(story, now),
        frozen,
        _moved(story, compound, now - timedelta(days=9), "bay2"),
        Act("quarantine", now - timedelta(days=3), target=compound.code, facts={"reason": "frozen"}),
        stale,
        _taken(drum, now - timedelta(days=7), 900_000),
        Act("quarantine", now - timedelta(days=1), target=drum.code, facts={"reason": "left open"}),
        *_away(story, "tidewall50", now, "end of the old lot"),
        recalled,
    ]


def _enough_wipe(story: Story, now: datetime) -> list[Act]:
    came = now - timedelta(days=12)
    cans = [_one(story, "hollin", came, lot=_lot("HO-0540", came, 900)) for _ in range(3)]
    opened = cans[0][1]
    return [*(arrives for arrives, _ in cans), _taken(opened, now - timedelta(days=4), 150_000)]


def _recall(story: Story, now: datetime) -> Act:
    """A recall is about the lot, so it is written once its bottle has come."""
    lot = Lot.objects.get(number=RECALLED, product__shop=story.cast.shop)
    facts: dict[str, object] = {"reason": "cures cloudy, says its maker", "recalled": True}
    return Act("quarantine", now - timedelta(days=2), lot=lot.code, facts=facts)


def _gone(story: Story, now: datetime) -> list[Act]:
    came = now - timedelta(days=10)
    cracked, back = _one(story, "quell_glass", came, lot=_lot("QU-0801", came, 600))
    cleaner, counted = _one(story, "brack_rim", came, lot=_lot("BR-0312", came, 600))
    bare, polish = _one(story, "marl_one", came, lot=_lot("MA-0902", came, 900))
    return [
        cracked,
        Act("return", now - timedelta(days=8), target=back.code, facts={"reason": "cracked in transit"}),
        cleaner,
        _taken(counted, now - timedelta(days=5), 300_000),
        Act("count", now - timedelta(days=4), target=counted.code, amount=640_000, facts={"measured": True}),
        *_away(story, "marl_one", now, "end of the old lot"),
        bare,
        _taken(polish, now - timedelta(days=1), 120_000),
    ]


def _label_all_but_one(story: Story, now: datetime) -> None:
    """A label is on everything but one open bottle, which the check then asks about."""
    here = Container.objects.filter(shop=story.cast.shop).exclude(state=Container.State.GONE)
    here.update(labelled_at=now - timedelta(days=1), label_says="demo")
    bare = here.filter(product=story.cast.products["marl_one"], state=Container.State.OPEN)
    bare.update(labelled_at=None, label_says="")


def _order(story: Story, now: datetime) -> None:
    supplier = story.cast.products["hollin"].supplier
    assert supplier is not None
    order = Order.objects.create(
        shop=story.cast.shop,
        supplier=supplier,
        state=Order.State.PLACED,
        placed_on=(now - timedelta(days=2)).date(),
        due_on=(now + timedelta(days=4)).date(),
        placed_by=story.cast.people["ines"],
    )
    for key, packs in (("hollin", 2), ("dunnock_fin", 1)):
        pack = story.cast.packs[key]
        OrderLine.objects.create(order=order, pack=pack, packs=packs, price_minor=pack.price_minor)
