"""Does a product come too early upon a layer that still cures, or before another has done its work?"""

from datetime import tzinfo

from .acts import Act, Found
from .reading import in_words
from .recoat import recoat
from .running import Running, length, running, wanted
from .saying import moment, span
from .standing import Standing, began, ended


def in_time(standing: Standing, act: Act, zone: tzinfo) -> list[Found]:
    """Return the waits that an act breaks on this surface."""
    return [
        *_water(standing, act, zone),
        *_protection(standing, act, zone),
        *recoat(standing, act, zone),
        *_dwell(act),
        *_flash(standing, act, zone),
    ]


def _water(standing: Standing, act: Act, zone: tzinfo) -> list[Found]:
    """Water while it must stay dry, a wash while it must not be washed; a spot wiped dry is always right."""
    if not (act.has("wet") or act.spot):
        return []
    dry = running(standing.layers, began(act), "keep_dry_h")
    wait = dry or running(standing.layers, began(act), "wash_hold_d")
    if wait is None or not standing.once("water", act.step, act.spot):
        return []
    after = f"{span(began(act) - wait.since)} after {wait.layer.name} {{where}}"
    if act.spot:
        says = f"{act.step_name}: spots are cleaned with water {after}, which is always right if wiped dry."
        because = "Bird droppings and the like etch, and must come off soon."
        do = "Record where and when, and that it was wiped dry."
        return [Found("wait.spot_clean", "tell", says, because, "", do, in_words("T"))]
    if dry:
        says = f"{act.step_name}: {act.name} brings water {after}; it must stay dry for {wait.wanted}."
        return [_early("wait.keep_dry", "stop", says, "Water spots a coating that has not set.", wait, zone)]
    says = f"{act.step_name}: {act.name} washes {after}; it must not be washed for {wait.wanted}."
    return [
        _early("wait.wash_hold", "stop", says, "Soap and mitt mar a coating that is not hard.", wait, zone)
    ]


def _protection(standing: Standing, act: Act, zone: tzinfo) -> list[Found]:
    """Wax upon a coating that cures stops; a topper is right where the coating's maker names it."""
    if not act.has("seals") or act.has("coats"):
        return []
    topper = act.has("topper")
    layers = [one for one in standing.layers if not (topper and one.profile.topper_ok)]
    wait = running(layers, began(act), "cure_h", "keep_dry_h")
    if wait is None or not standing.once("protection", act.step, topper):
        return []
    after = f"{span(began(act) - wait.since)} after {wait.layer.name} {{where}}"
    says = f"{act.step_name}: {act.name} would go on {after}; it cures for {wait.wanted}."
    if topper:
        because = "Some makers want a topper within the hour, as rain cover; others want none."
        found = _early("wait.topper", "ask", says, because, wait, zone)
        return [_with(found, f"{found.do} Or say on the coating's page that its maker names a topper.")]
    return [_early("wait.cure", "stop", says, "Wax shuts in what must leave a coating.", wait, zone)]


def _early(code: str, grade: str, says: str, because: str, wait: Running, zone: tzinfo) -> Found:
    origin = f"{wait.layer.name} was put on until {moment(wait.since, zone)}."
    do = f"Wait until {moment(wait.until, zone)}."
    return Found(code, grade, says, because, origin, do, wait.source, wait.until.timestamp())


def _with(found: Found, do: str) -> Found:
    return Found(**{**vars(found), "do": do})


def _dwell(act: Act) -> list[Found]:
    """Ask where a step is shorter than the time its product must lie."""
    minutes, lasts = act.profile.waits.dwell_min, ended(act) - began(act)
    if minutes is None or lasts >= length("dwell_min", minutes):
        return []
    says = f"{act.step_name}: {act.name} must lie for {minutes} min {{where}}; the step lasts {span(lasts)}."
    because = "A product that is taken off too early has not done its work."
    do = f"Give the step at least {minutes} min."
    return [Found("wait.dwell", "ask", says, because, "", do, act.profile.source("dwell_min"))]


def _flash(standing: Standing, act: Act, zone: tzinfo) -> list[Found]:
    """Ask where a product comes before the one below has flashed off; within one step nobody can say."""
    if not act.profile.traits:
        return []
    found = []
    for below in standing.flashing:
        minutes = below.profile.waits.flash_min
        assert minutes is not None
        over = ended(below) + length("flash_min", minutes)
        if below.step == act.step or began(act) >= over or not standing.once("flash", act.step, below.step):
            continue
        says = (
            f"{act.step_name}: {act.name} would go on {span(began(act) - ended(below))} after {below.name} "
            f"{{where}}; it must flash off for {wanted('flash_min', minutes)}."
        )
        because = f"{below.name} ({below.step_name}) is on until {moment(ended(below), zone)}."
        do, source = f"Wait until {moment(over, zone)}.", below.profile.source("flash_min")
        found.append(Found("wait.flash", "ask", says, because, "", do, source, over.timestamp()))
    return found
