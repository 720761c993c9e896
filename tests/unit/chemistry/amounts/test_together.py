"""Several unknowns at once, where sums bind quantities that are in proportion."""

from collections.abc import Callable
from fractions import Fraction

import pytest
from uncertainties import ufloat

from ionwright.chemistry.amounts import Key, WorkedOut
from ionwright.chemistry.amounts.network import solve
from ionwright.chemistry.amounts.relations import Product, Sum
from ionwright.chemistry.amounts.values import Known

A, B, C, D, K, M, R, S, X, Y, Z = (Key(letter) for letter in "abcdkmrsxyz")
ALLOY = {"silver": "Ag^+ + e- -> Ag @ cathode", "copper": "Cu^2+ + 2 e- -> Cu @ cathode"}


def test_two_unknowns_follow_from_two_sums() -> None:
    """x + y = 5 and x − y = 1."""
    solution = solve([Sum("one", S, (X, Y)), Sum("two", R, (X,), (Y,))], [Known(S, 5.0), Known(R, 1.0)])
    assert solution.values[X].number == pytest.approx(3)
    assert solution.values[Y].number == pytest.approx(2)


def test_three_unknowns_follow_from_three_sums() -> None:
    """x + y + z = 6, x + y − z = 0, x − y + z = 2."""
    sums = [Sum("one", A, (X, Y, Z)), Sum("two", B, (X, Y), (Z,)), Sum("three", C, (X, Z), (Y,))]
    solution = solve(sums, [Known(A, 6.0), Known(B, 0.0), Known(C, 2.0)])
    assert [solution.values[key].number for key in (X, Y, Z)] == pytest.approx([1, 2, 3])


def test_one_sum_of_multiples_of_one_unknown_is_enough() -> None:
    """x + 4x + x/2 = 11."""
    relations = [
        Product("four", Y, (X,), number=Fraction(4)),
        Product("half", Z, (Y,), number=Fraction(1, 8)),
        Sum("all", S, (X, Y, Z)),
    ]
    values = solve(relations, [Known(S, 11.0)]).values
    assert [values[key].number for key in (X, Y, Z)] == pytest.approx([2, 8, 1])


def test_proportions_that_meet_later_are_joined() -> None:
    """a = 2x and y = 3z first, then x = y: a = 6z."""
    relations = [
        Product("one", A, (X,), number=Fraction(2)),
        Product("two", Y, (Z,), number=Fraction(3)),
        Product("three", X, (Y,)),
        Sum("all", S, (A, Z)),
    ]
    values = solve(relations, [Known(S, 14.0)]).values
    assert [values[key].number for key in (Z, X, A)] == pytest.approx([2, 6, 12])


def test_two_ways_to_one_proportion_do_not_disturb() -> None:
    relations = [Product("one", Y, (X,)), Product("again", X, (Y,)), Sum("all", S, (X, Y))]
    assert solve(relations, [Known(S, 4.0)]).values[X].number == pytest.approx(2)


def test_a_constant_factor_goes_into_the_proportion() -> None:
    """y = 3x, with the 3 a known quantity, and x + y = 8."""
    values = solve([Product("k", Y, (X, K)), Sum("all", S, (X, Y))], [Known(S, 8.0), Known(K, 3.0)]).values
    assert values[X].number == pytest.approx(2)


def test_a_divisor_goes_into_the_proportion() -> None:
    """y = x/3, and x + y = 8."""
    relations = [Product("k", Y, (X,), (K,)), Sum("all", S, (X, Y))]
    assert solve(relations, [Known(S, 8.0), Known(K, 3.0)]).values[X].number == pytest.approx(6)


def test_unknowns_that_are_not_in_proportion_are_left_alone() -> None:
    """y = 1/x makes nothing linear, nor does a product with a divisor of zero."""
    inverse = [Product("inverse", K, (X, Y)), Sum("all", S, (X, Y))]
    assert X not in solve(inverse, [Known(S, 2.0), Known(K, 1.0)]).values
    divided = [Product("zero", Y, (X,), (K,)), Sum("all", S, (X, Y))]
    assert X not in solve(divided, [Known(S, 2.0), Known(K, 0.0)]).values


@pytest.mark.parametrize("right", [0.0, 1.0])
def test_a_sum_in_which_the_unknown_cancels_but_for_rounding_is_no_equation(right: float) -> None:
    """3 × 0.1 × x − 0.3 × x leaves 5.6e-17 × x, a crumb that says nothing of x."""
    relations = [
        Product("three tenths", A, (X, K), number=Fraction(3)),
        Product("the same", B, (X, M)),
        Sum("difference", R, (A,), (B,)),
    ]
    solution = solve(relations, [Known(K, 0.1), Known(M, 0.3), Known(R, right)])
    assert set(solution.values) == {K, M, R}


