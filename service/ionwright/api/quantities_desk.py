"""From tasks about amounts to encoded answers: read, solve, encode, keep."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ionwright.api.json_reader import read_json
from ionwright.api.quantities_reader import QuantitiesRequest, as_parameter, read_quantities_request
from ionwright.api.query_reader import quantities_members
from ionwright.api.refusals import problem_of_refusal
from ionwright.api.task_places import place_in_task
from ionwright.api.texts import with_plus_told
from ionwright.chemistry.cell import make_cell
from ionwright.curricula import CurriculumFault
from ionwright.errors import IonwrightError
from ionwright.teaching.quantities import quantities_document, solve_task

if TYPE_CHECKING:
    from werkzeug.datastructures import MultiDict

    from ionwright.api.answers import Answer
    from ionwright.api.kept_answers import KeptAnswers
    from ionwright.api.problems import Problem
    from ionwright.curricula.host import Registry


@dataclass(frozen=True, slots=True)
class QuantitiesDesk:
    """Answers requests for quantities, by body and by query.

    Parameters
    ----------
    registry
        The curricula.
    kept
        The answers to these requests so far.
    """

    registry: Registry
    kept: KeptAnswers

    def answer_body(self, body: bytes) -> Answer:
        """Answer to a JSON body."""
        return self.kept.by_raw(body, lambda: self._answer(read_json(body), "body"))

    def answer_query(self, raw: str, query: MultiDict[str, str]) -> Answer:
        """Answer to query parameters; `raw` is the query string as it was sent."""
        return self.kept.by_raw(raw, lambda: self._answer(quantities_members(query), "query"))

    def _answer(self, members: Any, source: str) -> Answer:
        request = read_quantities_request(members, source=source)
        return self.kept.by_meaning(
            request, lambda: self._document(request), lambda refusal: _refused(refusal, members, source)
        )

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
    return problem_of_refusal(refusal, path, position, source=source, detail=detail)
