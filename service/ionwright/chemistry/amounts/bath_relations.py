"""How a process changes the bath that it takes from: concentrations, what is left, and when an ion runs out."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.charge_taken import amount_relation, charge_parts, electrons_of
from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.relations import Product, Relation, Sum

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

    from ionwright.chemistry.amounts.circuit import Circuit, Process

__all__ = ["OF_RUNNING_OUT", "bath_relations"]

OF_RUNNING_OUT: Final = frozenset({"exhaustion_charge", "exhaustion_time", "charge_left", "time_left"})
"""Quantities that only an ion has which is used up."""


def bath_relations(circuit: Circuit, mentioned: Collection[Key]) -> list[Relation]:
    """The relations of every bath and dissolved species among some quantities.

    Notes
    -----
    The volume of a bath is taken as constant, which holds for dilute solutions and short runs.
    """
    named = dict.fromkeys(
        (key.process, key.of) for key in mentioned if key.of and QUANTITIES[key.kind].scope == "bath"
    )
    found: list[Relation] = []
    for bath, of in named:
        touching = circuit.touching(bath, of)
        if touching:
            found += _amounts(circuit, touching, of, mentioned)
            found += _of_species(circuit, bath, of, mentioned)
        elif (bath, of) in circuit.present:
            found += _unchanged(bath, of)
    return found


def _unchanged(bath: str, of: str) -> Iterator[Relation]:
    start = Key("bath_concentration", bath, of)
    yield Product("amount in the bath", Key("amount_at_start", bath, of), (start, Key("bath_volume", bath)))
    yield Sum("no change", Key("concentration_change", bath, of), ())
    yield Product("unchanged", Key("concentration", bath, of), (start,))
    yield Product("unchanged", Key("amount_left", bath, of), (Key("amount_at_start", bath, of),))


def _amounts(
    circuit: Circuit, touching: tuple[Process, ...], of: str, mentioned: Collection[Key]
) -> Iterator[Relation]:
    for process in touching:
        yield amount_relation(process, of, electrons_of(circuit, process, mentioned))
    net = _net(circuit, touching[0].bath, of, mentioned)
    if len(touching) > 1 and net:
        forward = tuple(Key("amount", p.id, of) for p in touching if p.per_electron(of) * net > 0)
        back = tuple(Key("amount", p.id, of) for p in touching if p.per_electron(of) * net < 0)
        yield Sum("net amount", Key("amount_used", touching[0].bath, of), forward, back)


def _net(circuit: Circuit, bath: str, of: str, mentioned: Collection[Key]) -> Fraction:
    """Above 0 if a bath gains of a species, below 0 if it loses, 0 if nothing changes [1].

    Where only part of the charge gives back what is taken, it counts as used up; by how much, the charges tell.
    """
    net = circuit.net_per_electron(bath, of)
    if net or not any(charge_parts(circuit, process, mentioned) for process in circuit.touching(bath, of)):
        return net
    return Fraction(-1)


def _of_species(circuit: Circuit, bath: str, of: str, mentioned: Collection[Key]) -> Iterator[Relation]:
    volume, start, end, at_start, change = (
        Key("bath_volume", bath),
        Key("bath_concentration", bath, of),
        Key("concentration", bath, of),
        Key("amount_at_start", bath, of),
        Key("concentration_change", bath, of),
    )
    touching = circuit.touching(bath, of)
    net = _net(circuit, bath, of, mentioned)
    if not net:
        yield from _unchanged(bath, of)
        return
    yield Product("amount in the bath", at_start, (start, volume))
    used = Key("amount", touching[0].id, of) if len(touching) == 1 else Key("amount_used", bath, of)
    yield Product("change of concentration", change, (used,), (volume,))
    if net > 0:
        yield Sum("concentration rises", end, (start, change))
        return
    if (touching[0].id, of) in circuit.used_up:
        yield Product("used up", used, (at_start,))
    yield Sum("concentration falls", end, (start,), (change,))
    yield Sum("what is left", Key("amount_left", bath, of), (at_start,), (used,))
    if any(key.kind in OF_RUNNING_OUT for key in mentioned):
        yield from _of_running_out(circuit, bath, of, mentioned)


def _of_running_out(circuit: Circuit, bath: str, of: str, mentioned: Collection[Key]) -> Iterator[Relation]:
    """Until the last ion is gone: the same laws once more, for all that the bath holds."""
    electrons, charge, time = (
        Key(kind, bath, of) for kind in ("electrons_until_none", "exhaustion_charge", "exhaustion_time")
    )
    touching = circuit.touching(bath, of)
    parts = charge_parts(circuit, touching[0], mentioned)
    if len(touching) > 1 and any(charge_parts(circuit, p, mentioned) for p in touching):
        return
    net = abs(circuit.net_per_electron(bath, of))
    yield Product("stoichiometry", Key("amount_at_start", bath, of), (electrons,), number=net)
    useful = Key("useful_charge_until_none", bath, of) if parts else charge
    yield Product("faraday", useful, (electrons, Key("faraday_constant")))
    if circuit.used_up:
        before = circuit.before(touching[0])
        yield Sum("in turn", charge, (*(Key("useful_charge", p.id) for p in before), useful))
    elif parts:
        yield Product("useful charge", useful, (charge, *parts))
    yield Product("charge", charge, (Key("current"), time))
    yield Sum("charge left", charge, (Key("charge"), Key("charge_left", bath, of)))
    yield Sum("time left", time, (Key("time"), Key("time_left", bath, of)))
