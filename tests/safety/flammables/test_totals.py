"""How much of what burns may stand where: each limit from both sides, what counts, and what is said."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from safety.findings import Finding
from safety.flammables.sums import Store, bund_litres, sums
from safety.flammables.totals import totals
from safety.flammables.values import Held

GAL = 3.785411784


def liquid(of: int | None, litres: float, name: str = "thinner", **more: object) -> Held:
    return Held(name, of, litres, **more)  # type: ignore[arg-type]


def codes(held: list[Held], regime: str, cabinet: bool, **typed: float) -> list[str]:
    return [one.code for one in totals(held, regime, cabinet, **typed)]


def only(held: list[Held], regime: str, cabinet: bool, **typed: float) -> Finding:
    [told] = totals(held, regime, cabinet, **typed)
    return told


@pytest.mark.parametrize(
    ("cabinet", "categories", "gallons"),
    [
        (True, (1,), 60),
        (True, (2,), 60),
        (True, (3,), 60),
        (True, (1, 2, 3), 60),
        (True, (4,), 120),
        (False, (1,), 25),
        (False, (2,), 120),
        (False, (4,), 120),
        (False, (2, 3, 4), 120),
    ],
)
def test_a_us_limit_holds_up_to_its_gallons_and_asks_beyond(
    cabinet: bool, categories: tuple[int, ...], gallons: float
) -> None:
    """29 CFR 1910.106(d)(3)(i) and (e)(2)(ii)(b); a gallon is 3.785411784 l."""
    share = gallons * GAL / len(categories)
    full = [liquid(of, share, f"category {of}") for of in categories]
    assert codes(full, "US", cabinet) == []
    code = "flammables.cabinet" if cabinet else "flammables.fire_area"
    assert codes([*full, liquid(categories[0], 0.01)], "US", cabinet) == [code]


def test_categories_of_different_sums_do_not_fill_one_another() -> None:
    """A cabinet may hold 60 gal of 1 to 3 beside 120 gal of 4; a fire area 25 of 1 beside 120 of 2 to 4."""
    assert codes([liquid(3, 60 * GAL), liquid(4, 120 * GAL)], "US", True) == []
    assert codes([liquid(1, 25 * GAL), liquid(2, 120 * GAL)], "US", False) == []


def test_a_full_cabinet_says_by_how_much_and_the_way_out() -> None:
    """60 gal are 227.125 l; 240 l are 63.401 gal: 12.875 l or 3.401 gal too much, said rounded up."""
    held = [
        liquid(2, 200, "isopropanol"),
        liquid(3, 30, "xylene", sealed=False),
        liquid(3, 10, "tar remover"),
    ]
    assert only(held, "US", True) == Finding(
        "flammables.cabinet",
        "ask",
        "This cabinet holds 240 l (63.4 gal) of what burns (categories 1 to 3 and flammable aerosols); "
        "at most 227.1 l (60 gal) may be there.",
        "It holds isopropanol 200 l (52.8 gal), xylene 30 l (7.9 gal) and tar remover 10 l (2.6 gal).",
        "Move at least 12.9 l (3.5 gal) to another flammables cabinet, sealed ones first: isopropanol "
        "and tar remover.",
        "29 CFR 1910.106(d)(3)(i) (read)",
        ("isopropanol", "xylene", "tar remover"),
    )


def test_what_stands_in_a_cabinet_leaves_the_us_fire_area_and_stays_in_the_uk_workroom() -> None:
    outside, inside = liquid(1, 90, "ether"), liquid(1, 20, "ether", cabinet=True)
    assert codes([outside, inside], "US", False) == []
    assert codes([outside, liquid(1, 20, "ether")], "US", False) == ["flammables.fire_area"]
    room = [liquid(2, 40, flash_c=12), liquid(2, 20, flash_c=12, cabinet=True)]
    assert "flammables.fire_area" in codes(room, "UK", False)
    assert "flammables.fire_area" not in codes(room[:1], "UK", False)


@pytest.mark.parametrize(
    ("of", "expected", "because"),
    [
        (1, ["flammables.fire_area"], "an aerosol that burns is category 1"),
        (2, ["flammables.fire_area"], "so is one of aerosol category 2"),
        (None, ["flammables.fire_area"], "one that nobody classified counts as one that burns"),
        (3, [], "aerosol category 3 is under pressure and hardly burns"),
    ],
)
def test_aerosols_count_with_propellant_and_liquid(of: int | None, expected: list[str], because: str) -> None:
    """29 CFR 1910.106(a)(13); 25 gal are 94.6 l: 240 cans of 0.4 l are 96 l."""
    assert codes([Held("cleaner spray", of, 96, aerosol=True)], "US", False) == expected, because
    assert codes([Held("cleaner spray", of, 94, aerosol=True)], "US", False) == []


@pytest.mark.parametrize(
    ("held", "over", "because"),
    [
        (liquid(2, 50, flash_c=12), False, "50 l are allowed"),
        (liquid(2, 50.1, flash_c=12), True, "and not more"),
        (liquid(3, 50.1, flash_c=29.9), True, "below the room's 30 °C"),
        (liquid(3, 50.1, flash_c=30), False, "not below them"),
        (liquid(3, 250, flash_c=38), False, "250 l up to 60 °C"),
        (liquid(3, 250.1, flash_c=60), True, "60 °C is still in"),
        (liquid(4, 900, flash_c=61), False, "above 60 °C the guidance sets none"),
        (liquid(3, 50.1), True, "category 3 without a flash point may light in the room"),
        (liquid(4, 900), False, "category 4 lights above 60 °C"),
        (Held("spray", 1, 50.1, aerosol=True), True, "aerosols stand with what lights in the room"),
        (Held("spray", 3, 900, aerosol=True), False, "unless they hardly burn"),
        (liquid(0, 900), False, "what does not burn is not counted"),
    ],
)
def test_the_uk_guidance_counts_by_flash_point(held: Held, over: bool, because: str) -> None:
    """HSE guidance on DSEAR: 50 l below the room's highest temperature, 250 l up to 60 °C."""
    assert (codes([held], "UK", True) == ["flammables.cabinet"]) == over, because


