"""A balanced or combined equation as plain data: what crosses the wire and what ``--json`` prints."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from ionwright.chemistry.notation import rendered, rendered_as_read, species_text
from ionwright.teaching.board import board_steps, combination_steps, signed

if TYPE_CHECKING:
    from ionwright.chemistry.balancing import Balanced, Remark
    from ionwright.chemistry.oxidation_change import NumberInEquation
    from ionwright.chemistry.stoichiometry import Equation
    from ionwright.teaching.board import Step
    from ionwright.teaching.half_equations import Combination

__all__ = ["balance_document", "combination_document"]

Notations = frozenset[str] | None

_SENTENCES = {
    "taken-as-acidic": "No medium was given, so the solution was taken to be acidic.",
    "taken-as-alkaline": "No medium was given; OH⁻ stands in the equation, so the solution was taken to be alkaline.",
    "numbers-given-were-used": (
        "Several equations balance with these species. The numbers that were given settled which of them is meant."
    ),
    "as-in-the-table": (
        "Several equations balance with these species. This is the couple that the table of standard potentials has."
    ),
    "electrons-cancel": (
        "The electrons cancel: this is a whole redox equation, not a half-equation, since one part is reduced and"
        " another oxidised."
    ),
    "nothing-is-oxidised": (
        "No electrons are needed: this is not a half-equation, since no oxidation number changes."
    ),
    "not-in-this-medium": "{} was left out, since a solution of this kind holds next to none; water stands in for it.",
    "on-both-sides": "{} was given on both sides; what is common to both sides is cancelled.",
}


def balance_document(balanced: Balanced, notations: Notations = None) -> dict[str, Any]:
    """The answer to a skeleton as JSON-plain data.

    Parameters
    ----------
    balanced
        The balanced equation.
    notations
        Which renderings of each equation to give; None for all. ``ascii`` is always there.

    Returns
    -------
    dict
        The wire contract, version 1. Members that do not apply are left out, never null.
    """
    document: dict[str, Any] = {
        "half_equation": rendered(balanced.equation, notations),
        "kind": balanced.kind,
        "electrons": balanced.electrons,
    }
    if balanced.side:
        document["side"] = balanced.side
    document["medium"] = balanced.skeleton.medium
    document["reading"] = rendered_as_read(balanced.skeleton.given, notations)
    document["steps"] = _steps(board_steps(balanced), notations)
    document["oxidation_numbers"] = [_number(found) for found in balanced.oxidation_numbers]
    if halves := balanced.halves:
        document["halves"] = {
            "reduction": _half(halves.reduction, halves.reduction_multiplier, notations),
            "oxidation": _half(halves.oxidation, halves.oxidation_multiplier, notations),
            "electrons": halves.electrons,
        }
    document["notes"] = [_sentence(remark) for remark in balanced.remarks]
    return document


def combination_document(combination: Combination, notations: Notations = None) -> dict[str, Any]:
    """Two half-equations and their sum as JSON-plain data.

    Parameters
    ----------
    combination
        The half-equations as they were read, and what they add up to.
    notations
        As for `balance_document`.
    """
    combined = combination.combined
    reduction, oxidation = combination.reduction, combination.oxidation
    return {
        "oxidation": _half(oxidation, combined.oxidation_multiplier, notations),
        "reduction": _half(reduction, combined.reduction_multiplier, notations),
        "electrons": combined.electrons,
        "overall_equation": rendered(combined.overall, notations),
        "steps": _steps(combination_steps(reduction, oxidation, combined), notations),
        "notes": [_TRANSFER] if combined.is_transfer else [],
    }


_TRANSFER = (
    "Everything cancels: what leaves the one electrode arrives at the other. The overall equation shows it on both"
    " sides."
)


def _steps(steps: tuple[Step, ...], notations: Notations) -> list[dict[str, Any]]:
    return [{"text": step.text, "equation": rendered_as_read(step.equation, notations)} for step in steps]


def _half(half: Equation, multiplier: int, notations: Notations) -> dict[str, Any]:
    return {"half_equation": rendered(half, notations), "multiplier": multiplier}


def _number(found: NumberInEquation) -> dict[str, Any]:
    number, value = found.number, found.number.value
    entry: dict[str, Any] = {
        "element": number.element,
        "species": found.species.ascii,
        "side": found.side,
        "atoms": number.atoms,
    }
    if value is not None:
        entry["value"] = int(value) if value.denominator == 1 else str(value)
        entry["text"] = signed(value)
        entry["is_average"] = number.is_average
    else:
        entry["text"] = "not decided"
        entry["because"] = number.because
    if found.changes is not None:
        entry["changes"] = found.changes
    return entry


def _sentence(remark: Remark) -> str:
    kinds = [species_text(kind) for kind in remark.species]
    named = kinds[0] if len(kinds) == 1 else f"{', '.join(kinds[:-1])} and {kinds[-1]}" if kinds else ""
    text = _SENTENCES[remark.code].format(named)
    return text.replace(" was ", " were ", 1) if len(kinds) > 1 else text
