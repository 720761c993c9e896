"""Answers a task about amounts under a curriculum."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.faraday import WorkedOut, work_out
from ionwright.chemistry.amounts.quantity import QUANTITIES
from ionwright.chemistry.amounts.substance_meant import compound_meant, ion_carried
from ionwright.chemistry.amounts.task import Constants, Given, Task
from ionwright.chemistry.amounts.unknown_metal import substance
from ionwright.chemistry.units import read_unit
from ionwright.chemistry.written_quantity import Written, read_written
from ionwright.teaching.quantities.answers import Answer, answers
from ionwright.teaching.quantities.board_text import board_text
from ionwright.teaching.quantities.circuits import MadeCircuit, make_circuit
from ionwright.teaching.quantities.reading import read_asked, read_conventions, read_stated
from ionwright.teaching.quantities.stages_of_task import stages_of_task
from ionwright.teaching.quantities.working import Step, working

if TYPE_CHECKING:
    from collections.abc import Iterator

    from ionwright.chemistry.species import Species
    from ionwright.curricula.model import Curriculum
    from ionwright.teaching.prediction import Prediction
    from ionwright.teaching.quantities.description import TaskConventions, TaskDescription
    from ionwright.teaching.quantities.stages import Stage

__all__ = ["Solved", "solve_task"]

_PRINTED: Final = (
    "faraday_constant",
    "molar_gas_volume",
    "avogadro_constant",
    "elementary_charge",
    "gas_constant",
)


@dataclass(frozen=True, slots=True)
class Solved:
    """A task with its answers and the way to them.

    Parameters
    ----------
    curriculum
        Whose constants were used where the task states none.
    made
        The circuit, with the predictions behind it.
    worked
        Everything that follows, with its derivation.
    answers
        What was asked for.
    stages
        For one cell with a bath of known volume: what forms until which ion runs out; else empty.
    """

    curriculum: Curriculum
    made: MadeCircuit
    worked: WorkedOut
    answers: tuple[Answer, ...]
    stages: tuple[Stage, ...] = ()

    @property
    def steps(self) -> tuple[Step, ...]:
        """The working, as on the board; written down anew each time."""
        return working(self.worked, self.answers)

    def __str__(self) -> str:
        return board_text(self.steps, self.answers)


def solve_task(description: TaskDescription, curriculum: Curriculum) -> Solved:
    """The answers to a task about amounts, with the working.

    Raises
    ------
    IonwrightError
        What is wrong with the task, with its place in ``where``: a process that cannot run, a quantity that cannot
        be, figures that do not go together (``contradictory``), or too little to go on (``needs-more``).
    """
    conventions = description.conventions
    known = tuple(map(read_stated, description.known))
    wanted = tuple(map(read_asked, description.find))
    named = {one.quantity for one in known} | {one.quantity for one in wanted}
    is_over_water = conventions.gas_collected == "over water" or "water_vapour_pressure" in named
    made = make_circuit(description.processes, curriculum, is_over_water=is_over_water)
    known += tuple(_charge_of_ion(id_, charge) for id_, charge in made.charges)
    constants = _constants(curriculum, conventions)
    task = Task(made.circuit, known, wanted, constants, conventions.significant_figures)
    run = stages_of_task(task, made)
    task = run.task if run else task
    worked = work_out(replace(task, given=(*known, *_concentrations(task, made))))
    return Solved(curriculum, made, worked, answers(worked), run.stages if run else ())


def _charge_of_ion(process: str, charge: int) -> Given:
    return Given("ion_charge", read_written(str(charge)), process=process, where="half_equation")


def _constants(curriculum: Curriculum, conventions: TaskConventions) -> Constants:
    printed = curriculum.conventions.constants
    constants, masses = read_conventions(conventions)

    def mass(symbol: str) -> Written | None:
        if symbol in masses:
            return masses[symbol]
        text = printed.relative_atomic_mass(symbol)
        return read_written(text) if text else None

    return Constants({**_printed(curriculum), **constants}, mass, stated=frozenset(constants))


def _printed(curriculum: Curriculum) -> dict[str, Written]:
    constants = curriculum.conventions.constants
    texts = ((name, getattr(constants, name)) for name in _PRINTED)
    return {name: read_written(text, dimension=QUANTITIES[name].dimension) for name, text in texts if text}


def _concentrations(task: Task, made: MadeCircuit) -> Iterator[Given]:
    """The concentrations at the start that the descriptions of the cells hold, where a bath plays a part."""
    named = {one.quantity for one in task.given} | {one.quantity for one in task.wanted}
    if all(QUANTITIES[quantity].scope != "bath" for quantity in named) or "bath_concentration" in named:
        return
    texts = {one.of for one in task.given} | {one.of for one in task.wanted}
    compounds = [compound_meant(text) for text in sorted(texts) if text]
    for bath, prediction in made.predictions:
        present = [present for present in prediction.cell.electrolyte.ions if present.source == "electrolyte"]
        for one in present:
            if one.concentration:
                yield _start(prediction, one.ion.species.ascii, one.concentration, bath)
        for compound in dict.fromkeys(compounds):
            carried = ion_carried(compound, _in_bath(task, bath)) if compound else None
            held = next((p.concentration for p in present if carried and p.ion.species == carried[0]), None)
            if carried and held:
                yield _start(prediction, compound, held / carried[1], bath)


def _in_bath(task: Task, bath: str) -> frozenset[Species]:
    """The species that the processes of a bath take or give."""
    return frozenset(kind for p in task.circuit.processes if p.bath == bath for kind in p.species)


def _start(prediction: Prediction, of: str, concentration: float, bath: str) -> Given:
    """A concentration at the start, with as many figures as the one in the description of the cell."""
    ingredients = [one for one in prediction.cell.electrolyte.ingredients if one.concentration is not None]
    bringing = [one for one in ingredients if ion_carried(one.compound.formula, {substance(of)})]
    if len(bringing) == 1 and bringing[0].concentration and bringing[0].concentration.g_dm3:
        weighed = bringing[0]
        written = read_written(weighed.concentration.text)  # type: ignore[union-attr]  # looked at just above
        return Given("bath_concentration", written, of, bath, where="cell", weighed=weighed.compound.formula)
    texts = [one.concentration.text for one in ingredients if one.concentration and one.concentration.mol_dm3]
    text = f"{concentration:g} mol/dm3"
    written = Written(text, concentration, read_unit("mol/dm3"), min(map(_figures, texts), default=3), None)
    return Given("bath_concentration", written, of, bath, where="cell")


def _figures(text: str) -> int:
    return read_written(text).significant_figures
