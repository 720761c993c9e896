"""The null space of matrices of whole numbers."""

from __future__ import annotations

import random
import time
from math import gcd

import pytest

from ionwright.chemistry.null_space import MAX_COLUMNS, MAX_ROWS, null_space
from ionwright.chemistry.packed_rows import null_space_by_packed_rows


def times(matrix: list[list[int]], vector: tuple[int, ...]) -> list[int]:
    return [sum(a * b for a, b in zip(row, vector, strict=True)) for row in matrix]


@pytest.mark.parametrize(
    ("matrix", "columns", "basis"),
    [
        ([[1, 0, -1], [0, 2, -1]], 3, [(2, 1, 2)]),
        ([[1, 0], [0, 1]], 2, []),
        ([], 2, [(1, 0), (0, 1)]),
        ([[0, 0, 0]], 3, [(1, 0, 0), (0, 1, 0), (0, 0, 1)]),
        ([[0, 3, 6]], 3, [(1, 0, 0), (0, -2, 1)]),
        ([[2, 4, 6], [1, 2, 3]], 3, [(-2, 1, 0), (-3, 0, 1)]),
        ([[-6, 4]], 2, [(2, 3)]),
        ([[6, 10, 15]], 3, [(-5, 3, 0), (-5, 0, 2)]),
        # MnO4^- + H^+ + e- against Mn^2+ + H2O: Mn, O, H, charge
        (
            [[1, 0, 0, -1, 0], [4, 0, 0, 0, -1], [0, 1, 0, 0, -2], [-1, 1, -1, -2, 0]],
            5,
            [(1, 8, 5, 1, 4)],
        ),
    ],
)
def test_known_bases(matrix: list[list[int]], columns: int, basis: list[tuple[int, ...]]) -> None:
    assert null_space(matrix, columns) == basis


def test_numbers_of_any_size_are_exact() -> None:
    large = 10**30
    assert null_space([[large + 1, -large]], 2) == [(large, large + 1)]
    assert null_space([[3 * large, 6 * large, 0], [0, large, -7]], 3) == [(-14, 7, large)]


def test_more_rows_than_columns() -> None:
    matrix = [[i, 2 * i, 3 * i - i] for i in range(-4, 5)]
    assert null_space(matrix, 3) == [(-2, 1, 0), (-2, 0, 1)]


def test_wide_and_tall_matrices() -> None:
    size = 10
    diagonal = [[i + 1 if i == j else 0 for j in range(size)] for i in range(size)]
    assert null_space(diagonal, size) == []
    assert null_space([*diagonal[:-1], *diagonal[:-1]], size) == [(0,) * (size - 1) + (1,)]
    assert null_space([[1] * size], size)[0] == (-1, 1) + (0,) * (size - 2)
    assert len(null_space([], size)) == size


def test_the_matrix_is_left_as_it_was() -> None:
    matrix = [[2, 4], [1, 3]]
    null_space(matrix, 2)
    assert matrix == [[2, 4], [1, 3]]


def test_larger_matrices_are_refused() -> None:
    with pytest.raises(ValueError, match="larger than"):
        null_space([[1]] * (MAX_ROWS + 1), 1)
    with pytest.raises(ValueError, match="larger than"):
        null_space([[1] * (MAX_COLUMNS + 1)], MAX_COLUMNS + 1)


def test_the_largest_subscripts_in_a_large_matrix_take_little_time() -> None:
    matrix = [[(7919 * (i + 1) * (j + 3) ** 2) % 99_991 - 49_000 for j in range(44)] for i in range(40)]
    start = time.perf_counter()
    basis = null_space(matrix, 44)
    assert time.perf_counter() - start < 1
    assert len(basis) >= 4
    assert all(not any(times(matrix, vector)) for vector in basis)


@pytest.mark.parametrize("size", [(3, 4), (5, 6), (6, 8), (8, 12), (12, 20), (20, 20), (30, 12)])
@pytest.mark.parametrize("zeros", [2, 6, 20])
def test_entry_by_entry_and_packed_come_to_the_same(size: tuple[int, int], zeros: int) -> None:
    rows, columns = size
    source = random.Random(rows * columns + zeros)  # noqa: S311 - the same matrices in every run
    choice = [0] * zeros + [1, -1, 1, -1, 2, -3, 4, 7]
    for _ in range(10):
        matrix = [[source.choice(choice) for _ in range(columns)] for _ in range(rows)]
        basis = null_space(matrix, columns)
        assert basis == null_space_by_packed_rows(matrix, columns)
        assert all(not any(times(matrix, vector)) and gcd(*vector) == 1 for vector in basis)


def test_a_sparse_matrix_whose_numbers_grow_takes_little_time() -> None:
    source = random.Random(7)  # noqa: S311 - the same matrix in every run
    matrix = [[source.choice([0, 0, 0, 0, 0, 0, 7919, 104_729]) for _ in range(60)] for _ in range(56)]
    start = time.perf_counter()
    basis = null_space(matrix, 60)
    assert time.perf_counter() - start < 1
    assert len(basis) >= 4
    assert all(not any(times(matrix, vector)) for vector in basis)
