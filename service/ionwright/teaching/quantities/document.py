"""The answers to a task about amounts as plain data: what crosses the wire and what ``--json`` prints."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

from ionwright.chemistry.amounts.quantity import CONSTANTS_OF_NATURE, QUANTITIES, Key
from ionwright.chemistry.amounts.unknown_metal import substance, substance_text
from ionwright.chemistry.medium import state_of
from ionwright.chemistry.notation import rendered
from ionwright.teaching.document import ratio_of
from ionwright.teaching.quantities.stages_document import stages_document

if TYPE_CHECKING:
    from collections.abc import Iterator

    from ionwright.teaching.quantities.answers import Answer
    from ionwright.teaching.quantities.solving import Solved

__all__ = ["quantities_document"]

_PUBLIC_NAMES: Final = {
    "solid_volume": "volume",
    "useful_charge": "charge",
    "electrons_used": "amount_of_electrons",
}
_FROM_COURSES: Final = (*CONSTANTS_OF_NATURE, "molar_gas_volume")


def quantities_document(solved: Solved, equation_notations: frozenset[str] | None = None) -> dict[str, Any]:
    """The answers as JSON-plain data.

    Parameters
    ----------
    equation_notations
        Which renderings of each half-equation to give; None for all. ``ascii`` is always there.

    Returns
    -------
    dict
        The wire contract, version 1. Members that do not apply are left out, never null.
    """
    worked = solved.worked
    document: dict[str, Any] = {
        "curriculum": {"id": solved.curriculum.id, "title": solved.curriculum.title},
        "processes": [
            {"id": process.id}
            | (
                {}
                if process.has_unknown_charge
                else {"half_equation": rendered(process.half, equation_notations)}
            )
            for process in worked.task.circuit.processes
        ],
        "found": [_found(solved, answer) for answer in solved.answers],
        "working": [
            {
                "sentence": step.sentence,
                "text": step.equation.text,
                "html": step.equation.html,
                "latex": step.equation.latex,
            }
            for step in solved.steps
        ],
        "conventions": _conventions(solved),
        "assumptions": list(dict.fromkeys(_assumptions(solved))),
    }
    ratios = [ratio_of(prediction) for _, prediction in solved.made.predictions]
    if len(ratios) == 1 and ratios[0]:
        document["ratio"] = ratios[0]
    if solved.stages:
        document["stages"] = stages_document(solved, equation_notations)
    return document


def _found(solved: Solved, answer: Answer) -> dict[str, Any]:
    key = answer.key
    entry: dict[str, Any] = {"quantity": _PUBLIC_NAMES.get(key.kind, key.kind)}
    if key.of:
        entry["of"] = key.of
    if key.process and len(solved.worked.task.circuit.processes) > 1:
        entry["process"] = key.process
    entry |= {
        "value": answer.value,
        "unit": answer.unit.symbol,
        "significant_figures": answer.figures,
        "text": answer.rendered.text,
        "html": answer.rendered.html,
        "latex": answer.rendered.latex,
    }
    if answer.uncertainty is not None:
        entry["uncertainty"] = answer.uncertainty
    if answer.before_rounding is not None:
        entry["before_rounding"] = answer.before_rounding
    return entry


def _used(solved: Solved) -> set[Key]:
    """Every quantity on which the answers rest."""
    values = solved.worked.values
    found: set[Key] = set()
    open_ = [key for _, key in solved.worked.answers]
    while open_:
        key = open_.pop()
        if key not in found:
            found.add(key)
            open_ += values[key].inputs
    return found


def _conventions(solved: Solved) -> dict[str, Any]:
    """The constants that were used, as they were printed or stated."""
    used, written = _used(solved), solved.worked.knowns.written
    told: dict[str, Any] = {
        name: written[Key(name)].text for name in _FROM_COURSES if Key(name) in used and Key(name) in written
    }
    knowns = solved.worked.knowns
    parts = [made_of for key, made_of in knowns.molar_masses.items() if key in used]
    parts += [by_mass.parts for key, by_mass in knowns.by_mass.items() if key in used]
    masses = {symbol: mass for made_of in parts for symbol, _, mass in made_of}
    if masses:
        told["relative_atomic_masses"] = masses
    if any(key.kind == "volume" for key in used):
        told["gas_collected"] = "over water" if solved.worked.task.circuit.is_over_water else "dry"
    return told


def _assumptions(solved: Solved) -> Iterator[str]:
    used = _used(solved)
    yield from (sentence for key, sentence in solved.worked.knowns.assumptions if key in used)
    yield from _about_constants(solved)
    for key in sorted(used):
        if key.kind == "volume" and key.of and state_of(substance(key.of)) != "g":
            name = substance_text(key.of)
            yield f"{name} is no gas at room temperature: the volume is that of its vapour, reckoned as if it were one."
    if any(answer.uncertainty is not None for answer in solved.answers):
        yield "Uncertainties count as standard uncertainties that do not depend on each other."
    for answer in solved.answers:
        if answer.is_doubtful:
            yield f"The figures give {answer.before_rounding:.3g} charges, which is no whole number: check them."
    for _, prediction in solved.made.predictions:
        yield from prediction.assumptions
        for name, account in (("cathode", prediction.cathode), ("anode", prediction.anode)):
            if account.verdict.is_contested:
                yield f"Courses differ on the {name} of this cell; the amounts are those of the half-equation shown."


def _about_constants(solved: Solved) -> Iterator[str]:
    """What is to be said of the constants that were used and that the task does not state."""
    printed, title = solved.curriculum.conventions.constants, solved.curriculum.title
    used, worked = _used(solved), solved.worked
    for name in _FROM_COURSES:
        key = Key(name)
        is_from_elsewhere = key in worked.given or name in worked.task.constants.stated
        if key not in used or is_from_elsewhere or key not in worked.knowns.written:
            continue
        if not getattr(printed, name):
            yield f"{title} prints no {QUANTITIES[name].noun}; the figure of the tables is used."
        elif name == "molar_gas_volume" and printed.gas_conditions:
            yield f"Gas volumes are those at {printed.gas_conditions.replace(' degC', ' °C')}."
