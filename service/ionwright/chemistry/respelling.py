"""What a writer of a mis-cased or unknown symbol most likely meant; used in remedies only, never to guess."""

from __future__ import annotations

import re

from ionwright.chemistry.element import ELEMENTS

__all__ = ["name_in", "near_symbols", "respelled", "symbol_of"]

_COMMON = frozenset(
    (
        "Na",
        "Mg",
        "Al",
        "Cl",
        "Ca",
        "Cr",
        "Mn",
        "Fe",
        "Ni",
        "Cu",
        "Zn",
        "Br",
        "Ag",
        "Sn",
        "Ba",
        "Pb",
        "Li",
        "Hg",
    )
)
_GROUPS = ("SO", "CO3", "NO3", "NO2", "PO4", "OH", "NH4", "NH3")
_RARE = 2.5
_COSTS = {
    symbol.lower(): (symbol, 1.0 if len(symbol) == 1 or symbol in _COMMON else _RARE) for symbol in ELEMENTS
}
_COSTS["co"] = ("Co", 1.5)
_COSTS.update({group.lower(): (group, 1.0) for group in _GROUPS})
_COSTS.update({mark: (mark, 0.0) for mark in "0123456789()[].*^+-"})
_LONGEST = 40
_WORD = re.compile(r"(?:[A-Z]?[a-z]{2,}|[A-Z]{3,})(?![A-Za-z0-9])")
_SHORTEST_NAME = 4
_SYMBOLS = {element.name: symbol for symbol, element in ELEMENTS.items()}


def symbol_of(name: str) -> str:
    """Return the symbol of the element with this name, whatever its capitals; empty if there is none."""
    return _SYMBOLS.get(name.lower(), "")


def name_in(text: str) -> str:
    """Return the word at the start of a text if it is a name rather than a formula in wrong capitals; else empty.

    A name is that of an element, or a word of four letters or more that common symbols do not spell: ``water``,
    ``chloride``; but not ``nacl``.
    """
    found = _WORD.match(text.strip()[:_LONGEST])
    if found is None:
        return ""
    word = found[0]
    is_long = len(word) >= _SHORTEST_NAME and not word.isupper()
    if symbol_of(word) or (is_long and not _is_spelt_by_common_symbols(word.lower())):
        return word
    return ""


def _is_spelt_by_common_symbols(small: str) -> bool:
    reached = {0}
    for start in range(len(small)):
        if start in reached:
            reached.update(
                end
                for end in range(start + 1, min(start + 3, len(small)) + 1)
                if _COSTS.get(small[start:end], ("", _RARE))[1] < _RARE
            )
    return len(small) in reached


def respelled(text: str, most: int = 2) -> tuple[str, ...]:
    """Return the likeliest spellings of a formula whose capitals are wrong: ``"NACL"`` gives ``"NaCl"``.

    Parameters
    ----------
    text
        Letters, digits, brackets; anything longer than 40 characters is left alone.
    most
        How many spellings to return at the most.

    Returns
    -------
    tuple of str
        Likeliest first; empty where no spelling fits.
    """
    if not text or len(text) > _LONGEST or not text.isascii():
        return ()
    small = text.lower()
    ways: list[dict[str, float]] = [{"": 0.0}, *({} for _ in small)]
    for start in range(len(small)):
        for end in range(start + 1, min(start + 3, len(small)) + 1):
            if (piece := _COSTS.get(small[start:end])) is not None:
                _extend(ways[start], ways[end], *piece)
        ways[start + 1] = _cheapest(ways[start + 1], most + 1)
    return tuple(spelling for spelling in ways[-1] if spelling != text)[:most]


def _extend(before: dict[str, float], after: dict[str, float], symbol: str, cost: float) -> None:
    for spelling, so_far in before.items():
        longer = spelling + symbol
        after[longer] = min(so_far + cost, after.get(longer, so_far + cost))


def _cheapest(ways: dict[str, float], most: int) -> dict[str, float]:
    return dict(sorted(ways.items(), key=lambda way: (way[1], way[0]))[:most])


def near_symbols(symbol: str, most: int = 6) -> tuple[str, ...]:
    """Return symbols that resemble an unknown one: made of its letters, then with its first letter.

    Parameters
    ----------
    symbol
        One or two letters that are no element.
    most
        How many symbols to return at the most.
    """
    first, second = symbol[:1].upper(), symbol[1:2].lower()
    alike = [*respelled(symbol, most), second.upper() + first.lower(), first, second.upper()]
    alike += [known for known in ELEMENTS if known[0] == first]
    return tuple(dict.fromkeys(name for name in alike if name in ELEMENTS))[:most]
