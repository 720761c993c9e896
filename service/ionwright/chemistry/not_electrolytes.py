"""What is no electrolyte: molecules, metals, and solids whose ions stand in no salt; told as a teacher would."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

from ionwright.chemistry.element import ELEMENTS, Element, find_element
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.nomenclature import shown_name
from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from ionwright.chemistry.formula import Formula

__all__ = [
    "NON_ELECTROLYTE_NAMES",
    "NON_METALS",
    "refusal_of_formula",
    "refusal_of_molecule",
    "refusal_of_name",
]

NON_METALS: Final = frozenset(
    ("H", "He", "B", "C", "N", "O", "F", "Ne", "Si", "P", "S", "Cl", "Ar", "Ge", "As", "Se", "Br", "Kr", "Te", "I",
     "Xe", "At", "Rn", "Ts", "Og")
)  # fmt: skip
"""Symbols of the elements that are no metals."""

_CONDUCTING_CARBON: Final = "C"
_TABLE: Final = read_table("trivial_names.toml")
_FORM: Final = "Choose a salt, an acid or an alkali, such as CuSO4, NaCl or dilute H2SO4."


def _by_formula(kind: str) -> dict[str, dict[str, Any]]:
    return {formula: row for row in _TABLE[kind] for formula in row["formulas"]}


def _by_name(kind: str) -> dict[str, dict[str, Any]]:
    return {name: row for row in _TABLE[kind] for name in row["names"]}


_MOLECULES: Final = _by_formula("molecule")
_SOLIDS: Final = _by_formula("solid")
_MOLECULE_NAMES: Final = _by_name("molecule")
_SOLID_NAMES: Final = _by_name("solid")
_CONDUCTORS: Final = frozenset(name for row in _TABLE["conductor"] for name in row["names"])

NON_ELECTROLYTE_NAMES: Final = (*_MOLECULE_NAMES, *_SOLID_NAMES, *_CONDUCTORS)
"""Every name that is refused, in lower case."""


def _capital(text: str) -> str:
    shown = shown_name(text)
    return shown[:1].upper() + shown[1:]


def _molecule(name: str, why: str) -> CellRefused:
    detail = (
        f"{_capital(name)} is covalent: it holds no ions, so neither its solution nor its liquid conducts."
    )
    return CellRefused("non-electrolyte", f"{detail} {why}".strip(), remedy=_FORM)


def _solid(name: str) -> CellRefused:
    return CellRefused(
        "insoluble",
        f"{_capital(name)} does not dissolve in water, so it sets no ions free, and it gives no melt to work with.",
        remedy=_FORM,
    )


def _metal(name: str) -> CellRefused:
    return CellRefused(
        "not-an-electrolyte",
        f"{_capital(name)} conducts by its electrons and is not changed by the current, so it is a conductor and "
        "not an electrolyte.",
        remedy=f"Use it as an electrode, if it suits. {_FORM}",
    )


def _element(element: Element) -> CellRefused:
    if element.symbol not in NON_METALS:
        return _metal(element.name)
    if element.symbol == _CONDUCTING_CARBON:
        return _metal("carbon (graphite)")
    return CellRefused(
        "non-electrolyte",
        f"{_capital(element.name)} is an element made of molecules or atoms: it holds no ions, so it does not conduct "
        "as an electrolyte.",
        remedy=_FORM,
    )


def refusal_of_formula(formula: Formula) -> CellRefused | None:
    """Return the refusal if a formula is an element or a known substance without ions, else None.

    Parameters
    ----------
    formula
        A formula as it was read.
    """
    text = formula.text
    row = _MOLECULES.get(text)
    if row is not None:
        return _molecule(row["names"][0], row.get("why", ""))
    row = _SOLIDS.get(text)
    if row is not None:
        return _solid(row["names"][0])
    if len(formula.parts) == 1 and len(symbols := formula.composition) == 1:
        return _element(ELEMENTS[next(iter(symbols))])
    return None


def refusal_of_molecule(formula: Formula) -> CellRefused | None:
    """Return the refusal if a formula that gives no ions is made of non-metals only, or of metals only; else None.

    Parameters
    ----------
    formula
        A formula that could not be cut into ions whose charges cancel.
    """
    symbols = set(formula.composition)
    if symbols <= NON_METALS:
        return _molecule(formula.text, "All its elements are non-metals.")
    if not symbols & NON_METALS:
        return _metal(formula.text)
    return None


def refusal_of_name(name: str) -> CellRefused | None:
    """Return the refusal if a name is that of an element, an alloy or a substance without ions; else None.

    Parameters
    ----------
    name
        In lower case, with British spelling.
    """
    row = _MOLECULE_NAMES.get(name)
    if row is not None:
        return _molecule(name, row.get("why", ""))
    if name in _SOLID_NAMES:
        return _solid(name)
    if name in _CONDUCTORS:
        return _metal(name)
    element = find_element(name) if len(name) > 2 else None
    return None if element is None else _element(element)
