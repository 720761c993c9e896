"""A cell: an electrolyte, two electrodes and the conditions; made from text, or refused with a reason."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from ionwright.chemistry.competition import (
    anode_behaviour,
    anode_competition,
    anode_film,
    cathode_competition,
)
from ionwright.chemistry.conditions import read_current_density, read_temperature
from ionwright.chemistry.electrode import Electrode, find_electrode
from ionwright.chemistry.electrolyte import Electrolyte, Ingredient, make_electrolyte
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.medium import MOLTEN
from ionwright.chemistry.process import Kind
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Hashable, Mapping

    from ionwright.chemistry.process import Competition
    from ionwright.chemistry.species import Species

STATES_OF_ELECTROLYTE = ("aqueous", "molten", "solid", "liquid")
SUPPLIES = ("dc", "ac")
_OTHER_STATES = {
    "aq": "aqueous", "in water": "aqueous", "dissolved": "aqueous", "solution": "aqueous",
    "aqueous solution": "aqueous",
    "melt": "molten", "fused": "molten", "melted": "molten", "l": "liquid", "s": "solid",
}  # fmt: skip
_OTHER_SUPPLIES = {
    "d.c.": "dc", "direct": "dc", "direct current": "dc", "battery": "dc",
    "a.c.": "ac", "alternating": "ac", "alternating current": "ac", "mains": "ac",
}  # fmt: skip
# A melt is worked a little above its melting point, so that it stays liquid round a cold electrode.
_MARGIN_C = 20.0
_UNTABLED_MELT_C = 800.0
_HIGHEST_IN_WATER_C = 105.0
_LOWEST_IN_WATER_C = -10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class CellDescription:
    """A cell as somebody describes it: texts only, nothing checked.

    Parameters
    ----------
    electrolyte
        What conducts; several for a mixture.
    state
        ``"aqueous"``, ``"molten"``, ``"solid"`` or ``"liquid"``.
    cathode, anode
        Electrode materials by name, symbol or trade name.
    supply
        ``"dc"`` or ``"ac"``.
    temperature, current_density
        Quantities with units, such as ``"25 degC"`` and ``"10 mA/cm2"``; None if not said.
    ph
        pH of the solution, 0 to 14 [1]; None to take it from the electrolyte.
    """

    electrolyte: tuple[Ingredient, ...]
    state: str = "aqueous"
    cathode: str = "graphite"
    anode: str = "graphite"
    supply: str = "dc"
    temperature: str | None = None
    ph: float | None = None
    current_density: str | None = None


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell that can be electrolysed.

    Parameters
    ----------
    electrolyte
        The ions present with their concentrations.
    cathode, anode
        The electrode materials.
    own_ions
        The ions that the electrolyte itself gives; those of water are left out.
    melt_C
        Temperature of a melt [degC]; None for a solution in water.
    temperature_C
        Temperature as given [degC]; None if not said.
    assumptions
        What was assumed to fill in the description, as sentences.
    """

    electrolyte: Electrolyte
    cathode: Electrode
    anode: Electrode
    own_ions: tuple[Species, ...]
    melt_C: float | None = None
    temperature_C: float | None = None
    current_density_A_cm2: float | None = None
    assumptions: tuple[str, ...] = field(default=())

    @property
    def is_molten(self) -> bool:
        """Whether the electrolyte is a melt."""
        return self.electrolyte.state == MOLTEN

    @property
    def medium(self) -> str:
        """``"acidic"``, ``"neutral"``, ``"alkaline"`` or ``"molten"``."""
        return self.electrolyte.medium

    def likeness(self, electrode: str) -> tuple[Hashable, ...]:
        """What decides the competition at one electrode: cells alike in this differ there in amounts only.

        Parameters
        ----------
        electrode
            ``"cathode"`` or ``"anode"``.
        """
        formulas = tuple(dissolved.compound.formula for dissolved in self.electrolyte.ingredients)
        material = self.cathode.id if electrode == "cathode" else self.anode.id
        return (electrode, material, self.own_ions, self.medium, self.melt_C, formulas)

    def without(self, ions: Collection[Species]) -> Cell:
        """The same cell once these ions have run out; its medium is taken to be what it was."""
        left = tuple(present for present in self.electrolyte.ions if present.ion.species not in ions)
        own_ions = tuple(kind for kind in self.own_ions if kind not in ions)
        return replace(self, electrolyte=replace(self.electrolyte, ions=left), own_ions=own_ions)

    def word_for(self, ion: Species) -> str | None:
        """``"dilute"`` or ``"concentrated"`` if the substance that brings the ion was described by such a word."""
        for dissolved in self.electrolyte.ingredients:
            if any(one.species == ion for one, _ in dissolved.compound.ions) and dissolved.concentration:
                return dissolved.concentration.word
        return None

    def at_cathode(self) -> Competition:
        """The competition at the cathode."""
        return cathode_competition(self.own_ions, self.medium, self.cathode.id, self.melt_C)

    def at_anode(self) -> Competition:
        """The competition at the anode."""
        return anode_competition(self.own_ions, self.medium, self.anode.id, self.melt_C)

    def anode_behaviour(self) -> str:
        """``"active"``, ``"passive"`` or ``"inert"``."""
        return anode_behaviour(self.own_ions, self.medium, self.anode.id, self.melt_C)

    def anode_film(self) -> str:
        """What is seen at a passive anode; empty otherwise."""
        return "" if self.is_molten else anode_film(self.own_ions, self.medium, self.anode.id)

    def plating_metal(self) -> str:
        """Symbol of an active anode's metal, if the solution holds its ions too, as in a plating bath; else empty."""
        is_bath = not self.is_molten and self.anode.metal and self.anode_behaviour() == "active"
        deposits = {process.metal for process in self.at_cathode().of(Kind.METAL)} if is_bath else set()
        return self.anode.metal if self.anode.metal in deposits else ""


