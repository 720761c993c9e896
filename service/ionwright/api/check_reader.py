"""From the members of a request to the question that it asks and the answers that it wants checked."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ionwright.api.problems import Fault, Path, Problem, validation_problem
from ionwright.api.request_reader import LANGUAGES, OTHER_WORDS, read_notations, read_prediction_request
from ionwright.api.texts import (
    LONGEST_TEXT,
    body_members,
    named,
    note_unknown_fields,
    read_choice,
    read_text,
    wrong_type,
)
from ionwright.chemistry.equation_text import MAX_EQUATION_LENGTH
from ionwright.teaching.marking import DIRECTIONS

if TYPE_CHECKING:
    from ionwright.chemistry.cell import CellDescription

ELECTRODES = ("cathode", "anode")
MOST_EXPECTED = 20
QUESTION_FIELDS = (
    "cell",
    "electrode",
    "written_as",
    "expected",
    "curriculum",
    "state_symbols",
    "notation",
    "language",
)
ANSWER_FIELDS = ("answer", "ref")
_EXAMPLE = '"Ni^2+ + 2e- -> Ni"'
_OTHER_WORDS = OTHER_WORDS | {
    "line": "answer",
    "equation": "answer",
    "half_equation": "answer",
    "student_answer": "answer",
    "reference": "ref",
    "id": "ref",
    "question": "cell",
    "model_answer": "expected",
    "answers": "items",
}


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked: an electrode of a cell, or given half-equations.

    Parameters
    ----------
    cell, electrode, written_as
        The cell, which of its electrodes, and the direction that the task asks for; no cell if lines were given.
    expected
        The lines that are right; empty if a cell was given.
    curriculum
        Id of the curriculum whose conventions count.
    state_symbols
        Whether the task asks for state symbols.
    notations
        In which notations equations are wanted; None for all.
    """

    cell: CellDescription | None
    electrode: str
    written_as: str
    expected: tuple[str, ...]
    curriculum: str
    state_symbols: bool
    notations: frozenset[str] | None


def read_members(data: object, known: tuple[str, ...], example: str) -> dict[str, Any]:
    """Return the members of a request that is an object without unknown fields.

    Raises
    ------
    Problem
        With code ``validation-error``.
    """
    members = body_members(data, example)
    if not members.keys() <= set(known):
        faults: list[Fault] = []
        note_unknown_fields(members, (), known, faults, _OTHER_WORDS)
        raise validation_problem(faults)
    return members


def read_answer(data: dict[str, Any]) -> tuple[str, str | None]:
    """Return the student's line, whatever it is, and the sender's own mark for it, if there is one.

    Raises
    ------
    Problem
        With code ``validation-error``.
    """
    faults: list[Fault] = []
    answer = data.get("answer")
    if "answer" not in data:
        detail = 'The request lacks "answer", the line that the student wrote.'
        faults.append(Fault(("answer",), "missing-field", detail))
    elif type(answer) is not str:
        faults.append(wrong_type(answer, ("answer",), "a text", _EXAMPLE))
    ref = data.get("ref")
    if "ref" in data and type(ref) is not str:
        faults.append(wrong_type(ref, ("ref",), "a text", '"seat 14"'))
    elif type(ref) is str and len(ref) > LONGEST_TEXT:
        detail = f'"ref" may have {LONGEST_TEXT} characters, and has {len(ref)}.'
        faults.append(Fault(("ref",), "too-long", detail))
    if faults:
        raise validation_problem(faults)
    return str(answer), ref if type(ref) is str else None


def read_question(data: dict[str, Any]) -> Question:
    """Return the question that the members of a request ask.

    Raises
    ------
    Problem
        With code ``validation-error`` and all faults at once.
    """
    faults: list[Fault] = []
    _note_which_question(data, faults)
    electrode, written_as, notations = _wishes(data, faults)
    curriculum = _curriculum(data, faults)
    expected = _expected(data["expected"], faults) if "expected" in data else ()
    cell, of_cell, notations_of_cell = _cell(data, curriculum, faults)
    if faults:
        raise validation_problem(faults)
    if "notation" not in data:
        notations = notations_of_cell
    return Question(
        cell,
        electrode,
        written_as,
        expected,
        of_cell or curriculum,
        data.get("state_symbols", False),
        notations,
    )


def check_wishes(data: dict[str, Any]) -> None:
    """Make sure that what items share without sharing a question is of the right shape.

    Raises
    ------
    Problem
        With code ``validation-error`` and all faults at once.
    """
    faults: list[Fault] = []
    _wishes(data, faults)
    if "curriculum" in data:
        _curriculum(data, faults)
    if faults:
        raise validation_problem(faults)


