"""From the members of a request to the cell, the curriculum and the notations it asks for.

The published schema documents this reader; a test holds the two together. It is written by hand because
a request that was never seen before must cost little, and because its messages are for people.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from ionwright.api.problems import Fault, Path, validation_problem
from ionwright.api.texts import (
    body_members,
    named,
    near,
    note_unknown_fields,
    read_choice,
    read_number,
    read_quantity,
    read_text,
    shown,
    wrong_type,
)
from ionwright.chemistry.cell import CellDescription
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.notation import NOTATIONS

if TYPE_CHECKING:
    from collections.abc import Mapping

FIELDS = (
    "electrolyte",
    "concentration",
    "state",
    "cathode",
    "anode",
    "supply",
    "temperature",
    "ph",
    "current_density",
    "curriculum",
    "notation",
    "language",
)


LANGUAGES = ("en",)
MOST_INGREDIENTS = 12
MOST_NOTATIONS = 20
LOWEST_PH, HIGHEST_PH = 0.0, 14.0

_AMOUNT = '"0.25 mol/dm3"'
OTHER_WORDS = {
    "syllabus": "curriculum",
    "course": "curriculum",
    "specification": "curriculum",
    "solution": "electrolyte",
    "salt": "electrolyte",
    "substance": "electrolyte",
    "molarity": "concentration",
    "notations": "notation",
    "lang": "language",
    "power": "supply",
}


@dataclass(frozen=True, slots=True)
class PredictionRequest:
    """What a request asks for; equal requests have equal answers."""

    cell: CellDescription
    curriculum: str
    notations: frozenset[str] | None


def read_prediction_request(data: object, *, source: str = "body") -> PredictionRequest:
    """Read the members of a prediction request.

    Raises
    ------
    Problem
        With code ``validation-error`` and all faults at once.
    """
    faults: list[Fault] = []
    members = body_members(data, '{"electrolyte": "NiSO4", ...}', source=source)
    if not members.keys() <= _KNOWN:
        note_unknown_fields(members, (), FIELDS, faults, OTHER_WORDS)
    cell = _read_cell(members, faults)
    curriculum = _read_curriculum(members, faults)
    notations = read_notations(members["notation"], faults) if "notation" in members else None
    if "language" in members:
        read_choice(members["language"], ("language",), LANGUAGES, faults)
    if faults:
        raise validation_problem(faults, source=source)
    return PredictionRequest(cell, curriculum, notations)


_KNOWN = frozenset(FIELDS)


def _read_cell(data: dict[str, Any], faults: list[Fault]) -> CellDescription:
    shared = _read_optional_quantity(data, "concentration", _AMOUNT, faults)
    return CellDescription(
        electrolyte=_read_electrolyte(data, shared, faults),
        state=read_text(data["state"], ("state",), '"molten"', faults) if "state" in data else "aqueous",
        cathode=read_text(data["cathode"], ("cathode",), '"steel"', faults)
        if "cathode" in data
        else "graphite",
        anode=read_text(data["anode"], ("anode",), '"nickel"', faults) if "anode" in data else "graphite",
        supply=read_text(data["supply"], ("supply",), '"dc"', faults) if "supply" in data else "dc",
        temperature=_read_optional_quantity(data, "temperature", '"25 degC"', faults),
        ph=read_number(data["ph"], ("ph",), LOWEST_PH, HIGHEST_PH, faults) if "ph" in data else None,
        current_density=_read_optional_quantity(data, "current_density", '"20 mA/cm2"', faults),
    )


def _read_optional_quantity(data: dict[str, Any], name: str, example: str, faults: list[Fault]) -> str | None:
    return read_quantity(data[name], (name,), example, faults) if name in data else None


def _read_electrolyte(
    data: dict[str, Any], shared: str | None, faults: list[Fault]
) -> tuple[Ingredient, ...]:
    path: Path = ("electrolyte",)
    if "electrolyte" not in data:
        detail = (
            'Say what is in the cell: "electrolyte" takes a formula or a name,'
            ' such as "NiSO4" or "copper(II) sulfate".'
        )
        faults.append(Fault(path, "missing-field", detail))
        return ()
    value = data["electrolyte"]
    if type(value) is not list:
        return (_read_ingredient(value, path, shared, faults),)
    if not value:
        faults.append(Fault(path, "empty", '"electrolyte" is an empty list. Name at least one substance.'))
    if len(value) > MOST_INGREDIENTS:
        detail = f'"electrolyte" takes {MOST_INGREDIENTS} substances at most, and has {len(value)}.'
        faults.append(Fault(path, "too-many", detail))
        return ()
    return tuple(_read_ingredient(item, (*path, i), shared, faults) for i, item in enumerate(value))


def _read_ingredient(value: Any, path: Path, shared: str | None, faults: list[Fault]) -> Ingredient:
    if type(value) is str:
        text = read_text(value, path, '"NiSO4"', faults)
        substance, at, own = text.partition("@")
        if at and not (substance.strip() and own.strip()):
            detail = f"{named(path)} has nothing {'before' if own.strip() else 'after'} the @. "
            detail += 'Write substance@concentration, such as "NaCl@0.5 mol/dm3".'
            faults.append(Fault(path, "empty", detail, len(value) - len(value.lstrip()) + len(substance)))
        return Ingredient(substance.rstrip(), own.strip() if at else shared)
    if type(value) is not dict:
        detail = 'a formula, a name, or an object with "substance" and "concentration"'
        faults.append(wrong_type(value, path, detail, '"NiSO4"'))
        return Ingredient("", shared)
    note_unknown_fields(value, path, ("substance", "concentration"), faults)
    if "substance" not in value:
        faults.append(
            Fault(
                (*path, "substance"),
                "missing-field",
                f'{named(path)} lacks its "substance", such as "NiSO4".',
            )
        )
        return Ingredient("", shared)
    substance = read_text(value["substance"], (*path, "substance"), '"NiSO4"', faults)
    if "concentration" in value:
        shared = read_quantity(value["concentration"], (*path, "concentration"), _AMOUNT, faults)
    return Ingredient(substance, shared)


def _read_curriculum(data: dict[str, Any], faults: list[Fault]) -> str:
    if "curriculum" in data:
        return read_text(data["curriculum"], ("curriculum",), '"gcse"', faults)
    detail = (
        'Say under which curriculum to answer: "curriculum" takes an id, such as "gcse".'
        " GET /v1/curricula lists those that are loaded."
    )
    faults.append(Fault(("curriculum",), "missing-field", detail))
    return ""


def read_notations(value: Any, faults: list[Fault]) -> frozenset[str] | None:
    """Notations in which equations are wanted; None for all of them."""
    path: Path = ("notation",)
    if type(value) is str:
        words: list[Any] = [word.strip() for word in value.split(",")]
        places: list[Path] = [path] * len(words)
    elif type(value) is list:
        words, places = value, [(*path, i) for i in range(len(value))]
    else:
        faults.append(wrong_type(value, path, "a list of notations", '["ascii", "html"]'))
        return None
    if not words or len(words) > MOST_NOTATIONS:
        detail = f'"notation" takes 1 to {MOST_NOTATIONS} notations. Leave it out to have all of them.'
        faults.append(Fault(path, "too-many" if words else "empty", detail))
        return None
    for word, place in zip(words, places, strict=True):
        if type(word) is not str:
            faults.append(wrong_type(word, place, "a notation", '"html"'))
        elif word not in NOTATIONS:
            hint = near(word, NOTATIONS) or "The notations are " + ", ".join(NOTATIONS) + "."
            faults.append(Fault(place, "not-a-choice", f"There is no notation {shown(word)}. {hint}"))
    return None if faults else _notation_set(tuple(words))


@lru_cache(maxsize=256)
def _notation_set(words: tuple[str, ...]) -> frozenset[str] | None:
    """The notations asked for, None if that is all of them: the same set is the same request."""
    chosen = frozenset(words) | {"ascii"}
    return None if chosen == frozenset(NOTATIONS) else chosen


def place_of(data: Mapping[str, Any], where: str, position: int | None) -> tuple[Path, int | None]:
    """Find the place in a request that a refusal by the layers below speaks of.

    Parameters
    ----------
    data
        The members of the request.
    where
        Path of the fault in the cell, such as ``"electrolyte/0/concentration"``.
    position
        Offset of the fault in its text as the layers below saw it.

    Returns
    -------
    The path in the request as it was sent, and the offset in the text that was sent there.
    """
    parts = where.split("/") if where else []
    if parts and parts[0] == "electrolyte" and len(parts) > 1 and parts[1].isdigit():
        return _place_in_electrolyte(data, int(parts[1]), parts[2:], position)
    path: Path = tuple(int(part) if part.isdigit() else part for part in parts)
    return path, _shifted(data.get(parts[0]) if len(parts) == 1 else None, 0, position)


def _place_in_electrolyte(
    data: Mapping[str, Any], index: int, parts: list[str], position: int | None
) -> tuple[Path, int | None]:
    value = data.get("electrolyte")
    path: Path = ("electrolyte",)
    if type(value) is list:
        path = (*path, index)
        value = value[index] if index < len(value) else None
    part = parts[0] if parts else ""
    if type(value) is dict:
        if part == "concentration" and part not in value:
            return ("concentration",), _shifted(data.get("concentration"), 0, position)
        return ((*path, part) if part else path), _shifted(value.get(part), 0, position)
    if type(value) is not str:
        return path, None
    substance, at, own = value.partition("@")
    if part != "concentration":
        return path, _shifted(value, 0, position)
    if not at:
        return ("concentration",), _shifted(data.get("concentration"), 0, position)
    return path, _shifted(own, len(substance) + 1, position)


def _shifted(text: object, start: int, position: int | None) -> int | None:
    """Offset in the text as it was sent, with the spaces in front; None for what is not a text."""
    if position is None or type(text) is not str:
        return None
    return start + len(text) - len(text.lstrip()) + position
