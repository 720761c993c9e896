"""A prediction: the verdict at both electrodes plus everything a teacher says about the cell."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from ionwright.chemistry.cell import Cell, CellDescription, make_cell
from ionwright.chemistry.process import Kind
from ionwright.curricula.aside import Aside
from ionwright.curricula.verdict import Verdict, judge, judge_afresh
from ionwright.teaching.accounting import Accounts, account
from ionwright.teaching.caution import Caution, cautions
from ionwright.teaching.observation import ProductTest, gas_volume_remark, observations, product_tests
from ionwright.teaching.solution import SolutionAccount, solution_account

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.chemistry.equation import Equation
    from ionwright.chemistry.species import Species
    from ionwright.curricula.model import Curriculum


@dataclass(frozen=True, slots=True, eq=False)
class ElectrodeAccount:
    """All that is said of one electrode; compared by identity.

    Parameters
    ----------
    verdict
        What the curriculum says and why.
    half_equation
        In the form the curriculum prefers; None if it cannot decide.
    also_written
        The other forms that it accepts.
    observations
        What is seen, as sentences.
    tests
        How the products are tested.
    """

    verdict: Verdict
    half_equation: Equation | None
    also_written: tuple[Equation, ...]
    observations: tuple[str, ...]
    tests: tuple[ProductTest, ...]

    @property
    def products(self) -> tuple[Species, ...]:
        """What forms; empty if the curriculum cannot decide."""
        return self.verdict.chosen.products if self.verdict.chosen else ()


@dataclass(frozen=True, slots=True)
class Prediction:
    """The whole account of one cell under one curriculum.

    Parameters
    ----------
    accounts, solution
        Both electrodes together and the electrolyte; None unless both electrodes are decided.
    assumptions
        Everything that was assumed, as sentences.
    """

    curriculum: Curriculum
    cell: Cell
    cathode: ElectrodeAccount
    anode: ElectrodeAccount
    accounts: Accounts | None
    solution: SolutionAccount | None
    cautions: tuple[Caution, ...]
    assumptions: tuple[str, ...]


def predict(cell: Cell | CellDescription, curriculum: Curriculum) -> Prediction:
    """What happens in a cell according to a curriculum.

    Parameters
    ----------
    cell
        A cell, or its description in words.
    curriculum
        Whose rules and conventions count.

    Raises
    ------
    IonwrightError
        If the description is of a cell that would not work or cannot be read.
    """
    if isinstance(cell, CellDescription):
        cell = make_cell(cell)
    return _predicted(cell, curriculum, _KEPT)


def predict_afresh(cell: Cell | CellDescription, curriculum: Curriculum) -> Prediction:
    """The same as `predict`, without keeping anything: for a curriculum that nobody else will ask about.

    Raises
    ------
    IonwrightError
        As `predict` does.
    """
    if isinstance(cell, CellDescription):
        cell = make_cell(cell)
    return _predicted(cell, curriculum, _AFRESH)


def _predicted(cell: Cell, curriculum: Curriculum, steps: _Steps) -> Prediction:
    case: Aside[tuple[Cell, str, Curriculum]] = Aside((cell, "cathode", curriculum))
    cathode = steps.account_of(steps.judge(cell, "cathode", curriculum), case)
    case = Aside((cell, "anode", curriculum))
    anode = steps.account_of(steps.judge(cell, "anode", curriculum), case)
    accounts = solution = None
    if cathode.half_equation and anode.half_equation:
        accounts = account(cathode.half_equation, anode.half_equation, cathode.products, anode.products)
        solution = solution_account(cell, accounts.combined.overall)
    products = _as_such(cathode) + _as_such(anode)
    return Prediction(
        curriculum=curriculum,
        cell=cell,
        cathode=cathode,
        anode=_with_gas_volumes(anode, accounts, steps),
        accounts=accounts,
        solution=solution,
        cautions=cautions(cell, products, solution.formed if solution else ()),
        assumptions=tuple(
            dict.fromkeys(cell.assumptions + cathode.verdict.assumptions + anode.verdict.assumptions)
        ),
    )


def _as_such(account: ElectrodeAccount) -> tuple[Species, ...]:
    """The products that are met as such; a metal that dissolves in mercury is not."""
    chosen = account.verdict.chosen
    return () if chosen and chosen.kind is Kind.AMALGAM else account.products


@lru_cache(maxsize=8192)
def _account_of(verdict: Verdict, case: Aside[tuple[Cell, str, Curriculum]]) -> ElectrodeAccount:
    """What is said of an electrode follows from its verdict: like cells share it."""
    cell, electrode, curriculum = case.value
    chosen = verdict.chosen
    if chosen is None:
        return ElectrodeAccount(verdict, None, (), (), ())
    conventions = curriculum.conventions
    half = conventions.written(chosen, cell.medium)
    return ElectrodeAccount(
        verdict,
        half,
        conventions.also_written(chosen, cell.medium),
        observations(cell, electrode, chosen, half),
        () if chosen.kind is Kind.AMALGAM else product_tests(chosen.products, is_molten=cell.is_molten),
    )


def _with_gas_volumes(anode: ElectrodeAccount, accounts: Accounts | None, steps: _Steps) -> ElectrodeAccount:
    """The anode's account with a remark on how the gas volumes compare, where there are two gases."""
    remark = gas_volume_remark(accounts.gas_volumes) if accounts else ""
    return steps.with_remark(anode, remark) if remark else anode


@lru_cache(maxsize=8192)
def _with_remark(anode: ElectrodeAccount, remark: str) -> ElectrodeAccount:
    return ElectrodeAccount(
        anode.verdict, anode.half_equation, anode.also_written, (*anode.observations, remark), anode.tests
    )


class _Steps(NamedTuple):
    """The steps of a prediction, each of which either keeps what it found or does not."""

    judge: Callable[[Cell, str, Curriculum], Verdict]
    account_of: Callable[[Verdict, Aside[tuple[Cell, str, Curriculum]]], ElectrodeAccount]
    with_remark: Callable[[ElectrodeAccount, str], ElectrodeAccount]


_KEPT = _Steps(judge, _account_of, _with_remark)
_AFRESH = _Steps(judge_afresh, _account_of.__wrapped__, _with_remark.__wrapped__)
