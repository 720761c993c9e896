"""The working of a task: the steps that a teacher writes on the board, each a sentence and an equation."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.relations import Product, Sum
from ionwright.chemistry.amounts.values import EXACT, Row, nominal
from ionwright.chemistry.units import Unit, read_unit, unit_said
from ionwright.teaching.quantities.answers import Answer, in_unit, money_unit
from ionwright.teaching.quantities.expressions import (
    EQUALS,
    MINUS,
    PLUS,
    ROUNDED,
    TIMES,
    Piece,
    joined,
    number_piece,
    plain,
    quotient,
    symbol,
)
from ionwright.teaching.quantities.sentences import sentence

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from ionwright.chemistry.amounts.faraday import WorkedOut
    from ionwright.chemistry.amounts.values import Value

__all__ = ["Step", "working"]

_GUARD: Final = 2
_FEWEST: Final = 4


@dataclass(frozen=True, slots=True)
class Step:
    """One step on the board.

    Parameters
    ----------
    sentence
        What is done and why.
    equation
        Symbols, then numbers with their units, then the result.
    """

    sentence: str
    equation: Piece


def working(worked: WorkedOut, found: Sequence[Answer]) -> tuple[Step, ...]:
    """The steps that lead to the answers of a task, each standing after those that it needs.

    Notes
    -----
    Between the steps figures are carried that the answer does not keep (two more, at least four in all), so that
    reckoning with what is written gives the answer that is written.
    """
    board = _Board(worked, found)
    for answer in found:
        board.reach(answer.key)
    return tuple(board.steps)


class _Board:
    """Steps while they are written down."""

    def __init__(self, worked: WorkedOut, found: Sequence[Answer]) -> None:
        self.worked = worked
        self.values: Mapping[Key, Value] = worked.values
        self.answers = {answer.key: answer for answer in found}
        self.steps: list[Step] = []
        self.figures: dict[tuple[Key, Unit | None], Piece] = {}
        self.is_one_of_several = len(worked.task.circuit.processes) > 1
        self.reached: set[Key] = set()

    def reach(self, key: Key) -> None:
        """Write the steps up to a quantity, unless they stand there already."""
        if key in self.reached:
            return
        self.reached.add(key)
        value = self.values[key]
        for needed in value.inputs:
            self.reach(needed)
        step = self._known(key) if value.relation is None else self._derived(key, value)
        if step is not None:
            self.steps.append(step)

    # -------------------------------------------------------------- symbols and numbers

    def symbol(self, key: Key) -> Piece:
        """The symbol of a quantity in this task."""
        return symbol(key, is_one_of_several=self.is_one_of_several)

    def unit_of(self, key: Key) -> Unit:
        """The unit in which a quantity stands in the equations."""
        return money_unit(self.worked, key) or read_unit(QUANTITIES[key.kind].unit)

    def figure(self, key: Key, unit: Unit | None = None) -> Piece:
        """A quantity as it stands in the equations: as it was written, or with guard figures."""
        piece = self.figures.get((key, unit))
        if piece is None:
            piece = self.figures[key, unit] = self._figure(key, unit)
        return piece

    def _figure(self, key: Key, unit: Unit | None) -> Piece:
        own = self.unit_of(key)
        written = self.worked.knowns.written.get(key)
        if unit is None and written is not None and written.unit.symbol == own.symbol:
            return number_piece(written.value, written.significant_figures, own)
        value = nominal(self.values[key].number)
        if key in self.worked.knowns.molar_masses:
            return number_piece(value, _figures_of_mass(value, self.worked.knowns.molar_masses[key]), own)
        return self._guarded(in_unit(key, value, unit or own), self.values[key].figures, unit or own)

    def _guarded(self, value: float, figures: int, unit: Unit) -> Piece:
        return number_piece(value, _kept(value, _guard(figures)), unit)

    # -------------------------------------------------------------- known quantities

    def _known(self, key: Key) -> Step | None:
        if key in self.worked.knowns.molar_masses:
            return self._molar_mass(key)
        written = self.worked.knowns.written.get(key)
        if written is None:
            return None
        own = self.unit_of(key)
        stated = number_piece(written.value, written.significant_figures, written.unit)
        if written.unit.symbol == own.symbol:
            if key not in self.answers:
                return None
            return Step("This is given.", self._finished(key, [self.symbol(key), stated]))
        noun = QUANTITIES[key.kind].noun
        said = f"Convert the {noun} to {unit_said(own)}." if own.text else f"Write the {noun} as a decimal."
        return Step(said, self._finished(key, [self.symbol(key), stated, self.figure(key)]))

    def _molar_mass(self, key: Key) -> Step | None:
        parts = self.worked.knowns.molar_masses[key]
        if len(parts) == 1 and parts[0][1] == 1 and key not in self.answers:
            return None
        pieces = [plain(f"{number} × {mass}" if number > 1 else mass) for _, number, mass in parts]
        latex = " + ".join(f"{number} \\times {mass}" if number > 1 else mass for _, number, mass in parts)
        summed = Piece(joined(PLUS, pieces).text, joined(PLUS, pieces).html, latex)
        said = "The molar mass is the sum of the relative atomic masses, in g/mol."
        return Step(said, self._finished(key, [self.symbol(key), summed, self.figure(key)]))

    # -------------------------------------------------------------- derived quantities

    def _derived(self, key: Key, value: Value) -> Step:
        relation = value.relation
        assert relation is not None  # noqa: S101 - only called for derived values
        if value.together:
            return self._solved_together(key, value)
        said = sentence(relation, key, self.worked.task.circuit)
        if isinstance(relation, Product):
            return Step(said, self._finished(key, self._of_product(relation, key)))
        if isinstance(relation, Sum):
            return Step(said, self._finished(key, self._of_sum(relation, key)))
        return Step(said, self._finished(key, [self.symbol(key), self.figure(key)]))

    def _solved_together(self, key: Key, value: Value) -> Step:
        """The linear equations that hold at once, and what follows from them."""
        rows = [self._row(row) for row in value.together]
        said = _TOGETHER if len(rows) > 1 else _IN_PROPORTION
        solved = self._finished(key, [self.symbol(key), self.figure(key)])
        return Step(said, joined(plain("; "), [*rows, solved]))

    def _row(self, row: Row) -> Piece:
        own = self.unit_of(row.result)
        total = self._guarded(nominal(row.total), EXACT, own)
        terms = []
        for key, number in row.coefficients.items():
            unit = _ratio(own, self.unit_of(key))
            coefficient = self._guarded(nominal(number), EXACT, unit)
            terms.append(joined(TIMES, [coefficient, self.symbol(key)]))
        return joined(EQUALS, [total, joined(PLUS, terms)])

    def _of_product(self, relation: Product, key: Key) -> list[Piece]:
        number, numerators, divisors = relation.rearranged(key)
        shown_in = {k: read_unit(unit) for k, unit in relation.shown_in}
        if shown_in:
            number /= number
        top, below = number.numerator, number.denominator
        symbols = quotient(
            [*map(self.symbol, numerators), *([plain(str(top))] if top > 1 else [])],
            [*([plain(str(below))] if below > 1 else []), *map(self.symbol, divisors)],
        )
        figures = quotient(
            [*(self.figure(k, shown_in.get(k)) for k in numerators), *([plain(str(top))] if top > 1 else [])],
            [
                *([plain(str(below))] if below > 1 else []),
                *(self.figure(k, shown_in.get(k)) for k in divisors),
            ],
        )
        return [self.symbol(key), symbols, figures, self.figure(key, shown_in.get(key))]

    def _of_sum(self, relation: Sum, key: Key) -> list[Piece]:
        constant, added, subtracted = relation.rearranged(key)
        if not added and not subtracted:
            return [self.symbol(key), self.figure(key)]
        start = [plain(f"{constant:g}")] if constant else []
        symbols = _signed([*start, *map(self.symbol, added)], [self.symbol(k) for k in subtracted])
        figures = _signed([*start, *map(self.figure, added)], [self.figure(k) for k in subtracted])
        return [self.symbol(key), symbols, figures, self.figure(key)]

    # -------------------------------------------------------------- answers

    def _finished(self, key: Key, pieces: Sequence[Piece]) -> Piece:
        """The equation, with the answer in its unit and rounded where the quantity was asked for."""
        chain = _without_repeats(pieces)
        answer = self.answers.get(key)
        if answer is None:
            return joined(EQUALS, chain)
        value = answer.value if answer.before_rounding is None else answer.before_rounding
        guarded = self._guarded(value, self.values[key].figures, answer.unit)
        final = Piece(answer.rendered.text, answer.rendered.html, answer.rendered.latex)
        if answer.uncertainty is None and _is_kept(value, self.values[key].figures, answer.figures):
            kept = [final if piece.text == guarded.text else piece for piece in chain]
            return joined(EQUALS, _without_repeats([*kept, final]))
        return joined(ROUNDED, [joined(EQUALS, _without_repeats([*chain, guarded])), final])


_TOGETHER: Final = (
    "By the half-equations, all that is summed goes with the unknowns; these sums hold at once."
)
_IN_PROPORTION: Final = "By the half-equations, all that is summed is in proportion to one unknown."


def _ratio(one: Unit, other: Unit) -> Unit:
    """The unit of what turns the other unit into the one."""
    if one.symbol == other.symbol:
        return read_unit("1")
    return one if other.symbol == "1" else read_unit(f"{one.symbol}/{other.symbol}")


def _signed(added: list[Piece], subtracted: list[Piece]) -> Piece:
    return joined(MINUS, [joined(PLUS, added), *subtracted])


def _without_repeats(pieces: Sequence[Piece]) -> list[Piece]:
    kept: list[Piece] = []
    for piece in pieces:
        if not kept or piece.text != kept[-1].text:
            kept.append(piece)
    return kept


def _guard(figures: int) -> int:
    return _FEWEST + 1 if figures >= EXACT else max(_FEWEST, figures + _GUARD)


def _is_kept(value: float, figures: int, of_answer: int) -> bool:
    """Whether rounding to the figures of the answer takes nothing away that the working shows."""
    return _kept(value, _guard(figures)) <= of_answer


def _kept(value: float, figures: int) -> int:
    """As many of these figures as the value has, zeros at its end left out."""
    rounded = Decimal(f"{value:.{figures - 1}e}").normalize()
    return max(1, len(rounded.as_tuple().digits))


def _figures_of_mass(total: float, parts: Sequence[tuple[str, int, str]]) -> int:
    """Significant figures of a molar mass: to the last decimal that all its parts have."""
    decimals = min(len(mass.partition(".")[2]) for _, _, mass in parts)
    return len(str(int(total))) + decimals
