"""Laws of reading quantities: units lead there and back, typing habits change nothing, and no text costs much."""

from __future__ import annotations

import sys
from contextlib import suppress
from decimal import ROUND_HALF_UP, Decimal
from typing import TYPE_CHECKING

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from ionwright.chemistry import units
from ionwright.chemistry.figures import rounded, with_uncertainty
from ionwright.chemistry.unit_words import TOKENS
from ionwright.chemistry.units import Unit, read_unit
from ionwright.chemistry.written_quantity import read_written
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from types import FrameType

PRODUCTS = (
    "A h", "mA h", "A min", "A s", "cm3", "dm3", "m3", "mm3", "cm2", "dm2", "m2", "C/mol", "mC/mol", "A h/mol", "g/mol",
    "kg/kmol", "dm3/mol", "L/mol", "cm3/mol", "1/mol", "1/mmol", "mol/dm3", "mol/L", "mmol/cm3", "g/cm3", "g/dm3",
    "mg/m3", "A/cm2", "mA/cm2", "A/dm2", "um/min", "um/h", "nm/s", "J/(mol K)", "kPa dm3/(mol K)", "GBP/kWh", "p/kWh",
    "kWh/kg", "J/g", "mg/C", "g/(A h)", "1/h", "1/s",
)  # fmt: skip
ALL_UNITS = tuple(read_unit(text) for text in ("1", *TOKENS, *PRODUCTS))
ALIKE = {
    unit: [
        other for other in ALL_UNITS if (other.dimension, other.currency) == (unit.dimension, unit.currency)
    ]
    for unit in ALL_UNITS
}
PAIRS = st.sampled_from(ALL_UNITS).flatmap(
    lambda unit: st.tuples(st.just(unit), st.sampled_from(ALIKE[unit]))
)
NUMBERS = st.decimals(
    min_value=Decimal("1e-6"), max_value=Decimal("1e9"), places=6, allow_nan=False, allow_infinity=False
)
SUPERSCRIPTS = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
TYPED = "0123456789.,+-−±()[]{}eExX×·^*/ \t\n%°µ£€$ACKVmolhsdgikPaunt⁻¹²³₂½٣\u200b\u0301\ud800\U0001d7d8"
MOST_CALLS = 1200
CODES = {
    "unreadable-quantity", "ambiguous-number", "absurd-magnitude", "not-finite", "zero-quantity", "negative-quantity",
    "wrong-dimension",
}  # fmt: skip


def _converted(value: float, given_in: Unit, wanted: Unit) -> float:
    return (value * given_in.si + given_in.offset - wanted.offset) / wanted.si


@given(NUMBERS, PAIRS)
def test_a_quantity_goes_to_any_unit_of_its_dimension_and_back(
    number: Decimal, pair: tuple[Unit, Unit]
) -> None:
    unit, other = pair
    written = read_written(f"{number} {unit.text}")
    assert written.unit == unit
    there = _converted(written.value, unit, other)
    assert _converted(there, other, unit) == pytest.approx(float(number), rel=1e-12, abs=1e-9)


@given(NUMBERS, PAIRS)
def test_a_change_of_unit_is_read_back_as_the_same_size(number: Decimal, pair: tuple[Unit, Unit]) -> None:
    unit, other = pair
    there = _converted(float(number), unit, other)
    if there and not 1e-39 < abs(there) < 1e39:
        return
    read_back = read_written(f"{there!r} {other.text}")
    size = read_back.value * read_back.unit.si + read_back.unit.offset
    assert size == pytest.approx(float(number) * unit.si + unit.offset, rel=1e-12)


@given(
    st.sampled_from([unit.symbol for unit in ALL_UNITS if unit.symbol != "1"]),
    st.sampled_from(["", "^", "**", "up"]),
    st.sampled_from([" ", "·", "*", ".", " * ", "\u00a0"]),
    st.sampled_from(["/", " / ", " per ", "/ "]),
    st.booleans(),
)
def test_a_unit_does_not_depend_on_typing_habits(
    symbol: str, power: str, times: str, slash: str, is_micro_sign: bool
) -> None:
    typed = "".join(
        (char.translate(SUPERSCRIPTS) if power == "up" else power + char) if char in "23" else char
        for char in symbol
    )
    typed = typed.replace(" ", times).replace("/", slash)
    if is_micro_sign:
        typed = "".join("µ" if piece == "u" else piece for piece in typed)
        typed = typed.replace("µmol", "μmol")
    assert read_unit(f" {typed} ") == read_unit(symbol)


@given(st.sampled_from([unit.symbol for unit in ALL_UNITS]))
def test_what_is_shown_is_read_back(symbol: str) -> None:
    unit = read_unit(symbol)
    assert read_unit(unit.text) == unit
    assert unit.symbol == symbol


