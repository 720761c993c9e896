"""Answers of one operation, kept under the raw request and under what it means."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import orjson

from ionwright.api.answers import CACHEABLE, Answer, AnswerStore, tagged_answer
from ionwright.api.problems import Problem
from ionwright.chemistry.faults import Unbalanced
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable

_LONGEST_KEY = 4096


@dataclass(frozen=True, slots=True)
class KeptAnswers:
    """Looks for an answer before it is made, and keeps it once it is.

    A refusal names places in the raw request and is kept under that alone.

    Parameters
    ----------
    operation
        Tells the raw requests of this operation from those of others, to which the same bytes may be sent.
    store
        Keeps answers; those of other operations may stand in it too.
    """

    operation: str
    store: AnswerStore

    def by_raw(self, raw: bytes | str, answer_of: Callable[[], Answer]) -> Answer:
        """Answer to a request as it was sent; a problem is an answer too."""
        key = (self.operation, raw)
        answer = self.store.get(key)
        if answer is None:
            try:
                answer = answer_of()
            except Problem as problem:
                answer = problem.answer()
            if len(raw) <= _LONGEST_KEY and answer.status < 500:
                self.store.put(key, answer)
        return answer

    def by_meaning(
        self,
        request: Hashable,
        document_of: Callable[[], dict[str, Any]],
        problem_of: Callable[[IonwrightError], Problem],
        *,
        cache_control: str = CACHEABLE,
    ) -> Answer:
        """Answer to a request that was read; equal requests have equal answers.

        Raises
        ------
        Problem
            What `problem_of` makes of a refusal of the layers below.
        """
        answer = self.store.get(request)
        if answer is None:
            try:
                document = document_of()
            except Unbalanced:
                raise  # never the sender's fault: it is answered as a failure of the service
            except IonwrightError as refusal:
                raise problem_of(refusal) from refusal
            answer = tagged_answer(orjson.dumps(document), cache_control=cache_control)
            self.store.put(request, answer)
        return answer
