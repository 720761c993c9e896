"""Where in a request lies what the layers below refuse about a task."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from ionwright.api.process_reader import cells_in
from ionwright.api.request_reader import place_of

if TYPE_CHECKING:
    from ionwright.api.problems import Path
    from ionwright.errors import IonwrightError

Place = tuple["Path", int | None]
_OF_A_NAME = frozenset({"unknown-quantity"})
_OF_A_SUBJECT = frozenset({"needs-more", "not-in-task"})
_NOWHERE: Place = ((), None)


def place_in_task(data: dict[str, Any], refusal: IonwrightError) -> Place:
    """The path of the member at fault as it was sent, and the offset in its text.

    Parameters
    ----------
    data
        The members of the request.
    refusal
        Its ``where`` counts the known and the wanted quantities, however they were sent.
    """
    parts = refusal.where.split("/") if refusal.where else []
    if not parts:
        return _NOWHERE
    if parts[0] in {"known", "find"} and len(parts) > 1:
        return _of_entry(data, parts, refusal)
    if parts == ["curriculum"]:
        return _of_curriculum(data), None
    for path, cell in cells_in(data):
        if parts[: len(path)] == [str(part) for part in path]:
            inner, position = place_of(cell, "/".join(parts[len(path) :]), refusal.position)
            return (*path, *inner), position
    return _of_member(data, parts, refusal.position)


def _of_entry(data: dict[str, Any], parts: list[str], refusal: IonwrightError) -> Place:
    """Of a known or a wanted quantity: the part of its entry that the refusal is about."""
    name, index = parts[0], int(parts[1])
    entries = data.get(name)
    if type(entries) is dict:
        phrase = list(entries)[index]
        is_of_name = refusal.code in _OF_A_NAME or len(parts) > 2
        return (name, phrase), None if is_of_name else _shifted(entries[phrase], refusal.position)
    if type(entries) is not list:
        return (name,), None
    entry = entries[index]
    if type(entry) is not dict:
        return (name, index), None
    member = _member_of_entry(entry, parts, refusal)
    position = _shifted(entry.get(member), refusal.position)
    return ((name, index, member) if member in entry else (name, index)), position


def _member_of_entry(entry: dict[str, Any], parts: list[str], refusal: IonwrightError) -> str:
    if len(parts) > 2:
        # a substance that is named in the phrase has no member of its own
        return parts[2] if parts[2] in entry else "quantity"
    if refusal.code in _OF_A_NAME:
        return "quantity"
    if refusal.code in _OF_A_SUBJECT:
        process = entry.get("process")
        if type(process) is str and f'"{process.strip()}"' in refusal.detail:
            return "process"
        return "of" if "of" in entry else "quantity"
    if parts[0] == "find":
        return "unit" if "unit" in entry else "quantity"
    return "value"


def _of_curriculum(data: dict[str, Any]) -> Path:
    if "curriculum" in data:
        return ("curriculum",)
    return next(((*path, "curriculum") for path, cell in cells_in(data) if "curriculum" in cell), ())


def _of_member(data: dict[str, Any], parts: list[str], position: int | None) -> Place:
    path: Path = ()
    value: Any = data
    for part in parts:
        if type(value) is list and part.isdigit() and int(part) < len(value):
            path, value = (*path, int(part)), value[int(part)]
        elif type(value) is dict and part in value:
            path, value = (*path, part), value[part]
        else:
            return path, None
    # equations are handed on as they were sent, all other texts without the spaces around them
    return path, position if path[-1] == "half_equation" else _shifted(value, position)


def _shifted(text: object, position: int | None) -> int | None:
    """Offset in the text as it was sent, with the spaces in front; None for what is not a text."""
    if position is None or type(text) is not str:
        return None
    return len(text) - len(text.lstrip()) + position
