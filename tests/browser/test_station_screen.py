"""The scan station's screen alone: what it hears, in which order it says it, and when it waits.

The server is played by `Shop`: it keeps the lines it was sent and answers as told.
"""

from typing import Any
from urllib.parse import parse_qs

import pytest
from django.contrib.staticfiles import finders
from django.http import HttpResponse
from django.template.loader import render_to_string
from django.test import RequestFactory
from django.urls import include, path

SITE = "http://127.0.0.1:9"
BOTTLE, OTHER_BOTTLE, JOB = "BKTRVNXH", "BXXRVNXH", "JKKRVNXH"
YES, EMERGENCY = "CFKENGBX", "CBXDNBGJ"


def nothing(request: object) -> HttpResponse:
    return HttpResponse()


# The screen's own two addresses; no other page is needed here.
urlpatterns = [
    path("scan/", include(([path("", nothing, name="station"), path("say/", nothing, name="say")], "scan")))
]


class Shop:
    """A server that answers each line with the grade it was told, or not at all."""

    def __init__(self) -> None:
        self.lines: list[str] = []
        self.keys: list[str] = []
        self.grades: dict[str, str] = {}
        self.keys_offered: list[dict[str, object]] = []
        self.down = 0
        self.status = 200
        self.thinking: list[Any] | None = None

    def serve(self, route: Any) -> None:
        where = route.request.url.removeprefix(SITE).split("?")[0]
        if where.startswith("/static/"):
            route.fulfill(path=finders.find(where.removeprefix("/static/")))
        elif where == "/scan/say/":
            self.hear(route)
        else:
            route.fulfill(
                content_type="text/html", body=self.screen("inventory/scan/station.html", "tell", "Hello.")
            )

    def hear(self, route: Any) -> None:
        if self.thinking is not None:
            self.thinking.append(route)
            return
        body = parse_qs(route.request.post_data)
        self.keys.append(body["key"][0])
        if self.down:
            self.down -= 1
            route.abort()
        elif self.status != 200:
            route.fulfill(status=self.status, body="no")
        else:
            line = body["line"][0]
            self.lines.append(line)
            grade = self.grades.get(line, "recorded")
            says = f"Heard {line} as {grade}."
            route.fulfill(
                content_type="text/html", body=self.screen("inventory/scan/answer.html", grade, says)
            )

    def answer_at_last(self) -> None:
        """Answer what was kept waiting while `thinking` was a list."""
        waiting, self.thinking = self.thinking or [], None
        for route in waiting:
            self.hear(route)

    def screen(self, template: str, grade: str, says: str) -> str:
        answer = {"grade": grade, "says": says, "next": "", "keys": self.keys_offered}
        context = {
            "station": "Bay 2",
            "who": "Tomas",
            "car": "",
            "place": "Bay 2",
            "answer": answer,
            "last": [],
        }
        context["emergency"] = {"number": "112", "eyewash": "left of the door"}
        return render_to_string(template, context, RequestFactory().get("/scan/"))


@pytest.fixture
def shop(page: Any, settings: Any) -> Shop:
    settings.ROOT_URLCONF = __name__
    shop = Shop()
    # The page's clock stands still until a test moves it: a slow machine types no slower than a fast one.
    page.clock.install(time="2026-11-25T09:00:00")
    page.route("**/*", shop.serve)
    page.goto(f"{SITE}/scan/")
    page.clock.pause_at("2026-11-25T10:00:00")
    return shop


def scan(page: Any, line: str) -> None:
    """Type as a scanner does: at once, ended by Enter, and a while after whatever was before."""
    page.clock.run_for(400)
    page.keyboard.type(line)
    page.keyboard.press("Enter")


def type_slowly(page: Any, text: str) -> None:
    """Type as a person does, slower than any scanner."""
    for sign in text:
        page.keyboard.type(sign)
        page.clock.run_for(120)


def answered(page: Any, line: str, grade: str = "recorded") -> None:
    page.wait_for_function(
        "says => document.querySelector('[data-says]').textContent === says", arg=f"Heard {line} as {grade}."
    )


def sounded(page: Any) -> str:
    return str(page.evaluate("document.documentElement.dataset.sounded"))


