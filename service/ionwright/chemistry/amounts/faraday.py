"""Works a task out: builds the network of its quantities, solves it, and says what contradicts or is still needed."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.bath_relations import OF_RUNNING_OUT
from ionwright.chemistry.amounts.charge_taken import charge_parts
from ionwright.chemistry.amounts.circuit_relations import circuit_relations
from ionwright.chemistry.amounts.known_values import known_values
from ionwright.chemistry.amounts.limits import check_results
from ionwright.chemistry.amounts.naming import name_of, shown
from ionwright.chemistry.amounts.network import Solution, reachable, solve
from ionwright.chemistry.amounts.quantity import QUANTITIES, TOLD, Key
from ionwright.chemistry.amounts.subject import Subjects
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.amounts.values import EXACT, Value, nominal
from ionwright.chemistry.faults import QuantityFault

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping, Sequence

    from ionwright.chemistry.amounts.circuit import Circuit
    from ionwright.chemistry.amounts.known_values import KnownValues
    from ionwright.chemistry.amounts.network import Clash
    from ionwright.chemistry.amounts.relations import Relation
    from ionwright.chemistry.amounts.task import Given, Task, Wanted
    from ionwright.chemistry.amounts.values import Known

__all__ = ["WorkedOut", "work_out"]

_FIGURES_OF_EXACT: Final = 4
_MOST_SUGGESTED: Final = 6
_OF_A_WET_GAS: Final = (
    "water_vapour_pressure",
    "temperature",
    "pressure",
    "volume",
    "charge",
    "time",
    "current",
)


@dataclass(frozen=True, slots=True)
class WorkedOut:
    """The solution of a task.

    Parameters
    ----------
    answers
        What was asked for, in that order: each quantity with the wish that it answers.
    values
        Every quantity that follows, with its derivation.
    given
        What the task states, by quantity.
    knowns
        All that the solver started from.
    """

    task: Task
    answers: tuple[tuple[Wanted, Key], ...]
    values: Mapping[Key, Value]
    given: Mapping[Key, Given]
    knowns: KnownValues

    def figures(self, key: Key) -> int:
        """Significant figures of an answer."""
        figures = self.task.figures or self.values[key].figures
        return _FIGURES_OF_EXACT if figures >= EXACT else figures


def work_out(task: Task) -> WorkedOut:
    """What a task asks for, from what it states.

    Raises
    ------
    QuantityFault
        ``needs-more`` with what would settle it, ``contradictory`` with what does not go together, or the fault of
        one quantity, such as ``negative-quantity``; its ``where`` is that of the quantity at fault.
    """
    subjects = Subjects(task.circuit)
    given, answers = _placed(task, subjects)
    for wanted, key in answers:
        _check_that_it_runs_out(task.circuit, wanted, key, given)
    knowns = known_values(task, given, [key for _, key in answers])
    relations = circuit_relations(task.circuit, knowns.mentioned)
    try:
        solution = solve(relations, knowns.values)
    except QuantityFault as fault:
        raise fault.within(_where_of_a_wet_gas(given)) from None
    if solution.clashes:
        raise _contradiction(solution.clashes, given, solution)
    missing = [(wanted, key) for wanted, key in answers if key not in solution.values]
    answers = _without_missing(answers, missing, relations, knowns.values)
    check_results(task, solution.values, given)
    return WorkedOut(task, answers, solution.values, given, knowns)


def _where_of_a_wet_gas(given: Mapping[Key, Given]) -> str:
    """Where a figure stands that the tables of water vapour cannot follow: only they can fail while solving."""
    wheres = {key.kind: one.where for key, one in given.items()}
    return next((wheres[kind] for kind in _OF_A_WET_GAS if kind in wheres), "")


def _placed(task: Task, subjects: Subjects) -> tuple[dict[Key, Given], tuple[tuple[Wanted, Key], ...]]:
    """Each given and each wanted quantity with what it belongs to."""
    sure: dict[Key, Given] = {}
    unsure: list[Given] = []
    for one in task.given:
        if QUANTITIES[one.quantity].scope == "process" and not one.process and not one.of:
            unsure.append(one)
        else:
            _place(one, subjects, sure)
    wanted_keys: list[tuple[Wanted, Key]] = []
    for wanted in task.wanted:
        try:
            found = subjects.keys(wanted.quantity, wanted.of, wanted.process)
        except QuantityFault as fault:
            raise fault.within(wanted.where) from None
        wanted_keys += [(wanted, key) for key in found]
    subjects.prefer([*sure, *(key for _, key in wanted_keys)])
    for one in unsure:
        _place(one, subjects, sure)
    return sure, tuple(wanted_keys)


def _check_that_it_runs_out(circuit: Circuit, wanted: Wanted, key: Key, given: Collection[Key]) -> None:
    """Refuse to say when something runs out that is not used up."""
    if key.kind not in OF_RUNNING_OUT:
        return
    net = circuit.net_per_electron(key.process, key.of)
    touching = circuit.touching(key.process, key.of)
    if net > 0 or (not net and not any(charge_parts(circuit, process, given) for process in touching)):
        name = substance_text(key.of)
        why = (
            "as much goes into the solution at one electrode as leaves it at the other"
            if not net
            else "it is formed"
        )
        detail = f"{name} does not run out: {why}."
        remedy = "Ask for an ion that is used up."
        raise QuantityFault("contradictory", detail, where=wanted.where, remedy=remedy)


def _place(one: Given, subjects: Subjects, placed: dict[Key, Given]) -> None:
    try:
        keys = subjects.keys(one.quantity, one.of, one.process)
    except QuantityFault as fault:
        raise fault.within(one.where) from None
    if len(keys) > 1:
        which = " or ".join(name_of(key, is_whole=True) for key in keys)
        remedy = f'Say which is meant, {which}, with "of" or "process".'
        detail = f"The {QUANTITIES[one.quantity].noun} could belong to several things here."
        raise QuantityFault("needs-more", detail, where=one.where, remedy=remedy)
    if keys[0] in placed:
        detail = f"The {name_of(keys[0])} is given twice."
        raise QuantityFault("contradictory", detail, where=one.where, remedy="Give it once.")
    placed[keys[0]] = one


# ------------------------------------------------------------------ what does not go together


def _contradiction(clashes: Sequence[Clash], given: Mapping[Key, Given], solution: Solution) -> QuantityFault:
    clash = next((c for c in clashes if c.key in given), clashes[0])
    figures = max(3, min(solution.values[clash.key].figures, 5))
    basis = [shown_given(key, given) for key in given if key in clash.rests_on]
    other = shown(clash.key, nominal(clash.other), figures)
    stated = shown(clash.key, nominal(clash.value), figures)
    if clash.key in given:
        said = f"the task says {given[clash.key].value.text}"
    else:
        rest = [shown_given(key, given) for key in given if key in solution.values[clash.key].given]
        said = f"{_and(rest)} {'give' if len(rest) > 1 else 'gives'} {stated}"
    detail = (
        f"These do not go together: from {_and(basis)} follows a {name_of(clash.key)} of {other}, but {said}."
    )
    where = given[clash.key].where if clash.key in given else ""
    return QuantityFault(
        "contradictory", detail, where=where, remedy="Check the figures and units, or leave one of them out."
    )


def shown_given(key: Key, given: Mapping[Key, Given]) -> str:
    """A given quantity in words with its value as written."""
    is_one_of_several = any(k != key and (k.kind, k.of) == (key.kind, key.of) for k in given)
    return f"the {name_of(key, is_whole=is_one_of_several)} of {given[key].value.text}"


def _and(parts: Sequence[str]) -> str:
    return (
        ", ".join(parts[:-1]) + " and " + parts[-1] if len(parts) > 1 else "".join(parts) or "the constants"
    )


# ------------------------------------------------------------------ what is still needed


def _without_missing(
    answers: tuple[tuple[Wanted, Key], ...],
    missing: list[tuple[Wanted, Key]],
    relations: Sequence[Relation],
    knowns: Sequence[Known],
) -> tuple[tuple[Wanted, Key], ...]:
    """The answers that were found; a wish none of whose readings was found is a fault."""
    for wanted, key in missing:
        if all(pair in missing for pair in answers if pair[0] is wanted):
            raise _needs_more(wanted, key, relations, {known.key for known in knowns})
    return tuple(pair for pair in answers if pair not in missing)


def _needs_more(wanted: Wanted, key: Key, relations: Sequence[Relation], known: set[Key]) -> QuantityFault:
    have = reachable(relations, known)
    members = dict.fromkeys(member for relation in relations for member in relation.members)
    askable = [k for k in members if k not in have and k != key and k.kind in TOLD]
    single = [k for k in askable if key in reachable(relations, have | {k})]
    pairs = (
        []
        if single
        else [pair for pair in combinations(askable, 2) if key in reachable(relations, have | set(pair))]
    )
    detail = f"The {name_of(key)} cannot be found from what is given."
    if single:
        choice = [f"the {name_of(k)}" for k in single[:_MOST_SUGGESTED]]
        remedy = f"Give also {_or(choice)}."
    elif pairs:
        choice = [f"the {name_of(one)} and the {name_of(other)}" for one, other in pairs[:_MOST_SUGGESTED]]
        remedy = f"Give also {_or(choice)}."
    else:
        remedy = "Nothing in this task leads to it: check which substance and which process it is asked of."
    return QuantityFault("needs-more", detail, where=wanted.where, remedy=remedy)


def _or(parts: Sequence[str]) -> str:
    return "; or ".join(parts)
