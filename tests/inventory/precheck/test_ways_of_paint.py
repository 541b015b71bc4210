"""Where the button of a finding about paint or a pad leads: to what ends it."""

import pytest
from django.urls import reverse

from inventory.precheck.questions import Finding
from inventory.precheck.views.ways import Action, way_out

STEP, JOB, PAD = "SWPXKLNB", "JTVSGDSE", "BPADKLNB"


def finding(code: str, *about: str) -> Finding:
    return Finding(code, "ask", "says", "because", "do", "source", about)


@pytest.mark.parametrize(
    ("code", "about", "label", "view", "args", "because"),
    [
        (
            "paint.no_reading",
            ("panel1", STEP),
            "Paint and panels",
            "jobs:panels",
            [JOB],
            "readings are there",
        ),
        ("paint.thin", ("panel1", STEP), "Change the cut", "jobs:step", [JOB, STEP], "its panels are there"),
        ("paint.below_floor", ("panel1", STEP), "Change the cut", "jobs:step", [JOB, STEP], "and its grade"),
        ("pad.coarser", (PAD, STEP), "Look at BPAD KLNB", "shelf:container", [PAD], "its wash is there"),
        ("pad.foreign", (PAD, STEP), "Change the step", "jobs:step", [JOB, STEP], "washing ends nothing"),
    ],
)
def test_the_button_leads_to_what_ends_it(
    code: str, about: tuple[str, ...], label: str, view: str, args: list[str], because: str
) -> None:
    assert way_out(finding(code, *about), JOB) == Action(label, reverse(view, args=args)), because
