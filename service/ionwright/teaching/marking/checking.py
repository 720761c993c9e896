"""Marks one line against an expectation: the verdict, the marks, and every fault with what to say of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from ionwright.teaching.marking.diagnosis import diagnosed
from ionwright.teaching.marking.expectation import Standing
from ionwright.teaching.marking.fault_codes import (
    ATOMS_NOT_BALANCED,
    CHARGE_NOT_BALANCED,
    ELECTRONS_WRONG_SIDE,
    NO_ELECTRONS,
    UNREADABLE,
    WRONG_ELECTRON_COUNT,
    Finding,
    in_order,
)
from ionwright.teaching.marking.feedback import told
from ionwright.teaching.marking.line import line_of
from ionwright.teaching.marking.marks import Point, points_for
from ionwright.teaching.marking.reading import Reading, Unreadable, read_answer
from ionwright.teaching.marking.telling import Told
from ionwright.teaching.marking.writing import findings_of_form, findings_of_signs, findings_of_states

if TYPE_CHECKING:
    from ionwright.chemistry.equation import Equation
    from ionwright.teaching.marking.alignment import Alignment
    from ionwright.teaching.marking.expectation import Expectation
    from ionwright.teaching.marking.slips import Slip

__all__ = ["CORRECT", "INCORRECT", "Fault", "Marking", "check"]

CORRECT: Final = "correct"
INCORRECT: Final = "incorrect"
_AT_ELECTRONS: Final = frozenset({ELECTRONS_WRONG_SIDE, WRONG_ELECTRON_COUNT})


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault of a line, in words.

    Parameters
    ----------
    code
        Stable word.
    feedback
        Helps the student without giving the answer away.
    reveals
        Gives the answer away.
    at
        Extent in the text that was checked, in characters from 0.
    is_remark
        Whether it costs no marks.
    """

    code: str
    feedback: str
    reveals: str
    at: tuple[int, int]
    is_remark: bool = False


@dataclass(frozen=True, slots=True)
class Marking:
    """What the desk says of one line.

    Parameters
    ----------
    verdict
        ``"correct"``, ``"incorrect"`` or ``"unreadable"``.
    points
        The marks, point by point.
    faults
        The most important first; a correct line may carry remarks.
    slips
        What was read for what it must mean.
    reading
        The line as it was read; None if it could not be.
    expectation
        What it was marked against.
    """

    verdict: str
    points: tuple[Point, ...]
    faults: tuple[Fault, ...]
    slips: tuple[Slip, ...]
    reading: Equation | None
    expectation: Expectation

    @property
    def awarded(self) -> int:
        """The marks that the line earns."""
        return sum(point.awarded for point in self.points)


def check(answer: str, expectation: Expectation) -> Marking:
    """Mark a student's line.

    Parameters
    ----------
    answer
        Whatever the student typed; nothing of it is kept.
    expectation
        What the question expects.

    Returns
    -------
    Marking
        Always: a line that cannot be read is a verdict too.

    Example
    -------
    >>> from ionwright.curricula.host import load_curricula
    >>> from ionwright.teaching.marking import check, given_expectation
    >>> expectation = given_expectation(("Ni^2+ + 2e- -> Ni",), load_curricula()["gcse"])
    >>> marking = check("Ni2+ + e- -> Ni", expectation)
    >>> marking.verdict, marking.awarded, [fault.code for fault in marking.faults]
    ('incorrect', 1, ['wrong-electron-count'])
    """
    reading = read_answer(answer, expectation)
    if isinstance(reading, Unreadable):
        return _unreadable(reading, expectation)
    line = line_of(reading.equation)
    findings, nearest = diagnosed(line, expectation)
    findings = in_order([*findings, *_of_writing(reading, expectation, findings, nearest)])
    context = Told(line, expectation, _right_line(nearest, expectation))
    faults = tuple(_fault(finding, reading, context) for finding in findings)
    is_right = all(finding.is_remark for finding in findings)
    return Marking(
        CORRECT if is_right else INCORRECT,
        points_for(findings, expectation.marking),
        faults,
        reading.slips,
        reading.equation,
        expectation,
    )


def _of_writing(
    reading: Reading, expectation: Expectation, so_far: list[Finding], nearest: Alignment | None
) -> list[Finding]:
    """The faults of writing, and those of form only where the chemistry is right."""
    signs = findings_of_signs(reading, expectation.marking)
    if any(finding.code == ELECTRONS_WRONG_SIDE for finding in so_far):
        signs = [finding for finding in signs if finding.code != ELECTRONS_WRONG_SIDE]
    found = signs
    if nearest is not None and nearest.target.standing is Standing.RIGHT:
        if not so_far:
            found = found + findings_of_form(reading.equation, expectation)
        if expectation.wants_states:
            found = found + findings_of_states(reading, nearest.target.equation)
    return found


def _right_line(nearest: Alignment | None, expectation: Expectation) -> Equation:
    """The right line to show: the form that the student had in mind, if it was one of those that are right."""
    if nearest is not None and nearest.target.standing is Standing.RIGHT:
        return nearest.target.equation
    return expectation.model_answer


def _fault(finding: Finding, reading: Reading, context: Told) -> Fault:
    helps, reveals = told(finding, context)
    return Fault(finding.code, helps, reveals, _place(finding, reading, context), finding.is_remark)


def _place(finding: Finding, reading: Reading, context: Told) -> tuple[int, int]:
    if finding.at is not None:
        return finding.at
    if finding.code in _AT_ELECTRONS:
        return reading.electron_place()
    if finding.code == ATOMS_NOT_BALANCED and finding.instead is not None:
        return reading.side_place(finding.side)
    if finding.code == ATOMS_NOT_BALANCED and finding.about is None:
        return _place_of_elements(reading, context.line.unbalanced_elements)
    if finding.about is None or finding.code in (NO_ELECTRONS, CHARGE_NOT_BALANCED):
        return reading.whole
    return reading.place(finding.side, finding.about)


def _place_of_elements(reading: Reading, symbols: tuple[str, ...]) -> tuple[int, int]:
    for term in reading.terms:
        if any(symbol in symbols for symbol, _ in term.species.atoms):
            return term.start, term.end
    return reading.whole


def _unreadable(reading: Unreadable, expectation: Expectation) -> Marking:
    helps = f"This cannot be read. {reading.detail} {_discreet(reading.remedy, expectation)}".strip()
    right = Told(line_of(expectation.model_answer), expectation, expectation.model_answer).right_line
    finding = Finding(UNREADABLE)
    return Marking(
        UNREADABLE,
        points_for([finding], expectation.marking),
        (Fault(UNREADABLE, helps, f"A right answer is {right}", reading.at),),
        (),
        None,
        expectation,
    )


def _discreet(remedy: str, expectation: Expectation) -> str:
    """The remedy; without its example where that would give away what is asked for."""
    asked = {
        term.species.ascii
        for form in expectation.forms
        for term in (*form.left, *form.right)
        if not term.species.is_electron
    }
    advice, colon, example = remedy.partition(":")
    words = (example if colon else advice).replace(",", " ").rstrip(".").split()
    if asked.isdisjoint(words):
        return remedy
    return f"{advice}." if colon else ""
