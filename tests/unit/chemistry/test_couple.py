"""The table of standard potentials: balance, electrons, ladders of charge, and the laws that bind its rows."""

from math import log10

import pytest

from ionwright.chemistry.couple import couples, metal_couples
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.tables import read_table

COUPLES = couples()
# 8.314462618 J/(K mol) x 298.15 K x ln 10 / 96485.33212 C/mol, from one figure of pH to the next [V]
PER_DECADE_V = 0.05916


def volts(name: str) -> float:
    return COUPLES[name].potential_V


def test_no_two_rows_share_a_name() -> None:
    names = [row["id"] for row in read_table("couples.toml")["couple"]]
    assert len(names) == len(set(names)) == len(COUPLES)


@pytest.mark.parametrize("name", COUPLES)
def test_every_row_is_a_balanced_reduction_of_a_believable_potential(name: str) -> None:
    COUPLES[name].reduction.check()
    assert COUPLES[name].reduction.electrons > 0
    assert -3.2 < COUPLES[name].potential_V < 3.2


@pytest.mark.parametrize("name", COUPLES)
def test_a_printed_figure_stays_near_the_adopted_one(name: str) -> None:
    # the two that differ by more are formal potentials that schools print, and their rows say so
    far = {"Co3+/Co2+": 0.11, "Cr2O7 2-/Cr3+": 0.04}
    assert abs(COUPLES[name].printed_V - COUPLES[name].potential_V) < far.get(name, 0.03)


@pytest.mark.parametrize(
    ("name", "electrons"),
    [
        ("Li+/Li", 1), ("K+/K", 1), ("Ca2+/Ca", 2), ("Na+/Na", 1), ("Mg2+/Mg", 2), ("Al3+/Al", 3), ("Zn2+/Zn", 2),
        ("Cr3+/Cr", 3), ("Cr3+/Cr2+", 1), ("Fe2+/Fe", 2), ("Fe3+/Fe2+", 1), ("Fe3+/Fe", 3), ("Ni2+/Ni", 2),
        ("Sn4+/Sn2+", 2), ("Pb2+/Pb", 2), ("Cu2+/Cu", 2), ("Cu2+/Cu+", 1), ("Cu+/Cu", 1), ("Hg2 2+/Hg", 2),
        ("Hg2+/Hg2 2+", 2), ("Ag+/Ag", 1), ("Au3+/Au", 3), ("Au3+/Au+", 2), ("AuCl4-/Au", 3), ("H+/H2", 2),
        ("H2O/H2", 2), ("O2/H2O", 4), ("O2/OH-", 4), ("O2/H2O2", 2), ("O3/O2", 2), ("F2/F-", 2), ("Cl2/Cl-", 2),
        ("I3-/I-", 2), ("ClO3-/Cl-", 6), ("ClO3-/Cl2", 10), ("BrO3-/Br-", 6), ("BrO3-/Br2", 10), ("IO3-/I2", 10),
        ("HClO/Cl-", 2), ("S2O8 2-/SO4 2-", 2), ("SO4 2-/SO2", 2), ("H2SO3/S", 4), ("S/S2-", 2),
        ("S4O6 2-/S2O3 2-", 2), ("NO3-/NO", 3), ("NO3-/NO2", 1), ("NO3-/HNO2", 2), ("NO3-/NH4+", 8),
        ("NO2-/NH3", 6), ("CO2/C2O4 2-", 2), ("CO2,C2H6/CH3COO-", 2), ("MnO4-/Mn2+", 5), ("MnO4-/MnO2", 3),
        ("MnO4-/MnO4 2-", 1), ("MnO2/Mn2+", 2), ("Cr2O7 2-/Cr3+", 6), ("CrO4 2-/Cr(OH)3", 3), ("VO2+/VO 2+", 1),
        ("VO 2+/V3+", 1), ("PbO2/Pb2+", 2), ("PbO2/PbSO4", 2), ("AgCl/Ag", 1), ("Hg2Cl2/Hg", 2), ("Ag2O/Ag", 2),
        ("NiOOH/Ni(OH)2", 1), ("Al(OH)4-/Al", 3), ("Sn(OH)6 2-/Sn", 4), ("PtCl6 2-/Pt", 4), ("FeO4 2-/Fe3+", 3),
        ("Fe(CN)6 3-/4-", 1), ("IO4-/IO3-", 2),
    ],
)  # fmt: skip
def test_oxidation_numbers_give_the_number_of_electrons(name: str, electrons: int) -> None:
    assert COUPLES[name].reduction.electrons == electrons


