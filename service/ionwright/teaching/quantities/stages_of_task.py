"""The stages of a task with one cell and a bath of known volume, and the task with its charge divided among them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.faraday import work_out
from ionwright.chemistry.amounts.known_values import checked_value
from ionwright.chemistry.amounts.quantity import Key
from ionwright.chemistry.amounts.stated_values import value_in
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
    charge_C = _charge(task)
    named = {one.quantity for one in task.given} | {one.quantity for one in task.wanted}
    circuit = None
    if charge_C is not None and _DIVIDES_OTHERWISE.isdisjoint(named):
        circuit = circuit_of_stages(found, charge_C, bath, task.circuit)
    return TaskInStages(found, replace(task, circuit=circuit) if circuit else task)


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
