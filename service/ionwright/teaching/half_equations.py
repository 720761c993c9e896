"""Two half-equations, as someone typed them, to their overall equation."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.chemistry.balancing import balance_equation
from ionwright.chemistry.combination import combine
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.skeleton import read_skeleton
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from ionwright.chemistry.combination import Combined
    from ionwright.chemistry.stoichiometry import Equation

__all__ = ["Combination", "combine_half_equations", "read_half_equation"]


@dataclass(frozen=True, slots=True)
class Combination:
    """Two half-equations, and what they add up to."""

    oxidation: Equation
    reduction: Equation
    combined: Combined


def combine_half_equations(oxidation: str, reduction: str) -> Combination:
    """Read two half-equations and add them so that the electrons cancel.

    Parameters
    ----------
    oxidation
        Releases electrons; in any usual spelling, electrons subtracted on the left included.
    reduction
        Takes electrons up.

    Raises
    ------
    IonwrightError
        With ``where`` naming the one at fault: it cannot be read, does not balance (``not-balanced``), holds no
        electrons (``no-electrons``), or both are of one kind (``both-oxidations``, ``both-reductions``), or they
        are exchanged (``wrong-way-round``).
    """
    first = _read(oxidation, "oxidation")
    second = _read(reduction, "reduction")
    try:
        combined = combine(second, first, join_water=True)
    except CellRefused as refusal:
        where = {"both-oxidations": "reduction", "both-reductions": "oxidation"}.get(refusal.code, "")
        raise refusal.within(where) if where else refusal from None
    return Combination(first, second, combined)


def read_half_equation(text: str, where: str) -> Equation:
    """Return the half-equation that a text spells, once it is sure that it is one and balances.

    Parameters
    ----------
    where
        The field that it stands in, for faults.

    Raises
    ------
    IonwrightError
        It cannot be read, holds no electrons (``no-electrons``), has a wrong number of them
        (``bad-electron-count``), or its atoms do not agree (``not-balanced``).
    """
    try:
        half = read_skeleton(text)
    except IonwrightError as fault:
        raise fault.within(where) from None
    if not half.electrons:
        detail = f"{half.ascii} holds no electrons, so it is not a half-equation."
        remedy = "Write the electrons too."
        raise CellRefused("no-electrons", detail, where=where, remedy=remedy)
    if not half.is_balanced:
        atoms, _ = half.imbalance()
        detail = f"{half.ascii} does not balance" + ("." if atoms else ": the number of electrons is wrong.")
        code = "not-balanced" if atoms else "bad-electron-count"
        raise IonwrightError(code, detail, where=where, remedy=_as_it_balances(half))
    return half


def _read(text: str, where: str) -> Equation:
    try:
        return read_half_equation(text, where)
    except IonwrightError as fault:
        if fault.code != "bad-electron-count":
            raise
        raise IonwrightError("not-balanced", fault.detail, where=where, remedy=fault.remedy) from None


def _as_it_balances(half: Equation) -> str:
    try:
        return f"It balances as {balance_equation(half).equation.ascii}."
    except IonwrightError:
        return "Make atoms and charge agree on both sides."