@pytest.mark.parametrize(
    ("name", "printed_V"),
    [
        ("K+/K", -2.92), ("Ca2+/Ca", -2.87), ("Na+/Na", -2.71), ("Mg2+/Mg", -2.37), ("Al3+/Al", -1.66),
        ("Zn2+/Zn", -0.76), ("Fe2+/Fe", -0.44), ("Ni2+/Ni", -0.25), ("Sn2+/Sn", -0.14), ("Pb2+/Pb", -0.13),
        ("H+/H2", 0.0), ("Cu2+/Cu", 0.34), ("I2(s)/I-", 0.54), ("Fe3+/Fe2+", 0.77), ("Ag+/Ag", 0.8),
        ("Br2(l)/Br-", 1.07), ("O2/H2O", 1.23), ("Cr2O7 2-/Cr3+", 1.33), ("Cl2/Cl-", 1.36), ("MnO4-/Mn2+", 1.51),
        ("S2O8 2-/SO4 2-", 2.01), ("F2/F-", 2.87), ("H2O/H2", -0.83), ("O2/OH-", 0.4),
    ],
)  # fmt: skip
def test_school_sheets_print_these_figures(name: str, printed_V: float) -> None:
    assert COUPLES[name].printed_V == printed_V
    assert COUPLES[name].on_school_sheet


@pytest.mark.parametrize(
    ("whole", "electrons", "steps"),
    [
        ("Fe3+/Fe", 3, [("Fe3+/Fe2+", 1), ("Fe2+/Fe", 2)]),
        ("Cu2+/Cu", 2, [("Cu2+/Cu+", 1), ("Cu+/Cu", 1)]),
        ("Hg2+/Hg", 2, [("Hg2+/Hg2 2+", 1), ("Hg2 2+/Hg", 1)]),
        ("MnO4-/Mn2+", 5, [("MnO4-/MnO2", 3), ("MnO2/Mn2+", 2)]),
        ("Cr3+/Cr", 3, [("Cr3+/Cr2+", 1), ("Cr2+/Cr", 2)]),
        ("Au3+/Au", 3, [("Au3+/Au+", 2), ("Au+/Au", 1)]),
        ("O2/H2O", 4, [("O2/H2O2", 2), ("H2O2/H2O", 2)]),
        ("O2/OH-", 4, [("O2/HO2-", 2), ("HO2-/OH-", 2)]),
        ("ClO3-/Cl-", 6, [("ClO3-/Cl2", 5), ("Cl2/Cl-", 1)]),
        ("BrO3-/Br-", 6, [("BrO3-/Br2", 5), ("Br2(l)/Br-", 1)]),
        ("IO3-/I-", 6, [("IO3-/I2", 5), ("I2(s)/I-", 1)]),
        ("HClO/Cl-", 2, [("HClO/Cl2", 1), ("Cl2/Cl-", 1)]),
        ("NO3-/NO", 3, [("NO3-/HNO2", 2), ("HNO2/NO", 1)]),
    ],
)  # fmt: skip
def test_ladders_of_charge_close_within_eight_millivolts(
    whole: str, electrons: int, steps: list[tuple[str, int]]
) -> None:
    by_steps_V = sum(number * volts(name) for name, number in steps) / electrons
    assert by_steps_V == pytest.approx(volts(whole), abs=0.008)


