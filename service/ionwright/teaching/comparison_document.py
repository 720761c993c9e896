"""A comparison as plain data: what crosses the wire and what ``--json`` prints."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, TypeVar

from ionwright.chemistry.medium import state_of
from ionwright.chemistry.notation import rendered
from ionwright.chemistry.process import Kind
from ionwright.curricula.verdict import DECIDED, NOT_DECIDABLE
from ionwright.curricula.wording import product, sentence_start
from ionwright.teaching.comparison import accepts
from ionwright.teaching.document import cell_document
from ionwright.teaching.unaided import unaided_reactions

if TYPE_CHECKING:
    from collections.abc import Hashable, Iterable

    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.equation import Equation
    from ionwright.curricula.model import Curriculum
    from ionwright.teaching.comparison import (
        Comparison,
        Difference,
        ElectrodeComparison,
        Group,
        Parting,
        Standing,
    )
    from ionwright.teaching.document import Notations

Value = TypeVar("Value", bound="Hashable")
_MOST_NAMED = 4
_STATE_SYMBOLS = {
    "asked": "State symbols count where a task asks for them.",
    "required": "State symbols are required.",
    "not-used": "State symbols are not used.",
}
_MINUS = {
    True: "Electrons subtracted on the left are accepted in an oxidation.",
    False: "Electrons stand on the right in an oxidation; subtracted on the left they are not accepted.",
}


def comparison_document(comparison: Comparison, notations: Notations = None) -> dict[str, Any]:
    """The comparison as JSON-plain data.

    Parameters
    ----------
    notations
        Which renderings of each equation to give; None for all. ``ascii`` is always there.

    Returns
    -------
    dict
        The wire contract, version 1. Members that do not apply are left out, never null.
    """
    cell = comparison.cell
    document = {
        "curricula": [{"id": one.id, "title": one.title} for one in comparison.curricula],
        "cell": cell_document(cell),
        "assumptions": _assumptions(comparison),
        "notes": [*cell.electrolyte.notes, *unaided_reactions(cell)],
        "cathode": _electrode(comparison.cathode, cell, notations),
        "anode": _electrode(comparison.anode, cell, notations),
        "conventions": _conventions(comparison.curricula),
    }
    if comparison.set_aside:
        document["set_aside"] = [
            {"curriculum": curriculum.id, "reason": reason} for curriculum, reason in comparison.set_aside
        ]
    return document


def by_value(pairs: Iterable[tuple[str, Value]]) -> list[tuple[Value, list[str]]]:
    """The values in the order in which they are met, each with the ids of the curricula that have it."""
    found: dict[Value, list[str]] = {}
    for curriculum_id, value in pairs:
        found.setdefault(value, []).append(curriculum_id)
    return list(found.items())


def _assumptions(comparison: Comparison) -> list[dict[str, Any]]:
    """Everything that was assumed, each with the curricula under which it was."""
    everyone = [curriculum.id for curriculum in comparison.curricula]
    of_cell = [{"curricula": everyone, "text": text} for text in comparison.cell.assumptions]
    told = dict.fromkeys(
        (standing.curriculum.id, text)
        for side in (comparison.cathode, comparison.anode)
        for group in side.groups
        for standing in group.standings
        for text in standing.verdict.assumptions
    )
    return of_cell + [{"curricula": ids, "text": text} for text, ids in by_value(told)]


def _electrode(side: ElectrodeComparison, cell: Cell, notations: Notations) -> dict[str, Any]:
    return {
        "agreed": len(side.groups) == 1,
        "summary": _summary(side),
        "groups": [_group(group, cell, notations) for group in side.groups],
        "differences": [_difference(difference) for difference in side.differences],
    }


def _summary(side: ElectrodeComparison) -> str:
    """Who answers what, in one sentence."""
    if not side.groups:
        return "No course could be asked."
    if len(side.groups) == 1:
        group = side.groups[0]
        titles = [standing.curriculum.title for standing in group.standings]
        who = {1: titles[0], 2: "Both courses"}.get(len(titles), f"All {len(titles)} courses")
        return f"{who}: {group.answer.text}."
    parts = [f"{group.answer.text} ({_who(group)})" for group in side.groups]
    return f"{sentence_start('; '.join(parts))}."


def _who(group: Group) -> str:
    titles = [standing.curriculum.title for standing in group.standings]
    if len(titles) > _MOST_NAMED:
        titles[_MOST_NAMED - 1 :] = [f"and {len(titles) - _MOST_NAMED + 1} more"]
    return ", ".join(titles)


def _group(group: Group, cell: Cell, notations: Notations) -> dict[str, Any]:
    standings = group.standings
    document: dict[str, Any] = {
        "curricula": [standing.curriculum.id for standing in standings],
        "outcome": DECIDED if group.process else NOT_DECIDABLE,
        "products": _products(group, cell),
    }
    if group.process:
        halves = by_value((s.curriculum.id, s.half_equation) for s in standings if s.half_equation)
        document["half_equations"] = _equations(halves, notations)
        also = [(s.curriculum.id, half) for s in standings for half in s.also_written]
        document["also_written"] = _equations(by_value(also), notations)
    document["contested"] = [s.curriculum.id for s in standings if s.verdict.is_contested]
    document["also_accepted"] = _also_accepted(standings, cell, notations)
    document["reasons"] = [
        {"curricula": ids, "rule": rule, "because": list(because)}
        for (rule, because), ids in by_value((s.curriculum.id, _reason(s)) for s in standings)
    ]
    return document


def _reason(standing: Standing) -> tuple[str, tuple[str, ...]]:
    """The rule that settled it, and the reasons of all the rules up to it."""
    verdict = standing.verdict
    return (verdict.trace[-1].rule.sentence if verdict.trace else ""), verdict.because


def _products(group: Group, cell: Cell) -> list[dict[str, Any]]:
    process = group.process
    if process is None:
        return []
    return [
        {
            "formula": kind.ascii,
            "name": group.answer.text if process.kind is Kind.AMALGAM else product(kind),
            "state": state_of(kind, melt_C=cell.melt_C),
        }
        for kind in process.products
    ]


def _equations(halves: Iterable[tuple[Equation, list[str]]], notations: Notations) -> list[dict[str, Any]]:
    return [{"curricula": ids, "half_equation": rendered(half, notations)} for half, ids in halves]


def _also_accepted(standings: Iterable[Standing], cell: Cell, notations: Notations) -> list[dict[str, Any]]:
    told = by_value(
        (s.curriculum.id, (s.curriculum.conventions.written(remark.process, cell.medium), remark))
        for s in standings
        for remark in s.verdict.also_accepted
    )
    return [
        {
            "curricula": ids,
            "products": [kind.ascii for kind in remark.process.products],
            "half_equation": rendered(half, notations),
            "because": remark.because,
        }
        for (half, remark), ids in told
    ]


def _difference(difference: Difference) -> dict[str, Any]:
    first, second = difference.groups
    accepted = [
        s.curriculum.id
        for group, other in ((first, second), (second, first))
        for s in group.standings
        if accepts(s.verdict, other.answer)
    ]
    return {
        "between": [_side(*side) for side in zip(difference.groups, difference.partings, strict=True)],
        "accepted_across": sorted(accepted),
    }


def _side(group: Group, partings: Iterable[Parting]) -> dict[str, Any]:
    ids = (standing.curriculum.id for standing in group.standings)
    return {
        "answer": group.answer.text,
        "rules": [
            {
                "curricula": members,
                "rule": parting.rule,
                "effect": parting.effect,
                "because": list(parting.because),
            }
            for parting, members in by_value(zip(ids, partings, strict=True))
        ],
    }


def _conventions(curricula: Iterable[Curriculum]) -> list[dict[str, Any]]:
    """Ways of writing in which the courses differ; those that they share are left out."""
    courses = list(curricula)
    states = by_value((one.id, one.conventions.state_symbols) for one in courses)
    minus = by_value((one.id, one.conventions.oxidation_also_minus) for one in courses)
    found = {
        "state symbols": [(_STATE_SYMBOLS.get(value, value), ids) for value, ids in states],
        "electrons subtracted": [(_MINUS[value], ids) for value, ids in minus],
    }
    return [
        {"about": about, "readings": [{"curricula": ids, "text": text} for text, ids in readings]}
        for about, readings in found.items()
        if len(readings) > 1
    ]
