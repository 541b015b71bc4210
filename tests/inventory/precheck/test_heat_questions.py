"""Does a coating stand the heat of what it goes on? Working temperatures: the table, from memory."""

import pytest

from inventory.trade.acts import Surface
from inventory.trade.edits import Edits
from tests.inventory.precheck.cases import COAT, found, said
from tests.inventory.precheck.surfaces import act, of


@pytest.mark.parametrize(
    ("edits", "grade", "says"),
    [
        (Edits(touches=("wheels",)), "ask", "Nobody has said what heat Tidewall wheel coating stands."),
        (
            Edits(touches=("brakes",), heat_c=200),
            "stop",
            "Tidewall wheel coating stands 200 °C (392 °F), and its surface gets hotter.",
        ),
    ],
)
def test_a_coating_on_what_gets_hot_must_stand_it(edits: Edits, grade: str, says: str) -> None:
    (one,) = found(of(act(COAT, "XTWDWHEL", "coating", name="Tidewall wheel coating", edits=edits)))

    assert (one.code, one.grade, one.says) == ("heat.rating", grade, says)
    assert one.about == ("XTWDWHEL", COAT.code)


@pytest.mark.parametrize(
    ("edits", "because"),
    [
        (Edits(touches=("wheels",), heat_c=150), "a wheel gets no hotter than 150 °C"),
        (Edits(touches=("paint",)), "paint does not get hot"),
    ],
)
def test_a_coating_that_stands_its_surface_is_silent(edits: Edits, because: str) -> None:
    assert said(of(act(COAT, "XTWDWHEL", "coating", edits=edits))) == [], because


def test_an_exhaust_among_the_panels_is_hot_metal() -> None:
    coat = act(
        COAT,
        "XTWDWHEL",
        "coating",
        name="Tidewall wheel coating",
        edits=Edits(touches=("metal",), heat_c=200),
    )
    tip, sill = Surface("exhaust tip", "stainless"), Surface("sill", "stainless")

    assert [grade for grade, _ in said(of(coat, surfaces=(tip,)))] == ["stop"]
    assert said(of(coat, surfaces=(sill,))) == []
