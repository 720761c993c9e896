"""The busiest operations, answered in front of Flask.

A class presses the same button thirty times, and Flask's routing and response would then be most of the
work. So the plain form of a few POST operations is answered here. Whatever is out of the ordinary passes on
to the application, whose view of the same operation gives the same answers: other media types, query
parameters, chunked and long bodies, and every unforeseen failure.
"""

from __future__ import annotations

from http import HTTPStatus
from io import BytesIO
from typing import TYPE_CHECKING

from ionwright.api.answers import JSON

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping
    from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

    from ionwright.api.answers import Answer

LONGEST_IN_FRONT = 4096
_STATUS_LINES = {status.value: f"{status.value} {status.phrase}" for status in HTTPStatus}


class PlainRequestsInFront:
    """WSGI application in front of another one, which it spares the plain requests to some operations.

    Parameters
    ----------
    application
        The application behind.
    answers
        What answers a JSON body, by the path of the operation.
    longest
        Length of the longest body that is answered here, in bytes.
    """

    def __init__(
        self, application: WSGIApplication, answers: Mapping[str, Callable[[bytes], Answer]], *, longest: int
    ) -> None:
        self._application = application
        self._answers = dict(answers)
        self._longest = longest

    def __call__(self, environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        """Answer a request here if it is a plain one, else by the application behind."""
        answer_body = self._answers.get(environ["PATH_INFO"])
        length = environ.get("CONTENT_LENGTH") or ""
        if (
            answer_body is None
            or environ["REQUEST_METHOD"] != "POST"
            or environ.get("CONTENT_TYPE") != JSON
            or environ.get("QUERY_STRING")
            or "HTTP_CONTENT_ENCODING" in environ
            or not (length.isdecimal() and len(length) <= 9 and int(length) <= self._longest)
        ):
            return self._application(environ, start_response)
        body = environ["wsgi.input"].read(int(length))
        try:
            answer = answer_body(body)
        except Exception:
            environ["wsgi.input"] = BytesIO(body)
            return self._application(environ, start_response)
        headers = [*answer.headers, ("Content-Length", str(len(answer.body)))]
        start_response(_STATUS_LINES[answer.status], headers)
        return [answer.body]
