"""Leaving Certificate: its answers cell by cell, its equations, its constants and its marking."""

from collections.abc import Callable

import pytest

from ionwright.curricula.host import Registry
from ionwright.teaching import Prediction

ID = "leaving-cert"
FROM_H = "2H^+ + 2e- -> H2"
FROM_WATER = "2H2O + 2e- -> H2 + 2OH^-"
WATER_TO_OXYGEN = "2H2O -> O2 + 4H^+ + 4e-"
# electrolyte, concentration, the rest of the cell, and both answers; "A | B": A is given, contested, and B is
# accepted too; "?": not decidable under the course
CELLS = [
    ("Al2O3", None, {"state": "molten"}, "Al", "O2 | CO2"),
    ("CuSO4", None, {}, "?", "?"),
    ("CuSO4", None, {"cathode": "copper", "anode": "copper"}, "Cu", "Cu^2+"),
    ("NiSO4", "0.25 mol/dm3", {"cathode": "steel", "anode": "nickel"}, "Ni", "Ni^2+"),
    ("H2SO4", "dilute", {}, "H2", "O2"),
    ("Na2SO4", None, {}, "H2", "O2"),
    ("NaOH", None, {}, "?", "?"),
    ("HCl", "concentrated", {}, "?", "?"),
    ("KNO3", None, {}, "?", "?"),
    ("PbBr2", None, {"state": "molten"}, "?", "?"),
    ("NaCl", None, {"state": "molten"}, "Na", "Cl2"),
    ("NaCl + CaCl2", None, {"state": "molten"}, "Na", "Cl2"),
    ("KI", None, {}, "H2", "I2"),
    ("KI", None, {"cathode": "platinum", "anode": "platinum"}, "H2", "I2"),
    ("AgNO3", None, {"cathode": "copper", "anode": "silver"}, "Ag", "Ag^+"),
    ("NaCl", None, {}, "?", "?"),
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
        ("Na2SO4", [FROM_WATER], [WATER_TO_OXYGEN]),
    ],
)
def test_hydrogen_and_oxygen_are_written_as_the_medium_asks(
    forms: Callable[[str, str], list[list[str]]], cell: str, hydrogen: list[str], oxygen: list[str]
) -> None:
    assert forms(ID, cell) == [hydrogen, oxygen]


@pytest.mark.parametrize(
    ("cell", "electrode", "reason"),
    [
        ("KI", "anode", "Iodide ions are present"),
        ("Na2SO4", "cathode", "Sodium is above hydrogen"),
        ("NaCl", "cathode", "This cell is not among them."),
        ("CuSO4", "anode", "prescribes its cells"),
        ("ZnCl2", "anode", "potassium iodide solution with inert electrodes"),
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
        "molar_gas_volume": "24.0 dm3/mol",
        "gas_conditions": "room temperature and pressure",
        "other_molar_gas_volumes": {"s.t.p., 273 K and 101325 Pa": "22.4 dm3/mol"},
    }


def test_the_relative_atomic_masses_are_those_of_its_periodic_table(registry: Registry) -> None:
    printed = registry[ID].conventions.constants
    pairs = "H 1, O 16, Na 23, Cl 35.5, Cu 63.5, Zn 65, Ag 108, Pb 207"
    assert (
        ", ".join(
            f"{pair.split()[0]} {printed.relative_atomic_mass(pair.split()[0])}" for pair in pairs.split(", ")
        )
        == pairs
    )


def test_it_marks_as_the_course_does(registry: Registry) -> None:
    marking = registry[ID].marking
    assert (marking.species_marks, marking.balance_marks) == (3, 3)
    assert (marking.state_symbols, marking.subtracted_electrons) == ("not-used", True)
    assert (marking.multiples, marking.fractions) == ("accepted", "accepted")


def test_how_sure_the_declaration_is_of_its_parts_is_told(registry: Registry) -> None:
    assert dict(registry[ID].certainty) == {
        "cathode": "high",
        "anode": "high",
        "conventions": "high",
        "constants": "medium",
        "marking": "medium",
    }
