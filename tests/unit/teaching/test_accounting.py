"""Electrons made to agree, and the ratio in which the products form."""

from fractions import Fraction

import pytest

from ionwright.chemistry.equation import Equation, Term, equation
from ionwright.chemistry.medium import with_states
from ionwright.chemistry.species import species
from ionwright.teaching.accounting import Accounts, account


def accounts(reduction: str, oxidation: str, reduced: list[str], oxidised: list[str]) -> Accounts:
    halves = with_states(equation(reduction)), with_states(equation(oxidation))
    return account(*halves, tuple(map(species, reduced)), tuple(map(species, oxidised)))


def shares(found: tuple[object, ...]) -> dict[str, int]:
    return {share.species.ascii: share.value for share in found}


WATER_SPLIT = ("2H2O + 2e- -> H2 + 2OH^-", "2H2O -> O2 + 4H^+ + 4e-", ["H2"], ["O2"])
COPPER = ("Cu^2+ + 2e- -> Cu", "4OH^- -> O2 + 2H2O + 4e-", ["Cu"], ["O2"])
SILVER = ("Ag^+ + e- -> Ag", "2H2O -> O2 + 4H^+ + 4e-", ["Ag"], ["O2"])
ALUMINIUM = ("Al^3+ + 3e- -> Al", "2O^2- -> O2 + 4e-", ["Al"], ["O2"])
BRINE = ("2H^+ + 2e- -> H2", "2Cl^- -> Cl2 + 2e-", ["H2"], ["Cl2"])
KOLBE = ("2H2O + 2e- -> H2 + 2OH^-", "2CH3COO^- -> C2H6 + 2CO2 + 2e-", ["H2"], ["C2H6", "CO2"])
REFINING = ("Cu^2+ + 2e- -> Cu", "Cu -> Cu^2+ + 2e-", ["Cu"], ["Cu^2+"])


@pytest.mark.parametrize(
    ("cell", "overall", "multipliers"),
    [
        (WATER_SPLIT, "2H2O -> 2H2 + O2", (2, 1, 4)),
        (COPPER, "2Cu^2+ + 4OH^- -> 2Cu + O2 + 2H2O", (2, 1, 4)),
        (SILVER, "4Ag^+ + 2H2O -> 4Ag + O2 + 4H^+", (4, 1, 4)),
        (ALUMINIUM, "4Al^3+ + 6O^2- -> 4Al + 3O2", (4, 3, 12)),
        (BRINE, "2H^+ + 2Cl^- -> H2 + Cl2", (1, 1, 2)),
        (REFINING, "Cu -> Cu", (1, 1, 2)),
    ],
)
def test_multipliers_make_the_electrons_agree(
    cell: tuple[str, str, list[str], list[str]], overall: str, multipliers: tuple[int, int, int]
) -> None:
    combined = accounts(*cell).combined
    assert combined.overall.ascii == overall
    assert (combined.reduction_multiplier, combined.oxidation_multiplier, combined.electrons) == multipliers


@pytest.mark.parametrize(
    ("cell", "moles", "gas_volumes"),
    [
        (WATER_SPLIT, {"H2": 2, "O2": 1}, {"H2": 2, "O2": 1}),
        (COPPER, {"Cu": 2, "O2": 1}, {"O2": 1}),
        (SILVER, {"Ag": 4, "O2": 1}, {"O2": 1}),
        (ALUMINIUM, {"Al": 4, "O2": 3}, {"O2": 1}),
        (BRINE, {"H2": 1, "Cl2": 1}, {"H2": 1, "Cl2": 1}),
        (KOLBE, {"H2": 1, "C2H6": 1, "CO2": 2}, {"H2": 1, "C2H6": 1, "CO2": 2}),
        (REFINING, {"Cu": 1, "Cu^2+": 1}, {}),
    ],
)
def test_products_form_in_the_smallest_whole_numbers(
    cell: tuple[str, str, list[str], list[str]], moles: dict[str, int], gas_volumes: dict[str, int]
) -> None:
    found = accounts(*cell)
    assert shares(found.moles) == moles
    assert shares(found.gas_volumes) == gas_volumes


def test_one_gas_at_both_electrodes_is_counted_together() -> None:
    found = accounts("2H2O + 2e- -> H2 + 2OH^-", "2H^- -> H2 + 2e-", ["H2"], ["H2"])
    assert shares(found.moles) == {"H2": 1}


def test_half_coefficients_give_the_same_ratio() -> None:
    half = Fraction(1, 2)
    gas = Term(species("Cl2"), half, "g")
    oxidation = Equation((Term(species("Cl^-"), 1, "aq"),), (gas, Term(species("e-"))))
    reduction = with_states(equation("Ag^+ + e- -> Ag"))
    found = account(reduction, oxidation, (species("Ag"),), (species("Cl2"),))
    assert shares(found.moles) == {"Ag": 2, "Cl2": 1}
