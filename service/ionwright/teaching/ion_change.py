"""What the overall equation does to the ions of the electrolyte: which leave, form, stay and settle out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from ionwright.chemistry.compound import compound_of
from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, WATER
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import ACIDIC, ALKALINE, MOLTEN, NEUTRAL
from ionwright.chemistry.solubility import solubility
from ionwright.chemistry.species import species
from ionwright.chemistry.substance import SUBSTANCES

if TYPE_CHECKING:
    from ionwright.chemistry.equation import Equation
    from ionwright.chemistry.species import Species

_OXIDE_AT_ONCE = frozenset({"Ag", "Hg", "Hg2"})
_LOOKS = frozenset(
    {"white", "pale blue", "rust brown", "dirty green", "green", "brown", "black", "white gel", "yellow"}
)
RISES, FALLS, UNCHANGED, NO_PH = "rises", "falls", "unchanged", "does not apply"


class Solid(NamedTuple):
    """A solid that new ions make with others: its name, what it looks like (may be empty), and its ions."""

    name: str
    look: str
    cation: Species
    anion: Species


@dataclass(frozen=True, slots=True)
class IonChange:
    """The ions before and after.

    Parameters
    ----------
    own
        The ions that the electrolyte itself gives.
    medium
        ``"acidic"``, ``"neutral"``, ``"alkaline"`` or ``"molten"``.
    net
        Net amounts by species in the overall equation, negative for what is used up; hydrogen and hydroxide ions
        that only water supplies are written as the other one that it leaves.
    """

    own: tuple[Species, ...]
    medium: str
    net: dict[Species, float]

    @property
    def removed(self) -> tuple[Species, ...]:
        """Ions that are used up."""
        return tuple(kind for kind, amount in self.net.items() if kind.charge and amount < 0)

    @property
    def formed(self) -> tuple[Species, ...]:
        """Ions that are made or left behind."""
        return tuple(kind for kind, amount in self.net.items() if kind.charge and amount > 0)

    @property
    def remaining(self) -> tuple[Species, ...]:
        """Ions of the electrolyte that are left alone."""
        return tuple(kind for kind in self.own if kind not in self.removed)

    @property
    def uses_water(self) -> bool:
        """Whether water is used up."""
        return self.net.get(WATER, 0) < 0

    def solids(self) -> tuple[Solid, ...]:
        """What settles out where ions that form meet others."""
        if self.medium == MOLTEN:
            return ()
        formed = self.formed
        there = (*self.remaining, *formed)
        cations = [kind for kind in there if kind.charge > 0 and kind != HYDROGEN_ION]
        anions = [kind for kind in there if kind.charge < 0]
        return tuple(
            _solid(cation, anion)
            for cation in cations
            for anion in anions
            if (cation in formed or anion in formed)
            and solubility(cation, anion).category in {"insoluble", "very-slight"}
        )

    def ph(self, solids: tuple[Solid, ...]) -> str:
        """``"rises"``, ``"falls"``, ``"unchanged"`` or, for a melt, ``"does not apply"``."""
        if self.medium == MOLTEN:
            return NO_PH
        acid, alkali = self.net.get(HYDROGEN_ION, 0), self.net.get(HYDROXIDE, 0)
        if alkali > 0 and any(solid.anion == HYDROXIDE and solid.cation in self.formed for solid in solids):
            return UNCHANGED  # the metal that dissolves takes up as much hydroxide as the cathode makes
        if acid > 0 or alkali < 0:
            return FALLS
        if acid < 0 or alkali > 0:
            return RISES
        if self.uses_water and self.medium != NEUTRAL:
            return FALLS if self.medium == ACIDIC else RISES
        return UNCHANGED


def _solid(cation: Species, anion: Species) -> Solid:
    """The solid of two ions; the hydroxides of silver and mercury do not last and settle out as oxides."""
    partner = species("O^2-") if anion == HYDROXIDE and cation.formula in _OXIDE_AT_ONCE else anion
    compound = compound_of(IONS[cation], IONS[partner])
    known = SUBSTANCES.get(compound.formula)
    look = known.appearance.partition(",")[0].strip() if known else ""
    return Solid(compound.name, look if look in _LOOKS else "", cation, anion)


def ion_change(own: tuple[Species, ...], medium: str, overall: Equation) -> IonChange:
    """What an overall equation does to the ions of an electrolyte."""
    net: dict[Species, float] = {}
    for sign, terms in ((-1, overall.left), (1, overall.right)):
        for term in terms:
            net[term.species] = net.get(term.species, 0) + sign * float(term.coefficient)
    if medium != MOLTEN:
        _settle(net, HYDROGEN_ION, HYDROXIDE, uses_up=medium == ACIDIC, meets=medium == ALKALINE)
        _settle(net, HYDROXIDE, HYDROGEN_ION, uses_up=medium == ALKALINE, meets=medium == ACIDIC)
    return IonChange(own, medium, net)


def _settle(net: dict[Species, float], one: Species, other: Species, *, uses_up: bool, meets: bool) -> None:
    """Replace an ion that is consumed though only water holds it, or made where the other one is plentiful."""
    amount = net.get(one, 0)
    if (amount < 0 and not uses_up) or (amount > 0 and meets):
        net[one] = 0
        net[other] = net.get(other, 0) - amount
        net[WATER] = net.get(WATER, 0) + amount
