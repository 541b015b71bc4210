"""What stands beside the ledger: a container's row and its use by, written by the ledger alone."""

from inventory.codes import new_code
from inventory.models import Container
from inventory.stock import queries
from inventory.stock.lots import Lots
from inventory.stock.names import Names
from inventory.stock.rules.acts import NewBottle
from inventory.stock.rules.lines import Held, Refused
from inventory.stock.rules.use_by import use_by
from inventory.stock.use_by_copy import USE_BY, put_use_by

FOLDED = [
    "state", "product", "parts_product", "parts_water", "place", "content", "opened_at", "mixed_at",
    "received_at", "estimated", "held", "uses", "minutes", "retest_on", "rinsed", "last_at", "last_seq",
]  # fmt: skip


def new_container(names: Names, new: NewBottle) -> Container:
    """Return the row of a bottle that arrives, saved with nothing in it; a missing code is drawn here."""
    code = new.code or _fresh_code()
    if new.code and Container.objects.filter(code=new.code).exists():
        raise Refused(f"{new.code} is on another bottle already. Take the next label.", code="code_taken")
    return Container.objects.create(
        shop=names.shop, code=code, noun=new.noun, pack_id=new.pack, full=new.full, refillable=new.refillable
    )


def _fresh_code() -> str:
    while Container.objects.filter(code=(code := new_code("B"))).exists():
        pass
    return code


def keep_copy(container: Container, state: Held, lots: Lots, names: Names) -> None:
    """Write the folded state beside the container, and its use by."""
    put_state(container, state, names)
    batch = lots.of(state.lots)
    if {lot.code for lot in container.lots.all()} != state.lots:
        container.lots.set(batch)
    dates = queries.dates_of(
        container.product, batch, opened_at=state.opened_at, mixed_at=state.mixed_at,
        retest_on=state.retest_on, estimated=state.estimated,
    )  # fmt: skip
    put_use_by(container, use_by(dates, names.shop.zone))
    container.save(update_fields=FOLDED + USE_BY)


def put_state(container: Container, state: Held, names: Names) -> None:
    """Copy a folded state into a container's row, unsaved."""
    container.state, container.content, container.held = state.state, state.content, state.held
    container.product, container.place = names.product(state.product), names.place(state.place)
    container.parts_product, container.parts_water = state.parts
    container.opened_at, container.mixed_at = state.opened_at, state.mixed_at
    container.received_at, container.estimated = state.received_at, state.estimated
    container.uses, container.minutes, container.retest_on = state.uses, state.minutes, state.retest_on
    container.rinsed, container.last_at, container.last_seq = state.rinsed, state.last_at, state.last_seq
