"""Finds the line of a declaration on which a key stands, so that its author need not search for it."""

from __future__ import annotations

import re
from collections import Counter
from typing import Final

__all__ = ["line_of"]

_TABLE: Final = re.compile(r"\s*\[\s*([\w\-.\s]+?)\s*\]\s*(?:#.*)?")
_LISTED_TABLE: Final = re.compile(r"\s*\[\[\s*([\w\-.\s]+?)\s*\]\]\s*(?:#.*)?")
_KEY: Final = re.compile(r"""\s*((?:[\w\-]+|"[^"]*"|'[^']*')(?:\s*\.\s*(?:[\w\-]+|"[^"]*"|'[^']*'))*)\s*=""")
_LONG_QUOTES: Final = ('"""', "'''")
_LINE_IN_FAULT: Final = re.compile(r"at line (\d+)")

Keys = tuple[str, ...]


def line_of(text: str, key_path: str, fault: str = "") -> int | None:
    """The line, counted from 1, of a key or of the innermost table of its path that is written out.

    Parameters
    ----------
    key_path
        Keys and places in lists with dots between them, such as ``"anode.active_electrodes.0"``; empty for a fault of
        the whole text.
    fault
        What is wrong there; a fault of TOML itself says its line.

    Returns
    -------
    int or None
        None if nothing of the path is written out, because it is inherited or missing.
    """
    if not key_path:
        told = _LINE_IN_FAULT.search(fault)
        return int(told.group(1)) if told else None
    lines = _lines(text)
    keys = tuple(key_path.split("."))
    for length in range(len(keys), 0, -1):
        if keys[:length] in lines:
            return lines[keys[:length]]
    return None


def _lines(text: str) -> dict[Keys, int]:
    found: dict[Keys, int] = {}
    listed: Counter[Keys] = Counter()
    table: Keys = ()
    quotes = ""
    for number, line in enumerate(text.splitlines(), 1):
        if quotes:
            quotes = "" if quotes in line else quotes
            continue
        if matched := _LISTED_TABLE.fullmatch(line):
            name = _keys(matched.group(1))
            table = (*name, str(listed[name]))
            listed[name] += 1
            found.setdefault(name, number)
            found.setdefault(table, number)
        elif matched := _TABLE.fullmatch(line):
            table = _keys(matched.group(1))
            found.setdefault(table, number)
        elif matched := _KEY.match(line):
            keys = _keys(matched.group(1))
            for length in range(1, len(keys) + 1):
                found.setdefault((*table, *keys[:length]), number)
        quotes = next((mark for mark in _LONG_QUOTES if line.count(mark) == 1), "")
    return found


def _keys(dotted: str) -> Keys:
    return tuple(part.strip().strip("\"'") for part in dotted.split("."))
