"""Whole tasks: what is asked, what goes together, and what is still needed."""

from collections.abc import Callable, Mapping

import pytest

from ionwright.chemistry.amounts import Key, WorkedOut
from ionwright.chemistry.faults import QuantityFault

Find = Callable[..., list[float]]
Work = Callable[..., WorkedOut]
Refusal = Callable[..., QuantityFault]

SILVER = "Ag^+ + e- -> Ag"
NICKEL = "Ni^2+ + 2e- -> Ni"
COPPER = "Cu^2+ + 2e- -> Cu"
ALUMINIUM = "Al^3+ + 3e- -> Al"
HYDROGEN = "2H+ + 2e- -> H2"
OXYGEN = "2H2O -> O2 + 4H+ + 4e-"
BRINE = {"cathode": "2H2O + 2e- -> H2 + 2OH-", "anode": "2Cl- -> Cl2 + 2e-"}
SERIES = {"silver": SILVER, "copper": COPPER}
SHARED = {"nickel": f"{NICKEL} @ cathode", "hydrogen": f"{HYDROGEN} @ cathode"}
BRACKET = {"current": "0.50 A", "time": "20 min"}
"""600 C, 0.00621762 mol of electrons, 0.00310881 mol of nickel."""


@pytest.mark.parametrize(
    ("half", "known", "asked", "value"),
    [
        (NICKEL, BRACKET, "charge", 600),
        (NICKEL, BRACKET, "amount_of_electrons", 0.006217617),
        (NICKEL, BRACKET, "amount", 0.003108808),
        (NICKEL, BRACKET, "mass", 0.1824870),
        (NICKEL, {**BRACKET, "efficiency": "92%"}, "mass", 0.1678881),
        (NICKEL, {**BRACKET, "area": "25 cm2"}, "thickness", 8.201665e-4),
        (NICKEL, {**BRACKET, "area": "25 cm2"}, "growth_rate", 6.834721e-7),
        (NICKEL, {**BRACKET, "area": "25 cm2"}, "current_density", 0.02),
        (NICKEL, {"current_density": "20 mA/cm2", "area": "25 cm2", "time": "20 min"}, "charge", 600),
        (NICKEL, {"thickness": "8.201665 um", "area": "25 cm2", "current": "0.50 A"}, "time", 1200),
        (NICKEL, BRACKET, "number_of_particles", 1.871503e21),
        (NICKEL, BRACKET, "number_of_electrons", 3.743005e21),
        (NICKEL, {"mass": "1.174 g", "time": "1.00 h"}, "current", 1.072222),
        (NICKEL, {"mass": "1.174 g", "current": "2.00 A"}, "time", 1930),
        (NICKEL, {"charge": "3860 C", "mass": "1.0566 g"}, "efficiency", 0.9),
        (SILVER, {"charge": "965 C", "molar_mass": "108 g/mol"}, "mass", 1.08),
        (SILVER, {"charge": "965 C", "mass": "1.079 g"}, "relative_atomic_mass", 107.9),
        (SILVER, {"charge": "965 C", "mass": "1.079 g"}, "faraday_constant", 96500),
        (SILVER, {"charge": "965 C", "mass": "1.079 g", "elementary_charge": "1.60e-19 C"}, "avogadro_constant",
         6.03125e23),
        (SILVER, {"charge": "965 C", "mass": "1.079 g", "avogadro_constant": "6.02e23 /mol"}, "elementary_charge",
         1.602990e-19),
        (ALUMINIUM, {"mass": "1.00 t"}, "charge", 1.0722222e10),
        (ALUMINIUM, {"mass": "1.00 kg", "voltage": "5.0 V"}, "energy", 5.3611111e7),
        (ALUMINIUM, {"voltage": "5.0 V", "mass": "1.00 kg"}, "specific_energy", 53611.11),
        (ALUMINIUM, {"mass": "1.00 kg", "voltage": "5.0 V", "energy_price": "£0.12/kWh"}, "cost", 1.787037),
        (ALUMINIUM, {"cost": "£1.787037", "energy_price": "£0.12/kWh", "voltage": "5.0 V"}, "mass", 1000),
        (HYDROGEN, {"current": "0.500 A", "voltage": "4.00 V", "time": "10 min"}, "power", 2),
        (HYDROGEN, {"charge": "1930 C"}, "volume", 0.24),
        (HYDROGEN, {"volume": "10.0 cm3", "current": "0.200 A"}, "time", 402.0833),
        (HYDROGEN, {"charge": "1930 C", "temperature": "298.15 K", "pressure": "100 kPa"}, "volume", 0.2477627),
        (HYDROGEN, {"charge": "1930 C", "volume": "240 cm3"}, "molar_gas_volume", 24),
        (HYDROGEN, {"charge": "1930 C", "volume": "0.2477627 dm3", "pressure": "100 kPa"}, "temperature", 298.15),
        (HYDROGEN,
         {"charge": "1930 C", "volume": "0.2477627 dm3", "temperature": "298.15 K", "pressure": "100 kPa"},
         "gas_constant", 8.31),
        (OXYGEN, {"charge": "1930 C"}, "volume", 0.12),
        (OXYGEN, {"charge": "3860 C"}, ("mass", "H2O"), 0.36),
    ],
)  # fmt: skip
def test_any_quantity_follows_from_enough_others(
    find: Find, half: str, known: Mapping[str, str], asked: str, value: float
) -> None:
    assert find(half, known, asked) == pytest.approx([value], rel=1e-6)


