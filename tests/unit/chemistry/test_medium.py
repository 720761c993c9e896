"""Half-equations written for acid, alkali and water, and the states of what stands in them."""

import pytest

from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, couples
from ionwright.chemistry.equation import Equation, equation
from ionwright.chemistry.medium import ACIDIC, ALKALINE, NEUTRAL, for_medium, state_of, with_states
from ionwright.chemistry.species import species

HALVES = [
    pytest.param(half, id=f"{name} {way}")
    for name, couple in couples().items()
    for way, half in (("reduced", couple.reduction), ("oxidised", couple.reduction.reversed()))
]


@pytest.mark.parametrize("medium", [ACIDIC, NEUTRAL, ALKALINE])
@pytest.mark.parametrize("half", HALVES)
def test_rewriting_keeps_the_balance_and_the_electrons(half: Equation, medium: str) -> None:
    written = for_medium(half, medium)
    assert written.is_balanced
    assert written.electrons == half.electrons


@pytest.mark.parametrize("half", HALVES)
def test_acid_holds_no_hydroxide_and_alkali_no_hydrogen_ions(half: Equation) -> None:
    in_acid, in_alkali = for_medium(half, ACIDIC), for_medium(half, ALKALINE)
    assert HYDROXIDE not in (*in_acid.reactants, *in_acid.products)
    assert HYDROGEN_ION not in (*in_alkali.reactants, *in_alkali.products)


@pytest.mark.parametrize("half", HALVES)
def test_a_neutral_solution_uses_up_neither_hydrogen_nor_hydroxide_ions(half: Equation) -> None:
    assert not {HYDROGEN_ION, HYDROXIDE} & set(for_medium(half, NEUTRAL).reactants)


@pytest.mark.parametrize(
    ("half", "medium", "written"),
    [
        ("MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O", ACIDIC, "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O"),
        ("MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O", NEUTRAL, "MnO4^- + 4H2O + 5e- -> Mn^2+ + 8OH^-"),
        ("MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O", ALKALINE, "MnO4^- + 4H2O + 5e- -> Mn^2+ + 8OH^-"),
        ("Mn^2+ + 2H2O -> MnO2 + 4H^+ + 2e-", NEUTRAL, "Mn^2+ + 2H2O -> MnO2 + 4H^+ + 2e-"),
        ("Mn^2+ + 2H2O -> MnO2 + 4H^+ + 2e-", ALKALINE, "Mn^2+ + 4OH^- -> MnO2 + 2H2O + 2e-"),
        ("4OH^- -> O2 + 2H2O + 4e-", NEUTRAL, "2H2O -> O2 + 4H^+ + 4e-"),
        ("4OH^- -> O2 + 2H2O + 4e-", ACIDIC, "2H2O -> O2 + 4H^+ + 4e-"),
        ("2H2O + 2e- -> H2 + 2OH^-", ACIDIC, "2H^+ + 2e- -> H2"),
        ("2H2O + 2e- -> H2 + 2OH^-", NEUTRAL, "2H2O + 2e- -> H2 + 2OH^-"),
        ("2H^+ + 2e- -> H2", NEUTRAL, "2H2O + 2e- -> H2 + 2OH^-"),
        ("NO3^- + H2O + 2e- -> NO2^- + 2OH^-", ACIDIC, "NO3^- + 2H^+ + 2e- -> NO2^- + H2O"),
        ("Cu^2+ + 2e- -> Cu", ALKALINE, "Cu^2+ + 2e- -> Cu"),
        ("H^+ + e- -> 1/2H2", NEUTRAL, "H2O + e- -> 1/2H2 + OH^-"),
    ],
)
def test_a_half_equation_is_written_with_what_the_medium_offers(half: str, medium: str, written: str) -> None:
    assert for_medium(equation(half), medium).ascii == written


@pytest.mark.parametrize(
    ("kind", "in_water"),
    [
        ("e-", ""), ("Na^+", "aq"), ("SO4^2-", "aq"), ("H2O", "l"), ("Hg", "l"), ("Cu", "s"), ("AgCl", "s"),
        ("S", "s"), ("MnO2", "s"), ("H2", "g"), ("O2", "g"), ("Cl2", "g"), ("C2H6", "g"), ("CO2", "g"), ("Br2", "aq"),
        ("I2", "aq"), ("NH3", "aq"), ("SO2", "aq"), ("H2O2", "aq"), ("Ga", "s"), ("Cs", "s"), ("C", "s"),
    ],
)  # fmt: skip
def test_a_species_has_its_state_in_a_cell_at_room_temperature(kind: str, in_water: str) -> None:
    assert state_of(species(kind)) == in_water


@pytest.mark.parametrize(
    ("kind", "melt_C", "state"),
    [
        ("e-", 400, ""), ("Pb^2+", 400, "l"), ("Br^-", 400, "l"), ("Pb", 400, "l"), ("Pb", 327.5, "s"),
        ("Cu", 1000, "s"),
        ("Na", 820, "l"), ("Al", 980, "l"), ("Mg", 640, "s"), ("Br2", 400, "g"), ("I2", 700, "g"), ("Cl2", 820, "g"),
        ("S", 1000, "g"), ("H2O", 350, "g"), ("CO2", 980, "g"), ("C", 980, "s"), ("Hg", 300, "l"), ("AgCl", 400, "s"),
        ("NH3", 400, "g"),
    ],
)  # fmt: skip
def test_a_species_has_its_state_in_a_melt(kind: str, melt_C: float, state: str) -> None:
    assert state_of(species(kind), melt_C=melt_C) == state


def test_an_equation_is_dressed_with_the_states_of_its_terms() -> None:
    in_water = with_states(equation("2I^- -> I2 + 2e-"))
    in_melt = with_states(equation("2I^- -> I2 + 2e-"), melt_C=700)
    assert [term.state for term in (*in_water.left, *in_water.right)] == ["aq", "aq", ""]
    assert [term.state for term in (*in_melt.left, *in_melt.right)] == ["l", "g", ""]
