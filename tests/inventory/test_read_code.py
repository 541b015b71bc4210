"""What a scanner typed, read. The numbers are those of published examples or of our own invention."""

import csv
from datetime import date
from decimal import Decimal
from pathlib import Path

import biip
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.codes import CodeKind, Reading, Readings, read_code

unhurried = settings(deadline=None)  # a loaded machine is slow, not wrong

TODAY = date(2026, 11, 25)
EXPECTED = Path(__file__).parent.parent / "expected"
GTIN = "06291041500213"
GS = "\x1d"


def rows(name: str) -> list[dict[str, str]]:
    lines = (EXPECTED / name).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def read(text: str) -> Readings:
    return read_code(text, today=TODAY)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "this text has 0"),
        ("]C1", "this text has 0"),
        ("x" * 2001, "this text has 2001"),
        ("hello", "Nothing that is read here begins at “hello”"),
        ("BKTRVNXL", "these seven would end in H"),
        ("KKTRVNXL", "none starts with K"),
        ("6291041500214", "should end in 3"),
        ("8904000210033", "should end in 7"),
        ("(01)06291041500214", "should end in 3"),
        ("٦٢٩١٠٤١٥٠٠٢١٣", "characters that no code has"),
        ("https://shop.example/soap", "names no product"),
        ("https://[/01/06291041500213", "names no product"),
        ("10ml", "“10ml” is not a code that is read here"),
        ("AB33", "begins at “AB33”"),
        ("00123456789012345675", "numbers a delivery"),
        ("(99)ABC", "names no product, lot or date"),
        ("(01)12", "begins at “(01)12”"),
    ],
)
def test_what_cannot_be_read_is_an_answer_with_its_reason(text: str, reason: str) -> None:
    found = read(text)
    assert found.readings == ()
    assert reason in " ".join(found.errors)


@pytest.mark.parametrize(
    "text",
    ["010629104150021410AB", "(01)06291041500214(10)AB", "https://id.example/01/06291041500214/10/AB"],
)
def test_a_wrong_check_digit_takes_the_product_and_leaves_the_lot(text: str) -> None:
    found = read(text)
    assert found.readings == (Reading(CodeKind.LOT, lot="AB"),)
    assert "should end in 3" in found.errors[0]


@pytest.mark.parametrize(
    ("text", "lot"),
    [
        (f"01{GTIN}10ABC17270300", "ABC"),
        (f"]d201{GTIN}10ABC17270300", "ABC"),
        (f"01{GTIN}10L1717270300", "L17"),
        (f"01{GTIN}11250301" + "10ABC17270300", "ABC"),
    ],
)
def test_an_expiry_swallowed_by_a_lot_is_asked(text: str, lot: str) -> None:
    found = read(text)
    as_sent, split = found.readings
    assert (as_sent.lot, as_sent.expires_on) == (f"{lot}17270300", None)
    assert (split.lot, split.expires_on) == (lot, date(2027, 3, 31))
    assert "No separator was sent" in found.asks[0]


def test_an_expiry_swallowed_by_a_lot_too_long_to_be_one_is_asked_too() -> None:
    found = read(f"01{GTIN}10ABCDEFGHIJKLMN17270300")
    assert found.readings == (
        Reading(CodeKind.LOT, gtin=GTIN, lot="ABCDEFGHIJKLMN", expires_on=date(2027, 3, 31)),
    )
    assert "No separator was sent" in found.asks[0]


def test_dates_and_a_serial_swallowed_together_are_asked() -> None:
    split = read(f"01{GTIN}10ABC112503011727030021S9").readings[-1]
    assert (split.lot, split.made_on, split.expires_on, split.serial) == (
        "ABC", date(2025, 3, 1), date(2027, 3, 31), "S9",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("text", "because"),
    [
        (f"01{GTIN}1727030010ABC17270300", "the expiry was read before the lot"),
        (f"01{GTIN}21S1{GS}10ABC17270300", "this scanner sends separators"),
        (f"(01){GTIN}(10)ABC17270300", "brackets say where a lot ends"),
        (f"01{GTIN}10ABC17271300", "there is no month 13"),
        (f"01{GTIN}10ABC17270230", "there is no 30 February"),
        (f"01{GTIN}1017270300", "a lot has at least one letter before it"),
        (f"https://id.example/01/{GTIN}/10/ABC17270300", "a link has its own marks"),
    ],
)
def test_a_lot_that_cannot_have_swallowed_an_expiry_is_not_asked(text: str, because: str) -> None:
    found = read(text)
    assert (len(found.readings), found.asks, found.errors) == (1, (), ()), because


