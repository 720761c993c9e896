"""Species and equations as Unicode text, HTML and LaTeX."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.characters import SUBSCRIPTS, SUPERSCRIPT_SIGNS, SUPERSCRIPTS
from ionwright.chemistry.formula import Atom, read_formula
from ionwright.chemistry.species import charge_text

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.chemistry.formula import Formula, Group
    from ionwright.chemistry.species import Species
    from ionwright.chemistry.stoichiometry import Equation, Number, Term

__all__ = ["as_html", "as_latex", "as_text", "species_html", "species_text"]

_LOWERED: Final = str.maketrans("0123456789", SUBSCRIPTS)
_RAISED: Final = str.maketrans("0123456789+-", SUPERSCRIPTS + SUPERSCRIPT_SIGNS)
_TRUE_MINUS: Final = {ord("-"): "\u2212"}
_FRACTIONS: Final = {
    Fraction(1, 2): "½",
    Fraction(1, 3): "⅓",
    Fraction(2, 3): "⅔",
    Fraction(1, 4): "¼",
    Fraction(3, 4): "¾",
}
_CLOSING: Final = {"(": ")", "[": "]"}


@dataclass(frozen=True, slots=True)
class _Style:
    """How one notation lowers a subscript and raises a charge."""

    lowered: Callable[[str], str]
    raised: Callable[[str], str]


_TEXT: Final = _Style(lambda number: number.translate(_LOWERED), lambda charge: charge.translate(_RAISED))
_HTML: Final = _Style("<sub>{}</sub>".format, lambda charge: f"<sup>{charge.translate(_TRUE_MINUS)}</sup>")


def _parts(parts: tuple[Atom | Group, ...], style: _Style) -> str:
    pieces = []
    for part in parts:
        if isinstance(part, Atom):
            pieces.append(part.symbol)
        else:
            pieces.append(f"{part.brackets}{_parts(part.parts, style)}{_CLOSING[part.brackets]}")
        if part.count != 1:
            pieces.append(style.lowered(str(part.count)))
    return "".join(pieces)


def _formula(formula: Formula, style: _Style) -> str:
    tails = [
        f"·{'' if number == 1 else number}{_parts(attached.parts, style)}"
        for number, attached in formula.attached
    ]
    return _parts(formula.parts, style) + "".join(tails)


def _species(species: Species, style: _Style) -> str:
    head = "e" if species.is_electron else _formula(read_formula(species.formula), style)
    return head + style.raised(charge_text(species.charge)) if species.charge else head


def _coefficient(number: Number) -> str:
    if number == 1:
        return ""
    return _FRACTIONS.get(number, str(number)) if isinstance(number, Fraction) else str(number)


def _equation(equation: Equation, style: _Style) -> str:
    def term(each: Term) -> str:
        state = f"({each.state})" if each.state else ""
        return f"{_coefficient(each.coefficient)}{_species(each.species, style)}{state}"

    return " → ".join(" + ".join(map(term, side)) for side in (equation.left, equation.right))


def species_text(species: Species) -> str:
    """Return a species as Unicode text: ``SO₄²⁻``."""
    return _species(species, _TEXT)


def species_html(species: Species) -> str:
    """Return a species as HTML: ``SO<sub>4</sub><sup>2−</sup>``."""
    return _species(species, _HTML)


def as_text(equation: Equation) -> str:
    """Return an equation as Unicode text: ``Ni²⁺(aq) + 2e⁻ → Ni(s)``."""
    return _equation(equation, _TEXT)


def as_html(equation: Equation) -> str:
    """Return an equation as HTML, with the true minus sign."""
    return _equation(equation, _HTML)


def as_latex(equation: Equation) -> str:
    r"""Return an equation as LaTeX for the mhchem package: ``\ce{Ni^2+(aq) + 2e- -> Ni(s)}``."""

    def term(each: Term) -> str:
        state = f"({each.state})" if each.state else ""
        return each.ascii.replace(".", "*") + state

    sides = (" + ".join(map(term, side)) for side in (equation.left, equation.right))
    return rf"\ce{{{' -> '.join(sides)}}}"
