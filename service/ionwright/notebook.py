"""The functions a notebook uses: predictions, with the installed curricula, and balanced equations."""

from __future__ import annotations

from functools import cache

from ionwright.chemistry.balancing import Balanced, balance
from ionwright.chemistry.cell import CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.curricula.host import Registry, load_curricula
from ionwright.teaching import Prediction
from ionwright.teaching import predict as predict_cell

__all__ = ["Balanced", "Prediction", "balance", "predict"]


@cache
def _installed() -> Registry:
    return load_curricula()


def predict(  # noqa: PLR0913 - a notebook types them by name
    *electrolyte: str,
    curriculum: str,
    concentration: str | None = None,
    state: str = "aqueous",
    cathode: str = "graphite",
    anode: str = "graphite",
    supply: str = "dc",
    temperature: str | None = None,
    ph: float | None = None,
    current_density: str | None = None,
) -> Prediction:
    """What happens in a cell according to a curriculum.

    Parameters
    ----------
    electrolyte
        Formulas or names; several for a mixture.
    curriculum
        Id of an installed curriculum, such as ``"gcse"``.
    concentration
        Holds for every substance: a quantity, ``"dilute"`` or ``"concentrated"``.
    state, cathode, anode, supply, temperature, ph, current_density
        As in `CellDescription`.

    Raises
    ------
    IonwrightError
        If the cell would not work or cannot be read, or there is no such curriculum.

    Examples
    --------
    >>> bracket = predict("NiSO4", cathode="steel", anode="nickel", curriculum="gcse")
    >>> bracket.cathode.half_equation.ascii
    'Ni^2+ + 2e- -> Ni'
    """
    description = CellDescription(
        electrolyte=tuple(Ingredient(substance, concentration) for substance in electrolyte),
        state=state,
        cathode=cathode,
        anode=anode,
        supply=supply,
        temperature=temperature,
        ph=ph,
        current_density=current_density,
    )
    cell = make_cell(description)
    return predict_cell(cell, _installed()[curriculum])
