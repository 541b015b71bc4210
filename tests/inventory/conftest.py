"""The cast, opened anew for each test that asks for it; a test file may open a shop of its own instead."""

import pytest
from django.test import Client

from tests.world import World, larkmoor


@pytest.fixture
def world() -> World:
    """Larkmoor Works on an ordinary Wednesday, with an empty shelf."""
    return larkmoor()


@pytest.fixture
def shop(world: World) -> World:
    """The same, where a test speaks of jobs and reads better with a shop."""
    return world


@pytest.fixture
def ines(client: Client, world: World) -> Client:
    """The browser in which the owner is signed in."""
    client.force_login(world.ines)
    return client
