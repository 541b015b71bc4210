"""The bottle's own page hands its code to the scan page; nobody else's link does."""

from typing import Any

import pytest
from django.urls import reverse

from inventory.models import Container
from tests.browser.conftest import Site, cookies


@pytest.fixture
def ines(page: Any, demo_site: Site) -> Any:
    """A browser in which Ines is signed in."""
    page.context.add_cookies(cookies("ines", demo_site.url))
    return page


def compound(site: Site) -> Container:
    """An open bottle of the demo's compound."""
    kept = Container.objects.filter(
        shop=site.shop, product__name="Marl cutting compound", state="open", held=""
    )
    return kept[0]


def test_a_link_from_elsewhere_is_not_a_scan(ines: Any, demo_site: Site) -> None:
    kept = compound(demo_site)

    ines.goto(f"{demo_site.url}{reverse('scan:station')}?line={kept.code}")
    ines.wait_for_timeout(600)

    assert "Marl cutting compound" not in ines.inner_text("#station")


def test_a_bottles_page_hands_its_code_to_the_station(ines: Any, demo_site: Site) -> None:
    kept = compound(demo_site)

    ines.goto(f"{demo_site.url}{reverse('shelf:container', args=[kept.code])}")
    ines.get_by_role("link", name="Use", exact=True).click()

    ines.get_by_text("Marl cutting compound").first.wait_for()
    assert ines.url == f"{demo_site.url}{reverse('scan:station')}"
