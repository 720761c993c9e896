"""Which part of the charge in a circuit one process takes, and how much of a species goes with it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.quantity import Key
from ionwright.chemistry.amounts.relations import Product

if TYPE_CHECKING:
    from collections.abc import Collection

    from ionwright.chemistry.amounts.circuit import Circuit, Process

__all__ = ["amount_relation", "charge_parts", "electrons_of"]

_OF_A_PART: Final = ("efficiency", "useful_charge", "electrons_used")


def charge_parts(circuit: Circuit, process: Process, mentioned: Collection[Key]) -> tuple[Key, ...]:
    """By what the charge of the circuit is multiplied to have that of a process; empty if it takes all of it."""
    efficiency, share = Key("efficiency", process.id), Key("share", process.id)
    if circuit.is_shared(process) or share in mentioned:
        return (share, efficiency) if efficiency in mentioned else (share,)
    return (efficiency,) if any(Key(kind, process.id) in mentioned for kind in _OF_A_PART) else ()


def electrons_of(circuit: Circuit, process: Process, mentioned: Collection[Key]) -> Key:
    """The amount of electrons that a process itself takes: that of the circuit, unless part of it goes elsewhere."""
    if charge_parts(circuit, process, mentioned):
        return Key("electrons_used", process.id)
    return Key("amount_of_electrons")


def amount_relation(process: Process, of: str, electrons: Key) -> Product:
    """How the amount of a species follows from that of the electrons."""
    amount = Key("amount", process.id, of)
    if process.has_unknown_charge:
        return Product("ion charge", electrons, (amount, Key("ion_charge", process.id)))
    return Product("stoichiometry", amount, (electrons,), number=abs(process.per_electron(of)))
