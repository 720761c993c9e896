"""Answers and problems as Flask responses."""

from __future__ import annotations

from typing import TYPE_CHECKING

from flask import Response, request

if TYPE_CHECKING:
    from ionwright.api.answers import Answer


def response(answer: Answer) -> Response:
    """Response that sends an answer as it is."""
    return Response(answer.body, answer.status, answer.headers)


def conditional_response(answer: Answer) -> Response:
    """Response to a GET: 304 without a body if the sender holds these very bytes already."""
    full = response(answer)
    if answer.etag and "HTTP_IF_NONE_MATCH" in request.environ:
        full.make_conditional(request)
        # the server in front writes the date
        full.headers.remove("Date")
    return full
