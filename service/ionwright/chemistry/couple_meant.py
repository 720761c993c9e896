"""Find the couple of the table that a skeleton means."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, WATER, couples
from ionwright.chemistry.medium import ACIDIC, ALKALINE, NEUTRAL, for_medium
from ionwright.chemistry.skeleton import HYDRONIUM

if TYPE_CHECKING:
    from ionwright.chemistry.linear_system import Net
    from ionwright.chemistry.skeleton import Skeleton
    from ionwright.chemistry.species import Species
    from ionwright.chemistry.stoichiometry import Equation

__all__ = ["couple_meant"]

Pair = tuple["frozenset[Species]", "frozenset[Species]"]
_OF_THE_MEDIUM = frozenset((WATER, HYDROGEN_ION, HYDROXIDE))


def couple_meant(skeleton: Skeleton) -> Net | None:
    """Return what a couple of the table uses up and forms, if the skeleton has just its species; else None.

    Parameters
    ----------
    skeleton
        One that several equations fit, such as H2O2 -> O2, where water could also take part.
    """
    if skeleton.medium not in (ACIDIC, ALKALINE, NEUTRAL) or HYDRONIUM in skeleton.aids:
        return None
    half = _by_species().get((frozenset(skeleton.left), frozenset(skeleton.right)))
    if half is None:
        return None
    fitting = for_medium(half, skeleton.medium)
    if not {*skeleton.given.reactants} <= {*fitting.reactants}:
        return None
    if not {*skeleton.given.products} <= {*fitting.products}:
        return None
    net = {term.species: int(term.coefficient) for term in fitting.left}
    return net | {term.species: -int(term.coefficient) for term in fitting.right}


@cache
def _by_species() -> dict[Pair, Equation]:
    """Return the couples, in both directions, by the species on their sides that no medium supplies."""
    found: dict[Pair, Equation] = {}
    for couple in couples().values():
        for half in (couple.reduction, couple.reduction.reversed()):
            key = (
                frozenset(half.reactants) - _OF_THE_MEDIUM,
                frozenset(half.products) - _OF_THE_MEDIUM,
            )
            found.setdefault(key, half)
    return found
