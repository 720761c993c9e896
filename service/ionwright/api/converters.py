"""Parts of addresses that the rules of Werkzeug do not tell apart by themselves."""

from __future__ import annotations

from werkzeug.routing import BaseConverter


class CurriculumConverter(BaseConverter):
    """The id of a curriculum: any part of an address but the name of an operation that stands in its place."""

    regex = r"(?!preview(?:/|$))[^/]+"
