"""Laws of balancing: what was taken apart comes back, whatever its order, scale or spelling."""

from __future__ import annotations

from math import gcd
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from ionwright.chemistry.balancing import Balanced, balance, balance_equation
from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, WATER, couples
from ionwright.chemistry.equation import Equation, Term
from ionwright.chemistry.faults import NoSolution, SeveralSolutions
from ionwright.chemistry.linear_system import LinearSystem
from ionwright.chemistry.null_space import null_space
from ionwright.chemistry.species import Species, species
from ionwright.teaching.board import board_steps

if TYPE_CHECKING:
    from collections.abc import Iterable

OF_THE_MEDIUM = {WATER, HYDROGEN_ION, HYDROXIDE}
HALF_EQUATIONS = [couple.reduction for couple in couples().values()]
HALVES = [
    pytest.param(half, id=f"{couple.name}{mark}")
    for couple in couples().values()
    for half, mark in ((couple.reduction, ""), (couple.reduction.reversed(), " reversed"))
]


def skeleton(half: Equation) -> Equation:
    """What is left of a half-equation without numbers, electrons and what the medium supplies."""

    def stripped(kinds: tuple[Species, ...]) -> tuple[Term, ...]:
        principal = [kind for kind in kinds if kind not in OF_THE_MEDIUM]
        return tuple(Term(kind) for kind in principal or kinds)

    return Equation(stripped(half.reactants), stripped(half.products))


def medium(half: Equation) -> str:
    kinds = {*half.reactants, *half.products}
    if HYDROXIDE in kinds:
        return "alkaline"
    return "acidic" if kinds & OF_THE_MEDIUM else "none"


def amounts(terms: Iterable[Term]) -> set[tuple[Species, int]]:
    return {(term.species, int(term.coefficient)) for term in terms}


@pytest.mark.parametrize("half", HALVES)
def test_every_couple_comes_back_from_its_skeleton(half: Equation) -> None:
    found = balance_equation(skeleton(half), medium(half))
    assert amounts(found.equation.left) == amounts(half.left)
    assert amounts(found.equation.right) == amounts(half.right)
    assert found.kind == ("reduction" if half.electrons > 0 else "oxidation")
    assert board_steps(found)[-1].equation == found.equation


@pytest.mark.parametrize("half", HALVES)
def test_every_couple_comes_back_from_its_text(half: Equation) -> None:
    written = skeleton(half)
    assert balance(written.ascii, medium(half)).equation == balance_equation(written, medium(half)).equation


@given(
    st.lists(st.lists(st.integers(-30, 30), min_size=6, max_size=6), max_size=9),
)
@settings(deadline=None)
def test_the_null_space_is_all_of_it_and_nothing_else(matrix: list[list[int]]) -> None:
    basis = null_space(matrix, 6)
    for vector in basis:
        assert all(sum(a * b for a, b in zip(row, vector, strict=True)) == 0 for row in matrix)
        assert gcd(*vector) == 1
    # as many vectors as there are rows that the orthogonal complement leaves over
    complement = null_space(basis, 6) if basis else [()] * 6
    assert len(basis) + len(complement) == 6


SYMBOLS = ("C", "N", "S", "P", "K", "V")
made_up = st.tuples(
    st.integers(1, 40), st.dictionaries(st.sampled_from(SYMBOLS), st.integers(1, 9), min_size=1, max_size=3)
)


@given(st.lists(made_up, min_size=1, max_size=4), st.lists(made_up, max_size=3))
@settings(deadline=None, max_examples=400)
def test_numbers_are_recovered_from_made_up_species(
    left: list[tuple[int, dict[str, int]]], right: list[tuple[int, dict[str, int]]]
) -> None:
    """The last product is made of what the others leave over, so the numbers balance, its own being 1."""
    rest = dict.fromkeys(SYMBOLS, 0)
    for sign, side in ((1, left), (-1, right)):
        for number, atoms in side:
            for symbol, count in atoms.items():
                rest[symbol] += sign * number * count
    assume(min(rest.values()) >= 0 and any(rest.values()))
    right = [*right, (1, {symbol: count for symbol, count in rest.items() if count})]
    sides = [
        [species("".join(f"{s}{n if n > 1 else ''}" for s, n in atoms.items())) for _, atoms in side]
        for side in (left, right)
    ]
    assume(len({*sides[0], *sides[1]}) == len(left) + len(right))
    solutions = LinearSystem((), tuple(sides[0]), tuple(sides[1])).solutions()
    assert solutions.inner is not None
    if len(solutions.basis) == 1:
        expected = [number for number, _ in left] + [-number for number, _ in right]
        assert [*solutions.net(solutions.inner).values()] == expected
    else:
        found = [*map(solutions.net, (solutions.inner,)), *solutions.independent()]
        assert len(found) == len(solutions.basis) + 1
        for net in found:
            for symbol in SYMBOLS:
                assert sum(number * dict(kind.atoms).get(symbol, 0) for kind, number in net.items()) == 0


