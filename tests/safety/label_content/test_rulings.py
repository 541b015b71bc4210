"""What the rules say of a container for immediate use, of a small one, and which stock stands what."""

import pytest

from safety.hazards.classes import classes
from safety.hazards.facts import SheetFacts
from safety.hazards.tables import header
from safety.label_content import immediate_use, label_stock, small
from safety.label_content.rulings import DROPPED_NOT_PUBLIC, DROPPED_TO_125_ML


@pytest.mark.parametrize(
    ("regime", "exempt", "names_content", "source", "sure"),
    [
        ("US", True, False, "29 CFR 1910.1200(f)(8)", "from memory"),
        ("CA", False, True, "provincial workplace law (WHMIS)", "read in a faithful copy"),
        ("EU", False, True, "Directive 92/58/EEC, Annex III", "read in a faithful copy"),
        ("UN", False, True, "UN GHS Rev 10", "from memory"),
    ],
)
def test_a_container_for_the_shift_is_exempt_by_the_regimes_own_rule(
    regime: str, exempt: bool, names_content: bool, source: str, sure: str
) -> None:
    answer = immediate_use(regime)
    assert (answer.exempt, answer.names_content) == (exempt, names_content)
    assert (answer.ruling.source, answer.ruling.sure) == (source, sure)
    assert "Never set it down unattended" in answer.caution


@pytest.mark.parametrize(
    ("hazard", "public", "left", "because"),
    [
        ("Acute Tox. 4 H302", False, (), "spared for a shop's own people"),
        ("Acute Tox. 4 H302", True, ("H302",), "not spared the public"),
        ("STOT SE 3 H336", True, ("H336",), "not spared the public"),
        ("Flam. Liq. 1 H224", False, ("H224",), "never spared"),
        ("Flam. Liq. 2 H225", True, (), "spared even the public"),
        ("Eye Dam. 1 H318", False, ("H318",), "never spared"),
        ("Eye Irrit. 2 H319", False, (), "spared"),
        ("Asp. Tox. 1 H304", False, ("H304",), "never spared"),
        ("Aquatic Chronic 3 H412", False, ("H412",), "not on the list"),
    ],
)
def test_up_to_125_ml_the_eu_spares_the_listed_classes_and_no_other(
    hazard: str, public: bool, left: tuple[str, ...], because: str
) -> None:
    """CLP Annex I, 1.5.2."""
    assert small(SheetFacts(hazards=(hazard,)), "EU", 125, public).statements == left, because


def test_precautions_go_only_where_no_class_keeps_its_own() -> None:
    mild = SheetFacts(hazards=("Flam. Liq. 2 H225", "Skin Irrit. 2 H315"))
    grave = SheetFacts(hazards=("Flam. Liq. 2 H225", "Skin Corr. 1B H314"))
    assert small(mild, "EU", 100).precautions is False
    assert small(grave, "EU", 100).precautions is True


def test_every_spared_class_is_a_class_of_the_table() -> None:
    known = {(one.name, one.category) for one in classes().values()}
    named = {(name, each) for name, all_ in (DROPPED_TO_125_ML | DROPPED_NOT_PUBLIC).items() for each in all_}
    # 2A and 2B are the US and Canadian names of the EU's one Eye Irrit. 2.
    assert named - known <= {("Eye Irrit.", "2"), ("Eye Irrit.", "2A"), ("Eye Irrit.", "2B")}


def test_the_advice_on_stock_claims_no_source_and_names_one_for_solvent_and_acid() -> None:
    assert "common practice, no source" in " ".join(header("label_stock"))
    assert {one.mark for one in label_stock()} == {"P"}
    film = next(one for one in label_stock() if one.stock == "polyester film")
    assert (film.washing, film.solvent, film.acid, film.printed_by) == ("yes", "yes", "yes", "resin ribbon")
    assert {one.solvent for one in label_stock()} == {"yes", "short", "no"}
