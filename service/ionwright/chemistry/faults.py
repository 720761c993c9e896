"""What the chemistry layer refuses, by kind."""

from ionwright.errors import IonwrightError


class FormulaError(IonwrightError):
    """A formula, charge or equation text that cannot be read; carries the position."""


class UnknownSpecies(IonwrightError):
    """A substance, ion or electrode that the tables do not hold; the remedy offers near matches."""


class CellRefused(IonwrightError):
    """A cell that would not work, with the reason a teacher would give."""


class Unbalanced(IonwrightError):
    """An equation whose atoms or charges do not agree: it must never leave the service."""
