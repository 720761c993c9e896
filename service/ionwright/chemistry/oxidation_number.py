"""Oxidation numbers of the elements in a species, by the rules of school; undecided where the rules are."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.formula import read_formula
from ionwright.chemistry.oxidation_rules import numbers_by_rules
from ionwright.chemistry.polyatomic import Unit, units_of

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species

__all__ = ["OxidationNumber", "oxidation_numbers"]


@dataclass(frozen=True, slots=True)
class OxidationNumber:
    """The oxidation number of an element in a species.

    Parameters
    ----------
    element
        Symbol of the element.
    value
        None if the rules do not decide it.
    atoms
        How many atoms of the species have it.
    is_average
        True if the atoms are not all alike, so that the value is their average.
    states
        What the atoms have one by one where that is known of an average: pairs of number and atoms.
    because
        Why it is not decided, in a sentence; empty if it is.
    """

    element: str
    value: Fraction | None
    atoms: int
    is_average: bool = False
    states: tuple[tuple[int, int], ...] = ()
    because: str = ""


# oxides and sulfides whose atoms are known to differ, to be paired or to share, which no rule can find
_MIXED: Final[dict[str, dict[str, tuple[tuple[int, int], ...]]]] = {
    "Fe3O4": {"Fe": ((2, 1), (3, 2))},
    "Mn3O4": {"Mn": ((2, 1), (3, 2))},
    "Co3O4": {"Co": ((2, 1), (3, 2))},
    "Pb3O4": {"Pb": ((2, 2), (4, 1))},
    "CrO5": {"Cr": ((6, 1),), "O": ((-2, 1), (-1, 4))},
    "FeS2": {"Fe": ((2, 1),), "S": ((-1, 2),)},
    "CoS2": {"Co": ((2, 1),), "S": ((-1, 2),)},
    "NiS2": {"Ni": ((2, 1),), "S": ((-1, 2),)},
    "MnS2": {"Mn": ((2, 1),), "S": ((-1, 2),)},
    "CuFeS2": {"Cu": ((1, 1),), "Fe": ((3, 1),)},
    "FeTiO3": {"Fe": ((2, 1),), "Ti": ((4, 1),)},
}
_UNLIKE: Final = {"S2O3": "S", "S4O6": "S", "N2O": "N"}  # whole averages of atoms that are not alike

_ALIKE: Final = frozenset(("H2C2O4", "C2H2", "C2H4", "C2H6", "C6H6", "C6H12"))


@lru_cache(maxsize=2048)
def oxidation_numbers(kind: Species) -> tuple[OxidationNumber, ...]:
    """Return the oxidation numbers in a species, in the order of its elements; none for the electron.

    Parameters
    ----------
    kind
        Any species. Known polyatomic ions and neutral ligands in it are taken as units, so that an element can
        stand there twice: nitrogen in NH4NO3 has -3 and +5.

    Notes
    -----
    A free element has 0, a simple ion its charge. In compounds fluorine has -1, metals of group 1 +1, of
    group 2 +2, aluminium +3, hydrogen +1 (-1 with metals), oxygen -2, halides -1; what is left over belongs to
    the one element that remains. Where oxygen would leave an element more than its group allows, the oxygen is
    that of a peroxide.

    Example
    -------
    >>> from ionwright.chemistry.species import species
    >>> [(found.element, str(found.value)) for found in oxidation_numbers(species("S4O6^2-"))]
    [('S', '5/2'), ('O', '-2')]
    """
    if kind.is_electron:
        return ()
    if len(kind.atoms) == 1:
        ((element, atoms),) = kind.atoms
        charge = Fraction(kind.charge, atoms)
        return (OxidationNumber(element, charge, atoms, charge.denominator > 1),)
    if kind.formula in _MIXED and not kind.charge:
        return _mixed(kind)
    found: dict[tuple[str, Fraction | None, str], list[tuple[int, bool]]] = {}
    for unit in units_of(read_formula(kind.formula), kind.charge):
        numbers_of_unit = _of_unit(unit)
        because = _why_open(unit, numbers_of_unit)
        for element, value in numbers_of_unit.items():
            atoms = unit.atoms[element] * unit.number
            key = (element, value, because if value is None else "")
            found.setdefault(key, []).append((atoms, _is_average(element, value, unit)))
    order = [element for element, _ in kind.atoms]
    numbers = [
        OxidationNumber(element, value, sum(n for n, _ in parts), any(mark for _, mark in parts), (), because)
        for (element, value, because), parts in found.items()
    ]
    return tuple(sorted(numbers, key=lambda number: order.index(number.element)))


def _of_unit(unit: Unit) -> dict[str, Fraction | None]:
    if unit.charge is None:
        return dict.fromkeys(unit.atoms)
    return numbers_by_rules(unit.atoms, unit.charge)


def _why_open(unit: Unit, numbers: dict[str, Fraction | None]) -> str:
    """Say why the rules leave elements of a unit open; empty if they leave none."""
    if unit.charge is None:
        return "NO can be bound as NO^+, NO or NO^-, and the formula does not say which."
    *others, last = [element for element, value in numbers.items() if value is None] or [""]
    if not last:
        return ""
    open_ = f"{', '.join(others)} or {last}" if others else last
    return f"No rule fixes {open_} here, and the charge alone does not say how they share."


def _is_average(element: str, value: Fraction | None, unit: Unit) -> bool:
    """Say whether the atoms of a unit share a number that need not be that of each."""
    if value is None:
        return False
    is_chain = element == "C" and unit.atoms["C"] > 1 and "H" in unit.atoms and _name(unit) not in _ALIKE
    return value.denominator > 1 or is_chain or _UNLIKE.get(_name(unit)) == element


def _name(unit: Unit) -> str:
    return "".join(f"{element}{'' if n == 1 else n}" for element, n in unit.atoms.items())


def _mixed(kind: Species) -> tuple[OxidationNumber, ...]:
    states = _MIXED[kind.formula]
    numbers = []
    for element, atoms in kind.atoms:
        pairs = states.get(element, ((-2, atoms),))
        value = Fraction(sum(number * count for number, count in pairs), atoms)
        several = len(pairs) > 1
        numbers.append(OxidationNumber(element, value, atoms, several, pairs if several else ()))
    return tuple(numbers)
