"""Each relation, solved for each of its members, with and without uncertainties."""

from fractions import Fraction

import pytest
from uncertainties import ufloat

from ionwright.chemistry.amounts.quantity import Key
from ionwright.chemistry.amounts.relations import ByTrial, Product, Sum, Tabulated

A, B, C, D = (Key(letter) for letter in "abcd")
PRODUCT = Product("product", A, (B, C), (D,), number=Fraction(3, 2))
PRODUCT_VALUES = {A: 4.0, B: 2.0, C: 4.0, D: 3.0}
SUM = Sum("sum", A, (B, C), (D,), constant=1.0)
SUM_VALUES = {A: 4.0, B: 2.0, C: 6.0, D: 5.0}
SQUARE = Tabulated("square", A, B, lambda x: x * x, lambda y: y**0.5)
TRIAL = ByTrial("trial", A, (B, C), lambda b, c: b * c)


@pytest.mark.parametrize("key", [A, B, C, D])
def test_a_product_is_solved_for_each_of_its_members(key: Key) -> None:
    others = {k: value for k, value in PRODUCT_VALUES.items() if k != key}
    assert PRODUCT.solved_for(key, others) == pytest.approx(PRODUCT_VALUES[key], rel=1e-15)


@pytest.mark.parametrize("key", [A, B, C, D])
def test_a_sum_is_solved_for_each_of_its_members(key: Key) -> None:
    others = {k: value for k, value in SUM_VALUES.items() if k != key}
    assert SUM.solved_for(key, others) == pytest.approx(SUM_VALUES[key], rel=1e-15)


@pytest.mark.parametrize(("key", "zero"), [(A, D), (B, C), (C, B), (D, A)])
def test_a_product_gives_nothing_where_it_would_divide_by_zero(key: Key, zero: Key) -> None:
    assert PRODUCT.solved_for(key, {**PRODUCT_VALUES, zero: 0.0}) is None


def test_a_product_with_a_factor_of_zero_is_zero() -> None:
    assert PRODUCT.solved_for(A, {B: 0.0, C: 4.0, D: 3.0}) == 0


def test_a_sum_of_nothing_is_its_constant() -> None:
    assert Sum("nothing", A, ()).solved_for(A, {}) == 0


def test_a_table_is_read_both_ways() -> None:
    assert SQUARE.solved_for(A, {B: 3.0}) == 9.0
    assert SQUARE.solved_for(B, {A: 9.0}) == 3.0


def test_what_is_found_by_trial_is_solved_for_its_result_only() -> None:
    assert TRIAL.solved_for(A, {B: 3.0, C: 5.0}) == 15.0
    assert TRIAL.solved_for(B, {A: 15.0, C: 5.0}) is None


def test_every_relation_lists_its_result_first_among_its_members() -> None:
    assert PRODUCT.members == (A, B, C, D)
    assert SUM.members == (A, B, C, D)
    assert SQUARE.members == (A, B)
    assert TRIAL.members == (A, B, C)


def test_a_rearranged_product_keeps_what_stands_in_it() -> None:
    assert PRODUCT.rearranged(A) == (Fraction(3, 2), (B, C), (D,))
    assert PRODUCT.rearranged(C) == (Fraction(2, 3), (A, D), (B,))
    assert PRODUCT.rearranged(D) == (Fraction(3, 2), (B, C), (A,))


def test_a_rearranged_sum_keeps_what_stands_in_it() -> None:
    assert SUM.rearranged(A) == (1.0, (B, C), (D,))
    assert SUM.rearranged(B) == (-1.0, (A, D), (C,))
    assert SUM.rearranged(D) == (1.0, (B, C), (A,))


def test_relative_uncertainties_of_factors_add_like_the_sides_of_a_right_triangle() -> None:
    found = Product("product", A, (B, C)).solved_for(A, {B: ufloat(10, 0.3), C: ufloat(10, 0.4)})
    assert (found.nominal_value, found.std_dev) == pytest.approx((100, 5))


def test_the_uncertainty_of_a_divisor_goes_into_the_quotient() -> None:
    found = Product("product", A, (B, C)).solved_for(B, {A: 100.0, C: ufloat(10, 0.4)})
    assert (found.nominal_value, found.std_dev) == pytest.approx((10, 0.4))


def test_uncertainties_of_terms_add_like_the_sides_of_a_right_triangle() -> None:
    added = Sum("sum", A, (B, C)).solved_for(A, {B: ufloat(10, 3), C: ufloat(20, 4)})
    subtracted = Sum("sum", A, (B, C)).solved_for(B, {A: ufloat(10, 3), C: ufloat(4, 4)})
    assert (added.nominal_value, added.std_dev) == pytest.approx((30, 5))
    assert (subtracted.nominal_value, subtracted.std_dev) == pytest.approx((6, 5))


def test_an_uncertainty_that_two_terms_share_cancels_in_their_difference() -> None:
    shared = ufloat(10, 3)
    found = Sum("difference", A, (B,), (C,)).solved_for(A, {B: 2 * shared, C: shared})
    assert (found.nominal_value, found.std_dev) == pytest.approx((10, 3))


def test_an_uncertainty_goes_through_a_table_by_its_slope() -> None:
    forth = SQUARE.solved_for(A, {B: ufloat(3, 0.1)})
    back = SQUARE.solved_for(B, {A: ufloat(9, 0.6)})
    assert (forth.nominal_value, forth.std_dev) == pytest.approx((9, 0.6), rel=1e-6)
    assert (back.nominal_value, back.std_dev) == pytest.approx((3, 0.1), rel=1e-6)


def test_an_uncertainty_goes_through_what_is_found_by_trial() -> None:
    found = TRIAL.solved_for(A, {B: ufloat(10, 0.3), C: ufloat(10, 0.4)})
    assert (found.nominal_value, found.std_dev) == pytest.approx((100, 5), rel=1e-6)