@pytest.mark.parametrize("text", ["2012345000001", "0201234500001", "]E02012345000001", "]E401234565"])
def test_a_number_of_restricted_circulation_asks_whose_it_is(text: str) -> None:
    found = read(text)
    assert found.readings[0].restricted
    assert "one supplier's own use" in found.asks[0]


def test_an_ordinary_number_asks_nothing() -> None:
    found = read("6291041500213")
    assert found == Readings((Reading(CodeKind.PRODUCT, gtin=GTIN),))
    assert not found.readings[0].restricted


@pytest.mark.parametrize(
    ("text", "ask"),
    [
        (f"(02){GTIN}(10)AB", "How many are in it?"),
        (f"(01){GTIN}(37)12", "without naming what it counts"),
        (f"(02){GTIN}(37)121012", "may be a missing separator"),
        (f"(01){GTIN}(7003)2703311430", "expires on 2027-03-31 at 14:30"),
        (f"(01){GTIN}(11)270101(17)260101", "made 2027-01-01 and good until 2026-01-01"),
        (f"(01){GTIN}(02)08904000210037(37)6", "the pack was taken"),
        ("1727030010AB33", "no sign that it is a maker's message"),
    ],
)
def test_what_does_not_go_together_is_asked(text: str, ask: str) -> None:
    assert ask in " ".join(read(text).asks)


def test_two_lots_in_one_code_are_an_error_and_neither_is_taken() -> None:
    found = read(f"(01){GTIN}(10)A(10)B")
    assert found.readings == (Reading(CodeKind.PRODUCT, gtin=GTIN),)
    assert "twice: A and B" in found.errors[0]


@pytest.mark.parametrize("day", ["270231", "271332", "270001"])
def test_a_day_that_does_not_exist_is_an_error_of_that_date_only(day: str) -> None:
    found = read(f"(01){GTIN}(10)A(17){day}")
    assert found.readings == (Reading(CodeKind.LOT, gtin=GTIN, lot="A"),)
    assert f"(17){day} is no day of the calendar" in found.errors[0]


@pytest.mark.parametrize("row", rows("gs1_numbers.csv"), ids=lambda row: row["typed"])
def test_bare_numbers_are_products_by_the_specification(row: dict[str, str]) -> None:
    found = read(row["typed"])
    assert [(each.kind, each.gtin, each.lot) for each in found.readings] == [
        (CodeKind.PRODUCT, row["gtin"], None)
    ]
    assert found.errors == ()


@pytest.mark.parametrize("row", rows("month_ends.csv"), ids=lambda row: f"{row['yymmdd']} in {row['today']}")
def test_dates_in_symbols_end_where_the_calendar_says(row: dict[str, str]) -> None:
    found = read_code(f"(01){GTIN}(17){row['yymmdd']}", today=date.fromisoformat(row["today"]))
    assert found.readings[0].expires_on == date.fromisoformat(row["use_by"])


LOT = Reading(CodeKind.LOT, gtin=GTIN, lot="AB", expires_on=date(2027, 3, 31))


@pytest.mark.parametrize(
    ("text", "because"),
    [
        (f"01{GTIN}1727030010AB", "the lot last needs no separator"),
        (f"01{GTIN}10AB{GS}17270300", "a separator"),
        (f"01{GTIN}10AB^]17270300", "a separator typed as Ctrl-]"),
        (f"{GS}01{GTIN}10AB{GS}17270300{GS}", "separators at both ends"),
        (f"]C101{GTIN}10AB{GS}17270300", "GS1-128"),
        (f"]d201{GTIN}10AB{GS}17270300", "GS1 DataMatrix"),
        (f"]Q301{GTIN}10AB{GS}17270300", "GS1 QR"),
        (f"]e001{GTIN}10AB{GS}17270300", "GS1 DataBar"),
        (f"]J101{GTIN}10AB{GS}17270300", "GS1 DotCode"),
        (f"(01){GTIN}(10)AB(17)270300", "bracketed text"),
        (f"]Q1(01) {GTIN} (10) AB (17) 270300", "bracketed text in a plain QR, with spaces"),
        ("(01)6291041500213(10)AB(17)270300", "a number typed in 13 digits"),
        (f"https://id.example/01/{GTIN}/10/AB?17=270300", "a link"),
        (f"]Q1https://id.example/01/{GTIN}/10/AB?17=270300", "a link as scanners report it"),
        (
            f"]d1https://id.example/a/b/01/{GTIN}/10/AB/?17=270300",
            "a link with a path before and a slash behind",
        ),
        (f"HTTPS://ID.EXAMPLE/01/{GTIN}/10/AB?17=270300", "a link in capitals, shorter in a QR code"),
        (f"  01{GTIN}10AB{GS}17270300\r\n", "the scanner's line end"),
    ],
)
def test_one_lot_is_read_from_every_way_of_writing_it(text: str, because: str) -> None:
    assert read(text) == Readings((LOT,)), because


