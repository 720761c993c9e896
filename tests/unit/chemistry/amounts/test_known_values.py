"""What is known at the start: stated figures in the solver's units, printed constants, figures of the tables."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.amounts import Given, Key, WorkedOut
from ionwright.chemistry.amounts.known_values import checked_value, value_in
from ionwright.chemistry.amounts.quantity import QUANTITIES
from ionwright.chemistry.amounts.values import EXACT, Known
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.written_quantity import read_written

Work = Callable[..., WorkedOut]
Refusal = Callable[..., QuantityFault]

SILVER = "Ag^+ + e- -> Ag"
NICKEL = "Ni^2+ + 2e- -> Ni"
HYDROGEN = "2H+ + 2e- -> H2"


def known(worked: WorkedOut, quantity: str, of: str = "", process: str = "") -> Known:
    return next(one for one in worked.knowns.values if one.key == Key(quantity, process, of))


@pytest.mark.parametrize(
    ("quantity", "text", "value"),
    [
        ("current", "250 mA", 0.25),
        ("time", "20 min", 1200),
        ("time", "1 h 20 min", 4800),
        ("charge", "0.50 A h", 1800),
        ("amount_of_electrons", "20 mmol", 0.02),
        ("mass", "250 mg", 0.25),
        ("mass", "2.0 t", 2e6),
        ("volume", "48 cm3", 0.048),
        ("volume", "48 mL", 0.048),
        ("volume", "2.0 m3", 2000),
        ("solid_volume", "48 mm3", 0.048),
        ("thickness", "12 um", 0.0012),
        ("area", "2.0 dm2", 200),
        ("temperature", "20 degC", 293.15),
        ("temperature", "293 K", 293),
        ("pressure", "1.00 atm", 101.325),
        ("pressure", "750 mmHg", 99.99183),
        ("pressure", "1.00 bar", 100),
        ("efficiency", "95%", 0.95),
        ("efficiency", "0.95", 0.95),
        ("energy", "1.0 kWh", 3.6e6),
        ("current_density", "20 mA/cm2", 0.02),
        ("growth_rate", "6.0 um/min", 1e-5),
        ("concentration", "50 mmol/dm3", 0.05),
        ("density", "8.90 g/cm3", 8.9),
        ("specific_energy", "3.0 kWh/kg", 10800),
        ("molar_gas_volume", "24000 cm3/mol", 24),
    ],
)
def test_a_figure_is_counted_in_the_unit_of_the_solver(quantity: str, text: str, value: float) -> None:
    written = read_written(text, dimension=QUANTITIES[quantity].dimension)
    assert value_in(quantity, written) == pytest.approx(value, rel=1e-6)


def test_a_figure_is_checked_where_it_stands() -> None:
    with pytest.raises(QuantityFault) as raised:
        checked_value(Key("current"), Given("current", read_written("5 min"), where="current"))
    assert (raised.value.code, raised.value.where) == ("wrong-dimension", "current")


@pytest.mark.parametrize(
    ("text", "figures"),
    [("20 degC", 3), ("20.0 degC", 4), ("5 degC", 3), ("293 K", 3), ("150 degC", 3), ("0 degC", 1)],
)
def test_a_temperature_is_as_good_in_kelvins_as_it_was_in_degrees(
    work: Work, text: str, figures: int
) -> None:
    """20 °C, good to a degree, is 293 K; what 0 °C is good to cannot be told."""
    worked = work(HYDROGEN, {"charge": "1930 C", "temperature": text}, "volume")
    assert known(worked, "temperature").figures == figures


def test_stated_figures_are_given_and_printed_ones_are_not(work: Work) -> None:
    worked = work(SILVER, {"charge": "965 C"}, "mass")
    assert known(worked, "charge").is_given
    assert not known(worked, "faraday_constant").is_given
    assert known(worked, "faraday_constant").figures == EXACT
    assert worked.knowns.written[Key("faraday_constant")].text == "96500 C/mol"


def test_a_constant_that_the_course_does_not_print_comes_from_the_tables(work: Work) -> None:
    worked = work(SILVER, {"charge": "965 C"}, "amount", sheet={})
    assert known(worked, "faraday_constant").value == pytest.approx(96485.33212)


def test_a_stated_constant_counts_before_the_printed_one(work: Work) -> None:
    worked = work(SILVER, {"charge": "965 C"}, "amount", stated={"faraday_constant": "9.65e4 C/mol"})
    assert worked.knowns.written[Key("faraday_constant")].text == "9.65e4 C/mol"


@pytest.mark.parametrize(
    ("asked", "facts", "left_out"),
    [
        ("faraday_constant", {"charge": "965 C", ("mass", "Ag"): "1.079 g"}, "avogadro_constant"),
        ("avogadro_constant", {"charge": "965 C", ("mass", "Ag"): "1.079 g"}, "faraday_constant"),
    ],
)
def test_a_constant_is_left_open_that_would_settle_the_one_asked_for(
    work: Work, asked: str, facts: dict[str, str], left_out: str
) -> None:
    worked = work(SILVER, facts, asked)
    assert {one.key.kind for one in worked.knowns.values}.isdisjoint({asked, left_out})


def test_a_molar_mass_is_added_up_from_printed_figures(work: Work) -> None:
    worked = work("2H2O -> O2 + 4H+ + 4e-", {"charge": "965 C"}, ("mass", "H2O"))
    key = Key("molar_mass", "process", "H2O")
    assert known(worked, *("molar_mass", "H2O", "process")).value == pytest.approx(18.0)
    assert worked.knowns.molar_masses[key] == (("H", 2, "1.0"), ("O", 1, "16.0"))


def test_an_element_without_a_printed_mass_needs_one(refusal: Refusal) -> None:
    fault = refusal("Au^3+ + 3e- -> Au", {"charge": "965 C"}, "mass")
    assert (fault.code, fault.where) == ("needs-more", "find")
    assert '"relative_atomic_masses"' in fault.remedy


def test_a_stated_molar_mass_keeps_that_of_the_tables_out(work: Work) -> None:
    worked = work(SILVER, {"charge": "965 C", "molar_mass": "108 g/mol"}, "mass")
    assert known(worked, *("molar_mass", "Ag", "process")).value == 108
    assert worked.knowns.molar_masses == {}


def test_a_density_comes_from_the_tables_with_a_word_on_what_it_holds_for(work: Work) -> None:
    worked = work(NICKEL, {"charge": "965 C", "area": "25 cm2"}, "thickness")
    assert known(worked, *("density", "Ni", "process")).value == 8.90
    ((key, said),) = worked.knowns.assumptions
    assert key == Key("density", "process", "Ni")
    assert said.startswith("The density of Ni is that of the compact metal at 25 °C")


def test_a_stated_density_keeps_that_of_the_tables_out(work: Work) -> None:
    worked = work(NICKEL, {"charge": "965 C", "area": "25 cm2", "density": "8.5 g/cm3"}, "thickness")
    assert known(worked, *("density", "Ni", "process")).value == 8.5
    assert worked.knowns.assumptions == ()


def test_a_density_that_nobody_tabulates_is_what_is_still_needed(refusal: Refusal) -> None:
    """There is a molar mass of hydrogen, but liquid or solid hydrogen has no place in the table."""
    fault = refusal(
        "Pb^2+ + 2H2O -> PbO2 + 4H+ + 2e-", {"charge": "965 C", "molar_mass": "239 g/mol"}, "solid_volume"
    )
    assert (fault.code, fault.where) == ("needs-more", "find")
    assert "the density of PbO₂" in fault.remedy


def test_the_molar_volume_of_the_course_serves_where_no_condition_is_said(work: Work) -> None:
    worked = work(HYDROGEN, {"charge": "1930 C"}, "volume")
    assert known(worked, "molar_gas_volume").value == 24.0
    assert worked.knowns.assumptions == ()


def test_a_temperature_alone_calls_for_a_pressure(work: Work) -> None:
    worked = work(HYDROGEN, {"charge": "1930 C", "temperature": "20 degC"}, "volume")
    assert known(worked, "pressure").value == pytest.approx(101.325)
    ((key, said),) = worked.knowns.assumptions
    assert key == Key("pressure")
    assert "No pressure was given" in said


def test_a_stated_molar_volume_counts_before_the_gas_law(work: Work) -> None:
    worked = work(
        HYDROGEN,
        {"charge": "1930 C", "temperature": "20 degC"},
        "volume",
        stated={"molar_gas_volume": "22.4 dm3/mol"},
    )
    assert worked.values[Key("volume", "process", "H2")].number == pytest.approx(0.224)
    assert worked.knowns.assumptions == ()


def test_a_course_without_a_molar_volume_needs_one(refusal: Refusal) -> None:
    fault = refusal(HYDROGEN, {"charge": "1930 C"}, "volume", sheet={})
    assert (fault.code, fault.where) == ("needs-more", "find")
    assert "the molar gas volume" in fault.remedy


def test_no_pressure_is_assumed_where_it_is_asked_for(work: Work) -> None:
    facts = {"charge": "1930 C", "temperature": "293.15 K", "volume": "243.608 cm3"}
    worked = work(HYDROGEN, facts, "pressure")
    assert worked.values[Key("pressure")].number == pytest.approx(100.0, rel=1e-5)
    assert worked.knowns.assumptions == ()


def test_a_stated_uncertainty_comes_along_in_the_unit_of_the_solver(work: Work) -> None:
    number = known(work(SILVER, {"current": "500 ± 10 mA", "time": "60 s"}, "charge"), "current").value
    assert (number.nominal_value, number.std_dev) == pytest.approx((0.5, 0.01))


@pytest.mark.parametrize(
    ("text", "slack"), [("0.50 A", 0.01), ("2 A", 0.25), ("1500 mA", 0.5 / 1500), ("9.99e-3 A", 0.005 / 9.99)]
)
def test_half_of_the_last_written_place_may_be_rounding(work: Work, text: str, slack: float) -> None:
    worked = work(SILVER, {"current": text, "time": "60 s"}, "charge")
    assert known(worked, "current").slack == pytest.approx(slack)


def test_a_written_zero_is_taken_as_it_stands(work: Work) -> None:
    facts = {"bath_volume": "200 cm3", "bath_concentration": "0.100 mol/dm3", "concentration": "0.0 mol/dm3"}
    worked = work(NICKEL, facts, "charge")
    assert known(worked, *("concentration", "Ni^2+", "process")).slack == 0
    assert worked.values[Key("charge")].number == pytest.approx(3860)


def test_a_number_of_charges_limits_no_figures(work: Work) -> None:
    worked = work("Cr", {"ion_charge": "3", "charge": "1930 C"}, ("mass", "Cr"))
    assert known(worked, "ion_charge", "", "process").figures == EXACT


def test_money_of_two_currencies_is_refused(refusal: Refusal) -> None:
    known = {"charge": "3860 C", "cost": "EUR 2.00", "energy_price": "£0.28/kWh"}
    fault = refusal(NICKEL, known, "voltage")
    assert (fault.code, fault.where) == ("wrong-dimension", "known/energy_price")
    assert "there are no rates of exchange" in fault.detail


def test_a_concentration_may_count_the_mass_of_what_is_dissolved(work: Work) -> None:
    """5.87 g/dm³ of nickel ions are 0.100 mol/dm³, and 15.48 g/dm³ of nickel sulfate are as much."""
    known = {"bath_volume": "200 cm3", ("bath_concentration", "Ni^2+"): "5.87 g/dm3"}
    of_salt = {"bath_volume": "200 cm3", ("bath_concentration", "NiSO4"): "15.48 g/dm3"}
    ion = work(NICKEL, known, ("exhaustion_charge", "Ni^2+"))
    salt = work(NICKEL, of_salt, ("exhaustion_charge", "NiSO4"))
    assert ion.values[ion.answers[0][1]].number == pytest.approx(3860)
    assert salt.values[salt.answers[0][1]].number == pytest.approx(3860)
    assert ion.figures(ion.answers[0][1]) == 3


def test_a_concentration_by_mass_may_be_uncertain(work: Work) -> None:
    known = {"bath_volume": "200 cm3", "bath_concentration": "5.87 ± 0.0587 g/dm3"}
    worked = work(NICKEL, known, "amount_at_start")
    number = worked.values[worked.answers[0][1]].number
    assert (number.nominal_value, number.std_dev) == pytest.approx((0.02, 0.0002))


def test_a_concentration_by_mass_needs_a_molar_mass(refusal: Refusal) -> None:
    known = {"bath_volume": "200 cm3", "bath_concentration": "19.7 g/dm3"}
    fault = refusal("Au^3+ + 3e- -> Au", known, "exhaustion_charge")
    assert (fault.code, fault.where) == ("needs-more", "known/bath_concentration")
    assert '"relative_atomic_masses"' in fault.remedy


def test_an_absurd_concentration_by_mass_is_refused_where_it_stands(refusal: Refusal) -> None:
    fault = refusal(
        NICKEL, {"bath_volume": "200 cm3", "bath_concentration": "587 kg/dm3"}, "exhaustion_charge"
    )
    assert (fault.code, fault.where) == ("absurd-magnitude", "known/bath_concentration")


def test_the_element_without_a_mass_that_matters_is_named(refusal: Refusal) -> None:
    halves = {"gold": "Au^3+ + 3e- -> Au", "platinum": "Pt^2+ + 2e- -> Pt"}
    fault = refusal(halves, {"charge": "965 C", ("mass", "Au"): "0.65 g"}, ("mass", "Pt"))
    assert fault.code == "needs-more"
    assert "Pt" in fault.detail
