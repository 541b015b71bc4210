"""The look in templates: grades, verdicts, caps, levels, codes, days, money, and the sections of the site."""

import re
from collections.abc import Mapping
from contextvars import ContextVar
from datetime import date, datetime
from importlib import import_module
from typing import Any

from django import template
from django.urls import NoReverseMatch, ResolverMatch, reverse
from django.utils import timezone
from django.utils.html import format_html
from django.utils.safestring import SafeString

from inventory.codes.commands import code_of
from inventory.money import show_money
from inventory.templatetags.cap_drawing import Cap, draw_cap
from safety.hazards.reasons import numbers_of

register = template.Library()
register.filter("numbers", numbers_of)
# The units in which the shop of this request reads amounts; the middleware sets it.
shop_system: ContextVar[str] = ContextVar("shop_system", default="metric")

GRADE_WORDS = {
    "stop": "Stop",
    "ask": "Ask",
    "tell": "Note",
    "ready": "Ready",
    "recorded": "Recorded",
    "unknown": "Unknown",
}
SECTIONS = (
    ("today", "today:home", "Today"),
    ("scan", "scan:station", "Scan"),
    ("shelf", "shelf:list", "Shelf"),
    ("jobs", "jobs:list", "Jobs"),
    ("bays", "bays:list", "Bays"),
    ("reorder", "reorder:orders", "Orders"),
    ("posters", "posters:list", "Posters"),
    ("people", "people:list", "People"),
    ("settings", "settings:home", "Settings"),
)
# Pages that live under another section's heading: all of a feature, or one by its own name.
SECTION_OF = {
    "products": "shelf", "precheck": "jobs", "precheck:rules": "settings", "precheck:regrade": "settings",
    "spreadsheets": "settings", "safety": "shelf",
}  # fmt: skip
LOOKS = ("light", "dark", "bay")
# The level bar is 112 units wide with an edge of 2 on either side.
LEVEL_WIDTH = 108


@register.inclusion_tag("inventory/parts/grade.html")
def grade(name: str, word: str = "") -> dict[str, str]:
    """Draw a grade as icon, word and colour; `word` takes the place of the grade's own."""
    return {"grade": name, "word": word or GRADE_WORDS[name]}


@register.simple_tag
def grade_word(name: str) -> str:
    """Return the word of a grade as screens say it: tell is "Note"."""
    return GRADE_WORDS[name]


@register.inclusion_tag("inventory/parts/icon.html")
def grade_icon(name: str) -> dict[str, str]:
    """Draw the icon of a grade alone; the word must stand beside it."""
    return {"name": name}


@register.inclusion_tag("inventory/parts/verdict.html")
def verdict(name: str, headline: str, next: str = "") -> dict[str, str]:
    """Draw the one sentence that leads a page, and the sentence that says what to do."""
    return {"grade": name, "word": GRADE_WORDS[name], "headline": headline, "next": next}


@register.inclusion_tag("inventory/parts/cap.html")
def cap(style: str, use_by: date | None = None, on: date | None = None, left: float = 0.0) -> dict[str, Cap]:
    """Draw a bottle's cap: style open, sealed, out, held or none; `left` is the open life left, 0 to 1."""
    return {"cap": draw_cap(style, use_by, on or timezone.localdate(), left)}


@register.inclusion_tag("inventory/parts/level.html")
def level(content: int, full: int, dimension: object) -> dict[str, object]:
    """Draw how full a container is, with the amount beside it (both in the dimension's base unit)."""
    share = min(max(content / full, 0.0), 1.0) if full else 0.0
    return {"width": round(share * LEVEL_WIDTH, 1), "text": amount(content, dimension)}


@register.simple_tag
def command_code(name: str) -> str:
    """Return the printed code of a command, which the station knows before the server answers."""
    return code_of(name)


@register.filter
def amount(base: int | None, dimension: object) -> str:
    """Return an amount of a base unit in the shop's units; takes a dimension or anything that has one."""
    if base is None:
        return ""
    # Imported when it is used: the registry of units costs half a second.
    show = import_module("inventory.units").show
    return str(show(base, getattr(dimension, "dimension", dimension), shop_system.get()))


@register.filter
def dialled(number: str) -> str:
    """Return what a telephone dials of a number as the owner wrote it: digits, a leading plus, * and #."""
    # A zero in brackets is dialled inside the country alone.
    bare = number.replace("(0)", "") if number.strip().startswith("+") else number
    return re.match(r"\+?[\d*#]*", re.sub(r"[\s()./–-]", "", bare))[0]  # type: ignore[index]


@register.filter
def code(text: str) -> SafeString:
    """Return one of our codes in its two groups, the first bold."""
    return format_html('<span class="code"><b>{}</b> {}</span>', text[:4], text[4:])


@register.filter
def short_code(text: str) -> SafeString:
    """Return the first group of one of our codes, for sentences where the whole stands nearby."""
    return format_html('<b title="{}">{}</b>', text, text[:4])


@register.filter
def money(minor: int | None, currency: str) -> str:
    """Return an amount of the minor unit as text, nothing where no price is known."""
    return "" if minor is None else show_money(minor, currency)


@register.filter
def day(value: date | datetime | None, form: str = "long") -> str:
    """Return a day as "Thursday 26 November"; "short" gives "26 Nov", "year" the long form with its year."""
    if value is None:
        return ""
    local = timezone.localtime(value).date() if isinstance(value, datetime) else value
    if form == "short":
        return f"{local.day} {local:%b}"
    return f"{local:%A} {local.day} {local:%B}" + (f" {local.year}" if form == "year" else "")


@register.filter
def clock(value: datetime | None) -> str:
    """Return an instant as the shop's clock shows it, "09:05"."""
    return "" if value is None else f"{timezone.localtime(value):%H:%M}"


@register.filter
def message_grade(tags: str) -> str:
    """Return the grade under which one of Django's messages is shown."""
    for tag, name in (("error", "stop"), ("warning", "ask"), ("success", "recorded")):
        if tag in tags:
            return name
    return "tell"


@register.simple_tag(takes_context=True)
def chosen_look(context: Mapping[str, Any]) -> str:
    """Return the look chosen on this device, else the person's own; empty where the system's applies."""
    request = context.get("request")
    own = getattr(getattr(request, "user", None), "look", "")
    look = request.COOKIES.get("look", own) if request else ""
    return look if look in LOOKS else ""


@register.simple_tag(takes_context=True)
def sections(context: Mapping[str, Any]) -> list[dict[str, object]]:
    """Return the sections of the site that this installation has.

    The one on screen is marked as ARIA says it: "page" on its own page, "true" on a page further down.
    """
    request = context.get("request")
    path, here = getattr(request, "path", ""), _section(getattr(request, "resolver_match", None))
    return [
        {"label": label, "url": url, "here": _mark(url == path) if name == here else ""}
        for name, view, label in SECTIONS
        if (url := url_or_nothing(view))
    ]


def _section(match: ResolverMatch | None) -> str:
    feature = match.namespace.split(":")[0] if match and match.namespace else ""
    return SECTION_OF.get(match.view_name if match else "", SECTION_OF.get(feature, feature))


def _mark(own_page: bool) -> str:
    return "page" if own_page else "true"


@register.simple_tag
def url_or_nothing(view: str, *args: object) -> str:
    """Return the address of a view, empty where the installation has no such page."""
    try:
        return reverse(view, args=args)
    except NoReverseMatch:
        return ""
