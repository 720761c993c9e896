"""The functions a notebook uses: predictions and markings under the installed curricula, and balanced equations."""

from __future__ import annotations

from functools import cache

from ionwright.chemistry.balancing import Balanced, balance
from ionwright.chemistry.cell import CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.curricula.host import Registry, load_curricula
from ionwright.teaching import Prediction
from ionwright.teaching import predict as predict_cell
from ionwright.teaching.half_equations import Combination
from ionwright.teaching.half_equations import combine_half_equations as combine
from ionwright.teaching.marking import Marking, MarkingFault, electrode_expectation, given_expectation
from ionwright.teaching.marking import check as check_line

__all__ = ["Balanced", "Combination", "Marking", "Prediction", "balance", "check", "combine", "predict"]


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


def check(  # noqa: PLR0913 - a notebook types them by name
    answer: str,
    *electrolyte: str,
    curriculum: str,
    electrode: str = "",
    expected: str | tuple[str, ...] = (),
    written_as: str = "",
    state_symbols: bool = False,
    concentration: str | None = None,
    state: str = "aqueous",
    cathode: str = "graphite",
    anode: str = "graphite",
) -> Marking:
    """Mark a student's line against an electrode of a cell, or against a half-equation that is right.

    Parameters
    ----------
    answer
        Whatever the student typed.
    electrolyte
        Formulas or names; several for a mixture; none if a half-equation is expected.
    curriculum
        Id of an installed curriculum, such as ``"gcse"``.
    electrode
        ``"cathode"`` or ``"anode"``: the one that was asked about.
    expected
        A half-equation that is right, or several, in place of a cell.
    written_as
        ``"reduction"`` or ``"oxidation"`` if the task asks for one whichever way the process runs.
    state_symbols
        Whether the task asks for state symbols.
    concentration, state, cathode, anode
        As for `predict`.

    Raises
    ------
    IonwrightError
        If the question cannot be asked; a wrong or unreadable answer has its verdict.

    Examples
    --------
    >>> marking = check("Ni2+ + e- -> Ni", expected="Ni^2+ + 2e- -> Ni", curriculum="gcse")
    >>> marking.verdict, marking.awarded, [fault.code for fault in marking.faults]
    ('incorrect', 1, ['wrong-electron-count'])
    """
    if bool(electrolyte) == bool(expected) or bool(electrolyte) != (electrode in ("cathode", "anode")):
        raise MarkingFault(
            "question-missing",
            "It is not clear what was asked.",
            remedy='Name an electrolyte and electrode="cathode" or "anode", or else what is expected.',
        )
    if expected:
        forms = (expected,) if isinstance(expected, str) else expected
        return check_line(
            answer, given_expectation(forms, _installed()[curriculum], states_asked=state_symbols)
        )
    cell = CellDescription(
        electrolyte=tuple(Ingredient(substance, concentration) for substance in electrolyte),
        state=state,
        cathode=cathode,
        anode=anode,
    )
    make_cell(cell)  # faults of a cell come before an unknown curriculum
    expectation = electrode_expectation(
        cell, electrode, _installed()[curriculum], written_as=written_as, states_asked=state_symbols
    )
    return check_line(answer, expectation)
