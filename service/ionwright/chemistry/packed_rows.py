"""Elimination for larger matrices: each row is packed into one long int.

The entries of a row lie in slots that are wide enough for every number that can arise, so that adding multiples
of rows takes a few operations on ints instead of a loop over the entries.
"""

from __future__ import annotations

from math import gcd
from operator import mul
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

__all__ = ["null_space_by_packed_rows"]

# lists of one length are made side by side here, and checking it would cost a tenth of the time
# ruff: noqa: B905


def null_space_by_packed_rows(matrix: Sequence[Sequence[int]], columns: int) -> list[tuple[int, ...]]:
    """Return the same as `null_space`, in less time if the matrix is large.

    Parameters
    ----------
    matrix, columns
        As for `null_space`.

    Notes
    -----
    Elimination after Bareiss: every entry that arises is a minor of the matrix, so each division is exact and
    the product of the lengths of the rows (Hadamard) bounds the numbers.
    """
    width = _slot_width(matrix, columns)
    places = [width * at for at in range(columns - 1, -1, -1)]
    powers = [1 << place for place in places]
    echelon, pivots, leading = _echelon([sum(map(mul, row, powers)) for row in matrix], places)
    spare = [column for column in range(columns) if column not in pivots]
    if not spare:
        return []
    half = 1 << (width - 1)
    entries = _cleared(echelon, leading, [places[at] for at in pivots], [places[at] for at in spare], half)
    return _vectors(entries, leading[-1] if leading else 1, pivots, spare)


def _slot_width(matrix: Sequence[Sequence[int]], columns: int) -> int:
    """Return how many bits hold any minor of the matrix, with its sign and one to spare."""
    lengths: list[int] = [(sum(map(mul, row, row)).bit_length() + 1) >> 1 for row in matrix]
    if len(lengths) > columns:
        lengths = sorted(lengths, reverse=True)[:columns]
    return sum(lengths) + 3


def _echelon(rows: list[int], places: list[int]) -> tuple[list[int], list[int], list[int]]:
    """Return the packed rows in echelon form, the column of the pivot of each, and the pivots themselves.

    A row is left as it is until it is needed: what it would have been multiplied and divided by meanwhile cancels,
    so that dividing by the pivot before its last change is enough.
    """
    done: list[int] = []
    columns: list[int] = []
    pivots: list[int] = []
    before = 1
    divisors = [1] * len(rows)
    for column, place in enumerate(places):
        if not rows:
            break
        # all that stands further left is zero, so that rounding off what stands further right is enough
        middle = (1 << place) >> 1
        heads = [(row + middle) >> place for row in rows]
        for index, pivot in enumerate(heads):  # noqa: B007 - both are used behind the loop
            if pivot:
                break
        else:
            continue
        pivot_row, divisor = rows.pop(index), divisors.pop(index)
        del heads[index]
        if divisor != before:
            pivot, pivot_row = pivot * before // divisor, pivot_row * before // divisor
        for at, head in enumerate(heads):
            if head:
                changed = pivot * rows[at] - head * pivot_row
                rows[at] = changed if divisors[at] == 1 else changed // divisors[at]
                divisors[at] = pivot
        done.append(pivot_row)
        columns.append(column)
        pivots.append(pivot)
        before = pivot
    return done, columns, pivots


def _cleared(
    echelon: list[int], leading: list[int], pivots: list[int], spare: list[int], half: int
) -> list[list[int]]:
    """Clear the rows upwards and return their entries in the spare columns, over the last pivot."""
    mask = 2 * half - 1
    bias = sum(half << place for place in (*pivots, *spare))
    last = leading[-1] if leading else 1
    packed: list[int] = []
    below: list[int] = []
    for row, pivot, place in zip(reversed(echelon), reversed(leading), reversed(pivots)):
        if packed:
            shifted, total = row + bias, last * row
            for at, lower in zip(below, packed):
                total -= (((shifted >> at) & mask) - half) * lower
            row = total // pivot  # noqa: PLW2901 - the row in its final form
        packed.append(row)
        below.append(place)
    packed.reverse()
    return [[(((row + bias) >> place) & mask) - half for place in spare] for row in packed]


def _vectors(
    entries: list[list[int]], last: int, pivots: list[int], spare: list[int]
) -> list[tuple[int, ...]]:
    columns = len(pivots) + len(spare)
    found = []
    for index, column in enumerate(spare):
        numbers = [row[index] for row in entries]
        common = gcd(last, *numbers)
        if last < 0:
            common = -common
        vector = [0] * columns
        vector[column] = last // common
        for pivot, number in zip(pivots, numbers):
            vector[pivot] = -number // common
        found.append(tuple(vector))
    return found
