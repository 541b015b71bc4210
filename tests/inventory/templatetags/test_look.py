"""What the look's tags write into a page, and that its colours can be read."""

import re
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from django.template import Context, Template, TemplateSyntaxError
from django.test import RequestFactory
from django.utils import timezone

from inventory.models import Person

SHEETS = Path(__file__).parents[3] / "inventory" / "static" / "inventory"


def drawn(source: str, **values: object) -> str:
    return Template("{% load look %}" + source).render(Context(values))


def test_a_grade_that_is_none_of_ours_is_refused() -> None:
    with pytest.raises(KeyError, match="danger"):
        drawn('{% grade "danger" %}')


def test_a_filter_that_is_misspelt_is_refused() -> None:
    with pytest.raises(TemplateSyntaxError):
        drawn("{{ 3|amounts:'volume' }}")


@pytest.mark.parametrize(
    ("grade", "word"),
    [("stop", "Stop"), ("ask", "Ask"), ("tell", "Note"), ("ready", "Ready"), ("recorded", "Recorded")],
)
def test_a_grade_is_an_icon_and_a_word(grade: str, word: str) -> None:
    chip = drawn("{% grade name %}", name=grade)
    assert "<path" in chip
    assert re.sub("<[^>]+>", "", chip).strip() == word


def test_the_verdict_is_one_sentence_and_what_to_do() -> None:
    text = re.sub("<[^>]+>", "", drawn('{% verdict "stop" "Not yet." "Then two questions." %}'))
    assert text.strip() == "Stop: Not yet.Then two questions."


def test_a_code_stands_in_two_groups_with_the_first_bold() -> None:
    assert drawn("{{ 'BKTRVNXH'|code }}") == '<span class="code"><b>BKTR</b> VNXH</span>'


def test_a_code_cannot_smuggle_markup() -> None:
    assert "<i>" not in drawn("{{ text|code }}", text="<i>X</i>")


def test_a_day_is_written_as_people_say_it() -> None:
    day = date(2026, 11, 26)
    assert drawn("{{ day|day }}", day=day) == "Thursday 26 November"
    assert drawn("{{ day|day:'short' }}", day=day) == "26 Nov"
    assert drawn("{{ day|day:'year' }}", day=day) == "Thursday 26 November 2026"
    assert drawn("{{ day|day }}", day=None) == ""


def test_an_instant_belongs_to_the_day_of_the_shops_own_clock() -> None:
    late = datetime(2026, 11, 26, 23, 30, tzinfo=UTC)
    with timezone.override("Europe/Helsinki"):
        assert drawn("{{ at|day:'short' }} {{ at|clock }}", at=late) == "27 Nov 01:30"


def test_money_and_amounts_carry_their_unit() -> None:
    assert drawn('{{ 2200|money:"EUR" }}') == "€22.00"
    assert drawn('{{ 1200000|amount:"volume" }}') == "1.2 l"
    assert drawn('{{ price|money:"EUR" }}{{ price|amount:"volume" }}', price=None) == ""


@pytest.mark.parametrize(
    ("content", "width", "because"),
    [
        (12000, "43.2", "12 of 30 ml"),
        (30000, "108.0", "full"),
        (40000, "108.0", "never over its edge"),
        (0, "0.0", "empty"),
    ],
)
def test_the_level_is_as_wide_as_the_bottle_is_full(content: int, width: str, because: str) -> None:
    bar = drawn('{% level content 30000 "volume" %}', content=content)
    assert f'class="full" x="2" y="2" width="{width}"' in bar, because


@pytest.mark.parametrize(("cookie", "look"), [("bay", "bay"), ("dark", "dark"), ('"><b>', ""), ("", "")])
def test_only_a_look_of_ours_reaches_the_page(cookie: str, look: str) -> None:
    request = RequestFactory().get("/")
    request.COOKIES["look"] = cookie
    assert drawn("{% chosen_look %}", request=request) == look


@pytest.mark.parametrize(
    ("cookies", "look", "because"),
    [
        ({}, "dark", "no choice on this device: the person's own"),
        ({"look": "light"}, "light", "this device's choice goes before"),
        ({"look": "system"}, "", "as the system is a choice too"),
    ],
)
def test_a_persons_look_holds_where_the_device_has_none(
    cookies: dict[str, str], look: str, because: str
) -> None:
    request = RequestFactory().get("/")
    request.COOKIES = cookies
    request.user = Person(look="dark")
    assert drawn("{% chosen_look %}", request=request) == look, because


