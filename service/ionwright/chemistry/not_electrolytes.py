"""What is no electrolyte: molecules, metals, and solids whose ions stand in no salt; told as a teacher would."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from ionwright.chemistry.element import ELEMENTS, Element, find_element
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.formula import read_formula
from ionwright.chemistry.nomenclature import shown_name
from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from collections.abc import Mapping

    from ionwright.chemistry.formula import Formula

__all__ = [
    "NON_ELECTROLYTE_NAMES",
    "NON_METALS",
    "Molecule",
    "MoleculesOnly",
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
_SOLUBLE_ELEMENTS: Final = ("Cl", "Br", "I")
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


@dataclass(frozen=True, slots=True)
class Molecule:
    """A substance made of molecules.

    Parameters
    ----------
    formula
        Its usual formula; empty for what has none, such as an indicator.
    name
        As it was named, or its first name, in lower case.
    mixes
        Whether it may stand beside an electrolyte in one solution without changing it.
    hardly
        Whether a trace of it does split into ions.
    acid
        The acid that it makes with water; empty if it makes none.
    """

    formula: str
    name: str
    mixes: bool = False
    hardly: bool = False
    acid: str = ""

    @property
    def assumption(self) -> str:
        """What is taken to hold where it stands beside an electrolyte, as a sentence."""
        splits = "hardly splits" if self.hardly else "does not split"
        return f"{_capital(self.name)} {splits} into ions; it is taken to change nothing at the electrodes."


class MoleculesOnly(CellRefused):
    """The refusal of a substance made of molecules; it carries the substance, for it may do in a mixture."""

    def __init__(self, molecule: Molecule, detail: str, remedy: str) -> None:
        super().__init__("non-electrolyte", detail, remedy=remedy)
        self.molecule = molecule

    def beside_others(self) -> MoleculesOnly:
        """Return the refusal for a mixture with something that does conduct."""
        if self.molecule.acid:
            return self
        name = shown_name(self.molecule.name)
        return MoleculesOnly(self.molecule, self.detail, f"Leave the {name} out.")

    def when_molten(self) -> CellRefused:
        """Return the refusal for the melt: of a metal's compound it tells why the liquid does not conduct."""
        formula = self.molecule.formula
        if not formula or set(read_formula(formula).composition) <= NON_METALS:
            return self
        return CellRefused(
            "molecular-melt",
            f"Liquid {shown_name(self.molecule.name)} is made of molecules, not of ions, so it does not conduct.",
            remedy="Choose a salt whose melt is made of ions, such as NaCl or PbBr2.",
        )


def _molecule(name: str, row: Mapping[str, Any]) -> CellRefused:
    shown, why, acid = _capital(name), row.get("why", ""), row.get("acid", "")
    hardly = row.get("hardly", False)
    if acid:
        detail = f"{shown} is covalent; with water it makes {acid}, which conducts. {why}"
    elif hardly:
        covalent = "is covalent and hardly" if row["formulas"] else "hardly"
        detail = f"{shown} {covalent} splits into ions, so its solution hardly conducts. {why}"
    elif row.get("giant", False):
        detail = f"{shown} does not conduct at all: its atoms are joined in a giant covalent lattice. {why}"
    else:
        detail = (
            f"{shown} is covalent: it holds no ions, so neither its solution nor its liquid conducts. {why}"
        )
    formula = next(iter(row.get("formulas", ())), "")
    return MoleculesOnly(
        Molecule(formula, name, row.get("mixes", False), hardly, acid),
        detail.strip(),
        f"Ask for {acid}." if acid else _FORM,
    )


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
    detail = (
        f"{_capital(element.name)} is an element made of molecules or atoms: it holds no ions, so it does not conduct "
        "as an electrolyte."
    )
    mixes = element.symbol in _SOLUBLE_ELEMENTS
    return MoleculesOnly(Molecule(f"{element.symbol}2" if mixes else "", element.name, mixes), detail, _FORM)


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
        return _molecule(row["names"][0], row)
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
        return _molecule(formula.text, {"why": "All its elements are non-metals."})
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
        return _molecule(name, row)
    if name in _SOLID_NAMES:
        return _solid(name)
    if name in _CONDUCTORS:
        return _metal(name)
    element = find_element(name) if len(name) > 2 else None
    return None if element is None else _element(element)
