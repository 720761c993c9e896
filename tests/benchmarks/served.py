"""Applications under gunicorn with the settings of the service, and figures told to those who run the benchmarks."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import requests

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "live"))

from service import free_port

if TYPE_CHECKING:
    from collections.abc import Iterator

HERE = Path(__file__).resolve().parent


@contextmanager
def gunicorn(application: str, log: Path, **environment: str) -> Iterator[int]:
    """Run an application under the settings of the service, with one worker, until the block ends."""
    port = free_port()
    settings = "python:ionwright.api.gunicorn_settings"
    command = [sys.executable, "-m", "gunicorn", "--config", settings, "--pythonpath", str(HERE), application]
    given = {"IONWRIGHT_BIND": f"127.0.0.1:{port}", "IONWRIGHT_WORKERS": "1", **environment}
    with log.open("wb") as output:
        process = subprocess.Popen(command, env=os.environ | given, stdout=output, stderr=output)
        try:
            wait_until_ready(port, process)
            yield port
        finally:
            process.terminate()
            process.wait(20)


def wait_until_ready(port: int, process: subprocess.Popen[bytes]) -> None:
    deadline = time.monotonic() + 30
    while time.monotonic() < deadline and process.poll() is None:
        try:
            if requests.get(f"http://127.0.0.1:{port}/readyz", timeout=5).status_code == 200:
                return
        except requests.ConnectionError:
            time.sleep(0.01)
    raise RuntimeError("the server did not get ready")


def report(title: str, figures: dict[str, float]) -> None:
    """Print figures under a title, for those who run the benchmarks with `-s`."""
    lines = [f"  {name:<40}{figure:>9.{0 if figure > 100 else 3}f}" for name, figure in figures.items()]
    sys.stdout.write("\n".join(["", title, *lines, ""]))
