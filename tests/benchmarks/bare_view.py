"""The yardstick: a Flask view that does nothing but encode a document of a given length with orjson."""

from __future__ import annotations

import os

import orjson
from flask import Flask, Response

app = Flask(__name__)
DOCUMENT = {"line": [f"{number:08}" for number in range((int(os.environ["BARE_VIEW_BYTES"]) - 11) // 11)]}


@app.post("/bare")
def bare() -> Response:
    """Answer with the document, encoded anew each time."""
    return Response(orjson.dumps(DOCUMENT), mimetype="application/json")


@app.get("/readyz")
def ready() -> str:
    """Say that the yardstick is up."""
    return "ready"
