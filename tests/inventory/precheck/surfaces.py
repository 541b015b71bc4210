"""What the steps of the job on paper do to the surfaces of its car."""

from inventory.precheck.questions import Facts
from inventory.precheck.questions.topics import SurfaceFacts
from inventory.trade.acts import Act, Surface
from inventory.trade.edits import Edits
from inventory.trade.profile import profile
from tests.inventory.precheck.cases import facts

PAINT = Surface("paint", "clear_coat")


def act(step, product: str, kind: str, **more: object) -> Act:
    """Return what a step of the job on paper does with a product of a kind."""
    edits = more.pop("edits", Edits())
    known: dict[str, object] = {
        "step": step.code,
        "step_name": step.name,
        "product": product,
        "name": product.title(),
        "kind": kind,
        "profile": profile(kind, edits=edits),  # type: ignore[arg-type]
        "starts_at": step.starts_at,
        "ends_at": step.ends_at,
        **more,
    }
    return Act(**known)  # type: ignore[arg-type]


def of(*acts: Act, surfaces: tuple[Surface, ...] = (PAINT,), described: bool = True, **more: object) -> Facts:
    """Return the job on paper with these acts on these surfaces."""
    return facts(surfaces=SurfaceFacts(surfaces, acts, described), **more)
