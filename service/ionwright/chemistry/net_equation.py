"""From net amounts of species to an equation as teachers write it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, WATER
from ionwright.chemistry.medium import NEUTRAL
from ionwright.chemistry.skeleton import HYDRONIUM
from ionwright.chemistry.species import ELECTRON
from ionwright.chemistry.stoichiometry import Equation, Term

if TYPE_CHECKING:
    from ionwright.chemistry.linear_system import Net
    from ionwright.chemistry.skeleton import Skeleton
    from ionwright.chemistry.species import Species

__all__ = ["equation_of", "for_neutral", "with_ions_of"]


def equation_of(net: Net, order: tuple[Species, ...]) -> Equation:
    """Return the equation with these numbers, its terms in this order.

    Parameters
    ----------
    net
        What is used up of each species; what forms is negative.
    order
        All species that may stand in it.
    """
    left = tuple([Term(kind, net[kind]) for kind in order if net.get(kind, 0) > 0])
    right = tuple([Term(kind, -net[kind]) for kind in order if net.get(kind, 0) < 0])
    return Equation(left, right)


def for_neutral(net: Net, skeleton: Skeleton) -> Net:
    """Let water stand in for hydrogen or hydroxide ions that a neutral solution would have to supply.

    Parameters
    ----------
    net
        What is used up of each species; what forms is negative.
    skeleton
        What was given; an ion that was given on the left may be used up.

    Notes
    -----
    A neutral solution uses up neither ion, but may form either: ``Al -> [Al(OH)4]^-`` leaves hydrogen ions, since
    the hydroxide of the complex can only come from water. Where water was given as the only product, as in
    ``O2 -> H2O``, hydrogen ions are used up after all; otherwise water would be what reacts.
    """
    if skeleton.medium != NEUTRAL:
        return net
    on_left = {term.species for term in skeleton.given.left}
    made = dict(net)
    for ion, other in ((HYDROGEN_ION, HYDROXIDE), (HYDRONIUM, HYDROXIDE), (HYDROXIDE, HYDROGEN_ION)):
        used = net.get(ion, 0)
        if used > 0 and ion in skeleton.aids and ion not in on_left:
            made[ion] = 0
            made[other] = made.get(other, 0) - used
            made[WATER] = made.get(WATER, 0) + (2 * used if ion == HYDRONIUM else used)
    forms_water_alone = {term.species for term in skeleton.given.right} - {ELECTRON} == {WATER}
    return net if forms_water_alone and net.get(WATER, 0) < 0 <= made[WATER] else made


def with_ions_of(net: Net, skeleton: Skeleton) -> Net:
    """Write hydrogen ions as the ions that the medium holds: H3O^+ where it was given, OH^- in alkali.

    Parameters
    ----------
    net
        What is used up of each species; what forms is negative.
    skeleton
        What was given, and what the medium offers.
    """
    number = net.get(HYDROGEN_ION, 0)
    if not number or HYDROGEN_ION in skeleton.aids:
        return net
    made = {kind: n for kind, n in net.items() if kind != HYDROGEN_ION}
    water = made.get(WATER, 0)
    if HYDROXIDE in skeleton.aids:
        return made | {WATER: water + number, HYDROXIDE: made.get(HYDROXIDE, 0) - number}
    return made | {WATER: water - number, HYDRONIUM: made.get(HYDRONIUM, 0) + number}
