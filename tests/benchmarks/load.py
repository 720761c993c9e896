"""A small load generator: a few connections kept alive, requests prepared beforehand, only on this machine."""

from __future__ import annotations

import selectors
import socket
import time
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

HEADER_END = b"\r\n\r\n"


@dataclass
class Connection:
    """One connection with a request under way."""

    sock: socket.socket
    received: bytearray = field(default_factory=bytearray)
    expected: int = -1


def request_bytes(path: str, body: bytes) -> bytes:
    """Return a POST of JSON as it goes over the wire."""
    head = f"POST {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nContent-Length: {len(body)}"
    return head.encode() + HEADER_END + body


def requests_per_second(
    port: int, requests: Iterator[bytes], *, seconds: float, connections: int = 8
) -> float:
    """Send requests for some time, one at a time on each connection, and return the rate of good answers.

    Raises
    ------
    RuntimeError
        If an answer is not a 200, or the requests run out.
    """
    done = 0
    with selectors.DefaultSelector() as selector:
        open_connections = [_connected(port, selector, requests) for _ in range(connections)]
        start = time.perf_counter()
        end = start + seconds
        while time.perf_counter() < end:
            for key, _ in selector.select(1):
                connection: Connection = key.data
                if _is_complete(connection):
                    done += 1
                    connection.received.clear()
                    connection.expected = -1
                    connection.sock.sendall(next(requests))
        elapsed = time.perf_counter() - start
        for connection in open_connections:
            connection.sock.close()
    return done / elapsed


def _connected(port: int, selector: selectors.BaseSelector, requests: Iterator[bytes]) -> Connection:
    sock = socket.create_connection(("127.0.0.1", port))
    sock.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    connection = Connection(sock)
    selector.register(sock, selectors.EVENT_READ, connection)
    sock.sendall(next(requests))
    return connection


def _is_complete(connection: Connection) -> bool:
    """Read what has come, and tell whether the answer is whole."""
    data = connection.sock.recv(256 * 1024)
    if not data:
        raise RuntimeError("the service closed a connection")
    received = connection.received
    received += data
    if connection.expected < 0:
        end = received.find(HEADER_END)
        if end < 0:
            return False
        head = bytes(received[:end]).lower()
        if not head.startswith(b"http/1.1 200"):
            raise RuntimeError(f"not a good answer: {bytes(received[:600]).decode(errors='replace')}")
        length = head.split(b"content-length:")[1].split(b"\r\n")[0]
        connection.expected = end + len(HEADER_END) + int(length)
    return len(received) >= connection.expected
