"""`ionwright serve`: where it listens, where it refuses to, and what it says."""

from __future__ import annotations

import gc
import json
import os
import signal
import socket
import subprocess
import sys
import time
import urllib.request
import weakref
from types import SimpleNamespace
from typing import TYPE_CHECKING

import click
import pytest
from click.testing import CliRunner

from ionwright.api.exposure import is_loopback, refusal
from ionwright.api.gunicorn_settings import announcement, on_reload, pre_fork, worker_count
from ionwright.cli.serve import bind_address, check_address, serve

if TYPE_CHECKING:
    from collections.abc import Iterator


@pytest.fixture
def taken_port() -> Iterator[int]:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        yield listener.getsockname()[1]


@pytest.fixture
def free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port: int = listener.getsockname()[1]
    return port


def start(*options: str, **environment: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-m", "ionwright", "serve", *options],
        env={**os.environ, **environment},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


@pytest.mark.parametrize("host", ["127.0.0.1", "127.8.9.10", "::1", "[::1]", "localhost", "LOCALHOST"])
def test_addresses_that_only_this_machine_reaches(host: str) -> None:
    assert is_loopback(host)


@pytest.mark.parametrize(
    "host",
    ["0.0.0.0", "::", "192.168.1.20", "10.0.0.1", "128.0.0.1", "localhost.school.example", "", "127.1"],
)
def test_addresses_that_others_reach(host: str) -> None:
    assert not is_loopback(host)


def test_a_listener_beyond_this_machine_is_refused_in_two_lines() -> None:
    reason = refusal(["127.0.0.1", "192.168.1.20"], {})
    assert "192.168.1.20" in reason
    assert "no key" in reason
    assert len(reason.splitlines()) == 2


def test_a_loopback_listener_needs_nothing() -> None:
    assert refusal(["127.0.0.1", "::1", "localhost"], {}) == ""


@pytest.mark.parametrize(
    ("word", "refused"), [("container", False), ("", True), ("proxy", True), ("yes", True)]
)
def test_only_the_word_container_lifts_the_refusal(word: str, refused: bool) -> None:
    environment = {"IONWRIGHT_BEHIND": word}
    assert bool(refusal(["0.0.0.0"], environment)) is refused


@pytest.mark.parametrize(
    ("given", "cores", "count"),
    [("", 1, 2), ("", 3, 3), ("", 16, 4), (" ", 2, 2), ("1", 8, 1), ("64", 8, 64)],
)
def test_workers_follow_the_cores_unless_given(given: str, cores: int, count: int) -> None:
    assert worker_count(given, cores) == count


@pytest.mark.parametrize("given", ["0", "65", "-1", "two", "1.5", "000000001", "٣"])
def test_a_senseless_number_of_workers_is_refused(given: str) -> None:
    with pytest.raises(SystemExit, match="IONWRIGHT_WORKERS"):
        worker_count(given, 2)


@pytest.mark.parametrize(
    ("host", "address"), [("127.0.0.1", "127.0.0.1:9648"), ("::1", "[::1]:9648"), ("[::1]", "[::1]:9648")]
)
def test_addresses_are_written_as_gunicorn_reads_them(host: str, address: str) -> None:
    assert bind_address(host, 9648) == address


def test_a_taken_port_is_named_with_another_one(taken_port: int) -> None:
    with pytest.raises(click.ClickException, match=f"Port {taken_port} .* taken .* --port {taken_port + 1}"):
        check_address("127.0.0.1", taken_port)


def test_a_free_port_passes(free_port: int) -> None:
    check_address("127.0.0.1", free_port)


@pytest.mark.parametrize("host", ["203.0.113.9", "127.0.0.300", "no such host", "." * 300])
def test_an_address_this_machine_has_not_is_refused(host: str) -> None:
    with pytest.raises(click.ClickException, match="has no address"):
        check_address(host, 9648)


@pytest.mark.parametrize(
    "options", [["--port", "0"], ["--port", "65536"], ["--port", "x"], ["--workers", "0"]]
)
def test_options_out_of_range_are_refused(options: list[str]) -> None:
    result = CliRunner().invoke(serve, options)
    assert result.exit_code == 2
    assert "is not" in result.output


def test_the_announcement_names_address_page_and_a_request() -> None:
    text = announcement("::1", 9648)
    assert "Ionwright serves http://[::1]:9648\n" in text
    assert "http://[::1]:9648/docs\n" in text
    request = text.split("-d '")[1].split("'")[0]
    assert json.loads(request) == {
        "electrolyte": "NiSO4",
        "cathode": "steel",
        "anode": "nickel",
        "curriculum": "gcse",
    }


def test_an_address_for_everyone_is_announced_as_one_that_can_be_opened() -> None:
    assert "Ionwright serves http://127.0.0.1:9648\n" in announcement("0.0.0.0", 9648)


@pytest.mark.live
@pytest.mark.parametrize("host", ["0.0.0.0", "::"])
def test_serve_refuses_the_network_without_a_key(host: str, free_port: int) -> None:
    process = start("--host", host, "--port", str(free_port))
    out, error = process.communicate(timeout=30)
    assert process.returncode == 2
    assert out == ""
    assert error.startswith(f"Ionwright does not listen on {host}")
    assert len(error.splitlines()) == 2


@pytest.mark.live
def test_gunicorns_own_options_do_not_get_around_the_refusal(free_port: int) -> None:
    process = start("--port", str(free_port), GUNICORN_CMD_ARGS=f"--bind 0.0.0.0:{free_port}")
    _, error = process.communicate(timeout=30)
    assert process.returncode == 2
    assert error.startswith("Ionwright does not listen on 0.0.0.0")


@pytest.mark.live
def test_serve_answers_logs_no_request_and_ends_on_a_signal(free_port: int) -> None:
    process = start("--port", str(free_port), "--workers", "1")
    try:
        wait_until_healthy(free_port, process)
        with socket.create_connection(("127.0.0.1", free_port), timeout=5) as connection:
            connection.sendall(b"WHAT A PUPIL \x01 WROTE\r\n\r\n")
            assert connection.recv(4096).startswith(b"HTTP/1.1 400")
    finally:
        process.send_signal(signal.SIGINT)
        out, error = process.communicate(timeout=30)
    assert process.returncode == 0
    assert f"http://127.0.0.1:{free_port}/docs" in out
    assert "not valid HTTP" in error
    assert "PUPIL" not in out + error
    assert "127.0.0.1" not in error


def wait_until_healthy(port: int, process: subprocess.Popen[str]) -> None:
    for _ in range(200):
        assert process.poll() is None, process.communicate()
        try:
            with urllib.request.urlopen(f"http://127.0.0.1:{port}/healthz", timeout=2) as answer:
                assert answer.status == 200
                return
        except OSError:
            time.sleep(0.1)
    pytest.fail("not healthy within 20 seconds")


def test_what_is_loaded_is_frozen_for_the_workers_and_let_go_when_it_is_read_again() -> None:
    class Curriculum:
        """A curriculum of the old days, held by nothing but itself."""

    old = Curriculum()
    old.itself = old  # type: ignore[attr-defined]  # a ring that only the collector can free
    gone = weakref.ref(old)
    server = SimpleNamespace(app=SimpleNamespace(load=lambda: "new", callable=old), log=None)
    try:
        pre_fork(server, None)  # type: ignore[arg-type]  # stands for the arbiter
        assert gc.get_freeze_count() > 0
        del old
        on_reload(server)  # type: ignore[arg-type]  # stands for the arbiter
        assert server.app.callable == "new"
        pre_fork(server, None)  # type: ignore[arg-type]  # stands for the arbiter
        assert gone() is None
    finally:
        gc.unfreeze()
