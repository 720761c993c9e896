"""What a task may ask of a bath by the name of a salt, of ions that take no part, and of the electrodes."""

import pytest
from task_parts import cell, half

from ionwright.errors import IonwrightError


def value(solved):
    (answer,) = solved.answers
    return answer.value


def test_the_alkali_of_brine_may_be_asked_for_by_its_name(solve):
    run = cell("NaCl@concentrated")
    # 3600 C / 96500 C/mol x 40.0 g/mol
    for name in ("NaOH", "sodium hydroxide"):
        solved = solve(run, known={"charge": "3600 C"}, find=f"mass of {name}")
        assert value(solved) == pytest.approx(1.49223, rel=1e-4)


def test_a_salt_stands_for_the_ion_that_is_used_up(solve):
    solved = solve(
        cell("CuSO4@0.50 mol/dm3"),
        known={"charge": "1930 C", "bath_volume": "200 cm3"},
        find="concentration of CuSO4",
    )
    assert value(solved) == pytest.approx(0.45)


def test_an_ion_that_takes_no_part_keeps_its_concentration(solve):
    run = cell("CuSO4@0.10 mol/dm3", "NiSO4@0.20 mol/dm3")
    solved = solve(run, known={"charge": "193 C", "bath_volume": "100 cm3"}, find="concentration of Ni2+")
    assert value(solved) == pytest.approx(0.20)


def test_a_bath_in_grams_counts_the_ion_alone(solve):
    solved = solve(
        "Ni^2+ + 2e- -> Ni",
        known={"bath_volume": "1.00 dm3", "bath_concentration": "58.7 g/dm3"},
        find="exhaustion_charge",
    )
    # 1.00 mol of Ni2+
    assert value(solved) == pytest.approx(193000)
    assert solved.steps[0].equation.text == "c₀(Ni²⁺) = 58.7 g/dm³ ÷ 58.7 g/mol = 1.00 mol/dm³"


def test_the_ion_that_runs_out_need_not_be_named(solve):
    solved = solve(
        cell("CuSO4@0.50 mol/dm3"),
        known={"current": "1.00 A", "bath_volume": "200 cm3"},
        find="exhaustion_time in h",
    )
    assert value(solved) == pytest.approx(19300 / 3600)


def test_two_half_equations_called_cathode_and_anode_share_their_bath(solve):
    solved = solve(
        half("Cu2+ + 2e- -> Cu", "cathode"),
        half("Cu -> Cu2+ + 2e-", "anode"),
        known={"charge": "1930 C", "bath_volume": "200 cm3", "bath_concentration": "0.50 mol/dm3"},
        find="concentration of Cu2+",
    )
    assert value(solved) == pytest.approx(0.50)


@pytest.mark.parametrize(
    ("run", "known", "find", "grams"),
    [
        ("Cu -> Cu2+ + 2e-", {"charge": "600 C", "mass_before": "12.50 g"}, "mass_after", 12.30259),
        ("Cu2+ + 2e- -> Cu", {"charge": "600 C", "mass_before": "12.50 g"}, "mass_after", 12.69741),
        ("Cu2+ + 2e- -> Cu", {"mass_after": "12.70 g", "mass_before": "12.50 g"}, "mass", 0.20),
        ("Cu -> Cu2+ + 2e-", {"charge": "600 C", "mass_after": "12.30 g"}, "mass_before", 12.49741),
    ],
)
def test_an_electrode_is_weighed_before_and_after(solve, run, known, find, grams):
    assert value(solve(run, known=known, find=find)) == pytest.approx(grams, rel=1e-5)


def test_no_electrode_loses_more_than_it_weighs(solve):
    with pytest.raises(IonwrightError, match="More of the Cu would dissolve") as refusal:
        solve("Cu -> Cu2+ + 2e-", known={"charge": "96500 C", "mass_before": "12.50 g"}, find="mass_after")
    assert refusal.value.code == "contradictory"


def test_bromine_off_a_melt_is_told_to_be_no_gas_in_a_room(solve):
    from ionwright.teaching.quantities import quantities_document  # noqa: PLC0415 - only here

    solved = solve(cell("PbBr2", state="molten"), known={"charge": "193 C"}, find="volume")
    assert any(
        text.startswith("Br₂ is no gas at room temperature")
        for text in quantities_document(solved)["assumptions"]
    )


