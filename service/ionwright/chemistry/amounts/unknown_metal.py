"""Substances of a task by their formula, among them a metal of which only a letter is known."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.notation import species_html, species_text
from ionwright.chemistry.species import Species, species
from ionwright.chemistry.stoichiometry import Equation, Term

__all__ = [
    "UNKNOWN_LETTERS",
    "is_unknown_metal",
    "metal_half",
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
