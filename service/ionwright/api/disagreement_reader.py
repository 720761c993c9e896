"""From query parameters to the question on which cells of the tables curricula disagree."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from ionwright.api.check_reader import ELECTRODES
from ionwright.api.comparison_reader import chosen_curricula, read_ids
from ionwright.api.problems import Fault, Problem, validation_problem
from ionwright.api.query_reader import DISAGREEMENT_PARAMETERS, faults_of_names, read_count
from ionwright.api.texts import read_choice, read_text

if TYPE_CHECKING:
    from werkzeug.datastructures import MultiDict

    from ionwright.curricula import Curriculum
    from ionwright.curricula.host import Registry

MOST_OTHERS: Final = 32
USUAL_LIMIT: Final = 50
MOST_ROWS: Final = 500
MOST_OFFSET: Final = 1_000_000
_OTHER_WORDS: Final = {
    "course": "curriculum",
    "family": "curriculum",
    "curricula": "with",
    "and": "with",
    "against": "with",
    "other": "with",
    "side": "electrode",
    "page": "offset",
    "start": "offset",
    "first": "offset",
}


@dataclass(frozen=True, slots=True)
class DisagreementRequest:
    """What is asked: the course, those to hold it against, the electrode (None for both), and the page."""

    curriculum: Curriculum
    others: tuple[Curriculum, ...]
    electrode: str | None
    offset: int
    limit: int


def read_disagreement_request(query: MultiDict[str, str], registry: Registry) -> DisagreementRequest:
    """Read the question on which cells curricula disagree.

    Raises
    ------
    Problem
        With code ``validation-error`` and all faults at once, or ``unknown-curriculum``.
    """
    faults = faults_of_names(query, DISAGREEMENT_PARAMETERS, _OTHER_WORDS, frozenset({"with"}))
    id_, other_ids = _curriculum(query, faults), None
    if "with" in query:
        other_ids = read_ids(",".join(query.getlist("with")), ("with",), faults)
    electrode = None
    if "electrode" in query:
        electrode = read_choice(query["electrode"], ("electrode",), ELECTRODES, faults)
    limit = read_count(query, "limit", USUAL_LIMIT, (1, MOST_ROWS), faults)
    offset = read_count(query, "offset", 0, (0, MOST_OFFSET), faults)
    if faults:
        raise validation_problem(faults, source="query")
    (curriculum,) = chosen_curricula((id_,), ("curriculum",), registry, source="query", is_text=True)
    others = _others(curriculum, other_ids, registry)
    return DisagreementRequest(curriculum, others, electrode, offset, limit)


def _curriculum(query: MultiDict[str, str], faults: list[Fault]) -> str:
    if "curriculum" in query:
        return read_text(query["curriculum"], ("curriculum",), '"gcse"', faults)
    detail = (
        'Say whose disagreements are asked for: "curriculum" takes an id, such as "gcse".'
        " GET /v1/curricula lists those that are loaded."
    )
    faults.append(Fault(("curriculum",), "missing-field", detail))
    return ""


def _others(
    curriculum: Curriculum, ids: tuple[str, ...] | None, registry: Registry
) -> tuple[Curriculum, ...]:
    """The courses to hold one against: those that are named, or all others."""
    if ids is None:
        others = tuple(other for other in registry.values() if other.id != curriculum.id)
    else:
        others = chosen_curricula(ids, ("with",), registry, source="query", is_text=True)
        if curriculum in others:
            detail = f'"with" names {curriculum.id} itself, which cannot disagree with itself. Name another.'
            raise _refused("repeated", detail)
    if len(others) > MOST_OTHERS:
        detail = (
            f"{len(others)} curricula are too many to hold one against; {MOST_OTHERS} is the most."
            ' Name some of them with "with".'
        )
        raise _refused("too-many", detail)
    return others


def _refused(code: str, detail: str) -> Problem:
    return validation_problem([Fault(("with",), code, detail)], source="query")
