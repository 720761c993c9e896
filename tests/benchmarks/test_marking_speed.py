"""Speed of the marking desk, side by side in one run: a line checked, a cell predicted, a hostile text refused."""

from __future__ import annotations

import itertools
import sys
import time
import tomllib
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from cells import unlike_cells

from ionwright.api.request_reader import read_prediction_request
from ionwright.curricula.host import load_curricula
from ionwright.errors import IonwrightError
from ionwright.teaching import predict, prediction_document
from ionwright.teaching.marking import check, given_expectation, marking_document

if TYPE_CHECKING:
    from collections.abc import Callable

pytestmark = pytest.mark.benchmark

LINES = Path(__file__).resolve().parents[1] / "unit" / "teaching" / "marking" / "lines.toml"
CURRICULA = load_curricula()
HOSTILE = ("(" * 500, "Cl2-+" * 23 + "Cl->" + "O2-+" * 22 + "Cl", "H+" * 240 + "->H", "x" * 1_000_000)


def milliseconds(step: Callable[[], object], rounds: int = 5) -> float:
    """Shortest processor time of several rounds."""
    times = []
    for _ in range(rounds):
        began = time.process_time()
        step()
        times.append(time.process_time() - began)
    return min(times) * 1000


def cells_never_seen(rounds: int, count: int) -> list[list[Any]]:
    """Requests for predictions, each of another cell, in as many parts as there are rounds."""
    requests = (read_prediction_request(cell) for cell in unlike_cells(731))
    return [list(itertools.islice(requests, count)) for _ in range(rounds)]


def predicted(requests: list[Any]) -> int:
    """How many of these cells can be answered, each answered."""
    answered = 0
    for request in requests:
        try:
            prediction_document(predict(request.cell, CURRICULA[request.curriculum]))
        except IonwrightError:
            continue
        answered += 1
    return answered


def test_a_check_beside_a_prediction() -> None:
    questions = tomllib.loads(LINES.read_text(encoding="utf-8"))["question"]
    given = [
        (line[0], given_expectation(tuple(question["expected"]), CURRICULA[question["curriculum"]]))
        for question in questions
        if "expected" in question
        for line in question["lines"]
    ]
    checked = milliseconds(lambda: [marking_document(check(line, asked)) for line, asked in given]) / len(
        given
    )
    times = []
    for part in cells_never_seen(rounds=6, count=200):
        began = time.process_time()
        answered = predicted(part)
        times.append((time.process_time() - began) * 1000 / answered)
    told = min(times)
    sys.stdout.write(
        f"\nmilliseconds: a check {checked:.3f}, a prediction {told:.3f}, ratio {checked / told:.2f}\n"
    )
    assert checked < told


@pytest.mark.parametrize("text", HOSTILE, ids=lambda text: text[:12])
def test_a_hostile_text_is_refused_in_milliseconds(text: str) -> None:
    asked = given_expectation(("2Cl^- -> Cl2 + 2e-",), CURRICULA["gcse"])
    took = milliseconds(lambda: check(text, asked))
    plain = milliseconds(lambda: [check("2Cl- -> Cl2 + 2e-", asked) for _ in range(100)]) / 100
    sys.stdout.write(f"\nmilliseconds: {took:.3f}, {took / plain:.1f} times a plain line\n")
    assert took < plain * 200