@given(NUMBERS, st.sampled_from(["A", "dm3/mol", "%", "degC"]))
def test_a_number_does_not_depend_on_typing_habits(number: Decimal, symbol: str) -> None:
    plain = read_written(f"{number} {symbol}")
    comma = f"{number:f}".replace(".", ",")
    for text in (
        f"{number}{symbol}",
        f"+{number}\u202f{symbol}",
        f"{comma} {symbol}",
    ):
        written = read_written(text)
        assert (written.value, written.significant_figures) == (plain.value, plain.significant_figures)


@given(st.decimals(min_value=1, max_value=Decimal("9.999"), places=3), st.integers(-30, 30))
def test_powers_of_ten_may_be_written_in_any_way(mantissa: Decimal, exponent: int) -> None:
    raised = str(exponent).translate(SUPERSCRIPTS)
    for text in (
        f"{mantissa}e{exponent}",
        f"{mantissa} x 10^{exponent}",
        f"{mantissa}·10^{{{exponent}}}",
        f"{mantissa} × 10{raised}",
    ):
        written = read_written(f"{text} mol")
        assert (written.value, written.significant_figures) == (float(f"{mantissa}e{exponent}"), 4)


@given(st.floats(min_value=1e-30, max_value=1e30), st.integers(1, 15))
def test_rounding_is_half_up_on_the_decimal(value: float, figures: int) -> None:
    exact = Decimal(repr(value))
    if figures <= 10:  # noise in the last places of a float is settled first
        settled = Decimal(1).scaleb(exact.adjusted() - 12)
        exact = exact.quantize(settled, ROUND_HALF_UP)
    text = rounded(value, figures)
    step = Decimal(1).scaleb(exact.adjusted() - figures + 1)
    assert Decimal(text) == (exact / step).to_integral_value(ROUND_HALF_UP) * step
    if 1e-3 <= value < 99999 and "e" not in text and figures > 5:
        assert len(text.replace(".", "").lstrip("0")) == figures


@given(st.floats(min_value=-1e12, max_value=1e12), st.floats(min_value=1e-9, max_value=1e12))
def test_an_uncertainty_covers_the_value_shown(value: float, uncertainty: float) -> None:
    rendered, figures = with_uncertainty(value, uncertainty, read_unit("1"))
    assert 1 <= figures <= 16
    shown = read_written(rendered.text)
    if shown.uncertainty is not None:
        assert abs(shown.value - value) <= shown.uncertainty / 2 * (1 + 1e-9)
        assert shown.uncertainty == pytest.approx(uncertainty, rel=0.34)


def _calls(text: str, dimension: str) -> tuple[int, IonwrightError | None]:
    """How many calls of functions a reading takes, and the refusal with which it ends."""
    count = 0

    def counted(_frame: FrameType, event: str, _argument: object) -> None:
        nonlocal count
        count += event in {"call", "c_call"}

    before = sys.getprofile()
    sys.setprofile(counted)
    try:
        read_written(text, dimension=dimension)
    except IonwrightError as refused:
        return count, refused
    finally:
        sys.setprofile(before)
    return count, None


HOSTILE = st.one_of(
    st.text(max_size=100),
    st.text(alphabet=TYPED, max_size=81),
    st.builds("{} {}".format, st.integers(0, 99), st.text(alphabet=TYPED, max_size=41)),
    st.builds(
        "{}{}".format,
        st.sampled_from(["1 ", "1", "("]),
        st.builds(str.__mul__, st.text(TYPED, max_size=4), st.integers(1, 99)),
    ),
)


@given(HOSTILE, st.sampled_from(["", "current", "temperature", "price of energy"]))
@example("1 coulomb" + "b" * 30, "")
@example("1 " + "m/" * 19, "")
@example("1 " + "(" * 39, "")
@example("9" * 79 + "e", "")
@example("1 " * 40, "")
@example("1,1." * 20, "")
@example("1 h " * 20, "time")
@example("1 e" + "9" * 70, "")
@example("10^" * 25, "")
@example("1 __import__('os')", "")
@example("1 " * 1_000_000, "")
def test_a_hostile_text_is_refused_with_little_work_and_without_pint(text: str, dimension: str) -> None:
    """pint answers for single units of the list, once each; a text that is refused never comes near it."""
    worths, judged = units._worth.cache_info().misses, units._judged.cache_info().misses
    calls, refused = _calls(text, dimension)
    if refused is None:
        return
    assert calls < MOST_CALLS
    assert refused.code in CODES
    assert refused.remedy
    assert refused.position is not None
    assert 0 <= refused.position <= len(text)
    assert units._worth.cache_info().misses == worths
    assert units._judged.cache_info().misses <= judged + 2


@given(st.lists(st.sampled_from(sorted(TOKENS)), min_size=1, max_size=6), st.integers(1, 3))
def test_products_do_not_fill_the_memory_of_pint(symbols: list[str], power: int) -> None:
    """pint remembers all it was ever asked, so it is asked for nothing but the units of the list."""
    text = "/".join(f"{symbol}{power}" for symbol in symbols)
    with suppress(IonwrightError):
        read_unit(text)
    assert units._worth.cache_info().currsize <= len(TOKENS)
    assert len(units._registry()._cache.root_units) <= 2 * len(TOKENS)