def test_what_is_known_at_one_electrode_gives_what_forms_at_the_other(find: Find) -> None:
    """71.0 g of chlorine are 1.00 mol, and so are the 24.0 dm³ of hydrogen and twice that of hydroxide."""
    found = find(BRINE, {("mass", "Cl2"): "71.0 g"}, ("volume", "H2"), ("amount", "OH-"))
    assert found == pytest.approx([24, 2])


def test_the_same_charge_passes_through_cells_in_series(find: Find) -> None:
    """2.158 g of silver are 0.0200 mol, as much as the electrons; 0.0100 mol of copper are 0.635 g."""
    assert find(SERIES, {("mass", "Ag"): "2.158 g"}, ("mass", "Cu")) == pytest.approx([0.635])


def test_cells_in_series_may_have_their_own_losses(find: Find) -> None:
    """At 80 % in the first, 0.0200 mol of silver are 0.0250 mol of electrons."""
    known = {("mass", "Ag"): "2.158 g", ("efficiency", "", "silver"): "80.0%"}
    assert find(SERIES, known, ("mass", "Cu"), "charge") == pytest.approx([0.79375, 2412.5])


def test_processes_at_one_electrode_share_the_current(find: Find) -> None:
    """Of 1930 C nine tenths, 1737 C, give 0.00900 mol of nickel, and 193 C give 0.00100 mol of hydrogen."""
    known = {"charge": "1930 C", ("share", "Ni"): "90.0%"}
    found = find(SHARED, known, ("mass", "Ni"), ("volume", "H2"), ("share", "H2"))
    assert found == pytest.approx([0.5283, 0.024, 0.1])


def test_products_at_one_electrode_add_up_to_the_charge(find: Find) -> None:
    known = {("mass", "Ni"): "0.5283 g", ("volume", "H2"): "24.0 cm3"}
    assert find(SHARED, known, "charge", ("share", "Ni")) == pytest.approx([1930, 0.9])


def test_the_mass_of_one_product_leaves_the_rest_of_the_charge_to_the_other(find: Find) -> None:
    known = {"charge": "1930 C", ("mass", "Ni"): "0.5283 g"}
    assert find(SHARED, known, ("volume", "H2")) == pytest.approx([0.024])


