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
Base = tuple[int, "frozenset[tuple[str, int]]"]
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
    if half is not None:
        net = _net(for_medium(half, skeleton.medium))
    elif skeleton.medium == ACIDIC and (half := _of_bases().get(_bases_in(skeleton))) is not None:
        net = _with_acids(_net(for_medium(half, ACIDIC)), (*skeleton.left, *skeleton.right))
    else:
        return None
    if all(net.get(kind, 0) > 0 for kind in skeleton.given.reactants) and all(
        net.get(kind, 0) < 0 for kind in skeleton.given.products
    ):
        return net
    return None


def _net(half: Equation) -> dict[Species, int]:
    net = {term.species: int(term.coefficient) for term in half.left}
    return net | {term.species: -int(term.coefficient) for term in half.right}


def _with_acids(net: dict[Species, int], wanted: tuple[Species, ...]) -> dict[Species, int]:
    """The same change with these species in place of those that differ from them in hydrogen ions alone."""
    acids = {_base(kind): kind for kind in wanted}
    made = {HYDROGEN_ION: 0}
    for kind, number in net.items():
        acid = kind if kind in _OF_THE_MEDIUM or kind.is_electron else acids[_base(kind)]
        made[acid] = made.get(acid, 0) + number
        made[HYDROGEN_ION] -= number * (acid.charge - kind.charge)
    return made


def _base(kind: Species) -> Base:
    """What an acid and its base have in common: the atoms but hydrogen, and hydrogen less the charge."""
    atoms = dict(kind.atoms)
    return atoms.pop("H", 0) - kind.charge, frozenset(atoms.items())


def _bases_in(skeleton: Skeleton) -> tuple[frozenset[Base], frozenset[Base]]:
    return frozenset(map(_base, skeleton.left)), frozenset(map(_base, skeleton.right))


@cache
def _of_bases() -> dict[tuple[frozenset[Base], frozenset[Base]], Equation]:
    """Return the couples by their species without telling an acid from its base: CH3COOH is as CH3COO^-."""
    found: dict[tuple[frozenset[Base], frozenset[Base]], Equation] = {}
    for (left, right), half in _by_species().items():
        found.setdefault((frozenset(map(_base, left)), frozenset(map(_base, right))), half)
    return found


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
