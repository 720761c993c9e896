"""From equations to encoded answers: read, balance or combine, encode, keep."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import orjson

from ionwright.api.answers import Answer, AnswerStore, tagged_answer
from ionwright.api.balance_reader import (
    BALANCE_FIELDS,
    COMBINE_FIELDS,
    OTHER_WORDS,
    BalanceRequest,
    CombineRequest,
    read_balance_request,
    read_combine_request,
)
from ionwright.api.json_reader import read_json
from ionwright.api.problems import Fault, Problem
from ionwright.api.query_reader import equation_members
from ionwright.api.texts import with_plus_told
from ionwright.chemistry.balancing import balance
from ionwright.chemistry.faults import SeveralSolutions, Unbalanced
from ionwright.chemistry.notation import rendered
from ionwright.errors import IonwrightError
from ionwright.teaching.balance_document import balance_document, combination_document
from ionwright.teaching.half_equations import combine_half_equations

if TYPE_CHECKING:
    from werkzeug.datastructures import MultiDict


@dataclass(frozen=True, slots=True)
class BalancingDesk:
    """Answers requests to balance and to combine, by body and by query.

    Parameters
    ----------
    store
        Keeps answers under what the requests mean.
    """

    store: AnswerStore

    def balance_body(self, body: bytes) -> Answer:
        """Answer to a JSON body that asks for an equation to be balanced."""
        return self._answer(read_balance_request(read_json(body)), "body")

    def balance_query(self, query: MultiDict[str, str]) -> Answer:
        """Answer to query parameters that ask for an equation to be balanced."""
        members = equation_members(query, BALANCE_FIELDS, OTHER_WORDS)
        return self._answer(read_balance_request(members, source="query"), "query")

    def combine_body(self, body: bytes) -> Answer:
        """Answer to a JSON body that asks for two half-equations to be combined."""
        return self._answer(read_combine_request(read_json(body)), "body")

    def combine_query(self, query: MultiDict[str, str]) -> Answer:
        """Answer to query parameters that ask for two half-equations to be combined."""
        members = equation_members(query, COMBINE_FIELDS, OTHER_WORDS)
        return self._answer(read_combine_request(members, source="query"), "query")

    def _answer(self, request: BalanceRequest | CombineRequest, source: str) -> Answer:
        answer = self.store.get(request)
        if answer is None:
            try:
                document = _document(request)
            except Unbalanced:
                raise  # never the sender's fault: it is answered as a failure of the service
            except IonwrightError as refusal:
                raise _refused(refusal, request, source) from refusal
            answer = tagged_answer(orjson.dumps(document))
            self.store.put(request, answer)
        return answer


def _document(request: BalanceRequest | CombineRequest) -> dict[str, Any]:
    if isinstance(request, BalanceRequest):
        return balance_document(balance(request.equation, request.medium), request.notations)
    combination = combine_half_equations(request.oxidation, request.reduction)
    return combination_document(combination, request.notations)


def _refused(refusal: IonwrightError, request: BalanceRequest | CombineRequest, source: str) -> Problem:
    """Problem for a refusal of the layers below, placed in the request as it was sent."""
    detail = str(refusal)
    where = refusal.where or ("equation" if isinstance(request, BalanceRequest) else "")
    if source == "query" and where:
        detail = with_plus_told(detail, getattr(request, where))
    fault = Fault((where,) if where else (), refusal.code, detail, refusal.position)
    members: dict[str, object] = {}
    if isinstance(refusal, SeveralSolutions):
        members["basis"] = [rendered(equation, request.notations) for equation in refusal.basis]
    return Problem(refusal.code, detail, faults=[fault], source=source, members=members)
