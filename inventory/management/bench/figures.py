"""A figure: what was measured, in which unit, against which aim; and the clock."""

from collections.abc import Callable
from dataclasses import asdict, dataclass
from statistics import median
from time import perf_counter


@dataclass(frozen=True)
class Figure:
    """One measured number; `aim` says what it should be at most, empty where nothing was promised."""

    name: str
    value: float
    unit: str
    aim: str = ""

    def as_json(self) -> dict[str, object]:
        """Return the figure as it stands in the JSON document."""
        return asdict(self)

    def __str__(self) -> str:
        aim = f"   (aim {self.aim})" if self.aim else ""
        return f"{self.name:<72} {self.value:>12,.2f} {self.unit}{aim}"


def milliseconds(do: Callable[[], object]) -> float:
    """Return how long one call takes."""
    start = perf_counter()
    do()
    return (perf_counter() - start) * 1000


def typical(times: list[float]) -> float:
    """Return the median: one slow turn of a busy machine does not move it."""
    return median(times)
