"""From requests to encoded comparisons and lists of disagreements: read, compare, encode, keep."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import orjson

from ionwright.api.answers import BRIEFLY_CACHEABLE, CACHEABLE, Answer, tagged_answer
from ionwright.api.comparison_reader import ComparisonRequest, chosen_curricula, read_comparison_request
from ionwright.api.disagreement_reader import DisagreementRequest, read_disagreement_request
from ionwright.api.json_reader import read_json
from ionwright.api.query_reader import comparison_members
from ionwright.api.refusals import problem_of_refusal
from ionwright.api.request_reader import place_of
from ionwright.chemistry.cell import make_cell
from ionwright.teaching.comparison import compare
from ionwright.teaching.comparison_document import comparison_document
from ionwright.teaching.disagreement import disagreements
from ionwright.teaching.disagreement_document import disagreements_document

if TYPE_CHECKING:
    from werkzeug.datastructures import MultiDict

    from ionwright.api.kept_answers import KeptAnswers
    from ionwright.api.problems import Problem
    from ionwright.curricula.host import Registry
    from ionwright.errors import IonwrightError


@dataclass(frozen=True, slots=True)
class ComparisonDesk:
    """Answers requests to compare curricula, by body and by query, and asks for what they disagree on.

    Parameters
    ----------
    registry
        The curricula.
    kept
        The comparisons so far.
    kept_lists
        The lists of disagreements so far.
    """

    registry: Registry
    kept: KeptAnswers
    kept_lists: KeptAnswers

    def answer_body(self, body: bytes) -> Answer:
        """Answer to a JSON body that wants a cell compared."""
        return self.kept.by_raw(body, lambda: self._compared(read_json(body), "body"))

    def answer_query(self, raw: str, query: MultiDict[str, str]) -> Answer:
        """Answer to query parameters that want a cell compared; `raw` is the query string as it was sent."""
        return self.kept.by_raw(raw, lambda: self._compared(comparison_members(query), "query"))

    def answer_disagreements(self, raw: str, query: MultiDict[str, str]) -> Answer:
        """Answer to query parameters that ask where curricula disagree; `raw` is the query string as it was sent."""
        return self.kept_lists.by_raw(
            raw, lambda: self._disagreeing(read_disagreement_request(query, self.registry))
        )

    def _compared(self, members: Any, source: str) -> Answer:
        request = read_comparison_request(members, source=source)
        # with all that are loaded the answer changes when another one is
        cache_control = BRIEFLY_CACHEABLE if request.curricula is None else CACHEABLE

        def problem_of(refusal: IonwrightError) -> Problem:
            path, position = place_of(members, refusal.where, refusal.position)
            return problem_of_refusal(refusal, path, position, source=source)

        return self.kept.by_meaning(
            request, lambda: self._document(request, members, source), problem_of, cache_control=cache_control
        )

    def _document(self, request: ComparisonRequest, members: dict[str, Any], source: str) -> dict[str, Any]:
        cell = make_cell(request.cell)  # what is wrong with it comes before an unknown curriculum
        curricula = tuple(self.registry.values())
        if request.curricula is not None:
            is_text = type(members["curricula"]) is str
            curricula = chosen_curricula(
                request.curricula, ("curricula",), self.registry, source=source, is_text=is_text
            )
        return comparison_document(compare(cell, curricula), request.notations)

    def _disagreeing(self, request: DisagreementRequest) -> Answer:
        found = disagreements(request.curriculum, request.others, request.electrode)
        document = disagreements_document(found, offset=request.offset, limit=request.limit)
        return tagged_answer(orjson.dumps(document), cache_control=BRIEFLY_CACHEABLE)
