"""Equations as MathML, with elements of MathML Core only."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final
from xml.sax.saxutils import quoteattr

from ionwright.chemistry.formula import Atom, read_formula
from ionwright.chemistry.species import charge_text

if TYPE_CHECKING:
    from ionwright.chemistry.formula import Formula, Group
    from ionwright.chemistry.species import Species
    from ionwright.chemistry.stoichiometry import Equation, Number, Term

__all__ = ["as_mathml"]

_OPEN: Final = '<mo stretchy="false" form="prefix" lspace="0" rspace="0">{}</mo>'
_CLOSE: Final = '<mo stretchy="false" form="postfix" lspace="0" rspace="0">{}</mo>'
_DOT: Final = '<mo lspace="0" rspace="0">·</mo>'
_ARROW: Final = '<mo stretchy="false">→</mo>'
_GAP: Final = '<mspace width="0.17em"/>'
_CLOSING: Final = {"(": ")", "[": "]"}


def as_mathml(equation: Equation) -> str:
    """Return an equation as a ``math`` element whose ``alttext`` is the canonical ASCII.

    Parameters
    ----------
    equation
        With or without state symbols.
    """
    left, right = ("<mo>+</mo>".join(map(_term, side)) for side in (equation.left, equation.right))
    return (
        '<math xmlns="http://www.w3.org/1998/Math/MathML" display="inline" intent=":chemical-equation" '
        f"alttext={quoteattr(equation.ascii)}><mrow>{left}{_ARROW}{right}</mrow></math>"
    )


def _term(term: Term) -> str:
    state = f"<mtext>({term.state})</mtext>" if term.state else ""
    return f"<mrow>{_coefficient(term.coefficient)}{_species(term.species)}{state}</mrow>"


def _coefficient(number: Number) -> str:
    if number == 1:
        return ""
    if isinstance(number, Fraction):
        return f"<mfrac><mn>{number.numerator}</mn><mn>{number.denominator}</mn></mfrac>{_GAP}"
    return f"<mn>{number}</mn>{_GAP}"


def _identifier(symbol: str) -> str:
    # a single letter would turn italic, which is wrong for an element
    return f'<mi mathvariant="normal">{symbol}</mi>' if len(symbol) == 1 else f"<mi>{symbol}</mi>"


def _species(species: Species) -> str:
    charge = _charge(species.charge) if species.charge else ""
    if species.is_electron:
        return f"<msup>{_identifier('e')}{charge}</msup>"
    formula = read_formula(species.formula)
    if formula.attached and charge:
        return f"<msup><mrow>{_formula(formula)}</mrow>{charge}</msup>"
    return _formula(formula, charge)


def _charge(charge: int) -> str:
    text = charge_text(charge)
    sign = "+" if charge > 0 else "\u2212"
    number = f"<mn>{text[:-1]}</mn>" if len(text) > 1 else ""
    return f'<mrow>{number}<mo lspace="0" rspace="0" form="postfix">{sign}</mo></mrow>'


def _formula(formula: Formula, charge: str = "") -> str:
    tails = [
        f"{_DOT}{f'<mn>{number}</mn>' if number != 1 else ''}{_parts(attached.parts)}"
        for number, attached in formula.attached
    ]
    return _parts(formula.parts, charge) + "".join(tails)


def _parts(parts: tuple[Atom | Group, ...], charge: str = "") -> str:
    return "".join([*map(_part, parts[:-1]), _part(parts[-1], charge)])


def _part(part: Atom | Group, charge: str = "") -> str:
    if isinstance(part, Atom):
        base = _identifier(part.symbol)
    else:
        opening, closing = _OPEN.format(part.brackets), _CLOSE.format(_CLOSING[part.brackets])
        base = f"<mrow>{opening}{_parts(part.parts)}{closing}</mrow>"
    number = f"<mn>{part.count}</mn>"
    if part.count != 1 and charge:
        return f"<msubsup>{base}{number}{charge}</msubsup>"
    if part.count != 1:
        return f"<msub>{base}{number}</msub>"
    return f"<msup>{base}{charge}</msup>" if charge else base
