"""Substances of a task by their formula, among them a metal of which only a letter is known."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from ionwright.chemistry.characters import SUPERSCRIPTS, folded
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.notation import species_html, species_text
from ionwright.chemistry.species import Species, species
from ionwright.chemistry.stoichiometry import Equation, Term

__all__ = [
    "UNKNOWN_LETTERS",
    "is_unknown_metal",
    "metal_half",
    "read_unknown_metal",
    "substance",
    "substance_html",
    "substance_text",
]

UNKNOWN_LETTERS: Final = frozenset("AEGJLMQRTXZ")
"""Letters that stand for no element alone, so that a task may use them for a metal that is to be found out."""


def is_unknown_metal(text: str) -> bool:
    """Whether a text is a letter for an unknown metal."""
    return text in UNKNOWN_LETTERS


@lru_cache(maxsize=256)
def substance(of: str) -> Species:
    """The species with this canonical formula; an unknown metal is one of a single atom with that letter."""
    letter = of.partition("^")[0]
    if is_unknown_metal(letter):
        return Species(letter, 1 if "^" in of else 0, ((letter, 1),))
    return species(of)


def substance_text(of: str) -> str:
    """A formula for people; the ion of an unknown metal has the charge z+."""
    letter, _, charge = of.partition("^")
    if is_unknown_metal(letter):
        return f"{letter}ᶻ⁺" if charge else letter
    return species_text(species(of))


def substance_html(of: str) -> str:
    """A formula in HTML; the ion of an unknown metal has the charge z+."""
    letter, _, charge = of.partition("^")
    if is_unknown_metal(letter):
        return f"{letter}<sup><i>z</i>+</sup>" if charge else letter
    return species_html(species(of))


def read_unknown_metal(text: str) -> tuple[str, int] | None:
    """Letter and charge of the ion, if a text is the half-equation of an unknown metal: "M^2+ + 2e- -> M".

    Returns
    -------
    tuple[str, int] | None
        None if it is anything else.

    Raises
    ------
    QuantityFault
        ``bad-electron-count``: it is one, but its electrons do not fit the charge.
    """
    plain = folded(text[:_LONGEST]).translate(_LOWERED).replace("{", "").replace("}", "").replace("^", "")
    match = _HALF.fullmatch("".join(plain.split()))
    if match is None:
        return None
    ion, charge, electrons, metal = match.groups()
    number = int(charge or 1)
    if ion != metal:
        return None
    if number != int(electrons or 1):
        detail = f"The ion has {number} charges, so that it takes {number} electrons to become the metal."
        raise QuantityFault(
            "bad-electron-count", detail, remedy=f"Write {number}e-, or give the charge of the ion."
        )
    return ion, number


_LONGEST: Final = 60
_LOWERED: Final = {ord(high): str(digit) for digit, high in enumerate(SUPERSCRIPTS)} | {
    ord("⁺"): "+",
    ord("⁻"): "-",
}
_HALF: Final = re.compile(
    f"([{''.join(sorted(UNKNOWN_LETTERS))}])([1-8]?)\\+(?:\\((?:aq|l)\\))?\\+([1-8]?)e-?"
    f"(?:->|-->|→|=>|=)([{''.join(sorted(UNKNOWN_LETTERS))}])(?:\\(s\\))?"
)


def metal_half(symbol: str) -> Equation:
    """The half-equation of a metal whose ion has a charge that is not known, for one electron.

    Parameters
    ----------
    symbol
        Of an element, or a letter for an unknown metal.

    Raises
    ------
    KeyError
        If it is neither.
    """
    if symbol not in ELEMENTS and not is_unknown_metal(symbol):
        raise KeyError(symbol)
    ion, metal = substance(f"{symbol}^+"), substance(symbol)
    return Equation((Term(ion, 1, "aq"), Term(substance("e-"), 1)), (Term(metal, 1, "s"),))
