"""The reverse question: the cells of the tables on which courses disagree, by the rules that make the difference."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from ionwright.chemistry.tabled_cells import TabledCell, tabled_cells
from ionwright.curricula.aside import Aside
from ionwright.curricula.verdict import judge_afresh
from ionwright.teaching.comparison import Answer, accepts, answer_of, parting, reason_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from ionwright.curricula.model import Curriculum

# For as many pairs of courses the cells on which they disagree are kept.
_PAIRS_KEPT = 64
_COURSES_KEPT = 64


class Rules(NamedTuple):
    """What makes a difference: at which electrode, and the rule of each side."""

    electrode: str
    rule: str
    other_rule: str


@dataclass(frozen=True, slots=True)
class Disagreement:
    """One cell of the tables on which a course disagrees with others.

    Parameters
    ----------
    tabled
        The cell; of cells that differ in the word for the concentration only, the first.
    concentrations
        The words for which all this holds; empty for a melt.
    others
        Ids of the courses that give the other answer.
    accepted_across
        Whether either side also accepts the answer of the other.
    """

    tabled: TabledCell
    concentrations: tuple[str, ...]
    answer: Answer
    others: tuple[str, ...]
    other_answer: Answer
    accepted_across: bool


@dataclass(frozen=True, slots=True)
class RuleGroup:
    """The disagreements that come from the same two rules, in order of the names of the electrolytes."""

    rules: Rules
    others: tuple[str, ...]
    disagreements: tuple[Disagreement, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Disagreements:
    """The cells of the tables on which a course disagrees with others.

    Parameters
    ----------
    cells
        How many cells were judged.
    groups
        By the rules that make the difference, the largest first.
    """

    curriculum: Curriculum
    others: tuple[Curriculum, ...]
    cells: int
    groups: tuple[RuleGroup, ...]

    @property
    def count(self) -> int:
        """How many disagreements there are in all groups."""
        return sum(len(group.disagreements) for group in self.groups)


class _Finding(NamedTuple):
    """One disagreement of two courses, as short as it can be kept."""

    place: int
    rules: Rules
    answer: Answer
    other_answer: Answer
    accepted_across: bool


def disagreements(
    curriculum: Curriculum, others: Iterable[Curriculum], electrode: str | None = None
) -> Disagreements:
    """The cells of the tables on which a course disagrees with others.

    Parameters
    ----------
    others
        The courses to hold it against, in any order; the course itself does not count.
    electrode
        ``"cathode"`` or ``"anode"``; None for both.
    """
    by_id = {other.id: other for other in others if other.id != curriculum.id}
    agreeing_on: defaultdict[_Finding, list[str]] = defaultdict(list)
    for other_id, other in sorted(by_id.items()):
        for finding in _findings(curriculum, other):
            if electrode in {None, finding.rules.electrode}:
                agreeing_on[finding].append(other_id)
    grouped: defaultdict[Rules, list[tuple[_Finding, tuple[str, ...]]]] = defaultdict(list)
    for finding, ids in sorted(agreeing_on.items(), key=lambda item: item[0].place):
        grouped[finding.rules].append((finding, tuple(ids)))
    groups = (_group(rules, found) for rules, found in grouped.items())
    return Disagreements(
        curriculum,
        tuple(other for _, other in sorted(by_id.items())),
        len(tabled_cells()),
        tuple(sorted(groups, key=lambda group: (-len(group.disagreements), group.rules))),
    )


def _group(rules: Rules, found: Iterable[tuple[_Finding, tuple[str, ...]]]) -> RuleGroup:
    """The disagreements of two rules, with the cells that differ in the word for the concentration taken together."""
    merged: dict[object, list[tuple[_Finding, tuple[str, ...]]]] = {}
    for finding, ids in found:
        description = tabled_cells()[finding.place].description
        kept = (
            description.electrolyte[0].substance,
            description.state,
            description.cathode,
            description.anode,
            ids,
            finding[2:],
        )
        merged.setdefault(kept, []).append((finding, ids))
    rows = tuple(_disagreement(alike) for alike in merged.values())
    return RuleGroup(rules, tuple(sorted({id_ for row in rows for id_ in row.others})), rows)


def _disagreement(alike: list[tuple[_Finding, tuple[str, ...]]]) -> Disagreement:
    first, ids = alike[0]
    tabled = [tabled_cells()[finding.place] for finding, _ in alike]
    words = (one.description.electrolyte[0].concentration for one in tabled)
    return Disagreement(
        tabled[0],
        tuple(word for word in words if word is not None),
        first.answer,
        ids,
        first.other_answer,
        first.accepted_across,
    )


def _cases() -> Iterator[tuple[TabledCell, str, int]]:
    """Every electrode of every cell that has something to say, with the place of the cell in the tables."""
    for place, tabled in enumerate(tabled_cells()):
        for electrode in tabled.electrodes:
            yield tabled, electrode, place


def _answers(curriculum: Curriculum) -> tuple[Answer | None, ...]:
    return _kept_answers(id(curriculum), Aside(curriculum))


@lru_cache(maxsize=_COURSES_KEPT)
def _kept_answers(_id: int, aside: Aside[Curriculum]) -> tuple[Answer | None, ...]:
    """What a course answers in each case, in the order of the cases; None where its rules fail."""
    found: list[Answer | None] = []
    told: set[str] = set()
    for tabled, electrode, _ in _cases():
        try:
            found.append(answer_of(judge_afresh(tabled.cell, electrode, aside.value).chosen))
        except Exception as failure:
            found.append(None)
            if repr(failure) not in told:  # one line in the log for each failure, not for each cell
                told.add(repr(failure))
                reason_of(failure, aside.value)
    return tuple(found)


def _findings(curriculum: Curriculum, other: Curriculum) -> tuple[_Finding, ...]:
    return _kept_findings(id(curriculum), id(other), Aside((curriculum, other)))


@lru_cache(maxsize=_PAIRS_KEPT)
def _kept_findings(
    _id: int, _other_id: int, aside: Aside[tuple[Curriculum, Curriculum]]
) -> tuple[_Finding, ...]:
    curriculum, other = aside.value
    answers = zip(_cases(), _answers(curriculum), _answers(other), strict=True)
    return tuple(
        _finding(tabled, electrode, place, curriculum, other)
        for (tabled, electrode, place), one, another in answers
        if one is not None and another is not None and one != another
    )


def _finding(
    tabled: TabledCell, electrode: str, place: int, curriculum: Curriculum, other: Curriculum
) -> _Finding:
    verdict = judge_afresh(tabled.cell, electrode, curriculum)
    other_verdict = judge_afresh(tabled.cell, electrode, other)
    answer, other_answer = answer_of(verdict.chosen), answer_of(other_verdict.chosen)
    rules = Rules(electrode, parting(verdict, other_answer).rule, parting(other_verdict, answer).rule)
    accepted = accepts(verdict, other_answer) or accepts(other_verdict, answer)
    return _Finding(place, rules, answer, other_answer, accepted)
