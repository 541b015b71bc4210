"""A long ledger, fast: a valid chain with its bottles beside it, written past the ORM in large portions.

Each bottle is received, opened, used and discarded: twenty lines. The first fifty stay on the shelf, so that
it is as full behind a long ledger as behind a short one. `verify` finds nothing to complain about.
"""

import json
from collections.abc import Callable, Iterator
from datetime import datetime, timedelta
from itertools import islice

from django.db import connection, transaction

from inventory.codes import new_code
from inventory.management.bench.ground import LITRE, Ground
from inventory.models import Container, Head, Movement
from inventory.stock.rules.chain import FORMAT, hash_line, microseconds

LINES = 20
KEPT = 50
USED = 50_000
AT_ONCE = 500
YEARS = timedelta(days=3 * 365)
COLUMNS = [field.column for field in Movement._meta.concrete_fields if not field.primary_key]
EMPTY: dict[str, object] = dict.fromkeys(
    ("source", "target", "lot", "place", "job", "step", "amount", "concentrate", "reverses")
)
Row = tuple[object, ...]


class Filler:
    """Fills one shop's ledger; call `up_to` with rising numbers of lines."""

    def __init__(self, ground: Ground, most: int) -> None:
        self.ground = ground
        self.head = Head.objects.get(shop=ground.shop)
        self.bottles = 0
        self.spacing = (YEARS - timedelta(days=LINES + 10)) / max(1, most // LINES)
        self.taken = set(Container.objects.values_list("code", flat=True))

    def up_to(self, lines: int, progress: Callable[[int], object]) -> None:
        """Write lines until the ledger has so many, to within one bottle."""
        while (left := (lines - self.head.seq) // LINES) > 0:
            with transaction.atomic():
                rows = list(self._rows(min(left, AT_ONCE)))
                insert(rows)
                self.head.save()
            progress(len(rows))

    def _rows(self, count: int) -> Iterator[Row]:
        made = Container.objects.bulk_create(islice(self._containers(), count))
        through = Container.lots.through
        through.objects.bulk_create(
            through(container_id=bottle.pk, lot_id=self.ground.lots[self._of(number)].pk)
            for number, bottle in enumerate(made, self.bottles)
        )
        for number, bottle in enumerate(made, self.bottles):
            yield from self._life(bottle, number)
        self.bottles += count

    def _of(self, number: int) -> int:
        return number % len(self.ground.products)

    def _came(self, number: int) -> datetime:
        return self.ground.now - YEARS + number * self.spacing

    def _containers(self) -> Iterator[Container]:
        number, seq = self.bottles, self.head.seq
        while True:
            came, kept = self._came(number), number < KEPT
            seq += LINES
            yield Container(
                shop=self.ground.shop, code=self._code(), full=LITRE, state="open" if kept else "gone",
                product=self.ground.products[self._of(number)], place=self.ground.place,
                content=LITRE - 18 * USED if kept else 0, received_at=came,
                opened_at=came + timedelta(days=1), uses=18 if kept else 17, rinsed=False,
                last_at=came + timedelta(days=LINES - 1), last_seq=seq,
            )  # fmt: skip
            number += 1

    def _code(self) -> str:
        while (code := new_code("B")) in self.taken:
            pass
        self.taken.add(code)
        return code

    def _life(self, bottle: Container, number: int) -> Iterator[Row]:
        product, lot = self.ground.products[self._of(number)], self.ground.lots[self._of(number)]
        facts: dict[str, object] = {
            "content": LITRE, "product": product.code, "parts": [1, 0], "lots": [lot.code], "sealed": True,
            "full": LITRE,
        }  # fmt: skip
        target = {"target": bottle.code}
        given = {"lot": lot.code, "place": self.ground.place.code}
        keys = {"product": product.pk, "bottle": bottle.pk, "lot": lot.pk}
        came = self._came(number)
        yield self._line("receive", came, keys, facts, {**target, **given, "product": product.code})
        yield self._line("open", came + timedelta(days=1), keys, {}, {**target, "product": product.code})
        used = {"source": bottle.code, "amount": USED, "concentrate": USED, "product": product.code}
        uses = 18 if number < KEPT else 17
        for day in range(2, 2 + uses):
            yield self._line("use", came + timedelta(days=day), keys, {}, used)
        if number >= KEPT:
            left = {**target, "amount": LITRE - uses * USED, "product": product.code}
            yield self._line("discard", came + timedelta(days=LINES - 1), keys, {}, left)

    def _line(
        self, kind: str, at: datetime, keys: dict[str, int], facts: dict[str, object], said: dict[str, object]
    ) -> Row:
        ground, head = self.ground, self.head
        head.seq += 1
        moment = microseconds(at)
        body = {
            **EMPTY, **said, "seq": head.seq, "shop": ground.shop.slug, "kind": kind, "happened_at": moment,
            "recorded_at": moment, "person": ground.person.code, "facts": facts,
        }  # fmt: skip
        previous, head.hash = head.hash, hash_line(head.hash, body)
        bottle = keys["bottle"]
        return (
            ground.shop.pk, head.seq, kind, at, at, ground.person.pk,
            bottle if body["source"] else None, bottle if body["target"] else None,
            keys["lot"] if body["lot"] else None, ground.place.pk if body["place"] else None, None, None,
            keys["product"], body["amount"], body["concentrate"], None, json.dumps(facts), None, FORMAT,
            previous, head.hash,
        )  # fmt: skip


def insert(rows: list[Row]) -> None:
    """Insert ledger rows by what each engine does fastest."""
    names = ", ".join(f'"{column}"' for column in COLUMNS)
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            with cursor.copy(f"COPY inventory_movement ({names}) FROM STDIN") as copy:
                for row in rows:
                    copy.write_row(row)
            return
        marks = ", ".join(["?"] * len(COLUMNS))
        text = ([_text(value) for value in row] for row in rows)
        connection.connection.executemany(f"INSERT INTO inventory_movement ({names}) VALUES ({marks})", text)


def _text(value: object) -> object:
    return str(value.replace(tzinfo=None)) if isinstance(value, datetime) else value