def make_cell(description: CellDescription) -> Cell:
    """The cell that a description means.

    The checks run in a fixed order: reading, charges, existence, state, solubility, electrodes, supply, conditions.

    Raises
    ------
    IonwrightError
        With ``code``, ``detail``, ``remedy`` and the field at fault in ``where``.
    """
    state = _word(description.state, _OTHER_STATES)
    if state not in STATES_OF_ELECTROLYTE:
        raise CellRefused(
            "bad-state",
            f"'{description.state[:40]}' is not a state that an electrolyte can be in here.",
            where="state",
            remedy="Write aqueous (dissolved in water) or molten.",
        )
    electrolyte = make_electrolyte(description.electrolyte, state, description.ph)
    cathode = _electrode(description.cathode, "cathode")
    anode = _electrode(description.anode, "anode")
    _check_supply(description.supply)
    temperature_C = _condition(description.temperature, "temperature", read_temperature)
    current_density = _condition(description.current_density, "current_density", read_current_density)
    melt_C = _melt_temperature(electrolyte, temperature_C)
    if melt_C is None:
        _check_liquid_water(temperature_C)
    else:
        _check_solid(cathode, "cathode", melt_C)
        _check_solid(anode, "anode", melt_C)
    own_ions = tuple(p.ion.species for p in electrolyte.ions if p.source == "electrolyte")
    return Cell(
        electrolyte, cathode, anode, own_ions, melt_C, temperature_C, current_density, electrolyte.assumptions
    )


def _electrode(text: str, where: str) -> Electrode:
    try:
        return find_electrode(text)
    except IonwrightError as fault:
        raise fault.within(where) from None


def _condition(text: str | None, where: str, read: Callable[[str], float]) -> float | None:
    if text is None:
        return None
    try:
        return read(text)
    except IonwrightError as fault:
        raise fault.within(where) from None


def _word(text: str, others: Mapping[str, str]) -> str:
    """The word of the contract that a word of everyday use means, in any case."""
    plain = " ".join(text.casefold().split())
    return others.get(plain, plain)


def _check_supply(text: str) -> None:
    supply = _word(text, _OTHER_SUPPLIES)
    if supply == "ac":
        raise CellRefused(
            "alternating-supply",
            "With an alternating supply each electrode is cathode and anode in turn, many times a second, "
            "so neither collects one product.",
            where="supply",
            remedy="Use a low-voltage direct-current supply: dc.",
        )
    if supply not in SUPPLIES:
        raise CellRefused(
            "unknown-supply",
            f"'{text[:40]}' is not a kind of supply known here.",
            where="supply",
            remedy="Write dc (direct current).",
        )


def _melt_temperature(electrolyte: Electrolyte, temperature_C: float | None) -> float | None:
    if electrolyte.state != MOLTEN:
        return None
    melts_C = electrolyte.melting_point_C
    if temperature_C is None:
        return (melts_C + _MARGIN_C) if melts_C is not None else _UNTABLED_MELT_C
    if melts_C is not None and temperature_C < melts_C:
        raise CellRefused(
            "ions-cannot-move",
            f"At {temperature_C:.4g} °C this electrolyte is solid, and the ions of a solid cannot move.",
            where="temperature",
            remedy=f"It melts at about {melts_C:.0f} °C: give a higher temperature, or leave it out.",
        )
    return temperature_C


def _check_liquid_water(temperature_C: float | None) -> None:
    if temperature_C is not None and not _LOWEST_IN_WATER_C <= temperature_C <= _HIGHEST_IN_WATER_C:
        raise CellRefused(
            "out-of-range",
            f"A solution in water is not liquid at {temperature_C:.4g} °C at ordinary pressure.",
            where="temperature",
            remedy="Give a temperature between 0 and 100 degC.",
        )


def _check_solid(electrode: Electrode, where: str, melt_C: float) -> None:
    if electrode.melts_C is not None and electrode.melts_C <= melt_C:
        raise CellRefused(
            "electrode-reacts",
            f"{electrode.name.capitalize()} melts at {electrode.melts_C:.0f} °C, so it cannot stand in a melt "
            f"at about {melt_C:.0f} °C.",
            where=where,
            remedy="Use graphite or another electrode that stays solid.",
        )
