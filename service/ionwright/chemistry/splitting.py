"""Split whole redox equations into their half-equations."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import gcd, lcm
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.couple import HYDROGEN_ION, WATER
from ionwright.chemistry.ionic_form import ionic_net
from ionwright.chemistry.linear_system import LinearSystem
from ionwright.chemistry.net_equation import equation_of, for_neutral
from ionwright.chemistry.oxidation_change import rises_in
from ionwright.chemistry.positive_combination import primitive_whole
from ionwright.chemistry.skeleton import OXIDE, in_order
from ionwright.chemistry.species import ELECTRON

if TYPE_CHECKING:
    from collections.abc import Iterator

    from ionwright.chemistry.linear_system import Net
    from ionwright.chemistry.skeleton import Skeleton
    from ionwright.chemistry.species import Species
    from ionwright.chemistry.stoichiometry import Equation

__all__ = ["Halves", "split"]

_BEST_RANK: Final = 3
_LEAST_RANK: Final = (
    2  # below this, something is oxidised in the reduction: no split that a teacher would show
)


@dataclass(frozen=True, slots=True)
class Halves:
    """The two half-equations of a whole redox equation, each with what it is multiplied by."""

    reduction: Equation
    oxidation: Equation
    reduction_multiplier: int
    oxidation_multiplier: int
    electrons: int


@lru_cache(maxsize=256)
def split(whole: Equation, skeleton: Skeleton) -> Halves | None:
    """Split a whole equation into two equations with electrons of which it is the sum; None if that cannot be.

    Parameters
    ----------
    whole
        A balanced equation without electrons, in whole numbers.
    skeleton
        What was given, and what the medium offers.

    Notes
    -----
    One of them is an edge of what is possible: as many of the given species as can be are missing in it. What
    it leaves of the whole is the other. Pairs are preferred in which all that changes is oxidised in the one
    and reduced in the other, then those in which something of the whole becomes something of the whole.
    """
    best, best_rank = None, _LEAST_RANK - 1
    for net, aids in _ways_to_split(whole, skeleton):
        left = tuple(kind for kind, number in net.items() if number > 0 and kind not in aids)
        right = tuple(kind for kind, number in net.items() if number < 0 and kind not in aids)
        solutions = LinearSystem((ELECTRON, *aids), left, right).solutions()
        for part in solutions.independent():
            other = _rest(net, part, (*left, *right))
            if part[ELECTRON] * other[ELECTRON] >= 0:
                continue
            reduction, oxidation = (part, other) if part[ELECTRON] > 0 else (other, part)
            halves = _joined(reduction, oxidation, net, skeleton)
            rank = 2 * _is_pure(halves) + _is_plain(halves, net)
            if rank > best_rank:
                best, best_rank = halves, rank
            if rank == _BEST_RANK:
                return halves
    return best


def _is_pure(halves: Halves) -> bool:
    """Say whether nothing is oxidised in the reduction, and nothing reduced in the oxidation."""
    return all(rise < 0 for rise in rises_in(halves.reduction).values()) and all(
        rise > 0 for rise in rises_in(halves.oxidation).values()
    )


def _ways_to_split(whole: Equation, skeleton: Skeleton) -> Iterator[tuple[Net, tuple[Species, ...]]]:
    """Yield the equation, as it is or as ions, with what may stand on either side of its half-equations."""
    net = {term.species: int(term.coefficient) for term in whole.left}
    net |= {term.species: -int(term.coefficient) for term in whole.right}
    if not skeleton.aids:
        ions = ionic_net(whole)
        if ions and ions != net:
            yield ions, ()
            yield ions, (OXIDE,) if OXIDE in ions else (WATER, HYDROGEN_ION)
    yield net, skeleton.aids
    written = {term.species for term in (*skeleton.given.left, *skeleton.given.right)}
    if written & {*skeleton.aids}:
        yield net, tuple(kind for kind in skeleton.aids if kind not in written)
    if WATER not in skeleton.aids:
        yield net, (WATER, HYDROGEN_ION)
    if OXIDE not in skeleton.aids and not any(symbol == "H" for kind in net for symbol, _ in kind.atoms):
        yield net, (OXIDE,)


def _is_plain(halves: Halves, whole: Net) -> bool:
    """Say whether in both something that the whole uses up becomes something that the whole forms."""
    return all(
        any(whole.get(kind, 0) > 0 for kind in half.reactants)
        and any(whole.get(kind, 0) < 0 for kind in half.products)
        for half in (halves.reduction, halves.oxidation)
    )


def _rest(whole: Net, part: Net, bound: tuple[Species, ...]) -> Net:
    """Return what is left of an equation when as much as can be of a part is taken away, in smallest numbers."""
    over, under = 0, 1  # the share of the part, as a fraction
    for kind in bound:
        number, of_part = abs(whole.get(kind, 0)), abs(part[kind])
        if of_part and (not over or number * under < over * of_part):
            over, under = number, of_part
    kinds = dict.fromkeys((*whole, *part))
    left = primitive_whole([under * whole.get(kind, 0) - over * part.get(kind, 0) for kind in kinds])
    return dict(zip(kinds, left, strict=True))


def _joined(reduction: Net, oxidation: Net, whole: Net, skeleton: Skeleton) -> Halves:
    gained, lost = reduction[ELECTRON], -oxidation[ELECTRON]
    order = in_order((*whole, *reduction, *oxidation))
    return Halves(
        reduction=equation_of(for_neutral(reduction, skeleton), order),
        oxidation=equation_of(for_neutral(oxidation, skeleton), order),
        reduction_multiplier=lost // gcd(gained, lost),
        oxidation_multiplier=gained // gcd(gained, lost),
        electrons=lcm(gained, lost),
    )
