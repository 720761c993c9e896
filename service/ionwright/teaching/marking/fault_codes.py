"""The faults of a student's line by code, and the order in which an examiner would name them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species

UNREADABLE: Final = "unreadable"
NOT_A_HALF_EQUATION: Final = "not-a-half-equation"
WRONG_ELECTRODE: Final = "wrong-electrode"
REVERSED: Final = "reversed"
WRONG_SPECIES: Final = "wrong-species"
MONATOMIC_GAS: Final = "monatomic-gas"
WRONG_ION_CHARGE: Final = "wrong-ion-charge"
SPECTATOR_IONS: Final = "spectator-ions"
ELECTRON_SIGN: Final = "electron-sign"
NO_ELECTRONS: Final = "no-electrons"
ELECTRONS_WRONG_SIDE: Final = "electrons-wrong-side"
ATOMS_NOT_BALANCED: Final = "atoms-not-balanced"
WRONG_ELECTRON_COUNT: Final = "wrong-electron-count"
CHARGE_NOT_BALANCED: Final = "charge-not-balanced"
NOT_LOWEST_TERMS: Final = "not-lowest-terms"
STATE_SYMBOLS: Final = "state-symbols"
ARROW: Final = "arrow"

IN_ORDER: Final = (
    UNREADABLE,
    NOT_A_HALF_EQUATION,
    WRONG_ELECTRODE,
    REVERSED,
    WRONG_SPECIES,
    MONATOMIC_GAS,
    WRONG_ION_CHARGE,
    SPECTATOR_IONS,
    ELECTRON_SIGN,
    NO_ELECTRONS,
    ELECTRONS_WRONG_SIDE,
    ATOMS_NOT_BALANCED,
    WRONG_ELECTRON_COUNT,
    CHARGE_NOT_BALANCED,
    STATE_SYMBOLS,
    ARROW,
    NOT_LOWEST_TERMS,
)
"""Every fault code, the most important first."""

SPARES_THE_SPECIES: Final = frozenset(
    {
        ELECTRON_SIGN,
        ATOMS_NOT_BALANCED,
        WRONG_ELECTRON_COUNT,
        CHARGE_NOT_BALANCED,
        NOT_LOWEST_TERMS,
        STATE_SYMBOLS,
        ARROW,
    }
)
"""Faults that leave the marks for the species standing."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that is wrong with a line, before it is put into words.

    Parameters
    ----------
    code
        One of `IN_ORDER`.
    side
        ``"left"`` or ``"right"`` if it lies on one side, else empty.
    about
        The species as the student wrote it; None if it is about the line as a whole.
    instead
        The species that belongs there; None if there is none.
    reason
        The reason that the course gives, as a sentence; may be empty.
    at
        Extent in the text where that is known already.
    is_remark
        Whether it costs nothing.
    is_other_form
        Whether the process is the right one and only the form is refused in which it is written.
    is_missing
        Whether nothing stands where something is wanted.
    """

    code: str
    side: str = ""
    about: Species | None = None
    instead: Species | None = None
    reason: str = ""
    at: tuple[int, int] | None = None
    is_remark: bool = False
    is_other_form: bool = False
    is_missing: bool = False


def in_order(findings: list[Finding]) -> list[Finding]:
    """The findings, most important first; of each code about the same species only one; remarks last."""
    distinct = {(one.code, one.side, one.about): one for one in reversed(findings)}
    found = [one for one in findings if distinct.get((one.code, one.side, one.about)) is one]
    return sorted(found, key=lambda one: (one.is_remark, IN_ORDER.index(one.code)))
