"""One example of the document: a request as it is sent."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any
from urllib.parse import urlencode

import orjson

from ionwright.api.answers import JSON

__all__ = ["Example"]

_WITH_COMMAS = frozenset({"notation", "curricula", "with"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """One request that shows an operation at work.

    Parameters
    ----------
    name
        Name of the example, and of its committed file.
    operation
        Id of the operation that it shows.
    summary
        What it is about.
    method, path
        Method and path of the request.
    parameters
        Parameters in the path or the query, by name; a list for one that repeats.
    body
        Body: JSON values, or a text of JSON Lines; None for a request without.
    media_type
        Media type of the body.
    """

    name: str
    operation: str
    summary: str
    method: str = "GET"
    path: str
    parameters: dict[str, Any] = field(default_factory=dict)
    body: Any = None
    media_type: str = JSON

    @property
    def address(self) -> str:
        """Path and query of the request."""
        path, query = self.path, {}
        for name, value in self.parameters.items():
            if "{" + name + "}" in path:
                path = path.replace("{" + name + "}", str(value))
            else:
                query[name] = ",".join(value) if name in _WITH_COMMAS else value
        return f"{path}?{urlencode(query, doseq=True)}" if query else path

    @property
    def encoded_body(self) -> bytes | None:
        """Body as it is sent."""
        if self.body is None:
            return None
        return self.body.encode() if isinstance(self.body, str) else orjson.dumps(self.body)