def test_the_efficiency_of_a_process_that_shares_an_electrode_is_its_share(
    find: Find, refusal: Refusal
) -> None:
    known = {"charge": "1930 C", ("efficiency", "Ni"): "90.0%"}
    assert find(SHARED, known, ("mass", "Ni"), ("efficiency", "H2")) == pytest.approx([0.5283, 0.1])
    fault = refusal(SHARED, {**known, ("share", "Ni"): "90.0%"}, ("mass", "Ni"))
    assert fault.detail == "The share of the current is given twice."


def test_a_wish_that_fits_several_is_answered_for_each(work: Work) -> None:
    worked = work(BRINE, {"charge": "1930 C"}, "volume")
    assert [key for _, key in worked.answers] == [
        Key("volume", "cathode", "H2"),
        Key("volume", "anode", "Cl2"),
    ]


def test_readings_of_a_wish_that_cannot_be_found_are_left_out(work: Work) -> None:
    """The bath of the second process has no volume."""
    known = {"charge": "1930 C", ("bath_volume", "", "one"): "500 cm3"}
    worked = work({"one": COPPER, "two": COPPER}, known, "concentration_change")
    assert [key for _, key in worked.answers] == [Key("concentration_change", "one", "Cu^2+")]


def test_an_efficiency_goes_to_the_process_that_the_task_is_about(find: Find) -> None:
    known = {"charge": "1930 C", "efficiency": "90%"}
    assert find(BRINE, known, ("volume", "Cl2")) == pytest.approx([0.216])


# ------------------------------------------------------------------ figures and uncertainties


@pytest.mark.parametrize(
    ("known", "asked", "figures"),
    [
        ({"current": "0.50 A", "time": "1200 s"}, "mass", 2),
        ({"current": "0.500 A", "time": "20 min"}, "mass", 2),
        ({"current": "0.500 A", "time": "1200 s"}, "mass", 3),
        ({"charge": "600.0 C"}, "amount", 4),
    ],
)
def test_an_answer_has_the_figures_of_the_poorest_known(
    work: Work, known: Mapping[str, str], asked: str, figures: int
) -> None:
    worked = work(NICKEL, known, asked)
    assert [worked.figures(key) for _, key in worked.answers] == [figures]


def test_an_answer_from_exact_figures_only_has_four(work: Work) -> None:
    refining = {"cathode": f"{COPPER} @ cathode @ bath", "anode": "Cu -> Cu^2+ + 2e- @ anode @ bath"}
    worked = work(refining, {}, ("concentration_change", "Cu^2+"))
    assert [worked.figures(key) for _, key in worked.answers] == [4]


def test_asked_figures_count_before_those_of_the_knowns(work: Work) -> None:
    worked = work(NICKEL, BRACKET, "mass", figures=5)
    assert worked.figures(worked.answers[0][1]) == 5


def test_a_gas_at_20_degrees_keeps_three_figures(work: Work) -> None:
    worked = work(HYDROGEN, {"charge": "1930 C", "temperature": "20 degC", "pressure": "101.3 kPa"}, "volume")
    assert worked.figures(worked.answers[0][1]) == 3


def test_a_small_rest_of_a_bath_has_few_figures_but_two(work: Work) -> None:
    """0.100 mol/dm³ − 0.095 mol/dm³ = 0.005 mol/dm³, good to one figure; an answer has two if the knowns do."""
    known = {"bath_volume": "200 cm3", "bath_concentration": "0.100 mol/dm3", "charge": "3667 C"}
    worked = work(COPPER, known, "concentration")
    assert worked.values[worked.answers[0][1]].number == pytest.approx(0.005, rel=1e-9)
    assert worked.values[worked.answers[0][1]].figures == 1
    assert worked.figures(worked.answers[0][1]) == 2


def test_an_uncertain_current_makes_the_mass_as_uncertain(work: Work) -> None:
    """2 % of 0.182487 g."""
    worked = work(NICKEL, {"current": "0.50 ± 0.01 A", "time": "20 min"}, "mass")
    number = worked.values[worked.answers[0][1]].number
    assert (number.nominal_value, number.std_dev) == pytest.approx((0.182487, 0.00364974), rel=1e-5)