def test_a_hotter_room_brings_more_under_the_50_litres() -> None:
    wipe = [liquid(3, 60, flash_c=33)]
    assert codes(wipe, "UK", True) == []
    assert codes(wipe, "UK", True, room_maximum_c=35) == ["flammables.cabinet"]


def test_the_uk_finding_calls_itself_guidance() -> None:
    told = only([liquid(2, 62, "isopropanol", flash_c=12)], "UK", True)
    assert told.says == (
        "This cabinet holds 62 l of what burns (flash point below the room's highest 30 °C and flammable "
        "aerosols); at most 50 l may be there."
    )
    assert told.source == "HSE guidance on DSEAR, guidance and no statutory cap (read)"


@pytest.mark.parametrize(
    ("regime", "cabinet", "to"),
    [
        ("US", True, "another flammables cabinet"),
        ("US", False, "a flammables cabinet or another fire area"),
        ("UK", True, "another flammables cabinet"),
        ("UK", False, "a store outside this workroom"),
    ],
)
def test_the_way_out_leads_out_of_what_is_full(regime: str, cabinet: bool, to: str) -> None:
    held = [liquid(2, 500, "isopropanol", flash_c=12, cabinet=regime == "UK", sealed=False)]
    assert only(held, regime, cabinet).do.endswith(f" to {to}.")


def test_half_a_days_need_is_told_asked_beyond_and_silent_within() -> None:
    out = [liquid(2, 12, "isopropanol", flash_c=12)]
    told = only(out, "UK", False)
    assert (told.code, told.grade) == ("flammables.half_day", "tell")
    assert told.says == "12 l of what burns stand outside a cabinet; only half a day's need should."
    assert told.do == (
        "Keep out what half a day needs and put the rest into the cabinet, sealed ones first: isopropanol."
    )
    asked = only(out, "UK", False, half_day_litres=5)
    assert (asked.grade, asked.because) == ("ask", "Half a day needs 5 l.")
    assert asked.do == "Put at least 7 l into the cabinet, sealed ones first: isopropanol."
    assert codes(out, "UK", False, half_day_litres=12) == []
    assert codes([liquid(2, 12, flash_c=12, cabinet=True)], "UK", False) == []
    assert codes(out, "US", False) == []


@pytest.mark.parametrize("regime", ["EU", "CA", "UN"])
def test_elsewhere_the_shops_own_limit_counts_and_without_one_that_is_told(regime: str) -> None:
    held = [liquid(2, 30, "isopropanol"), Held("spray", 1, 10, aerosol=True)]
    told = only(held, regime, True)
    assert (told.code, told.grade) == ("flammables.no_limit", "tell")
    assert told.says == "This cabinet holds 40 l of what burns; no limit for it is known."
    assert told.do == (
        "Ask the fire authority or the insurer how many litres one cabinet may hold, and type it in."
    )
    assert codes(held, regime, True, typed_litres=40) == []
    over = only(held, regime, True, typed_litres=35)
    assert (over.code, over.grade, over.source) == ("flammables.cabinet", "ask", "Typed by the shop")
    assert over.do == (
        "Move at least 5 l to another flammables cabinet, sealed ones first: isopropanol and spray."
    )
    assert codes([liquid(0, 500)], regime, True) == []


def test_what_nobody_knows_is_told_and_not_counted() -> None:
    told = only([liquid(None, 500, "wheel cleaner")], "US", True)
    assert (told.code, told.grade) == ("flammables.unknown", "tell")
    assert told.says == "Nobody knows whether wheel cleaner burns: not counted here."
    assert told.do == "Type the flash point from section 9 of the data sheet."
    assert codes([liquid(0, 500, "shampoo")], "US", True) == []
    by_its_flash_point = [liquid(None, 230, "wheel cleaner", flash_c=20)]
    assert codes(by_its_flash_point, "US", True) == ["flammables.cabinet"]


def test_a_sump_holds_eleven_tenths_of_the_largest_container() -> None:
    """UK guidance: 110 % of the largest vessel; 25 l ask for 27.5 l."""
    assert bund_litres([liquid(2, 5), liquid(2, 25)]) == pytest.approx(27.5)
    assert bund_litres([]) == 0


HELD = st.lists(
    st.builds(
        Held,
        st.sampled_from(["a", "b", "c"]),
        st.sampled_from([None, 0, 1, 2, 3, 4]),
        st.floats(0.01, 400),
        st.booleans(),
        st.none() | st.floats(-40, 120),
        st.booleans(),
        st.booleans(),
    ),
    max_size=8,
)
REGIMES = st.sampled_from(["US", "UK", "EU", "CA"])


@given(HELD, REGIMES, st.booleans())
def test_the_order_of_containers_is_nothing(held: list[Held], regime: str, cabinet: bool) -> None:
    there = [one.code for one in totals(held, regime, cabinet, typed_litres=100)]
    back = [one.code for one in totals(held[::-1], regime, cabinet, typed_litres=100)]
    assert there == back


@given(HELD, HELD, REGIMES, st.booleans())
def test_one_more_container_never_lowers_a_sum(
    held: list[Held], more: list[Held], regime: str, cabinet: bool
) -> None:
    store = Store(regime, cabinet, typed_litres=100)
    before, after = sums(held, store), sums([*held, *more], store)
    assert all(now.litres >= then.litres - 1e-9 for then, now in zip(before, after, strict=True))
