"""Encoded answers, and the bounded store that keeps those asked for most lately."""

from __future__ import annotations

from collections import OrderedDict
from contextlib import suppress
from dataclasses import dataclass
from hashlib import sha256
from threading import Lock
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Hashable

CACHEABLE = "public, max-age=86400, stale-while-revalidate=604800"
BRIEFLY_CACHEABLE = "public, max-age=300"
JSON = "application/json"


@dataclass(frozen=True, slots=True)
class Answer:
    """One response, encoded and with its headers, ready to be sent any number of times."""

    status: int
    body: bytes
    headers: tuple[tuple[str, str], ...]
    etag: str = ""


def tagged_answer(body: bytes, *, media_type: str = JSON, cache_control: str = CACHEABLE) -> Answer:
    """Answer with status 200 and a strong entity tag made from its bytes."""
    etag = f'"{sha256(body).hexdigest()[:24]}"'
    headers = (("Content-Type", media_type), ("ETag", etag), ("Cache-Control", cache_control))
    return Answer(200, body, headers, etag)


class AnswerStore:
    """Answers by request, bounded in number and in bytes; the least recently used goes first.

    One store serves all threads of a worker. The bytes counted are those of the answers, once for
    each request under which an answer is kept.
    """

    def __init__(self, *, entries: int, size: int) -> None:
        self._entries = entries
        self._size = size
        self._held = 0
        self._answers: OrderedDict[Hashable, Answer] = OrderedDict()
        self._lock = Lock()

    def __len__(self) -> int:
        return len(self._answers)

    @property
    def held_bytes(self) -> int:
        """How many bytes of answers the store holds at present."""
        return self._held

    def get(self, key: Hashable) -> Answer | None:
        """Return the answer kept for a request, None if there is none."""
        answer = self._answers.get(key)
        if answer is not None:
            # another thread may have put it out in between: the answer itself is still good
            with suppress(KeyError):
                self._answers.move_to_end(key)
        return answer

    def put(self, key: Hashable, answer: Answer) -> None:
        """Keep an answer for a request, and put out the oldest ones that no longer fit."""
        if self._entries < 1 or len(answer.body) > self._size // 8:
            return
        with self._lock:
            replaced = self._answers.pop(key, None)
            if replaced is not None:
                self._held -= len(replaced.body)
            self._answers[key] = answer
            self._held += len(answer.body)
            while len(self._answers) > self._entries or self._held > self._size:
                _, oldest = self._answers.popitem(last=False)
                self._held -= len(oldest.body)
