"""What every test may use: Hypothesis profiles, one engine's share, a browser on three screens."""

import os
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings as hypothesis_settings

# In CI the same examples every time, so that red means the change; at a desk new ones every time.
hypothesis_settings.register_profile("ci", deadline=None, print_blob=True, derandomize=True)
hypothesis_settings.register_profile("dev", deadline=None, print_blob=True)
hypothesis_settings.load_profile("ci" if os.environ.get("CI") == "true" else "dev")

CHROMIUM = os.environ.get("CHROMIUM", "/usr/bin/chromium")
# Without the background flags Chromium talks to its maker's hosts at every start.
CHROMIUM_ARGUMENTS = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    # As in a shop whose line is down: a page that asks another host gets nothing, here as there.
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost",
]
SCREENS = {"desktop": (1280, 900), "tablet": (800, 1280), "phone": (360, 740)}
DATABASE_FIXTURES = {"db", "transactional_db", "django_db_reset_sequences", "django_db_serialized_rollback"}


def pytest_addoption(parser: pytest.Parser) -> None:
    """--only-database is what manage.py gives to the second engine."""
    parser.addoption(
        "--only-database",
        action="store_true",
        help="leave out tests that touch no database, and browser tests: they ran on the first engine",
    )


def in_browser(item: pytest.Item) -> bool:
    """Whether a test drives a browser."""
    return "browser" in getattr(item, "fixturenames", ())


def uses_database(item: pytest.Item) -> bool:
    """Whether the engine can change a test's outcome."""
    marked = any(item.get_closest_marker(name) for name in ("django_db", "engine"))
    return marked or bool(DATABASE_FIXTURES & set(getattr(item, "fixturenames", ())))


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Browser tests last (the quick ones speak first); on the second engine only what uses the database."""
    # The demo's shop is committed for all its tests at once: whoever opens another shop goes before.
    items.sort(key=lambda item: (in_browser(item), "demo_site" in getattr(item, "fixturenames", ())))
    if config.getoption("--only-database"):
        kept = [item for item in items if uses_database(item) and not in_browser(item)]
        config.hook.pytest_deselected(items=[item for item in items if item not in set(kept)])
        items[:] = kept


@pytest.fixture(autouse=True)
def files_of_tests(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> None:
    """Keep uploaded files out of the shop's data folder, also where pytest is started by hand."""
    if uses_database(request.node):
        settings = request.getfixturevalue("settings")
        settings.MEDIA_ROOT = tmp_path_factory.mktemp("files")
        # The slow hash of a shop takes a second and a half for the cast of three.
        settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]


@pytest.fixture(scope="session", autouse=True)
def ledger_empties_in_teardown() -> None:
    """A test that commits leaves by a flush, and the ledger's guards would refuse it."""
    from tests.lifting import lift_in_teardown

    lift_in_teardown()


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """One Chromium for the whole run."""
    from playwright.sync_api import sync_playwright

    # Playwright keeps an event loop in this thread, and Django would refuse every query beside it.
    os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "true"
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=CHROMIUM, args=CHROMIUM_ARGUMENTS)
        yield chromium
        chromium.close()


@dataclass
class Watch:
    """What a page must not do: ask a host outside the shop, break a script, be refused by our own policy."""

    problems: list[str] = field(default_factory=list)

    def over(self, page: Any) -> None:
        """Watch a page."""
        page.on("request", lambda request: self.request(request.url))
        page.on("pageerror", lambda error: self.problems.append(f"script error: {error}"))
        page.on("console", lambda message: self.console(message.text))

    def request(self, url: str) -> None:
        """Note a request that leaves this machine."""
        if not url.startswith(("http://127.0.0.1", "http://localhost", "data:", "blob:", "about:")):
            self.problems.append(f"outside request: {url}")

    def console(self, text: str) -> None:
        """Note what the content security policy refused."""
        if "Content Security Policy" in text:
            self.problems.append(text)


@pytest.fixture
def open_page(browser: Any, tmp_path: Path) -> Iterator[Callable[[str], Any]]:
    """Open a page on a screen by name (desktop, tablet, phone); at the end no page may have misbehaved."""
    watch, contexts = Watch(), []

    def opened(screen: str = "desktop") -> Any:
        width, height = SCREENS[screen]
        context = browser.new_context(viewport={"width": width, "height": height}, accept_downloads=True)
        contexts.append(context)
        page = context.new_page()
        watch.over(page)
        return page

    yield opened
    for context in contexts:
        context.close()
    assert watch.problems == []


@pytest.fixture
def page(open_page: Callable[[str], Any]) -> Any:
    """A page on a desktop's screen, 1280 wide."""
    return open_page("desktop")


@pytest.fixture
def pages(open_page: Callable[[str], Any]) -> dict[str, Any]:
    """One page per screen: desktop 1280, tablet 800 x 1280, phone 360; each with cookies of its own."""
    return {screen: open_page(screen) for screen in SCREENS}
