"""The desk against an examiner: every line of the table gets the examiner's verdict, primary fault and marks."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from ionwright.curricula.host import load_curricula
from ionwright.teaching import CellDescription, Ingredient
from ionwright.teaching.marking import check, electrode_expectation, given_expectation

if TYPE_CHECKING:
    from ionwright.teaching.marking import Expectation

QUESTIONS = tomllib.loads(Path(__file__).with_name("lines.toml").read_text(encoding="utf-8"))["question"]
CURRICULA = load_curricula()
LINES = [(question, *line) for question in QUESTIONS for line in question["lines"]]


def expectation_of(question: dict[str, Any]) -> Expectation:
    curriculum = CURRICULA[question["curriculum"]]
    asked = question.get("states_asked", False)
    if "expected" in question:
        return given_expectation(tuple(question["expected"]), curriculum, states_asked=asked)
    cell = CellDescription(
        electrolyte=(Ingredient(question["electrolyte"], question.get("concentration")),),
        **{name: question[name] for name in ("state", "cathode", "anode") if name in question},
    )
    written_as = question.get("written_as", "")
    return electrode_expectation(
        cell, question["electrode"], curriculum, written_as=written_as, states_asked=asked
    )


def test_the_table_is_long_enough_to_mean_something() -> None:
    assert len(LINES) >= 200
    assert {question["curriculum"] for question in QUESTIONS} == set(CURRICULA)


@pytest.mark.parametrize(
    ("question", "line", "verdict", "fault", "marks"),
    LINES,
    ids=[f"{question['name']}: {line}" for question, line, *_ in LINES],
)
def test_a_line_is_marked_as_an_examiner_would(
    question: dict[str, Any], line: str, verdict: str, fault: str, marks: int
) -> None:
    marking = check(line, expectation_of(question))
    codes = [found.code for found in marking.faults]
    assert (marking.verdict, codes[0] if codes else "", marking.awarded) == (verdict, fault, marks)
