"""From the members of a request to the equation to be balanced, or the half-equations to be combined."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ionwright.api.problems import Fault, validation_problem
from ionwright.api.request_reader import LANGUAGES, read_notations
from ionwright.api.texts import body_members, note_unknown_fields, read_choice, shown, wrong_type
from ionwright.chemistry.equation_text import MAX_EQUATION_LENGTH
from ionwright.chemistry.skeleton import MEDIA

if TYPE_CHECKING:
    from collections.abc import Mapping

BALANCE_FIELDS = ("equation", "medium", "notation", "language")
COMBINE_FIELDS = ("oxidation", "reduction", "notation", "language")
OTHER_WORDS = {
    "half_equation": "equation",
    "skeleton": "equation",
    "solution": "medium",
    "anode": "oxidation",
    "cathode": "reduction",
    "notations": "notation",
    "lang": "language",
}
_OTHER_MEDIA = {
    "acid": "acidic",
    "base": "alkaline",
    "basic": "alkaline",
    "alkali": "alkaline",
    "melt": "molten",
    "aqueous": "neutral",
    "water": "neutral",
    "non-aqueous": "none",
}
_EXAMPLES = {
    "equation": '"MnO4^- -> Mn^2+"',
    "oxidation": '"Cu -> Cu^2+ + 2e-"',
    "reduction": '"Ag^+ + e- -> Ag"',
}


@dataclass(frozen=True, slots=True)
class BalanceRequest:
    """What a request asks to be balanced; equal requests have equal answers."""

    equation: str
    medium: str | None
    notations: frozenset[str] | None


@dataclass(frozen=True, slots=True)
class CombineRequest:
    """Which half-equations a request asks to be combined."""

    oxidation: str
    reduction: str
    notations: frozenset[str] | None


def read_balance_request(data: object, *, source: str = "body") -> BalanceRequest:
    """Read the members of a request to balance an equation.

    Raises
    ------
    Problem
        With code ``validation-error`` and all faults at once.
    """
    faults: list[Fault] = []
    members = _members(data, BALANCE_FIELDS, faults, source)
    equation = _equation(members, "equation", faults)
    medium = _medium(members["medium"], faults) if "medium" in members else None
    notations = _notations(members, faults)
    if faults:
        raise validation_problem(faults, source=source)
    return BalanceRequest(equation, medium, notations)


def read_combine_request(data: object, *, source: str = "body") -> CombineRequest:
    """Read the members of a request to combine two half-equations.

    Raises
    ------
    Problem
        With code ``validation-error`` and all faults at once.
    """
    faults: list[Fault] = []
    members = _members(data, COMBINE_FIELDS, faults, source)
    oxidation, reduction = (_equation(members, name, faults) for name in ("oxidation", "reduction"))
    notations = _notations(members, faults)
    if faults:
        raise validation_problem(faults, source=source)
    return CombineRequest(oxidation, reduction, notations)


def _members(data: object, known: tuple[str, ...], faults: list[Fault], source: str) -> dict[str, Any]:
    members = body_members(data, f'{{"{known[0]}": {_EXAMPLES[known[0]]}, ...}}', source=source)
    if not members.keys() <= set(known):
        note_unknown_fields(members, (), known, faults, OTHER_WORDS)
    return members


def _equation(members: Mapping[str, Any], name: str, faults: list[Fault]) -> str:
    """Text of an equation as it was sent, so that positions in it hold; empty, with a fault noted, if unusable."""
    value, path = members.get(name), (name,)
    if name not in members:
        fault = Fault(path, "missing-field", f'"{name}" is missing. Write for example {_EXAMPLES[name]}.')
    elif type(value) is not str:
        fault = wrong_type(value, path, "an equation", _EXAMPLES[name])
    elif not value.strip():
        fault = Fault(path, "empty", f'"{name}" is empty. Write for example {_EXAMPLES[name]}.')
    elif len(value) > MAX_EQUATION_LENGTH:
        detail = f'"{name}" may have {MAX_EQUATION_LENGTH} characters, and has {len(value)}.'
        fault = Fault(path, "too-long", detail)
    else:
        return value
    faults.append(fault)
    return ""


def _medium(value: Any, faults: list[Fault]) -> str:
    meant = _OTHER_MEDIA.get(value.strip().lower()) if type(value) is str else None
    if meant is None:
        return read_choice(value, ("medium",), MEDIA, faults)
    detail = f'"medium" is {shown(value)}, which is called "{meant}" here.'
    faults.append(Fault(("medium",), "not-a-choice", detail))
    return meant


def _notations(members: Mapping[str, Any], faults: list[Fault]) -> frozenset[str] | None:
    if "language" in members:
        read_choice(members["language"], ("language",), LANGUAGES, faults)
    return read_notations(members["notation"], faults) if "notation" in members else None
