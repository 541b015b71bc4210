"""The only writer of Movement, and of the state that stands beside a container.

One transaction: the chain's head is locked first, containers next by id; every line gets its seq and hash
under that lock; the folded states, the lots' dates and the use-by copies follow; all or nothing.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime

from django.db import transaction

from inventory.models import Container, Head, Movement, Person, Request, Shop
from inventory.stock import queries
from inventory.stock.lots import Lots
from inventory.stock.names import Names
from inventory.stock.rules.acts import Act, LotFacts
from inventory.stock.rules.chain import FORMAT, hash_line, microseconds
from inventory.stock.rules.fold import fold, step
from inventory.stock.rules.lines import Held, Line, Refused, TooLittle
from inventory.stock.rules.lots import DATES
from inventory.stock.shelf_copy import keep_copy, keep_use_by, new_container
from inventory.units import Dimension, show

DERIVED = {"use", "fill", "discard", "return"}


@transaction.atomic
def record(
    shop: Shop,
    acts: Sequence[Act],
    *,
    by: Person | None,
    recorded_at: datetime,
    request: Request | None = None,
) -> list[Movement]:
    """Write acts as lines and return them in order; a sealed source gets its open line first.

    Raises Refused (with a whole sentence) where one does not fit, and then writes none of them.
    """
    head = Head.objects.select_for_update().get(shop=shop)
    writing = _Writing(shop, head, by, recorded_at, request, acts)
    for act in acts:
        writing.write(act)
    return writing.finish()


class _Writing:
    """One call of `record`: what it locked, what the containers are by now, the lines so far."""

    def __init__(
        self,
        shop: Shop,
        head: Head,
        by: Person | None,
        recorded_at: datetime,
        request: Request | None,
        acts: Sequence[Act],
    ) -> None:
        self.shop, self.head, self.by, self.recorded_at, self.request = shop, head, by, recorded_at, request
        self.names = Names(shop)
        self.lots = Lots(self.names)
        self.lines: list[Movement] = []
        self.containers: dict[str, Container] = {}
        self.states: dict[str, Held] = {}
        self.changed: set[str] = set()
        self._lock(acts)

    def _lock(self, acts: Sequence[Act]) -> None:
        codes = {code for act in acts for code in (act.source, act.target) if code}
        for act in acts:
            if act.reverses:
                codes |= set(self._undone(act.reverses))
        found = queries.locked(self.shop.id, codes)
        for code in codes - {container.code for container in found}:
            raise Refused(f"{code} is no code of a bottle here. Scan it again, or type it.", code="unknown")
        for container in found:
            self._know(container, queries.held_of(container, container.lots.all()))
            self.lots.know(*container.lots.all())
            self.names.know(container.product, container.place)

    def _undone(self, seq: int) -> list[str]:
        line = Movement.objects.filter(shop=self.shop, seq=seq).values_list("source__code", "target__code").first()
        if line is None:
            raise Refused(f"There is no entry {seq} to take back.", code="unknown")
        return [code for code in line if code]

    def _know(self, container: Container, state: Held) -> None:
        self.containers[container.code], self.states[container.code] = container, state

    def write(self, act: Act) -> None:
        """Write one act: its line, and the states after it."""
        if act.kind == "receive":
            act = self._received(act)
        elif act.kind == "reverse":
            self._may_reverse(act)
        elif act.kind in DERIVED:
            act = self._derived(act)
        line = self._line(act)
        self._chain(act, line)
        self._after(line)

    def _received(self, act: Act) -> Act:
        assert act.new is not None
        product = self.names.product(act.new.product)
        lot = self.lots.received(product, act.new.lot) if product else None
        container = new_container(self.names, act.new)
        self._know(container, Held())
        facts: dict[str, object] = {
            "content": act.amount or 0, "product": act.new.product, "parts": list(act.new.parts),
            "lots": [lot.code] if lot else [], "sealed": act.new.sealed, "full": act.new.full,
        }  # fmt: skip
        for name in ("opened_at", "mixed_at"):
            if instant := getattr(act.new, name):
                facts[name] = instant.isoformat()
        if act.new.estimated:
            facts["estimated"] = True
        facts |= _printed(act.new.lot)
        return replace(
            act, target=container.code, lot=lot.code if lot else None, amount=None, facts=facts | act.facts
        )

    def _derived(self, act: Act) -> Act:
        code = act.source or act.target or ""
        state = self.states[code]
        if act.kind in {"discard", "return"}:
            return replace(act, amount=state.content)
        if state.state == "sealed":
            self.write(Act("open", act.at, target=code, job=act.job, step=act.step))
            state = self.states[code]
        if act.kind == "fill":
            given: dict[str, object] = {
                "added": act.added, "product": state.product, "parts": list(act.parts), "lots": sorted(state.lots)
            }  # fmt: skip
            for name in ("opened_at", "mixed_at"):
                if instant := getattr(state, name):
                    given[name] = instant.isoformat()
            return replace(act, facts=given | act.facts)
        return act

    def _may_reverse(self, act: Act) -> None:
        line = Movement.objects.filter(shop=self.shop, seq=act.reverses).select_related("reversed_by").get()
        if line.kind == "reverse":
            raise Refused("What was taken back stays taken back. Record it again instead.", code="reverse")
        if hasattr(line, "reversed_by"):
            raise Refused(f"Entry {line.seq} was taken back already.", code="reversed", seq=line.seq)

    def _line(self, act: Act) -> Line:
        facts = dict(act.facts)
        if act.kind == "count":
            assert act.target is not None
            facts |= {"content": act.amount, "difference": (act.amount or 0) - self.states[act.target].content}
            act = replace(act, amount=None)
        return Line(
            seq=self.head.seq + 1, kind=act.kind, at=act.at, source=act.source, target=act.target, lot=act.lot,
            place=act.place, amount=act.amount, reverses=act.reverses, facts=facts,
        )  # fmt: skip

    def _chain(self, act: Act, line: Line) -> None:
        undone = Movement.objects.get(shop=self.shop, seq=line.reverses) if line.reverses else None
        state = self.states.get(line.source or line.target or "")
        product = state.product if state and state.product else line.facts.get("product")
        movement = Movement(
            shop=self.shop, seq=line.seq, kind=line.kind, happened_at=line.at, recorded_at=self.recorded_at,
            person=self.by, source=self._row(line.source) or (undone and undone.source),
            target=self._row(line.target) or (undone and undone.target),
            lot=self.lots.row(line.lot) or (undone and undone.lot), place=self.names.place(line.place),
            job=self.names.job(act.job), step=self.names.step(act.step),
            product=self.names.product(str(product) if product else None),
            amount=line.amount, concentrate=concentrate(line, state), reverses=undone, facts=line.facts,
            request=self.request, format=FORMAT, previous_hash=self.head.hash,
        )  # fmt: skip
        movement.hash = hash_line(self.head.hash, body_of(movement))
        movement.save(force_insert=True)
        self.head.seq, self.head.hash = movement.seq, movement.hash
        self.lines.append(movement)

    def _row(self, code: str | None) -> Container | None:
        return self.containers[code] if code else None

    def _after(self, line: Line) -> None:
        written = self.lines[-1]
        if written.lot:
            self.lots.after(written.lot, line)
        for container in {written.source, written.target} - {None}:
            assert container is not None
            self.states[container.code] = self._next(container, line)
            self.changed.add(container.code)

    def _next(self, container: Container, line: Line) -> Held:
        state = self.states[container.code]
        try:
            if line.kind != "reverse" and (state.last_at is None or line.at >= state.last_at):
                return step(container.code, state, line)
            return fold(container.code, queries.lines_of(container))
        except TooLittle as refusal:
            raise TooLittle(self._too_little(container, line, state), code=refusal.code, seq=refusal.seq) from None
        except Refused as refusal:
            raise _in_the_way(line, refusal) from None

    def _too_little(self, container: Container, line: Line, state: Held) -> str:
        product = self.names.product(state.product)
        held = show(state.content, Dimension(product.dimension), self.shop.system) if product else "nothing"
        return f"{container.code} is booked at {held}. If it holds more, say so and carry on."

    def finish(self) -> list[Movement]:
        """Write what stands beside the ledger, and the head last; return the lines."""
        for code in self.changed:
            keep_copy(self.containers[code], self.states[code], self.lots, self.names)
        self.lots.keep()
        for container in self.lots.bottles(but=self.changed):
            keep_use_by(container)
        self.head.save(update_fields=["seq", "hash"])
        return self.lines


def _printed(lot: LotFacts) -> dict[str, object]:
    return {name: day.isoformat() for name in DATES if (day := getattr(lot, name))}


def _in_the_way(line: Line, refusal: Refused) -> Refused:
    if refusal.seq is None or refusal.seq == line.seq:
        return refusal
    says = f"Entry {refusal.seq} is in the way: {refusal.says}"
    return type(refusal)(says, code=refusal.code, seq=refusal.seq)


def concentrate(line: Line, state: Held | None) -> int | None:
    """Return what demand counts of a line: the product itself, at use, without its water; base units."""
    if line.kind != "use" or state is None or line.amount is None:
        return None
    product, water = state.parts
    return line.amount * product // (product + water)


def body_of(movement: Movement) -> dict[str, object]:
    """Return what a line's hash covers: codes, never names or keys; integers; UTC microseconds."""
    return {
        "seq": movement.seq,
        "shop": movement.shop.slug,
        "kind": movement.kind,
        "happened_at": microseconds(movement.happened_at),
        "recorded_at": microseconds(movement.recorded_at),
        "person": _code(movement.person),
        "source": _code(movement.source),
        "target": _code(movement.target),
        "lot": _code(movement.lot),
        "place": _code(movement.place),
        "job": _code(movement.job),
        "step": _code(movement.step),
        "product": _code(movement.product),
        "amount": movement.amount,
        "concentrate": movement.concentrate,
        "reverses": movement.reverses.seq if movement.reverses else None,
        "facts": movement.facts,
    }


def _code(row: object) -> str | None:
    return None if row is None else str(row.code)  # type: ignore[attr-defined]


def start(shop: Shop) -> Head:
    """Give a new shop the head of its chain; call once, when the shop is made."""
    head, _ = Head.objects.get_or_create(shop=shop)
    return head


def refresh_use_by(containers: Iterable[Container]) -> int:
    """Recompute the use-by copies after a life was edited, in the caller's transaction; return how many changed."""
    return sum(keep_use_by(container) for container in containers)