def test_a_scan_after_a_stop_is_not_taken_until_the_stop_was_seen(page: Any, shop: Shop) -> None:
    shop.grades[BOTTLE] = "stop"
    scan(page, BOTTLE)
    answered(page, BOTTLE, "stop")
    scan(page, OTHER_BOTTLE)
    page.wait_for_selector("[data-refused]:visible")
    assert shop.lines == [BOTTLE]
    assert sounded(page) == "stop"
    page.click("[data-carry-on]")
    scan(page, OTHER_BOTTLE)
    answered(page, OTHER_BOTTLE)
    assert shop.lines == [BOTTLE, OTHER_BOTTLE]


def test_a_scan_after_a_recorded_one_is_taken_at_once(page: Any, shop: Shop) -> None:
    scan(page, BOTTLE)
    answered(page, BOTTLE)
    scan(page, OTHER_BOTTLE)
    answered(page, OTHER_BOTTLE)
    assert shop.lines == [BOTTLE, OTHER_BOTTLE]


def test_the_printed_yes_is_enough_to_say_that_a_stop_was_seen(page: Any, shop: Shop) -> None:
    shop.grades[BOTTLE] = "stop"
    scan(page, BOTTLE)
    answered(page, BOTTLE, "stop")
    scan(page, YES)
    scan(page, OTHER_BOTTLE)
    answered(page, OTHER_BOTTLE)
    assert shop.lines == [BOTTLE, OTHER_BOTTLE]


def test_a_key_that_answers_a_stop_goes_before_scans_made_blind(page: Any, shop: Shop) -> None:
    shop.grades[BOTTLE] = "stop"
    shop.keys_offered = [{"label": "Take it back", "line": "UNDO", "main": True}]
    shop.thinking = []
    scan(page, BOTTLE)
    scan(page, OTHER_BOTTLE)
    shop.answer_at_last()
    answered(page, BOTTLE, "stop")
    page.click("text=Take it back")
    answered(page, OTHER_BOTTLE)
    assert shop.lines == [BOTTLE, "UNDO", OTHER_BOTTLE]


def test_the_same_bottle_within_two_seconds_counts_once(page: Any, shop: Shop) -> None:
    scan(page, BOTTLE)
    answered(page, BOTTLE)
    scan(page, BOTTLE)
    scan(page, OTHER_BOTTLE)
    answered(page, OTHER_BOTTLE)
    assert shop.lines == [BOTTLE, OTHER_BOTTLE]


def test_the_same_bottle_after_two_seconds_is_meant(page: Any, shop: Shop) -> None:
    scan(page, BOTTLE)
    answered(page, BOTTLE)
    page.clock.run_for(2001)
    scan(page, BOTTLE)
    page.wait_for_timeout(300)
    assert shop.lines == [BOTTLE, BOTTLE]


def test_the_same_product_twice_is_meant_twice(page: Any, shop: Shop) -> None:
    scan(page, "2000000000008")
    scan(page, "2000000000008")
    page.wait_for_timeout(400)
    assert shop.lines == ["2000000000008", "2000000000008"]


def test_a_scan_does_not_fall_into_what_a_person_is_typing(page: Any, shop: Shop) -> None:
    type_slowly(page, "500 ml")
    scan(page, BOTTLE)
    answered(page, BOTTLE)
    assert page.inner_text("[data-typed-line]") == "500 ml"
    assert shop.lines == [BOTTLE]


def test_a_hiccup_in_a_scan_does_not_cut_it_in_two(page: Any, shop: Shop) -> None:
    type_slowly(page, "500 ml")
    page.clock.run_for(400)
    page.keyboard.type(BOTTLE[:4])
    page.clock.run_for(200)
    page.keyboard.type(BOTTLE[4:])
    page.keyboard.press("Enter")
    answered(page, BOTTLE)
    assert shop.lines == [BOTTLE]


def test_nothing_is_green_before_the_verdict(page: Any, shop: Shop) -> None:
    scan(page, BOTTLE)
    answered(page, BOTTLE)
    green = page.evaluate("getComputedStyle(document.querySelector('.answer')).backgroundColor")
    shop.thinking = []
    scan(page, OTHER_BOTTLE)
    page.wait_for_function("document.querySelector('[data-says]').textContent === 'Heard BXXRVNXH.'")
    assert page.evaluate("getComputedStyle(document.querySelector('.answer')).backgroundColor") != green
    shop.answer_at_last()
    answered(page, OTHER_BOTTLE)
    assert page.evaluate("getComputedStyle(document.querySelector('.answer')).backgroundColor") == green


