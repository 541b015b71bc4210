"""A badge, a bottle, a place or a car that is scanned by itself."""

from dataclasses import replace

from .. import words
from ..answers import STOP, Heard, Key
from ..guards import USING, first_objection
from ..instead import label_key
from ..objections import Taking
from ..turn import Turn
from . import away, move, rinse, use, washed
from .open import dies

STAGES = {
    "wash": "wash",
    "decontaminate": "decontaminate",
    "correct": "correct",
    "coat": "coat",
    "cure": "cure",
}

GRAVEST = ("stop", "ask")


def who(turn: Turn) -> Heard:
    """A badge says who; what had waited runs now. Another person starts without the last one's car."""
    person = turn.facts.people.get(turn.said.code)
    if person is None:
        return turn.unknown("That badge is nobody's here.", "Ask an owner to look at it on the People page.")
    if person.role == "viewer":
        return turn.stop(
            f"{person.name} can read everything and record nothing.", "Scan the badge of who does the work."
        )
    waiting, same = turn.state.waiting, turn.state.who == person.code
    if same and not waiting:
        return turn.tell(f"Hello {person.name}.", "Scan the next thing.")
    state = replace(
        turn.state.idle(),
        who=person.code,
        waiting=(),
        bottle="",
        delivery={},
        job=turn.state.job if same else "",
    )
    heard = replace(turn, state=state).tell(f"Hello {person.name}.", "Scan a car, a bottle, or what came.")
    return replace(heard, replay=waiting)


def at_bottle(turn: Turn) -> Heard:
    """A bottle: onto the car in hand, or in hand with what may be done next."""
    bottle = turn.facts.bottles.get(turn.said.code)
    if bottle is None:
        return turn.unknown(
            f"{words.short(turn.said.code)} is no code of a bottle here.",
            "Compare the letters, or receive the bottle first.",
            set_aside=True,
        )
    held = replace(turn, state=turn.state.idle(bottle=bottle.code))
    if turn.job and bottle.product and bottle.content:
        return use.on_a_car(held, bottle)
    if bottle.state == "gone":
        return held.tell(
            f"{words.name(bottle)} was booked out of the shop.",
            "If it is here after all: UNDO that entry, or ask an owner.",
        )
    objection = (
        first_objection(Taking(bottle, 0), turn.facts, (), USING)
        if bottle.product and bottle.content
        else None
    )
    if objection and objection.code not in {"unlabelled", "starves"}:
        grade = held.stop if objection.grade == STOP else held.tell
        keys = [key for key in objection.keys if key.line != "YES"] + [
            Key("Discard it", "DISCARD"),
            Key("Hold it", "HOLD"),
        ]
        heard = grade(
            objection.says,
            objection.next.replace(", then YES", ""),
            *{key.label: key for key in keys}.values(),
        )
        return replace(heard, state=held.state)
    return held.tell(_description(held), "What is done with it?", *_keys(held))


def _description(turn: Turn) -> str:
    bottle = turn.bottle
    assert bottle is not None
    if not bottle.product or not bottle.content:
        last = f", last held {bottle.product.name}" if bottle.product and not bottle.rinsed else ""
        return f"{words.short(bottle.code)}: {bottle.noun}, empty{last}."
    mix = f" {bottle.shelf.parts[0]}:{bottle.shelf.parts[1]}" if bottle.shelf.parts[1] else ""
    return (
        f"{words.name(bottle)}{mix}: {words.holds(bottle, turn.facts)}, {bottle.state}. {dies(turn, bottle)}"
    )


def _keys(turn: Turn) -> tuple[Key, ...]:
    bottle = turn.bottle
    assert bottle is not None
    if not bottle.content:
        rinse = () if bottle.rinsed else (Key("Rinse it", "RINSE", main=True),)
        return (*rinse, Key("Count", "COUNT"), Key("Discard it", "DISCARD"), label_key(bottle.code))
    opening = (Key("Open", "OPEN", main=True),) if bottle.state == "sealed" else ()
    using = Key("Use", "USE", main=not opening)
    liquid = bottle.product is not None and bottle.product.dimension in {"volume", "mass"}
    pouring = (Key("Fill from it", "FILL"),) if liquid else ()
    washing = (Key("Washed", "WASHED"),) if washed.counts(bottle) else ()
    return (
        *opening,
        using,
        *pouring,
        *washing,
        Key("Move", "MOVE"),
        Key("Count", "COUNT"),
        Key("Hold it", "HOLD"),
        Key("Discard it", "DISCARD"),
        label_key(bottle.code),
    )


def at_place(turn: Turn) -> Heard:
    """A place: the bottle in hand goes there; without one, it is where the person is."""
    place = turn.facts.places.get(turn.said.code)
    if place is None:
        return turn.unknown(f"{words.short(turn.said.code)} is no place of this shop.", "Scan it again.")
    if place.can:
        return away.into(turn, place) if away.tippable(turn) else rinse.at_can(turn, place)
    here = replace(turn, state=replace(turn.state, place=place.code))
    if turn.bottle and turn.bottle.shelf.place != place.code and turn.bottle.state != "gone":
        return move.settle(here, {"place": place.code})
    return here.tell(f"You are at {place.name}.", "Scan a car or a bottle.")


def at_job(turn: Turn) -> Heard:
    """A car's job: what is scanned next goes onto it; the check speaks first."""
    job = turn.facts.jobs.get(turn.said.code)
    if job is None:
        return turn.unknown(
            f"{words.short(turn.said.code)} is no open job of this shop.", "Look it up on the Jobs page."
        )
    if job.state != "open":
        return turn.stop(f"The job on {job.name} is {job.state}.", "Book it again if there is more to do.")
    step = job.step
    place = step.bay if step and step.bay else turn.state.place
    car = replace(turn, state=replace(turn.state.idle(), job=job.code, place=place, bottle=""))
    now = (
        f"{STAGES.get(step.stage, step.stage)}{f', {step.bay_name}' if step.bay_name else ''}"
        if step
        else "every stage is signed"
    )
    says = f"On {job.name}: {now}."
    page = Key("See its check", page="check", about=job.code)
    worst = min(
        (found for found in turn.facts.findings if found.grade in GRAVEST),
        key=lambda found: (job.later(found.about), GRAVEST.index(found.grade)),
        default=None,
    )
    if worst is None:
        return car.tell(
            says, "Scan what goes onto it. SIGN when the stage is done.", Key("Sign the stage", "SIGN"), page
        )
    keys = page, Key("Sign the stage", "SIGN")
    if worst.grade == STOP and not job.later(worst.about):
        return replace(car.stop(f"{says} {worst.says}", worst.do, *keys), state=car.state)
    before = "Before a later stage: " if job.later(worst.about) else ""
    return replace(car.tell(f"{says} {before}{worst.says}", worst.do, *keys), state=car.state)


def reprint(turn: Turn) -> Heard:
    """REPRINT: the label of the bottle in hand."""
    if turn.bottle is None:
        return turn.unknown("Print whose label? No bottle is in hand.", "Scan the bottle, then REPRINT.")
    return turn.tell(
        f"The label of {words.name(turn.bottle)} is ready.",
        "Print it.",
        label_key(turn.bottle.code, main=True),
    )
