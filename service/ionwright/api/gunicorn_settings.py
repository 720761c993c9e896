"""How gunicorn serves Ionwright: the same for `ionwright serve`, a container and a unit of the system.

Read by `gunicorn --config python:ionwright.api.gunicorn_settings`. Figures behind the choices stand in
DEVELOPERS.md under Decisions.
"""

from __future__ import annotations

import gc
import os
import sys
from typing import TYPE_CHECKING

from ionwright.api.exposure import refusal
from ionwright.api.request_free_log import RequestFreeLog

if TYPE_CHECKING:
    from collections.abc import Iterable

    from gunicorn.arbiter import Arbiter
    from gunicorn.workers.base import Worker

DEFAULT_BIND = "127.0.0.1:9648"


def worker_count(given: str, cores: int) -> int:
    """Number of worker processes: as given, else one for each core, at least 2 and at most 4.

    Raises
    ------
    SystemExit
        If `given` is not a whole number from 1 to 64.
    """
    if not given.strip():
        return min(4, max(2, cores))
    if given.isascii() and given.isdigit() and len(given) <= 2 and 1 <= int(given) <= 64:
        return int(given)
    sys.exit(f"IONWRIGHT_WORKERS is {given!r}; write a whole number from 1 to 64.")


wsgi_app = "ionwright.api:create_app()"
bind = os.environ.get("IONWRIGHT_BIND", "").strip() or DEFAULT_BIND
workers = worker_count(os.environ.get("IONWRIGHT_WORKERS", ""), os.cpu_count() or 1)

# Threads for patience, not for speed: two idle connections of a browser would block two sync workers.
worker_class = "gthread"
threads = 4
preload_app = True

timeout = 30
graceful_timeout = 10
keepalive = 5
limit_request_line = 8190
limit_request_fields = 64
limit_request_field_size = 8190
control_socket_disable = True
worker_tmp_dir = "/dev/shm" if os.access("/dev/shm", os.W_OK) else None  # noqa: S108 - memory, not a shared file

# What pupils ask is nobody's business: no access log, and no request text in the error log.
accesslog = None
errorlog = "-"
loglevel = "warning"
logger_class = RequestFreeLog


def on_starting(server: Arbiter) -> None:
    """Refuse addresses beyond this machine before any of them is opened."""
    leave_if_exposed(address[0] for address in server.cfg.address if isinstance(address, tuple))


def when_ready(server: Arbiter) -> None:
    """Say where the service is, once it listens there."""
    names = [listener.sock.getsockname() for listener in server.LISTENERS]
    addresses = [name for name in names if isinstance(name, tuple)]
    # again on the sockets themselves: a supervisor may have handed them over already open
    leave_if_exposed(address[0] for address in addresses)
    for host, port, *_ in addresses:
        sys.stdout.write(announcement(host, port))
    sys.stdout.flush()


def pre_fork(_server: Arbiter, _worker: Worker) -> None:
    """Take what is loaded out of the garbage collector's rounds: tables and curricula stay for good.

    Rounds then cost the same however many curricula there are, and the workers go on sharing the memory.
    """
    gc.collect()
    gc.freeze()


def on_reload(server: Arbiter) -> None:
    """Read the curricula again upon SIGHUP, for the workers that are about to take over.

    If that fails as a whole, the new workers serve what was served before. Python code of plugins is not imported
    again: an installed distribution counts from the next start on.
    """
    gc.unfreeze()  # so that what is let go now can be freed
    try:
        server.app.callable = server.app.load()
    except Exception as fault:
        told = "The curricula were not read again; the service goes on with those it has: %s"
        server.log.error(told, fault)  # noqa: TRY400 - the operator needs the reason, not a traceback


def leave_if_exposed(hosts: Iterable[str]) -> None:
    """End the process with exit code 2 and the two lines of explanation if it may not listen on `hosts`."""
    reason = refusal(hosts, os.environ)
    if reason:
        sys.stderr.write(f"{reason}\n")
        sys.stderr.flush()
        raise SystemExit(2)


def announcement(host: str, port: int) -> str:
    """The address, the page of the API and one request to try, as lines of text."""
    here = {"0.0.0.0": "127.0.0.1", "::": "[::1]"}.get(host, f"[{host}]" if ":" in host else host)  # noqa: S104
    address = f"http://{here}:{port}"
    return (
        f"Ionwright serves {address}\n"
        f"API page         {address}/docs\n"
        "Try              the bracket that Skerry Point plates with nickel:\n"
        f"  curl -s {address}/v1/predictions -H 'Content-Type: application/json' -d '"
        '{"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel", "curriculum": "gcse"}'
        "'\nStop             Ctrl+C\n"
    )
