"""`ionwright serve`: the service on this machine, run by gunicorn."""

from __future__ import annotations

import errno
import os
import socket
import sys

import click

SETTINGS = "python:ionwright.api.gunicorn_settings"
DEFAULT_HOST = "127.0.0.1"
DEFAULT_PORT = 9648

NOT_ON_WINDOWS = (
    "gunicorn, which runs the service, does not run on Windows. "
    "Use the container (see README.md, School IT) or the Windows Subsystem for Linux."
)


@click.command()
@click.option(
    "--host",
    default=DEFAULT_HOST,
    show_default=True,
    help="Address to listen on; beyond this machine it refuses.",
)
@click.option(
    "--port",
    default=DEFAULT_PORT,
    show_default=True,
    type=click.IntRange(1, 65535),
    help="Port to listen on.",
)
@click.option(
    "--workers",
    type=click.IntRange(1, 64),
    help="Worker processes; by default one for each core, from 2 to 4.",
)
def serve(host: str, port: int, workers: int | None) -> None:
    """Serve the API and its page until Ctrl+C."""
    if sys.platform == "win32":
        raise click.ClickException(NOT_ON_WINDOWS)
    check_address(host, port)
    environment = {**os.environ, "IONWRIGHT_BIND": bind_address(host, port)}
    if workers is not None:
        environment["IONWRIGHT_WORKERS"] = str(workers)
    # gunicorn takes over this process, so that signals and the exit code need no middleman
    command = [sys.executable, "-m", "gunicorn", "--config", SETTINGS]
    os.execve(command[0], command, environment)  # noqa: S606 - no shell is meant


def bind_address(host: str, port: int) -> str:
    """The address as gunicorn writes it, an IPv6 address in brackets."""
    bare = host.strip("[]")
    return f"[{bare}]:{port}" if ":" in bare else f"{bare}:{port}"


def check_address(host: str, port: int) -> None:
    """Make sure that this machine has the address and that its port is free.

    Raises
    ------
    click.ClickException
        If the service could not listen there, with the reason and what to do.
    """
    try:
        family, kind, protocol, _, address = socket.getaddrinfo(
            host.strip("[]"), port, type=socket.SOCK_STREAM, flags=socket.AI_PASSIVE
        )[0]
        with socket.socket(family, kind, protocol) as probe:
            # as gunicorn does: a port that a stopped service has just left is free
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            probe.bind(address)
    except (OSError, UnicodeError) as fault:
        raise click.ClickException(_reason(host, port, fault)) from fault


def _reason(host: str, port: int, fault: Exception) -> str:
    number = fault.errno if isinstance(fault, OSError) else None
    if number == errno.EADDRINUSE:
        other = port + 1 if port < 65535 else DEFAULT_PORT
        return (
            f"Port {port} on {host} is taken by another program. Choose another one, such as --port {other}."
        )
    if number in (errno.EACCES, errno.EPERM):
        return f"Port {port} is for the system only. Choose one from 1024 up, such as --port {DEFAULT_PORT}."
    return f"This machine has no address {host!r}. Leave out --host to serve on {DEFAULT_HOST}."
