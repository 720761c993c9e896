"""From the members of a task to the processes that run in it: half-equations, cells, and metals of unknown charge."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from ionwright.api.check_reader import ELECTRODES, read_line
from ionwright.api.problems import Fault, Path, Problem
from ionwright.api.request_reader import read_prediction_request
from ionwright.api.texts import named, note_unknown_fields, read_choice, read_text, shown, wrong_type
from ionwright.teaching.quantities import ProcessDescription

if TYPE_CHECKING:
    from collections.abc import Iterator

    from ionwright.chemistry.cell import CellDescription

KINDS = ("half_equation", "cell", "metal")
PROCESS_FIELDS = ("id", *KINDS, "electrode", "bath")
MOST_PROCESSES = 12
_EXAMPLE = '[{"id": "silver cell", "half_equation": "Ag^+ + e- -> Ag"}]'
_OTHER_WORDS = {"name": "id", "equation": "half_equation", "ion": "metal", "electrolyte": "cell"}


def cells_in(data: dict[str, Any]) -> Iterator[tuple[Path, dict[str, Any]]]:
    """Every cell of a request that is an object, with its place."""
    if type(data.get("cell")) is dict:
        yield ("cell",), data["cell"]
    processes = data.get("processes")
    for index, process in enumerate(processes if type(processes) is list else ()):
        if type(process) is dict and type(process.get("cell")) is dict:
            yield ("processes", index, "cell"), process["cell"]


def read_processes(
    data: dict[str, Any], curriculum: str, faults: list[Fault]
) -> tuple[ProcessDescription, ...]:
    """What runs: one process or cell, or a list of those in one circuit.

    Parameters
    ----------
    curriculum
        Id of the curriculum of the task, for the cells that do not name it themselves.
    """
    if "processes" not in data:
        return _alone(data, curriculum, faults)
    for name in (*KINDS, "electrode"):
        if name in data:
            detail = f'"{name}" cannot stand beside "processes". Put it into one of them.'
            faults.append(Fault((name,), "unknown-field", detail))
    value, path = data["processes"], ("processes",)
    if type(value) is not list:
        faults.append(wrong_type(value, path, "a list of processes", _EXAMPLE))
    elif not value or len(value) > MOST_PROCESSES:
        detail = f'"processes" takes 1 to {MOST_PROCESSES} processes, and has {len(value)}.'
        faults.append(Fault(path, "too-many" if value else "empty", detail))
    else:
        found = tuple(_member(item, (*path, i), curriculum, faults) for i, item in enumerate(value))
        _note_repeated(found, faults)
        return found
    return ()


def _alone(data: dict[str, Any], curriculum: str, faults: list[Fault]) -> tuple[ProcessDescription, ...]:
    if "electrode" in data and "cell" not in data and any(name in data for name in KINDS):
        detail = (
            '"electrode" belongs to a "cell". Leave it out where the half-equation or the metal is given.'
        )
        faults.append(Fault(("electrode",), "unknown-field", detail))
    id_ = "cell" if "cell" in data else "process"
    return (_process(data, (), id_, curriculum, faults),)


def _member(value: Any, path: Path, curriculum: str, faults: list[Fault]) -> ProcessDescription:
    if type(value) is not dict:
        faults.append(wrong_type(value, path, "a process", _EXAMPLE[1:-1]))
        return ProcessDescription(id="")
    note_unknown_fields(value, path, PROCESS_FIELDS, faults, _OTHER_WORDS)
    id_ = ""
    if "id" in value:
        id_ = read_text(value["id"], (*path, "id"), '"silver cell"', faults)
    else:
        detail = f'{named(path)} lacks its "id", a name of your own such as "silver cell".'
        faults.append(Fault((*path, "id"), "missing-field", detail))
    return _process(value, path, id_, curriculum, faults)


def _process(
    members: dict[str, Any], path: Path, id_: str, curriculum: str, faults: list[Fault]
) -> ProcessDescription:
    given = [name for name in KINDS if name in members]
    if len(given) != 1:
        _note_choice(given, path, faults)
        return ProcessDescription(id=id_)
    place = (*path, given[0])
    value = members[given[0]]
    return ProcessDescription(
        id=id_,
        half_equation=read_line(value, place, faults) if given == ["half_equation"] else "",
        cell=_cell(value, place, curriculum, faults) if given == ["cell"] else None,
        metal=read_text(value, place, '"Cr"', faults) if given == ["metal"] else "",
        electrode=_electrode(members, path, is_of_cell=given == ["cell"], faults=faults),
        bath=_bath(members, path, is_of_half=given == ["half_equation"], faults=faults),
        where="/".join(map(str, place)),
    )


def _note_choice(given: list[str], path: Path, faults: list[Fault]) -> None:
    if given:
        both = " and ".join(f'"{name}"' for name in given)
        detail = f"There are {both} in one process. Give one of them."
        faults.append(Fault((*path, given[1]), "unknown-field", detail))
        return
    detail = (
        'Say what runs: "half_equation", or "cell" for one that is predicted, or "metal" if the charge of its ion'
        " is to be found."
    )
    if not path:
        detail += ' Several in one circuit go into "processes".'
    faults.append(Fault((*path, "half_equation"), "missing-field", detail))


def _electrode(members: dict[str, Any], path: Path, *, is_of_cell: bool, faults: list[Fault]) -> str:
    if "electrode" not in members:
        return ""
    place = (*path, "electrode")
    if is_of_cell:
        return read_choice(members["electrode"], place, ELECTRODES, faults)
    return read_text(members["electrode"], place, '"bracket"', faults)


def _bath(members: dict[str, Any], path: Path, *, is_of_half: bool, faults: list[Fault]) -> str:
    if not path or "bath" not in members:
        return ""
    place = (*path, "bath")
    if is_of_half:
        return read_text(members["bath"], place, '"brine"', faults)
    detail = '"bath" belongs to a half-equation. A cell and a metal have a bath of their own.'
    faults.append(Fault(place, "unknown-field", detail))
    return ""


def _cell(value: Any, path: Path, curriculum: str, faults: list[Fault]) -> CellDescription | None:
    if type(value) is not dict:
        faults.append(wrong_type(value, path, "a cell", '{"electrolyte": "NiSO4", ...}'))
        return None
    try:
        request = read_prediction_request(
            value if "curriculum" in value else value | {"curriculum": curriculum}
        )
    except Problem as problem:
        faults += [Fault((*path, *f.path), f.code, f.detail, f.position) for f in problem.faults]
        return None
    if request.curriculum != curriculum:
        detail = (
            f"This cell names the curriculum {shown(request.curriculum)}, the task names {shown(curriculum)}."
        )
        faults.append(Fault((*path, "curriculum"), "not-a-choice", detail))
    return request.cell


def _note_repeated(processes: tuple[ProcessDescription, ...], faults: list[Fault]) -> None:
    seen: set[str] = set()
    for index, process in enumerate(processes):
        if process.id and process.id in seen:
            detail = f"Two processes are called {shown(process.id)}. Give each its own id."
            faults.append(Fault(("processes", index, "id"), "repeated", detail))
        seen.add(process.id)
