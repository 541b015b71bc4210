"""What a car's surfaces arrive with, and what the job does to them in order."""

from dataclasses import dataclass

from inventory.trade.acts import Act, Surface


@dataclass(frozen=True)
class SurfaceFacts:
    """What a car's surfaces arrive with, and what the job does to them in order.

    `acts` hold signed steps as well, and silicone of other cars in the bay, whose steps are not the job's.
    `described`: somebody said, or the shop's own earlier work says, what the car arrives with.
    `unread`: words on the car that name no surface, where nobody listed its panels. `car` is its code.
    """

    surfaces: tuple[Surface, ...] = ()
    acts: tuple[Act, ...] = ()
    described: bool = False
    unread: tuple[str, ...] = ()
    car: str = ""
