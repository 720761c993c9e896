"""Sums over the processes of a circuit: the mass of a mixed deposit, the volume of gases collected together."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.quantity import Key
from ionwright.chemistry.amounts.relations import Sum

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

    from ionwright.chemistry.amounts.circuit import Circuit

__all__ = ["parts_of_totals", "total_relations"]

_PARTS: Final = {"total_mass": ("mass", "s"), "total_volume": ("volume", "g")}
"""Of each total, the quantity that is summed and the state of what forms."""


def parts_of_totals(circuit: Circuit, kinds: Collection[str]) -> tuple[Key, ...]:
    """The quantities that the totals among these kinds are made of."""
    return tuple(key for total in _PARTS if total in kinds for key in _parts(circuit, total))


def total_relations(circuit: Circuit, kinds: Collection[str]) -> Iterator[Sum]:
    """The sums of the totals among these kinds."""
    for total in _PARTS:
        parts = _parts(circuit, total) if total in kinds else ()
        if parts:
            yield Sum(total.replace("_", " "), Key(total), parts)


def _parts(circuit: Circuit, total: str) -> tuple[Key, ...]:
    kind, state = _PARTS[total]
    return tuple(
        Key(kind, process.id, term.species.ascii)
        for process in circuit.processes
        for term in process.half.right
        if term.state == state and not term.species.charge
    )
