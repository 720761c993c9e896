"""What a task about amounts costs beside a prediction, both over HTTP and in one run.

The figures are printed; run it with `pytest -m benchmark -s`.
"""

from __future__ import annotations

import itertools
import random
from typing import TYPE_CHECKING, Any

import orjson
import pytest
from cells import unlike_cells
from load import request_bytes, requests_per_second
from served import gunicorn, report

from ionwright.api.answers import AnswerStore
from ionwright.api.kept_answers import KeptAnswers
from ionwright.api.predictor import Predictor
from ionwright.api.quantities_desk import QuantitiesDesk
from ionwright.curricula.host import load_curricula

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from ionwright.api.answers import Answer

pytestmark = pytest.mark.benchmark

ROUNDS = 4
SECONDS = 1.0
PREDICTIONS, QUANTITIES = "/v1/predictions", "/v1/quantities"
BRACKET = {
    "electrolyte": "NiSO4",
    "concentration": "0.25 mol/dm3",
    "cathode": "steel",
    "anode": "nickel",
    "curriculum": "a-level",
}
NICKEL = {
    "half_equation": "Ni^2+ + 2e- -> Ni",
    "known": {"current": "0.50 A", "time": "20 min"},
    "find": "mass",
    "curriculum": "a-level",
}
METALS = (
    "Ni^2+ + 2e- -> Ni",
    "Ag^+ + e- -> Ag",
    "Cu^2+ + 2e- -> Cu",
    "Zn^2+ + 2e- -> Zn",
    "Cr^3+ + 3e- -> Cr",
)
GASES = ("2H^+ + 2e- -> H2", "2Cl^- -> Cl2 + 2e-", "2H2O -> O2 + 4H^+ + 4e-")


def unlike_tasks(seed: int) -> Iterator[dict[str, Any]]:
    """Yield tasks such as a class is set, each with other figures."""
    chance = random.Random(seed)  # noqa: S311 - the same tasks every time, and no secret
    for number in itertools.count(1):
        current = f"0.{chance.randrange(1, 9)}{seed % 97:02}{number:07} A"
        known: dict[str, str] = {"current": current, "time": f"{chance.randrange(5, 90)} min"}
        shape = chance.choice(("mass", "volume", "time", "thickness"))
        half = chance.choice(GASES if shape == "volume" else METALS)
        if shape == "time":
            known = {"current": current, "mass": f"{chance.uniform(0.1, 3):.3g} g"}
        elif shape == "thickness":
            known |= {
                "area": f"{chance.randrange(20, 300)} cm2",
                "efficiency": f"{chance.randrange(70, 99)}%",
            }
        yield {"half_equation": half, "known": known, "find": shape, "curriculum": "a-level"}


def like_cells(seed: int) -> Iterator[bytes]:
    """Yield one cell over and over, each time with another concentration."""
    for number in itertools.count(1):
        yield orjson.dumps(BRACKET | {"concentration": f"0.2{seed % 97:02}{number:07} mol/dm3"})


def like_tasks(seed: int) -> Iterator[bytes]:
    """Yield one task over and over, each time with another current."""
    for number in itertools.count(1):
        current = f"0.5{seed % 97:02}{number:07} A"
        yield orjson.dumps(NICKEL | {"known": {"current": current, "time": "20 min"}})


def answerable(
    members: Iterator[dict[str, Any]], answer: Callable[[bytes], Answer], *, count: int
) -> list[bytes]:
    """Bodies of requests that are not refused: the load generator counts good answers only."""
    bodies = map(orjson.dumps, members)
    return list(itertools.islice((body for body in bodies if answer(body).status == 200), count))


def test_quantities_beside_predictions(tmp_path: Path) -> None:
    registry, forgetful = load_curricula(), AnswerStore(entries=0, size=0)
    predict, solve = (
        Predictor(registry, forgetful).answer_body,
        QuantitiesDesk(registry, KeptAnswers("quantities", forgetful)).answer_body,
    )
    best: dict[str, float] = {}
    with gunicorn("ionwright.api:create_app()", tmp_path / "service.log") as port:
        for number in range(ROUNDS):
            count = int(4000 * SECONDS)
            cells = answerable(unlike_cells(300 + number), predict, count=count)
            tasks = answerable(unlike_tasks(300 + number), solve, count=count)
            for name, path, bodies in (
                ("predictions, repeated", PREDICTIONS, itertools.repeat(orjson.dumps(BRACKET))),
                ("quantities, repeated", QUANTITIES, itertools.repeat(orjson.dumps(NICKEL))),
                ("predictions, like cells", PREDICTIONS, like_cells(number)),
                ("quantities, like tasks", QUANTITIES, like_tasks(number)),
                ("predictions, unlike cells", PREDICTIONS, cells),
                ("quantities, unlike tasks", QUANTITIES, tasks),
            ):
                sent = (request_bytes(path, body) for body in bodies)
                rate = requests_per_second(port, sent, seconds=SECONDS)
                best[name] = max(best.get(name, 0.0), rate)
    costs = {
        kind: best[f"predictions, {cells}"] / best[f"quantities, {tasks}"]
        for kind, cells, tasks in (
            ("the same again", "repeated", "repeated"),
            ("the same with new figures", "like cells", "like tasks"),
            ("others each time", "unlike cells", "unlike tasks"),
        )
    }
    report(f"requests per second, one worker, best of {ROUNDS}", best)
    report("cost of a call for quantities, in calls for a prediction (asked: 1.5)", costs)
    assert costs["the same again"] <= 1.5
    assert costs["others each time"] <= 1.5
