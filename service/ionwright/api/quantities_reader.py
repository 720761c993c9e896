"""From the members of a request to the task about amounts that it sets, and back to the member at fault."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ionwright.api.conventions_reader import read_task_conventions
from ionwright.api.known_reader import read_asked, read_known
from ionwright.api.problems import Fault, Path, validation_problem
from ionwright.api.process_reader import cells_in, read_processes
from ionwright.api.request_reader import LANGUAGES, OTHER_WORDS, read_notations
from ionwright.api.texts import body_members, note_unknown_fields, read_choice, read_text
from ionwright.teaching.quantities import TaskConventions, TaskDescription

if TYPE_CHECKING:
    from collections.abc import Iterable

QUANTITIES_FIELDS = (
    "half_equation",
    "cell",
    "metal",
    "electrode",
    "processes",
    "known",
    "find",
    "curriculum",
    "conventions",
    "notation",
    "language",
)
_OTHER_WORDS = OTHER_WORDS | {
    "equation": "half_equation",
    "given": "known",
    "knowns": "known",
    "data": "known",
    "unknown": "find",
    "wanted": "find",
    "quantities": "find",
    "constants": "conventions",
    "cells": "processes",
    "half_equations": "processes",
}
_EXAMPLE = (
    '{"half_equation": "Ni^2+ + 2e- -> Ni", "known": {"current": "0.50 A", "time": "20 min"}, "find": "mass",'
    ' "curriculum": "a-level"}'
)


@dataclass(frozen=True, slots=True)
class QuantitiesRequest:
    """What a request asks to be worked out; equal requests have equal answers."""

    task: TaskDescription
    curriculum: str
    notations: frozenset[str] | None


def read_quantities_request(data: object, *, source: str = "body") -> QuantitiesRequest:
    """Read the members of a request for quantities.

    Raises
    ------
    Problem
        With code ``validation-error`` and all faults at once.
    """
    faults: list[Fault] = []
    members = body_members(data, _EXAMPLE, source=source)
    if not members.keys() <= _KNOWN_FIELDS:
        note_unknown_fields(members, (), QUANTITIES_FIELDS, faults, _OTHER_WORDS)
    curriculum = _curriculum(members, faults)
    task = TaskDescription(
        processes=read_processes(members, curriculum, faults),
        known=read_known(members["known"], faults) if "known" in members else (),
        find=read_asked(members["find"], faults) if "find" in members else (),
        conventions=read_task_conventions(members["conventions"], faults)
        if "conventions" in members
        else _NO_CONVENTIONS,
    )
    if "find" not in members:
        detail = 'Say what is asked for: "find" takes a quantity such as "mass of Ni", or a list of them.'
        faults.append(Fault(("find",), "missing-field", detail))
    notations = _notations(members, faults)
    if faults:
        raise validation_problem(_placed(faults, source), source=source)
    return QuantitiesRequest(task, curriculum, notations)


_KNOWN_FIELDS = frozenset(QUANTITIES_FIELDS)
_NO_CONVENTIONS = TaskConventions()


def _curriculum(data: dict[str, Any], faults: list[Fault]) -> str:
    """Id of the curriculum; it may stand in a cell instead of beside it."""
    if "curriculum" in data:
        return read_text(data["curriculum"], ("curriculum",), '"a-level"', faults)
    for _, cell in cells_in(data):
        if type(cell.get("curriculum")) is str:
            return str(cell["curriculum"]).strip()
    detail = (
        'Say whose constants count: "curriculum" takes an id, such as "a-level".'
        " GET /v1/curricula lists those that are loaded."
    )
    faults.append(Fault(("curriculum",), "missing-field", detail))
    return "none"  # stands in for cells without one, so that the fault is told once


def _notations(data: dict[str, Any], faults: list[Fault]) -> frozenset[str] | None:
    if "language" in data:
        read_choice(data["language"], ("language",), LANGUAGES, faults)
    if "notation" in data:
        return read_notations(data["notation"], faults)
    own = next((cell["notation"] for _, cell in cells_in(data) if "notation" in cell), None)
    # what is wrong with it was told when its cell was read
    return None if own is None else read_notations(own, [])


def _placed(faults: Iterable[Fault], source: str) -> Iterable[Fault]:
    if source == "body":
        return faults
    return [Fault(as_parameter(f.path), f.code, f.detail, f.position) for f in faults]


def as_parameter(path: Path) -> Path:
    """The query parameter from which the member at a path was made."""
    if len(path) > 1 and path[0] in {"known", "conventions"}:
        return (path[1],)
    return path[:1]
