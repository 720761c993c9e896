"""Times in several units, as a clock on the wall suggests them: ``1 h 20 min``."""

from __future__ import annotations

import re
from decimal import Decimal
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.units import read_unit

if TYPE_CHECKING:
    from ionwright.chemistry.units import Unit

__all__ = ["TIME_UNIT", "MixedTime", "mixed_time_at"]

TIME_UNIT: Final = r"(days?|d|hours?|hrs?|h|minutes?|mins?|seconds?|secs?|s)(?![A-Za-z])"
"""A unit of time as it is found inside a mixed one; it captures the unit."""

_SIGN: Final = re.compile(r" *([+-]) ?")
_JOINT: Final = r" *(?:, ?)?(?:and )? *"
# so few digits that the sum stays exact
_NUMBER: Final = r"(\d{1,9}(?:[.,]\d{1,9})?)"
_PART: Final = re.compile(rf"{_JOINT}{_NUMBER} ?{TIME_UNIT}", re.IGNORECASE)
# behind hours no one means metres
_MINUTES: Final = re.compile(rf"{_JOINT}(?:{_NUMBER} ?m(?![A-Za-z])|([0-5]?\d)(?= *\.? *$))", re.IGNORECASE)


class MixedTime(NamedTuple):
    """A time in several units, counted in the last of them."""

    value: float
    unit: Unit
    significant_figures: int


class _Part(NamedTuple):
    number: str
    unit: Unit
    end: int


def mixed_time_at(text: str, position: int = 0) -> MixedTime | None:
    """The time in several units that stands at a position of a text, up to its end; None if there is none.

    The units go from the largest to the smallest, all but the last in whole numbers. Behind hours, ``m`` and a last
    number without a unit are minutes: ``1h 20m``, ``1 h 20``.

    Parameters
    ----------
    text
        With plain digits, spaces and minus signs.
    position
        Offset at which to begin; spaces there are passed over.
    """
    sign = _SIGN.match(text, position)
    parts: list[_Part] = []
    at = sign.end() if sign else position
    while part := _part_at(text, at, parts):
        if parts and not (parts[-1].number.isdecimal() and part.unit.si < parts[-1].unit.si):
            return None
        parts.append(part)
        at = part.end
    if len(parts) < 2 or text[at:].strip(" ."):
        return None
    total = _sum(parts)
    value = float(-total if sign and sign[1] == "-" else total)
    return MixedTime(value, parts[-1].unit, min(len(total.as_tuple().digits), 15))


def _part_at(text: str, at: int, before: list[_Part]) -> _Part | None:
    part = _PART.match(text, at)
    if part:
        return _Part(part[1].replace(",", "."), read_unit(part[2].lower()), part.end())
    minutes = _MINUTES.match(text, at) if before and before[-1].unit.symbol == "h" else None
    if minutes is None:
        return None
    return _Part((minutes[1] or minutes[2]).replace(",", "."), read_unit("min"), minutes.end())


def _sum(parts: list[_Part]) -> Decimal:
    """All parts in the unit of the last, to its last decimal."""
    last = parts[-1]
    total = sum((Decimal(part.number) * Decimal(part.unit.si) for part in parts), start=Decimal(0))
    decimals = len(last.number.partition(".")[2])
    return (total / Decimal(last.unit.si)).quantize(Decimal(1).scaleb(-decimals))
