"""What no quantity can be, and what no result can be."""

from collections.abc import Callable
from math import inf, nan

import pytest

from ionwright.chemistry.amounts import Given, Key
from ionwright.chemistry.amounts.limits import check_given
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.units import read_unit
from ionwright.chemistry.written_quantity import Written

Find = Callable[..., list[float]]
Refusal = Callable[..., QuantityFault]

SILVER = "Ag^+ + e- -> Ag"
HYDROGEN = "2H+ + 2e- -> H2"
NICKEL_AND_HYDROGEN = {"nickel": "Ni^2+ + 2e- -> Ni @ cathode", "hydrogen": f"{HYDROGEN} @ cathode"}


@pytest.mark.parametrize(
    ("quantity", "text", "code"),
    [
        ("current", "-0.50 A", "negative-quantity"),
        ("time", "-20 min", "negative-quantity"),
        ("efficiency", "-5%", "negative-quantity"),
        ("current", "0 A", "zero-quantity"),
        ("time", "0.0 s", "zero-quantity"),
        ("efficiency", "0%", "zero-quantity"),
        ("efficiency", "105%", "out-of-range"),
        ("efficiency", "95", "out-of-range"),
        ("current", "5e8 A", "absurd-magnitude"),
        ("time", "1e-9 s", "absurd-magnitude"),
        ("faraday_constant", "96500 mC/mol", "absurd-magnitude"),
        ("ion_charge", "12", "out-of-range"),
        ("temperature", "-300 degC", "below-absolute-zero"),
        ("temperature", "0 K", "below-absolute-zero"),
        ("temperature", "-100 degC", "absurd-magnitude"),
        ("current", "20 min", "wrong-dimension"),
    ],
)
def test_a_quantity_that_cannot_be_is_refused_where_it_stands(
    refusal: Refusal, quantity: str, text: str, code: str
) -> None:
    fault = refusal("Cr" if quantity == "ion_charge" else SILVER, {quantity: text}, "charge")
    assert (fault.code, fault.where) == (code, f"known/{quantity}")
    assert fault.remedy


@pytest.mark.parametrize("number", [nan, inf, -inf])
def test_a_number_that_is_none_is_refused(number: float) -> None:
    given = Given("current", Written("?", number, read_unit("A"), 1, None), where="known/current")
    with pytest.raises(QuantityFault) as raised:
        check_given(Key("current"), number, given)
    assert (raised.value.code, raised.value.where) == ("not-finite", "known/current")


@pytest.mark.parametrize(
    ("key", "value"),
    [
        (Key("efficiency", "process"), 1.0),
        (Key("concentration", "process", "Cu^2+"), 0.0),
        (Key("current"), 1e-9),
    ],
)
def test_the_ends_of_a_range_belong_to_it(key: Key, value: float) -> None:
    given = Given(key.kind, Written("given", value, read_unit("1"), 1, None))
    check_given(key, value, given)
    with pytest.raises(QuantityFault):
        check_given(key, -1.0, given)


def test_a_message_names_the_quantity_and_its_substance(refusal: Refusal) -> None:
    fault = refusal(SILVER, {("mass", "Ag"): "-2.16 g"}, "charge")
    assert fault.detail == "The mass of Ag is -2.16 g; it cannot be negative."


def test_the_wrong_dimension_is_told_in_words(refusal: Refusal) -> None:
    fault = refusal(SILVER, {"current": "20 min"}, "charge")
    assert "current is in amperes" in fault.detail.lower().replace("the current", "current")
    assert "minutes" in fault.detail


def test_more_product_than_the_charge_gives_is_a_contradiction(refusal: Refusal) -> None:
    """1930 C give 2.158 g at most, and 3.00 g would be 139 %."""
    fault = refusal(SILVER, {"charge": "1930 C", ("mass", "Ag"): "3.00 g"}, "efficiency")
    assert fault.code == "contradictory"
    assert fault.where == "known/charge"
    assert "the charge of 1930 C and the mass of Ag of 3.00 g" in fault.detail
    assert "139%" in fault.detail


