"""The plan of a demonstration as plain data: what crosses the wire and what ``--json`` prints."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from ionwright.chemistry.notation import rendered
from ionwright.chemistry.species import species
from ionwright.curricula.wording import product

if TYPE_CHECKING:
    from collections.abc import Iterator

    from ionwright.chemistry.exposure import Limit
    from ionwright.teaching.demonstrations.air import FlammableGas, GasInRoom, InAir
    from ionwright.teaching.demonstrations.bath import BathUse
    from ionwright.teaching.demonstrations.currents import CurrentChoice, CurrentRow
    from ionwright.teaching.demonstrations.measure import Measure
    from ionwright.teaching.demonstrations.plan import Plan, PlannedAim
    from ionwright.teaching.demonstrations.turnover import Turnover
    from ionwright.teaching.prediction import ElectrodeAccount

__all__ = ["demonstration_document"]


def demonstration_document(plan: Plan, equation_notations: frozenset[str] | None = None) -> dict[str, Any]:
    """The plan as JSON-plain data.

    Parameters
    ----------
    equation_notations
        Which renderings of each equation to give; None for all. ``ascii`` is always there.

    Returns
    -------
    dict
        The wire contract, version 1. Members that do not apply are left out, never null.
    """
    document: dict[str, Any] = {
        "curriculum": {"id": plan.curriculum.id, "title": plan.curriculum.title},
        "verdict": {"where": plan.venue.word, "reasons": list(plan.venue.reasons)},
        "aims": [_aim(aim) for aim in plan.aims],
        "charge": _measure(plan.charge),
        "is_met": plan.is_met,
        **_choice(plan.choice),
        "half_equations": _half_equations(plan, equation_notations),
        "formed": [_turnover(one) for one in plan.formed],
        "used_up": [_turnover(one) for one in plan.used],
    }
    if plan.prediction.accounts is not None:
        overall = plan.prediction.accounts.combined.overall
        document["overall_equation"] = rendered(overall, equation_notations)
    if plan.total_gas is not None:
        document["total_gas"] = _measure(plan.total_gas)
    document |= {
        "observations": {name: list(account.observations) for name, account in _decided(plan)},
        "tests": [
            {"product": test.product, "test": test.test, "result": test.result}
            for _, account in _decided(plan)
            for test in account.tests
        ],
        "preparation": list(plan.preparation),
        "bath": [_bath(use) for use in plan.baths],
        "bath_note": plan.bath_note,
        "toxic_gases": [_toxic(gas) for gas in plan.toxic],
        "flammable_gases": [_flammable(gas) for gas in plan.flammable],
        "cautions": [{"hazard": one.hazard, "text": one.text} for one in plan.prediction.cautions],
        "doubts": list(plan.doubts),
        "assumptions": list(plan.assumptions),
        "rules_of_thumb": list(plan.rules),
        "working": [
            {
                "sentence": step.sentence,
                "text": step.equation.text,
                "html": step.equation.html,
                "latex": step.equation.latex,
            }
            for step in plan.working
        ],
    }
    return document


def _measure(measure: Measure) -> dict[str, Any]:
    shown = measure.rendered
    return {
        "value": measure.value,
        "unit": measure.unit.symbol,
        "significant_figures": measure.figures,
        "text": shown.text,
        "html": shown.html,
        "latex": shown.latex,
    }


def _aim(aim: PlannedAim) -> dict[str, Any]:
    told: dict[str, Any] = {
        "quantity": aim.quantity,
        "of": aim.of,
        "name": product(species(aim.of)),
        "electrode": aim.electrode,
        "size": _measure(aim.size),
        "charge": _measure(aim.charge),
        "decides": aim.decides,
    }
    return told | ({"rule_of_thumb": aim.rule} if aim.rule else {})


def _choice(choice: CurrentChoice) -> dict[str, Any]:
    told: dict[str, Any] = {
        "recommended": _row(choice.recommended),
        "because": choice.because,
        "currents": [_row(row) for row in choice.rows],
        "lowest_current": _measure(choice.lowest),
        "highest_current": _measure(choice.highest) | {"because": choice.highest_because},
    }
    if choice.shortfall is not None:
        told["shortfall"] = {
            "reached": _measure(choice.shortfall.reached),
            "missing_time": _measure(choice.shortfall.missing_time),
            "needed_current": _measure(choice.shortfall.needed_current),
            "text": choice.shortfall.says,
        }
    return told


def _row(row: CurrentRow) -> dict[str, Any]:
    return {
        "current": _measure(row.current),
        "time": _measure(row.time),
        "current_densities": {electrode: _measure(density) for electrode, density in row.densities.items()},
        "fits": row.fits,
        "because": row.because,
    }


def _half_equations(plan: Plan, notations: frozenset[str] | None) -> dict[str, Any]:
    return {
        name: rendered(account.half_equation, notations)
        for name, account in _decided(plan)
        if account.half_equation is not None
    }


def _decided(plan: Plan) -> Iterator[tuple[str, ElectrodeAccount]]:
    """The electrodes that the course decides."""
    for name, account in (("cathode", plan.prediction.cathode), ("anode", plan.prediction.anode)):
        if account.half_equation is not None:
            yield name, account


def _turnover(one: Turnover) -> dict[str, Any]:
    told: dict[str, Any] = {
        "of": one.of,
        "electrode": one.electrode,
        "state": one.state,
        "amount": _measure(one.amount),
        "mass": _measure(one.mass),
    }
    return told | ({"volume": _measure(one.volume)} if one.volume is not None else {})


def _bath(use: BathUse) -> dict[str, Any]:
    parts = (
        ("needed_concentration", use.needed_concentration),
        ("needed_volume", use.needed_volume),
        ("share_used", use.share),
        ("runs_out_after", use.runs_out_after),
    )
    told: dict[str, Any] = {
        "of": use.of,
        "used": _measure(use.used),
        "needed_amount": _measure(use.needed_amount),
    }
    told |= {name: _measure(measure) for name, measure in parts if measure is not None}
    if use.is_enough is not None:
        told["is_enough"] = use.is_enough
    return told | {"text": use.says}


def _toxic(gas: GasInRoom) -> dict[str, Any]:
    told: dict[str, Any] = {
        "of": gas.of,
        "name": product(species(gas.of)),
        "is_certain": gas.is_certain,
        "strictest_limit": _limit(gas.limit),
        "limits": [_limit(limit) for limit in gas.limits],
        "evenly_mixed": _in_air(gas.evenly_mixed),
    }
    if gas.at_peak is not None:
        told["peak_with_ventilation"] = _in_air(gas.at_peak)
    return told | {"air_to_limit": _measure(gas.air_to_limit), "text": gas.says}


def _limit(limit: Limit) -> dict[str, Any]:
    told: dict[str, Any] = {
        "jurisdiction": limit.jurisdiction,
        "kind": limit.kind,
        "text": limit.printed,
        "mg_m3": limit.mg_m3,
        "verified": limit.verified,
    }
    return told | ({"ppm": limit.ppm} if limit.ppm is not None else {})


def _in_air(air: InAir) -> dict[str, Any]:
    return {"ppm": _measure(air.ppm), "mass": _measure(air.mg_m3), "times_limit": air.times_limit}


def _flammable(gas: FlammableGas) -> dict[str, Any]:
    return {
        "of": gas.of,
        "name": product(species(gas.of)),
        "lower_explosive_limit": _measure(gas.lower_limit),
        "evenly_mixed": _measure(gas.evenly_mixed),
        "air_to_limit": _measure(gas.air_to_limit),
        "text": gas.says,
    }
