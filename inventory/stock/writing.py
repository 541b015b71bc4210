"""One call of `ledger.record`: what it locked, what the containers are by now, the lines so far."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime

from django.db.models import Model

from inventory.codes import pair
from inventory.models import Container, Head, Movement, Person, Request, Shop
from inventory.stock import completed, queries
from inventory.stock.bodies import body_of
from inventory.stock.fresh_codes import taken, unused
from inventory.stock.lots import Lots
from inventory.stock.names import Names
from inventory.stock.rules.acts import Act, NewBottle
from inventory.stock.rules.chain import FORMAT, hash_line
from inventory.stock.rules.fold import fold, in_force, step
from inventory.stock.rules.lines import Held, Line, Refused, TooLittle
from inventory.stock.rules.mixes import share
from inventory.stock.shelf_copy import BATCH, keep_copy, new_container, write_new
from inventory.units import Dimension, show

TAKEN_WHOLE = {"discard", "return"}
TAKING = {"use", "fill"}


class Writing:
    """Made under the head's lock by `ledger.record`, and by nothing else."""

    def __init__(
        self,
        shop: Shop,
        head: Head,
        by: Person | None,
        recorded_at: datetime,
        request: Request | None,
        acts: Sequence[Act],
        known: Iterable[Model] = (),
    ) -> None:
        self.shop, self.head, self.by, self.recorded_at, self.request = shop, head, by, recorded_at, request
        self.names = Names(shop)
        here = list(known)
        self.names.know(*here)
        self.locked = {row.code: row for row in here if isinstance(row, Container)}
        self.lots = Lots(self.names)
        self.lines: list[Movement] = []
        self.containers: dict[str, Container] = {}
        self.states: dict[str, Held] = {}
        self.undone: dict[int, Movement] = {}
        self.changed: set[str] = set()
        self.arrived: dict[str, Container] = {}
        self.unwritten: list[Movement] = []
        self._foresee([act.new for act in acts if act.new])
        self._lock(acts)

    def _foresee(self, arriving: list[NewBottle]) -> None:
        """Ask once for all bottles that arrive: which codes are free, which lots are here."""
        given = {new.code for new in arriving if new.code}
        self.drawn = unused(Container, "B", len(arriving) - len(given))
        self.taken = taken(Container, given)
        if arriving:
            self.lots.foresee(arriving)

    def _lock(self, acts: Sequence[Act]) -> None:
        arriving = {act.new.code for act in acts if act.new}
        codes = {code for act in acts for code in (act.source, act.target) if code} - arriving
        for act in acts:
            if act.kind == "reverse":
                undone = self._undone(act.reverses)
                codes |= {container.code for container in (undone.source, undone.target) if container}
        found = [self.locked[code] for code in codes if code in self.locked]
        if unseen := codes - set(self.locked):
            found += queries.locked(self.shop.id, unseen)
        for code in sorted(codes - {container.code for container in found}):
            raise Refused(
                f"{pair(code)} is no code of a bottle here. Scan it again, or type it.", code="unknown"
            )
        for container in found:
            self._know(container, queries.held_of(container, container.lots.all()))
            self.lots.know(*container.lots.all())
            self.names.know(container.product, container.place)

    def _undone(self, seq: int | None) -> Movement:
        related = ("source", "target", "lot", "reversed_by")
        line = Movement.objects.filter(shop=self.shop, seq=seq or 0).select_related(*related).first()
        if line is None:
            raise Refused(f"There is no entry {seq} to take back.", code="unknown")
        self.undone[line.seq] = line
        return line

    def _know(self, container: Container, state: Held) -> None:
        self.containers[container.code], self.states[container.code] = container, state

    def write(self, act: Act) -> None:
        """Write one act: its line, and the states after it."""
        if act.kind == "receive":
            act = self._received(act)
        elif act.kind == "reverse":
            self._may_reverse(act)
        elif act.kind in TAKEN_WHOLE:
            act = replace(act, amount=self._then(act.source or act.target, act.at).content)
        elif act.kind in TAKING:
            act = self._opened_first(act)
        line = self._line(act)
        self._chain(act, line)
        self._after(line)

    def _received(self, act: Act) -> Act:
        assert act.new is not None
        product = self.names.product(act.new.product)
        lot = self.lots.received(product, act.new.lot) if product else None
        container = new_container(self.names, act.new, self.drawn, self.taken)
        self.arrived[container.code] = container
        self._know(container, Held())
        return completed.received(act, act.new, container.code, lot)

    def _opened_first(self, act: Act) -> Act:
        source = self._then(act.source, act.at)
        if source.state == "sealed":
            self.write(Act("open", act.at, target=act.source, job=act.job, step=act.step))
            source = self._then(act.source, act.at)
        if act.kind == "use":
            return act
        pours = [
            (state, self.names.product(state.product), self.lots.of(state.lots))
            for state in (source, self._then(act.target, act.at))
        ]
        return completed.filled(act, source, completed.limit_of(pours, self.shop.zone))

    def _may_reverse(self, act: Act) -> None:
        line = self.undone[act.reverses or 0]
        if line.kind == "reverse":
            raise Refused("What was taken back stays taken back. Record it again instead.", code="reverse")
        if hasattr(line, "reversed_by"):
            raise Refused(f"Entry {line.seq} was taken back already.", code="reversed", seq=line.seq)

    def _then(self, code: str | None, at: datetime) -> Held:
        """Return what a container was at an instant, by what is known now: late entries speak of the past."""
        if code is None:
            return Held()
        state = self.states[code]
        if state.last_at is None or at >= state.last_at:
            return state
        lines = in_force(self._lines_of(code))
        return fold(code, [line for line in lines if line.at <= at])

    def _line(self, act: Act) -> Line:
        facts = dict(act.facts)
        if act.kind == "count":
            booked = self._then(act.target, act.at).content
            facts |= {"content": act.amount, "difference": (act.amount or 0) - booked}
            act = replace(act, amount=None)
        return Line(
            seq=self.head.seq + 1, kind=act.kind, at=act.at, source=act.source, target=act.target,
            lot=act.lot, place=act.place, amount=act.amount, reverses=act.reverses, facts=facts,
        )  # fmt: skip

    def _chain(self, act: Act, line: Line) -> None:
        undone = self.undone[line.reverses] if line.reverses else None
        state = self._then(line.source or line.target, line.at)
        product = state.product or line.facts.get("product")
        movement = Movement(
            shop=self.shop, seq=line.seq, kind=line.kind, happened_at=line.at, recorded_at=self.recorded_at,
            person=self.by, source=undone.source if undone else self._row(line.source),
            target=undone.target if undone else self._row(line.target),
            lot=undone.lot if undone else self.lots.row(line.lot), place=self.names.place(line.place),
            job=self.names.job(act.job), step=self.names.step(act.step),
            product=self.names.product(str(product) if product else None),
            amount=line.amount, concentrate=concentrate(line, state), reverses=undone, facts=line.facts,
            request=self.request, format=FORMAT, previous_hash=self.head.hash,
        )  # fmt: skip
        movement.hash = hash_line(self.head.hash, body_of(movement))
        _fits(line)
        self.unwritten.append(movement)
        self.head.seq, self.head.hash = movement.seq, movement.hash
        self.lines.append(movement)

    def _row(self, code: str | None) -> Container | None:
        return self.containers[code] if code else None

    def _after(self, line: Line) -> None:
        written = self.lines[-1]
        if written.lot:
            self.lots.after(written.lot, line, self.flush)
        for code in {container.code for container in (written.source, written.target) if container}:
            self.states[code] = self._next(code, line)
            self.changed.add(code)

    def _next(self, code: str, line: Line) -> Held:
        state = self.states[code]
        try:
            if line.kind != "reverse" and (state.last_at is None or line.at >= state.last_at):
                return step(code, state, line)
            return fold(code, self._lines_of(code))
        except Refused as refusal:
            if refusal.seq != line.seq:
                says = f"Entry {refusal.seq} is in the way: {refusal.says}"
                raise Refused(says, code="in_the_way", seq=refusal.seq) from None
            if isinstance(refusal, TooLittle):
                raise TooLittle(self._too_little(code, line), code=refusal.code, seq=refusal.seq) from None
            raise

    def _too_little(self, code: str, line: Line) -> str:
        state = self._before(code, line)
        product = self.names.product(state.product)
        held = show(state.content, Dimension(product.dimension), self.shop.system) if product else "nothing"
        return f"{pair(code)} is booked at {held}. If it holds more, say so and carry on."

    def _before(self, code: str, line: Line) -> Held:
        lines = in_force(self._lines_of(code))
        return fold(code, [other for other in lines if (other.at, other.seq) < (line.at, line.seq)])

    def _lines_of(self, code: str) -> list[Line]:
        self.flush()
        return queries.lines_of(self.containers[code])

    def flush(self) -> None:
        """Write what is only in memory: lots first, then bottles, then the lines that name them."""
        self.lots.write_new()
        write_new(((row, self.states[code]) for code, row in self.arrived.items()), self.lots, self.names)
        self.arrived.clear()
        Movement.objects.bulk_create(self.unwritten, batch_size=BATCH)
        self.unwritten.clear()

    def finish(self) -> list[Movement]:
        """Write what stands beside the ledger, and the head last; return the lines."""
        written_whole = set(self.arrived)
        self.flush()
        for code in self.changed - written_whole:
            keep_copy(self.containers[code], self.states[code], self.lots, self.names)
        self.lots.keep(but=self.changed)
        self.head.save(update_fields=["seq", "hash"])
        return self.lines


def _fits(line: Line) -> None:
    """Refuse an amount that the database would refuse without a sentence."""
    if line.amount is not None and line.amount < 0:
        raise Refused("Less than nothing cannot be taken. Say how much came out.", code="facts", seq=line.seq)


def concentrate(line: Line, state: Held) -> int | None:
    """Return what demand counts of a line: the product itself, at use, without its water; base units."""
    if line.kind != "use" or line.amount is None:
        return None
    return share(line.amount, state.parts)
