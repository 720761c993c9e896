"""Species and equations in English words, for screen readers and for reading aloud."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.formula import Atom, read_formula

if TYPE_CHECKING:
    from ionwright.chemistry.formula import Group
    from ionwright.chemistry.species import Species
    from ionwright.chemistry.stoichiometry import Equation, Number, Term

__all__ = ["as_spoken", "spoken_species"]

_COUNTING: Final = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen twenty"
)
_NUMBERS: Final = tuple(_COUNTING.split())
_PARTS: Final = {2: ("half", "halves"), 3: ("third", "thirds"), 4: ("quarter", "quarters")}
_STATES: Final = {"s": "solid", "l": "liquid", "g": "gas", "aq": "aqueous"}


def as_spoken(equation: Equation) -> str:
    """Return an equation in words: ``nickel two plus, aqueous, plus two electrons, gives nickel, solid``."""
    left, right = (", plus ".join(map(_term, side)) for side in (equation.left, equation.right))
    return f"{left}, gives {right}"


def spoken_species(species: Species) -> str:
    """Return a species in words: ``nickel two plus``, ``S O 4 two minus``, ``electron``."""
    if species.is_electron:
        return "electron"
    name = ELEMENTS[species.formula].name if species.formula in ELEMENTS else _spelled(species.formula)
    if not species.charge:
        return name
    return f"{name} {_number(abs(species.charge))} {'plus' if species.charge > 0 else 'minus'}"


def _term(term: Term) -> str:
    if term.species.is_electron:
        plural = "" if term.coefficient <= 1 else "s"
        return f"{_number(term.coefficient)} electron{plural}"
    number = "" if term.coefficient == 1 else f"{_number(term.coefficient)} "
    state = f", {_STATES[term.state]}" if term.state in _STATES else ""
    return f"{number}{spoken_species(term.species)}{state}"


def _number(number: Number) -> str:
    if isinstance(number, Fraction):
        return _fraction(number)
    return _NUMBERS[number] if 0 <= number < len(_NUMBERS) else str(number)


def _fraction(number: Fraction) -> str:
    top, bottom = number.numerator, number.denominator
    if bottom not in _PARTS:
        return f"{_number(top)} over {_number(bottom)}"
    return f"{_number(top)} {_PARTS[bottom][top != 1]}"


def _spelled(formula: str) -> str:
    tree = read_formula(formula)
    words = _parts(tree.parts)
    for number, attached in tree.attached:
        words += ["dot", *([] if number == 1 else [str(number)]), *_parts(attached.parts)]
    return " ".join(words)


def _parts(parts: tuple[Atom | Group, ...]) -> list[str]:
    words: list[str] = []
    for part in parts:
        if isinstance(part, Atom):
            words += part.symbol
        else:
            words += ["open bracket", *_parts(part.parts), "close bracket"]
        if part.count != 1:
            words.append(str(part.count))
    return words