def test_uncertainties_of_current_and_time_add_in_quadrature(work: Work) -> None:
    """3 % and 4 % are 5 % together."""
    worked = work(NICKEL, {"current": "0.500 ± 0.015 A", "time": "1200 ± 48 s"}, "charge")
    number = worked.values[Key("charge")].number
    assert (number.nominal_value, number.std_dev) == pytest.approx((600, 30))


def test_a_charge_that_cancels_leaves_no_uncertainty(work: Work) -> None:
    """Both gases form by the same charge: their ratio is certain, whatever the current."""
    worked = work(BRINE, {"current": "0.50 ± 0.05 A", "time": "20 min"}, ("volume", "H2"), ("volume", "Cl2"))
    one, other = (worked.values[key].number for _, key in worked.answers)
    assert (one / other).std_dev == pytest.approx(0, abs=1e-12)


def test_an_uncertain_concentration_leaves_an_uncertain_rest(work: Work) -> None:
    """Of 0.100 ± 0.003 mol/dm³ and a fall of 0.050 ± 0.004 mol/dm³ (8 % of the charge): ± 0.005 mol/dm³."""
    known = {
        "bath_volume": "200 cm3", "bath_concentration": "0.100 ± 0.003 mol/dm3", "charge": "1930 ± 154.4 C",
    }  # fmt: skip
    worked = work(COPPER, known, "concentration")
    number = worked.values[worked.answers[0][1]].number
    assert (number.nominal_value, number.std_dev) == pytest.approx((0.05, 0.005))


# ------------------------------------------------------------------ more than enough


@pytest.mark.parametrize(
    "known",
    [
        {"current": "0.50 A", "time": "20 min", "charge": "600 C"},
        {"current": "0.50 A", "time": "20 min", "mass": "0.18 g"},
        {"current": "0.5 A", "time": "20 min", "charge": "570 C"},
        {"current": "0.50 ± 0.01 A", "time": "20 min", "charge": "620 C"},
    ],
)
def test_knowns_that_say_the_same_are_no_contradiction(find: Find, known: Mapping[str, str]) -> None:
    assert len(find(NICKEL, known, "amount_of_electrons")) == 1


def test_knowns_that_do_not_go_together_are_told_with_both_figures(refusal: Refusal) -> None:
    fault = refusal(NICKEL, {"charge": "700 C", "current": "0.500 A", "time": "20.0 min"}, "mass")
    assert (fault.code, fault.where) == ("contradictory", "known/charge")
    assert fault.detail == (
        "These do not go together: from the current of 0.500 A and the time of 20.0 min follows a charge of 600 C,"
        " but the task says 700 C."
    )


def test_a_product_that_does_not_fit_the_charge_is_a_contradiction(refusal: Refusal) -> None:
    fault = refusal(SERIES, {("mass", "Ag"): "2.158 g", ("mass", "Cu"): "0.700 g"}, "charge")
    assert fault.code == "contradictory"
    assert fault.where in {"known/mass", ""}
    assert "the mass of Ag of 2.158 g" in fault.detail
    assert "0.700 g" in fault.detail


def test_two_masses_alike_are_told_apart_by_their_process(refusal: Refusal) -> None:
    halves = {"one": COPPER, "two": COPPER}
    fault = refusal(halves, {("mass", "Cu", "one"): "0.635 g", ("mass", "Cu", "two"): "0.700 g"}, "charge")
    assert fault.code == "contradictory"
    assert 'in "one"' in fault.detail or 'in "two"' in fault.detail


def test_a_constant_that_does_not_fit_the_data_is_a_contradiction(refusal: Refusal) -> None:
    known = {"charge": "965 C", "mass": "1.079 g", "faraday_constant": "90000 C/mol"}
    fault = refusal(SILVER, known, "amount")
    assert fault.code == "contradictory"
    assert fault.where in {"known/charge", "known/mass", "known/faraday_constant"}