def test_no_part_of_a_page_carries_style_or_script_of_its_own() -> None:
    templates = Path(__file__).parents[3] / "templates"
    inline = re.compile(r"\sstyle=|\son[a-z]+=|<style|<script(?![^>]*\bsrc=)", re.IGNORECASE)
    carrying = [
        page.name for page in templates.rglob("*.html") if inline.search(page.read_text(encoding="utf-8"))
    ]
    assert carrying == []


# Contrast, computed from the sheet itself by the formula of WCAG 2.2 (relative luminance, contrast ratio).


def rules(look: str) -> dict[str, str]:
    """Return the tokens of one look as the sheet resolves them, each a #rrggbb."""
    sheet = (SHEETS / "capdate.css").read_text(encoding="utf-8")
    root = re.search(r":root \{(.*?)\}", sheet, re.DOTALL)
    bay = re.search(r':root\[data-look="bay"\] \{(.*?)\}', sheet, re.DOTALL)
    assert root
    assert bay
    lines = dict(re.findall(r"--([a-z-]+): ([^;]+);", root[1]))
    if look == "bay":
        lines |= dict(re.findall(r"--([a-z-]+): ([^;]+);", bay[1]))
    return {
        name: resolved(value, lines, look)
        for name, value in lines.items()
        if name not in ("step", "target", "measure")
    }


def resolved(value: str, lines: dict[str, str], look: str) -> str:
    if pair := re.fullmatch(r"light-dark\((.+), (.+)\)", value):
        return resolved(pair[1 if look == "light" else 2], lines, look)
    if name := re.fullmatch(r"var\(--([a-z-]+)\)", value):
        return resolved(lines[name[1]], lines, look)
    assert re.fullmatch(r"#[0-9a-f]{6}", value), value
    return value


def luminance(colour: str) -> float:
    channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_formula_agrees_with_published_values() -> None:
    # WCAG 2.2: black on white is 21:1; #767676 is the lightest grey with 4.5:1 on white, #777777 fails.
    assert round(contrast("#000000", "#ffffff"), 1) == 21.0
    assert contrast("#767676", "#ffffff") >= 4.5 > contrast("#777777", "#ffffff")


TEXT, EDGE = 4.5, 3.0
PAIRS = [
    ("ink", "paper", TEXT),
    ("ink", "card", TEXT),
    ("soft", "paper", TEXT),
    ("soft", "card", TEXT),
    ("link", "paper", TEXT),
    ("link", "card", TEXT),
    ("press", "paper", TEXT),
    ("press", "card", TEXT),
    ("on-press", "press", TEXT),
    ("on-stop", "stop", TEXT),
    ("on-ask", "ask", TEXT),
    ("on-note", "note", TEXT),
    ("on-ready", "ready", TEXT),
    ("edge", "paper", EDGE),
    ("edge", "card", EDGE),
    ("stop", "paper", EDGE),
    ("stop", "card", EDGE),
]


@pytest.mark.parametrize("look", ["light", "dark", "bay"])
@pytest.mark.parametrize(("over", "ground", "least"), PAIRS)
def test_every_colour_can_be_read_on_its_ground(look: str, over: str, ground: str, least: float) -> None:
    tokens = rules(look)
    assert contrast(tokens[over], tokens[ground]) >= least


@pytest.mark.parametrize(("look", "seen"), [("light", "ink"), ("dark", "amber"), ("bay", "amber")])
def test_the_focus_ring_is_seen_on_every_ground(look: str, seen: str) -> None:
    # Amber alone would be lost on the light paper: there the ink ring around it is what is seen.
    tokens = rules(look)
    assert contrast(tokens[seen], tokens["paper"]) >= EDGE
    assert contrast(tokens[seen], tokens["card"]) >= EDGE


def test_amber_alone_would_not_do_for_focus_on_light_paper() -> None:
    assert contrast(rules("light")["amber"], rules("light")["paper"]) < EDGE


@pytest.mark.parametrize("look", ["light", "dark"])
def test_an_error_at_a_field_can_be_read(look: str) -> None:
    tokens = rules(look)
    assert contrast(tokens["stop"], tokens["paper"]) >= TEXT
    assert contrast(tokens["stop"], tokens["card"]) >= TEXT


def test_no_colour_is_named_twice_and_nothing_is_forced() -> None:
    sheet = (SHEETS / "capdate.css").read_text(encoding="utf-8")
    colours = re.findall(r"#[0-9a-f]{3,8}\b", sheet)
    assert sorted(colours) == sorted(set(colours))
    assert "!important" not in sheet
    assert re.findall(r"#[0-9a-f]{3,8}\b", (SHEETS / "station.css").read_text(encoding="utf-8")) == []
