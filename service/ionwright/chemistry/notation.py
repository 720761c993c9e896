"""Equations in every notation that leaves the service, as plain data."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any, Final

from ionwright.chemistry.mathml import as_mathml
from ionwright.chemistry.spoken import as_spoken, spoken_species
from ionwright.chemistry.typesetting import as_html, as_latex, as_text, species_html, species_text
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.chemistry.stoichiometry import Equation, Number, Term

__all__ = [
    "NOTATIONS",
    "rendered",
    "rendered_as_read",
    "species_html",
    "species_text",
    "spoken_species",
    "tokens",
]


def tokens(equation: Equation) -> list[dict[str, Any]]:
    """Return the terms of an equation as plain data, in order.

    Parameters
    ----------
    equation
        With or without state symbols.

    Returns
    -------
    list of dict
        ``role`` (reactant, product, electron), ``side`` (left, right), ``coefficient`` (int, or text such as
        ``"1/2"``), ``formula``, ``charge``, ``state`` where there is one, ``elements``.
    """
    left = [_token(term, "left", "reactant") for term in equation.left]
    return left + [_token(term, "right", "product") for term in equation.right]


def _token(term: Term, side: str, role: str) -> dict[str, Any]:
    token: dict[str, Any] = {
        "role": "electron" if term.species.is_electron else role,
        "side": side,
        "coefficient": _plain(term.coefficient),
        "formula": term.species.formula,
        "charge": term.species.charge,
    }
    if term.state:
        token["state"] = term.state
    token["elements"] = dict(term.species.atoms)
    return token


def _plain(number: Number) -> int | str:
    return int(number) if number.denominator == 1 else str(number)


_WRITERS: Final[dict[str, Callable[[Equation], Any]]] = {
    "tokens": tokens,
    "ascii": lambda equation: equation.ascii,
    "text": as_text,
    "html": as_html,
    "mathml": as_mathml,
    "latex": as_latex,
    "spoken": as_spoken,
}

NOTATIONS: Final = tuple(_WRITERS)
"""The notations on offer, in the order in which they are written."""


def rendered(equation: Equation, notations: frozenset[str] | None = None) -> dict[str, Any]:
    """Return an equation as it crosses the wire; ``ascii`` is always there and carries no state symbols.

    Parameters
    ----------
    equation
        It must balance.
    notations
        Which of `NOTATIONS` to give; None gives all.

    Returns
    -------
    dict
        A value per notation and, if the equation holds electrons, ``electrons``: how many, above zero. The
        values are shared between calls, so treat them as read-only.

    Raises
    ------
    Unbalanced
        If atoms or charge do not agree.
    IonwrightError
        ``unknown-notation``, if one is asked for that does not exist.
    """
    return dict(_rendered(equation, notations))


def rendered_as_read(equation: Equation, notations: frozenset[str] | None = None) -> dict[str, Any]:
    """Return a line that somebody else wrote as it crosses the wire, whether it balances or not.

    Nothing is kept: what a student wrote is gone once it is answered.

    Parameters
    ----------
    equation
        As it was read; right or wrong.
    notations
        Which of `NOTATIONS` to give; None gives all.

    Returns
    -------
    dict
        As for `rendered`.
    """
    wanted = _WRITERS if notations is None else notations | {"ascii"}
    written = {name: write(equation) for name, write in _WRITERS.items() if name in wanted}
    # the wire counts electrons in whole numbers; a line written in halves need not have one
    return written | (_electrons(equation) if equation.electrons.denominator == 1 else {})


def _electrons(equation: Equation) -> dict[str, Any]:
    electrons = equation.electrons
    return {"electrons": _plain(electrons if electrons > 0 else -electrons)} if electrons else {}


@lru_cache(maxsize=1024)
def _rendered(equation: Equation, notations: frozenset[str] | None) -> dict[str, Any]:
    unknown = sorted((notations or frozenset()) - set(NOTATIONS))
    if unknown:
        remedy = f"Use {', '.join(NOTATIONS)}."
        raise IonwrightError("unknown-notation", f"There is no notation {unknown[0]}.", remedy=remedy)
    equation.check()
    wanted = _WRITERS if notations is None else notations | {"ascii"}
    written = {name: write(equation) for name, write in _WRITERS.items() if name in wanted}
    return written | _electrons(equation)
