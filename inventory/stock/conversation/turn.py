"""One turn of the conversation: where it stands, what was said, what is known; and the ways to end it."""

from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from inventory.stock.rules.acts import Act

from . import words
from .answers import ASK, RECORDED, STOP, TELL, UNKNOWN, Answer, Heard, Key
from .facts import Bottle, Facts, JobFacts, PersonFacts, PlaceFacts
from .lines import Said
from .state import State


@dataclass(frozen=True)
class Turn:
    """What a verb works on; every method returns a value and changes nothing."""

    state: State
    said: Said
    facts: Facts

    @property
    def bottle(self) -> Bottle | None:
        """The bottle in hand."""
        return self.facts.bottles.get(self.state.bottle)

    @property
    def job(self) -> JobFacts | None:
        """The car in hand."""
        return self.facts.jobs.get(self.state.job)

    @property
    def place(self) -> PlaceFacts | None:
        """Where the person is."""
        return self.facts.places.get(self.state.place)

    @property
    def person(self) -> PersonFacts | None:
        """Whose badge it was."""
        return self.facts.people.get(self.state.who)

    @property
    def today(self) -> date:
        """The shop's day on which it happens."""
        return words.local(self.facts.at, self.facts.zone)

    def of(self, bottle: Bottle, base: int) -> str:
        """Return an amount of what is in a bottle, in the shop's units."""
        return words.amount(base, bottle.product, self.facts.shop)

    def ask(
        self, says: str, next: str = "", *keys: Key, verb: str = "", waits: str = "", **slots: Any
    ) -> Heard:
        """Ask, and wait for the answer."""
        waiting = replace(self.state, verb=verb, waits=waits, slots=slots)
        return Heard(waiting, Answer(ASK, says, next, keys), about=self.about)

    def again(self, says: str, next: str = "", *keys: Key) -> Heard:
        """Ask the same once more: what was said did not answer it."""
        return Heard(self.state, Answer(ASK, says, next, keys), about=self.about)

    def stop(self, says: str, next: str = "", *keys: Key) -> Heard:
        """Refuse; nothing stays under way."""
        return Heard(self.state.idle(), Answer(STOP, says, next, keys), about=self.about)

    def unknown(self, says: str, next: str = "", *keys: Key, set_aside: bool = False) -> Heard:
        """Say that this is not known; what is under way stays so."""
        return Heard(self.state, Answer(UNKNOWN, says, next, keys), about=self.about, set_aside=set_aside)

    def tell(self, says: str, next: str = "", *keys: Key, **changes: Any) -> Heard:
        """Say something that is no entry."""
        return Heard(self.state.idle(**changes), Answer(TELL, says, next, keys), about=self.about)

    def recorded(
        self,
        says: str,
        next: str = "",
        *keys: Key,
        acts: tuple[Act, ...] = (),
        what: str = "",
        effects: tuple[dict[str, Any], ...] = (),
        state: State | None = None,
        labels: bool = False,
    ) -> Heard:
        """Record acts; what the check only tells rides on the next sentence."""
        flagged = (
            tuple(replace(act, facts={**act.facts, "late": True}) for act in acts)
            if self.facts.late
            else acts
        )
        told = [
            found.says
            for found in self.facts.findings
            if found.grade == TELL and self._about(found.about, acts)
        ]
        late = ["Entered late: marked so."] if self.facts.late and acts else []
        more = " ".join(part for part in (*told[:1], *late, next) if part)
        answer = Answer(RECORDED, says, more, keys, labels=labels)
        return Heard(state or self.state.idle(), answer, flagged, effects, what, about=self.about)

    def _about(self, about: tuple[str, ...], acts: tuple[Act, ...]) -> bool:
        return any(act.source in about or act.target in about for act in acts)

    @property
    def about(self) -> str:
        """The car's name, as the list of last answers shows it."""
        return self.job.name if self.job else ""
