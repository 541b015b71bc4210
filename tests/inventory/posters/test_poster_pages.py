"""The poster's pages: who reads, who prints, what counts as a version, what is read off the paper."""

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from inventory.models import Place, PosterIssue
from inventory.posters.actions import sheets
from inventory.posters.queries import walls
from tests.inventory.posters.wall import SITE, admitted, hang, wiped_bay
from tests.safety.print.paper import codes, pages, size_mm, text
from tests.world import TODAY, World, bottle, larkmoor, tidewall

pytestmark = pytest.mark.django_db
OUTSIDE = "203.0.113.9"
WARDROBE = {"A4": (210, 297), "A3": (297, 420), "Letter": (215.9, 279.4), "Tabloid": (279.4, 431.8)}


@pytest.fixture
def world() -> World:
    found = larkmoor()
    wiped_bay(found)
    return found


def at(place: Place, name: str = "place") -> str:
    return reverse(f"posters:{name}", args=[place.code])


def signed_in(person: object) -> Client:
    client = Client()
    client.force_login(person)  # type: ignore[arg-type]
    return client


def read(response: object) -> str:
    return " ".join(response.content.decode().split())  # type: ignore[attr-defined]


@pytest.mark.parametrize("name", ["place", "sheets_pdf"])
@pytest.mark.parametrize(
    ("heads", "because"),
    [
        ({"REMOTE_ADDR": OUTSIDE}, "the internet"),
        ({"REMOTE_ADDR": OUTSIDE, "HTTP_X_FORWARDED_FOR": "192.168.1.5"}, "a header that anybody can write"),
        ({"REMOTE_ADDR": "192.168.1.5", "HTTP_X_FORWARDED_FOR": OUTSIDE}, "a proxy that nobody listed"),
    ],
)
def test_nobody_outside_reads_a_poster(
    world: World, client: Client, name: str, heads: dict[str, str], because: str
) -> None:
    answer = client.get(at(world.bay_2, name), **heads)  # type: ignore[arg-type]
    assert (answer.status_code, answer["Location"].startswith(reverse("people:login"))) == (302, True), (
        because
    )


@pytest.mark.parametrize(
    ("heads", "because"),
    [
        ({"REMOTE_ADDR": "192.168.1.5"}, "a phone on the shop's network"),
        (
            {"REMOTE_ADDR": "10.0.0.1", "HTTP_X_FORWARDED_FOR": "192.168.1.5"},
            "the same behind a listed proxy",
        ),
    ],
)
def test_a_phone_on_the_shops_network_reads_it_without_a_login(
    world: World, client: Client, settings: object, heads: dict[str, str], because: str
) -> None:
    settings.TRUSTED_PROXIES = ["10.0.0.1/32"]  # type: ignore[attr-defined]
    page = read(client.get(at(world.bay_2), **heads))  # type: ignore[arg-type]
    assert "Rinse at least 15 minutes" in page, because
    assert "H225 Highly flammable liquid and vapour" in page


def test_the_network_opens_the_posters_page_and_no_other_of_ours(world: World, client: Client) -> None:
    closed = [reverse("posters:list"), reverse("posters:badges_pdf"), reverse("posters:cards_pdf")]
    assert [client.get(url).status_code for url in closed] == [302, 302, 302]


def test_what_to_do_comes_before_everything_else_on_that_page(world: World, client: Client) -> None:
    page = read(client.get(at(world.bay_2)))
    order = [
        'href="#happens"',
        'href="tel:112"',
        'id="happens"',
        'id="dangers"',
        'id="before"',
        'id="products"',
    ]
    assert [page.index(one) for one in order] == sorted(page.index(one) for one in order)


def test_a_phone_reads_the_right_shops_place_where_there_are_two(world: World, client: Client) -> None:
    other = larkmoor("next-door")
    assert client.get(at(other.bay_2)).status_code == 200
    assert signed_in(world.ines).get(at(other.bay_2)).status_code == 404


def test_a_code_of_no_place_is_not_found(client: Client) -> None:
    assert client.get(reverse("posters:place", args=["PXXXXXXX"])).status_code == 404


def test_a_viewer_prints_nothing(world: World) -> None:
    wren = signed_in(world.wren)
    asked = [
        wren.post(at(world.bay_2, "print"), {"paper": "A3"}).status_code,
        wren.get(reverse("posters:badges_pdf")).status_code,
        wren.get(reverse("posters:cards_pdf")).status_code,
    ]
    assert (asked, PosterIssue.objects.count()) == ([403, 403, 403], 0)
    assert "Print version" not in read(wren.get(at(world.bay_2)))


