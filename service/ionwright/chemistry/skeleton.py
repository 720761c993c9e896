"""Skeletons: what someone gives to be balanced, and what the medium adds to it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, WATER, couples
from ionwright.chemistry.equation import read_equation
from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import ACIDIC, ALKALINE, MOLTEN, NEUTRAL
from ionwright.chemistry.species import ELECTRON, species
from ionwright.chemistry.stoichiometry import Equation, Term

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from ionwright.chemistry.species import Species
    from ionwright.chemistry.stoichiometry import Number

__all__ = [
    "HYDRONIUM",
    "MAX_TERMS_IN_ALL",
    "MEDIA",
    "NONE",
    "OXIDE",
    "Skeleton",
    "in_order",
    "in_usual_spelling",
    "known_species",
    "make_skeleton",
    "other_readings",
    "read_skeleton",
    "readings_by_side",
]

NONE: Final = "none"
MEDIA: Final = (ACIDIC, ALKALINE, NEUTRAL, MOLTEN, NONE)
"""The media, by what they add: see `Skeleton`."""
MAX_TERMS_IN_ALL: Final = 40
"""Most terms of a skeleton."""

OXIDE: Final = species("O^2-")
HYDRONIUM: Final = species("H3O^+")
_ACID_IONS: Final = (HYDROGEN_ION, HYDRONIUM)
_LAST: Final = (WATER, *_ACID_IONS, HYDROXIDE, ELECTRON)
_LAST_IN_MELT: Final = (WATER, *_ACID_IONS, HYDROXIDE, OXIDE, ELECTRON)
_USUAL: Final = {
    (frozenset(kind.atoms), kind.charge): kind for kind in (WATER, HYDROXIDE, HYDRONIUM)
}  # also written HOH or OH2, HO^-, OH3^+


# ions that stand in exercises more often than in tables, for texts without carets such as IO65-
_IN_EXERCISES: Final = (
    "AlO2^-", "AsO2^-", "AsO3^3-", "BiO3^-", "BrO2^-", "CNO^-", "CrO2^-", "Cr(OH)4^-", "Cr(OH)6^3-", "FeO2^-",
    "H2AsO4^-", "H2PO2^-", "H2PO3^-", "HPbO2^-", "HPO3^2-", "HSO5^-", "HSeO3^-", "HXeO4^-", "IO^-", "IO2^-",
    "IO6^5-", "H3IO6^2-", "MnO4^3-", "PbO2^2-", "PbO3^2-", "PO3^3-", "S2^2-", "S4^2-", "S5^2-", "S2O4^2-",
    "S2O5^2-", "S2O6^2-", "SbO3^-", "SeO3^2-", "SiO4^4-", "SnO2^2-", "SnO3^2-", "TeO3^2-", "TeO4^2-",
    "UO2^2+", "VO2^+", "VO4^3-", "XeO6^4-", "ZnO2^2-", "N2H5^+", "NH3OH^+", "[Cr(OH)4]^-", "[Zn(OH)4]^2-",
)  # fmt: skip


def in_order(kinds: Iterable[Species], last: tuple[Species, ...] = _LAST) -> tuple[Species, ...]:
    """Return species in the order in which teachers write them: water, its ions and the electron last.

    Parameters
    ----------
    kinds
        Species in any number and order.
    last
        What stands at the end, whether it is among them or not.
    """
    ends = dict.fromkeys(last)
    return (*dict.fromkeys([kind for kind in kinds if kind not in ends]), *last)


@dataclass(frozen=True, slots=True)
class Skeleton:
    """What is to be balanced.

    Parameters
    ----------
    given
        The equation as it was read; its numbers need not be right.
    medium
        One of `MEDIA`.
    left, right
        Species that must stand on their side.
    aids
        What the medium offers; each may end up on either side, or nowhere.
    spectators
        Species that were given on both sides.
    dropped
        Ions that were given but that the medium does not hold.
    """

    given: Equation
    medium: str
    left: tuple[Species, ...]
    right: tuple[Species, ...]
    aids: tuple[Species, ...]
    spectators: tuple[Species, ...] = ()
    dropped: tuple[Species, ...] = ()

    @property
    def has_electrons(self) -> bool:
        """True if electrons were given."""
        return ELECTRON in {term.species for term in (*self.given.left, *self.given.right)}

    @property
    def order(self) -> tuple[Species, ...]:
        """All species in the order in which teachers write them: what is given, water, its ions, electrons."""
        last = _LAST_IN_MELT if OXIDE in self.aids else _LAST
        return in_order([term.species for term in (*self.given.left, *self.given.right)], last)

    def coefficients(self) -> dict[Species, Number]:
        """Return the numbers that were given to the species that must keep their side."""
        found: dict[Species, Number] = {}
        bound = {*self.left, *self.right}
        for term in (*self.given.left, *self.given.right):
            if term.species in bound:
                found[term.species] = found.get(term.species, 0) + term.coefficient
        return found


@cache
def known_species() -> frozenset[Species]:
    """Species of the tables, by which texts are read that can be read in several ways."""
    in_couples = (kind for couple in couples().values() for kind in (*couple.oxidised, *couple.reduced))
    return frozenset((*IONS, *in_couples, *map(species, _IN_EXERCISES), WATER, HYDRONIUM, OXIDE))


def read_skeleton(text: str) -> Equation:
    """Return the equation that a text spells; it need not balance.

    Raises
    ------
    FormulaError
        If it cannot be read, or has more than 40 terms.
    """
    given = read_equation(text, known_species())
    terms = len(given.left) + len(given.right)
    if terms > MAX_TERMS_IN_ALL:
        detail, remedy = (
            f"An equation of {terms} terms is too long.",
            f"Write at most {MAX_TERMS_IN_ALL} terms.",
        )
        raise FormulaError("unreadable-formula", detail, position=0, remedy=remedy)
    return given


def other_readings(text: str, given: Equation) -> Iterator[Equation]:
    """Yield what else a text can mean: ``VO2+`` is VO^2+, or VO2^+ where the first makes no sense.

    Parameters
    ----------
    text
        As for `read_skeleton`.
    given
        The likeliest reading.
    """
    charged = [term.species for term in (*given.left, *given.right) if term.species.charge]
    if text.count("^") == len(charged):
        return  # each charge stands behind its caret
    known, seen = known_species(), {given}
    for kind in dict.fromkeys(charged):
        if not any(map(str.isdigit, kind.ascii)):
            continue  # there is no number to share between atoms and charge
        other = read_equation(text, known - {kind})
        if other not in seen:
            seen.add(other)
            yield other


def readings_by_side(others: Iterable[Equation], given: Equation) -> Iterator[Equation]:
    """Yield what a text can mean if one side is read otherwise: ``VO2+ -> VO2+`` as VO^2+ -> VO2^+, and back.

    Parameters
    ----------
    others
        Other readings of the whole, as of `other_readings`.
    given
        The likeliest reading.

    Notes
    -----
    Only well-known species are made of it, so that a plain slip such as ``Cu2+ -> Cu2+`` gains no meaning.
    """
    known, written = known_species(), (*given.reactants, *given.products, ELECTRON)
    for other in others:
        kinds = [term.species for term in (*other.left, *other.right)]
        if all(kind in known or kind in written for kind in kinds):
            yield Equation(given.left, other.right)
            yield Equation(other.left, given.right)


@lru_cache(maxsize=2048)
def _usual(kind: Species) -> Species:
    return _USUAL.get((frozenset(kind.atoms), kind.charge), kind)


def in_usual_spelling(given: Equation) -> Equation:
    """Return the equation with water and its ions as they are usually written: OH^- for HO^-, H2O for HOH.

    Parameters
    ----------
    given
        As it was read.
    """
    terms = (*given.left, *given.right)
    if all(_usual(term.species) is term.species for term in terms):
        return given
    left, right = (
        tuple(Term(_usual(term.species), term.coefficient, term.state) for term in side)
        for side in (given.left, given.right)
    )
    return Equation(left, right)


def make_skeleton(given: Equation, medium: str) -> Skeleton:
    """Sort what is given: what must keep its side, what the medium offers anyway, what it does not hold.

    Parameters
    ----------
    given
        The equation as it was read.
    medium
        One of `MEDIA`.
    """
    on_left, on_right = _distinct(given.left), _distinct(given.right)
    everything = on_left | on_right
    aids = _aids(medium, everything)
    foreign = tuple([kind for kind in _foreign(medium) if kind in everything])
    settled = {*aids, *foreign}
    bound_left = [kind for kind in on_left if kind not in settled]
    bound_right = [kind for kind in on_right if kind not in settled]
    if not bound_left and not bound_right:  # nothing but what the medium holds: it is taken as it was written
        aids = tuple([kind for kind in aids if kind not in everything])
        foreign = ()
        bound_left, bound_right = list(on_left), list(on_right)
    spectators = tuple([kind for kind in bound_left if kind in on_right])
    if spectators:
        bound_left = [kind for kind in bound_left if kind not in spectators]
        bound_right = [kind for kind in bound_right if kind not in spectators]
    return Skeleton(given, medium, tuple(bound_left), tuple(bound_right), aids, spectators, foreign)


def _distinct(terms: tuple[Term, ...]) -> dict[Species, None]:
    kinds = dict.fromkeys([term.species for term in terms])
    kinds.pop(ELECTRON, None)
    return kinds


def _aids(medium: str, everything: dict[Species, None]) -> tuple[Species, ...]:
    if medium == ACIDIC:
        return WATER, HYDRONIUM if HYDRONIUM in everything else HYDROGEN_ION
    if medium == ALKALINE:
        return WATER, HYDROXIDE
    if medium == MOLTEN:
        return (OXIDE,)
    if medium == NEUTRAL:
        acid_ion = HYDRONIUM if HYDRONIUM in everything else HYDROGEN_ION
        if HYDROXIDE not in everything:
            return WATER, acid_ion
        return (WATER,) if acid_ion in everything else (WATER, HYDROXIDE)
    return ()


def _foreign(medium: str) -> tuple[Species, ...]:
    """Return the ions that the medium does not hold."""
    if medium == ACIDIC:
        return (HYDROXIDE,)
    return _ACID_IONS if medium == ALKALINE else ()
