"""Nobody can stand for a data sheet of which nothing was typed: its product would read as harmless."""

import pytest
from django.urls import reverse

from safety.models import DataSheet, SheetVersion
from tests.safety.sheets.test_pages import attach, owner, pdf
from tests.world import World

pytestmark = pytest.mark.django_db

EMPTY = {"hazard_lines": "", "statement_lines": ""}


def test_nobody_stands_for_a_sheet_of_which_nothing_was_read(world: World, sheet: DataSheet) -> None:
    """A file and a date alone ended the stop of an acid."""
    client = owner(world)
    says = "Nobody can stand for an empty sheet: a version needs the classes or statements of its section 2"
    assert says in attach(client, sheet, pdf(), **EMPTY).content.decode()
    assert SheetVersion.objects.count() == 0
    attach(client, sheet, pdf(), **EMPTY, confirm="")
    waiting = SheetVersion.objects.get()
    answer = client.post(reverse("safety:confirm", args=[sheet.pk, waiting.pk]), follow=True)
    assert says in answer.content.decode()
    assert not SheetVersion.objects.get().confirmed


@pytest.mark.parametrize(
    ("read", "because"),
    [
        ({"not_classified": "on"}, "the sheet itself says that it classifies nothing"),
        ({"hazard_lines": "Skin Corr. 1A H314"}, "its classes"),
        ({"statement_lines": "EUH210"}, "its label says something, though it has no class"),
    ],
)
def test_what_was_read_is_stood_for(
    world: World, sheet: DataSheet, read: dict[str, str], because: str
) -> None:
    attach(owner(world), sheet, pdf(), **(EMPTY | read))
    assert SheetVersion.objects.get().confirmed, because
