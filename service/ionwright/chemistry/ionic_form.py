"""The ionic form of an equation: dissolved salts, strong acids and alkalis written as the ions they give."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.compound import read_substance
from ionwright.chemistry.solubility import solubility
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from ionwright.chemistry.ionic_compound import Compound
    from ionwright.chemistry.species import Species
    from ionwright.chemistry.stoichiometry import Equation

__all__ = ["ionic_net"]

_DISSOLVES: Final = ("soluble", "sparing")


def ionic_net(whole: Equation) -> dict[Species, int]:
    """Return what an equation uses up of each species, ions counted singly; what forms is negative.

    Parameters
    ----------
    whole
        In whole numbers. If hydrogen stands in it, water is taken to be there: weak acids and what does not
        dissolve stay whole then. If not, every salt and oxide is counted as ions.
    """
    in_water = any(symbol == "H" for kind in (*whole.reactants, *whole.products) for symbol, _ in kind.atoms)
    net: dict[Species, int] = {}
    for side, sign in ((whole.left, 1), (whole.right, -1)):
        for term in side:
            for kind, number in _ions(term.species, in_water=in_water):
                net[kind] = net.get(kind, 0) + sign * number * int(term.coefficient)
    return {kind: number for kind, number in net.items() if number}


@lru_cache(maxsize=512)
def _ions(kind: Species, *, in_water: bool) -> tuple[tuple[Species, int], ...]:
    whole = ((kind, 1),)
    if kind.charge or len(kind.atoms) < 2:
        return whole
    try:
        compound = read_substance(kind.formula).compound
        if compound.formula != kind.formula or not _is_ionic(compound, in_water=in_water):
            return whole
    except IonwrightError:
        return whole
    return tuple((ion.species, number) for ion, number in compound.lattice_ions)


def _is_ionic(compound: Compound, *, in_water: bool) -> bool:
    if compound.role == "oxide":
        return not in_water
    if compound.role not in ("salt", "acid", "alkali") or compound.strength != "strong":
        return False
    kinds = [ion.species for ion, _ in compound.lattice_ions]
    cations, anions = ([k for k in kinds if k.charge > 0], [k for k in kinds if k.charge < 0])
    if not in_water or compound.role == "acid":
        return True
    return all(solubility(c, a).category in _DISSOLVES for c in cations for a in anions)
