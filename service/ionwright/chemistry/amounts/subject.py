"""Which substance and which process a quantity of a task belongs to, where it says so and where it need not."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.quantity import QUANTITIES, Key, QuantityKind
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.element import find_element
from ionwright.chemistry.faults import FormulaError, QuantityFault
from ionwright.chemistry.species import readings, species
from ionwright.chemistry.substance import SUBSTANCES

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.amounts.circuit import Circuit, Process
    from ionwright.chemistry.species import Species

__all__ = ["Subjects"]

_AIDS: Final = frozenset({"H^+", "OH^-", "H2O", "H3O^+"})
_OF_A_LAYER: Final = frozenset({"thickness", "growth_rate", "density", "solid_volume"})
_PART_OF_CIRCUIT: Final = {"charge": "useful_charge", "amount_of_electrons": "electrons_used"}


class Subjects:
    """Finds what the quantities of one circuit belong to.

    Parameters
    ----------
    circuit
        Its processes offer the substances.
    """

    __slots__ = ("_circuit", "_preferred")

    def __init__(self, circuit: Circuit) -> None:
        self._circuit = circuit
        self._preferred: frozenset[str] = frozenset()

    def prefer(self, keys: Iterable[Key]) -> None:
        """Take the processes of these quantities for meant where others do not say which they belong to."""
        self._preferred = frozenset(key.process for key in keys if key.process)

    def keys(self, quantity: str, of: str, process: str) -> tuple[Key, ...]:
        """The quantities that a name can stand for, one or several.

        Parameters
        ----------
        quantity
            One of `QUANTITIES`.
        of, process
            Formula or name of a substance, and id of a process; empty if not said.

        Raises
        ------
        QuantityFault
            ``needs-more``: nothing in the circuit has such a quantity, or there is no such substance or process.
        """
        kind = QUANTITIES[quantity]
        processes = self._processes(process)
        if kind.scope == "circuit":
            return (self._of_circuit(kind, processes, is_named=bool(process)),)
        if quantity == "bath_volume" or kind.scope == "process":
            return self._of_process(kind, of, processes)
        pairs = self._named(of, processes) if of else self._fitting(kind, processes)
        return tuple(dict.fromkeys(self._of_species(kind, p, kind_of.ascii) for p, kind_of in pairs))

    def _processes(self, process: str) -> tuple[Process, ...]:
        if not process:
            return self._circuit.processes
        found = tuple(p for p in self._circuit.processes if process in (p.id, p.bath))
        if not found:
            ids = ", ".join(f'"{p.id}"' for p in self._circuit.processes)
            raise QuantityFault(
                "needs-more", f'No process is called "{process}".', remedy=f"There are {ids}."
            )
        return found

    def _of_circuit(self, kind: QuantityKind, processes: tuple[Process, ...], *, is_named: bool) -> Key:
        if is_named and len(processes) == 1 and self._circuit.is_shared(processes[0]):
            part = _PART_OF_CIRCUIT.get(kind.name)
            if part:
                return Key(part, processes[0].id)
        return Key(kind.name)

    def _of_process(self, kind: QuantityKind, of: str, processes: tuple[Process, ...]) -> tuple[Key, ...]:
        if of:
            processes = tuple(dict.fromkeys(p for p, _ in self._named(of, processes)))
        if len(processes) > 1 and self._preferred:
            processes = (
                tuple(p for p in processes if p.id in self._preferred or p.bath in self._preferred)
                or processes
            )
        named = (p.bath if kind.scope == "bath" else p.id for p in processes)
        return tuple(Key(kind.name, name) for name in dict.fromkeys(named))

    def _of_species(self, kind: QuantityKind, process: Process, of: str) -> Key:
        if kind.scope == "bath":
            if process.state(of) not in {"aq", "l", ""}:
                detail = f"{substance_text(of)} is not dissolved, so that it has no {kind.noun}."
                raise QuantityFault(
                    "needs-more", detail, remedy=f"Ask for an ion: {_listed(_dissolved(process))}."
                )
            return Key(kind.name, process.bath, of)
        name = kind.name
        if name == "volume" and process.state(of) in {"s", "l"}:
            name = "solid_volume"
        if name == "volume" and process.state(of) == "aq":
            detail = f"{substance_text(of)} stays in solution, so that it has no volume of its own."
            raise QuantityFault("needs-more", detail, remedy="Ask for its amount or its mass.")
        return Key(name, process.id, of)

    def _named(self, of: str, processes: tuple[Process, ...]) -> tuple[tuple[Process, Species], ...]:
        meant = _meanings(of)
        for kind in meant:
            found = tuple((p, kind) for p in processes if any(t.species == kind for t in p.terms))
            if found:
                return found
        there = dict.fromkeys(t.species for p in processes for t in p.terms)
        detail = f"There is no {of} in this task."
        raise QuantityFault("needs-more", detail, remedy=f"It has {_listed(there)}.")

    def _fitting(
        self, kind: QuantityKind, processes: tuple[Process, ...]
    ) -> tuple[tuple[Process, Species], ...]:
        found = tuple((p, one) for p in processes for one in _candidates(kind, p))
        if kind.name == "volume":
            gases = tuple((p, one) for p, one in found if p.state(one.ascii) == "g")
            found = gases or found
        if not found:
            detail = f"Nothing in this task has a {kind.noun} that could be meant."
            there = dict.fromkeys(t.species for p in processes for t in p.terms)
            raise QuantityFault("needs-more", detail, remedy=f'Say of what with "of": {_listed(there)}.')
        return found


def _meanings(text: str) -> tuple[Species, ...]:
    """What a formula or a name can stand for, the likeliest first."""
    element = find_element(text)
    if element and element.name == text.strip().lower():
        symbol = element.symbol
        return tuple(species(f) for f in (symbol, f"{symbol}2"))
    by_name = [species(s.formula) for s in SUBSTANCES.values() if s.name == text.strip().lower()]
    if by_name:
        return tuple(by_name)
    try:
        return readings(text)
    except FormulaError as fault:
        raise fault.within("of") from None


def _candidates(kind: QuantityKind, process: Process) -> list[Species]:
    """The species of a process that a quantity without a name is about."""
    own = [t for t in process.terms if t.species.ascii not in _AIDS]
    if kind.scope == "bath":
        return [t.species for t in own if t.species.charge] or list(_dissolved(process))
    if kind.name == "volume":
        gases = [t.species for t in process.terms if t.state == "g"]
        return gases or [t.species for t in own if not t.species.charge and t.state in {"s", "l"}]
    if kind.name in _OF_A_LAYER:
        return [t.species for t in own if t.state in {"s", "l"} and not t.species.charge]
    neutral = [t.species for t in own if not t.species.charge]
    products = [
        t.species for t in process.half.right if t.species.ascii not in _AIDS and not t.species.is_electron
    ]
    return neutral or products or [t.species for t in own]


def _dissolved(process: Process) -> tuple[Species, ...]:
    return tuple(t.species for t in process.terms if t.species.charge)


def _listed(kinds: Iterable[Species]) -> str:
    return ", ".join(substance_text(kind.ascii) for kind in kinds) or "none"
