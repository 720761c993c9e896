"""A running service, and a client that speaks of what a learning platform does with it."""

from __future__ import annotations

import json
import os
import socket
import subprocess
import sys
import time
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import requests

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

JSON = "application/json"
JSON_LINES = "application/jsonl"


@dataclass(frozen=True)
class Service:
    """A service on this machine, by its address."""

    address: str
    pid: int = 0
    _session: requests.Session = field(default_factory=requests.Session)

    def ask(self, method: str, path: str, **options: Any) -> requests.Response:
        """Send one request and return its answer as it is, redirects included."""
        return self._session.request(
            method, self.address + path, timeout=20, allow_redirects=False, **options
        )

    def predict(self, **members: Any) -> requests.Response:
        """Ask for one prediction by POST."""
        return self.ask("POST", "/v1/predictions", json=members)

    def look_up(self, *pairs: tuple[str, str], **headers: str) -> requests.Response:
        """Ask for one prediction by GET."""
        return self.ask("GET", "/v1/predictions", params=list(pairs), headers=headers)

    def send(self, body: bytes, media_type: str = JSON, path: str = "/v1/predictions") -> requests.Response:
        """Send a body as it is."""
        headers = {"Content-Type": media_type} if media_type else {}
        return self.ask("POST", path, data=body, headers=headers)

    def predict_all(self, items: list[Any]) -> list[Any]:
        """Ask for many predictions in one document, and return the results."""
        answer = self.ask("POST", "/v1/predictions/batch", json={"items": items})
        assert answer.status_code == 200, answer.text
        return list(answer.json()["results"])

    def predict_lines(self, text: str | bytes) -> list[Any]:
        """Ask for many predictions line by line, and return the answered lines."""
        body = text.encode() if isinstance(text, str) else text
        answer = self.send(body, JSON_LINES, "/v1/predictions/batch")
        assert answer.status_code == 200, answer.text
        return [json.loads(line) for line in answer.content.splitlines()]


def free_port() -> int:
    """Return a port of this machine that is free at the moment."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


@contextmanager
def running_service(log: Path, **environment: str) -> Iterator[Service]:
    """Run the service under gunicorn, with the settings that it always has, until the block ends."""
    port = free_port()
    command = [sys.executable, "-m", "gunicorn", "--config", "python:ionwright.api.gunicorn_settings"]
    given = {"IONWRIGHT_BIND": f"127.0.0.1:{port}", "IONWRIGHT_WORKERS": "2", **environment}
    with log.open("wb") as output:
        process = subprocess.Popen(command, env=os.environ | given, stdout=output, stderr=output)
        service = Service(f"http://127.0.0.1:{port}", process.pid)
        try:
            _wait_until_ready(service, process, log)
            yield service
        finally:
            service._session.close()
            process.terminate()
            process.wait(20)


def _wait_until_ready(service: Service, process: subprocess.Popen[bytes], log: Path) -> None:
    deadline = time.monotonic() + 30
    while time.monotonic() < deadline:
        if process.poll() is not None:
            raise RuntimeError(f"the service ended: {log.read_text()}")
        try:
            if service.ask("GET", "/readyz").status_code == 200:
                return
        except requests.ConnectionError:
            time.sleep(0.05)
    raise RuntimeError(f"the service did not get ready: {log.read_text()}")
