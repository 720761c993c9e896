"""Reads what a task states and asks, from the texts in which people write it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.known_values import checked_value
from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.task import Given, Wanted
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.units import read_unit, unit_said
from ionwright.chemistry.written_quantity import read_written
from ionwright.errors import IonwrightError
from ionwright.teaching.quantities.phrases import read_phrase

if TYPE_CHECKING:
    from ionwright.chemistry.units import Unit
    from ionwright.chemistry.written_quantity import Written
    from ionwright.teaching.quantities.description import AskedQuantity, StatedQuantity, TaskConventions

__all__ = ["STATED_CONSTANTS", "read_asked", "read_conventions", "read_stated"]

STATED_CONSTANTS: Final = (
    "faraday_constant",
    "molar_gas_volume",
    "avogadro_constant",
    "elementary_charge",
    "gas_constant",
)
"""The constants that a task may state in place of what its course prints."""


def read_stated(stated: StatedQuantity) -> Given:
    """A known quantity.

    Raises
    ------
    IonwrightError
        If its name or its value cannot be read.
    """
    try:
        said = read_phrase(stated.phrase)
    except IonwrightError as fault:
        raise fault.within(stated.where) from None
    written = _written(said.quantity, stated.value, stated.where)
    name = said.quantity
    if name == "relative_atomic_mass" and written.unit.dimension == "molar mass":
        name = "molar_mass"
    return Given(name, written, stated.of or said.of, stated.process or said.process, stated.where)


def _written(quantity: str, text: str, where: str) -> Written:
    if quantity == "ion_charge":
        text = text.strip().strip("+")  # people write the charge of an ion as 2+ or +2
    try:
        return read_written(text, dimension=QUANTITIES[quantity].dimension)
    except IonwrightError as fault:
        raise fault.within(where) from None


def read_asked(asked: AskedQuantity) -> Wanted:
    """A quantity that is asked for.

    Raises
    ------
    IonwrightError
        If it cannot be read, or the unit does not fit the quantity (``wrong-dimension``).
    """
    try:
        said = read_phrase(asked.phrase)
        text = asked.unit or said.unit
        unit = _unit(said.quantity, text) if text else None
    except IonwrightError as fault:
        raise fault.within(asked.where) from None
    return Wanted(said.quantity, asked.of or said.of, asked.process or said.process, unit, asked.where)


def _unit(quantity: str, text: str) -> Unit:
    kind = QUANTITIES[quantity]
    unit = read_unit(text, kind.dimension)
    is_by_mass = kind.dimension == "concentration" and unit.dimension == "density"
    if unit.dimension != kind.dimension and not is_by_mass:
        detail = f"The {kind.noun} is not counted in {unit_said(unit)}."
        raise QuantityFault("wrong-dimension", detail, remedy=f"Ask for it in {kind.answer_unit}, for one.")
    return unit


def read_conventions(conventions: TaskConventions) -> tuple[dict[str, Written], dict[str, Written]]:
    """The constants and the relative atomic masses that a task states.

    Raises
    ------
    IonwrightError
        If one cannot be read, has the wrong dimension or cannot be.
    """
    constants = {name: _constant(name, text) for name, text in conventions.constants}
    for symbol, _ in conventions.relative_atomic_masses:
        if symbol not in ELEMENTS:
            detail = f'There is no element with the symbol "{symbol[:40]}".'
            where = f"conventions/relative_atomic_masses/{symbol}"
            raise QuantityFault("unknown-element", detail, where=where, remedy="Write a symbol such as Ni.")
    masses = {
        symbol: _checked("relative_atomic_mass", text, f"conventions/relative_atomic_masses/{symbol}")
        for symbol, text in conventions.relative_atomic_masses
    }
    return constants, masses


def _constant(name: str, text: str) -> Written:
    where = f"conventions/{name}"
    if name not in STATED_CONSTANTS:
        detail = f'"{name[:40]}" is no constant that a task may state.'
        remedy = f"Those are {', '.join(STATED_CONSTANTS)}."
        raise QuantityFault("unknown-quantity", detail, where=where, remedy=remedy)
    return _checked(name, text, where)


def _checked(name: str, text: str, where: str) -> Written:
    written = _written(name, text, where)
    if name == "relative_atomic_mass" and written.unit.dimension == "molar mass":
        name = "molar_mass"
    checked_value(Key(name), Given(name, written, where=where))
    return written
