"""Electrode processes: every half-equation that could run at one electrode of one cell."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ionwright.chemistry.equation import Equation
    from ionwright.chemistry.species import Species

FROM_IONS = "from-ions"
FROM_WATER = "from-water"


class Kind(StrEnum):
    """What sort of thing happens."""

    METAL = "metal deposits"
    AMALGAM = "metal dissolves in mercury"
    HYDROGEN = "hydrogen"
    OXYGEN = "oxygen"
    HALOGEN = "halogen"
    CHARGE = "an ion changes its charge and stays in solution"
    REACTION = "another ion reacts"
    DISSOLVES = "the electrode dissolves"
    FILM = "a film grows on the electrode"
    BURNS = "the carbon electrode burns"


@dataclass(frozen=True, slots=True, eq=False)
class ElectrodeProcess:
    """One half-equation open at one electrode. There is one object per process, so processes compare by identity.

    Parameters
    ----------
    kind
        What sort of process it is.
    reactant
        The species that names it: the ion discharged, or the electrode's own metal.
    products
        What it gives, without the electron and without what belongs to the medium.
    forms
        The half-equation by the way of writing: hydrogen and oxygen from ions or from water, all others only one.
    potential_V
        Standard potential of the couple as school data sheets print it [V]; None where the tables are silent.
    couple
        Name of the row in the table of couples; empty if none.
    slow
        Why it does not run at an ordinary electrode in spite of its potential; empty if it does.
    is_listed
        Whether school data sheets print the couple.
    seen
        What is seen at the electrode, where the tables say it for this case; may be empty.
    """

    kind: Kind
    reactant: Species
    products: tuple[Species, ...]
    forms: tuple[tuple[str, Equation], ...]
    potential_V: float | None = None
    couple: str = ""
    slow: str = ""
    is_listed: bool = False
    seen: str = ""

    def written(self, form: str) -> Equation:
        """The half-equation in the form asked for, or in its only form."""
        for name, half in self.forms:
            if name == form:
                return half
        return self.forms[0][1]

    @property
    def metal(self) -> str:
        """Symbol of the metal that deposits or dissolves; empty for other processes."""
        if self.kind in {Kind.METAL, Kind.AMALGAM}:
            return next((s.formula for s in self.products if len(s.atoms) == 1 and not s.charge), "")
        return self.reactant.formula if self.kind in {Kind.DISSOLVES, Kind.FILM} else ""


@dataclass(frozen=True, slots=True)
class Competition:
    """All processes open at one electrode, and the ions there that take part in none.

    Parameters
    ----------
    electrode
        ``"cathode"`` or ``"anode"``.
    processes
        Every process whose reactants are present.
    spectators
        Ions that move to this electrode but have no process there.
    untabulated
        Ions that are known to react at this electrode, though the tables hold no couple for what they give.
    """

    electrode: str
    processes: tuple[ElectrodeProcess, ...]
    spectators: tuple[Species, ...]
    untabulated: tuple[Species, ...] = ()

    def of(self, *kinds: Kind) -> tuple[ElectrodeProcess, ...]:
        """The processes of these kinds, in order."""
        return tuple(process for process in self.processes if process.kind in kinds)
