"""Temperatures and current densities as people write them."""

import pytest

from ionwright.chemistry.conditions import read_current_density, read_temperature
from ionwright.errors import IonwrightError


@pytest.mark.parametrize(
    ("text", "temperature_C"),
    [
        ("25 degC", 25), ("25degC", 25), ("  20 °C ", 20), ("20 ℃", 20), ("20 C", 20), ("298.15 K", 25),
        ("0 K", -273.15),
        ("-5 degC", -5), ("−5 degC", -5), ("+60 degC", 60), ("1e3 degC", 1000), ("1.5E2 K", -123.15), ("25   degC", 25),
        ("25\u00a0degC", 25), ("-273.15 degC", -273.15), ("999999 degC", 999999),
    ],
)  # fmt: skip
def test_a_temperature_is_read_in_degrees_celsius(text: str, temperature_C: float) -> None:
    assert read_temperature(text) == pytest.approx(temperature_C)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "unreadable-quantity"), ("25", "unreadable-quantity"), ("20.5", "unreadable-quantity"),
        ("20e5", "unreadable-quantity"), ("degC", "unreadable-quantity"), ("warm", "unreadable-quantity"),
        ("nan degC", "unreadable-quantity"), ("inf K", "unreadable-quantity"), ("1,5 degC", "unreadable-quantity"),
        (".5 degC", "unreadable-quantity"), ("25. degC", "unreadable-quantity"),
        ("- 5 degC", "unreadable-quantity"),
        ("--5 degC", "unreadable-quantity"), ("25 deg C", "unreadable-quantity"),
        ("25 degC now", "unreadable-quantity"),
        ("25    degC", "unreadable-quantity"), ("1234567 K", "unreadable-quantity"), ("1e999 K", "unreadable-quantity"),
        ("9" * 41 + " K", "unreadable-quantity"), ("0" * 100_000, "unreadable-quantity"),
        ("25\ndegC\n1", "unreadable-quantity"),
        ("25 \N{SUPERSCRIPT TWO}degC!!!!!!!!!!", "unreadable-quantity"),
        ("77 F", "wrong-dimension"), ("25 mol/dm3", "wrong-dimension"), ("25 degc", "wrong-dimension"),
        ("25 k", "wrong-dimension"), ("10 mA/cm2", "wrong-dimension"), ("25 degC;", "wrong-dimension"),
        ("-1 K", "below-absolute-zero"), ("-273.16 degC", "below-absolute-zero"), ("-1e99 K", "below-absolute-zero"),
    ],
)  # fmt: skip
def test_a_text_that_is_no_temperature_is_refused_with_its_reason(text: str, code: str) -> None:
    with pytest.raises(IonwrightError) as refusal:
        read_temperature(text)
    assert refusal.value.code == code
    assert refusal.value.remedy


@pytest.mark.parametrize(
    ("text", "density_A_cm2"),
    [
        ("10 mA/cm2", 0.01), ("10 mA/cm^2", 0.01), ("10 mA/cm²", 0.01), ("0.01 A/cm2", 0.01), ("1 A/dm2", 0.01),
        ("1 A/dm^2", 0.01), ("1 A/dm²", 0.01), ("100 A/m2", 0.01), ("100 A/m^2", 0.01), ("100 A/m²", 0.01),
        ("1000 A/cm2", 1000), ("1000 A/cm^2", 1000), ("2 A/cm²", 2), ("1e-9 A/cm2", 1e-9),
    ],
)  # fmt: skip
def test_a_current_density_is_read_in_amperes_per_square_centimetre(text: str, density_A_cm2: float) -> None:
    assert read_current_density(text) == pytest.approx(density_A_cm2)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "unreadable-quantity"), ("10", "unreadable-quantity"), ("10 mA/cm 2", "unreadable-quantity"),
        ("ten mA/cm2", "unreadable-quantity"), ("10 mA cm-2", "unreadable-quantity"), ("10 mA", "wrong-dimension"),
        ("10 A", "wrong-dimension"), ("25 degC", "wrong-dimension"), ("10 MA/cm2", "wrong-dimension"),
        ("0 A/cm2", "out-of-range"), ("-1 A/cm2", "out-of-range"), ("1001 A/cm2", "out-of-range"),
        ("1e99 A/cm2", "out-of-range"),
    ],
)  # fmt: skip
def test_a_text_that_is_no_current_density_is_refused_with_its_reason(text: str, code: str) -> None:
    with pytest.raises(IonwrightError) as refusal:
        read_current_density(text)
    assert refusal.value.code == code
    assert refusal.value.remedy


def test_a_refusal_repeats_no_more_than_forty_characters_of_a_long_text() -> None:
    with pytest.raises(IonwrightError) as refusal:
        read_temperature("x" * 10_000)
    assert refusal.value.detail == f"'{'x' * 40}' is not a number with a unit."


def test_a_refusal_shows_what_would_be_right() -> None:
    with pytest.raises(IonwrightError) as refusal:
        read_temperature("20")
    assert str(refusal.value) == "'20' is not a number with a unit. Write a temperature such as 25 degC."
