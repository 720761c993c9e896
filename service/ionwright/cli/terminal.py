"""What the terminal can show: how wide it is, and whether it knows more than ASCII."""

from __future__ import annotations

import sys

import click

# for terminals that show ASCII only; what is left after this becomes a question mark
_PLAIN = str.maketrans(
    {
        **dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "01234567890123456789", strict=True)),
        "⁺": "+",
        "⁻": "-",
        "−": "-",
        "–": "-",
        "→": "->",
        "·": ".",
        "°": " deg",
        "’": "'",
        "“": '"',
        "”": '"',
        "×": "x",
        "÷": "/",
        "±": "+/-",
        "≈": "~",
        "µ": "u",
        "ᶻ": "z",
        "η": "efficiency",
        "ρ": "density",
        "Δ": "change of ",
        "Ω": "ohm",
    }
)


def width() -> int:
    """Columns to lay text out for."""
    from shutil import get_terminal_size  # noqa: PLC0415

    return max(40, min(get_terminal_size((88, 24)).columns, 110))


def write(text: str) -> None:
    """Write to the terminal, in ASCII where it shows no more: never an end with a traceback."""
    encoding = getattr(sys.stdout, "encoding", None) or "utf-8"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        text = text.translate(_PLAIN).encode(encoding, errors="replace").decode(encoding)
    click.echo(text)


def write_json(value: object) -> None:
    """Write a value to the terminal as the API sends it."""
    import orjson  # noqa: PLC0415 -- `ionwright --help` must be quick

    click.echo(orjson.dumps(value))
