"""From tasks about amounts to encoded answers: read, solve, encode, keep."""

from __future__ import annotations

import logging
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import orjson

from ionwright.api.answers import Answer, AnswerStore, tagged_answer
from ionwright.api.json_reader import read_json
from ionwright.api.problems import Fault, Problem
from ionwright.api.quantities_reader import QuantitiesRequest, as_parameter, read_quantities_request
from ionwright.api.query_reader import quantities_members
from ionwright.api.task_places import place_in_task
from ionwright.api.texts import with_plus_told
from ionwright.chemistry.cell import make_cell
from ionwright.chemistry.faults import Unbalanced
from ionwright.curricula import CurriculumFault
from ionwright.errors import IonwrightError
from ionwright.teaching.quantities import quantities_document, solve_task

if TYPE_CHECKING:
    from collections.abc import Callable

    from werkzeug.datastructures import MultiDict

    from ionwright.curricula.host import Registry

_LONGEST_KEY = 4096
_OPERATION = "quantities"
_log = logging.getLogger("ionwright.api")


@dataclass(frozen=True, slots=True)
class QuantitiesDesk:
    """Answers requests for quantities, by body and by query.

    An answer is kept under the raw request and under what it means; a refusal names places in the raw request
    and is kept under that alone.

    Parameters
    ----------
    registry
        The curricula.
    store
        Keeps answers; those of other operations may stand in it too.
    """

    registry: Registry
    store: AnswerStore

    def answer_body(self, body: bytes) -> Answer:
        """Answer to a JSON body."""
        return self._kept(body, lambda: read_json(body), "body")

    def answer_query(self, raw: str, query: MultiDict[str, str]) -> Answer:
        """Answer to query parameters; `raw` is the query string as it was sent."""
        return self._kept(raw, lambda: quantities_members(query), "query")

    def _kept(self, raw: bytes | str, members_of: Callable[[], Any], source: str) -> Answer:
        key = (_OPERATION, raw)  # the same bytes may be sent to other operations
        answer = self.store.get(key)
        if answer is None:
            try:
                answer = self._answer(members_of(), source)
            except Problem as problem:
                answer = problem.answer()
            if len(raw) <= _LONGEST_KEY and answer.status < 500:
                self.store.put(key, answer)
        return answer

    def _answer(self, members: Any, source: str) -> Answer:
        request = read_quantities_request(members, source=source)
        answer = self.store.get(request)
        if answer is None:
            try:
                document = self._document(request)
            except Unbalanced:
                raise  # never the sender's fault: it is answered as a failure of the service
            except IonwrightError as refusal:
                raise _refused(refusal, members, source) from refusal
            answer = tagged_answer(orjson.dumps(document))
            self.store.put(request, answer)
        return answer

    def _document(self, request: QuantitiesRequest) -> dict[str, Any]:
        try:
            curriculum = self.registry[request.curriculum]
        except CurriculumFault:
            _refuse_cells_first(request)
            raise
        return quantities_document(solve_task(request.task, curriculum), request.notations)


def _refuse_cells_first(request: QuantitiesRequest) -> None:
    """Refuse a cell that would not work: faults of a cell come before an unknown curriculum."""
    for process in request.task.processes:
        if process.cell is not None:
            try:
                make_cell(process.cell)
            except IonwrightError as refusal:
                raise refusal.within(process.where) from None


def _refused(refusal: IonwrightError, members: dict[str, Any], source: str) -> Problem:
    """Problem for a refusal of the layers below, placed in the request as it was sent."""
    detail = str(refusal)
    path, position = place_in_task(members, refusal)
    if source == "query":
        path = as_parameter(path)
        if path == ("half_equation",):
            detail = with_plus_told(detail, members["half_equation"])
    fault = Fault(path, refusal.code, detail, position)
    problem = Problem(refusal.code, detail, faults=[fault], source=source)
    if problem.status >= 500:
        _log.error("%s: %s", refusal.code, detail)
    return problem
