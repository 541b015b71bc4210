"""Who is trained and fitted in the demo, what protects them, and the one thing that is about to end."""

from datetime import date, datetime, timedelta

from inventory.codes import new_code
from inventory.management.demo.nouns import Cast
from inventory.management.demo.tables import Row, listed, table
from inventory.models import (
    Equipment,
    FirstDay,
    FitTest,
    GloveMinutes,
    MedicalEvaluation,
    Pack,
    PlaceCheck,
    Product,
    Step,
    Training,
)
from inventory.people.queries.first_day import first_day
from inventory.stock import ledger
from inventory.stock.rules.acts import Act, LotFacts, NewBottle
from inventory.units import parse_amount

MASKED = "Lime remover"


def guard(cast: Cast, now: datetime) -> None:
    """Put protection into the bays, write down who is trained and fitted, and run the eyewashes.

    Called after the jobs are booked: one of their steps is done in a half mask, for which Tomas's fit test
    ends the day before.
    """
    on = now.astimezone(cast.shop.zone).date()
    acts = [act for row in table("protection") for act in _item(cast, row, on, now)]
    ledger.record(cast.shop, acts, by=cast.people["ines"], recorded_at=now)
    for row in table("glove_minutes"):
        GloveMinutes.objects.create(
            glove=cast.products[row["glove"]],
            against=cast.products[row["against"]],
            minutes=int(row["minutes"]),
            source=row["source"],
        )
    for row in table("people"):
        _written_down(cast, row, on, now)
    for bay in ("bay1", "bay2"):
        PlaceCheck.objects.create(
            place=cast.places[bay],
            what=PlaceCheck.What.EYEWASH,
            done_at=now - timedelta(days=2),
            by=cast.people["tomas"],
        )
    # Bay 1's rag can was emptied; Bay 2's was forgotten, and the first page says so.
    for bay, ago in (("bay1", timedelta(minutes=50)), ("bay2", timedelta(days=60))):
        PlaceCheck.objects.create(
            place=cast.places[bay], what=PlaceCheck.What.RAGS, done_at=now - ago, by=cast.people["tomas"]
        )
    masked = Step.objects.filter(job__shop=cast.shop, job__state="open", name=MASKED)
    masked.update(respirator=Step.Respirator.HALF)


def _item(cast: Cast, row: Row, on: date, now: datetime) -> list[Act]:
    """Name what a product serves, made here where the shop's table has none; return its arrivals."""
    known = cast.products.get(row["key"])
    product = known or _product(cast, row)
    if row["wear_minutes"]:
        product.wear_minutes = int(row["wear_minutes"])
        product.save(update_fields=["wear_minutes"])
    Equipment.objects.create(
        product=product, serves=row["serves"], filters=row["filters"], letters=row["letters"]
    )
    amount = parse_amount(row["amount"], dimension=product.dimension).base
    ends = on + timedelta(days=int(row["good_days"])) if row["good_days"] else None
    return [_arrives(cast, row, product, place, amount, ends, now) for place in listed(row["places"])]


def _arrives(
    cast: Cast, row: Row, product: Product, place: str, amount: int, ends: date | None, now: datetime
) -> Act:
    lot, pack = LotFacts("", ends), cast.packs[row["key"]].pk
    new = NewBottle(product.code, amount, product.noun, new_code("B"), pack, lot)
    at = now - timedelta(days=40)
    return Act("receive", at, new=new, amount=amount, place=cast.places[place].code)


def _product(cast: Cast, row: Row) -> Product:
    product = Product.objects.create(
        shop=cast.shop,
        name=row["name"],
        maker="Ossen",
        kind=row["kind"],
        dimension=row["dimension"],
        noun=row["noun"],
        dated=bool(row["good_days"]),
        needs_sheet=False,
        supplier=cast.products["ossen_glove"].supplier,
    )
    amount = parse_amount(row["amount"], dimension=product.dimension).base
    cast.products[row["key"]] = product
    cast.packs[row["key"]] = Pack.objects.create(product=product, amount=amount)
    return product


def _written_down(cast: Cast, row: Row, on: date, now: datetime) -> None:
    person, ines = cast.people[row["person"]], cast.people["ines"]
    day = on - timedelta(days=int(row["days_ago"]))
    until = on + timedelta(days=int(row["days_left"])) if row["days_left"] else None
    kept = {"person": person, "proof": row["proof"], "kept_by": ines}
    if row["what"] == "training":
        Training.objects.create(topic=row["topic"], trained_on=day, until_on=until, **kept)
    elif row["what"] == "evaluation":
        MedicalEvaluation.objects.create(evaluated_on=day, until_on=until, **kept)
    elif row["what"] == "fit_test":
        evaluation = MedicalEvaluation.objects.filter(person=person).latest("evaluated_on")
        mask = cast.products[row["topic"]]
        assert until is not None
        FitTest.objects.create(
            mask=mask, evaluation=evaluation, size="M", tested_on=day, until_on=until, **kept
        )
    elif row["what"] == "face":
        person.face = row["topic"]
        person.save(update_fields=["face"])
    else:
        _signed(cast, row, now)


def _signed(cast: Cast, row: Row, now: datetime) -> None:
    language = cast.shop.language
    read = first_day(cast.shop, "/sheets/", language)
    parts = [{"title": part.title, "lines": list(part.lines)} for part in read]
    FirstDay.objects.create(
        person=cast.people[row["person"]],
        signed_at=now - timedelta(days=int(row["days_ago"])),
        shown_by=cast.people[row["topic"]],
        says={"on_paper": False, "language": language, "parts": parts},
    )
