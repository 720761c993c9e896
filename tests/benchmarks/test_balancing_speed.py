"""Speed of balancing, side by side in one run with exact linear algebra of general libraries, where installed.

The figures are printed; only ratios are asserted, with room for a machine that does other work as well.
Run it with `pytest -m benchmark -s`; sympy and python-flint are no dependencies of the project.
"""

from __future__ import annotations

import contextlib
import random
import timeit
from math import gcd
from typing import TYPE_CHECKING, Any

import pytest

from ionwright.chemistry.balancing import balance
from ionwright.chemistry.faults import NoSolution, SeveralSolutions
from ionwright.chemistry.linear_system import LinearSystem
from ionwright.chemistry.null_space import null_space
from ionwright.chemistry.skeleton import make_skeleton, read_skeleton
from ionwright.chemistry.species import ELECTRON
from ionwright.teaching.balance_document import balance_document

if TYPE_CHECKING:
    from collections.abc import Callable

pytestmark = pytest.mark.benchmark

SIZES = [(5, 6), (6, 8), (8, 10), (10, 14), (12, 20)]
SKELETONS = [
    ("MnO4^- -> Mn^2+", "acidic"),
    ("Cr2O7^2- -> Cr^3+", "acidic"),
    ("As2S3 -> AsO4^3- + SO4^2-", "acidic"),
    ("Fe(CrO2)2 -> CrO4^2- + Fe2O3", "alkaline"),
    ("MnO4^- + Fe^2+ -> Mn^2+ + Fe^3+", "acidic"),
    ("[Cr(N2H4CO)6]4[Cr(CN)6]3 + MnO4^- -> Cr2O7^2- + CO2 + NO3^- + Mn^2+", "acidic"),
]


LARGE = (
    "H2 + Ca(CN)2 + NaAlF4 + FeSO4 + MgSiO3 + KI + H3PO4 + PbCrO4 + BrCl + CF2Cl2 + SO2 -> PbBr2 + CrCl3 + MgCO3"
    " + KAl(OH)4 + Fe(SCN)3 + PI3 + Na2SiO3 + CaF2 + H2O"
)
REFUSED = [
    ("NO3^- -> NO + N2O + NH4^+", "acidic"),
    ("Na^+ -> K", "acidic"),
    ("Zn^2+ + Cu -> Cu^2+ + Zn + Ag", "acidic"),
    ("AlCl4^- -> Al + Al2Cl7^-", "none"),
    ("MnO4^- + H2O2 -> Mn^2+ + O2", "acidic"),
    ("Fe + O2 -> FeO + Fe2O3", "none"),
]


def microseconds(call: Callable[[], object], number: int = 100) -> float:
    return min(timeit.repeat(call, number=number, repeat=7)) / number * 1e6


def tell(line: str) -> None:
    print(line)  # noqa: T201 - the figures are what a benchmark is run for


def made_up_matrix(rows: int, columns: int) -> list[list[int]]:
    """Entries like those of equations: many zeros, small numbers, both signs."""
    source = random.Random(rows * columns)  # noqa: S311 - the same matrices in every run
    choice = [0, 0, 0, 1, 2, 3, 4, 7, -1, -2, -3, -4]
    return [[source.choice(choice) for _ in range(columns)] for _ in range(rows)]


def matrix_of(text: str, medium: str, *, with_electrons: bool = True) -> tuple[list[list[int]], int]:
    skeleton = make_skeleton(read_skeleton(text), medium)
    free = (*((ELECTRON,) if with_electrons else ()), *skeleton.aids, *skeleton.spectators)
    system = LinearSystem(free, skeleton.left, skeleton.right)
    return list(system.rows().values()), len(system.columns)


