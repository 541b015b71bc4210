"""The shop whose sheets are read, with its own folder for files and its own network."""

from pathlib import Path
from typing import Any

import pytest

from safety.models import DataSheet
from tests.world import World, larkmoor


@pytest.fixture
def world(settings: Any, tmp_path: Path) -> World:
    settings.MEDIA_ROOT = tmp_path
    settings.LAN_NETWORKS = ["192.168.1.0/24"]
    settings.TRUSTED_PROXIES = []
    return larkmoor()


@pytest.fixture
def sheet() -> DataSheet:
    return DataSheet.objects.create(supplier="Orlo Supply", title="Hollin panel wipe")
