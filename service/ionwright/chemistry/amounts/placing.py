"""Finds for every quantity that a task states or asks for what it belongs to."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ionwright.chemistry.amounts.bath_relations import OF_RUNNING_OUT
from ionwright.chemistry.amounts.charge_taken import charge_parts
from ionwright.chemistry.amounts.naming import name_of
from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.subject import keys_meant
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.faults import QuantityFault
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Collection

    from ionwright.chemistry.amounts.circuit import Circuit
    from ionwright.chemistry.amounts.task import Given, Task, Wanted

__all__ = ["placed"]


def placed(task: Task) -> tuple[dict[Key, Given], tuple[tuple[Wanted, Key], ...]]:
    """What is given by quantity, and each wish with the quantities that it stands for.

    Raises
    ------
    IonwrightError
        A substance or process that is not in the task (``not-in-task``), a given quantity that could belong to several
        things (``needs-more``) or is given twice, or a wish for the end of what is not used up (``contradictory``).
    """
    circuit = task.circuit
    sure: dict[Key, Given] = {}
    unsure: list[Given] = []
    for one in task.given:
        if QUANTITIES[one.quantity].scope == "process" and not one.process and not one.of:
            unsure.append(one)
        else:
            _place(one, circuit, sure)
    answers = tuple((wanted, key) for wanted in task.wanted for key in _keys(wanted, circuit))
    preferred = frozenset(key.process for key in (*sure, *(key for _, key in answers)) if key.process)
    for one in unsure:
        _place(one, circuit, sure, preferred)
    for wanted, key in answers:
        _check_that_it_runs_out(task.circuit, wanted, key, sure)
    return sure, answers


def _keys(one: Given | Wanted, circuit: Circuit, preferred: frozenset[str] = frozenset()) -> tuple[Key, ...]:
    try:
        return keys_meant(circuit, one.quantity, one.of, one.process, preferred)
    except IonwrightError as fault:
        raise fault.within(one.where) from None


def _place(
    one: Given, circuit: Circuit, found: dict[Key, Given], preferred: frozenset[str] = frozenset()
) -> None:
    keys = _keys(one, circuit, preferred)
    if len(keys) > 1:
        which = " or ".join(f"the {name_of(key, is_whole=True)}" for key in keys)
        by = (
            '"process"'
            if one.of or QUANTITIES[one.quantity].scope in {"process", "bath"}
            else '"of" or "process"'
        )
        remedy = (
            f'Say which is meant, {which}, with {by}; in a phrase, "mass of Cu" or "efficiency at cathode".'
        )
        detail = f"The {QUANTITIES[one.quantity].noun} could belong to several things here."
        raise QuantityFault("needs-more", detail, where=one.where, remedy=remedy)
    if keys[0] in found:
        detail = f"The {name_of(keys[0])} is given twice."
        raise QuantityFault("contradictory", detail, where=one.where, remedy="Give it once.")
    found[keys[0]] = one


def _check_that_it_runs_out(circuit: Circuit, wanted: Wanted, key: Key, given: Collection[Key]) -> None:
    """Refuse to say when something runs out that is not used up."""
    if key.kind not in OF_RUNNING_OUT:
        return
    net = circuit.net_per_electron(key.process, key.of)
    touching = circuit.touching(key.process, key.of)
    if net < 0 or (not net and any(charge_parts(circuit, process, given) for process in touching)):
        return
    if not touching:
        why = "it takes no part"
    elif net:
        why = "it is formed"
    else:
        why = "as much goes into the solution at one electrode as leaves it at the other"
    detail = f"{substance_text(key.of)} does not run out: {why}."
    raise QuantityFault("contradictory", detail, where=wanted.where, remedy="Ask for an ion that is used up.")
