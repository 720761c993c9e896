"""Faults of writing rather than of chemistry: signs, arrows, state symbols, multiples and fractions."""

from __future__ import annotations

from math import gcd
from typing import TYPE_CHECKING

from ionwright.curricula.marking import ACCEPTED, REFUSED
from ionwright.teaching.marking.fault_codes import (
    ARROW,
    ELECTRON_SIGN,
    ELECTRONS_WRONG_SIDE,
    NOT_LOWEST_TERMS,
    STATE_SYMBOLS,
    Finding,
)
from ionwright.teaching.marking.reading import EQUALS, EQUILIBRIUM

if TYPE_CHECKING:
    from ionwright.chemistry.equation import Equation
    from ionwright.curricula.marking import MarkingConventions
    from ionwright.teaching.marking.expectation import Expectation
    from ionwright.teaching.marking.reading import Reading

__all__ = ["findings_of_form", "findings_of_signs", "findings_of_states"]


def findings_of_signs(reading: Reading, marking: MarkingConventions) -> list[Finding]:
    """What is wrong with the signs of electrons and with the arrow."""
    found = [Finding(ELECTRON_SIGN, at=place) for place in reading.odd_electrons]
    for term in reading.terms:
        # taken away on the right is wrong everywhere; on the left it is a way of writing an oxidation
        if term.is_subtracted and not (term.is_left and marking.subtracted_electrons):
            side = "left" if term.is_left else "right"
            found.append(Finding(ELECTRONS_WRONG_SIDE, side, at=(term.start, term.end)))
    if reading.has_bare_electron and not marking.electron_without_sign:
        found.append(Finding(ELECTRON_SIGN, at=reading.has_bare_electron))
    refused = {EQUALS: not marking.equals_sign, EQUILIBRIUM: not marking.equilibrium_arrow}
    if refused.get(reading.arrow):
        found.append(Finding(ARROW, at=reading.arrow_at))
    return found


def findings_of_form(equation: Equation, expectation: Expectation) -> list[Finding]:
    """Whether the numbers of a right line are in the form that the course likes."""
    numbers = [term.coefficient for term in (*equation.left, *equation.right)]
    marking = expectation.marking
    if any(number.denominator != 1 for number in numbers):
        return _form_finding(marking.fractions)
    whole = gcd(*(int(number) for number in numbers))
    if whole > 1 and not any(sorted(numbers) == sorted(_numbers(form)) for form in expectation.forms):
        return _form_finding(marking.multiples)
    return []


def _numbers(form: Equation) -> list[int]:
    return [int(term.coefficient) for term in (*form.left, *form.right)]


def _form_finding(word: str) -> list[Finding]:
    return [] if word == ACCEPTED else [Finding(NOT_LOWEST_TERMS, is_remark=word != REFUSED)]


def findings_of_states(reading: Reading, target: Equation) -> list[Finding]:
    """State symbols that are missing or wrong, beside the line that was meant."""
    wanted = {
        (term.species, side): term.state for side in ("left", "right") for term in getattr(target, side)
    }
    found = []
    for term in reading.terms:
        side = "left" if term.is_left else "right"
        state = wanted.get((term.species, side), "")
        if state and term.state != state:
            place = term.start, term.end
            is_missing = not term.state
            found.append(
                Finding(STATE_SYMBOLS, side, term.species, reason=state, at=place, is_missing=is_missing)
            )
    return found
