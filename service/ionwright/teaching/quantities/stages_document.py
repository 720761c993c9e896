"""The stages of a bath as plain data: what forms until which ion runs out, in charge and in time."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

from ionwright.chemistry.amounts.quantity import Key
from ionwright.chemistry.amounts.values import nominal
from ionwright.chemistry.figures import notations
from ionwright.chemistry.notation import rendered
from ionwright.chemistry.units import read_unit
from ionwright.curricula.wording import ions, product

if TYPE_CHECKING:
    from ionwright.teaching.prediction import ElectrodeAccount
    from ionwright.teaching.quantities.solving import Solved
    from ionwright.teaching.quantities.stages import Stage

__all__ = ["stages_document"]

_FIGURES: Final = 3


def stages_document(solved: Solved, equation_notations: frozenset[str] | None) -> list[dict[str, Any]]:
    """The stages through which the bath of a task goes, in order.

    Parameters
    ----------
    equation_notations
        Which renderings of each half-equation to give; None for all.

    Returns
    -------
    list[dict]
        Each with what forms at both electrodes; with ``until`` and ``runs_out`` if it ends.
    """
    current = solved.worked.values.get(Key("current"))
    amperes = nominal(current.number) if current else None
    return [_stage(stage, amperes, equation_notations) for stage in solved.stages]


def _stage(stage: Stage, amperes: float | None, equation_notations: frozenset[str] | None) -> dict[str, Any]:
    told: dict[str, Any] = {
        "from": _mark(stage.start_C, amperes),
        "cathode": _electrode(stage.prediction.cathode, equation_notations),
        "anode": _electrode(stage.prediction.anode, equation_notations),
    }
    if stage.end_C is not None:
        told["until"] = _mark(stage.end_C, amperes)
        told["runs_out"] = [kind.ascii for kind in stage.runs_out]
    return told | {"summary": _summary(stage, told)}


def _mark(charge_C: float, amperes: float | None) -> dict[str, str]:
    """A moment of the run: the charge that has passed, and the time where the current is known."""
    mark = {"charge": _shown(charge_C, "C")}
    if amperes:
        mark["time"] = _shown(charge_C / amperes, "s")
    return mark


def _shown(value: float, unit: str) -> str:
    return notations(value, _FIGURES, read_unit(unit)).text


def _electrode(account: ElectrodeAccount, equation_notations: frozenset[str] | None) -> dict[str, Any]:
    told: dict[str, Any] = {"products": [kind.ascii for kind in account.products]}
    if account.half_equation is not None:
        told["half_equation"] = rendered(account.half_equation, equation_notations)
    return told


def _summary(stage: Stage, told: dict[str, Any]) -> str:
    forms = " and ".join(
        f"{' and '.join(product(kind) for kind in account.products) or 'what the course leaves open'} at the {name}"
        for name, account in (("cathode", stage.prediction.cathode), ("anode", stage.prediction.anode))
    )
    span = f"From {told['from']['charge']} on" if stage.start_C else "At first"
    if stage.end_C is None:
        return f"{span}: {forms}, as long as the current runs."
    gone = " and ".join(ions(kind) for kind in stage.runs_out)
    return f"{span}: {forms}, until {told['until']['charge']} have passed; then the {gone} have run out."
