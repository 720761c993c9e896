"""The functions a notebook uses: predictions, markings, quantities and plans under the curricula, and equations."""

from __future__ import annotations

from dataclasses import fields
from functools import cache
from typing import TYPE_CHECKING

from ionwright.chemistry.balancing import Balanced, balance
from ionwright.chemistry.cell import CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.faults import QuantityFault
from ionwright.curricula.host import Registry, load_curricula
from ionwright.teaching import Prediction
from ionwright.teaching import predict as predict_cell
from ionwright.teaching.demonstrations import DemonstrationDescription, Plan, aim_of, plan_demonstration
from ionwright.teaching.half_equations import Combination
from ionwright.teaching.half_equations import combine_half_equations as combine
from ionwright.teaching.marking import Marking, MarkingFault, electrode_expectation, given_expectation
from ionwright.teaching.marking import check as check_line
from ionwright.teaching.quantities import (
    AskedQuantity,
    ProcessDescription,
    Solved,
    StatedQuantity,
    TaskConventions,
    TaskDescription,
    solve_task,
)
from ionwright.teaching.quantities.reading import STATED_CONSTANTS

if TYPE_CHECKING:
    from collections.abc import Mapping

_BENCH = tuple(
    one.name for one in fields(DemonstrationDescription) if one.name not in ("cell", "aims", "conventions")
)

__all__ = [
    "Balanced",
    "Combination",
    "Marking",
    "Plan",
    "Prediction",
    "Solved",
    "balance",
    "check",
    "combine",
    "demonstration",
    "faraday",
    "predict",
]


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


def faraday(  # noqa: PLR0913 - a notebook types them by name
    half_equation: str | Mapping[str, str] = "",
    *,
    find: str | tuple[str, ...],
    curriculum: str,
    metal: str = "",
    given: Mapping[str, str] | None = None,
    conventions: Mapping[str, str] | None = None,
    figures: int | None = None,
    over_water: bool = False,
    **known: str,
) -> Solved:
    """Any quantity of an electrolysis from any others; printed, the working and the answers.

    Parameters
    ----------
    half_equation
        What runs; for several in one circuit, half-equations by a name of your own.
    find
        What is asked for, such as ``"mass of Ni in mg"``, or several.
    curriculum
        Id of an installed curriculum, whose constants count.
    metal
        In place of a half-equation: a metal whose ion has an unknown charge, or a letter such as ``"X"``.
    given
        Known quantities whose names are phrases: ``{"mass of Ag at silver cell": "2.16 g"}``.
    conventions
        What counts in place of what the course prints: ``{"faraday_constant": "96485 C/mol", "Ni": "58.7"}``.
    figures
        Significant figures of the answers; None for as many as what is known deserves.
    over_water
        Whether gases are collected over water.
    known
        Known quantities by their names: ``current="0.50 A"``.

    Raises
    ------
    IonwrightError
        If the task cannot be read, contradicts itself or leaves the answer open, or there is no such curriculum.

    Examples
    --------
    >>> nickel = faraday(
    ...     "Ni^2+ + 2e- -> Ni", find="mass", curriculum="a-level", current="0.50 A", time="20 min"
    ... )
    >>> print(nickel.answers[0].rendered.text)
    0.18 g
    """
    stated = {**(given or {}), **known}
    task = TaskDescription(
        processes=_processes(half_equation, metal),
        known=tuple(StatedQuantity(name, value, where=name) for name, value in stated.items()),
        find=tuple(
            AskedQuantity(text, where="find") for text in ((find,) if isinstance(find, str) else find)
        ),
        conventions=_stated(conventions, figures, over_water=over_water),
    )
    return solve_task(task, _installed()[curriculum])


def demonstration(  # noqa: PLR0913 - a notebook types them by name
    *electrolyte: str,
    see: str | tuple[str, ...],
    curriculum: str,
    concentration: str | None = None,
    state: str = "aqueous",
    cathode: str = "graphite",
    anode: str = "graphite",
    temperature: str | None = None,
    ph: float | None = None,
    conventions: Mapping[str, str] | None = None,
    figures: int | None = None,
    over_water: bool = False,
    **bench: str,
) -> Plan:
    """The plan of a demonstration; printed, in brief. It is no risk assessment: local rules come first.

    Parameters
    ----------
    electrolyte
        Formulas or names; several for a mixture.
    see
        What should be seen, such as ``"10 cm3 of H2"``, ``"2 um of Ni"`` or ``"visible"``; or several.
    curriculum
        Id of an installed curriculum, such as ``"gcse"``.
    concentration, state, cathode, anode, temperature, ph
        As for `predict`.
    conventions, figures, over_water
        As for `faraday`.
    bench
        What bench, room and lesson allow, as in `DemonstrationDescription`: ``within="20 min"``,
        ``cathode_area="25 cm2"``, ``room_volume="180 m3"``.

    Raises
    ------
    IonwrightError
        If the cell would not work or does not give what should be seen, a quantity cannot be, or there is no such
        curriculum.

    Examples
    --------
    >>> plan = demonstration(
    ...     "H2SO4", see="10 cm3 of H2", concentration="0.5 mol/dm3", within="20 min", curriculum="gcse"
    ... )
    >>> print(plan.venue.word, plan.choice.recommended.current.text, plan.choice.recommended.time.text, sep="; ")
    open bench with ventilation; 0.15 A; 8.93 min
    """
    unknown = next((name for name in bench if name not in _BENCH), None)
    if unknown:
        raise QuantityFault(
            "unknown-quantity",
            f'"{unknown}" is nothing that a plan asks of bench, room or lesson.',
            where=unknown,
            remedy=f"Use one of these: {', '.join(_BENCH)}.",
        )
    cell = CellDescription(
        electrolyte=tuple(Ingredient(substance, concentration) for substance in electrolyte),
        state=state,
        cathode=cathode,
        anode=anode,
        temperature=temperature,
        ph=ph,
    )
    make_cell(cell)  # faults of a cell come before an unknown curriculum
    description = DemonstrationDescription(
        cell=cell,
        aims=tuple(aim_of(text, "see") for text in ((see,) if isinstance(see, str) else see)),
        conventions=_stated(conventions, figures, over_water=over_water),
        **bench,
    )
    return plan_demonstration(description, _installed()[curriculum])


def _stated(
    conventions: Mapping[str, str] | None, figures: int | None, *, over_water: bool
) -> TaskConventions:
    own = conventions or {}
    return TaskConventions(
        constants=tuple((name, text) for name, text in own.items() if name in STATED_CONSTANTS),
        relative_atomic_masses=tuple(
            (name, text) for name, text in own.items() if name not in STATED_CONSTANTS
        ),
        significant_figures=figures,
        gas_collected="over water" if over_water else "",
    )


def _processes(half_equation: str | Mapping[str, str], metal: str) -> tuple[ProcessDescription, ...]:
    if bool(half_equation) == bool(metal):
        raise QuantityFault(
            "needs-more",
            "It is not clear what runs.",
            remedy="Name a half-equation, several by their names, or a metal.",
        )
    if metal:
        return (ProcessDescription(id="process", metal=metal, where="metal"),)
    if isinstance(half_equation, str):
        return (ProcessDescription(id="process", half_equation=half_equation, where="half_equation"),)
    return tuple(
        ProcessDescription(id=name, half_equation=text, where=name) for name, text in half_equation.items()
    )