def by_flint(flint: Any, matrix: list[list[int]], columns: int) -> list[list[int]]:
    """The null space as plain primitive numbers, which is what ours gives."""
    basis, nullity = flint.fmpz_mat(matrix).nullspace()
    vectors = [[int(basis[row, column]) for row in range(columns)] for column in range(nullity)]
    return [[number // gcd(*vector) for number in vector] for vector in vectors]


def compare(name: str, matrix: list[list[int]], columns: int) -> tuple[float, float, float]:
    """Tell the times, and return how many times as long sympy, ours over flint ready, ours over flint's plain take.

    Ours takes and gives plain lists. For flint three times are told: of its function alone, on a matrix that is in
    its own form already and stays in it; with the way from lists into that form; and with the way back as well.
    """
    sympy = pytest.importorskip("sympy")
    flint = pytest.importorskip("flint")
    ready = flint.fmpz_mat(matrix)
    ours = microseconds(lambda: null_space(matrix, columns))
    general = microseconds(lambda: sympy.Matrix(matrix).nullspace(), 10)
    alone = microseconds(ready.nullspace)
    converted = microseconds(lambda: flint.fmpz_mat(matrix).nullspace())
    plain = microseconds(lambda: by_flint(flint, matrix, columns))
    tell(
        f"\n{name}, {len(matrix)} x {columns}: ours {ours:.1f} us, sympy {general:.0f} us ({general / ours:.1f} x);"
        f" flint on its own form {alone:.1f} us (ours {ours / alone:.1f} x), from lists {converted:.1f} us"
        f" ({ours / converted:.1f} x), from lists to lists {plain:.1f} us ({ours / plain:.1f} x)"
    )
    assert len(null_space(matrix, columns)) == len(sympy.Matrix(matrix).nullspace())
    return general / ours, ours / alone, ours / plain


@pytest.mark.parametrize(("rows", "columns"), SIZES)
def test_elimination_beside_sympy_and_flint(rows: int, columns: int) -> None:
    over_sympy, over_ready, over_plain = compare("made up", made_up_matrix(rows, columns), columns)
    assert over_sympy > 7
    assert over_ready < 40
    assert over_plain < 5


@pytest.mark.parametrize(("text", "medium"), [*SKELETONS, (LARGE, "none")])
def test_elimination_of_real_equations_beside_sympy_and_flint(text: str, medium: str) -> None:
    matrix, columns = matrix_of(text, medium, with_electrons=balance(text, medium).kind != "redox")
    over_sympy, over_ready, over_plain = compare(text, matrix, columns)
    assert over_sympy > 5
    assert over_ready < 20
    assert over_plain < 3


@pytest.mark.parametrize(("text", "medium"), SKELETONS)
def test_a_whole_call_beside_the_null_space_alone(text: str, medium: str) -> None:
    sympy = pytest.importorskip("sympy")
    matrix, columns = matrix_of(text, medium, with_electrons=balance(text, medium).kind != "redox")
    whole = microseconds(lambda: balance(text, medium))
    elimination = microseconds(lambda: null_space(matrix, columns))
    alone = microseconds(lambda: sympy.Matrix(matrix).nullspace(), 10)
    document = microseconds(lambda: balance_document(balance(text, medium)))
    tell(
        f"\n{text}: whole call {whole:.0f} us, elimination {elimination:.1f} us, with steps and notations"
        f" {document:.0f} us; sympy's null space of {len(matrix)} x {columns} alone {alone:.0f} us"
    )
    assert whole < 1.2 * alone


@pytest.mark.parametrize(("text", "medium"), REFUSED)
def test_a_refusal_beside_the_null_space_alone(text: str, medium: str) -> None:
    sympy = pytest.importorskip("sympy")

    def refused() -> None:
        with contextlib.suppress(NoSolution, SeveralSolutions):
            balance(text, medium)

    with pytest.raises((NoSolution, SeveralSolutions)):
        balance(text, medium)
    matrix, columns = matrix_of(text, medium)
    whole = microseconds(refused)
    alone = microseconds(lambda: sympy.Matrix(matrix).nullspace(), 10)
    tell(
        f"\n{text}: refusal {whole:.0f} us; sympy's null space of {len(matrix)} x {columns} alone {alone:.0f} us"
    )
    assert whole < 2 * alone
