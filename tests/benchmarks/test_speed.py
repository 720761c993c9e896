"""Speed, side by side in one run: what the service costs beside a bare view, and what its parts cost alone.

The figures are printed; only ratios are asserted, with room for a machine that does other work as well.
Run it with `pytest -m benchmark -s`.
"""

from __future__ import annotations

import itertools
import subprocess
import sys
import time
from typing import TYPE_CHECKING, Any

import orjson
import pytest
import requests
from cells import unlike_cells
from load import request_bytes, requests_per_second
from served import gunicorn, report

from ionwright.api.request_reader import read_prediction_request
from ionwright.curricula.host import load_curricula
from ionwright.errors import IonwrightError
from ionwright.teaching import predict, prediction_document

if TYPE_CHECKING:
    from pathlib import Path

pytestmark = pytest.mark.benchmark

ROUNDS = 4
SECONDS = 1.0
BRACKET = {
    "electrolyte": "NiSO4",
    "concentration": "0.25 mol/dm3",
    "cathode": "steel",
    "anode": "nickel",
    "curriculum": "gcse",
}


def test_predictions_beside_a_bare_view(tmp_path: Path) -> None:
    with gunicorn("ionwright.api:create_app()", tmp_path / "service.log") as service_port:
        address = f"http://127.0.0.1:{service_port}/v1/predictions"
        answers = [requests.post(address, json=BRACKET, timeout=5)]
        answers += [
            requests.post(address, json=cell, timeout=5) for cell in itertools.islice(unlike_cells(7), 200)
        ]
        assert {answer.status_code for answer in answers} <= {200, 422}
        repeated_length = len(answers[0].content)
        fresh_length = mean_length(answers[1:])
        with (
            gunicorn("bare_view:app", tmp_path / "a.log", BARE_VIEW_BYTES=str(repeated_length)) as long_port,
            gunicorn("bare_view:app", tmp_path / "b.log", BARE_VIEW_BYTES=str(fresh_length)) as short_port,
        ):
            rates = interleaved_rates(service_port, long_port, short_port)
    repeated = rates["repeated"] / rates["bare, as long as repeated"]
    fresh = rates["never seen"] / rates["bare, as long as never seen"]
    report(f"requests per second, one worker, best of {ROUNDS}", rates)
    report(
        f"ratios; answers of {repeated_length} and, on average, {fresh_length} bytes",
        {"repeated / bare (asked: 0.9)": repeated, "never seen / bare (asked: 0.4)": fresh},
    )
    assert repeated >= 0.75
    assert fresh >= 0.3


def mean_length(answers: list[requests.Response]) -> int:
    lengths = [len(answer.content) for answer in answers if answer.status_code == 200]
    return sum(lengths) // len(lengths)


def interleaved_rates(service_port: int, long_port: int, short_port: int) -> dict[str, float]:
    """Return the best rate of each kind over several rounds in which all kinds take turns."""
    same = request_bytes("/v1/predictions", orjson.dumps(BRACKET))
    bare = request_bytes("/bare", orjson.dumps(BRACKET))
    best: dict[str, float] = {}
    for number in range(ROUNDS):
        fresh = prepared_requests(answerable_cells(seed=100 + number, count=int(4000 * SECONDS)))
        for name, port, sent in (
            ("bare, as long as repeated", long_port, itertools.repeat(bare)),
            ("repeated", service_port, itertools.repeat(same)),
            ("bare, as long as never seen", short_port, itertools.repeat(bare)),
            ("never seen", service_port, fresh),
        ):
            rate = requests_per_second(port, iter(sent), seconds=SECONDS)
            best[name] = max(best.get(name, 0.0), rate)
    return best


def answerable_cells(*, seed: int, count: int) -> list[dict[str, Any]]:
    """Cells that are not refused: the load generator counts good answers only."""
    registry = load_curricula()
    found = []
    for cell in unlike_cells(seed):
        request = read_prediction_request(cell)
        try:
            predict(request.cell, registry[request.curriculum])
        except IonwrightError:
            continue
        found.append(cell)
        if len(found) == count:
            break
    return found


def prepared_requests(cells: list[dict[str, Any]]) -> list[bytes]:
    return [request_bytes("/v1/predictions", orjson.dumps(cell)) for cell in cells]


def test_the_engine_alone() -> None:
    registry = load_curricula()
    cells = answerable_cells(seed=500, count=6000)
    rates = {"predict": 0.0, "predict and document": 0.0, "predict, document and encode": 0.0}
    for start in range(0, 6000, 1000):
        asked = [read_prediction_request(cell) for cell in cells[start : start + 1000]]
        steps = (
            ("predict", predict),
            ("predict and document", lambda cell, c: prediction_document(predict(cell, c))),
            (
                "predict, document and encode",
                lambda cell, c: orjson.dumps(prediction_document(predict(cell, c))),
            ),
        )
        for (name, step), part in zip(steps, (asked[:333], asked[333:666], asked[666:]), strict=True):
            began = time.process_time()
            for request in part:
                step(request.cell, registry[request.curriculum])
            rates[name] = max(rates[name], len(part) / (time.process_time() - began))
    report("cells never seen before, per second on one core (asked of predict: 4000)", rates)
    assert rates["predict"] >= rates["predict, document and encode"] * 0.9


_APP_READY = "from ionwright.api import create_app; create_app()"
_LIBRARIES = "import flask, marshmallow, flask_smorest"


def test_start() -> None:
    whole = min(measured("import ionwright") for _ in range(5))
    # turn by turn, so that a load on the machine meets both
    turns = [(measured(_APP_READY), measured(_LIBRARIES)) for _ in range(6)]
    ready, bare = (min(times) for times in zip(*turns, strict=True))
    figures = {
        "import ionwright (asked: 0.15)": whole,
        "app ready (asked: 1.5)": ready,
        "its libraries": bare,
    }
    report("seconds in a process of its own, best of a few", figures)
    assert whole < ready
    assert ready < bare * 8  # 1.5 s are asked for where the libraries take 0.15 s


def measured(statement: str) -> float:
    """Seconds that a statement takes in a Python of its own, without the start of Python itself."""
    script = f"import time; t = time.perf_counter(); {statement}; print(time.perf_counter() - t)"
    done = subprocess.run([sys.executable, "-c", script], check=True, capture_output=True, text=True)
    return float(done.stdout)