def _wishes(data: dict[str, Any], faults: list[Fault]) -> tuple[str, str, frozenset[str] | None]:
    """The electrode, the direction and the notations asked for; notes what is wrong with these and their like."""
    state_symbols = data.get("state_symbols", False)
    if type(state_symbols) is not bool:
        faults.append(wrong_type(state_symbols, ("state_symbols",), "true or false", "true"))
    if "language" in data:
        read_choice(data["language"], ("language",), LANGUAGES, faults)
    return (
        _choice(data, "electrode", ELECTRODES, faults),
        _choice(data, "written_as", DIRECTIONS, faults),
        read_notations(data["notation"], faults) if "notation" in data else None,
    )


def _note_which_question(data: dict[str, Any], faults: list[Fault]) -> None:
    if "cell" in data and "expected" in data:
        detail = 'A question has either a "cell" with an "electrode", or "expected"; this one has both.'
        faults.append(Fault(("expected",), "unknown-field", detail))
    elif "cell" not in data and "expected" not in data:
        detail = (
            'Say what was asked: "cell" and "electrode", or the half-equations that are right in "expected".'
        )
        faults.append(Fault(("cell",), "missing-field", detail))
    elif "cell" in data and "electrode" not in data:
        detail = 'Say which electrode was asked for: "cathode" or "anode".'
        faults.append(Fault(("electrode",), "missing-field", detail))
    for name in ("electrode", "written_as"):
        if "expected" in data and name in data:
            detail = f'"{name}" belongs to a "cell". Leave it out where the half-equation is given.'
            faults.append(Fault((name,), "unknown-field", detail))


def _choice(data: dict[str, Any], name: str, choices: tuple[str, ...], faults: list[Fault]) -> str:
    return read_choice(data[name], (name,), choices, faults) if name in data else ""


def _curriculum(data: dict[str, Any], faults: list[Fault]) -> str:
    if "curriculum" in data:
        return read_text(data["curriculum"], ("curriculum",), '"gcse"', faults)
    if "expected" in data:
        detail = 'Say whose conventions count: "curriculum" takes an id, such as "gcse".'
        faults.append(Fault(("curriculum",), "missing-field", detail))
    return ""


def _expected(value: Any, faults: list[Fault]) -> tuple[str, ...]:
    if type(value) is str:
        return (read_line(value, ("expected",), faults),)
    if type(value) is not list:
        faults.append(wrong_type(value, ("expected",), "a half-equation or a list of them", f"[{_EXAMPLE}]"))
        return ()
    if not value or len(value) > MOST_EXPECTED:
        detail = f'"expected" takes 1 to {MOST_EXPECTED} half-equations, and has {len(value)}.'
        faults.append(Fault(("expected",), "too-many" if value else "empty", detail))
        return ()
    return tuple(read_line(line, ("expected", index), faults) for index, line in enumerate(value))


def read_line(value: Any, path: Path, faults: list[Fault]) -> str:
    """A half-equation as it was sent, so that positions in it hold; a fault is noted if it is no usable text."""
    if type(value) is not str:
        faults.append(wrong_type(value, path, "a half-equation", _EXAMPLE))
        return ""
    if not value.strip():
        faults.append(Fault(path, "empty", f"{named(path)} is empty. Write for example {_EXAMPLE}."))
    elif len(value) > MAX_EQUATION_LENGTH:
        detail = f"{named(path)} may have {MAX_EQUATION_LENGTH} characters, and has {len(value)}."
        faults.append(Fault(path, "too-long", detail))
    return value


def _cell(
    data: dict[str, Any], curriculum: str, faults: list[Fault]
) -> tuple[CellDescription | None, str, frozenset[str] | None]:
    """Return the cell, its curriculum and the notations that it asks for; the curriculum may stand beside it."""
    if "cell" not in data:
        return None, "", None
    members = data["cell"]
    if type(members) is not dict:
        faults.append(wrong_type(members, ("cell",), "a cell", '{"electrolyte": "NiSO4", ...}'))
        return None, "", None
    if curriculum and "curriculum" not in members:
        members = members | {"curriculum": curriculum}
    try:
        request = read_prediction_request(members)
    except Problem as problem:
        faults += [Fault(("cell", *f.path), f.code, f.detail, f.position) for f in problem.faults]
        return None, "", None
    if curriculum and request.curriculum != curriculum:
        detail = 'The cell names another curriculum than "curriculum" beside it. Name one of them only.'
        faults.append(Fault(("curriculum",), "not-a-choice", detail))
    return request.cell, request.curriculum, request.notations