def test_what_a_person_types_is_shown_and_said_at_enter(page: Any, shop: Shop) -> None:
    type_slowly(page, "50 ml")
    assert page.inner_text("[data-typed-line]") == "50 ml"
    page.keyboard.press("Enter")
    answered(page, "50 ml")


def test_a_gloved_finger_can_type_an_amount(page: Any, shop: Shop) -> None:
    page.click("[data-type-in]")
    for sign in ("5", "0", " ml"):
        page.click(f'[data-sign="{sign}"]')
    page.click("[data-typed-say]")
    answered(page, "50 ml")


def test_a_browser_shortcut_is_no_scan(page: Any, shop: Shop) -> None:
    page.keyboard.press("Control+b")
    page.keyboard.press("Alt+k")
    page.keyboard.press("Enter")
    page.wait_for_timeout(200)
    assert shop.lines == []


def test_a_group_separator_typed_as_control_bracket_arrives(page: Any, shop: Shop) -> None:
    page.keyboard.type("10AB")
    page.keyboard.press("Control+BracketRight")
    page.keyboard.type("21C")
    page.keyboard.press("Enter")
    page.wait_for_timeout(300)
    assert shop.lines == ["10AB\x1d21C"]


def test_a_line_that_could_not_be_sent_is_counted_and_sent_again_with_its_key(page: Any, shop: Shop) -> None:
    shop.down = 1
    scan(page, JOB)
    page.wait_for_function("document.querySelector('[data-says]').textContent.startsWith('Not sent')")
    assert page.inner_text("[data-unsent]") == "1"
    assert sounded(page) == "stop"
    page.clock.run_for(1000)
    answered(page, JOB)
    assert page.inner_text("[data-unsent]") == "none"
    assert shop.lines == [JOB]
    assert len(shop.keys) == 2
    assert len(set(shop.keys)) == 1


def test_an_unsent_line_outlives_the_page(page: Any, shop: Shop) -> None:
    shop.down = 1000
    scan(page, JOB)
    page.wait_for_function("document.querySelector('[data-says]').textContent.startsWith('Not sent')")
    shop.down = 0
    page.reload()
    answered(page, JOB)
    assert len(set(shop.keys)) == 1


def test_a_line_that_the_server_refuses_for_good_is_not_sent_for_ever(page: Any, shop: Shop) -> None:
    shop.status = 422
    scan(page, JOB)
    page.wait_for_function("document.querySelector('[data-says]').textContent.includes('would not take')")
    shop.status = 200
    page.keyboard.press("Escape")
    scan(page, BOTTLE)
    answered(page, BOTTLE)
    assert shop.lines == [BOTTLE]


def test_each_scan_has_a_key_of_its_own(page: Any, shop: Shop) -> None:
    for line in (BOTTLE, OTHER_BOTTLE, JOB):
        scan(page, line)
        answered(page, line)
    assert len(set(shop.keys)) == 3


@pytest.mark.parametrize(
    ("grade", "sound"), [("recorded", "recorded"), ("ask", "ask"), ("stop", "stop"), ("unknown", "stop")]
)
def test_each_verdict_has_its_sound(page: Any, shop: Shop, grade: str, sound: str) -> None:
    shop.grades[BOTTLE] = grade
    scan(page, BOTTLE)
    answered(page, BOTTLE, grade)
    assert sounded(page) == sound


def test_the_emergency_card_opens_without_a_server(page: Any, shop: Shop) -> None:
    shop.down = 1000
    scan(page, EMERGENCY)
    page.wait_for_selector("#emergency:visible")
    assert "112" in page.inner_text("#emergency")
    assert "left of the door" in page.inner_text("#emergency")
    page.keyboard.press("Escape")
    assert not page.is_visible("#emergency")


def test_emergency_is_the_last_key_and_every_key_fits_a_glove(page: Any, shop: Shop) -> None:
    shop.keys_offered = [{"label": "Undo", "line": "UNDO", "main": False}]
    scan(page, BOTTLE)
    answered(page, BOTTLE)
    keys = page.locator(".keys .key")
    assert keys.all_inner_texts() == ["Undo", "Type it in", "Emergency"]
    assert min(keys.evaluate_all("keys => keys.map(key => key.getBoundingClientRect().height)")) >= 112
