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

_FEW_COLUMNS: Final = 8
_LARGE: Final = 1 << 256  # crosswise, the digits can double in every step

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
    With few columns, or few entries that are not zero, as equations have, the rows are combined crosswise, entry by
    entry: their numbers do not grow far. Otherwise they are packed and kept small by exact division.

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
    echelon = _echelon(list(matrix), columns)
    if echelon is None:
        return null_space_by_packed_rows(matrix, columns)
    pivots = [column for column, _ in echelon]
    echelon.reverse()
    return [_vector(echelon, column, columns) for column in range(columns) if column not in pivots]


def _echelon(rows: list[Sequence[int]], columns: int) -> list[tuple[int, Sequence[int]]] | None:
    """Return the rows in echelon form, each with the column of its pivot; None if the numbers become too large.

    The list that is given is used up.
    """
    done: list[tuple[int, Sequence[int]]] = []
    for column in range(columns):
        for index, pivot_row in enumerate(rows):  # noqa: B007 - both are used behind the loop
            if pivot_row[column]:
                break
        else:
            continue
        del rows[index]
        done.append((column, pivot_row))
        if not rows:
            break
        pivot = pivot_row[column]
        for index, row in enumerate(rows):
            head = row[column]
            if not head:
                continue
            if head == pivot:
                rows[index] = [*map(sub, row, pivot_row)]
            elif head == -pivot:
                rows[index] = [*map(add, row, pivot_row)]
            elif not -_LARGE < head < _LARGE:
                return None
            else:
                rows[index] = [pivot * a - head * b for a, b in zip(row, pivot_row)]
    return done


def _vector(echelon: list[tuple[int, Sequence[int]]], column: int, columns: int) -> tuple[int, ...]:
    """Return the vector of one spare column, found from the lowest row upwards.

    It is multiplied by no more than each division needs, so that its numbers never have a common divisor.
    """
    vector = [0] * columns
    vector[column] = 1
    for at, row in echelon:
        total = sum(map(mul, row, vector))
        if not total:
            continue
        pivot = row[at]
        if total % pivot:
            factor = abs(pivot) // gcd(pivot, total)
            vector = [factor * number for number in vector]
            total *= factor
        vector[at] = -total // pivot
    return tuple(vector)
