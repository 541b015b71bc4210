"""The station's pages: who may open them, what a device keeps, what a line sent twice does."""

from datetime import timedelta
from typing import Any

import pytest
from django.test import Client
from django.utils import timezone

from inventory.models import Heard, Station
from tests.inventory.scan.desk import content
from tests.world import GRAM, bottle, larkmoor, marl

pytestmark = pytest.mark.django_db


def post(client: Client, line: str, key: str, **more: str) -> Any:
    """Send one line as the page does."""
    return client.post("/scan/say/", {"line": line, "key": key, **more})


def enrolled(client: Client, name: str = "Bay 1 tablet") -> Client:
    """Enrol a client as Ines, then sign her out: the device stays a station."""
    client.login(username="ines", password="clear coat")
    client.post("/scan/stations/enrol/", {"name": name, "place": ""})
    client.post("/people/sign-out/")
    return client


def test_a_stranger_is_sent_to_sign_in_and_a_line_of_theirs_is_refused(client: Client) -> None:
    larkmoor()
    assert client.get("/scan/").headers["Location"] == "/people/sign-in/?next=/scan/"
    assert post(client, "UNDO", "a").status_code == 403


def test_a_viewer_does_not_scan(client: Client) -> None:
    client.force_login(larkmoor().wren)
    assert client.get("/scan/").status_code == 403


def test_only_an_owner_enrols_a_device(client: Client) -> None:
    client.force_login(larkmoor().tomas)
    assert client.post("/scan/stations/enrol/", {"name": "Mine", "place": ""}).status_code == 403
    assert not Station.objects.exists()


def test_an_enrolled_device_scans_without_anybody_signed_in(client: Client) -> None:
    world = larkmoor()
    page = enrolled(client).get("/scan/")
    assert "Scan your badge." in page.content.decode()
    assert "Hello Tomas." in post(client, world.tomas.code, "a").content.decode()


def test_the_shop_keeps_only_a_hash_of_the_devices_token(client: Client) -> None:
    larkmoor()
    enrolled(client)
    cookie = client.cookies["station"]
    assert cookie["httponly"] is True
    assert cookie.value.split(":")[0] not in Station.objects.get(name="Bay 1 tablet").token_hash


def test_the_devices_cookie_travels_by_tls_alone_where_the_shop_has_it(client: Client, settings: Any) -> None:
    settings.SESSION_COOKIE_SECURE = True
    client.force_login(larkmoor().ines)
    client.post("/scan/stations/enrol/", {"name": "Bay 1 tablet", "place": ""})
    assert client.cookies["station"]["secure"] is True


def test_the_devices_cookie_is_kept_where_the_shop_has_no_tls(client: Client) -> None:
    larkmoor()
    assert not enrolled(client).cookies["station"]["secure"]


def test_a_revoked_device_hears_nothing_more(client: Client) -> None:
    world = larkmoor()
    enrolled(client)
    owner = Client()
    owner.force_login(world.ines)
    code = Station.objects.get(name="Bay 1 tablet").code
    assert owner.post(f"/scan/stations/{code}/revoke/").status_code == 302
    assert post(client, world.tomas.code, "a").status_code == 403


def test_a_name_that_is_enrolled_again_begins_anew(client: Client) -> None:
    world = larkmoor()
    post(enrolled(client), world.tomas.code, "a")
    owner = Client()
    owner.force_login(world.ines)
    owner.post(f"/scan/stations/{Station.objects.get(name='Bay 1 tablet').code}/revoke/")
    page = enrolled(Client()).get("/scan/").content.decode()
    assert "Scan your badge." in page
    assert "Hello Tomas." not in page


def test_a_changed_cookie_is_no_device(client: Client) -> None:
    larkmoor()
    enrolled(client)
    client.cookies["station"] = client.cookies["station"].value + "x"
    assert post(client, "UNDO", "a").status_code == 403


