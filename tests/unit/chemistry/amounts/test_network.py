"""The solver: what follows from what, what contradicts, and what could be reached."""

from collections.abc import Sequence

import pytest
from uncertainties import ufloat

from ionwright.chemistry.amounts.network import reachable, solve
from ionwright.chemistry.amounts.quantity import Key
from ionwright.chemistry.amounts.relations import Product, Relation, Sum
from ionwright.chemistry.amounts.values import EXACT, Known

Q, CURRENT, T, N, F = (
    Key(name) for name in ("charge", "current", "time", "amount_of_electrons", "faraday_constant")
)
CHARGE = Product("charge", Q, (CURRENT, T))
FARADAY = Product("faraday", Q, (N, F))
CHAIN = (CHARGE, FARADAY)
CONSTANT = Known(F, 96500.0, slack=0.0005, is_given=False)
A, B, C = (Key(letter) for letter in "abc")
SUM = Sum("sum", A, (B, C))


def test_a_chain_of_relations_is_followed_in_either_direction() -> None:
    forth = solve(CHAIN, [Known(CURRENT, 0.5, 2), Known(T, 1930.0, 4), CONSTANT])
    back = solve(CHAIN, [Known(N, 0.01, 2), Known(T, 1930.0, 4), CONSTANT])
    assert forth.values[N].number == pytest.approx(0.01)
    assert back.values[CURRENT].number == pytest.approx(0.5)


def test_a_value_knows_from_which_relation_and_which_givens_it_follows() -> None:
    values = solve(CHAIN, [Known(CURRENT, 0.5, 2), Known(T, 1930.0, 4), CONSTANT]).values
    assert (values[N].relation, values[N].inputs) == (FARADAY, (Q, F))
    assert values[N].given == {CURRENT, T}
    assert values[CURRENT].relation is None
    assert values[F].given == frozenset()


def test_a_product_has_the_figures_of_its_poorest_member() -> None:
    values = solve(CHAIN, [Known(CURRENT, 0.5, 2), Known(T, 1930.0, 4), CONSTANT]).values
    assert values[N].figures == 2
    assert values[F].figures == EXACT


@pytest.mark.parametrize(
    ("one", "other", "figures"),
    [
        ((10.1, 3), (1.25, 3), 3),
        ((9.9, 2), (0.35, 2), 3),
        ((120.0, 2), (1.5, 2), 2),
        ((1.0, EXACT), (0.25, 2), 3),
        ((1.0, EXACT), (2.0, EXACT), EXACT),
        ((0.0, 1), (0.25, 2), 2),
    ],
)
def test_a_sum_ends_at_the_coarsest_last_place(
    one: tuple[float, int], other: tuple[float, int], figures: int
) -> None:
    values = solve([SUM], [Known(B, *one), Known(C, *other)]).values
    assert values[A].figures == figures


@pytest.mark.parametrize(
    ("whole", "part", "figures"),
    [
        ((12.3, 3), (12.1, 3), 1),
        ((12.30, 4), (2.3, 2), 3),
        ((0.30, 2), (0.20, 2), 2),
        ((1.0, 2), (0.97, 2), 1),
        ((5.0, 2), (5.0, 2), 1),
    ],
)
def test_a_difference_of_like_figures_keeps_few_of_them(
    whole: tuple[float, int], part: tuple[float, int], figures: int
) -> None:
    values = solve([SUM], [Known(A, *whole), Known(B, *part)]).values
    assert values[C].figures == figures


def test_values_that_go_together_do_not_clash() -> None:
    solution = solve([CHARGE], [Known(Q, 600.0, 3), Known(CURRENT, 0.5, 2), Known(T, 1200.0, 4)])
    assert solution.clashes == ()


