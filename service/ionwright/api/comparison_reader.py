"""From the members of a request to the cell and the curricula that it wants compared."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from ionwright.api.problems import Fault, Path, Problem, validation_problem
from ionwright.api.request_reader import FIELDS, OTHER_WORDS, read_prediction_request
from ionwright.api.texts import (
    body_members,
    named,
    note_unknown_fields,
    read_text,
    shown,
    wrong_type,
)
from ionwright.curricula.faults import UnknownCurriculum

if TYPE_CHECKING:
    from ionwright.chemistry.cell import CellDescription
    from ionwright.curricula import Curriculum
    from ionwright.curricula.host import Registry

COMPARISON_FIELDS: Final = tuple("curricula" if name == "curriculum" else name for name in FIELDS)
MOST_COMPARED: Final = 250
OTHER_COMPARISON_WORDS: Final = {
    word: "curricula" if meant == "curriculum" else meant for word, meant in OTHER_WORDS.items()
} | {"curriculum": "curricula", "courses": "curricula", "syllabuses": "curricula"}
_EXAMPLE: Final = '["gcse", "igcse"]'


@dataclass(frozen=True, slots=True)
class ComparisonRequest:
    """What a request wants compared; equal requests have equal answers.

    Parameters
    ----------
    curricula
        Ids as they were sent; None for all that are loaded.
    """

    cell: CellDescription
    curricula: tuple[str, ...] | None
    notations: frozenset[str] | None


def read_comparison_request(data: object, *, source: str = "body") -> ComparisonRequest:
    """Read the members of a request for a comparison.

    Raises
    ------
    Problem
        With code ``validation-error`` and all faults at once.
    """
    example = f'{{"electrolyte": "NaCl", "concentration": "dilute", "curricula": {_EXAMPLE}}}'
    members = body_members(data, example, source=source)
    faults: list[Fault] = []
    note_unknown_fields(members, (), COMPARISON_FIELDS, faults, OTHER_COMPARISON_WORDS)
    curricula = read_ids(members["curricula"], ("curricula",), faults) if "curricula" in members else None
    of_cell = {name: value for name, value in members.items() if name in FIELDS and name != "curriculum"}
    try:
        read = read_prediction_request(of_cell | {"curriculum": "all"}, source=source)
    except Problem as problem:
        raise validation_problem([*faults, *problem.faults], source=source) from None
    if faults:
        raise validation_problem(faults, source=source)
    return ComparisonRequest(read.cell, curricula, read.notations)


def read_ids(value: Any, path: Path, faults: list[Fault]) -> tuple[str, ...]:
    """Ids of curricula, from a list or from a text with commas between them."""
    if type(value) is str:
        value = value.split(",")
        places: list[Path] = [path] * len(value)
    elif type(value) is list:
        places = [(*path, index) for index in range(len(value))]
    else:
        faults.append(wrong_type(value, path, "a list of ids", _EXAMPLE))
        return ()
    if not value:
        detail = f"{named(path)} is an empty list. Name at least one curriculum, or leave it out for all."
        faults.append(Fault(path, "empty", detail))
    if len(value) > MOST_COMPARED:
        detail = f"{named(path)} takes {MOST_COMPARED} ids at most, and has {len(value)}."
        faults.append(Fault(path, "too-many", detail))
        return ()
    return tuple(read_text(item, place, '"gcse"', faults) for item, place in zip(value, places, strict=True))


def chosen_curricula(
    ids: tuple[str, ...], path: Path, registry: Registry, *, source: str, is_text: bool = False
) -> tuple[Curriculum, ...]:
    """The curricula with these ids, in order of their ids.

    Parameters
    ----------
    path
        Where the list of ids stands in the request.
    is_text
        Whether the ids were sent in one text, so that they have no places of their own.

    Raises
    ------
    Problem
        With code ``unknown-curriculum`` and every id that is not loaded, or ``validation-error`` for one that is named
        twice.
    """
    found: dict[str, Curriculum] = {}
    unknown: list[Fault] = []
    repeated: list[Fault] = []
    for index, id_ in enumerate(ids):
        place = path if is_text else (*path, index)
        try:
            curriculum = registry[id_]
        except UnknownCurriculum as fault:
            unknown.append(Fault(place, fault.code, str(fault)))
            continue
        if curriculum.id in found:
            detail = f"{named(path)} names {shown(curriculum.id)} more than once. Name each curriculum once."
            repeated.append(Fault(place, "repeated", detail))
        found[curriculum.id] = curriculum
    if unknown:
        raise Problem("unknown-curriculum", unknown[0].detail, faults=unknown + repeated, source=source)
    if repeated:
        raise validation_problem(repeated, source=source)
    return tuple(curriculum for _, curriculum in sorted(found.items()))
