"""The lots that one transaction touches: found or made at a receive, folded again after a line about them."""

from collections.abc import Callable, Iterable

from inventory.codes import pair
from inventory.models import Container, Lot, Product
from inventory.stock import queries
from inventory.stock.fresh_codes import SLICE, unused
from inventory.stock.names import Names
from inventory.stock.rules.acts import LotFacts, NewBottle
from inventory.stock.rules.lines import Line, Refused
from inventory.stock.rules.lots import DATES, LotState, fold_lot, step_lot
from inventory.stock.use_by_copy import keep_use_by


class OtherDate(Refused):
    """A lot that is here already carries another date than the bottle in hand."""


class Lots:
    """Lots by code; written by the ledger alone."""

    def __init__(self, names: Names) -> None:
        self.names = names
        self._rows: dict[str, Lot] = {}
        self._changed: set[str] = set()
        self._new: set[str] = set()
        self._unwritten: list[Lot] = []
        self._by_number: dict[tuple[int, str], Lot] = {}
        self._codes = unused(Lot, "L", 1)

    def foresee(self, arriving: Iterable[NewBottle]) -> None:
        """Load the lots that bottles about to arrive may belong to, all of them at once."""
        bottles = list(arriving)
        self._codes = unused(Lot, "L", len({(new.product, new.lot.number or id(new)) for new in bottles}))
        numbers = sorted({new.lot.number for new in bottles if new.lot.number})
        for start in range(0, len(numbers), SLICE):
            here = Lot.objects.filter(
                product__shop=self.names.shop, number__in=numbers[start : start + SLICE]
            )
            for lot in here:
                self._by_number[lot.product_id, lot.number] = lot

    def write_new(self) -> None:
        """Write the lots that were not there before, with the dates they have by now."""
        Lot.objects.bulk_create(self._unwritten, batch_size=SLICE)
        self._changed -= {lot.code for lot in self._unwritten}
        self._unwritten.clear()

    def know(self, *rows: Lot) -> None:
        """Keep lots that were loaded anyhow."""
        for row in rows:
            self._rows.setdefault(row.code, row)

    def row(self, code: str | None) -> Lot | None:
        """Return a lot of this shop by its code."""
        if code is None:
            return None
        if code not in self._rows:
            found = (
                Lot.objects.filter(code=code, product__shop=self.names.shop).select_related("product").first()
            )
            if found is None:
                raise Refused(f"{pair(code)} is no lot of this shop.", code="unknown")
            self.know(found)
        return self._rows[code]

    def received(self, product: Product, facts: LotFacts) -> Lot:
        """Return the lot that a bottle belongs to, made if new; another printed date is refused."""
        lot = self._by_number.get((product.pk, facts.number)) if facts.number else None
        if lot is None:
            lot = Lot(product=product, number=facts.number, code=next(self._codes))
            self._by_number[product.pk, facts.number] = lot
            self._unwritten.append(lot)
            self._new.add(lot.code)
        lot = self._rows.setdefault(lot.code, lot)
        for name in DATES:
            known, given = getattr(lot, name), getattr(facts, name)
            if known and given and known != given:
                raise OtherDate(
                    f"Lot {lot.number} is booked with {known.isoformat()}, "
                    f"this bottle says {given.isoformat()}. "
                    "If the first was wrong, correct the lot; otherwise read the number again.",
                    code="other_date",
                )
        return lot

    def after(self, lot: Lot, line: Line, flush: Callable[[], None]) -> None:
        """Follow a line about a lot: its dates now, its row at the end; `flush` writes what is read here."""
        self.know(lot)
        lot = self._rows[lot.code]
        before = state_of(lot)
        state = step_lot(before, line)
        if line.kind != "receive" or (state != before and lot.code not in self._new):
            flush()
            state = fold_lot(queries.lines_of_lot(lot))
        if state != before:
            put_state(lot, state)
            self._changed.add(lot.code)

    def keep(self, but: set[str]) -> None:
        """Write the lots that changed, and the use by of their bottles, without those written anyhow."""
        for code in self._changed:
            self._rows[code].save(update_fields=[*DATES, "retest_on", "held", "recalled"])
        for container in self._bottles(but):
            keep_use_by(container)

    def of(self, codes: frozenset[str]) -> list[Lot]:
        """Return lots by their codes."""
        return [lot for code in sorted(codes) if (lot := self.row(code))]

    def _bottles(self, but: set[str]) -> list[Container]:
        if not self._changed - self._new:
            return []
        touched = Container.objects.filter(lots__code__in=self._changed).exclude(code__in=but).distinct()
        return list(touched.select_related("product", "shop").prefetch_related("lots"))


def state_of(lot: Lot) -> LotState:
    """Return what stands beside the ledger for a lot."""
    return LotState(lot.expires_on, lot.best_before_on, lot.made_on, lot.retest_on, lot.held, lot.recalled)


def put_state(lot: Lot, state: LotState) -> None:
    """Copy a folded state into a lot's row, unsaved."""
    for name in (*DATES, "retest_on", "held", "recalled"):
        setattr(lot, name, getattr(state, name))
