"""Bottles and lots while a ledger passes by: folded line by line, or at the end where the order mattered."""

from inventory.models import Container, Lot
from inventory.stock import queries
from inventory.stock.rules.fold import fold, step
from inventory.stock.rules.lines import Held, Line, Refused
from inventory.stock.rules.lots import LotState, fold_lot, step_lot


class Bottles:
    """What every bottle is so far."""

    def __init__(self) -> None:
        self._states: dict[str, Held] = {}
        self._again: set[str] = set()

    def pass_by(self, line: Line) -> None:
        """Follow one line of the ledger, in the order of their numbers."""
        for code in {line.source, line.target} - {None, *self._again}:
            assert code is not None
            state = self._states.get(code, Held())
            if line.kind == "reverse" or (state.last_at is not None and line.at < state.last_at):
                self._again.add(code)
                continue
            try:
                self._states[code] = step(code, state, line)
            except Refused:
                self._again.add(code)  # a line that was taken back later, or one that does not fit

    def said(self, container: Container) -> Held:
        """Return what the ledger says of a bottle; raises Refused where a line of it does not fit."""
        if container.code in self._again:
            return fold(container.code, queries.lines_of(container))
        return self._states.get(container.code, Held())


class Lots:
    """What every lot is so far."""

    def __init__(self) -> None:
        self._states: dict[str, LotState] = {}
        self._last: dict[str, Line] = {}
        self._again: set[str] = set()

    def pass_by(self, line: Line) -> None:
        """Follow one line of the ledger, in the order of their numbers."""
        code = line.lot
        if code is None or code in self._again:
            return
        last = self._last.get(code)
        if line.kind == "reverse" or (last and line.at < last.at):
            self._again.add(code)
            return
        self._states[code], self._last[code] = step_lot(self._states.get(code, LotState()), line), line

    def said(self, lot: Lot) -> LotState:
        """Return what the ledger says of a lot."""
        if lot.code in self._again:
            return fold_lot(queries.lines_of_lot(lot))
        return self._states.get(lot.code, LotState())
