"""Takes qualifiers such as "dilute", "molten" or "0.5 mol/dm3" off the text that names a substance."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, Literal

__all__ = ["Label", "StateWord", "read_label"]

StateWord = Literal["aqueous", "molten", "solid"]


@dataclass(frozen=True, slots=True)
class Label:
    """A text without its qualifiers.

    Parameters
    ----------
    text
        What is left.
    concentration
        The word or the quantity that stood beside it; empty if none did.
    state
        aqueous, molten or solid if the text said so.
    """

    text: str
    concentration: str = ""
    state: StateWord | None = None


_LEADING: Final = re.compile(
    r"^(?:(?P<c>very dilute|diluted?|dil\.?|concentrated|conc\.?|saturated|sat\.|strong|weak)"
    r"|(?P<m>molten|fused|melted)|(?P<s>solid|powdered|crystals of)|(?P<a>aqueous|aq\.?|(?:an? |the )?solution of)"
    r"|(?P<l>liquid)|(?P<x>an?|the|of|dry|pure|some|cold|warm|hot))\s+",
    re.IGNORECASE,
)
_TRAILING: Final = re.compile(
    r"(?:\s*\((?:(?P<a>aq|aqueous)|(?P<m>molten|l|fused)|(?P<s>s|solid)|(?P<c>dilute|dil\.?|concentrated|conc\.?|saturated))\)"
    r"|,?\s+(?:(?P<a2>(?:dissolved\s+)?in\s+water|solution|aqueous|\(?aq\)?)|(?P<m2>melt|molten)|(?P<s2>crystals|powder|solid|lattice)"
    r"|(?P<c2>dilute|dil\.?|concentrated|conc\.?|saturated)))$",
    re.IGNORECASE,
)
_AMOUNT_BEHIND: Final = re.compile(
    r"^(.*?\S)[\s,@]+\(?(\d[\d.,eE+-]*\s?(?:m?mol|mM\b|M\b|k?g\b|mg\b|moles?\b)[^()]*)\)?$"
)
_AMOUNT_BEFORE: Final = re.compile(
    r"^(\d[\d.,]*\s?(?:mM|M|m?mol\s?/\s?(?:dm3|dm³|L|l)|m?mol\s?(?:dm|L|l)\^?-?[⁻-]?[13³¹]|g\s?/\s?(?:dm3|dm³|L|l)))\s+(.+)$"
)
_IN_CRYOLITE: Final = re.compile(r",?\s+(?:dissolved\s+)?in\s+(?:molten\s+)?cryolite$", re.IGNORECASE)


def read_label(text: str) -> Label:
    """Take the qualifiers off a text: how strong, which state, how much of it.

    Parameters
    ----------
    text
        Such as ``"dilute sulfuric acid"``, ``"molten lead bromide"`` or ``"NaCl 0.5 mol/dm3"``.
    """
    concentration = ""
    state: StateWord | None = None
    match = _IN_CRYOLITE.search(text)
    if match:
        text, state = text[: match.start()], "molten"
    match = _AMOUNT_BEHIND.match(text)
    if match:
        text, concentration = match[1], match[2]
    elif match := _AMOUNT_BEFORE.match(text):
        text, concentration = match[2], match[1]
    for _ in range(4):
        match = _LEADING.match(text) or _TRAILING.search(text)
        if match is None:
            break
        rest = text[match.end() :] if match.start() == 0 else text[: match.start()]
        if not rest.strip():
            break
        text = rest.strip()
        kinds = {name[0]: value for name, value in match.groupdict().items() if value}
        concentration = kinds.get("c", concentration)
        state = _state_word(kinds) or state
    return Label(text, concentration, state)


def _state_word(kinds: dict[str, str]) -> StateWord | None:
    if "m" in kinds or "l" in kinds:
        return "molten"
    if "s" in kinds:
        return "solid"
    return "aqueous" if "a" in kinds else None
