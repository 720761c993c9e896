"""A running service reads its folder of curricula again when it is told to, and no request is lost meanwhile."""

from __future__ import annotations

import os
import signal
import time
from typing import TYPE_CHECKING, Any

from service import Service, running_service

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

COURSE = """
format = 1
id = "skerry-foundation"
title = "Skerry Point foundation course"
region = "Skerry Point"
stage = "lower secondary"
based_on = "gcse"
summary = "What the museum's school programme teaches in its first year."
sources = ["The school programme of the lighthouse museum"]
"""
KEPT = "The curricula were not read again; the service goes on with those it has"
BRACKET = {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel"}


def readiness_once(service: Service, is_so: Callable[[dict[str, Any]], bool]) -> dict[str, Any]:
    """What the service says of itself once that is so in several answers running; it must answer all along."""
    deadline, in_a_row, told = time.monotonic() + 30, 0, {}
    while in_a_row < 8:
        assert time.monotonic() < deadline, told
        answer = service.ask("GET", "/readyz", headers={"Connection": "close"})
        assert answer.status_code == 200
        told = answer.json()
        in_a_row = in_a_row + 1 if is_so(told) else 0
        time.sleep(0.05)
    return told


def test_a_hang_up_reads_the_folder_again(tmp_path: Path) -> None:
    folder, log = tmp_path / "curricula", tmp_path / "service.log"
    folder.mkdir()
    with running_service(log, IONWRIGHT_CURRICULA=str(folder)) as service:
        assert "skerry-foundation" not in service.ask("GET", "/readyz").json()["curricula"]

        (folder / "skerry.toml").write_text(COURSE, encoding="utf-8")
        os.kill(service.pid, signal.SIGHUP)
        readiness_once(service, lambda told: "skerry-foundation" in told["curricula"])
        asked = {"json": BRACKET | {"curriculum": "skerry-foundation"}}
        assert service.ask("POST", "/v1/predictions", **asked).status_code == 200

        (folder / "skerry.toml").write_text(COURSE.replace("gcse", "gsce"), encoding="utf-8")
        os.kill(service.pid, signal.SIGHUP)
        told = readiness_once(service, lambda told: bool(told["set_aside"]))
        assert told["set_aside"][0]["name"] == "skerry.toml"
        assert "gcse" in told["curricula"]
        assert service.ask("POST", "/v1/predictions", **asked).json()["code"] == "unknown-curriculum"

        (folder / "skerry.toml").unlink()
        folder.rmdir()
        os.kill(service.pid, signal.SIGHUP)
        deadline = time.monotonic() + 30
        while KEPT not in log.read_text():
            assert time.monotonic() < deadline, log.read_text()
            time.sleep(0.05)
        assert service.ask("GET", "/readyz", headers={"Connection": "close"}).status_code == 200
    assert "Traceback" not in log.read_text()
