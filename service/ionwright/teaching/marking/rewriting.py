"""Ways of writing a line that come to the same: other formulas of one substance, H3O^+, whole ionic compounds."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING

from ionwright.chemistry.compound import read_substance
from ionwright.errors import IonwrightError
from ionwright.teaching.marking.line import HYDROGEN_ION, HYDRONIUM, WATER, Amounts, Line

if TYPE_CHECKING:
    from collections.abc import Mapping

    from ionwright.chemistry.equation import Number
    from ionwright.chemistry.species import Species
    from ionwright.teaching.marking.expectation import Expectation

__all__ = ["ions_of", "split", "with_known_formulas", "without_hydronium"]

Parts = tuple[tuple["Species", int], ...]


def with_known_formulas(line: Line, expectation: Expectation) -> Line:
    """The line with each species spelt as the question spells it: C2H5OH for CH3CH2OH, HO^- for OH^-."""
    unknown = [kind for side in (line.left, line.right) for kind in side if kind not in expectation.known]
    if not unknown:
        return line
    spelt = {_matter(kind): kind for kind in expectation.known}
    same: dict[Species, Parts] = {
        kind: ((found, 1),) for kind in unknown if (found := spelt.get(_matter(kind))) is not None
    }
    return replace(line, left=_apart(line.left, same), right=_apart(line.right, same)) if same else line


def _matter(kind: Species) -> tuple[int, frozenset[tuple[str, int]]]:
    return kind.charge, frozenset(kind.atoms)


def without_hydronium(line: Line) -> Line:
    """The line with H^+ for H3O^+, the water that comes with it cancelled."""
    if HYDRONIUM not in line.left and HYDRONIUM not in line.right:
        return line
    left, right = _dehydrated(line.left), _dehydrated(line.right)
    both = min(left.get(WATER, 0), right.get(WATER, 0))
    return replace(line, left=_less(left, WATER, both), right=_less(right, WATER, both))


def _dehydrated(amounts: Mapping[Species, Number]) -> Amounts:
    found = dict(amounts)
    number = found.pop(HYDRONIUM, 0)
    if number:
        found[HYDROGEN_ION] = found.get(HYDROGEN_ION, 0) + number
        found[WATER] = found.get(WATER, 0) + number
    return found


def _less(amounts: Amounts, kind: Species, number: Number) -> Amounts:
    left_over = {**amounts, kind: amounts.get(kind, 0) - number}
    return {one: amount for one, amount in left_over.items() if amount}


def split(line: Line, expectation: Expectation) -> Line | None:
    """The line with whole ionic compounds written as their ions; None if it holds none."""
    compounds = {
        kind: parts
        for side in (line.left, line.right)
        for kind in side
        if kind not in expectation.known and (parts := ions_of(kind))
    }
    if not compounds:
        return None
    left, right = _apart(line.left, compounds), _apart(line.right, compounds)
    return replace(line, left=left, right=right)


def _apart(amounts: Mapping[Species, Number], compounds: Mapping[Species, Parts]) -> Amounts:
    found: Amounts = {}
    for kind, amount in amounts.items():
        for part, count in compounds.get(kind, ((kind, 1),)):
            found[part] = found.get(part, 0) + amount * count
    return found


def ions_of(kind: Species) -> Parts:
    """The ions of a compound that is split into them when it dissolves or melts; none for anything else."""
    if kind.charge or len(kind.atoms) < 2 or kind == WATER or len(kind.formula) > 40:
        return ()
    return _ions_of_compound(kind.formula)


@lru_cache(maxsize=512)
def _ions_of_compound(formula: str) -> Parts:
    try:
        compound = read_substance(formula).compound
    except IonwrightError:
        return ()
    if compound.role == "water" or compound.strength == "weak":
        return ()  # nearly all of it stays whole
    return tuple((one.species, n) for one, n in compound.lattice_ions)
