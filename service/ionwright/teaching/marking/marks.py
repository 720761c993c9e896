"""Marks by a curriculum's convention: a point for the species, a point for a line in which all is right."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.curricula.marking import POINTS
from ionwright.teaching.marking.fault_codes import SPARES_THE_SPECIES

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.curricula.marking import MarkingConventions
    from ionwright.teaching.marking.fault_codes import Finding

__all__ = ["Point", "points_for"]


@dataclass(frozen=True, slots=True)
class Point:
    """The marks for one point: what it is given for, how many were given and how many there are."""

    point: str
    given_for: str
    awarded: int
    available: int


def points_for(findings: Iterable[Finding], marking: MarkingConventions) -> tuple[Point, ...]:
    """The points of a line with these faults; remarks cost nothing.

    The marks for balance are given only where those for the species are.
    """
    costly = [finding for finding in findings if not finding.is_remark]
    has_species = all(finding.code in SPARES_THE_SPECIES for finding in costly)
    earned = {"species": has_species, "balance": not costly}
    marks = {"species": marking.species_marks, "balance": marking.balance_marks}
    return tuple(
        Point(point, POINTS[point], marks[point] if earned[point] else 0, marks[point])
        for point in POINTS
        if marks[point]
    )
