"""The working of a task: the steps that a teacher writes on the board, each a sentence and an equation."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.relations import ByTrial, Product, Sum
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.amounts.values import EXACT
from ionwright.chemistry.units import read_unit, unit_said
from ionwright.teaching.quantities.board_figures import BoardFigures, guarded
from ionwright.teaching.quantities.expressions import (
    EQUALS,
    MINUS,
    PLUS,
    ROUNDED,
    Piece,
    joined,
    number_piece,
    plain,
    quotient,
    symbol,
)
from ionwright.teaching.quantities.joint_steps import how_solved, sums_written_out
from ionwright.teaching.quantities.sentences import SERIES, placed, sentence
from ionwright.teaching.quantities.uncertainty_step import uncertainty_step

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from ionwright.chemistry.amounts.faraday import WorkedOut
    from ionwright.chemistry.amounts.relations import Relation
    from ionwright.chemistry.amounts.values import Value
    from ionwright.chemistry.units import Unit
    from ionwright.chemistry.written_quantity import Written
    from ionwright.teaching.quantities.answers import Answer

__all__ = ["Step", "working"]

_CHARGE: Final = Key("charge")
_KILOWATT_HOURS: Final = "Convert the energy to kilowatt-hours."


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
    for answer in found:
        if answer.uncertainty is not None:
            said, equation = uncertainty_step(answer, worked.values[answer.key].number)
            board.steps.append(Step(said, equation))
    return tuple(board.steps)


class _Board:
    """Steps while they are written down."""

    def __init__(self, worked: WorkedOut, found: Sequence[Answer]) -> None:
        self.worked = worked
        self.circuit = worked.task.circuit
        self.values: Mapping[Key, Value] = worked.values
        self.answers = {answer.key: answer for answer in found}
        self.shown = BoardFigures(worked)
        self.steps: list[Step] = []
        self.reached: set[Key] = set()
        self.electrodes: list[str] = []

    def reach(self, key: Key) -> None:
        """Write the steps up to a quantity, unless they stand there already."""
        if key in self.reached:
            return
        self.reached.add(key)
        value = self.values[key]
        if value.relation is not None and value.relation.name == "used up" and _CHARGE in self.values:
            self.reach(_CHARGE)
        for needed in value.inputs:
            self.reach(needed)
        self.steps += self._known(key) if value.relation is None else self._derived(key, value)

    # -------------------------------------------------------------- known quantities

    def _known(self, key: Key) -> Iterator[Step]:
        knowns, shown = self.worked.knowns, self.shown
        if key in knowns.molar_masses:
            yield from self._molar_mass(key)
        elif key in knowns.by_mass:
            by_mass = knowns.by_mass[key]
            written, weighed = by_mass.written, substance_text(by_mass.weighed)
            stated = number_piece(written.value, written.significant_figures, written.unit)
            number = [plain(str(by_mass.number))] if by_mass.number > 1 else []
            ratio = quotient([stated, *number], [guarded(by_mass.molar_mass, EXACT, read_unit("g/mol"))])
            said = f"Divide by the molar mass of {weighed} to count in moles"
            each = f", {by_mass.number} of {substance_text(key.of)} for each" if number else ""
            yield Step(f"{said}{each}.", self._finished(key, [shown.symbol(key), ratio, shown.figure(key)]))
        elif key in knowns.written:
            yield from self._written(key)

    def _written(self, key: Key) -> Iterator[Step]:
        knowns, shown = self.worked.knowns, self.shown
        noun, own = QUANTITIES[key.kind].noun, shown.unit_of(key)
        is_converted = knowns.written[key].unit.symbol != own.symbol or knowns.written[key].is_mixed
        pieces = [shown.symbol(key), shown.stated(key)]
        if key in knowns.chosen:
            said = f"Reckon for {shown.stated(key).text}: the answer does not depend on the {noun}."
        elif is_converted:
            said = (
                f"Convert the {noun} to {unit_said(own)}." if own.text else f"Write the {noun} as a decimal."
            )
        elif key in self.answers:
            said = "This is given."
        else:
            return
        if knowns.written[key].unit.offset:
            pieces.append(_above_zero(knowns.written[key], own))
        said = placed(said, key.process, self.circuit) if key.of or key.process else said
        yield Step(said, self._finished(key, [*pieces, shown.figure(key)] if is_converted else pieces))

    def _molar_mass(self, key: Key) -> Iterator[Step]:
        parts = self.worked.knowns.molar_masses[key]
        if len(parts) == 1 and parts[0][1] == 1 and key not in self.answers:
            return
        pieces = [plain(f"{number} × {mass}" if number > 1 else mass) for _, number, mass in parts]
        latex = " + ".join(f"{number} \\times {mass}" if number > 1 else mass for _, number, mass in parts)
        summed = Piece(joined(PLUS, pieces).text, joined(PLUS, pieces).html, latex)
        said = (
            f"The molar mass of {substance_text(key.of)} is the sum of its relative atomic masses, in g/mol."
        )
        yield Step(said, self._finished(key, [self.shown.symbol(key), summed, self.shown.figure(key)]))

    # -------------------------------------------------------------- derived quantities

    def _derived(self, key: Key, value: Value) -> Iterator[Step]:
        relation, shown = value.relation, self.shown
        assert relation is not None  # noqa: S101 - only called for derived values
        if value.together:
            for said, equation in sums_written_out(value.together, shown):
                yield Step(said, equation)
            said, solved = how_solved(key, value.together, shown)
            yield Step(said, self._finished(key, [shown.symbol(key), *solved, shown.figure(key)]))
            return
        said = self._in_series(relation) + sentence(relation, key, self.circuit)
        if isinstance(relation, Product):
            yield from self._energies(relation, key)
            yield Step(said, self._finished(key, self._of_product(relation, key)))
        elif isinstance(relation, Sum):
            yield Step(said, self._finished(key, self._of_sum(relation, key)))
        elif isinstance(relation, ByTrial):
            yield Step(said, self._finished(key, [shown.symbol(key), shown.figure(key)]))
            yield from self._trial()
        else:
            yield Step(said, self._finished(key, [shown.symbol(key), shown.figure(key)]))

    def _in_series(self, relation: Relation) -> str:
        """What to say where the electrons of one electrode are taken to another for the first time."""
        if relation.name != "stoichiometry":
            return ""
        process = next((p for p in self.circuit.processes if p.id == relation.members[0].process), None)
        if process is None or process.electrode in self.electrodes:
            return ""
        self.electrodes.append(process.electrode)
        return f"{SERIES} " if len(self.electrodes) == 2 else ""

    def _energies(self, relation: Product, key: Key) -> Iterator[Step]:
        """The energy in kilowatt-hours, before it is multiplied by their price."""
        for member, unit in relation.shown_in:
            if member != key:
                figures = [self.shown.figure(member), self.shown.figure(member, read_unit(unit))]
                yield Step(_KILOWATT_HOURS, joined(EQUALS, [self.shown.symbol(member), *figures]))

    def _trial(self) -> Iterator[Step]:
        """The check of a temperature that was found by trial."""
        total, dry, vapour = (Key(kind) for kind in ("pressure", "dry_pressure", "water_vapour_pressure"))
        if dry in self.values and vapour in self.values:
            symbols = joined(PLUS, map(self.shown.symbol, (dry, vapour)))
            figures = joined(PLUS, map(self.shown.figure, (dry, vapour)))
            yield Step(
                "Check:",
                joined(EQUALS, [self.shown.symbol(total), symbols, figures, self.shown.figure(total)]),
            )

    def _of_product(self, relation: Product, key: Key) -> list[Piece]:
        _, numerators, divisors = relation.rearranged(key)
        in_unit = {k: read_unit(unit) for k, unit in relation.shown_in}
        top, below = _numbers(relation, key)
        shown = self.shown
        symbols = _symbols(relation, key, len(self.circuit.processes) > 1)
        figures = quotient(
            [*(shown.figure(k, in_unit.get(k)) for k in numerators), *top],
            [*below, *(shown.figure(k, in_unit.get(k)) for k in divisors)],
        )
        converted = [shown.figure(key)] if key in in_unit else []
        return [shown.symbol(key), symbols, figures, shown.figure(key, in_unit.get(key)), *converted]

    def _of_sum(self, relation: Sum, key: Key) -> list[Piece]:
        constant, added, subtracted = relation.rearranged(key)
        shown = self.shown
        if not added and not subtracted:
            return [shown.symbol(key), shown.figure(key)]
        start = [plain(f"{constant:g}")] if constant else []
        symbols = _signed([*start, *map(shown.symbol, added)], [shown.symbol(k) for k in subtracted])
        figures = _signed([*start, *map(shown.figure, added)], [shown.figure(k) for k in subtracted])
        return [shown.symbol(key), symbols, figures, shown.figure(key)]

    # -------------------------------------------------------------- answers

    def _finished(self, key: Key, pieces: Sequence[Piece]) -> Piece:
        """The equation, with the answer in its unit and rounded where the quantity was asked for."""
        answer = self.answers.get(key)
        if answer is None:
            return joined(EQUALS, _without_repeats(pieces))
        exact = self.shown.before_rounding(answer)
        final = Piece(answer.rendered.text, answer.rendered.html, answer.rendered.latex)
        is_in_own_unit = answer.unit.symbol == self.shown.unit_of(key).symbol
        last_place = pieces[-1].text == self.shown.figure(key).text and is_in_own_unit
        chain = _without_repeats([*(pieces[:-1] if last_place else pieces), exact])
        if exact.text == final.text:
            return joined(EQUALS, chain)
        return joined(ROUNDED, [joined(EQUALS, chain), final])


@lru_cache(maxsize=4096)
def _symbols(relation: Product, key: Key, is_one_of_several: bool) -> Piece:  # noqa: FBT001 - part of a cache key
    """A product solved for one of its members, in symbols."""
    _, numerators, divisors = relation.rearranged(key)
    top, below = _numbers(relation, key)
    above = [symbol(k, is_one_of_several=is_one_of_several) for k in numerators]
    under = [symbol(k, is_one_of_several=is_one_of_several) for k in divisors]
    return quotient([*above, *top], [*below, *under])


def _numbers(relation: Product, key: Key) -> tuple[list[Piece], list[Piece]]:
    """The bare numbers in a product, above and below; a factor between units is not shown, the units are."""
    number = Fraction(1) if relation.shown_in else relation.rearranged(key).number
    top = [plain(str(number.numerator))] if number.numerator > 1 else []
    return top, [plain(str(number.denominator))] if number.denominator > 1 else []


def _above_zero(written: Written, own: Unit) -> Piece:
    """A temperature in kelvin as a sum: 273.15 K + 22 K."""
    zero = number_piece(written.unit.offset, 5, own)
    degrees = number_piece(abs(written.value), written.significant_figures, own)
    return joined(MINUS if written.value < 0 else PLUS, [zero, degrees])


def _signed(added: list[Piece], subtracted: list[Piece]) -> Piece:
    return joined(MINUS, [joined(PLUS, added), *subtracted] if added else subtracted)


def _without_repeats(pieces: Sequence[Piece]) -> list[Piece]:
    left: list[Piece] = []
    for piece in pieces:
        if not left or piece.text != left[-1].text:
            left.append(piece)
    return left
