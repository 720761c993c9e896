"""A circuit of electrode processes: the same charge passes through every electrode in it."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING

from ionwright.chemistry.amounts.substance_meant import ion_carried
from ionwright.chemistry.amounts.unknown_metal import substance

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species
    from ionwright.chemistry.stoichiometry import Equation, Term

__all__ = ["Circuit", "Process"]


@dataclass(frozen=True, slots=True)
class Process:
    """A half-equation that runs in a circuit.

    Parameters
    ----------
    id
        Name of the process in the task.
    half
        Balanced, with electrons, and with the state symbols of its species.
    electrode
        Processes with the same electrode share the current there.
    bath
        Processes with the same bath take from and give to the same solution.
    has_unknown_charge
        Whether the charge of the ion is a quantity of the task; the half-equation then stands for one electron.
    """

    id: str
    half: Equation
    electrode: str
    bath: str
    has_unknown_charge: bool = False

    @property
    def terms(self) -> tuple[Term, ...]:
        """Everything in the half-equation but the electrons."""
        return tuple(t for t in (*self.half.left, *self.half.right) if not t.species.is_electron)

    @property
    def species(self) -> frozenset[Species]:
        """Everything in the half-equation but the electrons, without states."""
        return frozenset(term.species for term in self.terms)

    def per_electron(self, of: str) -> Fraction:
        """How many particles of a substance go with one electron: above 0 if formed, below 0 if used up [1].

        A compound goes with the one of its ions that takes part.
        """
        wanted = substance(of)
        there = self.species
        if wanted not in there:
            carried = ion_carried(of, there)
            return self.per_electron(carried[0].ascii) / carried[1] if carried else Fraction(0)
        net = sum((Fraction(t.coefficient) for t in self.half.right if t.species == wanted), Fraction(0))
        net -= sum((Fraction(t.coefficient) for t in self.half.left if t.species == wanted), Fraction(0))
        return net / abs(Fraction(self.half.electrons))

    def state(self, of: str) -> str:
        """State symbol of a substance in it, that of a compound of its ions included; empty if it is not there."""
        wanted = substance(of)
        there = next((t.state for t in self.terms if t.species == wanted), "")
        return there or ("aq" if ion_carried(of, self.species) else "")


@dataclass(frozen=True, slots=True)
class Circuit:
    """Processes through all of whose electrodes the same charge passes.

    Parameters
    ----------
    processes
        With different ids.
    is_over_water
        Whether gases are collected over water, so that its vapour takes part of the pressure.
    present
        What else is dissolved and takes no part: the bath and the ion.
    used_up
        Ions of which nothing is left at the end: the id of the process that takes them, and the ion.
    """

    processes: tuple[Process, ...]
    is_over_water: bool = False
    used_up: tuple[tuple[str, str], ...] = ()
    present: tuple[tuple[str, str], ...] = ()
    _hash: int = field(init=False, repr=False, compare=False, default=0)

    def __post_init__(self) -> None:
        object.__setattr__(
            self, "_hash", hash((self.processes, self.is_over_water, self.used_up, self.present))
        )

    def __hash__(self) -> int:
        return self._hash

    def process(self, id_: str) -> Process:
        """The process with this id.

        Raises
        ------
        KeyError
            If there is none.
        """
        for process in self.processes:
            if process.id == id_:
                return process
        raise KeyError(id_)

    def is_shared(self, process: Process) -> bool:
        """Whether other processes run at the same electrode."""
        return sum(other.electrode == process.electrode for other in self.processes) > 1

    def before(self, process: Process) -> tuple[Process, ...]:
        """The processes at the same electrode that run before this one, where they run in turn."""
        turn = [p for p in self.processes if p.electrode == process.electrode]
        return tuple(turn[: turn.index(process)])

    def touching(self, bath: str, of: str) -> tuple[Process, ...]:
        """The processes that take a species from a bath or give it to the bath."""
        return tuple(p for p in self.processes if p.bath == bath and p.per_electron(of))

    def net_per_electron(self, bath: str, of: str) -> Fraction:
        """How many particles of a species the bath gains for one electron in the circuit, nothing being shared [1]."""
        return sum((p.per_electron(of) for p in self.touching(bath, of)), Fraction(0))
