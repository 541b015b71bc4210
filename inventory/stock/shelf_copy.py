"""What stands beside the ledger: a container's row and its use by, written by the ledger alone."""

from collections.abc import Iterable, Iterator

from inventory.codes import pair
from inventory.models import Container, Lot
from inventory.stock import queries
from inventory.stock.lots import Lots
from inventory.stock.names import Names
from inventory.stock.rules.acts import NewBottle
from inventory.stock.rules.lines import Held, Refused
from inventory.stock.rules.use_by import use_by
from inventory.stock.use_by_copy import USE_BY, put_use_by

BATCH = 500
FOLDED = [
    "state", "product", "parts_product", "parts_water", "place", "content", "opened_at", "mixed_at",
    "received_at", "estimated", "held", "uses", "minutes", "retest_on", "rinsed", "last_at", "last_seq",
]  # fmt: skip


def new_container(names: Names, new: NewBottle, drawn: Iterator[str], taken: set[str]) -> Container:
    """Return the row of a bottle that arrives, unsaved; a missing code is drawn, a given one must be free."""
    if new.code in taken:
        says = f"{pair(new.code)} is on another bottle already. Take the next label."
        raise Refused(says, code="code_taken")
    if new.code:
        taken.add(new.code)
    code = new.code or next(drawn)
    return Container(
        shop=names.shop, code=code, noun=new.noun, pack_id=new.pack, full=new.full, refillable=new.refillable
    )


def write_new(arrived: Iterable[tuple[Container, Held]], lots: Lots, names: Names) -> None:
    """Write bottles that were not there before, with what they hold by now, in few statements."""
    pairs = list(arrived)
    batches = [_put_copy(container, state, lots, names) for container, state in pairs]
    Container.objects.bulk_create([container for container, _ in pairs], batch_size=BATCH)
    between = Container.lots.through
    between._default_manager.bulk_create(
        [
            between(container_id=container.pk, lot_id=lot.pk)
            for (container, _), batch in zip(pairs, batches, strict=True)
            for lot in batch
        ],
        batch_size=BATCH,
    )


def keep_copy(container: Container, state: Held, lots: Lots, names: Names) -> None:
    """Write what changed of the folded state beside the container, and of its use by."""
    before = {name: getattr(container, name) for name in FOLDED + USE_BY}
    batch = _put_copy(container, state, lots, names)
    if {lot.code for lot in container.lots.all()} != state.lots:
        container.lots.set(batch)
    container.save(update_fields=[name for name in before if getattr(container, name) != before[name]])


def _put_copy(container: Container, state: Held, lots: Lots, names: Names) -> list[Lot]:
    put_state(container, state, names)
    batch = lots.of(state.lots)
    dates = queries.dates_of(
        container.product, batch, opened_at=state.opened_at, mixed_at=state.mixed_at,
        retest_on=state.retest_on, estimated=state.estimated,
    )  # fmt: skip
    put_use_by(container, use_by(dates, names.shop.zone))
    return batch


def put_state(container: Container, state: Held, names: Names) -> None:
    """Copy a folded state into a container's row, unsaved."""
    container.state, container.content, container.held = state.state, state.content, state.held
    container.product, container.place = names.product(state.product), names.place(state.place)
    container.parts_product, container.parts_water = state.parts
    container.opened_at, container.mixed_at = state.opened_at, state.mixed_at
    container.received_at, container.estimated = state.received_at, state.estimated
    container.uses, container.minutes, container.retest_on = state.uses, state.minutes, state.retest_on
    container.rinsed, container.last_at, container.last_seq = state.rinsed, state.last_at, state.last_seq
