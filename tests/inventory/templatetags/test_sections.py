"""The site's sections: the one on screen is marked, and no other."""

import pytest
from django.template import Context, Template
from django.test import RequestFactory
from django.urls import resolve

SOURCE = "{% load look %}{% sections as all %}{% for one in all %}{{ one.label }}={{ one.here }} {% endfor %}"


def drawn(request: object) -> list[str]:
    return Template(SOURCE).render(Context({"request": request})).split()


@pytest.mark.parametrize(
    ("path", "marked", "because"),
    [
        ("/bays/", ("Bays", "page"), "its own page"),
        ("/bays/PBCDFGHJ/", ("Bays", "true"), "a bay is in the section, and not its page"),
        ("/jobs/", ("Jobs", "page"), "its own page"),
        ("/check/JBCDFGHJ/", ("Jobs", "true"), "the check of a job"),
        ("/check/rules/", ("Settings", "true"), "what the check asks is set there"),
        ("/check/rules/wait.recoat/", ("Settings", "true"), "and what one rule weighs"),
        ("/products/", ("Shelf", "true"), "products stand on the shelf"),
        ("/", ("Today", "page"), "the first page"),
    ],
)
def test_the_section_on_screen_is_marked_and_no_other(
    path: str, marked: tuple[str, str], because: str
) -> None:
    request = RequestFactory().get(path)
    request.resolver_match = resolve(path)
    found = [tuple(one.split("=")) for one in drawn(request)]
    assert [one for one in found if one[1]] == [marked], because
    assert [label for label, _ in found] == [
        "Today", "Scan", "Shelf", "Jobs", "Bays", "Orders", "Posters", "People", "Settings",
    ]  # fmt: skip


def test_without_an_address_of_ours_every_section_is_there_and_none_marked() -> None:
    """A page that says an error has no address."""
    found = drawn(None)
    assert found[0] == "Today="
    assert [one for one in found if not one.endswith("=")] == []
