"""Abitur: its answers cell by cell, its equations, its constants and its marking."""

from collections.abc import Callable

import pytest

from ionwright.curricula.host import Registry
from ionwright.teaching import Prediction

ID = "abitur"
FROM_H = "2H^+ + 2e- -> H2"
FROM_WATER = "2H2O + 2e- -> H2 + 2OH^-"
FROM_OH = "4OH^- -> O2 + 2H2O + 4e-"
WATER_TO_OXYGEN = "2H2O -> O2 + 4H^+ + 4e-"
# electrolyte, concentration, the rest of the cell, and both answers; "A | B": A is given, contested, and B is
# accepted too; "?": not decidable under the course
CELLS = [
    ("NaCl", "concentrated", {}, "H2", "Cl2"),
    ("NaCl", "dilute", {}, "H2", "Cl2 | O2"),
    ("NaCl", "0.001 mol/dm3", {}, "H2", "O2 | Cl2"),
    ("NaCl", "0.1 mol/dm3", {}, "H2", "Cl2 | O2"),
    ("KI", "dilute", {}, "H2", "I2"),
    ("KBr", "dilute", {}, "H2", "Br2"),
    ("CuCl2", "dilute", {}, "Cu", "Cl2 | O2"),
    ("HCl", "dilute", {}, "H2", "Cl2"),
    ("H2SO4", "concentrated", {}, "H2", "O2 | S2O8^2-"),
    ("ZnSO4", "0.5 mol/dm3", {}, "Zn", "O2"),
    ("ZnBr2", "0.1 mol/dm3", {}, "Zn", "Br2"),
    ("Pb(NO3)2", None, {}, "Pb", "PbO2"),
    ("NiSO4", None, {}, "Ni", "O2"),
    ("SnCl2", "concentrated", {}, "Sn", "Sn^4+"),
    ("FeCl2", "concentrated", {}, "Fe | H2", "Fe^3+"),
    ("FeCl3", "concentrated", {}, "Fe^2+", "Cl2"),
    ("Cr2(SO4)3", None, {}, "H2", "O2"),
    ("MnSO4", None, {}, "H2", "MnO2"),
    ("AgNO3", None, {"cathode": "platinum", "anode": "platinum"}, "Ag", "O2"),
    ("AgNO3", None, {"anode": "silver"}, "Ag", "Ag^+"),
    ("NaF", None, {}, "H2", "O2"),
    ("NaNO3", None, {}, "H2", "O2"),
    ("HNO3", None, {}, "H2", "O2"),
    ("CH3COONa", None, {}, "H2", "O2"),
    ("CH3COONa", "concentrated", {}, "H2", "O2 | C2H6 + CO2"),
    ("Na2S", None, {}, "H2", "S"),
    ("KMnO4", None, {}, "MnO2", "O2"),
    ("NaCl", "concentrated", {"anode": "copper"}, "H2", "Cu^2+"),
    ("H2SO4", "dilute", {"cathode": "copper", "anode": "copper"}, "H2", "Cu^2+"),
    ("NaCl", "concentrated", {"anode": "silver"}, "H2", "AgCl"),
    ("KOH", None, {"cathode": "nickel", "anode": "nickel"}, "H2", "O2"),
    ("NaCl", "concentrated", {"cathode": "mercury"}, "Na | H2", "Cl2"),
    ("H2SO4", "dilute", {"anode": "aluminium"}, "H2", "Al2O3"),
    ("Al2O3", None, {"state": "molten"}, "Al", "CO2 | O2"),
    ("NaCl + NaI", "concentrated", {}, "H2", "I2"),
    ("AgNO3 + Cu(NO3)2", "0.1 mol/dm3", {}, "Ag", "O2"),
    ("LiH", None, {"state": "molten"}, "Li", "H2"),
    ("CuSO4", None, {}, "Cu", "O2"),
    ("CuSO4", None, {"cathode": "copper", "anode": "copper"}, "Cu", "Cu^2+"),
    ("NiSO4", "0.25 mol/dm3", {"cathode": "steel", "anode": "nickel"}, "Ni", "Ni^2+"),
    ("H2SO4", "dilute", {}, "H2", "O2"),
    ("Na2SO4", None, {}, "H2", "O2"),
    ("NaOH", None, {}, "H2", "O2"),
    ("HCl", "concentrated", {}, "H2", "Cl2"),
    ("KNO3", None, {}, "H2", "O2"),
    ("PbBr2", None, {"state": "molten"}, "Pb", "Br2"),
    ("NaCl", None, {"state": "molten"}, "Na", "Cl2"),
    ("NaCl + CaCl2", None, {"state": "molten"}, "Na", "Cl2"),
    ("ZnSO4", "0.5 mol/dm3", {"cathode": "platinum", "anode": "platinum"}, "H2", "O2"),
    ("NaCl", "1 mol/dm3", {"anode": "platinum"}, "H2", "Cl2"),
]


