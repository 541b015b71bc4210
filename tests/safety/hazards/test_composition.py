"""A sheet's section 3, as people type it: what is refused, and what each way of writing means."""

import pytest

from safety.hazards.composition import Unreadable, mixes_typed, read_mixes, read_row, typed

LYE = {"name": "Sodium hydroxide", "cas": "1310-73-2", "percent": "6", "hazards": "Skin Corr. 1A H314"}


@pytest.mark.parametrize(
    ("field", "text", "says"),
    [
        ("name", "", "Give the ingredient a name"),
        ("percent", "", "Give its percentage by weight"),
        ("percent", "some", "“some” is not a percentage like 12, 5-15 or <5."),
        ("percent", "5..15", "“5..15” is not a percentage"),
        ("hazards", "corrosive", "“corrosive” is not class, category and H-code"),
        ("hazards", "Skin Corr. 1A H315", "carries H314, not H315"),
        ("limits", "Skin Corr. 1A H314", "is not a limit like"),
        ("limits", "five: Skin Corr. 1A H314", "is not a limit like"),
        ("limits", "5: burns", "“burns” is not class, category and H-code"),
        ("ate", "1200", "“1200” is not a way in and a number"),
        ("ate", "swallowed 1200", "the ways are oral, dermal, vapour, dust mist, gas."),
        ("unknown", "nose", "“nose” is none of oral, dermal, inhalation."),
        ("m_factors", "10", "“10” is not an M factor with its kind"),
        ("ph", "high", "“high” is not a pH"),
        ("additive", "perhaps", "Say yes, no, or nothing"),
    ],
)
def test_a_cell_that_cannot_be_read_says_what_was_expected(field: str, text: str, says: str) -> None:
    _, errors = read_row(LYE | {field: text})
    assert list(errors) == [field]
    assert says in errors[field]


@pytest.mark.parametrize(
    ("text", "percent", "because"),
    [
        ("12", 12, "a number alone"),
        ("12,5 %", 12.5, "a comma and a sign"),
        ("5-15", [5, 15], "a range"),
        ("≥ 5 - < 15 %", [5, 15], "a range as sheets print it"),
        ("5 to 15", [5, 15], "in words"),
        ("<5", [0, 5], "up to: from nothing"),
        ("≤ 0.5", [0, 0.5], "up to, included"),
    ],
)
def test_percentages_are_read_as_sheets_print_them(text: str, percent: object, because: str) -> None:
    assert read_row(LYE | {"percent": text})[0]["percent"] == percent, because


@pytest.mark.parametrize(
    ("text", "hazards", "because"),
    [
        ("Skin Corr. 1A, H314; Met. Corr. 1 H290", ["Skin Corr. 1A H314", "Met. Corr. 1 H290"], "two"),
        ("none", [], "looked at and not classified"),
        ("Flam. Liq. 2 H225; EUH066", ["Flam. Liq. 2 H225", "EUH066"], "a supplemental statement beside"),
    ],
)
def test_classes_stand_between_semicolons(text: str, hazards: list[str], because: str) -> None:
    assert read_row(LYE | {"hazards": text})[0]["hazards"] == hazards, because


def test_classes_left_empty_are_unknown_and_never_none() -> None:
    assert "hazards" not in read_row(LYE | {"hazards": ""})[0]


def test_limits_run_from_one_percentage_to_another_or_on() -> None:
    document, _ = read_row(LYE | {"limits": "5: Skin Corr. 1A H314; 2-5: Skin Corr. 1B H314; 5: EUH031"})
    assert document["limits"] == [
        {"from": 5, "to": None, "hazard": "Skin Corr. 1A H314"},
        {"from": 2, "to": 5, "hazard": "Skin Corr. 1B H314"},
        {"from": 5, "to": None, "hazard": "EUH031"},
    ]


def test_a_document_typed_out_and_read_again_is_the_same() -> None:
    document = {
        "name": "Sodium hypochlorite",
        "cas": "7681-52-9",
        "percent": [4, 4.5],
        "hazards": ["Skin Corr. 1B H314", "Aquatic Acute 1 H400"],
        "limits": [{"from": 5, "to": None, "hazard": "EUH031"}],
        "ate": {"oral": 1100, "dust_mist": 2.5},
        "unknown": ["dermal"],
        "m_acute": 10,
        "m_chronic": 1,
        "ph": 12.5,
        "additive": False,
    }
    assert read_row(typed(document)) == (document, {})


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("1:10", "“1:10” is not a mix and what was measured, like “1:10 pH 10.9”."),
        ("pH 10.9", "is not a mix"),
        ("1:0 pH 10.9", "is not a mix"),
        ("1:10 pH high", "is not a mix"),
    ],
)
def test_a_measured_mix_that_cannot_be_read_is_refused(text: str, says: str) -> None:
    with pytest.raises(Unreadable, match=says.split("“")[0] or says):
        read_mixes(text)


def test_measured_mixes_are_read_a_line_each_and_typed_out_again() -> None:
    text = "1:10 pH 10.9\n1:1 pH 12\n1:1 flash point 24"
    mixes = read_mixes(text)
    assert mixes == [
        {"parts": [1, 10], "ph": 10.9, "flash_point_c": None},
        {"parts": [1, 1], "ph": 12, "flash_point_c": 24},
    ]
    assert mixes_typed(mixes) == text
