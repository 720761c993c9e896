"""The stages of a task with one cell and a bath of known volume, and the task with its charge divided among them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.faraday import work_out
from ionwright.chemistry.amounts.known_values import checked_value
from ionwright.chemistry.amounts.quantity import Key
from ionwright.chemistry.amounts.stated_values import value_in
from ionwright.chemistry.amounts.substance_meant import meanings
from ionwright.chemistry.amounts.task import Task, Wanted
from ionwright.chemistry.amounts.values import nominal
from ionwright.chemistry.constants import CONSTANTS
from ionwright.errors import IonwrightError
from ionwright.teaching.quantities.stages import Stage, circuit_of_stages, stages

if TYPE_CHECKING:
    from ionwright.teaching.quantities.circuits import MadeCircuit

__all__ = ["TaskInStages", "stages_of_task"]

_ELECTRICAL: Final = frozenset({"charge", "current", "time", "amount_of_electrons"})
_DIVIDES_OTHERWISE: Final = frozenset({"efficiency", "share"})


@dataclass(frozen=True, slots=True)
class TaskInStages:
    """A task, its charge divided among the stages that it lasts into.

    Parameters
    ----------
    stages
        All stages of the bath.
    task
        To be worked out in place of the task as it was set; the same if its charge ends in the first stage.
    """

    stages: tuple[Stage, ...]
    task: Task


def stages_of_task(task: Task, made: MadeCircuit) -> TaskInStages | None:
    """The stages of a task; None where there are none to tell.

    A task has stages if it is about both electrodes of one cell, whose concentrations and volume are known. Its charge
    is divided if it is known and lasts beyond the first stage.
    """
    volume = next((one for one in task.given if one.quantity == "bath_volume"), None)
    if volume is None or len(made.predictions) != 1 or len(task.circuit.processes) != 2:
        return None
    ((bath, prediction),) = made.predictions
    volume_dm3 = checked_value(Key("bath_volume"), volume)
    found = stages(prediction, volume_dm3, _faraday_constant(task))
    if len(found) < 2:
        return None
    named = {one.quantity for one in task.given} | {one.quantity for one in task.wanted}
    begun = _begun(task, found) if _DIVIDES_OTHERWISE.isdisjoint(named) else ()
    circuit = circuit_of_stages(begun, bath, task.circuit) if len(begun) > 1 else None
    return TaskInStages(found, replace(task, circuit=circuit) if circuit else task)


def _begun(task: Task, found: tuple[Stage, ...]) -> tuple[Stage, ...]:
    """The stages that a task is about: as far as its charge lasts, and as far as the substances that it names."""
    charge_C = _charge(task)
    by_charge = sum(stage.start_C < charge_C for stage in found) if charge_C is not None else 1
    texts = {one.of for one in task.given} | {one.of for one in task.wanted}
    by_name = max(_first_stage(text, found) if text else 0 for text in texts)
    return found[: max(by_charge, by_name + 1)]


def _first_stage(of: str, found: tuple[Stage, ...]) -> int:
    """The stage in which a substance takes part for the first time; the first one if it never does."""
    try:
        meant = meanings(of)
    except IonwrightError:
        return 0
    for index, stage in enumerate(found):
        processes = (stage.process(electrode, "cell") for electrode in ("cathode", "anode"))
        if any(kind in process.species for process in processes if process for kind in meant):
            return index
    return 0


def _faraday_constant(task: Task) -> float:
    stated = next((one.value for one in task.given if one.quantity == "faraday_constant"), None)
    printed = stated or task.constants.values.get("faraday_constant")
    return value_in("faraday_constant", printed) if printed else CONSTANTS["faraday_constant"].value


def _charge(task: Task) -> float | None:
    """The charge that passes, if the current and the time or the charge itself say so."""
    electrical = tuple(
        one for one in task.given if one.quantity in {"charge", "current", "time", "amount_of_electrons"}
    )
    try:
        worked = work_out(replace(task, given=electrical, wanted=(Wanted("charge"),)))
    except IonwrightError:
        return None
    return nominal(worked.values[Key("charge")].number)