def test_only_an_owner_admits_and_withdraws(world: World) -> None:
    coating = tidewall(world)
    sent = {"products": [coating.code]}
    assert signed_in(world.tomas).post(at(world.bay_2, "admit"), sent).status_code == 403
    ines = signed_in(world.ines)
    said = read(ines.post(at(world.bay_2, "admit"), sent, follow=True))
    assert "Bay 2 admits 1 more product. Print its poster again." in said
    off = reverse("posters:withdraw", args=[world.bay_2.code, coating.code])
    assert "Tidewall coating is off the list of Bay 2." in read(ines.post(off, follow=True))


def test_nothing_ticked_is_said_where_the_ticks_are(world: World) -> None:
    answer = signed_in(world.ines).post(at(world.bay_2, "admit"))
    assert (answer.status_code, "Tick the products to admit." in read(answer)) == (422, True)


def test_a_place_that_admits_nothing_is_refused_by_name(world: World) -> None:
    tomas = signed_in(world.tomas)
    says = "Bay 1 admits no product yet. Admit what is used there, then print its poster."
    assert says in read(tomas.post(at(world.bay_1, "print"), {"paper": "A3"}, follow=True))
    assert says in read(tomas.get(at(world.bay_1, "sheets_pdf"), follow=True))
    assert PosterIssue.objects.count() == 0


def test_a_distance_that_no_poster_is_made_for_prints_nothing(world: World) -> None:
    Place.objects.filter(pk=world.bay_2.pk).update(read_at_m=40)
    said = read(signed_in(world.tomas).post(at(world.bay_2, "print"), {"paper": "A3"}, follow=True))
    assert ("not from 40 m" in said, PosterIssue.objects.count()) == (True, 0)


def test_each_print_is_the_next_version_and_reading_it_is_none(world: World) -> None:
    tomas = signed_in(world.tomas)
    for version in (1, 2):
        answer = tomas.post(at(world.bay_2, "print"), {"paper": "A4"}, follow=True)
        assert f"Bay 2, version {version}, " in text(answer.content)
    tomas.get(at(world.bay_2, "sheets_pdf"))
    assert list(PosterIssue.objects.order_by("version").values_list("version", flat=True)) == [1, 2]


def test_sheets_that_hang_nowhere_are_marked_as_a_preview(world: World, client: Client) -> None:
    assert "preview, not issued" in text(client.get(at(world.bay_2, "sheets_pdf")).content)
    hang(world.bay_2)
    assert "preview" not in text(client.get(at(world.bay_2, "sheets_pdf")).content)


def test_the_notice_stands_whole_on_the_list_and_the_page(world: World, client: Client) -> None:
    hang(world.bay_2)
    bottle(world, tidewall(world), 30_000, place=world.bay_2)
    says = "The poster of Bay 2 is out of date: Tidewall coating stands there and is not on it."
    assert says in read(signed_in(world.tomas).get(reverse("posters:list")))
    assert f"{says}</p><p>This page is right; the paper on the wall may not be." in read(
        client.get(at(world.bay_2))
    )
    assert "Standing here and not on the list" in read(signed_in(world.ines).get(at(world.bay_2)))


@pytest.mark.parametrize("paper", list(WARDROBE))
def test_a_poster_reads_back_from_every_paper(world: World, paper: str) -> None:
    pdf = hang(world.bay_2, paper=paper).pdf
    for page in range(pages(pdf)):
        assert codes(pdf, page) == [f"{SITE}/posters/{world.bay_2.code}/"]
        assert size_mm(pdf, page) == pytest.approx(WARDROBE[paper], abs=0.1)
    says = text(pdf)
    assert "Hollin panel wipe" in says
    assert "H225 Highly flammable liquid and vapour" in says
    assert "The code works on this shop's Wi-Fi" in says


def test_what_needs_no_sheet_and_was_admitted_is_no_alarm(world: World) -> None:
    tape = tidewall(world, needs_sheet=False)
    admitted(world.bay_2, tape)
    assert "No data sheet" not in text(sheets(walls(world.shop, world.bay_2)[0], SITE, TODAY, "A4"))


def test_the_list_asks_as_much_for_twelve_bays_as_for_three(world: World) -> None:
    def asked(bays: int) -> int:
        with CaptureQueriesContext(connection) as seen:
            assert len(walls(world.shop, on=TODAY)) == bays
        return len(seen)

    coating = tidewall(world)
    three = [Place.objects.create(shop=world.shop, name="Bay 3", kind="bay"), world.bay_1]
    for bay in three:
        admitted(bay, coating)
    before = asked(3)
    for number in range(4, 13):
        bay = Place.objects.create(shop=world.shop, name=f"Bay {number}", kind="bay")
        admitted(bay, coating)
        hang(bay)
    assert (before, asked(12)) == (5, 5)
