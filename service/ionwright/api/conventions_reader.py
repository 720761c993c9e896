"""From the member `conventions` of a task to what it states in place of what the course prints."""

from __future__ import annotations

from typing import Any

from ionwright.api.known_reader import read_value
from ionwright.api.problems import Fault, Path
from ionwright.api.texts import note_unknown_fields, read_choice, shown, wrong_type
from ionwright.chemistry.element import ELEMENTS
from ionwright.teaching.quantities import TaskConventions
from ionwright.teaching.quantities.reading import STATED_CONSTANTS

CONVENTION_FIELDS = (*STATED_CONSTANTS, "relative_atomic_masses", "significant_figures", "gas_collected")
WAYS_OF_COLLECTING = ("dry", "over water")
MOST_FIGURES = 10
MOST_MASSES = 118
_OTHER_WORDS = {
    "f": "faraday_constant",
    "faraday": "faraday_constant",
    "molar_volume": "molar_gas_volume",
    "avogadro": "avogadro_constant",
    "r": "gas_constant",
    "atomic_weights": "relative_atomic_masses",
    "relative_atomic_mass": "relative_atomic_masses",
    "figures": "significant_figures",
}


def read_task_conventions(value: Any, faults: list[Fault]) -> TaskConventions:
    """What a task states in place of what its course prints; equal conventions are read as equal ones."""
    path: Path = ("conventions",)
    if type(value) is not dict:
        faults.append(wrong_type(value, path, "an object", '{"faraday_constant": "96500 C/mol"}'))
        return TaskConventions()
    note_unknown_fields(value, path, CONVENTION_FIELDS, faults, _OTHER_WORDS)
    constants = tuple(
        (name, read_value(value[name], (*path, name), name, faults))
        for name in STATED_CONSTANTS
        if name in value
    )
    masses = value.get("relative_atomic_masses", {})
    figures = None
    if "significant_figures" in value:
        figures = _figures(value["significant_figures"], (*path, "significant_figures"), faults)
    is_over_water = False
    if "gas_collected" in value:
        place = (*path, "gas_collected")
        is_over_water = read_choice(value["gas_collected"], place, WAYS_OF_COLLECTING, faults) == "over water"
    return TaskConventions(
        constants=constants,
        relative_atomic_masses=_masses(masses, (*path, "relative_atomic_masses"), faults),
        significant_figures=figures,
        gas_collected="over water" if is_over_water else "",
    )


def _figures(value: Any, path: Path, faults: list[Fault]) -> int | None:
    if type(value) is not int:
        faults.append(wrong_type(value, path, "a whole number", "3"))
    elif not 1 <= value <= MOST_FIGURES:
        detail = f'"significant_figures" has to be a whole number from 1 to {MOST_FIGURES}.'
        faults.append(Fault(path, "out-of-range", detail))
    else:
        return value
    return None


def _masses(value: Any, path: Path, faults: list[Fault]) -> tuple[tuple[str, str], ...]:
    if type(value) is not dict:
        faults.append(wrong_type(value, path, "an object", '{"Ni": "58.7"}'))
        return ()
    if len(value) > MOST_MASSES:
        detail = f'"relative_atomic_masses" takes {MOST_MASSES} elements at most, and has {len(value)}.'
        faults.append(Fault(path, "too-many", detail))
        return ()
    for symbol in value:
        if symbol not in ELEMENTS:
            detail = f"{shown(symbol)} is not the symbol of an element. Write it as in the periodic table, such as Ni."
            faults.append(Fault((*path, symbol), "unknown-element", detail))
    read = {
        symbol: read_value(mass, (*path, symbol), "relative_atomic_mass", faults)
        for symbol, mass in value.items()
        if len(symbol) < 4
    }
    return tuple(sorted(read.items()))
