"""Problems as RFC 9457 writes them: the table of kinds, and the one exception that carries one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import orjson

from ionwright.api.answers import Answer
from ionwright.api.problem_kinds import PROBLEM_KINDS, ProblemKind

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

PROBLEM_JSON = "application/problem+json"
_TYPE = "tag:ionwright,2026:problem:"
_MOST_FAULTS = 20

Path = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that is wrong in a request: where, what, and what would be right."""

    path: Path
    code: str
    detail: str
    position: int | None = None


class Problem(Exception):
    """A request that gets a problem document for an answer.

    Parameters
    ----------
    code
        A code of the table of problem kinds; an unknown one counts as a refusal with status 422.
    detail
        What is wrong with this request and what would be right, in sentences.
    faults
        The single faults, each with its place in the request.
    source
        The part of the request that the faults lie in: ``"body"``, ``"query"``, ``"path"`` or ``"header"``.
    status
        Status code, where it is not the usual one of the kind.
    headers
        Further response headers, such as ``Allow``.
    members
        Further members of the document.
    """

    def __init__(  # noqa: PLR0913 -- all but two are keywords that are rarely given
        self,
        code: str,
        detail: str,
        *,
        faults: Iterable[Fault] = (),
        source: str = "body",
        status: int | None = None,
        headers: Mapping[str, str] | None = None,
        members: Mapping[str, object] | None = None,
    ) -> None:
        super().__init__(detail)
        self.kind = problem_kind(code)
        self.detail = detail
        self.faults = tuple(faults)
        self.source = source
        self.status = self.kind.status if status is None else status
        self.headers = dict(headers or {})
        self.members = dict(members or {})

    def document(self) -> dict[str, Any]:
        """Return the members of the problem document, in the order in which people read them."""
        document: dict[str, Any] = {
            "type": _TYPE + self.kind.code,
            "title": self.kind.title,
            "status": self.status,
            "code": self.kind.code,
            "detail": self.detail,
        }
        if self.faults:
            document["errors"] = [_error(fault, self.source) for fault in self.faults[:_MOST_FAULTS]]
        return document | self.members

    def answer(self) -> Answer:
        """Return the problem encoded as a response; problems are never to be stored by caches."""
        headers = {
            "Content-Type": PROBLEM_JSON,
            "Cache-Control": "no-store",
            "Link": f'</problems/{self.kind.code}>; rel="help"',
            **self.headers,
        }
        return Answer(self.status, orjson.dumps(self.document()), tuple(headers.items()))


def problem_kind(code: str) -> ProblemKind:
    """Return the kind of problem with a code; one that only a plugin knows is a refusal of its own kind."""
    return PROBLEM_KINDS.get(code) or ProblemKind(code, 422, code.replace("-", " ").capitalize(), "")


def validation_problem(faults: Iterable[Fault], *, source: str = "body") -> Problem:
    """Problem for a request whose fields are not as they must be."""
    found = tuple(faults)
    detail = found[0].detail
    if len(found) > 1:
        detail = f"{len(found)} things are wrong in this request. First: {detail}"
    return Problem("validation-error", detail, faults=found, source=source)


def _error(fault: Fault, source: str) -> dict[str, object]:
    error: dict[str, object] = {"in": source}
    if source == "body":
        error["pointer"] = json_pointer(fault.path)
    else:
        error["parameter"] = str(fault.path[0]) if fault.path else ""
    error["code"] = fault.code
    error["detail"] = fault.detail
    if fault.position is not None:
        error["position"] = fault.position
    return error


def json_pointer(path: Path) -> str:
    """Write a path as a JSON Pointer (RFC 6901); the empty path is the whole document."""
    return "".join("/" + str(part).replace("~", "~0").replace("/", "~1") for part in path)
