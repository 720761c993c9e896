"""The rules of oxidation numbers, for a group of atoms with a charge."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

__all__ = ["NON_METALS", "numbers_by_rules"]

NON_METALS: Final = frozenset(
    "H He B C N O F Ne Si P S Cl Ar Ge As Se Br Kr Sb Te I Xe At Rn".split()  # noqa: SIM905
)
"""Elements that are counted as no metals here, the half-metals that form anions among them."""

_FIXED: Final = (
    dict.fromkeys(("Li", "Na", "K", "Rb", "Cs", "Fr"), 1)
    | dict.fromkeys(("Be", "Mg", "Ca", "Sr", "Ba", "Ra"), 2)
    | {"Al": 3}
)
_NEARLY_FIXED: Final = {"Ag": 1, "Zn": 2, "Cd": 2, "Sc": 3, "Y": 3, "La": 3, "Ga": 3}
_GIVE_WAY_TO_HYDROGEN: Final = frozenset(("B", "Si", "Ge", "Sn", "Pb"))
# what takes the electrons of what stands behind it, the strongest first; oxygen and fluorine have rules of
# their own
_TAKERS: Final = {
    "Cl": -1,
    "N": -3,
    "Br": -1,
    "I": -1,
    "S": -2,
    "Se": -2,
    "Te": -2,
    "C": -4,
    "P": -3,
    "As": -3,
}
_HIGHEST: Final = {
    **dict.fromkeys(("B", "Sc", "Y", "La"), 3),
    **dict.fromkeys(("C", "Si", "Ge", "Sn", "Pb", "Ti", "Zr", "Hf", "Ce", "Th"), 4),
    **dict.fromkeys(("N", "P", "As", "Sb", "Bi", "V", "Nb", "Ta"), 5),
    **dict.fromkeys(("S", "Se", "Te", "Cr", "Mo", "W", "U", "Fe"), 6),
    **dict.fromkeys(("Cl", "Br", "I", "Mn", "Tc", "Re"), 7),
    **dict.fromkeys(("Zn", "Cd", "Hg"), 2),
    **dict.fromkeys(("Xe", "Os", "Ru"), 8),
}

Numbers = dict[str, "Fraction | None"]


def numbers_by_rules(atoms: Mapping[str, int], charge: int) -> Numbers:
    """Return the oxidation number of each element in a group of atoms; None where the rules do not decide.

    Parameters
    ----------
    atoms
        Number of atoms of each element.
    charge
        Of the whole group.
    """
    found: Numbers = dict.fromkeys(atoms)
    undecided = dict(atoms)
    left = charge
    for element, value in _ruled(atoms):
        if len(undecided) == 1:
            break
        found[element] = Fraction(value)
        left -= value * undecided.pop(element)
    if len(undecided) == 1:
        ((element, number),) = undecided.items()
        found[element] = Fraction(left, number)
    elif not _decide_highest(found, undecided, left):
        _decide_spinel(found, undecided, left)
    return _with_peroxide(found, atoms)


def _ruled(atoms: Mapping[str, int]) -> Iterator[tuple[str, int]]:
    """Yield elements with the number that a rule gives them, the strongest rule first."""
    if "F" in atoms:
        yield "F", -1
    for element in atoms:
        if element in _FIXED:
            yield element, _FIXED[element]
    open_ = [element for element in atoms if element not in _FIXED and element not in ("H", "O", "F")]
    if "H" in atoms:
        if "B" in atoms and "N" in atoms:
            return
        yield "H", _of_hydrogen(atoms, open_)
    if "O" in atoms:
        yield "O", -2
    nearly = [element for element in open_ if element in _NEARLY_FIXED]
    for element in nearly:
        yield element, _NEARLY_FIXED[element]
    yield from _taken(atoms, [element for element in open_ if element not in nearly])


def _of_hydrogen(atoms: Mapping[str, int], open_: list[str]) -> int:
    """Return -1 where hydrogen is the strongest of all that is there, as in a hydride of a metal or boron."""
    if "O" in atoms or "F" in atoms:
        return 1
    weaker = (element not in NON_METALS or element in _GIVE_WAY_TO_HYDROGEN for element in open_)
    return -1 if all(weaker) else 1


def _taken(atoms: Mapping[str, int], open_: list[str]) -> Iterator[tuple[str, int]]:
    """Yield the non-metals that take electrons from the rest, as long as one is sure."""
    for element, value in _TAKERS.items():
        if element not in open_:
            continue
        if "O" in atoms and not _is_sure_beside_oxygen(element, atoms):
            return
        yield element, value


def _is_sure_beside_oxygen(element: str, atoms: Mapping[str, int]) -> bool:
    """Say whether an element keeps its negative number though oxygen is there."""
    if element in ("Cl", "Br", "I"):
        return True  # bound to what else there is: POCl3, COCl2, CrO2Cl2
    if element == "N":
        return "C" in atoms and atoms["O"] < 2 * atoms["N"]  # amides and cyanates, but not what may be nitro
    if element == "S":
        return "C" in atoms and set(atoms) == {"C", "O", "S"}
    return False


def _decide_highest(found: Numbers, undecided: Mapping[str, int], left: int) -> bool:
    """Decide elements that add up only if each has the most that its group allows, as in PW12O40^3-."""
    if found.get("O") is None or not all(element in _HIGHEST for element in undecided):
        return False
    if left != sum(_HIGHEST[element] * number for element, number in undecided.items()):
        return False
    found.update({element: Fraction(_HIGHEST[element]) for element in undecided})
    return True


def _decide_spinel(found: Numbers, undecided: Mapping[str, int], left: int) -> None:
    """Decide two metals that share oxygen as in FeCr2O4: the single one has 2, the other 3."""
    metals = {number: element for element, number in undecided.items() if element not in NON_METALS}
    if len(metals) != 2 or len(undecided) != 2 or found.get("O") is None:
        return
    (fewer, more) = sorted(metals)
    if more == 2 * fewer and left == 8 * fewer:
        found[metals[fewer]], found[metals[more]] = Fraction(2), Fraction(3)


def _with_peroxide(found: Numbers, atoms: Mapping[str, int]) -> Numbers:
    """Give the oxygen what an element cannot have, as in H2SO5: its atoms are partly those of a peroxide."""
    if found.get("O") != -2:
        return found
    for element, value in found.items():
        highest = _HIGHEST.get(element)
        if value is not None and highest is not None and value > highest:
            surplus = (value - highest) * atoms[element]
            return found | {element: Fraction(highest), "O": Fraction(-2) + surplus / atoms["O"]}
    return found
