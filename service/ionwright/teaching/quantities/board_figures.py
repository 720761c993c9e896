"""How quantities stand in the equations of the board: their symbols, and figures with enough places to go on."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.relations import Tabulated
from ionwright.chemistry.amounts.values import EXACT, nominal
from ionwright.chemistry.figures import rounded
from ionwright.chemistry.units import Unit, read_unit
from ionwright.teaching.quantities.answers import in_unit, money_unit
from ionwright.teaching.quantities.expressions import Piece, number_piece, plain, symbol

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ionwright.chemistry.amounts.faraday import WorkedOut
    from ionwright.teaching.quantities.answers import Answer

__all__ = ["BoardFigures", "kept"]

_GUARD: Final = 2
_FEWEST: Final = 4
_WITH_ZERO: Final = 5
"""Figures of a temperature that was given in degrees Celsius: 273.15 is added to it."""
_MOST: Final = 12


class BoardFigures:
    """Symbols and figures of one task, the same at each place where a quantity stands.

    Parameters
    ----------
    worked
        The task with its values.
    """

    __slots__ = ("_figures", "_is_one_of_several", "_worked")

    def __init__(self, worked: WorkedOut) -> None:
        self._worked = worked
        self._figures: dict[tuple[Key, Unit | None], Piece] = {}
        self._is_one_of_several = len(worked.task.circuit.processes) > 1

    def symbol(self, key: Key) -> Piece:
        """The symbol of a quantity in this task."""
        return symbol(key, is_one_of_several=self._is_one_of_several)

    def unit_of(self, key: Key) -> Unit:
        """The unit in which a quantity stands in the equations."""
        return money_unit(self._worked, key) or read_unit(QUANTITIES[key.kind].unit)

    def figure(self, key: Key, unit: Unit | None = None) -> Piece:
        """A quantity as it stands in the equations: as it was written, or with guard figures."""
        piece = self._figures.get((key, unit))
        if piece is None:
            piece = self._figures[key, unit] = self._figure(key, unit)
        return piece

    def _figure(self, key: Key, unit: Unit | None) -> Piece:
        own, knowns = self.unit_of(key), self._worked.knowns
        written, value = knowns.written.get(key), self._worked.values[key]
        if (
            unit is None
            and written is not None
            and written.unit.symbol == own.symbol
            and not written.is_mixed
        ):
            return self.stated(key)
        number = nominal(value.number)
        if key in knowns.molar_masses:
            return number_piece(number, _figures_of_mass(number, knowns.molar_masses[key]), own)
        if isinstance(value.relation, Tabulated):
            return number_piece(in_unit(key, number, unit or own), _FEWEST, unit or own)
        if written is not None and written.unit.offset:
            return number_piece(number, _WITH_ZERO, own)
        figures = value.figures
        if written is not None:
            figures = EXACT if written.is_exact else written.significant_figures
        return guarded(in_unit(key, number, unit or own), figures, unit or own)

    def stated(self, key: Key) -> Piece:
        """A known quantity as it was written."""
        written = self._worked.knowns.written[key]
        if written.is_mixed or written.is_exact:
            return plain(" ".join(written.text.split()))
        return number_piece(written.value, written.significant_figures, written.unit)

    def before_rounding(self, answer: Answer) -> Piece:
        """An answer with guard figures; with as many more as it takes to see how it is rounded."""
        value = answer.value if answer.before_rounding is None else answer.before_rounding
        figures = self._worked.values[answer.key].figures
        places = _guard(figures)
        right = rounded(value, answer.figures)
        while places < _MOST and rounded(float(rounded(value, places)), answer.figures) != right:
            places += _GUARD
        return number_piece(value, kept(value, places, figures), answer.unit)


def guarded(value: float, figures: int, unit: Unit) -> Piece:
    """A number with the figures that it deserves and some to spare."""
    return number_piece(value, kept(value, _guard(figures), figures), unit)


def kept(value: float, places: int, figures: int = EXACT) -> int:
    """As many of these places as the value has, zeros at its end left out that do not count as figures."""
    mantissa, _, _ = f"{abs(value):.{places - 1}e}".partition("e")
    return max(1, len(mantissa.rstrip("0").replace(".", "")), min(figures, places) if figures < EXACT else 1)


def guard_of(figures: int) -> int:
    """How many figures are carried on from a value with so many significant ones."""
    return _guard(figures)


def _guard(figures: int) -> int:
    return _FEWEST + 1 if figures >= EXACT else max(_FEWEST, figures + _GUARD)


def _figures_of_mass(total: float, parts: Sequence[tuple[str, int, str]]) -> int:
    """Significant figures of a molar mass: to the last decimal that all its parts have."""
    decimals = min(len(mass.partition(".")[2]) for _, _, mass in parts)
    return len(str(int(total))) + decimals
