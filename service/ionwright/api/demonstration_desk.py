"""From descriptions of demonstrations to encoded plans: read, plan, encode, keep."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ionwright.api.demonstration_reader import (
    DemonstrationRequest,
    as_parameter,
    place_in_demonstration,
    read_demonstration_request,
)
from ionwright.api.json_reader import read_json
from ionwright.api.query_reader import demonstration_members
from ionwright.api.refusals import problem_of_refusal
from ionwright.chemistry.cell import make_cell
from ionwright.curricula import CurriculumFault
from ionwright.errors import IonwrightError
from ionwright.teaching.demonstrations import demonstration_document, plan_demonstration

if TYPE_CHECKING:
    from werkzeug.datastructures import MultiDict

    from ionwright.api.answers import Answer
    from ionwright.api.kept_answers import KeptAnswers
    from ionwright.api.problems import Problem
    from ionwright.curricula.host import Registry


@dataclass(frozen=True, slots=True)
class DemonstrationDesk:
    """Answers requests for plans, by body and by query.

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
        return self.kept.by_raw(raw, lambda: self._answer(demonstration_members(query), "query"))

    def _answer(self, members: Any, source: str) -> Answer:
        request = read_demonstration_request(members, source=source)
        return self.kept.by_meaning(
            request, lambda: self._document(request), lambda refusal: _refused(refusal, members, source)
        )

    def _document(self, request: DemonstrationRequest) -> dict[str, Any]:
        try:
            curriculum = self.registry[request.curriculum]
        except CurriculumFault:
            try:
                make_cell(request.description.cell)  # faults of a cell come before an unknown curriculum
            except IonwrightError as refusal:
                raise refusal.within("cell") from None
            raise
        return demonstration_document(plan_demonstration(request.description, curriculum), request.notations)


def _refused(refusal: IonwrightError, members: dict[str, Any], source: str) -> Problem:
    """Problem for a refusal of the layers below, placed in the request as it was sent."""
    path, position = place_in_demonstration(members, refusal)
    if source == "query":
        path = as_parameter(path)
    return problem_of_refusal(refusal, path, position, source=source)
