"""Reads what a bench, a room and a lesson allow, from the texts in which people write it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import isfinite
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.units import example_of, read_unit
from ionwright.chemistry.written_quantity import expect, read_written
from ionwright.errors import IonwrightError
from ionwright.teaching.demonstrations.rules_of_thumb import rule_of_thumb

if TYPE_CHECKING:
    from ionwright.chemistry.written_quantity import Written
    from ionwright.teaching.demonstrations.description import DemonstrationDescription

__all__ = ["Bench", "read_bench"]


class _Field(NamedTuple):
    """What a field of a description holds, the unit in which it is counted, and what is not absurd."""

    noun: str
    dimension: str
    unit: str
    low: float
    high: float
    may_be_zero: bool = False
    example: str = ""


_FIELDS: Final = {
    "within": _Field("time", "time", "s", 1.0, 3e7),
    "current": _Field("current", "current", "A", 1e-6, 1e6),
    "highest_current": _Field("highest current of the supply", "current", "A", 1e-6, 1e6),
    "cathode_area": _Field("area of the cathode", "area", "cm2", 1e-4, 1e8),
    "anode_area": _Field("area of the anode", "area", "cm2", 1e-4, 1e8),
    "bath_volume": _Field("volume of the bath", "volume", "dm3", 1e-6, 1e7, example="200 cm3"),
    "room_volume": _Field("volume of the room", "volume", "m3", 1e-3, 1e7, example="150 m3"),
    "air_changes": _Field("number of air changes an hour", "per time", "1/h", 1e-3, 200.0, may_be_zero=True),
    "efficiency": _Field("current efficiency", "fraction", "1", 1e-3, 1.0),
}
_LESSON: Final = frozenset({"", "lesson", "a lesson", "one lesson", "within a lesson"})
_SPAN: Final = re.compile(
    r"\s*(?:between\s+|from\s+)?(\d[\d.,]{0,12}\s*(?:s|secs?|seconds?|mins?|minutes?|h|hrs?|hours?|d|days?)?)\s*"
    r"(?:to|and|-|–|\N{MINUS SIGN})\s*(\d.{0,40})",
    re.IGNORECASE,
)
_PER_HOUR: Final = re.compile(
    r"\s*(?:times|changes|air changes)?\s*(?:/|per|an|each|every)\s*(?:h|hr|hour)\s*", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Bench:
    """What bench, room and lesson allow; None where nothing is said.

    Parameters
    ----------
    shortest_s, longest_s
        How long the current may flow [s]; 0 for the shortest if any short time will do.
    is_lesson_assumed
        Whether the time is that of an ordinary lesson.
    current_A, highest_A
        The current that is set, and the most that the supply gives [A].
    areas_cm2
        Area of each electrode under the surface, by ``cathode`` and ``anode`` [cm²].
    bath_dm3, room_m3, air_changes_per_h, efficiency
        As described.
    """

    shortest_s: float
    longest_s: float
    is_lesson_assumed: bool
    current_A: float | None
    highest_A: float | None
    areas_cm2: dict[str, float]
    bath_dm3: float | None
    room_m3: float | None
    air_changes_per_h: float | None
    efficiency: float | None


def read_bench(description: DemonstrationDescription) -> Bench:
    """What a description says of bench, room and lesson.

    Raises
    ------
    IonwrightError
        For a text that is no quantity, has the wrong dimension, or cannot be; its ``where`` is the field.
    """
    shortest, longest, is_assumed = _times(description.within)
    areas = {
        electrode: area
        for electrode in ("cathode", "anode")
        if (area := _read(description, f"{electrode}_area")) is not None
    }
    return Bench(
        shortest_s=shortest,
        longest_s=longest,
        is_lesson_assumed=is_assumed,
        current_A=_read(description, "current"),
        highest_A=_read(description, "highest_current"),
        areas_cm2=areas,
        bath_dm3=_read(description, "bath_volume"),
        room_m3=_read(description, "room_volume"),
        air_changes_per_h=_read(description, "air_changes"),
        efficiency=_read(description, "efficiency"),
    )


def _read(description: DemonstrationDescription, name: str) -> float | None:
    text = getattr(description, name)
    return _size(name, text) if text else None


def _times(text: str) -> tuple[float, float, bool]:
    """The shortest and the longest time [s], and whether they are those of an ordinary lesson."""
    if " ".join(text.lower().split()) in _LESSON:
        return 0.0, rule_of_thumb("lesson").in_unit("s"), True
    span = _SPAN.fullmatch(text)
    if span is None:
        return 0.0, _size("within", text), False
    first, second = span[1].strip(), span[2].strip()
    longest = _size("within", second)
    if not first[-1].isalpha():
        first = f"{first} {read_written(second, dimension='time').unit.symbol}"
    shortest = _size("within", first)
    if shortest > longest:
        detail = f'The span "{text.strip()}" ends before it begins.'
        raise QuantityFault("contradictory", detail, where="within", remedy="Write it as in 10 to 20 min.")
    return shortest, longest, False


def _size(name: str, text: str) -> float:
    """A quantity of a field, counted in the unit of the field."""
    field = _FIELDS[name]
    if name == "air_changes":
        text = _PER_HOUR.sub(" /h", text, count=1)
    try:
        written = read_written(text, dimension=field.dimension)
        if name == "air_changes" and written.unit.symbol == "1":
            written = read_written(f"{text.strip()} /h")
        expect(written, field.dimension, field.noun)
        value = written.value * written.unit.si / read_unit(field.unit).si
        _check(field, value, written)
    except IonwrightError as fault:
        if fault.code == "wrong-dimension" and field.example:
            fault.remedy = f'Write it as in "{field.example}".'
        raise fault.within(name) from None
    return value


def _check(field: _Field, value: float, written: Written) -> None:
    noun, text = field.noun, written.text.strip()
    if not isfinite(value):
        raise QuantityFault("not-finite", f"The {noun} has to be a finite number.")
    if value < 0:
        raise QuantityFault(
            "negative-quantity", f"The {noun} is {text}; it cannot be negative.", remedy=_advice(field)
        )
    if value == 0 and not field.may_be_zero:
        raise QuantityFault(
            "zero-quantity", f"The {noun} is zero.", remedy=f"{_advice(field)} Or leave it out."
        )
    if field.dimension == "fraction" and value > 1:
        raise QuantityFault(
            "out-of-range",
            f"The {noun} is {text}; it cannot be more than 100%.",
            remedy="Write it as a percentage, such as 95%, or as a part of one, such as 0.95.",
        )
    if value and not field.low <= value <= field.high:
        size = "small" if value < field.low else "large"
        raise QuantityFault(
            "absurd-magnitude",
            f"The {noun} of {text} is far too {size} for any demonstration.",
            remedy="Check the number and the unit.",
        )


def _advice(field: _Field) -> str:
    return f"Write a value above zero, such as {field.example or example_of(field.dimension)}."
