"""What the posters and labels are made from, read in a constant number of queries."""

from inventory.posters.queries.codes import badges, cards, weather_card
from inventory.posters.queries.labels import forms_here, in_order, labels, missing, stock_for
from inventory.posters.queries.papers import (
    cabinet,
    card,
    chemicals,
    product_called,
    product_coded,
    shop_called,
)
from inventory.posters.queries.walls import (
    Wall,
    content,
    now,
    place_called,
    place_coded,
    place_facts,
    products_to_admit,
    today,
    walls,
)

__all__ = [
    "Wall",
    "badges",
    "cabinet",
    "card",
    "cards",
    "chemicals",
    "content",
    "forms_here",
    "in_order",
    "labels",
    "missing",
    "now",
    "place_called",
    "place_coded",
    "place_facts",
    "product_called",
    "product_coded",
    "products_to_admit",
    "shop_called",
    "stock_for",
    "today",
    "walls",
    "weather_card",
]
