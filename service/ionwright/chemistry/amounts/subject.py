"""Which substance and which process a quantity of a task belongs to, where it says so and where it need not."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.bath_relations import OF_RUNNING_OUT
from ionwright.chemistry.amounts.quantity import QUANTITIES, Key, QuantityKind
from ionwright.chemistry.amounts.substance_meant import compound_meant, ion_carried, meanings
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.faults import QuantityFault
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.amounts.circuit import Circuit, Process
    from ionwright.chemistry.species import Species

__all__ = ["keys_meant"]

_AIDS: Final = frozenset({"H^+", "OH^-", "H2O", "H3O^+"})
_OF_A_LAYER: Final = frozenset(
    {"thickness", "growth_rate", "density", "solid_volume", "mass_before", "mass_after"}
)
_OF_WHAT_IS_USED_UP: Final = OF_RUNNING_OUT | {"amount_left"}
_PART_OF_CIRCUIT: Final = {"charge": "useful_charge", "amount_of_electrons": "electrons_used"}

Pair = tuple["Process", str]
"""A process and the formula of a substance in it or in its bath."""


@lru_cache(maxsize=4096)
def keys_meant(
    circuit: Circuit, quantity: str, of: str, process: str, preferred: frozenset[str] = frozenset()
) -> tuple[Key, ...]:
    """The quantities that a name can stand for in a circuit, one or several.

    Parameters
    ----------
    quantity
        One of `QUANTITIES`.
    of, process
        Formula or name of a substance, and id of a process; empty if not said.
    preferred
        Ids of processes and baths that are meant where it is not said which.

    Raises
    ------
    QuantityFault
        ``not-in-task``: nothing in the circuit has such a quantity, or there is no such substance or process.
    """
    return _Subjects(circuit, preferred).keys(quantity, of, process)


class _Subjects:
    """Finds what the quantities of one circuit belong to.

    Parameters
    ----------
    circuit
        Its processes offer the substances.
    preferred
        Ids of processes and baths that are meant where it is not said which.
    """

    __slots__ = ("_circuit", "_preferred")

    def __init__(self, circuit: Circuit, preferred: frozenset[str]) -> None:
        self._circuit = circuit
        self._preferred = preferred

    def keys(self, quantity: str, of: str, process: str) -> tuple[Key, ...]:
        """The quantities that a name can stand for."""
        kind = QUANTITIES[quantity]
        processes = self._processes(process)
        if kind.scope == "circuit":
            return (self._of_circuit(kind, processes, is_named=bool(process)),)
        if quantity == "bath_volume" or kind.scope == "process":
            return self._of_process(kind, of, processes)
        pairs = self._named(kind, of, processes) if of else self._fitting(kind, processes)
        return tuple(dict.fromkeys(self._of_species(kind, p, formula) for p, formula in pairs))

    def _processes(self, process: str) -> tuple[Process, ...]:
        if not process:
            return self._circuit.processes
        found = tuple(p for p in self._circuit.processes if p.id == process)
        found = found or tuple(p for p in self._circuit.processes if p.bath == process)
        if not found:
            ids = ", ".join(f'"{p.id}"' for p in self._circuit.processes)
            detail = f'No process is called "{process}".'
            raise QuantityFault("not-in-task", detail, remedy=f"There are {ids}.")
        return found

    def _of_circuit(self, kind: QuantityKind, processes: tuple[Process, ...], *, is_named: bool) -> Key:
        if is_named and len(processes) == 1 and self._circuit.is_shared(processes[0]):
            part = _PART_OF_CIRCUIT.get(kind.name)
            if part:
                return Key(part, processes[0].id)
        return Key(kind.name)

    def _of_process(self, kind: QuantityKind, of: str, processes: tuple[Process, ...]) -> tuple[Key, ...]:
        if of:
            processes = tuple(dict.fromkeys(p for p, _ in self._named(kind, of, processes)))
        if len(processes) > 1 and self._preferred:
            preferred = tuple(p for p in processes if p.id in self._preferred or p.bath in self._preferred)
            processes = preferred or processes
        if kind.scope == "bath":
            return tuple(Key(kind.name, bath) for bath in dict.fromkeys(p.bath for p in processes))
        return tuple(Key(self._name(kind, p), p.id) for p in processes)

    def _name(self, kind: QuantityKind, process: Process) -> str:
        """The efficiency of one of several processes at an electrode is its share of the current."""
        return "share" if kind.name == "efficiency" and self._circuit.is_shared(process) else kind.name

    def _of_species(self, kind: QuantityKind, process: Process, of: str) -> Key:
        state = process.state(of)
        if kind.scope == "bath":
            if state in {"s", "g"}:
                detail = f"{substance_text(of)} is not dissolved, so that it has no {kind.noun}."
                remedy = f"Ask for an ion: {_listed(_dissolved(process))}."
                raise QuantityFault("not-in-task", detail, remedy=remedy)
            return Key(kind.name, process.bath, of)
        if kind.name in _OF_A_LAYER and state in {"g", "aq"}:
            is_what = "is a gas" if state == "g" else "stays in solution"
            detail = f"{substance_text(of)} {is_what}, so that it forms no layer and has no {kind.noun} here."
            raise QuantityFault("not-in-task", detail, remedy="Ask for its amount, its mass or its volume.")
        if kind.name == "volume" and state == "aq":
            detail = f"{substance_text(of)} stays in solution, so that it has no volume of its own."
            raise QuantityFault("not-in-task", detail, remedy="Ask for its amount or its mass.")
        name = "solid_volume" if kind.name == "volume" and state in {"s", "l"} else kind.name
        return Key(name, process.id, of)

    def _named(self, kind: QuantityKind, of: str, processes: tuple[Process, ...]) -> tuple[Pair, ...]:
        """The processes that a named substance takes part in, or that a compound of their ions stands for."""
        meant, unread = _read(of)
        for one in meant:
            found = tuple((p, one.ascii) for p in processes if any(t.species == one for t in p.terms))
            if not found and kind.scope == "bath":
                found = tuple(
                    (p, one.ascii) for p in processes if (p.bath, one.ascii) in self._circuit.present
                )
            if found:
                return found
        compound = compound_meant(of)
        found = tuple((p, compound) for p in processes if compound and ion_carried(compound, p.species))
        if found:
            return found
        if unread is not None:
            raise unread
        there = dict.fromkeys(t.species for p in processes for t in p.terms)
        detail = f"{of} takes no part in this task."
        raise QuantityFault("not-in-task", detail, remedy=f"Those that do are {_listed(there)}.")

    def _fitting(self, kind: QuantityKind, processes: tuple[Process, ...]) -> tuple[Pair, ...]:
        """What a quantity without a substance is about."""
        found = tuple((p, one.ascii) for p in processes for one in _candidates(kind, p))
        if kind.name == "volume":
            found = tuple((p, of) for p, of in found if p.state(of) == "g") or found
        if kind.name in _OF_WHAT_IS_USED_UP:
            net = self._circuit.net_per_electron
            found = tuple((p, of) for p, of in found if net(p.bath, of) < 0) or found
        if kind.scope == "bath":
            found = tuple((p, of) for p, of in found if of not in _AIDS) or found
        if not found and kind.name in _OF_A_LAYER:
            detail = f"Nothing in this task forms a layer, so that there is no {kind.noun}."
            raise QuantityFault("not-in-task", detail, remedy="Ask for an amount, a mass or a volume.")
        if not found:
            detail = f"Nothing in this task has a {kind.noun} that could be meant."
            there = dict.fromkeys(t.species for p in processes for t in p.terms)
            raise QuantityFault("not-in-task", detail, remedy=f'Say of what with "of": {_listed(there)}.')
        return found


def _read(of: str) -> tuple[tuple[Species, ...], IonwrightError | None]:
    """What a name can stand for, or why it cannot be read."""
    try:
        return meanings(of), None
    except IonwrightError as fault:
        return (), fault


def _candidates(kind: QuantityKind, process: Process) -> list[Species]:
    """The species of a process that a quantity without a name is about."""
    own = [t for t in process.terms if t.species.ascii not in _AIDS]
    if kind.scope == "bath":
        return list(_dissolved(process))
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
