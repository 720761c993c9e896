"""Reads the TOML tables that ship inside the package, each once."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any


@cache
def read_table(name: str) -> dict[str, Any]:
    """The content of one file of ``chemistry/data``; read once, then shared, so callers must not change it."""
    return tomllib.loads(files("ionwright.chemistry").joinpath("data", name).read_text(encoding="utf-8"))