def test_an_equation_that_repeats_another_but_for_rounding_settles_nothing() -> None:
    """x + y = 1, and 3 × 0.1 × x + 0.3 × y = 0.3."""
    relations = [
        Product("one", A, (X, K), number=Fraction(3)),
        Product("two", B, (Y, M)),
        Sum("first", S, (X, Y)),
        Sum("second", R, (A, B)),
    ]
    solution = solve(relations, [Known(K, 0.1), Known(M, 0.3), Known(S, 1.0), Known(R, 0.3)])
    assert set(solution.values) == {K, M, S, R}


def test_what_is_settled_is_told_even_where_something_else_is_not() -> None:
    """x + y = 3 and x − y = 1 settle x and y; a + b = 7 settles neither a nor b."""
    sums = [Sum("one", S, (X, Y)), Sum("two", R, (X,), (Y,)), Sum("open", C, (A, B))]
    values = solve(sums, [Known(S, 3.0), Known(R, 1.0), Known(C, 7.0)]).values
    assert [values[key].number for key in (X, Y)] == pytest.approx([2, 1])
    assert A not in values


def test_what_follows_together_is_carried_on() -> None:
    relations = [Sum("one", S, (X, Y)), Sum("two", R, (X,), (Y,)), Product("next", D, (X, Y))]
    assert solve(relations, [Known(S, 5.0), Known(R, 1.0)]).values[D].number == pytest.approx(6)


def test_uncertainties_go_through_equations_solved_together() -> None:
    """x = (s + r) / 2, so that its deviation is half of √(3² + 4²)."""
    sums = [Sum("one", S, (X, Y)), Sum("two", R, (X,), (Y,))]
    found = solve(sums, [Known(S, ufloat(50, 0.3)), Known(R, ufloat(10, 0.4))]).values[X].number
    assert (found.nominal_value, found.std_dev) == pytest.approx((30, 0.25))


def test_two_masses_follow_from_the_total_mass_and_the_charge(find: Callable[..., list[float]]) -> None:
    """0.020 mol Ag and 0.010 mol Cu: 2.158 g + 0.635 g = 2.793 g, with 0.040 mol of electrons, 3860 C."""
    known = {"total_mass": "2.793 g", "charge": "3860 C"}
    found = find(ALLOY, known, ("mass", "Ag"), ("mass", "Cu"))
    assert found == pytest.approx([2.158, 0.635], rel=1e-9)


def test_the_shares_of_the_current_follow_too(find: Callable[..., list[float]]) -> None:
    known = {"total_mass": "2.793 g", "charge": "3860 C"}
    found = find(ALLOY, known, ("share", "Ag"), ("share", "Cu"))
    assert found == pytest.approx([0.5, 0.5], rel=1e-9)


def test_the_charge_follows_from_the_total_mass_and_a_ratio(find: Callable[..., list[float]]) -> None:
    """A quarter of the current gives copper: 0.030 mol Ag to 0.005 mol Cu, 3.237 g + 0.3175 g."""
    known = {"total_mass": "3.5545 g", ("share", "Cu"): "25%"}
    assert find(ALLOY, known, "charge") == pytest.approx([3860], rel=1e-9)


def test_a_mass_found_together_tells_its_equations_and_its_givens(work: Callable[..., WorkedOut]) -> None:
    worked = work(ALLOY, {"total_mass": "2.793 g", "charge": "3860 C"}, ("mass", "Ag"))
    chain = [worked.values[Key("mass", "silver", "Ag")]]
    while not chain[-1].together:
        chain.append(max((worked.values[key] for key in chain[-1].inputs), key=lambda v: bool(v.relation)))
    assert chain[0].given == {Key("total_mass"), Key("charge")}
    assert len(chain[-1].together) == 2


def test_more_mass_than_the_charge_can_give_is_a_contradiction(refusal: Callable[..., Exception]) -> None:
    """All of 3860 C gives 4.316 g of silver at most."""
    fault = refusal(ALLOY, {"total_mass": "5.00 g", "charge": "3860 C"}, ("mass", "Ag"), ("mass", "Cu"))
    assert fault.code == "contradictory"
    assert fault.where in {"known/total_mass", "known/charge"}