@pytest.mark.parametrize(
    ("in_acid", "in_alkali", "hydrogen_per_electron"),
    [
        ("H+/H2", "H2O/H2", 1),
        ("O2/H2O", "O2/OH-", 1),
        ("MnO4-/MnO2", "MnO4-/MnO2 alkali", 4 / 3),
        ("BrO3-/Br-", "BrO3-/Br- alkali", 1),
        ("ClO3-/Cl-", "ClO3-/Cl- alkali", 1),
    ],
)
def test_the_alkaline_form_of_a_couple_follows_from_the_acidic_one(
    in_acid: str, in_alkali: str, hydrogen_per_electron: float
) -> None:
    expected_V = volts(in_acid) - 14 * PER_DECADE_V * hydrogen_per_electron
    assert volts(in_alkali) == pytest.approx(expected_V, abs=0.010)


@pytest.mark.parametrize(
    ("bare", "with_solid", "electrons", "solubility_product"),
    [
        ("Ag+/Ag", "AgCl/Ag", 1, 1.77e-10),
        ("Ag+/Ag", "AgBr/Ag", 1, 5.35e-13),
        ("Ag+/Ag", "AgI/Ag", 1, 8.5e-17),
        ("Pb2+/Pb", "PbSO4/Pb", 2, 2.5e-8),
        ("Hg2 2+/Hg", "Hg2Cl2/Hg", 2, 1.4e-18),
    ],
)
def test_a_salt_that_hardly_dissolves_lowers_the_potential_by_its_solubility_product(
    bare: str, with_solid: str, electrons: int, solubility_product: float
) -> None:
    expected_V = volts(bare) + PER_DECADE_V / electrons * log10(solubility_product)
    assert volts(with_solid) == pytest.approx(expected_V, abs=0.015)


def test_the_standard_hydrogen_electrode_is_exactly_zero() -> None:
    assert volts("H+/H2") == 0


@pytest.mark.parametrize(
    ("name", "oxidised", "reduced"),
    [
        ("MnO4-/Mn2+", ["MnO4^-"], ["Mn^2+"]),
        ("H2O/H2", [], ["H2"]),
        ("O2/OH-", ["O2"], []),
        ("PbO2/PbSO4", ["PbO2", "SO4^2-"], ["PbSO4"]),
        ("AgCl/Ag", ["AgCl"], ["Ag", "Cl^-"]),
    ],
)
def test_what_the_medium_supplies_belongs_to_neither_form(
    name: str, oxidised: list[str], reduced: list[str]
) -> None:
    assert [kind.ascii for kind in COUPLES[name].oxidised] == oxidised
    assert [kind.ascii for kind in COUPLES[name].reduced] == reduced


@pytest.mark.parametrize(
    ("metal", "names"),
    [
        ("Fe", ["Fe2+/Fe", "Fe3+/Fe"]),
        ("Cu", ["Cu2+/Cu", "Cu+/Cu"]),
        ("Hg", ["Hg2+/Hg", "Hg2 2+/Hg"]),
        ("Cr", ["Cr3+/Cr", "Cr2+/Cr"]),
        ("Au", ["Au3+/Au", "Au+/Au"]),
        ("Na", ["Na+/Na"]),
    ],
)
def test_a_metal_lists_its_simple_ions_with_the_school_couple_first(metal: str, names: list[str]) -> None:
    assert [couple.name for couple in metal_couples()[metal]] == names


def test_gases_complexes_and_ions_that_only_change_charge_are_no_metal_couples() -> None:
    listed = {couple.name for rows in metal_couples().values() for couple in rows}
    assert not listed & {"H+/H2", "AuCl4-/Au", "Fe3+/Fe2+", "AgCl/Ag", "Ag(NH3)2+/Ag", "O2/OH-"}


def test_every_couple_that_does_not_run_says_why_in_a_sentence() -> None:
    reasons = [r for c in COUPLES.values() for r in (c.slow_reduction, c.slow_oxidation) if r]
    assert len(reasons) > 20
    assert all(reason[0].isupper() and reason.endswith(".") for reason in reasons)


def test_ions_without_a_tabulated_oxidation_are_known_anions() -> None:
    rows = read_table("couples.toml")["untabulated_oxidation"]
    known = {kind.ascii: kind.charge for kind in IONS}
    assert all(known[row["ion"]] < 0 for row in rows)