def test_an_efficiency_a_little_above_100_percent_is_put_down_to_measuring(find: Find) -> None:
    """2.18 g in place of 2.158 g is 101 %."""
    found = find(SILVER, {"charge": "1930 C", ("mass", "Ag"): "2.18 g"}, "efficiency")
    assert found == pytest.approx([1.0101946], rel=1e-6)


def test_coarse_figures_may_run_over_by_what_they_may_be_off(find: Find) -> None:
    """2 g may be 2.5 g or 1.5 g, so that it does not contradict 1600 C, which give 1.79 g."""
    assert find(SILVER, {"charge": "1600 C", ("mass", "Ag"): "2 g"}, "efficiency") == pytest.approx(
        [1.118], rel=1e-3
    )


def test_shares_of_more_than_all_are_a_contradiction(refusal: Refusal) -> None:
    halves = {**NICKEL_AND_HYDROGEN, "iron": "Fe^2+ + 2e- -> Fe @ cathode"}
    known = {"charge": "1930 C", ("share", "Ni"): "80%", ("share", "H2"): "40%"}
    fault = refusal(halves, known, ("mass", "Fe"))
    assert fault.code == "contradictory"
    assert fault.where.startswith("known/share")
    assert "more than 100%" in fault.detail


def test_shares_that_leave_something_over_are_a_contradiction(refusal: Refusal) -> None:
    known = {"charge": "1930 C", ("share", "Ni"): "80%", ("share", "H2"): "10%"}
    fault = refusal(NICKEL_AND_HYDROGEN, known, ("mass", "Ni"))
    assert (fault.code, fault.where) == ("contradictory", "known/share")


def test_a_pressure_below_that_of_the_vapour_leaves_no_gas(refusal: Refusal) -> None:
    """At 60 °C water alone has 19.9 kPa."""
    known = {"charge": "1930 C", "temperature": "60 degC", "pressure": "15 kPa"}
    fault = refusal(HYDROGEN, known, "volume", over_water=True)
    assert fault.code == "below-vapour-pressure"
    assert fault.where in {"known/temperature", "known/pressure"}


def test_a_number_of_charges_is_whole(refusal: Refusal) -> None:
    fault = refusal("Cr", {"ion_charge": "2.5", "charge": "1930 C"}, ("mass", "Cr"))
    assert (fault.code, fault.where) == ("out-of-range", "known/ion_charge")


@pytest.mark.parametrize("mass", ["2.08 g", "0.0208 g"])
def test_data_that_give_no_number_of_charges_are_a_contradiction(refusal: Refusal, mass: str) -> None:
    """1930 C for 0.0400 mol would be half a charge on each ion, and for 0.000400 mol fifty."""
    fault = refusal("Cr", {"charge": "1930 C", ("mass", "Cr"): mass}, "ion_charge")
    assert fault.code == "contradictory"
    assert fault.where in {"known/charge", "known/mass"}


def test_a_number_of_charges_found_from_data_may_be_a_little_off(find: Find) -> None:
    """1.07 g in place of 1.04 g."""
    found = find("Cr", {"charge": "5790 C", ("mass", "Cr"): "1.07 g"}, "ion_charge")
    assert found == pytest.approx([2.915888], rel=1e-6)


def test_the_number_of_charges_of_a_known_half_equation_can_be_asked_for(
    find: Find, refusal: Refusal
) -> None:
    right = {"charge": "1930 C", ("mass", "Ni"): "0.587 g"}
    assert find("Ni^2+ + 2e- -> Ni", right, "ion_charge") == pytest.approx([2])
    known = {"charge": "1930 C", ("mass", "Ni"): "0.391 g"}
    assert refusal("Ni^2+ + 2e- -> Ni", known, "ion_charge").code == "contradictory"


def test_an_end_above_the_start_is_no_fall(refusal: Refusal) -> None:
    known = {
        "bath_volume": "200 cm3",
        "bath_concentration": "0.100 mol/dm3",
        "concentration": "0.200 mol/dm3",
    }
    fault = refusal("Cu^2+ + 2e- -> Cu", known, "charge")
    assert fault.code == "contradictory"
    assert fault.where in {"known/bath_concentration", "known/concentration"}
    assert "negative" in fault.detail
