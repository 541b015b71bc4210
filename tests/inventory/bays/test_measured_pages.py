"""Local exhaust and measured air on a bay's page: what is refused first, then what stands there."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from inventory.models import AirMeasurement, AirSample, LocalExhaust, Person, Product
from tests import world as w
from tests.inventory.bays.reports import SHORT, TWA, address, arm, days, examination, kept, page, report
from tests.inventory.precheck.test_air_queries import ISOPROPANOL, aired, composed
from tests.world import ML, World

pytestmark = pytest.mark.django_db


@pytest.fixture
def ines(client: Client, world: World) -> Client:
    """The browser in which the owner is signed in."""
    client.force_login(world.ines)
    return client


@pytest.fixture
def wipe(world: World) -> Product:
    """A panel wipe whose sheet says that it holds isopropanol."""
    return composed(w.hollin(world), ISOPROPANOL)


@pytest.mark.parametrize("who", ["tomas", "wren"])
def test_only_an_owner_writes_down_ends_and_withdraws(
    client: Client, world: World, wipe: Product, who: str
) -> None:
    person: Person = getattr(world, who)
    client.force_login(person)
    row, one, bay = arm(world), kept(world, wipe, "40"), world.bay_2.code
    assert client.post(reverse("bays:exhaust", args=[bay]), examination()).status_code == 403
    assert client.post(reverse("bays:end_exhaust", args=[bay, row.pk])).status_code == 403
    assert client.post(address(world, wipe), report(("39", "ppm", TWA))).status_code == 403
    assert client.post(reverse("bays:withdraw", args=[bay, one.pk])).status_code == 403
    text = page(client, world)
    assert "Extraction arm" in text
    assert "Write a measurement down" not in text
    assert client.get(reverse("bays:measurement", args=[bay, one.pk])).status_code == 200


def test_nothing_is_ended_or_withdrawn_by_looking(ines: Client, world: World, wipe: Product) -> None:
    row, one, bay = arm(world), kept(world, wipe, "40"), world.bay_2.code
    assert ines.get(reverse("bays:end_exhaust", args=[bay, row.pk])).status_code == 405
    assert ines.get(reverse("bays:withdraw", args=[bay, one.pk])).status_code == 405


def test_another_place_s_exhaust_and_measurement_are_not_here(
    ines: Client, world: World, wipe: Product
) -> None:
    row, one, bay = arm(world), kept(world, wipe, "40"), world.bay_1.code
    assert ines.post(reverse("bays:end_exhaust", args=[bay, row.pk])).status_code == 404
    assert ines.get(reverse("bays:measurement", args=[bay, one.pk])).status_code == 404
    assert ines.post(reverse("bays:withdraw", args=[bay, one.pk])).status_code == 404
    other = w.larkmoor("elsewhere")
    assert ines.get(reverse("bays:measure", args=[other.bay_2.code])).status_code == 404


@pytest.mark.parametrize(
    ("changed", "says"),
    [
        ({"examined_on": days(1)}, "That day is still to come."),
        ({"until_on": days(-30)}, "It would end before it began."),
        ({"name": ""}, "This field is required."),
        ({"catches": "smoke"}, "Select a valid choice. smoke is not one of the available choices."),
    ],
)
def test_an_examination_that_cannot_be_is_refused(
    ines: Client, world: World, changed: dict[str, object], says: str
) -> None:
    answer = ines.post(reverse("bays:exhaust", args=[world.bay_2.code]), examination(**changed))
    assert says in answer.content.decode()
    assert LocalExhaust.objects.count() == 0


@pytest.mark.parametrize(
    ("given", "says"),
    [
        (report(), "This field is required."),
        (report(("39 <5", "ppm", TWA)), "“&lt;5”: write what could just be found, without the sign."),
        (
            report(("0 0 0", "ppm", TWA)),
            "“0” shows nothing: type the reporting limit of the method where nothing was found.",
        ),
        (
            report(("39 38 0,0", "ppm", TWA)),
            "“0,0” shows nothing: type the reporting limit of the method where nothing was found.",
        ),
        (report(("39 some", "ppm", TWA)), "“some” is no result. Write numbers with spaces between."),
        (report(("-1", "ppm", TWA)), "“-1” is no result. Write numbers with spaces between."),
        (report(("1 1 1 1 1 1 1 1 1", "ppm", TWA)), "At most 8 results a row."),
        (
            report(("39", "ppm", TWA), ("38", "ppm", TWA)),
            "This stands above already. Put all its results into one row.",
        ),
        (report(("39", "ppm", TWA), amount="a lot"), "“a lot” has no number."),
        (report(("39", "ppm", TWA), amount="0 ml"), "Something was used while it was measured"),
        (report(("39", "ppm", TWA), amount="3 pieces"), "is a number of pieces, and a volume is wanted"),
        (report(("39", "ppm", TWA), minutes="0"), "Ensure this value is greater than or equal to 1."),
        (report(("39", "ppm", TWA), measured_on=days(1)), "That day is still to come."),
        (report(("39", "ppm", TWA), until_on=days(-10)), "It would end before it began."),
        (report(("39", "ppm", TWA), substance="71-43-2"), "71-43-2 is not one of the available choices."),
    ],
)  # fmt: skip
def test_a_measurement_that_cannot_be_is_refused_at_its_field(
    ines: Client, world: World, wipe: Product, given: dict[str, object], says: str
) -> None:
    answer = ines.post(address(world, wipe), given)
    assert answer.status_code == 200
    assert says in answer.content.decode()
    assert AirMeasurement.objects.count() == AirSample.objects.count() == 0


def test_without_a_product_it_is_asked_for_first(ines: Client, world: World, wipe: Product) -> None:
    bay = reverse("bays:measure", args=[world.bay_2.code])
    assert "On to the results" in ines.get(bay).content.decode()
    assert "Select a valid choice" in ines.get(f"{bay}?product=XNONESUC").content.decode()


def test_a_substance_of_a_product_without_composition_is_given_by_name_or_cas(
    ines: Client, world: World
) -> None:
    bare = w.hollin(world)
    wrong = ines.post(address(world, bare), report(("39", "ppm", TWA), substance="67-63-1"))
    assert "the check digit of 67-63-1 would be 0" in wrong.content.decode()
    odd = ines.post(address(world, bare), report(("39", "ppm", TWA), substance="spirit"))
    assert "Give its CAS number, like 67-63-0." in odd.content.decode()
    for number, text in enumerate(("Isopropanol", "67-63-0"), 1):
        ines.post(address(world, bare), report(("39", "ppm", TWA), substance=text))
        assert AirSample.objects.filter(cas="67-63-0", name="isopropanol").count() == number


def test_what_is_kept_is_judged_on_its_page(ines: Client, world: World, wipe: Product) -> None:
    """WEL 500 ppm in 15 minutes: 49 is 9.8 %. The 8-hour WEL was not measured, and is named."""
    row = arm(world)
    rows = ("49; 48 47", "ppm", SHORT)
    answer = ines.post(address(world, wipe), report(rows, exhaust=str(row.pk)), follow=True)
    text = answer.content.decode()
    assert "What was measured is shown to be below its limits." in text
    assert (
        "Isopropanol against the 15-minute limit: 3 results, the largest 49 ppm, 9.8 % of 500 ppm (UK WEL, "
        "read in a copy): shown to be below it." in text
    )
    assert "Isopropanol against the 8-hour limit: not measured, so it is still reckoned." in text
    assert "at most 180 ml in 30 minutes" in text
    assert "EN 689:2018, 5.5.2 (from memory: check it)" in text
    one = AirMeasurement.objects.get()
    assert (one.amount, one.exhaust, one.kept_by) == (180 * ML, row, world.ines)


@pytest.mark.parametrize(
    ("ppm", "says"),
    [
        (("500", "20", "20"), "A limit was reached: this work stops."),
        (("49", "48"), "The results do not decide it."),
        (("0", "0", "0"), "The results do not decide it."),
    ],
)
def test_what_reached_a_limit_or_decides_nothing_says_so(
    ines: Client, world: World, wipe: Product, ppm: tuple[str, ...], says: str
) -> None:
    kept(world, wipe, *ppm)
    assert says in page(ines, world)


def test_what_is_ended_or_withdrawn_stays_and_says_when(ines: Client, world: World, wipe: Product) -> None:
    row, one, bay = arm(world), kept(world, wipe, "49", "48", "47"), world.bay_2.code
    ines.post(reverse("bays:end_exhaust", args=[bay, row.pk]))
    ines.post(reverse("bays:withdraw", args=[bay, one.pk]))
    row.refresh_from_db()
    one.refresh_from_db()
    assert (row.ended_on, one.withdrawn_on) == (days(0), days(0))
    text = page(ines, world)
    assert "Here no more since" in text
    assert "Withdrawn on" in text
    assert (
        "This measurement is withdrawn."
        in ines.get(reverse("bays:measurement", args=[bay, one.pk])).content.decode()
    )
    LocalExhaust.objects.filter(pk=row.pk).update(ended_on=days(-5))
    ines.post(reverse("bays:end_exhaust", args=[bay, row.pk]))
    row.refresh_from_db()
    assert row.ended_on == days(-5), "the first day stays"


def test_an_exhaust_that_is_examined_again_stands_there_once_with_its_latest_day(
    ines: Client, world: World
) -> None:
    arm(world, examined_on=days(-400), until_on=days(-5))
    assert "Its examination ended on" in page(ines, world)
    ines.post(reverse("bays:exhaust", args=[world.bay_2.code]), examination())
    text = page(ines, world)
    assert text.count("<strong>Extraction arm</strong>") == 1
    assert "Its examination ended on" not in text


def test_the_page_asks_as_many_queries_for_five_measurements_as_for_one(
    ines: Client, world: World, wipe: Product
) -> None:
    aired(world.bay_2)
    counts = []
    for more in (1, 4):
        for _ in range(more):
            arm(world)
            kept(world, wipe, "49", "48", "47")
        with CaptureQueriesContext(connection) as asked:
            page(ines, world)
        counts.append(len(asked))
    assert counts[0] == counts[1]


def test_a_measurement_that_was_written_down_ends_the_ask_of_the_check(
    ines: Client, world: World, wipe: Product
) -> None:
    aired(world.bay_2)
    job = w.job(world, timezone.now() + timedelta(hours=2))
    w.need(w.step(job, bay=world.bay_2, person=world.tomas), wipe, 100 * ML)
    at = reverse("precheck:job", args=[job.code])
    assert "who works here breathes 5" in ines.get(at).content.decode()
    ines.post(address(world, wipe), report(("49 48 47", "ppm", SHORT), minutes="60"))
    text = ines.get(at).content.decode()
    assert "as measured" in text
    assert "who works here breathes 5" not in text
    one = AirMeasurement.objects.get()
    ines.post(reverse("bays:withdraw", args=[world.bay_2.code, one.pk]))
    assert "who works here breathes 5" in ines.get(at).content.decode()
