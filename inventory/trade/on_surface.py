"""May a product touch what this surface is made of, now?"""

from datetime import datetime, time, timedelta, tzinfo

from .acts import Act, Found
from .edits import THIS_SHOP
from .reading import in_words
from .saying import day
from .standing import Standing, began
from .surface_rules import SurfaceRule, surface_rules
from .surfaces import materials


def on_surface(standing: Standing, act: Act, zone: tzinfo) -> list[Found]:
    """Return what the surface does not bear: always, at its age, or while it is hot."""
    return [*_always(standing, act), *_by_age(standing, act, zone), *_hot(standing, act)]


def _always(standing: Standing, act: Act) -> list[Found]:
    key = standing.surface.key
    if key in act.profile.never:
        return [_by_nature(key, act, "stop", "never", "would harm")]
    if key in act.profile.asks:
        found = _by_nature(key, act, "ask", "asks", "would touch")
        # One mask, or one word of a maker, answers every product that is asked about for the same reason.
        return [found] if standing.once(found.code, found.because) else []
    return []


def _by_nature(key: str, act: Act, grade: str, field: str, verb: str) -> Found:
    name, typed = materials()[key].name, act.profile.source(field) == THIS_SHOP
    rules = [] if typed else [one for one in _matching(key, act) if one.grade == grade and not one.dated]
    code = "surface.never" if grade == "stop" else "surface.ask"
    if not rules:
        says = f"{act.step_name}: {act.name} {verb} {name} {{where}}, as the product's page says."
        do = "Leave it out there, or mask the surface."
        return Found(code, grade, says, f"The page of {act.name} names {name}.", "", do, THIS_SHOP)
    traits = ", ".join(dict.fromkeys(one.trait for one in rules))
    says = f"{act.step_name}: {act.name} ({traits}) {verb} {name} {{where}}."
    return Found(code, grade, says, rules[0].because, "", rules[0].do, in_words(rules[0].mark))


def _matching(key: str, act: Act) -> list[SurfaceRule]:
    return [one for one in surface_rules() if key in one.surfaces and act.has(one.trait)]


def _by_age(standing: Standing, act: Act, zone: tzinfo) -> list[Found]:
    """Return the gravest rule on the age of a refinish or a film; one of unknown day counts as new."""
    for rule in _matching(standing.surface.key, act):
        days = _days(rule, standing, act)
        if not days or began(act) >= _over(standing, days, zone, began(act)):
            continue
        told = not standing.once(rule.code, rule.grade, days, act.step)
        return [] if told else [_young(rule, days, standing, act)]
    return []


def _days(rule: SurfaceRule, standing: Standing, act: Act) -> int | None:
    dried = "baked" if standing.surface.baked else "air"
    if rule.dried not in ("", dried) or (act.spot and rule.trait == "wet"):
        return None
    days: int | None = getattr(act.profile.waits, rule.wait) if rule.wait else None
    return rule.under_days if days is None else days


def _over(standing: Standing, days: int, zone: tzinfo, start: datetime) -> datetime:
    """Return when so many days are over, from the end of the day that was given."""
    since = standing.surface.since_on
    if since is None:
        return start + timedelta(days=1)
    return datetime.combine(since + timedelta(days=days + 1), time.min, zone)


def _young(rule: SurfaceRule, days: int, standing: Standing, act: Act) -> Found:
    since, name = standing.surface.since_on, materials()[standing.surface.key].name
    wanted = f"{days} d" + {"baked": " (baked)", "air": " (air-dried)", "": ""}[rule.dried]
    of = f" of {since.day} {since:%B %Y}" if since else ", its day unknown,"
    says = f"{act.step_name}: {act.name} would go on {name}{of} {{where}}; it must be {wanted} old."
    typed = bool(rule.wait) and act.profile.source(rule.wait) == THIS_SHOP
    if since is None:
        do, origin, weight = (
            "Type the day on the panel's page.",
            "No day is given, so it counts as new.",
            days,
        )
    else:
        end = since + timedelta(days=days)
        do, weight = f"Wait until the end of {day(end)}.", end.toordinal()
        origin = f"Counted from the end of {day(since)}."
    source = THIS_SHOP if typed else in_words(rule.mark)
    return Found(rule.code, rule.grade, says, rule.because, origin, f"{do} {rule.do}", source, weight)


def _hot(standing: Standing, act: Act) -> list[Found]:
    """Ask at the first product that meets a surface which arrives hot: later it has cooled."""
    if not (standing.surface.hot and cool(standing, act)):
        return []
    says = f"{act.step_name}: {act.name} would go on a hot surface {{where}}."
    because = "On a hot wheel or panel it dries before it can be rinsed or levelled, and stains."
    do = "Let it cool until a hand can rest on it."
    return [Found("surface.hot", "ask", says, because, "", do, in_words("T"))]


def cool(standing: Standing, act: Act) -> bool:
    """Let a surface cool; whether this act is the first product that meets it."""
    return bool(act.profile.traits) and standing.once("surface.hot")