@pytest.mark.parametrize(("cell", "concentration", "rest", "cathode", "anode"), CELLS, ids=str)
def test_each_cell_gets_an_answer_that_the_course_accepts(
    *,
    answers: Callable[..., tuple[str, str]],
    cell: str,
    concentration: str | None,
    rest: dict[str, str],
    cathode: str,
    anode: str,
) -> None:
    assert answers(ID, cell, concentration, **rest) == (cathode, anode)


@pytest.mark.parametrize(
    ("cell", "hydrogen", "oxygen"),
    [
        ("H2SO4", [FROM_H], [WATER_TO_OXYGEN]),
        ("Na2SO4", [FROM_WATER, FROM_H], [WATER_TO_OXYGEN, FROM_OH]),
        ("NaOH", [FROM_WATER], [FROM_OH]),
    ],
)
def test_hydrogen_and_oxygen_are_written_as_the_medium_asks(
    forms: Callable[[str, str], list[list[str]]], cell: str, hydrogen: list[str], oxygen: list[str]
) -> None:
    assert forms(ID, cell) == [hydrogen, oxygen]


@pytest.mark.parametrize(
    ("cell", "electrode", "reason"),
    [
        ("NaCl", "anode", "deposition potential of chlorine"),
        ("ZnSO4", "cathode", "0.72 V of overpotential"),
    ],
)
def test_the_reason_is_that_of_the_course(
    prediction: Callable[..., Prediction], cell: str, electrode: str, reason: str
) -> None:
    assert reason in " ".join(getattr(prediction(ID, cell), electrode).verdict.because)


def test_the_constants_are_those_that_the_course_prints(registry: Registry) -> None:
    printed = registry[ID].conventions.constants.described()
    told = {name: value for name, value in printed.items() if "relative" not in name}
    assert told == {
        "faraday_constant": "96485 C/mol",
        "molar_gas_volume": "24.0 dm3/mol",
        "gas_conditions": "20 degC and 1013 hPa",
        "gas_constant": "8.314 J/(mol K)",
        "other_molar_gas_volumes": {
            "0 degC and 1013 hPa": "22.4 dm3/mol",
            "25 degC and 1013 hPa": "24.5 dm3/mol",
        },
    }


def test_the_relative_atomic_masses_are_those_of_its_periodic_table(registry: Registry) -> None:
    printed = registry[ID].conventions.constants
    pairs = "H 1.0, O 16.0, Na 23.0, Cl 35.5, Cu 63.5, Zn 65.4, Ag 107.9, Pb 207.2"
    assert (
        ", ".join(
            f"{pair.split()[0]} {printed.relative_atomic_mass(pair.split()[0])}" for pair in pairs.split(", ")
        )
        == pairs
    )


def test_it_marks_as_the_course_does(registry: Registry) -> None:
    marking = registry[ID].marking
    assert (marking.species_marks, marking.balance_marks) == (1, 1)
    assert (marking.state_symbols, marking.subtracted_electrons) == ("asked", True)
    assert (marking.multiples, marking.fractions) == ("remarked", "accepted")


def test_how_sure_the_declaration_is_of_its_parts_is_told(registry: Registry) -> None:
    assert dict(registry[ID].certainty) == {
        "cathode": "high",
        "anode": "high",
        "overpotentials": "medium",
        "conventions": "medium",
        "constants": "high",
        "marking": "medium",
    }
