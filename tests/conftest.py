"""What tests of several folders need: the shapes of the contract, without room for what they do not describe."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

CONTRACT = Path(__file__).resolve().parents[1] / "openapi" / "ionwright.json"


@pytest.fixture(scope="session")
def closed_components() -> Any:
    """The components of the contract, none of which takes a member that it does not describe."""
    return _closed(json.loads(CONTRACT.read_text(encoding="utf-8"))["components"])


def _closed(schema: Any) -> Any:
    if isinstance(schema, list):
        return [_closed(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    found = {name: _closed(part) for name, part in schema.items()}
    if "properties" in found and found.get("type") == "object":
        found["additionalProperties"] = False
    return found
