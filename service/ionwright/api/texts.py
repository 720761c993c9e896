"""Reading single values of a request strictly: each reader gives the value or notes the fault."""

from __future__ import annotations

import unicodedata
from difflib import get_close_matches
from math import isfinite
from typing import TYPE_CHECKING, Any

from ionwright.api.problems import Fault, Path, validation_problem

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

LONGEST_TEXT = 200
LONGEST_UNIT = 40


def shown(text: str) -> str:
    """Quote a text of the sender so that it can stand in a sentence, shortened and printable."""
    short = text if len(text) <= 40 else text[:40] + "…"
    readable = "".join(
        char if char.isprintable() else char.encode("unicode_escape").decode("ascii") for char in short
    )
    return f'"{readable}"'


def kind_of(value: object) -> str:
    """Name the JSON type of a value, with its article."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    names = {str: "a text", int: "a number", float: "a number", list: "a list", dict: "an object"}
    return names.get(type(value), "something else")


def near(word: str, known: Iterable[str]) -> str:
    """Offer the known word that looks most like the given one, as a sentence; empty if none does."""
    by_lower = {name.lower(): name for name in known}
    found = get_close_matches(word.lower()[:60], by_lower, n=1, cutoff=0.6)
    return f'Did you mean "{by_lower[found[0]]}"?' if found else ""


def read_text(value: Any, path: Path, example: str, faults: list[Fault]) -> str:
    """Text without the spaces around it; empty, with a fault noted, if the value is not a usable text."""
    if type(value) is not str:
        faults.append(wrong_type(value, path, "a text", example))
        return ""
    text = value.strip()
    if not text:
        faults.append(Fault(path, "empty", f"{named(path)} is empty. Write for example {example}."))
    elif len(text) > LONGEST_TEXT:
        faults.append(
            Fault(path, "too-long", f"{named(path)} may have {LONGEST_TEXT} characters, and has {len(text)}.")
        )
    elif not text.isprintable():
        _note_unwanted(value, path, faults)
    return text


def _note_unwanted(text: str, path: Path, faults: list[Fault]) -> None:
    for position, char in enumerate(text):
        # other spaces and unassigned characters are left to the readers of formulas and quantities
        if unicodedata.category(char) in {"Cc", "Cs"} and not char.isspace():
            detail = (
                f"{named(path)} holds the character U+{ord(char):04X}, which is no part of any text."
                " Leave it out."
            )
            faults.append(Fault(path, "unwanted-character", detail, position))
            return


def read_choice(value: Any, path: Path, choices: Sequence[str], faults: list[Fault]) -> str:
    """One of a few words; the first choice, with a fault noted, if the value is another one."""
    if value in choices and type(value) is str:
        return value
    allowed = " or ".join(f'"{choice}"' for choice in choices)
    if type(value) is not str:
        faults.append(wrong_type(value, path, "a word", allowed))
    else:
        hint = near(value, choices)
        detail = f"{named(path)} is {shown(value)}; it can be {allowed}. {hint}".strip()
        faults.append(Fault(path, "not-a-choice", detail))
    return choices[0]


def read_quantity(value: Any, path: Path, example: str, faults: list[Fault]) -> str:
    """Quantity as text, from a text or from an object with ``value`` and ``unit``."""
    if type(value) is str:
        return read_text(value, path, example, faults)
    if type(value) is not dict:
        detail = (
            f"{named(path)} is {kind_of(value)}; it has to be a text with its unit, such as {example},"
            ' or an object with "value" and "unit".'
        )
        faults.append(Fault(path, "wrong-type", detail))
        return ""
    return _read_value_and_unit(value, path, example, faults)


def _read_value_and_unit(value: dict[str, Any], path: Path, example: str, faults: list[Fault]) -> str:
    before = len(faults)
    note_unknown_fields(value, path, ("value", "unit"), faults)
    number = value.get("value")
    if "value" not in value:
        faults.append(Fault((*path, "value"), "missing-field", f'{named(path)} lacks its "value", a number.'))
    elif type(number) not in (int, float):
        faults.append(wrong_type(number, (*path, "value"), "a number", "0.5"))
    elif not isfinite(float(str(number))):
        faults.append(Fault((*path, "value"), "out-of-range", f"{named(path)} is too large a number."))
    if "unit" not in value:
        faults.append(
            Fault(
                (*path, "unit"), "missing-field", f'{named(path)} lacks its "unit". Write it as in {example}.'
            )
        )
        return ""
    unit = read_text(value["unit"], (*path, "unit"), example, faults)
    return f"{number!r} {unit}" if len(faults) == before else ""


def read_number(value: Any, path: Path, lowest: float, highest: float, faults: list[Fault]) -> float | None:
    """Plain number within a range; None, with a fault noted, if the value is not one."""
    if type(value) not in (int, float):
        faults.append(wrong_type(value, path, "a number", "7"))
        return None
    if not lowest <= value <= highest:
        detail = f"{named(path)} has to lie between {lowest:g} and {highest:g}."
        faults.append(Fault(path, "out-of-range", detail))
        return None
    return float(value)


def note_unknown_fields(
    value: dict[str, Any],
    path: Path,
    known: Sequence[str],
    faults: list[Fault],
    other_words: dict[str, str] | None = None,
) -> None:
    """Note each field that the operation does not know, with the one that was probably meant."""
    for name in value:
        if name in known:
            continue
        meant = (other_words or {}).get(name.lower())
        hint = f'Did you mean "{meant}"?' if meant else near(name, known)
        hint = hint or "The fields here are " + ", ".join(known) + "."
        place = (*path, name) if len(name) <= LONGEST_TEXT else path
        faults.append(Fault(place, "unknown-field", f"There is no field {shown(name)}. {hint}"))


def wrong_type(value: object, path: Path, expected: str, example: str) -> Fault:
    """Fault of a value with another JSON type than its field takes."""
    detail = f"{named(path)} is {kind_of(value)}; it has to be {expected}, such as {example}."
    if value is None:
        detail = f"{named(path)} is null. Leave the field out, or write {expected}, such as {example}."
    return Fault(path, "wrong-type", detail)


def body_members(data: object, example: str, *, source: str = "body") -> dict[str, Any]:
    """The members of a body, which has to be an object.

    Raises
    ------
    Problem
        With code ``validation-error``.
    """
    if type(data) is dict:
        return data
    detail = f"The body is {kind_of(data)}; it has to be an object, such as {example}."
    raise validation_problem([Fault((), "wrong-type", detail)], source=source)


def named(path: Path) -> str:
    """Name a field in a sentence: its name, or which member of its list it is."""
    if not path:
        return "The body"
    last = path[-1]
    if isinstance(last, str):
        return f'"{last}"'
    return f'Entry {last + 1} of "{path[-2]}"'


def with_plus_told(detail: str, sent: object) -> str:
    """`detail` about an equation out of an address, with how a plus is written there if none came through.

    A plus sign stands for a space in a query, as HTML forms write it.
    """
    if isinstance(sent, str) and "+" not in sent and " " in sent:
        return f"{detail} In an address a plus sign is written %2B."
    return detail
