"""What another sheet, or another regime, changes on a label. Pure."""

from dataclasses import dataclass
from hashlib import sha256

from safety.hazards.facts import LabelParts

FINGERPRINT = 8


@dataclass(frozen=True)
class Change:
    """What stood on a label and goes, and what comes: word, diamonds, codes, what is not settled."""

    gone: tuple[str, ...]
    came: tuple[str, ...]

    def __bool__(self) -> bool:
        return bool(self.gone or self.came)

    @property
    def says(self) -> str:
        """The change, to stand behind a colon: "now Warning, GHS07; no longer Danger, GHS05."."""
        told = [f"now {', '.join(self.came)}"] if self.came else []
        told += [f"no longer {', '.join(self.gone)}"] if self.gone else []
        return f"{'; '.join(told)}." if told else "nothing on the label changes."


def what_changed(before: LabelParts, after: LabelParts) -> Change:
    """Return what of the label's word, diamonds, codes and open questions differs."""
    old, new = shown(before), shown(after)
    return Change(tuple(one for one in old if one not in new), tuple(one for one in new if one not in old))


def shown(parts: LabelParts) -> tuple[str, ...]:
    """Return what of a label hangs on the classes, in short."""
    found = parts.elements
    word = (found.signal_word,) if found.signal_word else ()
    notice = (parts.notice.rstrip("."),) if parts.notice else ()
    return (*word, *found.pictograms, *found.statements, *found.supplemental, *notice)


def fingerprint(parts: LabelParts) -> str:
    """Return eight letters that differ where two labels' hazards do: a printed one is held against them."""
    return sha256("\n".join(shown(parts)).encode()).hexdigest()[:FINGERPRINT]
