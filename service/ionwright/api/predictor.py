"""From requests to encoded answers: read, look up what is known, predict, encode, keep."""

from __future__ import annotations

import logging
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any
from uuid import uuid4

import orjson

from ionwright.api.answers import Answer, AnswerStore, tagged_answer
from ionwright.api.json_reader import read_json
from ionwright.api.problems import Problem
from ionwright.api.query_reader import prediction_members
from ionwright.api.refusals import problem_of_refusal
from ionwright.api.request_reader import PredictionRequest, place_of, read_prediction_request
from ionwright.chemistry.cell import make_cell
from ionwright.chemistry.faults import Unbalanced
from ionwright.curricula import CurriculumFault
from ionwright.errors import IonwrightError
from ionwright.teaching import predict, prediction_document

if TYPE_CHECKING:
    from werkzeug.datastructures import MultiDict

    from ionwright.curricula.host import Registry

_LONGEST_KEY = 4096
_log = logging.getLogger("ionwright.api")


@dataclass(frozen=True, slots=True)
class Predictor:
    """Answers prediction requests in every form in which they arrive.

    The same request gives the same bytes, so an answer is kept under the raw request, which saves reading
    it again, and under what it means, which saves predicting it again. Refusals name places in the raw
    request and are kept under that alone.
    """

    registry: Registry
    store: AnswerStore

    def answer_body(self, body: bytes) -> Answer:
        """Answer to a JSON body."""
        answer = self.store.get(body)
        if answer is None:
            answer = self._answer_or_problem(lambda: read_json(body), "body")
            if len(body) <= _LONGEST_KEY and answer.status < 500:
                self.store.put(body, answer)
        return answer

    def answer_query(self, raw: str, query: MultiDict[str, str]) -> Answer:
        """Answer to query parameters; `raw` is the query string as it was sent."""
        answer = self.store.get(raw)
        if answer is None:
            answer = self._answer_or_problem(lambda: prediction_members(query), "query")
            if len(raw) <= _LONGEST_KEY and answer.status < 500:
                self.store.put(raw, answer)
        return answer

    def answer_members(self, members: object) -> Answer:
        """Answer to one item of a batch, for which even an unforeseen failure is an answer."""
        try:
            return self._answer_or_problem(lambda: members, "body")
        except Exception:
            return incident().answer()

    def answer_line(self, line: bytes) -> Answer:
        """Answer to one line of a JSON Lines batch, for which even an unforeseen failure is an answer."""
        try:
            return self.answer_body(line)
        except Exception:
            return incident().answer()

    def _answer_or_problem(self, members_of: Any, source: str) -> Answer:
        try:
            members = members_of()
            return self._answer(members, source)
        except Problem as problem:
            return problem.answer()

    def _answer(self, members: Any, source: str) -> Answer:
        request = read_prediction_request(members, source=source)
        answer = self.store.get(request)
        if answer is None:
            try:
                document = self._document(request)
            except Unbalanced:
                # never the sender's fault: it is answered as a failure of the service
                raise
            except IonwrightError as refusal:
                raise refused(refusal, members, source) from refusal
            answer = tagged_answer(orjson.dumps(document))
            self.store.put(request, answer)
        return answer

    def _document(self, request: PredictionRequest) -> dict[str, Any]:
        try:
            curriculum = self.registry[request.curriculum]
        except CurriculumFault:
            make_cell(request.cell)  # faults of a cell come before an unknown curriculum
            raise
        return prediction_document(predict(request.cell, curriculum), request.notations)


def refused(refusal: IonwrightError, members: dict[str, Any], source: str) -> Problem:
    """Problem for a refusal of the layers below, placed in the request as it was sent."""
    path, position = place_of(members, refusal.where, refusal.position)
    return problem_of_refusal(refusal, path, position, source=source)


def incident() -> Problem:
    """Problem for an exception that nobody foresaw; it is logged whole, and only its number goes out."""
    number = f"urn:uuid:{uuid4()}"
    _log.exception("incident %s", number)
    detail = (
        "The service failed on this request, and the failure is in its log."
        f" Tell its operator the incident number {number}."
    )
    return Problem("internal-error", detail, members={"instance": number})
