"""What the chemistry layer refuses, by kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from ionwright.chemistry.stoichiometry import Equation


class FormulaError(IonwrightError):
    """A formula, charge or equation text that cannot be read; carries the position."""


class UnknownSpecies(IonwrightError):
    """A substance, ion or electrode that the tables do not hold; the remedy offers near matches."""


class CellRefused(IonwrightError):
    """A cell that would not work, with the reason a teacher would give."""


class QuantityFault(IonwrightError):
    """A quantity that cannot be read, cannot be, or does not go with the others; told with what would be right."""


class Unbalanced(IonwrightError):
    """An equation whose atoms or charges do not agree: it must never leave the service."""


class NoSolution(IonwrightError):
    """A skeleton that no numbers can balance, with the elements or the charge that cannot agree."""


class SeveralSolutions(IonwrightError):
    """A skeleton that can be balanced in several ways that are no multiples of each other.

    Parameters
    ----------
    detail, remedy
        As for every refusal.
    basis
        Independent balanced equations: every solution is a sum of multiples of them.
    """

    def __init__(self, detail: str, *, remedy: str, basis: tuple[Equation, ...]) -> None:
        super().__init__("several-solutions", detail, remedy=remedy)
        self.basis = basis
