"""The answers of a task: each in the unit asked for, with the figures that it deserves."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, log10
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.known_values import molar_mass
from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.amounts.values import nominal
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.figures import Rendered, notations, with_uncertainty
from ionwright.chemistry.units import Unit, read_unit

if TYPE_CHECKING:
    from ionwright.chemistry.amounts.faraday import WorkedOut
    from ionwright.chemistry.amounts.task import Wanted

__all__ = ["Answer", "answers", "in_unit", "money_unit"]

_NEAR_A_WHOLE: Final = 0.15
"""How far measured data may lie from a whole number of charges and still mean it."""

_MONEY: Final = frozenset({"currency", "price of energy"})


@dataclass(frozen=True, slots=True)
class Answer:
    """One quantity that was asked for.

    Parameters
    ----------
    value
        In full, counted in `unit`.
    figures
        Significant figures of `rendered`.
    uncertainty
        Standard uncertainty, counted in `unit`; None if no uncertainty was given.
    before_rounding
        For a number of charges, which is whole: what the data give; None for all else.
    """

    wanted: Wanted
    key: Key
    value: float
    unit: Unit
    figures: int
    rendered: Rendered
    uncertainty: float | None = None
    before_rounding: float | None = None

    @property
    def is_doubtful(self) -> bool:
        """Whether the data give no whole number where only one can be."""
        return self.before_rounding is not None and abs(self.before_rounding - self.value) > _NEAR_A_WHOLE


def answers(worked: WorkedOut) -> tuple[Answer, ...]:
    """All answers of a task, in the order in which they were asked for.

    Raises
    ------
    QuantityFault
        ``wrong-dimension``: a sum of money is asked for in another currency than the task counts in.
    """
    return tuple(_answer(worked, wanted, key) for wanted, key in worked.answers)


def _answer(worked: WorkedOut, wanted: Wanted, key: Key) -> Answer:
    number = worked.values[key].number
    money = money_unit(worked, key)
    unit = wanted.unit or money or read_unit(QUANTITIES[key.kind].answer_unit)
    if money and unit.currency != money.currency:
        detail = f"The task counts in {money.currency}; there are no rates of exchange here."
        remedy = f"Ask for it in {money.symbol}."
        raise QuantityFault("wrong-dimension", detail, where=wanted.where, remedy=remedy)
    if unit.dimension == "density" and QUANTITIES[key.kind].dimension == "concentration":
        number, scale = number * _molar_mass(worked, wanted, key), 1 / unit.si  # g/dm3 is kg/m3
    else:
        scale = read_unit(QUANTITIES[key.kind].unit).si / unit.si
    value = nominal(number) * scale - unit.offset
    if key.kind == "ion_charge":
        whole = float(max(1, round(value)))
        return Answer(wanted, key, whole, unit, 1, notations(whole, 1, unit), before_rounding=value)
    deviation = float(getattr(number, "std_dev", 0.0))
    if deviation:
        uncertainty = deviation * scale
        rendered, figures = with_uncertainty(value, uncertainty, unit)
        return Answer(wanted, key, value, unit, figures, rendered, uncertainty)
    figures = _figures_in(unit, worked.figures(key), value)
    return Answer(wanted, key, value, unit, figures, notations(value, figures, unit))


def _molar_mass(worked: WorkedOut, wanted: Wanted, key: Key) -> float:
    """By what a concentration is multiplied to count mass [g/mol]."""
    mass = molar_mass(worked.task.constants, key.of)
    if mass is None:
        detail = f"The tables hold no relative atomic mass for all of {substance_text(key.of)}."
        raise QuantityFault("needs-more", detail, where=wanted.where, remedy="Ask for it in mol/dm3.")
    return mass


def _figures_in(unit: Unit, figures: int, value: float) -> int:
    """Significant figures in this unit: 293 K, good to one degree, is 20 °C."""
    if not unit.offset or not value:
        return figures
    return max(1, figures + floor(log10(abs(value))) - floor(log10(abs(value + unit.offset))))


def money_unit(worked: WorkedOut, key: Key) -> Unit | None:
    """The unit of a cost or a price, in the currency in which the task counts; None for other quantities."""
    if QUANTITIES[key.kind].dimension not in _MONEY:
        return None
    written = next((w for w in worked.knowns.written.values() if w.unit.currency), None)
    if written is None:
        return None
    return read_unit(written.unit.currency if key.kind == "cost" else f"{written.unit.currency}/kWh")


def in_unit(key: Key, value: float, unit: Unit) -> float:
    """A value of the solver, counted in another unit."""
    return value * read_unit(QUANTITIES[key.kind].unit).si / unit.si - unit.offset
