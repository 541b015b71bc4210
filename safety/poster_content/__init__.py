"""What our paper says of a place, a product, a cabinet, a shop: facts in, one content out. Pure.

Lead lines of first aid are the common first measures (after the P-statements P305+P351+P338, P303+P361+P353,
P304+P340, P301+P330+P331, from memory); the sheets' own words stand below them, the gravest product first.
"""

from safety.poster_content.card import card_content
from safety.poster_content.dates import year_after
from safety.poster_content.lists import Kept, cabinet_content, chemicals_content
from safety.poster_content.place import poster_content
from safety.print.words import written

__all__ = [
    "Kept",
    "cabinet_content",
    "card_content",
    "chemicals_content",
    "poster_content",
    "written",
    "year_after",
]
