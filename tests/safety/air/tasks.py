"""Tasks to judge: an isopropanol wipe in a bay, and what differs from it."""

from datetime import date
from typing import Any

from safety.air.answer import Air, air
from safety.air.task import read_task
from safety.findings import Finding

TODAY = date(2026, 11, 25)
BAY = {"volume_m3": 100, "air_m3_h": 600, "mixing_k": 1}
ISOPROPANOL = {"name": "isopropanol", "cas": "67-63-0"}
XYLENE = {"name": "xylene", "cas": "1330-20-7"}
ACETONE = {"name": "acetone", "cas": "67-64-1"}
AMMONIA = {"name": "ammonia", "cas": "7664-41-7"}
ETHANOL = {"name": "ethanol", "cas": "64-17-5"}
METHANOL = {"name": "methanol", "cas": "67-56-1"}
PROPANE = {"name": "propane", "cas": "68476-85-7"}
BUTANE = {"name": "butane", "cas": "106-97-8"}
NAPHTHA = {"name": "naphtha", "cas": "8002-05-9"}
BUTOXYETHANOL = {"name": "2-butoxyethanol", "cas": "111-76-2"}
SILICATE = {"name": "ethyl silicate", "cas": "78-10-4"}
FLUORIDE = {"name": "hydrogen fluoride", "cas": "7664-39-3"}
QUARTZ = {"name": "quartz", "cas": "14808-60-7", "form": "dust"}
HARDENER = {"name": "hexamethylene diisocyanate", "cas": "822-06-0"}


def document(*emissions: dict[str, Any], **changed: Any) -> dict[str, Any]:
    """A task of an hour in the bay, under US lists, with what differs."""
    place = BAY | changed.pop("place", {})
    return {"place": place, "minutes": 60, "regime": "US", "emissions": list(emissions)} | changed


def judged(*emissions: dict[str, Any], on: date = TODAY, **changed: Any) -> Air:
    """The answer to a task."""
    return air(read_task(document(*emissions, **changed)), on)


def answer(*emissions: dict[str, Any], on: date = TODAY, **changed: Any) -> dict[str, Any]:
    """The document of an answer."""
    return judged(*emissions, on=on, **changed).as_json()


def finding(code: str, *emissions: dict[str, Any], on: date = TODAY, **changed: Any) -> Finding | None:
    """The finding with this code, None where the check is silent."""
    found = [one for one in judged(*emissions, on=on, **changed).findings if one.code == code]
    assert len(found) <= 1, found
    return found[0] if found else None


def grade(code: str, *emissions: dict[str, Any], **changed: Any) -> str | None:
    """The grade of the finding with this code."""
    one = finding(code, *emissions, **changed)
    return None if one is None else one.grade
