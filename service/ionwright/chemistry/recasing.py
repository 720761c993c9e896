"""Gives formulas typed in the wrong case their capitals back."""

from __future__ import annotations

import re
from itertools import islice
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.element import ELEMENTS

if TYPE_CHECKING:
    from collections.abc import Iterator

__all__ = ["recasings"]

_MAX_LENGTH: Final = 40
_MAX_READINGS: Final = 64
_FORMULA_LIKE: Final = re.compile(r"[A-Za-z][A-Za-z0-9()\[\]{}.*·₀₁₂₃₄₅₆₇₈₉]*")
_SYMBOLS: Final = {symbol.lower(): symbol for symbol in ELEMENTS}


def recasings(text: str) -> tuple[str, ...]:
    """Return the formulas that a text spells if its capitals are not trusted, the text itself left out.

    Parameters
    ----------
    text
        Such as ``"nacl"`` or ``"CUSO4"``; without spaces, else nothing is found.
    """
    if len(text) > _MAX_LENGTH or not _FORMULA_LIKE.fullmatch(text):
        return ()
    return tuple(found for found in islice(_spelled(text.lower()), _MAX_READINGS) if found != text)


def _spelled(text: str) -> Iterator[str]:
    if not text:
        yield ""
        return
    if not text[0].isalpha():
        for rest in _spelled(text[1:]):
            yield text[0] + rest
        return
    for length in (2, 1):
        symbol = _SYMBOLS.get(text[:length]) if len(text) >= length else None
        if symbol is not None and len(symbol) == length:
            for rest in _spelled(text[length:]):
                yield symbol + rest