def test_every_field_of_a_case_is_read() -> None:
    found = read(f"(02){GTIN}(37)12(10)A/1(11)250300(15)271200(21)S9(3103)001250(3152)000500")
    assert found == Readings(
        (
            Reading(
                CodeKind.LOT,
                gtin=GTIN,
                lot="A/1",
                made_on=date(2025, 3, 1),  # a made month counts from its first day
                best_before_on=date(2027, 12, 31),
                serial="S9",
                count=12,
                net_weight_kg=Decimal("1.250"),
                net_volume_l=Decimal("5.00"),
            ),
        )
    )


def test_the_first_of_two_sources_counts() -> None:
    reading = read(f"(01){GTIN}(30)5(11)250301(13)250401").readings[0]
    assert (reading.count, reading.made_on) == (5, date(2025, 3, 1))
    assert read(f"(01){GTIN}(13)250401").readings[0].made_on == date(2025, 4, 1)


def test_sell_by_and_due_dates_are_no_use_by() -> None:
    assert read(f"(01){GTIN}(16)270331(12)270331").readings == (Reading(CodeKind.PRODUCT, gtin=GTIN),)


def test_a_link_keeps_what_was_escaped_in_the_lot() -> None:
    assert read(f"https://id.example/01/{GTIN}/10/AB%2F1/21/S9").readings[0].lot == "AB/1"


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("BKTRVNXH", CodeKind.CONTAINER),
        ("bktr vnxh", CodeKind.CONTAINER),
        ("]d1BKTRVNXH", CodeKind.CONTAINER),
        ("https://shop.example/shelf/BKTRVNXH/", CodeKind.CONTAINER),
        ("CFKENGBX", CodeKind.COMMAND),
    ],
)
def test_our_own_codes_are_read_by_their_type(text: str, kind: CodeKind) -> None:
    (reading,) = read(text).readings
    assert (reading.kind, reading.gtin) == (kind, None)


def test_the_document_has_the_promised_keys_and_plain_values() -> None:
    assert read(f"(01){GTIN}(10)AB(17)270300(3103)001250(3150)000005").as_json() == {
        "readings": [
            {
                "kind": "lot", "code": None, "gtin": GTIN, "lot": "AB", "expires_on": "2027-03-31",
                "made_on": None, "best_before_on": None, "serial": None, "count": None,
                "net_weight_kg": 1.25, "net_volume_l": 5,
            }
        ],
        "asks": [],
        "errors": [],
    }  # fmt: skip


@unhurried
@given(st.text(max_size=60))
def test_no_text_raises(text: str) -> None:
    found = read(text)
    assert found.readings or found.errors


@unhurried
@given(
    st.sampled_from(
        ["", "]C1", "]d2", "]Q1", "]E0", "]E3", "]E4", "https://x.example/01/", "(01)", "01", GS]
    ),
    st.text("0123456789()/?=%ABx]^-" + GS, max_size=50),
)
def test_no_text_that_is_nearly_a_symbol_raises(before: str, text: str) -> None:
    found = read(before + text)
    assert found.readings or found.errors
    assert all(len(each.gtin or "0" * 14) == 14 for each in found.readings)


def test_the_library_alone_would_leave_these_gaps() -> None:
    # Where one of these fails, the library has closed a gap and codes.symbols can be shorter.
    with pytest.raises(biip.ParseError):
        biip.parse(f"]J101{GTIN}10AB")
    assert biip.parse(f"]Q1https://id.example/01/{GTIN}/10/AB").gs1_digital_link_uri is None
    assert biip.parse(f"HTTPS://ID.EXAMPLE/01/{GTIN}/10/AB").gs1_digital_link_uri is None
    assert biip.parse(f"(01){GTIN}(10)AB").gs1_message is None
    bare, swallowing = (
        biip.parse("10012345678902").gs1_message,
        biip.parse(f"01{GTIN}10AB17270300").gs1_message,
    )
    assert bare is not None
    assert bare.as_hri() == "(10)012345678902"
    assert swallowing is not None
    assert swallowing.as_hri() == f"(01){GTIN}(10)AB17270300"
