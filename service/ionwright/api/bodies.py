"""Request bodies: read whole, within a limit, and never cut short in silence."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from flask import request

from ionwright.api.answers import JSON
from ionwright.api.json_reader import check_media_type
from ionwright.api.problems import Fault, Problem
from ionwright.api.query_reader import check_no_query

if TYPE_CHECKING:
    from collections.abc import Mapping

_CHUNK = 64 * 1024
_MOST_CHUNKS = 256


def read_body(environ: Mapping[str, Any], limit: int) -> bytes:
    """Return the body of a request.

    Read here rather than by Werkzeug, which hands over the first part of a chunked body that is too long
    as if it were the whole.

    Raises
    ------
    Problem
        With code ``content-too-large`` if the body has more bytes than `limit`.
    """
    stream = environ["wsgi.input"]
    length = environ.get("CONTENT_LENGTH") or ""
    if length:
        if not length.isdecimal() or len(length) > 18 or int(length) > limit:
            raise _too_large(stream, limit)
        return bytes(stream.read(int(length)))
    if not environ.get("wsgi.input_terminated"):
        return b""
    body = bytes(stream.read(limit + 1))
    if len(body) > limit:
        raise _too_large(stream, limit)
    return body


def _too_large(stream: Any, limit: int) -> Problem:
    """Problem for a body that is too long, once some more of it is read.

    A sender that is cut off in the middle of its body never gets to read the answer.
    """
    for _ in range(_MOST_CHUNKS):
        if not stream.read(_CHUNK):
            break
    detail = f"The body is longer than the {limit} bytes that are read here. Send it in smaller parts."
    return Problem("content-too-large", detail, faults=[Fault((), "content-too-large", detail)])


def read_json_body(limit: int) -> bytes:
    """Body of the request at hand, which must say that it is JSON and carry no query parameters.

    Raises
    ------
    Problem
        With code ``content-too-large``, ``unsupported-media-type`` or that of an unknown parameter.
    """
    check_no_query(request.args)
    environ = request.environ
    check_media_type(environ.get("CONTENT_TYPE") or "", environ.get("HTTP_CONTENT_ENCODING", ""), (JSON,))
    return read_body(environ, limit)
