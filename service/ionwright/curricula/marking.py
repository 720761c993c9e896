"""How a curriculum marks half-equations: its points, and which ways of writing it takes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from collections.abc import Mapping

ASKED: Final = "asked"
REQUIRED: Final = "required"
NOT_USED: Final = "not-used"
STATE_SYMBOLS: Final = (ASKED, REQUIRED, NOT_USED)
"""When state symbols count: if the task asks for them, always, or never."""

ACCEPTED: Final = "accepted"
REMARKED: Final = "remarked"
REFUSED: Final = "refused"
FORMS: Final = (ACCEPTED, REMARKED, REFUSED)
"""What becomes of a right line in an unusual form: full marks, full marks with a remark, or no balance mark."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkingConventions:
    """How a curriculum marks a half-equation.

    Parameters
    ----------
    species_marks
        For the right ion or molecule on the left, the right product on the right, and the electrons on the
        side where they belong.
    balance_marks
        For a line in which everything is right; given only where the species marks are.
    state_symbols
        One of `STATE_SYMBOLS`.
    multiples, fractions
        One of `FORMS`: a line in twice or half the lowest numbers, and a line with fractions.
    subtracted_electrons
        Whether an oxidation may take its electrons away on the left: 2Cl^- - 2e- -> Cl2.
    equals_sign, equilibrium_arrow
        Whether these may stand for the arrow.
    electron_without_sign
        Whether e may stand for e-.
    """

    species_marks: int = 1
    balance_marks: int = 1
    state_symbols: str = ASKED
    multiples: str = REMARKED
    fractions: str = ACCEPTED
    subtracted_electrons: bool = True
    equals_sign: bool = True
    equilibrium_arrow: bool = True
    electron_without_sign: bool = True

    @property
    def available(self) -> int:
        """The marks for one line."""
        return self.species_marks + self.balance_marks

    def wants_states(self, *, asked: bool) -> bool:
        """Whether state symbols count in a task that asks for them or does not."""
        return self.state_symbols == REQUIRED or (asked and self.state_symbols == ASKED)

    def described(self) -> dict[str, Any]:
        """The conventions as plain data, the points with what they are given for."""
        return {
            "points": [
                {"point": point, "marks": marks, "for": POINTS[point]}
                for point, marks in (("species", self.species_marks), ("balance", self.balance_marks))
                if marks
            ],
            "state_symbols": self.state_symbols,
            "multiples": self.multiples,
            "fractions": self.fractions,
            "subtracted_electrons": self.subtracted_electrons,
            "equals_sign": self.equals_sign,
            "equilibrium_arrow": self.equilibrium_arrow,
            "electron_without_sign": self.electron_without_sign,
        }


POINTS: Final[Mapping[str, str]] = {
    "species": "The right ion or molecule on the left, the right product on the right, and the electrons on the "
    "side where they belong.",
    "balance": "Atoms, charge and number of electrons all right; only with the marks for the species.",
}
"""What each point is given for, as a sentence."""
