"""The last days before the demo opens: a bottle in every state, stock that makes each finding show."""

from datetime import datetime, timedelta

from inventory.codes import new_code
from inventory.management.demo.history import Bottle, Story
from inventory.models import Container, Order, OrderLine
from inventory.stock import ledger
from inventory.stock.rules.acts import Act, LotFacts, NewBottle


def arrange(story: Story, now: datetime) -> None:
    """Write the last fortnight's special cases, then print every label but one."""
    acts = [
        *_short_tar(story, now),
        *_dying_coating(story, now),
        *_expired(story, now),
        *_held(story, now),
        *_gone(story, now),
    ]
    acts.sort(key=lambda act: act.at)
    ledger.record(story.cast.shop, acts, by=story.cast.people["ines"], recorded_at=now)
    _label_all_but_one(story, now)
    _order(story, now)


def _one(
    story: Story, key: str, at: datetime, *, days: int | None, code: str = "", lot: str = ""
) -> tuple[Act, Bottle]:
    product, pack = story.cast.products[key], story.cast.packs[key]
    code = code or new_code("B", story.chance.choice)
    expires = (at + timedelta(days=days)).date() if days else None
    arriving = NewBottle(product.code, pack.amount, product.noun, code, pack.pk, LotFacts(lot, expires))
    bottle = Bottle(code, key, pack.amount, True, lot, expires)
    place = story.cast.places["store"].code
    return Act("receive", at, new=arriving, amount=pack.amount, place=place), bottle


def _away(story: Story, key: str, now: datetime, reason: str) -> list[Act]:
    """Clear the shelf of a product, so that what follows is all there is of it."""
    gone = [bottle for bottle in story.bottles.get(key, []) if bottle.code]
    story.bottles[key] = []
    at = now - timedelta(minutes=40)
    return [Act("discard", at, target=bottle.code, facts={"reason": reason}) for bottle in gone]


def _short_tar(story: Story, now: datetime) -> list[Act]:
    arrives, bottle = _one(story, "orlo_tar", now - timedelta(days=12), days=700, lot="OR-3001")
    left = 76_000
    taken = Act(
        "use",
        now - timedelta(days=5),
        source=bottle.code,
        amount=bottle.content - left,
        facts={"measured": True},
    )
    return [*_away(story, "orlo_tar", now, "leaking cap"), arrives, taken]


def _dying_coating(story: Story, now: datetime) -> list[Act]:
    cast = story.cast
    dying, bottle = _one(story, "tidewall", now - timedelta(days=165), days=420, lot="TW-2291")
    fresh, _ = _one(story, "tidewall", now - timedelta(days=12), days=217, lot="TW-2310")
    second, _ = _one(story, "tidewall", now - timedelta(days=12), days=217, lot="TW-2310")
    opened = now - timedelta(days=89)
    return [
        *_away(story, "tidewall", now, "end of the old lot"),
        dying,
        fresh,
        second,
        Act("open", opened, target=bottle.code),
        Act("move", opened + timedelta(minutes=5), target=bottle.code, place=cast.places["cabinet_a"].code),
        Act("use", now - timedelta(days=54), source=bottle.code, amount=9_000, facts={"assumed": True}),
        Act("use", now - timedelta(days=6), source=bottle.code, amount=9_000, facts={"measured": True}),
    ]


def _expired(story: Story, now: datetime) -> list[Act]:
    old, bottle = _one(story, "sallow_seal", now - timedelta(days=170), days=160, lot="SA-1188")
    gel, tube = _one(story, "ossen_gel", now - timedelta(days=160), days=170, lot="OS-0420")
    return [
        old,
        Act("use", now - timedelta(days=60), source=bottle.code, amount=200_000, facts={"measured": True}),
        gel,
        Act("move", now - timedelta(days=150), target=tube.code, place=story.cast.places["bay1"].code),
    ]


def _held(story: Story, now: datetime) -> list[Act]:
    recalled, cutting = _one(story, "tidewall50", now - timedelta(days=11), days=300, lot="TW-0666")
    frozen = next(one for one in story.bottles["marl"] if one.content)
    open_over_night = next(one for one in story.bottles["hollin"][::-1] if one.content)
    facts: dict[str, object] = {"reason": "recalled by its maker", "recalled": True}
    return [
        *_away(story, "tidewall50", now, "end of the old lot"),
        recalled,
        Act("quarantine", now - timedelta(days=2), target=cutting.code, facts=facts),
        Act("quarantine", now - timedelta(days=3), target=frozen.code, facts={"reason": "frozen"}),
        Act(
            "quarantine", now - timedelta(days=1), target=open_over_night.code, facts={"reason": "left open"}
        ),
    ]


def _gone(story: Story, now: datetime) -> list[Act]:
    back = next(one for one in story.bottles["quell_glass"] if one.sealed)
    wrong = next(one for one in story.bottles["brack_rim"][::-1] if one.content)
    back_content, back.content = back.content, 0
    assert back_content
    return [
        Act("return", now - timedelta(days=8), target=back.code, facts={"reason": "cracked in transit"}),
        Act(
            "count",
            now - timedelta(days=4),
            target=wrong.code,
            amount=wrong.content * 9 // 10,
            facts={"measured": True},
        ),
    ]


def _label_all_but_one(story: Story, now: datetime) -> None:
    """A label is on everything but one open bottle, which the check then asks about."""
    here = Container.objects.filter(shop=story.cast.shop).exclude(state=Container.State.GONE)
    here.update(labelled_at=now - timedelta(days=1), label_says="demo")
    bare = here.filter(product=story.cast.products["marl_one"], state=Container.State.OPEN).first()
    if bare is not None:
        bare.labelled_at, bare.label_says = None, ""
        bare.save(update_fields=["labelled_at", "label_says"])


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
