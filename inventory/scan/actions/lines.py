"""One line said to a station: heard, written, answered and remembered in one transaction."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from inventory.models import Heard as HeardRow
from inventory.models import Movement, Person, Request, Station
from inventory.precheck.actions import keep_shown
from inventory.scan.queries import Loaded, load
from inventory.scan.queries.beyond import Beyond
from inventory.stock import ledger
from inventory.stock.conversation import Answer, Done, Heard, State, hear, read_line
from inventory.stock.requests import answer_once
from inventory.stock.rules.lines import Refused

from .effects import EFFECTS

Spoken = dict[str, Any]
LAST_SHOWN = 5
NOT_RECORDED = {"stop", "unknown"}
GRAVEST = ("stop", "ask", "unknown", "recorded", "tell")


def say(station: Station, line: str, key: str, at: datetime, *, now: datetime) -> Spoken:
    """Return what a station answers to a line; a key that was answered before gets the same answer again.

    `at` is when it happened, `now` when it is written; what happened later than now happened now. Raises
    KeyReused where the key came with another line.
    """
    happened = min(at, now)
    body = {"station": station.code, "line": line}

    def answer(request: Request) -> Spoken:
        return _hear(station, line, happened, now, request)

    return {"scan": line, **answer_once(station.shop, key, body, now, answer), "key": key}


def _hear(station: Station, line: str, at: datetime, now: datetime, request: Request) -> Spoken:
    # The chain's head is locked by now: what another line wrote to the station's state is there to be read.
    station.refresh_from_db(fields=["state"])
    turn = _Line(station, now, request)
    spoken = turn.hear(line, at)
    for waited, when in turn.replay:
        spoken = _both(spoken, turn.hear(waited, datetime.fromisoformat(when)))
    station.state = {
        "state": turn.state.as_json(), "bar": turn.bar, "answer": spoken, "last": turn.last,
        "judged": [one.as_json() for one in turn.judged],
    }  # fmt: skip
    station.save(update_fields=["state"])
    return spoken


def _both(first: Spoken, then: Spoken) -> Spoken:
    """Return one answer for a badge and a line that waited for it: the gravest speaks, all entries count."""
    graver = min(then, first, key=lambda one: GRAVEST.index(one["grade"]))
    said = then if first.get("greeting") or graver is then else first
    return {
        **said,
        "movements": first["movements"] + then["movements"],
        "labels": first["labels"] + then["labels"],
        "bar": then["bar"],
        "next": said["next"] or "What had waited for the badge is done.",
    }


@dataclass
class _Line:
    """The station's conversation while one request is answered."""

    station: Station
    now: datetime
    request: Request

    def __post_init__(self) -> None:
        kept = self.station.state or {}
        self.state = State.from_json(kept.get("state", {}))
        self.bar: dict[str, str] = {"who": "", "car": "", "place": "", **kept.get("bar", {})}
        self.last: list[Spoken] = kept.get("last", [])
        self.judged = tuple(map(Beyond.from_json, kept.get("judged", ())))
        self.replay: tuple[tuple[str, str], ...] = ()

    def hear(self, line: str, at: datetime) -> Spoken:
        """Answer one line, and move the state on."""
        said = read_line(line, today=at.astimezone(self.station.shop.zone).date())
        loaded = load(self.station, self.state, said, at, self.now, self.judged)
        heard = hear(self.state, said, loaded.facts)
        judged = loaded.judged_with(self.state, heard)
        if judged is not loaded:
            loaded, heard = judged, hear(self.state, said, judged.facts)
        by = loaded.people.get(heard.state.who)
        try:
            lines = self._write(heard, loaded, by)
        except Refused as refusal:
            stopped = Answer("stop", refusal.says, "Nothing was recorded.")
            heard, lines = Heard(self.state.idle(), stopped, about=heard.about), []
        self.judged = _judged(heard, loaded)
        if loaded.job and said.kind in {"job", "vehicle"}:
            keep_shown(loaded.job, (one for one in loaded.facts.findings if one.grade != "tell"), at)
        self.state = _remembering(heard, lines)
        self.replay = heard.replay or self.replay
        self.bar = _bar(self.bar, self.state, loaded)
        self._keep(line, heard)
        return self._spoken(heard, lines)

    def _write(self, heard: Heard, loaded: Loaded, by: Person | None) -> list[Movement]:
        shop = self.station.shop
        lines = []
        if heard.acts:
            lines = ledger.record(
                shop, heard.acts, by=by, recorded_at=self.now, request=self.request, known=loaded.known
            )
        for effect in heard.effects:
            EFFECTS[effect["does"]](effect, shop=shop, loaded=loaded, by=by)
        return lines

    def _keep(self, line: str, heard: Heard) -> None:
        """List what is no question on screen; what was recorded stands in the ledger, what was not here."""
        answer = heard.answer
        if answer.grade != "ask":
            car = heard.about
            shown = {"grade": answer.grade, "at": self.now.isoformat(), "says": answer.says, "car": car}
            self.last = [shown, *self.last][:LAST_SHOWN]
        if answer.grade in NOT_RECORDED:
            HeardRow.objects.create(
                station=self.station,
                at=self.now,
                line=line[:300],
                grade=answer.grade,
                says=answer.says,
                about=heard.about[:60],
                set_aside=heard.set_aside,
            )

    def _spoken(self, heard: Heard, lines: list[Movement]) -> Spoken:
        answer = heard.answer
        labels = [
            line.target.code for line in lines if answer.labels and line.kind == "receive" and line.target
        ]
        return {
            "grade": answer.grade,
            "says": answer.says,
            "next": answer.next,
            "movements": [_entry(line) for line in lines],
            "keys": [vars(key) for key in answer.keys],
            "labels": labels,
            "opens": answer.opens,
            "bar": self.bar,
            "greeting": bool(heard.replay),
        }


def _judged(heard: Heard, loaded: Loaded) -> tuple[Beyond, ...]:
    """A signature, an answer or what was declared changes what holds beyond the shelf: the next asks anew."""
    uses = [act for act in heard.acts if act.kind == "use" and act.job]
    if heard.effects or heard.undoes or any(use.facts.get("declared") for use in uses):
        return ()
    return loaded.kept if uses else loaded.beyond


def _entry(line: Movement) -> dict[str, Any]:
    return {
        "seq": line.seq,
        "kind": line.kind,
        "source": line.source.code if line.source else None,
        "target": line.target.code if line.target else None,
        "amount": line.amount,
    }


def _remembering(heard: Heard, lines: list[Movement]) -> State:
    """Return the state with what was done just now, so that it can be taken back as one."""
    state = heard.state
    if heard.undoes or not heard.what:
        return state
    seqs = (*heard.keeps, *(line.seq for line in lines if line.kind != "reverse"))
    return state.remember(Done(state.who, seqs, heard.what, heard.effects))


def _bar(bar: dict[str, str], state: State, loaded: Loaded) -> dict[str, str]:
    """Return who, car and place by name, as they stand on top of the page."""
    facts = loaded.facts
    person, job = facts.people.get(state.who), facts.jobs.get(state.job)
    place = facts.places.get(state.place)
    step = next((step for step in job.steps if step.bay == state.place), None) if job else None
    return {
        "who": person.name if person else bar["who"] if state.who else "",
        "car": job.name if job else bar["car"] if state.job else "",
        "place": place.name if place else step.bay_name if step else bar["place"] if state.place else "",
    }
