"""The answers to a task about amounts laid out for a terminal: the working, then the answers."""

from __future__ import annotations

import re
from textwrap import wrap
from typing import TYPE_CHECKING, Any, Final

from ionwright.cli.layout import formula_text, section

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.cli.layout import Rows

_NEXT_PART: Final = re.compile(r" (?=[=≈] )|(?<=;) ")
"""Where an equation goes on in the next line if one is too short: before a sign of equality."""


def quantities_laid_out(document: dict[str, Any], *, width: int) -> str:
    """Return the document of a solved task as text of the given width."""
    sections = [
        ("Answer" if len(document["found"]) == 1 else "Answers", list(_answers(document["found"]))),
        ("Stages", [("", stage["summary"]) for stage in document.get("stages", ())]),
        ("Constants", list(_constants(document["conventions"]))),
        ("Assumed", [("", text) for text in document["assumptions"]]),
    ]
    blocks = (
        ["\n".join(["WORKING", *working_lines(document["working"], width)])] if document["working"] else []
    )
    blocks += [section(title, rows, width) for title, rows in sections if rows]
    return "\n\n".join(blocks)


def working_lines(steps: Iterable[dict[str, Any]], width: int) -> list[str]:
    """Return the numbered steps of a working as lines of the given width."""
    lines = []
    for number, step in enumerate(steps, 1):
        first = f"  {number}. "
        rest = " " * len(first)
        lines += wrap(step["sentence"], width, initial_indent=first, subsequent_indent=rest)
        lines += _in_lines(step["text"], width, rest + "  ")
    return lines


def _in_lines(equation: str, width: int, indent: str) -> list[str]:
    lines: list[str] = []
    for part in _NEXT_PART.split(equation):
        if lines and len(lines[-1]) + 1 + len(part) <= width:
            lines[-1] += f" {part}"
        else:
            lines.append(indent + ("  " if lines else "") + part)
    return lines


def _answers(found: Iterable[dict[str, Any]]) -> Rows:
    rows = []
    for one in found:
        name = one["quantity"].replace("_", " ")
        if "of" in one:
            name += f" of {formula_text(one['of'])}"
        if "process" in one:
            name += f" ({one['process']})"
        rows.append(("", f"{name[0].upper()}{name[1:]}: {one['text']}"))
    return rows


def _constants(conventions: dict[str, Any]) -> Rows:
    rows = []
    for name, value in conventions.items():
        if name == "relative_atomic_masses":
            text = ", ".join(f"{symbol} {mass}" for symbol, mass in value.items())
            rows.append(("", f"Relative atomic masses: {text}"))
        else:
            rows.append(("", f"{name.replace('_', ' ').capitalize()}: {value}"))
    return rows