def test_whoever_is_signed_in_scans_on_a_screen_of_their_own(client: Client) -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    client.force_login(world.tomas)
    post(client, compound.code, "a")
    said = post(client, "60 g", "b").content.decode()
    assert "took 60 g, 90 g left." in said
    assert content(compound) == 90 * GRAM


def test_a_key_with_another_line_is_422_and_the_same_line_gets_its_answer(client: Client) -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    client.force_login(world.tomas)
    post(client, compound.code, "a")
    first = post(client, "60 g", "b").content
    assert post(client, "60 g", "b").content == first
    assert post(client, "70 g", "b").status_code == 422
    assert content(compound) == 90 * GRAM


@pytest.mark.parametrize(
    ("sent", "because"),
    [
        ({"line": "", "key": "a"}, "nothing was said"),
        ({"line": "UNDO", "key": ""}, "no key"),
        ({"line": "UNDO", "key": "k" * 65}, "a key too long to keep"),
        ({"line": "UNDO", "key": "a", "at": "yesterday"}, "no instant"),
        ({"line": "UNDO", "key": "a", "at": "2026-11-25T12:00:00"}, "an instant without its zone"),
        ({"line": "UNDO", "key": "a", "at": "0001-01-01T00:00:00Z"}, "the first day that a calendar has"),
        ({"line": "UNDO", "key": "a", "at": "9999-12-31T23:59:59-12:00"}, "the last one, and past it in UTC"),
        ({"line": "9" * 2001, "key": "a"}, "a pasted page"),
    ],
)
def test_what_no_station_says_is_400(client: Client, sent: dict[str, str], because: str) -> None:
    client.force_login(larkmoor().tomas)
    assert client.post("/scan/say/", sent).status_code == 400, because


@pytest.mark.parametrize(
    ("ago", "status", "says", "because"),
    [
        (timedelta(days=729), 200, "", "a device that lay in a drawer"),
        (timedelta(days=731), 400, "lies more than 2 years back", "a clock that lost its battery"),
        (timedelta(minutes=-5), 200, "", "a device's clock goes a little fast: then it happened now"),
        (timedelta(days=-2), 400, "lies in the future", "a clock set wrong"),
    ],
)
def test_a_scan_lies_within_two_years_and_not_in_the_future(
    client: Client, ago: timedelta, status: int, says: str, because: str
) -> None:
    client.force_login(larkmoor().tomas)
    answer = post(client, "UNDO", "a", at=(timezone.now() - ago).isoformat())
    assert answer.status_code == status, because
    assert says in answer.content.decode()


def test_a_reload_shows_the_last_answer_again(client: Client) -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    client.force_login(world.tomas)
    post(client, compound.code, "a")
    assert "Marl cutting compound" in client.get("/scan/").content.decode()


def test_what_was_set_aside_waits_for_the_owner(client: Client) -> None:
    world = larkmoor()
    client.force_login(world.ines)
    post(client, "4006381333931", "a")
    page = client.get("/scan/stations/").content.decode()
    assert "No product here has the number 4006381333931. It is set aside." in page
    client.post(f"/scan/set-aside/{Heard.objects.get().pk}/done/")
    assert "Nothing is set aside." in client.get("/scan/stations/").content.decode()


def test_an_owner_of_another_shop_cannot_end_a_station(client: Client) -> None:
    larkmoor()
    enrolled(client)
    other = larkmoor("hollow-lane")
    client.force_login(other.ines)
    code = Station.objects.get(name="Bay 1 tablet").code
    assert client.post(f"/scan/stations/{code}/revoke/").status_code == 404


def test_an_enrolled_device_prints_the_labels_of_what_it_received(client: Client) -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    assert client.get(f"/posters/labels/?codes={compound.code}").status_code == 302
    assert enrolled(client).get(f"/posters/labels/?codes={compound.code}").status_code == 200


def test_an_enrolled_device_opens_no_other_page(client: Client) -> None:
    larkmoor()
    enrolled(client)
    assert [client.get(page).status_code for page in ("/shelf/", "/people/", "/scan/stations/")] == [302] * 3
