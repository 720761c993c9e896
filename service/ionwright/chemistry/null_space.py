"""The null space of a matrix of whole numbers, exactly, by elimination without fractions."""

from __future__ import annotations

from math import gcd
from operator import add, mul, sub
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.packed_rows import null_space_by_packed_rows

if TYPE_CHECKING:
    from collections.abc import Sequence

__all__ = ["MAX_COLUMNS", "MAX_ROWS", "null_space"]

MAX_ROWS: Final = 256
"""Most rows of a matrix: every element, the charge, and a few conditions."""
MAX_COLUMNS: Final = 128
"""Most columns of a matrix."""

_FEW_COLUMNS: Final = 9
_LARGE: Final = 1 << 256  # crosswise, the digits can double in every step

# the rows are of one length, and checking it would cost a tenth of the time
# ruff: noqa: B905


def null_space(matrix: Sequence[Sequence[int]], columns: int) -> list[tuple[int, ...]]:  # noqa: C901 - see Notes
    """Return a basis of the vectors that a matrix turns into zero.

    Parameters
    ----------
    matrix
        Rows of whole numbers, at most 256; it may have none.
    columns
        Length of every row, at most 128.

    Returns
    -------
    list of tuple
        One vector for each column that is no pivot, in the order of those columns; the pivots are taken as far
        to the left as they go. Each is primitive: whole numbers without a common divisor, its entry in its own
        column positive, and zero in the own columns of the others.

    Raises
    ------
    ValueError
        If the matrix is larger than that.

    Notes
    -----
    With few columns, or few entries that are not zero, as equations have, the rows are combined crosswise, entry by
    entry: their numbers do not grow far. Otherwise they are packed and kept small by exact division. A call costs
    half as much here as a row, so there are few.

    Example
    -------
    >>> null_space([[1, 0, -1], [0, 2, -1]], 3)
    [(2, 1, 2)]
    """
    if len(matrix) > MAX_ROWS or columns > MAX_COLUMNS:
        message = f"a matrix of {len(matrix)} x {columns} is larger than {MAX_ROWS} x {MAX_COLUMNS}"
        raise ValueError(message)
    if columns > _FEW_COLUMNS and 5 * sum([row.count(0) for row in matrix]) < 3 * columns * len(matrix):
        return null_space_by_packed_rows(matrix, columns)

    rows = [*matrix]
    echelon: list[tuple[int, int, Sequence[int]]] = []  # column of the pivot, pivot, row
    spare: list[int] = []
    for column in range(columns):
        pivot = 0
        for index, row in enumerate(rows):
            head = row[column]
            if not head:
                continue
            if not pivot:
                pivot, pivot_row, place = head, row, index
            elif head == pivot:
                rows[index] = [*map(sub, row, pivot_row)]
            elif head == -pivot:
                rows[index] = [*map(add, row, pivot_row)]
            elif not -_LARGE < head < _LARGE:
                return null_space_by_packed_rows(matrix, columns)
            else:
                rows[index] = [pivot * a - head * b for a, b in zip(row, pivot_row)]
        if pivot:
            del rows[place]
            echelon.append((column, pivot, pivot_row))
        else:
            spare.append(column)
    echelon.reverse()
    return _vectors(echelon, spare, columns)


def _vectors(
    rows: list[tuple[int, int, Sequence[int]]], spare: list[int], columns: int
) -> list[tuple[int, ...]]:
    """Return the vector of each spare column, found from the lowest row of the echelon upwards.

    It is multiplied by no more than each division needs, so that its numbers never have a common divisor.
    """
    found = []
    for own in spare:
        vector = [0] * columns
        vector[own] = 1
        for column, pivot, row in rows:
            total = sum(map(mul, row, vector))
            if total:
                if total % pivot:
                    factor = abs(pivot) // gcd(pivot, total)
                    vector = [factor * number for number in vector]
                    total *= factor
                vector[column] = -total // pivot
        found.append(tuple(vector))
    return found
