"""What is wrong with a printed constant: no quantity, of the wrong dimension, or far from what it ought to be."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from ionwright.chemistry.constants import CONSTANTS
from ionwright.chemistry.element import ELEMENTS
from ionwright.curricula.constants import DIMENSIONS, PrintedConstants
from ionwright.errors import IonwrightError

__all__ = ["fault_of_constant", "fault_of_mass", "faults_of_constants"]

_USUAL: Final = re.compile(r"([0-9]{1,6}(?:\.[0-9]{1,12})?(?:e-?[0-9]{1,2})?) (\S.{0,11})\Z")
_FIGURE: Final = re.compile(r"[0-9]{1,3}(?:\.[0-9]{1,4})?\Z")
_FARTHEST_MASS: Final = 0.05
"""A printed mass that is farther from the table, relative to it, is a slip: an atomic number, or another element's."""
_FARTHEST: Final = 0.02
"""The same for a constant of nature; old courses print 96000 C/mol."""


@dataclass(frozen=True, slots=True)
class _Sense:
    """What a constant is called, its usual unit and what one of it is in SI units, and between what figures it lies."""

    name: str
    unit: str
    si: float
    low: float
    high: float
    known: str


def _of_nature(id_: str, name: str, unit: str) -> _Sense:
    value = CONSTANTS[id_].value
    return _Sense(name, unit, 1.0, value * (1 - _FARTHEST), value * (1 + _FARTHEST), CONSTANTS[id_].printed)


_SENSES: Final[Mapping[str, _Sense]] = {
    "faraday_constant": _of_nature("faraday_constant", "Faraday constant", "C/mol"),
    "molar_gas_volume": _Sense(
        "molar gas volume", "dm3/mol", 1e-3, 20e-3, 30e-3, "the 22 to 25 dm3/mol of a gas in a room"
    ),
    "avogadro_constant": _of_nature("avogadro_constant", "Avogadro constant", "/mol"),
    "elementary_charge": _of_nature("elementary_charge", "elementary charge", "C"),
    "gas_constant": _of_nature("gas_constant", "gas constant", "J/(mol K)"),
}


def fault_of_constant(name: str, text: object) -> str:
    """What is wrong with the text of this constant, as a sentence; empty if nothing is.

    Parameters
    ----------
    name
        A key of `DIMENSIONS`.
    text
        As the course prints it; empty for a constant that it does not print.
    """
    if not isinstance(text, str):
        return 'Not a valid string: write it in quotes, such as "96500 C/mol"'
    if not text:
        return ""
    try:
        value = _si_value(name, text)
    except IonwrightError as fault:
        return str(fault)
    sense = _SENSES[name]
    return "" if sense.low <= value <= sense.high else f"'{text}' is far from {sense.known}"


def fault_of_mass(symbol: str, text: object) -> str:
    """What is wrong with this figure as the relative atomic mass of an element; empty if nothing is.

    Parameters
    ----------
    symbol
        Of the element.
    text
        As the course prints it; empty to take away what was inherited.
    """
    element = ELEMENTS.get(symbol)
    if element is None:
        return f"'{symbol}' is not the symbol of an element"
    if not isinstance(text, str):
        return 'Not a valid string: write the figure in quotes, such as "35.5"'
    if not text:
        return ""
    if not _FIGURE.match(text) or float(text) == 0:
        return f"'{text[:20]}' is not a figure such as 35.5"
    tabled = element.relative_atomic_mass
    if tabled is not None and abs(float(text) - tabled) > _FARTHEST_MASS * tabled:
        return f"'{text}' is far from {tabled:g}, the relative atomic mass of {element.name}"
    return ""


def faults_of_constants(printed: object) -> tuple[tuple[str, str], ...]:
    """Every fault of the printed constants of a course, each with its name.

    Parameters
    ----------
    printed
        What a plugin gave as the constants of its conventions.
    """
    if not isinstance(printed, PrintedConstants):
        return (("constants", f"{type(printed).__name__} is not PrintedConstants"),)
    if not isinstance(printed.relative_atomic_masses, Mapping):
        return (("relative_atomic_masses", "Not a valid mapping type"),)
    if not isinstance(printed.other_molar_gas_volumes, Mapping):
        return (("other_molar_gas_volumes", "Not a valid mapping type"),)
    volumes = [
        (f"other_molar_gas_volumes.{conditions}", fault_of_constant("molar_gas_volume", text))
        for conditions, text in printed.other_molar_gas_volumes.items()
    ]
    texts = [(name, fault_of_constant(name, getattr(printed, name))) for name in DIMENSIONS]
    masses = [
        (f"relative_atomic_masses.{symbol}", fault_of_mass(symbol, text))
        for symbol, text in printed.relative_atomic_masses.items()
    ]
    return tuple((name, fault) for name, fault in texts + volumes + masses if fault)


def _si_value(name: str, text: str) -> float:
    sense = _SENSES[name]
    usual = _USUAL.match(text)
    if usual and usual[2] == sense.unit:
        return float(usual[1]) * sense.si
    # only another spelling needs the reader of quantities, which takes a while to load
    from ionwright.chemistry.written_quantity import expect, read_written  # noqa: PLC0415

    written = read_written(text, dimension=DIMENSIONS[name])
    expect(written, DIMENSIONS[name], sense.name)
    return written.value * written.unit.si
