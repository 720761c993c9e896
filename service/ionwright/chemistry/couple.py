"""Redox couples: an oxidised and a reduced form with a standard potential and the source of the figure."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from ionwright.chemistry.equation import Equation, equation
from ionwright.chemistry.species import Species, species
from ionwright.chemistry.tables import read_table

HYDROGEN_ION = species("H^+")
HYDROXIDE = species("OH^-")
WATER = species("H2O")
_MEDIUM_SPECIES = frozenset({HYDROGEN_ION, HYDROXIDE, WATER})


@dataclass(frozen=True, slots=True)
class Couple:
    """One row of the table of standard potentials.

    Parameters
    ----------
    name
        Unique label such as ``"Ni2+/Ni"``.
    reduction
        The half-equation written as a reduction.
    potential_V
        Standard potential against the standard hydrogen electrode at 298.15 K [V].
    printed_V
        The figure as school data sheets print it, to two decimals [V].
    on_school_sheet
        Whether the couple stands on the data sheets of school courses.
    slow_reduction, slow_oxidation
        Why the process does not run at an ordinary electrode in spite of its potential; empty if it does.
    is_reduction_listed
        False for a reduction so far from any school cell that naming it would only confuse.
    medium
        The medium for which the half-equation is written: ``"acid"``, ``"alkali"``, another word
        of the table, or ``"any"``.
    source
        Key into the ``[sources]`` table of couples.toml.
    """

    name: str
    reduction: Equation
    potential_V: float
    printed_V: float
    on_school_sheet: bool
    slow_reduction: str
    slow_oxidation: str
    is_reduction_listed: bool
    medium: str
    source: str
    verified: bool

    @property
    def oxidised(self) -> tuple[Species, ...]:
        """The reactants of the reduction that the medium does not supply."""
        return tuple(s for s in self.reduction.reactants if s not in _MEDIUM_SPECIES)

    @property
    def reduced(self) -> tuple[Species, ...]:
        """The products of the reduction that the medium does not supply."""
        return tuple(s for s in self.reduction.products if s not in _MEDIUM_SPECIES)


def _couple(row: dict[str, object]) -> Couple:
    potential_V = float(str(row["potential_V"]))
    return Couple(
        name=str(row["id"]),
        reduction=equation(str(row["equation"])),
        potential_V=potential_V,
        printed_V=round(float(str(row.get("school_V", potential_V))), 2),
        on_school_sheet=bool(row.get("on_school_sheet", False)),
        slow_reduction=str(row.get("slow_reduction", "")),
        slow_oxidation=str(row.get("slow_oxidation", "")),
        is_reduction_listed=bool(row.get("reduction_listed", True)),
        medium=str(row.get("medium", "any")),
        source=str(row["source"]),
        verified=bool(row["verified"]),
    )


@cache
def couples() -> dict[str, Couple]:
    """Every couple of the table, by name, in the order of the file."""
    rows = read_table("couples.toml")["couple"]
    return {couple.name: couple for couple in map(_couple, rows)}


@cache
def metal_couples() -> dict[str, tuple[Couple, ...]]:
    """For each metal symbol, the couples in which its simple ion gives the metal; school-sheet couples first."""
    found: dict[str, list[Couple]] = {}
    for couple in couples().values():
        (ion, *others), reduced = couple.oxidised or (WATER,), couple.reduced
        is_simple = not others and len(ion.atoms) == 1 and ion.charge > 0
        if is_simple and len(reduced) == 1 and reduced[0].ascii == ion.atoms[0][0]:
            found.setdefault(reduced[0].formula, []).append(couple)
    return {
        metal: tuple(sorted(rows, key=lambda c: (not c.on_school_sheet, -c.potential_V)))
        for metal, rows in found.items()
    }
