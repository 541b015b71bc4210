"""Undo: this person's last act at this station, all of it at once."""

from inventory.stock.rules.acts import Act

from ..answers import Heard
from ..turn import Turn


def begin(turn: Turn) -> Heard:
    """UNDO: reverse lines, the last first; what the ledger refuses stays as it is."""
    last = turn.state.last_done
    if last is None:
        return turn.tell(
            "There is nothing of yours to take back at this station.", "An owner can correct older entries."
        )
    acts = tuple(Act("reverse", turn.facts.at, reverses=seq) for seq in reversed(last.seqs))
    back = tuple({**effect, "undo": True} for effect in last.effects)
    heard = turn.recorded(
        f"Taken back: {last.what}.",
        "Scan it again as it should be." if acts else "It counts no more.",
        acts=acts,
        effects=back,
        state=turn.state.idle().without(last),
    )
    return Heard(heard.state, heard.answer, heard.acts, heard.effects, about=heard.about, undoes=True)
