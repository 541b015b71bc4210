"""Hazards in plain words for a wall: one heading a pictogram, the gravest first.

The words are ours (common practice, no source); the statements of the regulation stand beside the products.
"""

from safety.hazards.classes import plain

# Gravest first: what kills or maims on contact, then poisons, then fire, then lasting harm, then the rest.
# (heading, pictogram, codes)
GROUPS: tuple[tuple[str, str, tuple[str, ...]], ...] = (
    ("Can kill on skin", "GHS06", ("H310",)),
    ("Can kill if breathed", "GHS06", ("H330",)),
    ("Can kill if swallowed", "GHS06", ("H300",)),
    ("Burns skin and eyes", "GHS05", ("H314",)),
    ("Damages eyes", "GHS05", ("H318",)),
    ("Toxic on skin", "GHS06", ("H311",)),
    ("Toxic to breathe", "GHS06", ("H331",)),
    ("Toxic if swallowed", "GHS06", ("H301",)),
    ("Can explode", "GHS01", ("H240", "H241")),
    (
        "Catches fire",
        "GHS02",
        ("H220", "H221", "H222", "H223", "H224", "H225", "H226", "H228", "H282", "H283"),
    ),
    ("Catches fire by itself", "GHS02", ("H250", "H251", "H252", "H260", "H261", "H242", "H241")),
    ("Harms lungs", "GHS08", ("H334", "H304")),
    ("May cause cancer", "GHS08", ("H340", "H341", "H350", "H351")),
    ("Harms the unborn", "GHS08", ("H360", "H361")),
    ("Harms organs", "GHS08", ("H370", "H371", "H372", "H373")),
    ("Feeds a fire", "GHS03", ("H270", "H271", "H272")),
    ("Bursts if heated", "GHS04", ("H280", "H281", "H282", "H283", "H284")),
    ("Eats metal", "GHS05", ("H290",)),
    ("Skin allergy", "GHS07", ("H317",)),
    ("Harmful", "GHS07", ("H302", "H312", "H332")),
    ("Irritates eyes", "GHS07", ("H319",)),
    ("Irritates skin", "GHS07", ("H315",)),
    ("Makes drowsy", "GHS07", ("H336",)),
    ("Irritates airways", "GHS07", ("H335",)),
    ("Harms the ozone layer", "GHS07", ("H420",)),
    ("Harms water life", "GHS09", ("H400", "H410", "H411")),
)
# These stand apart although one diamond covers them: other care is needed for each.
APART = {"Harms lungs", "May cause cancer", "Harms the unborn", "Harms organs"}


def single(codes: tuple[str, ...]) -> list[str]:
    """Return codes one by one, without suffix: H302+H312 is two."""
    return [plain(part) for code in codes for part in code.split("+")]


def meant(pictograms: tuple[str, ...], codes: tuple[str, ...]) -> list[tuple[str, str, tuple[str, ...]]]:
    """Return (heading, pictogram, codes) that a label's elements stand for, gravest first."""
    have = single(codes)
    found = []
    for heading, pictogram, covered in GROUPS:
        hits = tuple(code for code in have if code in covered)
        if hits and pictogram in pictograms:
            found.append((heading, pictogram, hits))
    return found


def gravity(codes: tuple[str, ...]) -> int:
    """Return how grave a product's statements are: 0 is the gravest, beyond the list the mildest."""
    have = set(single(codes))
    for place, (_, _, covered) in enumerate(GROUPS):
        if have & set(covered):
            return place
    return len(GROUPS) + (0 if have else 1)
