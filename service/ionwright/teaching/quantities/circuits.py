"""From half-equations, cells and metals to the circuit of a task."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.circuit import Circuit, Process
from ionwright.chemistry.amounts.unknown_metal import metal_half, read_unknown_metal
from ionwright.chemistry.cell import make_cell
from ionwright.chemistry.equation import Equation, Term
from ionwright.chemistry.faults import CellRefused, QuantityFault
from ionwright.chemistry.medium import state_of
from ionwright.curricula.aside import Aside
from ionwright.errors import IonwrightError
from ionwright.teaching.half_equations import read_half_equation
from ionwright.teaching.prediction import Prediction, predict

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from ionwright.curricula.model import Curriculum
    from ionwright.teaching.quantities.description import ProcessDescription

__all__ = ["MadeCircuit", "make_circuit"]

_ELECTRODES: Final = ("cathode", "anode")


@dataclass(frozen=True, slots=True)
class MadeCircuit:
    """The circuit of a task, with the predictions behind it.

    Parameters
    ----------
    predictions
        Of the cells in it, by the id of their bath.
    charges
        Of the ions of unknown metals, by the id of their process, where the half-equation says them.
    """

    circuit: Circuit
    predictions: tuple[tuple[str, Prediction], ...]
    charges: tuple[tuple[str, int], ...] = ()


def make_circuit(
    descriptions: Iterable[ProcessDescription], curriculum: Curriculum, *, is_over_water: bool
) -> MadeCircuit:
    """The circuit that runs through what is described.

    Raises
    ------
    IonwrightError
        A half-equation that cannot be read or does not balance, a cell that would not work, or an electrode that
        the course leaves undecided; with the path of it in ``where``.
    """
    return _made(tuple(descriptions), is_over_water, id(curriculum), Aside(curriculum))


@lru_cache(maxsize=512)
def _made(
    described: tuple[ProcessDescription, ...],
    is_over_water: bool,  # noqa: FBT001 - part of a cache key
    _curriculum_id: int,
    aside: Aside[Curriculum],
) -> MadeCircuit:
    curriculum = aside.value
    common = "cell" if {one.id for one in described} == set(_ELECTRODES) else ""
    processes: list[Process] = []
    predictions: list[tuple[str, Prediction]] = []
    charges: list[tuple[str, int]] = []
    for one in described:
        if one.cell is not None:
            prediction = _prediction(one, curriculum)
            predictions.append((one.id, prediction))
            processes += _of_cell(one, prediction, is_alone=len(described) == 1)
        elif one.metal:
            processes.append(_of_metal(one, one.metal))
        elif unknown := _unknown_metal(one):
            processes.append(_of_metal(one, unknown[0]))
            charges.append((one.id, unknown[1]))
        else:
            half = _dressed(_read(one.half_equation, one.where))
            electrode = one.electrode or one.id
            processes.append(Process(one.id, half, electrode, bath=one.bath or common or electrode))
    _check_ids(processes, described)
    circuit = Circuit(tuple(processes), is_over_water, present=tuple(_present(predictions)))
    return MadeCircuit(circuit, tuple(predictions), tuple(charges))


def _present(predictions: Iterable[tuple[str, Prediction]]) -> Iterator[tuple[str, str]]:
    """The ions that the electrolytes themselves bring: the bath and the ion."""
    for bath, prediction in predictions:
        for present in prediction.cell.electrolyte.ions:
            if present.source == "electrolyte":
                yield bath, present.ion.species.ascii


@lru_cache(maxsize=1024)
def _read(text: str, where: str) -> Equation:
    return read_half_equation(text, where)


def _dressed(half: Equation) -> Equation:
    """The half-equation with the usual state of every species that has none."""

    def side(terms: tuple[Term, ...]) -> tuple[Term, ...]:
        return tuple(t if t.state else Term(t.species, t.coefficient, state_of(t.species)) for t in terms)

    return Equation(side(half.left), side(half.right))


def _of_metal(one: ProcessDescription, metal: str) -> Process:
    try:
        half = metal_half(metal)
    except KeyError:
        detail = f'"{metal[:40]}" is neither the symbol of an element nor a letter for an unknown metal.'
        remedy = "Write a symbol such as Cr, or a letter such as X."
        raise QuantityFault("unknown-element", detail, where=one.where, remedy=remedy) from None
    return Process(one.id, half, one.electrode or one.id, bath=one.id, has_unknown_charge=True)


def _unknown_metal(one: ProcessDescription) -> tuple[str, int] | None:
    try:
        return read_unknown_metal(one.half_equation)
    except IonwrightError as fault:
        raise fault.within(one.where) from None


def _prediction(one: ProcessDescription, curriculum: Curriculum) -> Prediction:
    assert one.cell is not None  # noqa: S101 - only asked of cells
    try:
        return predict(make_cell(one.cell), curriculum)
    except IonwrightError as refusal:
        raise refusal.within(one.where) from None


def _of_cell(one: ProcessDescription, prediction: Prediction, *, is_alone: bool) -> Iterator[Process]:
    """The processes of a cell: both electrodes, or the one that is asked for."""
    found = False
    for name, account in (("cathode", prediction.cathode), ("anode", prediction.anode)):
        if account.half_equation is None or one.electrode not in ("", name):
            continue
        found = True
        id_ = name if is_alone else one.id if one.electrode else f"{one.id} {name}"
        yield Process(id_, _dressed(account.half_equation), f"{one.id} {name}", bath=one.id)
    if not found:
        account = prediction.anode if one.electrode == "anode" else prediction.cathode
        detail = " ".join(account.verdict.because)
        remedy = "Give the half-equation that you want to reckon with, or choose another curriculum."
        raise CellRefused("expectation-undecided", detail, where=one.where, remedy=remedy)


def _check_ids(processes: list[Process], described: tuple[ProcessDescription, ...]) -> None:
    ids = [process.id for process in processes]
    for one in described:
        if ids.count(one.id) > 1:
            detail = f'Two processes are called "{one.id}".'
            raise QuantityFault("contradictory", detail, where=one.where, remedy="Give each its own id.")
