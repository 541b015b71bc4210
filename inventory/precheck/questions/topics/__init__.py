"""What the check is told beyond the shelf, one topic a file: values that loaders fill and questions read."""

from .air import AirFacts
from .paint import PaintFacts
from .people import PeopleFacts
from .rags import RagFacts
from .reactions import ReactionFacts
from .surfaces import SurfaceFacts
from .weather import WeatherFacts

__all__ = [
    "AirFacts", "PaintFacts", "PeopleFacts", "RagFacts", "ReactionFacts", "SurfaceFacts", "WeatherFacts",
]  # fmt: skip
