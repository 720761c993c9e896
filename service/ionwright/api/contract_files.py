"""The files of the folder `openapi/`: the document and one file for each example."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from ionwright.api.app import create_app
from ionwright.api.document import example_record, openapi_document
from ionwright.api.examples import EXAMPLES
from ionwright.api.settings import Settings

if TYPE_CHECKING:
    from flask import Flask


def contract_files(app: Flask | None = None) -> dict[str, str]:
    """Return the text of each file by its name, made with the built-in curricula and the usual settings."""
    app = app or create_app(Settings())
    files = {"ionwright.json": _pretty(openapi_document(app))}
    for example in EXAMPLES:
        record = example_record(app, example)
        if record["response"]["status"] >= 500:
            message = f"the example {example.name} makes the service fail: {record['response']['body']}"
            raise RuntimeError(message)
        files[f"examples/{example.name}.json"] = _pretty(record)
    return files


def _pretty(value: object) -> str:
    return json.dumps(value, indent=2, ensure_ascii=False) + "\n"
