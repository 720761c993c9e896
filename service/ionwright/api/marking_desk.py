"""From answers to encoded markings: read the question, mark the line, encode; nothing of an answer is kept."""

from __future__ import annotations

import logging
import traceback
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any
from uuid import uuid4

import orjson

from ionwright.api.answers import JSON, Answer
from ionwright.api.check_reader import (
    ANSWER_FIELDS,
    QUESTION_FIELDS,
    Question,
    check_wishes,
    read_answer,
    read_members,
    read_question,
)
from ionwright.api.json_reader import read_json
from ionwright.api.problems import Fault, Problem, validation_problem
from ionwright.api.refusals import problem_of_refusal
from ionwright.api.request_reader import place_of
from ionwright.api.texts import kind_of
from ionwright.chemistry.cell import make_cell
from ionwright.curricula import CurriculumFault
from ionwright.errors import IonwrightError
from ionwright.teaching.marking import check, electrode_expectation, given_expectation, marking_document

if TYPE_CHECKING:
    from ionwright.curricula.host import Registry
    from ionwright.teaching.marking import Expectation

_EXAMPLE = '{"answer": "Ni2+ + 2e- -> Ni", "expected": ["Ni^2+ + 2e- -> Ni"], "curriculum": "gcse"}'
_BATCH_EXAMPLE = '{"items": [{"answer": "..."}], "expected": ["Ni^2+ + 2e- -> Ni"], "curriculum": "gcse"}'
_FIELDS = (*ANSWER_FIELDS, *QUESTION_FIELDS)
_BATCH_FIELDS = ("items", *QUESTION_FIELDS)
_OF_A_CELL = ("cell", "electrode", "written_as")
_HEADERS = (("Content-Type", JSON), ("Cache-Control", "no-store"))
_log = logging.getLogger("ionwright.api")

Asked = tuple["Expectation", "frozenset[str] | None"]


@dataclass(frozen=True, slots=True)
class MarkingDesk:
    """Answers requests to check a line, one or a class set.

    Parameters
    ----------
    registry
        The curricula.
    """

    registry: Registry

    def answer_body(self, body: bytes) -> Answer:
        """Answer to one line in a JSON body.

        Raises
        ------
        Problem
            If the request cannot be read or its question cannot be asked; never because of the student's line.
        """
        try:
            document = self._checked(read_members(read_json(body), _FIELDS, _EXAMPLE), None)
        except Problem:
            raise
        except Exception as failure:
            raise _incident(failure) from None
        return Answer(200, orjson.dumps(document), _HEADERS)

    def answer_batch(self, body: bytes, limit: int) -> Answer:
        """Answer to a class set in a JSON body; what is wrong with one item is answered in its place.

        Raises
        ------
        Problem
            If the body cannot be read, or the question that the items share cannot be asked.
        """
        data = read_members(read_json(body), _BATCH_FIELDS, _BATCH_EXAMPLE)
        items = _items(data, limit)
        shared = {name: value for name, value in data.items() if name != "items"}
        if "cell" in shared or "expected" in shared:
            asked = self._asked(shared)
        else:
            check_wishes(shared)
            asked = None
        results = b",".join(self._result(item, shared, asked) for item in items)
        return Answer(200, b'{"results":[' + results + b"]}", _HEADERS)

    def _result(self, item: Any, shared: dict[str, Any], asked: Asked | None) -> bytes:
        try:
            members = read_members(item, _FIELDS, '{"answer": "Ni2+ + 2e- -> Ni"}')
            has_own = any(name in members for name in QUESTION_FIELDS)
            document = self._checked(
                _with_shared(members, shared) if has_own or asked is None else members,
                None if has_own else asked,
            )
            return orjson.dumps(document)
        except Problem as problem:
            return _problem_of_item(problem, item)
        except Exception as failure:
            return _problem_of_item(_incident(failure), item)

    def _checked(self, members: dict[str, Any], asked: Asked | None) -> dict[str, Any]:
        answer, ref = read_answer(members)
        expectation, notations = asked or self._asked(members)
        document = marking_document(check(answer, expectation), notations)
        return {"ref": ref, **document} if ref is not None else document

    def _asked(self, members: dict[str, Any]) -> Asked:
        question = read_question(members)
        try:
            return self._expectation(question), question.notations
        except IonwrightError as refusal:
            raise _refused(refusal, members) from refusal

    def _expectation(self, question: Question) -> Expectation:
        try:
            curriculum = self.registry[question.curriculum]
        except CurriculumFault:
            if question.cell is not None:
                make_cell(question.cell)  # faults of a cell come before an unknown curriculum
            raise
        if question.cell is None:
            return given_expectation(question.expected, curriculum, states_asked=question.state_symbols)
        return electrode_expectation(
            question.cell,
            question.electrode,
            curriculum,
            written_as=question.written_as,
            states_asked=question.state_symbols,
        )


def _items(data: dict[str, Any], limit: int) -> list[Any]:
    items = data.get("items")
    path = ("items",)
    if "items" not in data:
        fault = Fault(path, "missing-field", 'The body lacks "items", the list of answers.')
    elif type(items) is not list:
        detail = f'"items" is {kind_of(items)}; it has to be a list of answers.'
        fault = Fault(path, "wrong-type", detail)
    elif not items:
        fault = Fault(path, "empty", '"items" is an empty list. Send at least one answer.')
    elif len(items) > limit:
        detail = f'"items" takes {limit} answers at most, and has {len(items)}. Send several batches.'
        fault = Fault(path, "too-many", detail)
    else:
        return items
    raise validation_problem([fault])


def _with_shared(members: dict[str, Any], shared: dict[str, Any]) -> dict[str, Any]:
    """The members of an item with those that all items share; a question of its own takes the place of theirs."""
    dropped: tuple[str, ...] = ()
    if "expected" in members:
        dropped = _OF_A_CELL
    elif "cell" in members:
        has_curriculum = type(members["cell"]) is dict and "curriculum" in members["cell"]
        dropped = ("expected", "curriculum") if has_curriculum else ("expected",)
    return {name: value for name, value in shared.items() if name not in dropped} | members


def _problem_of_item(problem: Problem, item: Any) -> bytes:
    ref = item.get("ref") if type(item) is dict else None
    named = {"ref": ref} if type(ref) is str and len(ref) <= 200 else {}
    return orjson.dumps(named | problem.document())


def _refused(refusal: IonwrightError, members: dict[str, Any]) -> Problem:
    """Problem for a question that cannot be asked, placed in the request as it was sent."""
    where, position = refusal.where, refusal.position
    if where.startswith("expected"):
        index = int(where.partition("/")[2] or 0)
        path: tuple[str | int, ...] = (
            ("expected", index) if type(members["expected"]) is list else ("expected",)
        )
    elif where == "electrode" or "cell" not in members:
        path = (where,) if where else ()
    else:
        path, position = place_of(members["cell"], where, position)
        is_beside = where == "curriculum" and "curriculum" not in members["cell"]
        path = path if is_beside else ("cell", *path)
    return problem_of_refusal(refusal, path, position)


def _incident(failure: Exception) -> Problem:
    """Problem for an exception that nobody foresaw.

    Its kind and its way through the code are logged and its message is not: the message may hold what a
    student wrote.
    """
    number = f"urn:uuid:{uuid4()}"
    way = "".join(traceback.format_tb(failure.__traceback__))
    _log.error("incident %s: %s\n%s", number, type(failure).__name__, way)
    detail = (
        "The service failed on this request, and the failure is in its log."
        f" Tell its operator the incident number {number}."
    )
    return Problem("internal-error", detail, members={"instance": number})
