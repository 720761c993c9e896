"""From requests to encoded comparisons and lists of disagreements: read, compare, encode, keep."""

from __future__ import annotations

import logging
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import orjson

from ionwright.api.answers import BRIEFLY_CACHEABLE, CACHEABLE, Answer, AnswerStore, tagged_answer
from ionwright.api.comparison_reader import ComparisonRequest, chosen_curricula, read_comparison_request
from ionwright.api.disagreement_reader import DisagreementRequest, read_disagreement_request
from ionwright.api.json_reader import read_json
from ionwright.api.problems import Fault, Problem
from ionwright.api.query_reader import comparison_members
from ionwright.api.request_reader import place_of
from ionwright.chemistry.cell import make_cell
from ionwright.chemistry.faults import Unbalanced
from ionwright.errors import IonwrightError
from ionwright.teaching.comparison import compare
from ionwright.teaching.comparison_document import comparison_document
from ionwright.teaching.disagreement import disagreements
from ionwright.teaching.disagreement_document import disagreements_document

if TYPE_CHECKING:
    from collections.abc import Callable

    from werkzeug.datastructures import MultiDict

    from ionwright.chemistry.cell import Cell
    from ionwright.curricula.host import Registry

_LONGEST_KEY = 4096
_log = logging.getLogger("ionwright.api")


@dataclass(frozen=True, slots=True)
class ComparisonDesk:
    """Answers requests to compare curricula, by body and by query, and asks for what they disagree on.

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
        """Answer to a JSON body that wants a cell compared."""
        return self._kept(("comparisons", body), body, lambda: self._compared(read_json(body), "body"))

    def answer_query(self, raw: str, query: MultiDict[str, str]) -> Answer:
        """Answer to query parameters that want a cell compared; `raw` is the query string as it was sent."""
        key = ("comparisons", raw)
        return self._kept(key, raw, lambda: self._compared(comparison_members(query), "query"))

    def answer_disagreements(self, raw: str, query: MultiDict[str, str]) -> Answer:
        """Answer to query parameters that ask where curricula disagree; `raw` is the query string as it was sent."""
        key = ("disagreements", raw)
        return self._kept(
            key, raw, lambda: self._disagreeing(read_disagreement_request(query, self.registry))
        )

    def _kept(
        self, key: tuple[str, bytes | str], raw: bytes | str, answer_of: Callable[[], Answer]
    ) -> Answer:
        answer = self.store.get(key)
        if answer is None:
            try:
                answer = answer_of()
            except Problem as problem:
                answer = problem.answer()
            if len(raw) <= _LONGEST_KEY and answer.status < 500:
                self.store.put(key, answer)
        return answer

    def _compared(self, members: Any, source: str) -> Answer:
        request = read_comparison_request(members, source=source)
        answer = self.store.get(request)
        if answer is None:
            cell = _cell(request, members, source)
            curricula = tuple(self.registry.values())
            if request.curricula is not None:
                is_text = type(members["curricula"]) is str
                curricula = chosen_curricula(
                    request.curricula, ("curricula",), self.registry, source=source, is_text=is_text
                )
            document = comparison_document(compare(cell, curricula), request.notations)
            # with all that are loaded the answer changes when another one is
            is_of_all = request.curricula is None
            cache_control = BRIEFLY_CACHEABLE if is_of_all else CACHEABLE
            answer = tagged_answer(orjson.dumps(document), cache_control=cache_control)
            self.store.put(request, answer)
        return answer

    def _disagreeing(self, request: DisagreementRequest) -> Answer:
        found = disagreements(request.curriculum, request.others, request.electrode)
        document = disagreements_document(found, offset=request.offset, limit=request.limit)
        return tagged_answer(orjson.dumps(document), cache_control=BRIEFLY_CACHEABLE)


def _cell(request: ComparisonRequest, members: dict[str, Any], source: str) -> Cell:
    """The cell of a request; what is wrong with it comes before an unknown curriculum."""
    try:
        return make_cell(request.cell)
    except Unbalanced:
        raise  # never the sender's fault: it is answered as a failure of the service
    except IonwrightError as refusal:
        detail = str(refusal)
        path, position = place_of(members, refusal.where, refusal.position)
        fault = Fault(path, refusal.code, detail, position)
        problem = Problem(refusal.code, detail, faults=[fault], source=source)
        if problem.status >= 500:
            _log.error("%s: %s", refusal.code, detail)
        raise problem from refusal
