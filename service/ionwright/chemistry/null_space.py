"""The null space of a matrix of whole numbers, exactly, by elimination without fractions."""

from __future__ import annotations

from math import gcd
from operator import mul
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.packed_rows import null_space_by_packed_rows

if TYPE_CHECKING:
    from collections.abc import Sequence

__all__ = ["MAX_COLUMNS", "MAX_ROWS", "null_space"]

MAX_ROWS: Final = 256
"""Most rows of a matrix: every element, the charge, and a few conditions."""
MAX_COLUMNS: Final = 128
"""Most columns of a matrix."""

_FEW_COLUMNS: Final = 8

# the rows are of one length, and checking it would cost a tenth of the time
# ruff: noqa: B905


def null_space(matrix: Sequence[Sequence[int]], columns: int) -> list[tuple[int, ...]]:
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
    With few columns the rows are combined crosswise, entry by entry: their numbers cannot grow far in so few
    steps. With more, they are packed and kept small by exact division.

    Example
    -------
    >>> null_space([[1, 0, -1], [0, 2, -1]], 3)
    [(2, 1, 2)]
    """
    if len(matrix) > MAX_ROWS or columns > MAX_COLUMNS:
        message = f"a matrix of {len(matrix)} x {columns} is larger than {MAX_ROWS} x {MAX_COLUMNS}"
        raise ValueError(message)
    if columns > _FEW_COLUMNS:
        return null_space_by_packed_rows(matrix, columns)
    echelon, pivots = _echelon([list(row) for row in matrix], columns)
    return [_vector(echelon, pivots, column, columns) for column in range(columns) if column not in pivots]


def _echelon(rows: list[list[int]], columns: int) -> tuple[list[list[int]], list[int]]:
    """Return the rows in echelon form, and the column of the pivot of each."""
    done: list[list[int]] = []
    pivots: list[int] = []
    for column in range(columns):
        for index, pivot_row in enumerate(rows):  # noqa: B007 - both are used behind the loop
            if pivot_row[column]:
                break
        else:
            continue
        del rows[index]
        pivot = pivot_row[column]
        for index, row in enumerate(rows):
            head = row[column]
            if not head:
                continue
            if pivot == 1:
                rows[index] = [a - head * b for a, b in zip(row, pivot_row)]
            elif pivot == -1:
                rows[index] = [a + head * b for a, b in zip(row, pivot_row)]
            else:
                rows[index] = [pivot * a - head * b for a, b in zip(row, pivot_row)]
        done.append(pivot_row)
        pivots.append(column)
        if not rows:
            break
    return done, pivots


def _vector(echelon: list[list[int]], pivots: list[int], column: int, columns: int) -> tuple[int, ...]:
    """Return the vector of one spare column, found from the lowest row upwards."""
    vector = [0] * columns
    vector[column] = 1
    for index in range(len(pivots) - 1, -1, -1):
        row, at = echelon[index], pivots[index]
        total = sum(map(mul, row, vector))
        if total:
            share, left = divmod(total, row[at])
            if left:
                factor = abs(row[at]) // gcd(row[at], total)
                vector = [factor * number for number in vector]
                share = total * factor // row[at]
            vector[at] = -share
    common = gcd(*vector)
    return tuple([number // common for number in vector]) if common > 1 else tuple(vector)