def test_a_clash_tells_a_given_member_what_it_would_have_to_be_and_why() -> None:
    (clash,) = solve([CHARGE], [Known(Q, 700.0, 3), Known(CURRENT, 0.5, 2), Known(T, 1200.0, 4)]).clashes
    assert (clash.relation, clash.key) == (CHARGE, Q)
    assert (clash.value, clash.other) == (700.0, 600.0)
    assert clash.rests_on == {CURRENT, T}


def test_a_clash_of_derived_values_tells_the_result() -> None:
    x, y, z = (Key(letter) for letter in "xyz")
    relations = [Product("ab", A, (B,)), Product("xy", x, (y,)), Product("az", A, (x, z))]
    (clash,) = solve(relations, [Known(B, 6.0, 2), Known(y, 2.0, 2), Known(z, 4.0, is_given=False)]).clashes
    assert clash.key == A
    assert (clash.value, clash.other) == (6.0, 8.0)
    assert clash.rests_on == {y}


@pytest.mark.parametrize(("charge_C", "count"), [(603.0, 0), (607.0, 1)])
def test_rounding_of_the_last_written_place_is_no_contradiction(charge_C: float, count: int) -> None:
    """0.50 A may be anything from 0.495 to 0.505 A, so that 600 C may be 594 to 606 C."""
    known = [Known(Q, charge_C, EXACT), Known(CURRENT, 0.5, 2, slack=0.01), Known(T, 1200.0, EXACT)]
    assert len(solve([CHARGE], known).clashes) == count


@pytest.mark.parametrize(("charge_C", "count"), [(600.2, 0), (601.0, 1)])
def test_exact_values_may_differ_by_half_a_thousandth(charge_C: float, count: int) -> None:
    known = [Known(Q, charge_C), Known(CURRENT, 0.5), Known(T, 1200.0)]
    assert len(solve([CHARGE], known).clashes) == count


@pytest.mark.parametrize(("charge_C", "count"), [(618.0, 0), (640.0, 1)])
def test_values_within_two_deviations_go_together(charge_C: float, count: int) -> None:
    known = [Known(Q, charge_C), Known(CURRENT, ufloat(0.5, 0.01)), Known(T, 1200.0)]
    assert len(solve([CHARGE], known).clashes) == count


@pytest.mark.parametrize(("rest", "count"), [(0.0, 0), (0.5, 1)])
def test_nothing_clashes_only_with_something(rest: float, count: int) -> None:
    known = [Known(A, 2.0), Known(B, 2.0), Known(C, rest)]
    assert len(solve([SUM], known).clashes) == count


def test_the_difference_of_two_rounded_values_may_be_off_by_what_both_are() -> None:
    """12.3 − 12.1 may be anything from 0.1 to 0.3."""
    known = [Known(A, 12.3, 3, slack=0.05 / 12.3), Known(B, 12.1, 3, slack=0.05 / 12.1)]
    assert solve([SUM], [*known, Known(C, 0.29)]).clashes == ()
    assert len(solve([SUM], [*known, Known(C, 0.33)]).clashes) == 1


def test_a_relation_that_would_divide_by_zero_gives_nothing_and_contradicts_nothing() -> None:
    solution = solve([CHARGE], [Known(Q, 0.0), Known(CURRENT, 0.0)])
    assert T not in solution.values
    everything = solve([CHARGE], [Known(Q, 0.0, is_given=False), Known(CURRENT, 0.0), Known(T, 0.0)])
    assert everything.clashes == ()


@pytest.mark.parametrize(
    ("known", "expected"),
    [
        ((CURRENT, T), {CURRENT, T, Q}),
        ((CURRENT, T, F), {CURRENT, T, Q, F, N}),
        ((CURRENT,), {CURRENT}),
        ((N, F, T), {N, F, T, Q, CURRENT}),
    ],
)
def test_what_could_be_reached_does_not_depend_on_values(known: Sequence[Key], expected: set[Key]) -> None:
    relations: tuple[Relation, ...] = CHAIN
    assert reachable(relations, known) == expected