@pytest.mark.parametrize(
    ("half_equation", "known", "relative_mass"),
    [
        ("M2+ + 2e- -> M", {"charge": "965 C", "mass": "0.2935 g"}, 58.7),
        ("X³⁺ + 3e⁻ → X", {"charge": "2895 C", "mass": "0.520 g"}, 52.0),
        ("Z^{+} + e- = Z", {"charge": "965 C", "mass": "1.079 g"}, 107.9),
    ],
)
def test_an_unknown_metal_is_weighed_by_its_half_equation(solve, half_equation, known, relative_mass):
    solved = solve(half_equation, known=known, find="relative_atomic_mass")
    assert value(solved) == pytest.approx(relative_mass, rel=1e-4)


def test_the_electrons_of_an_unknown_metal_must_fit_its_charge(solve):
    with pytest.raises(IonwrightError) as refusal:
        solve("M2+ + e- -> M", known={"charge": "965 C", "mass": "0.2935 g"}, find="relative_atomic_mass")
    assert (refusal.value.code, refusal.value.where) == ("bad-electron-count", "half_equation")


def test_a_cell_in_grams_is_counted_with_the_masses_of_the_course(solve):
    solved = solve(
        cell("CuSO4@16.0 g/dm3"),
        known={"bath_volume": "250 cm3"},
        find="exhaustion_charge",
        curriculum="igcse",
    )
    # 16.0 / (64 + 32 + 4 x 16) mol/dm3, with the Faraday constant of the tables
    assert value(solved) == pytest.approx(0.100 * 0.250 * 2 * 96485.33212)
    assert solved.steps[0].sentence == "Divide by the molar mass of CuSO₄ to count in moles."
    assert solved.steps[0].equation.text == "c₀(Cu²⁺) = 16.0 g/dm³ ÷ 160 g/mol = 0.100 mol/dm³"


def test_a_salt_with_two_of_the_ions_counts_both(solve):
    solved = solve(
        cell("CuCl2@13.45 g/dm3"),
        known={"bath_volume": "1.00 dm3"},
        find="amount_at_start of Cl-",
        curriculum="gcse",
    )
    # 13.45 / (63.5 + 71) x 2
    assert value(solved) == pytest.approx(0.200)


def test_a_concentration_may_be_asked_for_in_grams(solve):
    solved = solve(
        cell("CuSO4@0.100 mol/dm3"),
        known={"bath_volume": "250 cm3", "charge": "482.5 C"},
        find="concentration of Cu2+ in g/dm3",
    )
    assert value(solved) == pytest.approx(0.090 * 63.5)
    assert solved.answers[0].unit.symbol == "g/dm3"


@pytest.mark.parametrize(
    ("known", "faraday"),
    [
        ({"faraday_constant": "95400 C/mol"}, 95400),
        ({"avogadro_constant": "6.00e23 /mol", "elementary_charge": "1.60e-19 C"}, 96000),
    ],
)
def test_a_constant_that_the_task_states_counts_before_those_of_the_course(solve, known, faraday):
    solved = solve("Ni2+ + 2e- -> Ni", known={"charge": "1000.0 C", **known}, find="amount")
    assert value(solved) == pytest.approx(1000 / faraday / 2)


def test_a_cost_without_a_currency_goes_round(solve):
    known = {"energy": "3.6 MJ", "energy_price": "0.25 1/kWh"}
    assert value(solve("Ni2+ + 2e- -> Ni", known=known, find="cost")) == pytest.approx(0.25)
    assert value(
        solve("Ni2+ + 2e- -> Ni", known={"cost": "0.25", "energy_price": "0.25 1/kWh"}, find="energy")
    ) == pytest.approx(3.6e6)


def test_seconds_beside_minutes_are_converted_too(solve):
    solved = solve("Ni2+ + 2e- -> Ni", known={"current": "1.00 A", "time": "2 min 30 s"}, find="charge")
    assert [step.equation.text for step in solved.steps] == [
        "t = 2 min 30 s = 150 s",
        "Q = I × t = 1.00 A × 150 s = 150 C",
    ]
