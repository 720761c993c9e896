"""One cell under several curricula: who agrees with whom, and the rule that makes the difference."""

from __future__ import annotations

import logging
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations
from typing import TYPE_CHECKING, NamedTuple

from ionwright.chemistry.cell import Cell, CellDescription, make_cell
from ionwright.curricula.faults import CurriculumFault
from ionwright.curricula.verdict import Verdict, judge
from ionwright.curricula.wording import products

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.equation import Equation
    from ionwright.chemistry.process import ElectrodeProcess
    from ionwright.curricula.model import Curriculum

CHOOSES = "chooses"
RULES_OUT = "rules out"
LEAVES_OPEN = "leaves open"
UNDECIDED = "not decided"
_log = logging.getLogger(__name__)


class Answer(NamedTuple):
    """What a course answers for one electrode, as far as agreement goes: the products, and their names in words."""

    formulas: tuple[str, ...]
    text: str


class Parting(NamedTuple):
    """How one course parts from an answer: the rule that does it, its reasons, and what it does."""

    rule: str
    because: tuple[str, ...]
    effect: str


@dataclass(frozen=True, slots=True, eq=False)
class Standing:
    """Where one course stands at one electrode.

    Parameters
    ----------
    half_equation
        In the form that the course prefers; None if it cannot decide.
    also_written
        The other forms that it accepts.
    """

    curriculum: Curriculum
    verdict: Verdict
    half_equation: Equation | None
    also_written: tuple[Equation, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Group:
    """The courses that agree on what forms at one electrode, in order of their ids; never empty."""

    answer: Answer
    standings: tuple[Standing, ...]

    @property
    def process(self) -> ElectrodeProcess | None:
        """What runs; None for the courses that cannot decide."""
        return self.standings[0].verdict.chosen


@dataclass(frozen=True, slots=True, eq=False)
class Difference:
    """What makes the difference between two groups: how each course of the one parts from the answer of the other."""

    groups: tuple[Group, Group]
    partings: tuple[tuple[Parting, ...], tuple[Parting, ...]]


@dataclass(frozen=True, slots=True, eq=False)
class ElectrodeComparison:
    """One electrode under several curricula.

    Parameters
    ----------
    groups
        Those that decide first, the largest first; the courses that cannot decide last.
    differences
        One for each pair of groups, in order of the groups.
    """

    groups: tuple[Group, ...]
    differences: tuple[Difference, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Comparison:
    """One cell under several curricula.

    Parameters
    ----------
    curricula
        Those that could be compared, in order of their ids.
    set_aside
        Those whose rules failed on this cell, each with the reason as a sentence.
    """

    cell: Cell
    curricula: tuple[Curriculum, ...]
    cathode: ElectrodeComparison
    anode: ElectrodeComparison
    set_aside: tuple[tuple[Curriculum, str], ...] = ()


def compare(cell: Cell | CellDescription, curricula: Iterable[Curriculum]) -> Comparison:
    """One cell under several curricula.

    Parameters
    ----------
    cell
        A cell, or its description in words.
    curricula
        The courses to compare, in any order; one that is given twice counts once.

    Raises
    ------
    IonwrightError
        If the description is of a cell that would not work or cannot be read.
    """
    if isinstance(cell, CellDescription):
        cell = make_cell(cell)
    cell.at_cathode(), cell.at_anode()  # so that what fails below are the rules of one curriculum
    standings: list[tuple[Standing, Standing]] = []
    set_aside: list[tuple[Curriculum, str]] = []
    by_id = {curriculum.id: curriculum for curriculum in curricula}
    for _, curriculum in sorted(by_id.items()):
        try:
            standings.append((_standing(cell, "cathode", curriculum), _standing(cell, "anode", curriculum)))
        except Exception as failure:
            set_aside.append((curriculum, reason_of(failure, curriculum)))
    return Comparison(
        cell,
        tuple(standing.curriculum for standing, _ in standings),
        _compared(at_cathode for at_cathode, _ in standings),
        _compared(at_anode for _, at_anode in standings),
        tuple(set_aside),
    )


def reason_of(failure: Exception, curriculum: Curriculum) -> str:
    """Why the rules of a curriculum gave no verdict, as a sentence; what nobody foresaw is logged whole."""
    if isinstance(failure, CurriculumFault):
        return str(failure)
    _log.error("the rules of %s failed", curriculum.id, exc_info=failure)
    return f"A rule of {curriculum.id} failed on this cell; the failure is in the log."


def _standing(cell: Cell, electrode: str, curriculum: Curriculum) -> Standing:
    verdict = judge(cell, electrode, curriculum)
    if verdict.chosen is None:
        return Standing(curriculum, verdict, None, ())
    conventions = curriculum.conventions
    return Standing(
        curriculum,
        verdict,
        conventions.written(verdict.chosen, cell.medium),
        conventions.also_written(verdict.chosen, cell.medium),
    )


def _compared(standings: Iterable[Standing]) -> ElectrodeComparison:
    by_answer: dict[Answer, list[Standing]] = {}
    for standing in standings:
        by_answer.setdefault(answer_of(standing.verdict.chosen), []).append(standing)
    found = [Group(answer, tuple(members)) for answer, members in by_answer.items()]
    groups = tuple(sorted(found, key=_rank))
    return ElectrodeComparison(groups, tuple(_difference(*pair) for pair in combinations(groups, 2)))


def _rank(group: Group) -> tuple[bool, int, str]:
    return group.process is None, -len(group.standings), group.standings[0].curriculum.id


def _difference(first: Group, second: Group) -> Difference:
    return Difference((first, second), (_partings(first, second.answer), _partings(second, first.answer)))


def _partings(group: Group, other: Answer) -> tuple[Parting, ...]:
    return tuple(parting(standing.verdict, other) for standing in group.standings)


@lru_cache(maxsize=4096)
def answer_of(process: ElectrodeProcess | None) -> Answer:
    """What a course answers that chooses this process; the answer without products if it cannot decide."""
    if process is None:
        return Answer((), UNDECIDED)
    return Answer(tuple(kind.ascii for kind in process.products), products(process))


def parting(verdict: Verdict, other: Answer) -> Parting:
    """The first rule in the trace of a verdict that parts it from another answer.

    It is the rule that chooses, or leaves the cell open, unless one before it had already ruled the other answer out.

    Parameters
    ----------
    other
        An answer that is not the one of the verdict.
    """
    for step in verdict.trace:
        ruling = step.ruling
        struck = [remark for remark in ruling.ruled_out if answer_of(remark.process) == other]
        if ruling.chosen is not None or ruling.is_undecidable:
            effect = CHOOSES if ruling.chosen is not None else LEAVES_OPEN
            return Parting(step.rule.sentence, ruling.because or verdict.because, effect)
        if struck:
            told = tuple(remark.because for remark in struck if remark.because)
            return Parting(step.rule.sentence, ruling.because or told or verdict.because, RULES_OUT)
    return Parting("", verdict.because, CHOOSES if verdict.chosen else LEAVES_OPEN)


def accepts(verdict: Verdict, other: Answer) -> bool:
    """Whether a course that gives this verdict also accepts another answer."""
    return any(answer_of(remark.process) == other for remark in verdict.also_accepted)
