"""Ions that join in acid and part again in alkali, such as chromate and dichromate."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.ion import Ion, ion
from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from ionwright.chemistry.proton_transfer import Amounts

__all__ = ["CONDENSATIONS", "Change", "Condensation", "condense"]

_HYDROGEN: Final = ion("H^+")
_HYDROXIDE: Final = ion("OH^-")


class Change(NamedTuple):
    """One kind of ion that turned into another, and the sentence that tells it."""

    gone: Ion
    formed: Ion
    tells: str


class Condensation(NamedTuple):
    """Ions that join in acid, their number, and the sentences for acid and for alkali."""

    single: Ion
    joined: Ion
    number: int
    acid: str
    alkali: str


CONDENSATIONS: Final = tuple(
    Condensation(ion(row["in_alkali"]), ion(row["in_acid"]), row["number"], row["acid"], row["alkali"])
    for row in read_table("reactions.toml")["condensation"]
)
"""The rows of the table."""


def condense(amounts: Amounts, ph: float | None, *, buffered: bool) -> list[Change]:
    """Let ions take the form that acid or alkali gives them, in place; returns what changed.

    Parameters
    ----------
    amounts
        The ions that the substances give; they are changed.
    ph
        pH [1] if it is given; else the ions decide.
    buffered
        Whether a weak acid or alkali replaces the hydrogen or hydroxide ions that are used.
    """
    in_acid = ph < 6 if ph is not None else _HYDROGEN in amounts
    in_alkali = ph > 8 if ph is not None else _HYDROXIDE in amounts
    is_held = buffered or ph is not None
    changes = []
    for row in CONDENSATIONS:
        if in_acid and row.single in amounts:
            _turn(amounts, row.single, row.joined, 1 / row.number, None if is_held else (_HYDROGEN, 1.0))
            changes.append(Change(row.single, row.joined, row.acid))
        elif in_alkali and row.joined in amounts:
            used = None if is_held else (_HYDROXIDE, float(row.number))
            _turn(amounts, row.joined, row.single, float(row.number), used)
            changes.append(Change(row.joined, row.single, row.alkali))
    return changes


def _turn(amounts: Amounts, old: Ion, new: Ion, ratio: float, used: tuple[Ion, float] | None) -> None:
    """Turn one ion into another, at most as far as the hydrogen or hydroxide ions that it uses reach."""
    there = amounts[old]
    turned = there
    if used is not None and there is not None:
        partner, each = used
        supply = amounts[partner]
        if supply is not None:
            turned = min(there, supply / each)
            _set(amounts, partner, supply - turned * each, supply)
    _set(amounts, old, None if there is None or turned is None else there - turned, there)
    before = amounts.get(new, 0.0)
    amounts[new] = None if turned is None or before is None else before + turned * ratio


def _set(amounts: Amounts, one: Ion, left: float | None, before: float | None) -> None:
    if left is None or before is None or left <= 1e-9 * before:
        del amounts[one]
    else:
        amounts[one] = left
