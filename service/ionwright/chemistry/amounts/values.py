"""Values of quantities, each with the relation it follows from and the figures that it deserves."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, inf, log10
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.amounts.relations import Sum

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from ionwright.chemistry.amounts.quantity import Key
    from ionwright.chemistry.amounts.relations import Number, Relation

__all__ = ["EXACT", "Known", "Row", "Value", "derived", "nominal"]

EXACT: Final = 99
"""Significant figures of what does not limit those of an answer: constants and whole numbers."""


@dataclass(frozen=True, slots=True)
class Known:
    """A quantity with its value.

    Parameters
    ----------
    value
        In the unit of the solver; a float, or a number with an uncertainty.
    figures
        Significant figures that limit an answer; `EXACT` for none.
    slack
        By how much it may be off through rounding alone, relative to the value.
    is_given
        Whether a task states it; constants and what the tables add are not given.
    """

    key: Key
    value: Number
    figures: int = EXACT
    slack: float = 0.0
    is_given: bool = True


class Row(NamedTuple):
    """A sum as a linear equation in a few unknowns: total = coefficients × unknowns.

    Parameters
    ----------
    result
        The quantity that gives the total its unit.
    """

    result: Key
    total: Number
    coefficients: Mapping[Key, Number]


@dataclass(frozen=True, slots=True)
class Value:
    """A value with its derivation.

    Parameters
    ----------
    number
        In the unit of the solver.
    figures, slack
        As for `Known`.
    given
        The given quantities on which it rests.
    relation, inputs
        From which relation it follows, and from which other quantities; None and empty if it is known.
    together
        The linear equations that were solved together for it; empty if one relation was enough.
    """

    number: Number
    figures: int
    slack: float
    given: frozenset[Key]
    relation: Relation | None = None
    inputs: tuple[Key, ...] = ()
    together: tuple[Row, ...] = ()


def derived(
    relation: Relation, number: Number, inputs: tuple[Key, ...], values: Mapping[Key, Value]
) -> Value:
    """A value that follows by a relation from others, with the figures, the slack and the givens that come of them."""
    sources = [values[key] for key in inputs]
    given = frozenset().union(*(source.given for source in sources))
    if isinstance(relation, Sum):
        slack = _slack_of_sum(number, sources)
        return Value(number, _figures_of_sum(number, sources), slack, given, relation, inputs)
    slack = sum(source.slack for source in sources)
    return Value(number, min(source.figures for source in sources), slack, given, relation, inputs)


def _slack_of_sum(number: Number, sources: Sequence[Value]) -> float:
    size = abs(nominal(number))
    return sum(abs(nominal(s.number)) * s.slack for s in sources) / size if size else inf


def _figures_of_sum(number: Number, sources: Sequence[Value]) -> int:
    """Significant figures of a sum or difference: its last place is the coarsest last place in it.

    A figure that would be lost only because the result falls just below a power of ten is kept: 100 − 2.3 is 97.7.
    """
    limiting = [source for source in sources if source.figures < EXACT and nominal(source.number)]
    size = abs(nominal(number))
    if not limiting:
        return EXACT
    if not size:
        return 1
    coarsest = max(limiting, key=_last_place)
    places = log10(size / _last_place(coarsest))
    kept = floor(places + _KEPT)
    return max(1, kept if kept <= coarsest.figures else floor(places + 1))


_KEPT: Final = 1.2
"""One, and the part of a power of ten by which a result may fall short of it and keep its figure."""


def _last_place(value: Value) -> float:
    """What one unit of the last significant place is worth; in the unit in which it was written, if it was given."""
    size = abs(nominal(value.number))
    if value.relation is None and value.slack:
        return 2 * value.slack * size
    return float(10.0 ** (floor(log10(size)) - value.figures + 1))


def nominal(number: Number) -> float:
    """The number without its uncertainty."""
    return float(number if isinstance(number, float | int) else number.nominal_value)
