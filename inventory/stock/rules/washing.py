"""What can be washed and used again: a pad or a towel that wears; a piece out of a box is a fresh one."""

KINDS = frozenset({"pad", "towel"})
STAYS = "What single-stage paint, metal or a coating left in it stays."


def is_washed(kind: str, wears: bool) -> bool:
    """Say whether a product's washing is kept: it is used again, so what it carried before matters."""
    return kind in KINDS and wears


def not_washed(kind: str) -> str:
    """Return why the washing of something is not kept."""
    if kind in KINDS:
        return (
            "comes fresh out of its box, so its washing is not kept. "
            "Where it is used again, an owner types on its page how many uses it lasts."
        )
    return "is no pad and no towel, so its washing is not kept."