@given(
    st.lists(
        st.sampled_from(
            ["e-", "H2O", "H^+", "OH^-", "O2", "H2O2", "Cl2", "Cl^-", "ClO^-", "NO", "N2O", "NO3^-", "FeO"]
        ),
        min_size=2,
        max_size=9,
        unique=True,
    ),
    st.data(),
)
@settings(deadline=None, max_examples=300)
def test_solutions_without_a_species_are_those_of_the_smaller_system(
    names: list[str], data: st.DataObject
) -> None:
    kinds = tuple(map(species, names))
    first, cut = sorted(data.draw(st.lists(st.integers(1, len(kinds)), min_size=2, max_size=2)))
    free, left, right = kinds[:first], kinds[first:cut], kinds[cut:]
    gone = data.draw(st.lists(st.sampled_from(free), unique=True))
    smaller = LinearSystem(tuple(kind for kind in free if kind not in gone), left, right).solutions()
    found = LinearSystem(free, left, right).solutions().without(*gone)
    assert found == smaller
    assert (found.inner, found.refutation) == (smaller.inner, smaller.refutation)


@pytest.mark.parametrize(
    "text",
    [
        "MnO4^- + C2O4^2- -> Mn^2+ + CO2",
        "CuFeS2 + NO3^- -> Cu^2+ + Fe^3+ + SO4^2- + NO",
        "[Cr(N2H4CO)6]4[Cr(CN)6]3 + MnO4^- -> Cr2O7^2- + CO2 + NO3^- + Mn^2+",
        "As2S3 -> AsO4^3- + SO4^2-",
    ],
)
@given(data=st.data())
@settings(deadline=None, max_examples=25)
def test_order_and_scale_do_not_matter(text: str, data: st.DataObject) -> None:
    expected = balance(text, "acidic").equation
    sides = [side.split(" + ") for side in text.split(" -> ")]
    shuffled = [data.draw(st.permutations(side)) for side in sides]
    numbered = [[f"{data.draw(st.integers(1, 40))}{term}" for term in side] for side in shuffled]
    found = balance(" -> ".join(" + ".join(side) for side in numbered), "acidic").equation
    assert amounts(found.left) == amounts(expected.left)
    assert amounts(found.right) == amounts(expected.right)


KINDS = sorted({kind for half in HALF_EQUATIONS for kind in (*half.reactants, *half.products)}, key=str)


def answer_or_refusal(given_equation: Equation, where: str) -> Balanced | NoSolution | SeveralSolutions:
    try:
        return balance_equation(given_equation, where)
    except (NoSolution, SeveralSolutions) as refusal:
        return refusal


sides = st.lists(st.sampled_from(KINDS), min_size=1, max_size=4, unique=True)


@given(sides, sides, st.sampled_from(["acidic", "alkaline", "neutral", "molten", "none"]))
@settings(deadline=None, max_examples=400)
def test_any_answer_keeps_its_promises(left: list[Species], right: list[Species], where: str) -> None:
    given_equation = Equation(tuple(map(Term, left)), tuple(map(Term, right)))
    found = answer_or_refusal(given_equation, where)
    if isinstance(found, NoSolution):
        assert found.detail.endswith(".")
        return
    if isinstance(found, SeveralSolutions):
        assert len(found.basis) > 1
        assert all(equation.is_balanced for equation in found.basis)
        return
    equation = found.equation
    assert equation.is_balanced
    numbers = [int(term.coefficient) for term in (*equation.left, *equation.right)]
    assert gcd(*numbers) == 1
    assert {*found.skeleton.left} <= {*equation.reactants}
    assert {*found.skeleton.right} <= {*equation.products}
    added = {*equation.reactants, *equation.products} - {*left, *right}
    assert added <= {*found.skeleton.aids, HYDROGEN_ION, HYDROXIDE}
    if where == "neutral":
        assert not ({HYDROGEN_ION, HYDROXIDE} & {*equation.reactants}) - {*left}
    steps = board_steps(found)
    assert steps[-1].equation == equation
