"""A marking as plain data: what crosses the wire and what ``--json`` prints."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

from ionwright.chemistry.notation import rendered, rendered_as_read

if TYPE_CHECKING:
    from ionwright.chemistry.equation import Equation
    from ionwright.teaching.marking.checking import Fault, Marking
    from ionwright.teaching.marking.slips import Slip

__all__ = ["marking_document"]


def marking_document(marking: Marking, notations: frozenset[str] | None = None) -> dict[str, Any]:
    """The marking as JSON-plain data.

    Parameters
    ----------
    notations
        Which renderings of each equation to give; None for all. ``ascii`` is always there.

    Returns
    -------
    dict
        The wire contract, version 1; ``reading`` is left out where the line could not be read.
    """
    points = marking.points
    document: dict[str, Any] = {
        "verdict": marking.verdict,
        "marks": {
            "awarded": marking.awarded,
            "available": sum(point.available for point in points),
            "points": [
                {"point": p.point, "for": p.given_for, "awarded": p.awarded, "available": p.available}
                for p in points
            ],
        },
        "faults": [_fault(fault) for fault in marking.faults],
        "slips": [_slip(slip) for slip in marking.slips],
    }
    if marking.reading is not None:
        document["reading"] = _reading(marking.reading, marking.expectation.forms, notations)
    document.update(_right(marking.expectation.forms, notations))
    return document


def _reading(
    reading: Equation, forms: tuple[Equation, ...], notations: frozenset[str] | None
) -> dict[str, Any]:
    """The line as it was read; one that is the expected line letter by letter is written but once."""
    return rendered(reading, notations) if reading in forms else rendered_as_read(reading, notations)


def _fault(fault: Fault) -> dict[str, Any]:
    return {
        "code": fault.code,
        "feedback": fault.feedback,
        "reveals": fault.reveals,
        "at": list(fault.at),
        "costs_marks": not fault.is_remark,
    }


def _slip(slip: Slip) -> dict[str, Any]:
    return {
        "written": slip.written,
        "read_as": slip.read_as,
        "at": list(slip.at),
        "feedback": f"“{slip.written}” was read as “{slip.read_as}”. Write it so.",
    }


@lru_cache(maxsize=512)
def _right(forms: tuple[Equation, ...], notations: frozenset[str] | None) -> dict[str, Any]:
    """What is right, for which it does not matter who asks; shared, so callers must not change it."""
    written = [rendered(form, notations) for form in forms]
    return {"model_answer": written[0], "accepted_forms": written}