def test_a_quantity_that_is_given_twice_is_refused(refusal: Refusal) -> None:
    fault = refusal(NICKEL, {"mass": "0.18 g", ("mass", "nickel"): "0.18 g"}, "charge")
    assert (fault.code, fault.where) == ("contradictory", "known/mass")
    assert fault.detail == "The mass of Ni is given twice."


def test_a_quantity_that_could_belong_to_several_is_refused_with_the_choice(refusal: Refusal) -> None:
    fault = refusal(BRINE, {"volume": "0.24 dm3"}, "charge")
    assert (fault.code, fault.where) == ("needs-more", "known/volume")
    assert 'volume of H₂ in "cathode"' in fault.remedy
    assert 'volume of Cl₂ in "anode"' in fault.remedy


def test_a_substance_that_is_not_there_is_refused_where_it_is_named(refusal: Refusal) -> None:
    assert refusal(NICKEL, {("mass", "Cu"): "0.18 g"}, "charge").where == "known/mass"
    assert refusal(NICKEL, BRACKET, ("mass", "Cu")).where == "find"


# ------------------------------------------------------------------ too little


@pytest.mark.parametrize(
    ("half", "known", "asked", "suggestion"),
    [
        (NICKEL, {"current": "0.50 A"}, "mass", "the time"),
        (NICKEL, {"current": "0.50 A"}, "mass", "the amount of electrons"),
        (NICKEL, {"time": "20 min"}, "charge", "the current"),
        (NICKEL, {"charge": "600 C"}, "thickness", "the area of the electrode"),
        (NICKEL, {"charge": "600 C"}, "energy", "the voltage"),
        (NICKEL, {"charge": "600 C"}, "concentration_change", "the volume of the bath"),
        (HYDROGEN, {"volume": "10 cm3"}, "time", "the current"),
    ],
)
def test_what_is_still_needed_is_named(
    refusal: Refusal, half: str, known: Mapping[str, str], asked: str, suggestion: str
) -> None:
    fault = refusal(half, known, asked)
    assert (fault.code, fault.where) == ("needs-more", "find")
    assert fault.remedy.startswith("Give also ")
    assert suggestion in fault.remedy.removeprefix("Give also ").rstrip(".").split("; or ")


def test_two_more_are_suggested_where_one_is_not_enough(refusal: Refusal) -> None:
    fault = refusal(NICKEL, {}, "cost")
    assert fault.detail == "The cost cannot be found from what is given."
    assert fault.remedy == "Give also the energy and the price of energy."


@pytest.mark.parametrize(
    ("known", "asked", "remedy"),
    [
        ({"current": "1.00 A", "time": "100 s"}, "efficiency", "Give also the mass of Ni; or the "),
        ({"current_density": "100 mA/cm2"}, "thickness", "Give also the time."),
        ({"charge": "600 C"}, "bath_volume", "Give also the"),
        ({}, "growth_rate", "Give also the"),
    ],
)
def test_what_is_suggested_is_enough(
    refusal: Refusal, known: dict[str, str], asked: str, remedy: str
) -> None:
    fault = refusal(NICKEL, known, asked)
    assert fault.code == "needs-more"
    assert fault.remedy.startswith(remedy)


def test_where_nothing_leads_to_a_wish_it_says_so(refusal: Refusal) -> None:
    fault = refusal(NICKEL, {"charge": "600 C"}, "temperature")
    assert (fault.code, fault.where) == ("needs-more", "find")
    assert fault.remedy.startswith("Nothing in this task leads to it")


def test_what_is_suggested_settles_the_task(refusal: Refusal, find: Find) -> None:
    fault = refusal(NICKEL, {"current": "0.50 A"}, "mass")
    assert "the time" in fault.remedy
    assert find(NICKEL, BRACKET, "mass") == pytest.approx([0.182487], rel=1e-5)
