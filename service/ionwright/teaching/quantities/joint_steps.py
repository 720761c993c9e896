"""Several unknowns at once: the sums that bind them, written out, and how they are solved."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.naming import name_of
from ionwright.chemistry.amounts.values import EXACT, nominal
from ionwright.chemistry.units import Unit, read_unit
from ionwright.teaching.quantities.board_figures import guarded
from ionwright.teaching.quantities.expressions import EQUALS, PLUS, TIMES, Piece, joined, quotient

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from ionwright.chemistry.amounts.quantity import Key
    from ionwright.chemistry.amounts.values import Row
    from ionwright.teaching.quantities.board_figures import BoardFigures

__all__ = ["how_solved", "sums_written_out"]

_ADD_UP: Final = {
    "charge": "The charges add up, each in proportion to its amount of electrons:",
    "total_mass": "The masses add up, each in proportion to its amount of electrons:",
    "total_volume": "The volumes add up, each in proportion to the amount of electrons:",
}


def sums_written_out(rows: Sequence[Row], shown: BoardFigures) -> Iterator[tuple[str, Piece]]:
    """The sums that settle a quantity together, each with what is said of it."""
    for row in rows:
        said = _ADD_UP.get(row.result.kind, f"The parts of the {name_of(row.result)} add up:")
        yield said, _equation(row, shown)


def how_solved(key: Key, rows: Sequence[Row], shown: BoardFigures) -> tuple[str, list[Piece]]:
    """How the sums are solved for a quantity: what is said, and the expression; none for more than two sums."""
    unknowns = {k for row in rows for k in row.coefficients}
    if len(rows) == 1 and unknowns == {key}:
        return "Divide by what goes with one mole of electrons.", [_divided(key, rows[0], shown)]
    if len(rows) == 2 and len(unknowns) == 2:
        said = (
            "Take one sum from the other so that the second unknown drops out; the numbers are those above."
        )
        return said, [_eliminated(key, rows)]
    return "Together these sums give the amount.", []


def _divided(key: Key, row: Row, shown: BoardFigures) -> Piece:
    own = shown.unit_of(row.result)
    below = guarded(nominal(row.coefficients[key]), EXACT, _ratio(own, shown.unit_of(key)))
    return quotient([guarded(nominal(row.total), EXACT, own)], [below])


def _equation(row: Row, shown: BoardFigures) -> Piece:
    own = shown.unit_of(row.result)
    terms = [
        joined(TIMES, [guarded(nominal(number), EXACT, _ratio(own, shown.unit_of(key))), shown.symbol(key)])
        for key, number in row.coefficients.items()
    ]
    return joined(EQUALS, [guarded(nominal(row.total), EXACT, own), joined(PLUS, terms)])


def _eliminated(key: Key, rows: Sequence[Row]) -> Piece:
    """Cramer's rule for two equations, with bare numbers in the units that stand above."""
    first, second = rows
    other = next(k for row in rows for k in row.coefficients if k != key)
    (a, b, c), (d, e, f) = (
        (
            nominal(row.coefficients.get(key, 0.0)),
            nominal(row.coefficients.get(other, 0.0)),
            nominal(row.total),
        )
        for row in (first, second)
    )
    top = _difference((c, e), (f, b))
    below = _difference((a, e), (d, b))
    return quotient([top], [below])


def _difference(one: tuple[float, float], other: tuple[float, float]) -> Piece:
    """The difference of two products."""
    bare = read_unit("1")
    products = [joined(TIMES, [_in_brackets(guarded(x, EXACT, bare)) for x in pair]) for pair in (one, other)]
    return Piece(
        f"{products[0].text} − {products[1].text}",
        f"{products[0].html} − {products[1].html}",
        f"{products[0].latex} - {products[1].latex}",
    )


def _in_brackets(piece: Piece) -> Piece:
    return Piece(f"({piece.text})", f"({piece.html})", f"({piece.latex})") if " × " in piece.text else piece


def _ratio(one: Unit, other: Unit) -> Unit:
    """The unit of what turns the other unit into the one."""
    if one.symbol == other.symbol:
        return read_unit("1")
    return one if other.symbol == "1" else read_unit(f"{one.symbol}/{other.symbol}")
