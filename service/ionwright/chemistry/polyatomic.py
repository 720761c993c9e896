"""Take a formula apart into units whose charge is known: polyatomic ions, neutral ligands, and the rest."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.formula import Atom, Formula, Group
from ionwright.chemistry.oxidation_rules import NON_METALS

if TYPE_CHECKING:
    from ionwright.chemistry.formula import Parts

__all__ = ["Unit", "units_of"]

_NEUTRAL: Final = frozenset(
    "NH3 H2O CO N2H4 C2H4 PH3 PF3 N2H4CO CO(NH2)2 CH3CN C5H5N py C2H8N2 NH2CH2CH2NH2 H2NCH2CH2NH2"  # noqa: SIM905
    " C10H8N2 C12H8N2 C6H6 CH3OH C2H5OH".split()
)
_CHARGES: Final = {
    "NH4": 1, "OH": -1, "CN": -1, "SCN": -1, "NCS": -1, "OCN": -1, "CNO": -1, "N3": -1, "NO2": -1, "NO3": -1,
    "HS": -1, "SO3": -2, "HSO3": -1, "SO4": -2, "HSO4": -1, "S2O3": -2, "S4O6": -2, "SeO4": -2, "NH2SO3": -1,
    "CO3": -2, "HCO3": -1, "C2O4": -2, "HC2O4": -1, "HCOO": -1, "CH3COO": -1, "C2H3O2": -1, "C2H5COO": -1,
    "C6H5COO": -1, "C4H4O6": -2, "C6H5O7": -3, "PO4": -3, "HPO4": -2, "H2PO4": -1, "P2O7": -4, "H2PO2": -1,
    "AsO3": -3, "AsO4": -3, "CrO4": -2, "Cr2O7": -2, "CrO2": -1, "AlO2": -1, "BO2": -1, "BiO3": -1,
    "ZnO2": -2, "SiO3": -2, "WO4": -2, "MoO4": -2, "VO3": -1, "VO4": -3, "ClO": -1, "ClO2": -1, "ClO3": -1,
    "ClO4": -1, "BrO": -1, "BrO3": -1, "BrO4": -1, "IO3": -1, "IO4": -1,
}  # fmt: skip
"""Charge of each polyatomic ion that is known by its formula; those that come with several are left out."""
_NITRO: Final = frozenset(("CH3NO2", "C6H5NO2", "CCl3NO2"))


@dataclass(frozen=True, slots=True)
class Unit:
    """A part of a formula with its own charge; `charge` is None if nothing is known of its inside.

    Parameters
    ----------
    atoms
        Number of atoms of each element in one such unit.
    charge
        Of one such unit.
    number
        How many of them the formula holds.
    """

    atoms: dict[str, int]
    charge: int | None
    number: int = 1


def units_of(formula: Formula, charge: int) -> list[Unit]:
    """Return the units of a formula; what is in no known unit comes last, with the charge that is left.

    Parameters
    ----------
    formula
        As read; what follows a hydrate dot counts as neutral.
    charge
        Of the whole.
    """
    if _has_nitrosyl(formula.parts):
        return [Unit(formula.composition, None)]  # NO is bound as NO^+, NO or NO^-
    sorter = _Sorter(
        [Unit(attached.core_composition, 0, number) for number, attached in formula.attached], {}
    )
    if formula.text in _NITRO:
        sorter.units.append(Unit({"N": 1, "O": 2}, -1))
        sorter.rest = {e: n for e, n in formula.core_composition.items() if e not in ("N", "O")}
    else:
        sorter.sort(formula.parts, 1, is_salt=_is_salt(formula))
    left = charge - sum(unit.number * (unit.charge or 0) for unit in sorter.units)
    if sorter.rest:
        return [*sorter.units, Unit(sorter.rest, left)]
    # units alone that do not add up are none: (CN)2 is not made of cyanide
    return sorter.units if not left else [Unit(formula.composition, charge)]


def _has_nitrosyl(parts: Parts) -> bool:
    return any(
        isinstance(part, Group) and (_inside(part) == "NO" or _has_nitrosyl(part.parts)) for part in parts
    )


def _inside(group: Group) -> str:
    return "".join(part.text for part in group.parts)


def _is_salt(formula: Formula) -> bool:
    """Say whether there is a metal, or ammonium, that polyatomic ions can be bound to."""
    return formula.text.startswith(("NH4", "(NH4)")) or any(
        element not in NON_METALS for element in formula.core_composition
    )


@dataclass(slots=True)
class _Sorter:
    """Collects the units of a formula, and the atoms that are in none."""

    units: list[Unit]
    rest: dict[str, int]

    def sort(self, parts: Parts, times: int, *, is_salt: bool) -> None:
        """Sort parts, the whole of them so many times."""
        for are_atoms, run in groupby(parts, lambda part: isinstance(part, Atom)):
            if are_atoms:
                atoms = [part for part in run if isinstance(part, Atom)]
                self._sort_atoms(atoms, times, is_salt=is_salt, is_all=len(atoms) == len(parts))
                continue
            for group in run:
                if isinstance(group, Group):
                    self._sort_group(group, times * group.count, is_salt=is_salt)

    def _sort_group(self, group: Group, times: int, *, is_salt: bool) -> None:
        inside = _inside(group)
        charge = 0 if inside in _NEUTRAL else _CHARGES.get(inside)
        if charge is None:
            self.sort(group.parts, times, is_salt=is_salt)
        else:
            self.units.append(Unit(Formula(group.parts).core_composition, charge, times))

    def _sort_atoms(self, atoms: list[Atom], times: int, *, is_salt: bool, is_all: bool) -> None:
        if [atom.text for atom in atoms[:2]] == ["N", "H4"]:
            self.units.append(Unit({"N": 1, "H": 4}, 1, times))
            atoms, is_all = atoms[2:], False
        start = len(atoms)
        if is_salt:
            ends = (at for at in range(is_all, len(atoms)) if _text(atoms[at:]) in _CHARGES)
            start = next(ends, len(atoms))
        if start < len(atoms):
            ion = Formula(tuple(atoms[start:])).core_composition
            self.units.append(Unit(ion, _CHARGES[_text(atoms[start:])], times))
        for atom in atoms[:start]:
            self.rest[atom.symbol] = self.rest.get(atom.symbol, 0) + times * atom.count


def _text(atoms: list[Atom]) -> str:
    return "".join(atom.text for atom in atoms)
