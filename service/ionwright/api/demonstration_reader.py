"""From the members of a request to the demonstration that it describes, and back to the member at fault."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from ionwright.api.check_reader import ELECTRODES
from ionwright.api.conventions_reader import read_task_conventions
from ionwright.api.known_reader import read_value
from ionwright.api.problems import Fault, Path, validation_problem
from ionwright.api.process_reader import read_processes
from ionwright.api.request_reader import LANGUAGES, OTHER_WORDS, place_of, read_notations
from ionwright.api.texts import (
    body_members,
    named,
    note_unknown_fields,
    read_choice,
    read_quantity,
    read_text,
    wrong_type,
)
from ionwright.chemistry.cell import CellDescription
from ionwright.teaching.demonstrations import Aim, DemonstrationDescription, aim_of
from ionwright.teaching.quantities import TaskConventions

if TYPE_CHECKING:
    from ionwright.errors import IonwrightError

BENCH_FIELDS: Final = {
    "within": "20 min",
    "current": "0.50 A",
    "highest_current": "2.0 A",
    "electrode_area": "25 cm2",
    "cathode_area": "25 cm2",
    "anode_area": "25 cm2",
    "bath_volume": "200 cm3",
    "room_volume": "180 m3",
    "air_changes": "3 /h",
    "efficiency": "95%",
    "gas_temperature": "20 degC",
    "gas_pressure": "101 kPa",
}
"""What a request may say of bench, room and lesson, with an example of each."""

DEMONSTRATION_FIELDS: Final = (
    "cell",
    "aims",
    *BENCH_FIELDS,
    "curriculum",
    "conventions",
    "notation",
    "language",
)
AIM_FIELDS: Final = ("quantity", "of", "electrode", "value")
MOST_AIMS: Final = 12
OTHER_DEMONSTRATION_WORDS: Final = OTHER_WORDS | {
    "aim": "aims",
    "see": "aims",
    "goal": "aims",
    "time": "within",
    "duration": "within",
    "lesson": "within",
    "max_current": "highest_current",
    "area": "electrode_area",
    "room": "room_volume",
    "volume": "bath_volume",
    "ventilation": "air_changes",
    "temperature": "gas_temperature",
    "pressure": "gas_pressure",
}
_PLAIN_NUMBERS: Final = frozenset({"air_changes", "efficiency"})
_AREAS: Final = ("cathode_area", "anode_area")
_EXAMPLE: Final = (
    '{"cell": {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel"}, "aims": "2 um of Ni",'
    ' "within": "20 min", "cathode_area": "25 cm2", "curriculum": "gcse"}'
)
_NO_CURRICULUM: Final = "none"
"""Stands in for a curriculum that is missing or no text, so that the fault is told once."""
_AIM_EXAMPLE: Final = '"10 cm3 of H2"'


@dataclass(frozen=True, slots=True)
class DemonstrationRequest:
    """What a request asks to be planned; equal requests have equal answers."""

    description: DemonstrationDescription
    curriculum: str
    notations: frozenset[str] | None


def read_demonstration_request(data: object, *, source: str = "body") -> DemonstrationRequest:
    """Read the members of a request for the plan of a demonstration.

    Raises
    ------
    Problem
        With code ``validation-error`` and all faults at once.
    """
    faults: list[Fault] = []
    members = body_members(data, _EXAMPLE, source=source)
    note_unknown_fields(members, (), DEMONSTRATION_FIELDS, faults, OTHER_DEMONSTRATION_WORDS)
    curriculum = _curriculum(members, faults)
    description = DemonstrationDescription(
        cell=_cell(members, curriculum, faults),
        aims=_aims(members, faults),
        **_bench(members, faults),
        conventions=read_task_conventions(members["conventions"], faults)
        if "conventions" in members
        else TaskConventions(),
    )
    notations = _presented(members, faults)
    if faults:
        placed = [Fault(as_parameter(f.path), f.code, f.detail, f.position) for f in faults]
        raise validation_problem(faults if source == "body" else placed, source=source)
    return DemonstrationRequest(description, curriculum, notations)


def _curriculum(data: dict[str, Any], faults: list[Fault]) -> str:
    """Id of the curriculum; it may stand in the cell instead of beside it."""
    if "curriculum" in data:
        return read_text(data["curriculum"], ("curriculum",), '"gcse"', faults) or _NO_CURRICULUM
    cell = data.get("cell")
    if type(cell) is dict and type(cell.get("curriculum")) is str:
        return str(cell["curriculum"]).strip()
    detail = (
        'Say under which curriculum to plan: "curriculum" takes an id, such as "gcse".'
        " GET /v1/curricula lists those that are loaded."
    )
    faults.append(Fault(("curriculum",), "missing-field", detail))
    return _NO_CURRICULUM


def _cell(data: dict[str, Any], curriculum: str, faults: list[Fault]) -> CellDescription:
    if "cell" in data:
        (process,) = read_processes({"cell": data["cell"]}, curriculum, faults)
        if process.cell is not None:
            return process.cell
    else:
        detail = 'Say which cell is to be shown: "cell" takes an object, such as {"electrolyte": "NiSO4"}.'
        faults.append(Fault(("cell",), "missing-field", detail))
    return CellDescription(electrolyte=())


def _aims(data: dict[str, Any], faults: list[Fault]) -> tuple[Aim, ...]:
    path: Path = ("aims",)
    if "aims" not in data:
        detail = (
            f'Say what should be seen: "aims" takes a text such as {_AIM_EXAMPLE} or "visible Ni", or a list.'
        )
        faults.append(Fault(path, "missing-field", detail))
        return ()
    value = data["aims"]
    if type(value) is not list:
        return (_aim(value, path, "aims/0", faults),)
    if not value or len(value) > MOST_AIMS:
        detail = f'"aims" takes 1 to {MOST_AIMS} aims, and has {len(value)}.'
        faults.append(Fault(path, "too-many" if value else "empty", detail))
        return ()
    return tuple(_aim(item, (*path, i), f"aims/{i}", faults) for i, item in enumerate(value))


def _aim(item: Any, path: Path, where: str, faults: list[Fault]) -> Aim:
    if type(item) is str:
        return aim_of(read_text(item, path, _AIM_EXAMPLE, faults), where)
    if type(item) is not dict:
        faults.append(wrong_type(item, path, "an aim", _AIM_EXAMPLE))
        return Aim("")
    note_unknown_fields(
        item, path, AIM_FIELDS, faults, {"product": "of", "substance": "of", "process": "electrode"}
    )
    if "value" not in item:
        detail = f'{named(path)} lacks its "value", such as "10 cm3" or "visible".'
        faults.append(Fault((*path, "value"), "missing-field", detail))
    texts = {
        name: read_text(item[name], (*path, name), example, faults)
        for name, example in (("quantity", '"volume"'), ("of", '"H2"'))
        if name in item
    }
    electrode = ""
    if "electrode" in item:
        electrode = read_choice(item["electrode"], (*path, "electrode"), ELECTRODES, faults)
    value = read_value(item["value"], (*path, "value"), "volume", faults) if "value" in item else ""
    return Aim(value, electrode=electrode, where=where, **texts)


def _bench(data: dict[str, Any], faults: list[Fault]) -> dict[str, str]:
    """What is said of bench, room and lesson, by the fields of a description."""
    given = {name: _size(data[name], name, faults) for name in BENCH_FIELDS if name in data}
    shared = given.pop("electrode_area", None)
    if shared is not None:
        given = dict.fromkeys(_AREAS, shared) | given
    return given


def _size(value: Any, name: str, faults: list[Fault]) -> str:
    if type(value) in (int, float) and name in _PLAIN_NUMBERS:
        return read_value(value, (name,), "efficiency", faults)
    return read_quantity(value, (name,), f'"{BENCH_FIELDS[name]}"', faults)


def _presented(data: dict[str, Any], faults: list[Fault]) -> frozenset[str] | None:
    if "language" in data:
        read_choice(data["language"], ("language",), LANGUAGES, faults)
    if "notation" in data:
        return read_notations(data["notation"], faults)
    cell = data.get("cell")
    # what is wrong with it was told when the cell was read
    return read_notations(cell["notation"], []) if type(cell) is dict and "notation" in cell else None


def place_in_demonstration(data: dict[str, Any], refusal: IonwrightError) -> tuple[Path, int | None]:
    """The path of the member at fault as it was sent, and the offset in its text.

    Parameters
    ----------
    data
        The members of the request.
    refusal
        By the layers below.
    """
    parts = refusal.where.split("/") if refusal.where else []
    if not parts:
        return (), None
    if parts[0] == "cell":
        inner, position = place_of(data["cell"], "/".join(parts[1:]), refusal.position)
        return ("cell", *inner), position
    if parts[0] == "aims" and len(parts) > 1:
        return _of_aim(data["aims"], parts, refusal.position)
    if parts[0] == "curriculum" and "curriculum" not in data:
        return ("cell", "curriculum"), None
    if parts[0] in _AREAS and parts[0] not in data and "electrode_area" in data:
        parts[0] = "electrode_area"
    value = data.get(parts[0])
    for part in parts[1:]:
        value = value.get(part) if type(value) is dict else None
    return tuple(parts), _shifted(value, refusal.position)


def _of_aim(aims: Any, parts: list[str], position: int | None) -> tuple[Path, int | None]:
    path: Path = ("aims",)
    aim = aims
    if type(aims) is list:
        path, aim = ("aims", int(parts[1])), aims[int(parts[1])]
    if type(aim) is str:
        # the value stands in front of the substance
        return path, _shifted(aim, position) if parts[2:] == ["value"] else None
    member = next((name for name in (*parts[2:], "quantity") if name in aim), "")
    if not member or not parts[2:]:
        return path, None
    return (*path, member), _shifted(aim[member], position) if member == parts[2] else None


def _shifted(text: object, position: int | None) -> int | None:
    """Offset in the text as it was sent, with the spaces in front; None for what is not a text."""
    if position is None or type(text) is not str:
        return None
    return len(text) - len(text.lstrip()) + position


def as_parameter(path: Path) -> Path:
    """The query parameter from which the member at a path was made."""
    if len(path) > 1 and path[0] == "cell":
        return path[1:2]
    if len(path) > 1 and path[0] == "conventions":
        return path[1:2]
    return ("aim",) if path[:1] == ("aims",) else path[:1]
