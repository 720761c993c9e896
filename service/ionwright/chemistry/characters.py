"""The characters people type in formulas, folded to the few that the scanners know.

Every character becomes exactly one other, so a position in the folded text is a position in the text given.
Subscripts and superscripts stay what they are: normalising the text would fuse the 4 and the 2 of SO₄²⁻.
"""

from __future__ import annotations

import unicodedata

__all__ = ["DOTS", "SUBSCRIPTS", "SUPERSCRIPTS", "SUPERSCRIPT_SIGNS", "described", "folded"]

SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹"
"""The superscript digits, each at the index of its value."""

SUBSCRIPTS = "₀₁₂₃₄₅₆₇₈₉"
"""The subscript digits, each at the index of its value."""

SUPERSCRIPT_SIGNS = "⁺⁻"
"""The superscript plus and minus."""

DOTS = ".*"
"""What joins the parts of a hydrate once the text is folded."""

_SPACES = "\u00a0\u1680\u202f\u205f\u3000\u200b\u200c\u200d\u2060\ufeff\u00ad\ufe0e\ufe0f" + "".join(
    map(chr, range(0x2000, 0x200B))
)
_MINUSES = "\u2212\u2010\u2011\u2012\u2013\u2014\u2015\u2043\u02d7\ufe58\ufe63\u2796\u30fc"
_PLUSES = "\ufe62\u2795\u02d6"
_HYDRATE_DOTS = "\u00b7\u2022\u2219\u22c5\u2217\u2027\u30fb\uff65\u25cf\u02d9\u0387\u00d7\u2217"
_ARROWS = "→⟶⇌⇋⇄⇆⇔⇒⟹⟷↔⇀⇁➔➙➛➜➝➞➟➡➨⭢⥂⥄⥤⥰⇨⟾↦"
_OPEN, _CLOSE = "₍⁽❨", "₎⁾❩"


def _folding() -> dict[int, str]:
    table = {code: chr(code - 0xFEE0) for code in range(0xFF01, 0xFF5F)}
    for characters, plain in (
        (_SPACES, " "),
        (_MINUSES, "-"),
        (_PLUSES, "+"),
        (_HYDRATE_DOTS, "."),
        (_ARROWS, "→"),
        (_OPEN, "("),
        (_CLOSE, ")"),
        ("\u00af\u02c9\u203e", "⁻"),
        ("\u1429", "⁺"),
        ("Ēĕ", "ē"),
        ("⁄∕", "/"),
    ):
        table.update(dict.fromkeys(map(ord, characters), plain))
    return table


_FOLDING = _folding()


def folded(text: str) -> str:
    """Return the text with each character replaced by its plain form, at the same position.

    Parameters
    ----------
    text
        Any text; its length does not change.
    """
    return text if text.isascii() else text.translate(_FOLDING)


def described(character: str) -> str:
    """Return a character as a fault names it; letters that only look Latin are told by their full name."""
    if character.isascii() and character.isprintable():
        return f'"{character}"'
    name = unicodedata.name(character, "").lower() or f"character U+{ord(character):04X}"
    return f'"{character}" ({name})' if character.isprintable() else name
