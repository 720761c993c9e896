"""A prediction as plain data: what crosses the wire and what ``--json`` prints."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import state_of
from ionwright.chemistry.notation import rendered
from ionwright.chemistry.process import Kind
from ionwright.curricula.aside import Aside
from ionwright.curricula.wording import ions, product, products, sentence_start
from ionwright.teaching.unaided import unaided_reactions

if TYPE_CHECKING:
    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.equation import Equation
    from ionwright.chemistry.process import ElectrodeProcess
    from ionwright.chemistry.species import Species
    from ionwright.curricula.model import Conventions, Remark
    from ionwright.teaching.accounting import Share
    from ionwright.teaching.prediction import ElectrodeAccount, Prediction
    from ionwright.teaching.solution import SolutionAccount

Notations = frozenset[str] | None
DISCHARGED = "discharged"
PASSED_OVER = "passed over"
LEFT_OPEN = "left open"


def prediction_document(prediction: Prediction, notations: Notations = None) -> dict[str, Any]:
    """The prediction as JSON-plain data.

    Parameters
    ----------
    notations
        Which renderings of each equation to give; None for all. ``ascii`` is always there.

    Returns
    -------
    dict
        The wire contract, version 1. Members that do not apply are left out, never null. Parts are shared between
        documents, so treat it as read-only.
    """
    cell, curriculum = prediction.cell, prediction.curriculum
    document: dict[str, Any] = {
        "curriculum": {"id": curriculum.id, "title": curriculum.title},
        "cell": cell_document(cell),
        "assumptions": list(prediction.assumptions),
        "notes": [*cell.electrolyte.notes, *unaided_reactions(cell)],
        "ions": [_ion(present.ion.species, present.source) for present in cell.electrolyte.ions],
        "cathode": _electrode(prediction.cathode, notations, Aside(prediction)),
        "anode": _electrode(prediction.anode, notations, Aside(prediction)),
    }
    accounts = prediction.accounts
    if accounts and prediction.solution:
        combined = accounts.combined
        document["overall_equation"] = rendered(combined.overall, notations)
        document["electron_balance"] = {
            "cathode_multiplier": combined.reduction_multiplier,
            "anode_multiplier": combined.oxidation_multiplier,
            "electrons": combined.electrons,
        }
        document["ratio"] = ratio_of(prediction)
        document["solution"] = _solution(prediction.solution)
    document["cautions"] = [
        {"hazard": caution.hazard, "text": caution.text} for caution in prediction.cautions
    ]
    return document


def ratio_of(prediction: Prediction) -> dict[str, Any]:
    """The ratio in which the products form, as plain data; empty unless both electrodes are decided."""
    accounts = prediction.accounts
    if accounts is None:
        return {}
    return {"moles": _shares(accounts.moles), "gas_volumes": _shares(accounts.gas_volumes)}


def cell_document(cell: Cell) -> dict[str, Any]:
    """A cell as it was understood, as plain data."""
    return {
        "electrolyte": [
            {"formula": d.compound.formula, "name": d.compound.name}
            | ({"concentration": d.concentration.text} if d.concentration else {})
            for d in cell.electrolyte.ingredients
        ],
        "state": cell.electrolyte.state,
        "cathode": {"material": cell.cathode.id, "behaviour": "inert"},
        "anode": {"material": cell.anode.id, "behaviour": cell.anode_behaviour()},
    } | ({"temperature": f"{cell.melt_C:.0f} degC"} if cell.melt_C is not None else {})


@lru_cache(maxsize=1024)
def _ion(kind: Species, source: str) -> dict[str, str]:
    return {
        "formula": kind.ascii,
        "name": IONS[kind].name,
        "source": source,
        "moves_towards": "cathode" if kind.charge > 0 else "anode",
    }


@lru_cache(maxsize=4096)
def _electrode(account: ElectrodeAccount, notations: Notations, aside: Aside[Prediction]) -> dict[str, Any]:
    """One electrode; its account is made for one curriculum and for like cells only, so it decides all of this."""
    prediction, verdict = aside.value, account.verdict
    document: dict[str, Any] = {
        "outcome": verdict.outcome,
        "contested": verdict.is_contested,
        "products": [_product(prediction, account, kind) for kind in account.products],
    }
    if account.half_equation:
        document["half_equation"] = rendered(account.half_equation, notations)
        document["also_written"] = [rendered(half, notations) for half in account.also_written]
    document["also_accepted"] = [_accepted(prediction, remark, notations) for remark in verdict.also_accepted]
    document["competition"] = _competition(prediction, account, notations)
    document["spectators"] = [
        {"formula": kind.ascii, "because": _idle(kind, verdict.competition.electrode)}
        for kind in verdict.spectators
    ]
    document["because"] = list(verdict.because)
    document["observations"] = list(account.observations)
    document["tests"] = [{"product": t.product, "test": t.test, "result": t.result} for t in account.tests]
    return document


def _product(prediction: Prediction, account: ElectrodeAccount, kind: Species) -> dict[str, Any]:
    chosen = account.verdict.chosen
    name = products(chosen) if chosen and chosen.kind is Kind.AMALGAM else product(kind)
    return {
        "formula": kind.ascii,
        "name": name,
        "state": state_of(kind, melt_C=prediction.cell.melt_C),
        "share": 1.0,
    }


def _accepted(prediction: Prediction, remark: Remark, notations: Notations) -> dict[str, Any]:
    return {
        "products": [kind.ascii for kind in remark.process.products],
        "half_equation": _written(prediction, remark.process, notations),
        "because": remark.because,
    }


def _written(prediction: Prediction, process: ElectrodeProcess, notations: Notations) -> dict[str, Any]:
    conventions: Conventions = prediction.curriculum.conventions
    half: Equation = conventions.written(process, prediction.cell.medium)
    return rendered(half, notations)


def _competition(
    prediction: Prediction, account: ElectrodeAccount, notations: Notations
) -> list[dict[str, Any]]:
    """The processes that the course speaks of, in the order of the tables."""
    verdict = account.verdict
    otherwise = PASSED_OVER if verdict.chosen else LEFT_OPEN
    told = {remark.process: (otherwise, remark.because) for remark in verdict.passed_over}
    if verdict.chosen:
        told[verdict.chosen] = (DISCHARGED, " ".join(verdict.because))
    return [
        {
            "half_equation": _written(prediction, process, notations),
            "outcome": told[process][0],
            "because": told[process][1],
        }
        for process in verdict.competition.processes
        if process in told
    ]


def _idle(kind: Species, electrode: str) -> str:
    return (
        f"{sentence_start(ions(kind))} move to the {electrode} but are not discharged from this electrolyte."
    )


def _shares(shares: tuple[Share, ...]) -> list[dict[str, Any]]:
    return [{"formula": share.species.ascii, "value": share.value} for share in shares]


@lru_cache(maxsize=4096)
def _solution(solution: SolutionAccount) -> dict[str, Any]:
    return {
        "ions_removed": [kind.ascii for kind in solution.removed],
        "ions_formed": [kind.ascii for kind in solution.formed],
        "ions_remaining": [kind.ascii for kind in solution.remaining],
        "precipitates": list(solution.precipitates),
        "ph": solution.ph,
        "colour": solution.colour,
        "becomes": solution.becomes,
        "summary": solution.summary,
    }
