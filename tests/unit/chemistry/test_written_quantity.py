"""Quantities as people write them: the number, its figures, its unit, its uncertainty, and what is refused."""

import pytest

from ionwright.chemistry.written_quantity import expect, read_written
from ionwright.errors import IonwrightError


@pytest.mark.parametrize(
    ("text", "value", "unit", "figures"),
    [
        ("0.50 A", 0.5, "A", 2), ("0.50A", 0.5, "A", 2), ("  0.50   A ", 0.5, "A", 2), (".5 A", 0.5, "A", 1),
        ("0,50 A", 0.5, "A", 2), ("12,5 A", 12.5, "A", 3), ("0,500 A", 0.5, "A", 3), ("1,5000 A", 1.5, "A", 5),
        ("1500,125 A", 1500.125, "A", 7), ("1.500 A", 1.5, "A", 4), ("20. s", 20, "s", 2), (",5 A", 0.5, "A", 1),
        ("20 min", 20, "min", 2), ("0.050 A", 0.05, "A", 2), ("1500 s", 1500, "s", 4), ("007 s", 7, "s", 1),
        ("0 A", 0, "A", 1), ("0.00 A", 0, "A", 2), ("100", 100, "1", 3), ("95 %", 95, "%", 2), ("95%", 95, "%", 2),
        ("96 500 C/mol", 96500, "C/mol", 5), ("96\u2009485.33 C/mol", 96485.33, "C/mol", 7),
        ("96\u202f485,33 C/mol", 96485.33, "C/mol", 7), ("96 485.332 12 C mol-1", 96485.33212, "C/mol", 10),
        ("6.022 140 76e23 /mol", 6.02214076e23, "1/mol", 9), ("0.500 1/mol", 0.5, "1/mol", 3),
        ("6.02e23 /mol", 6.02e23, "1/mol", 3), ("6.02E+23 mol⁻¹", 6.02e23, "1/mol", 3),
        ("6.02×10^23 mol⁻¹", 6.02e23, "1/mol", 3), ("6.02 x 10²³", 6.02e23, "1", 3),
        ("6.02 X 10^{23}", 6.02e23, "1", 3), ("6.02 * 10**23", 6.02e23, "1", 3), ("6.02·10^(23)", 6.02e23, "1", 3),
        ("1.6×10⁻¹⁹ C", 1.6e-19, "C", 2), ("1.6 x 10-19 C", 1.6e-19, "C", 2), ("1.6e−19C", 1.6e-19, "C", 2),
        ("5 eV", 5, "eV", 1), ("5e3 eV", 5000, "eV", 1), ("1e40", 1e40, "1", 1), ("1e-40", 1e-40, "1", 1),
        ("-5 degC", -5, "degC", 1), ("−5 °C", -5, "degC", 1), ("- 5 °C", -5, "degC", 1), ("+25 °C", 25, "degC", 2),
        ("５０ mA", 50, "mA", 2), ("0.5\tA", 0.5, "A", 1), ("2.5 kW h", 2.5, "kWh", 2),
        ("0.12345678901234567890 A", 0.12345678901234568, "A", 15),
        ("£0.28/kWh", 0.28, "GBP/kWh", 2), ("$ 0.30 per kWh", 0.3, "USD/kWh", 2), ("€0,25/kWh", 0.25, "EUR/kWh", 2),
        ("GBP 0.28/kWh", 0.28, "GBP/kWh", 2), ("Rs. 5 per kWh", 5, "INR/kWh", 1), ("RM 0.57", 0.57, "MYR", 2),
        ("760 mm Hg", 760, "mmHg", 3), ("760 mm of mercury", 760, "mmHg", 3), ("25 ºC", 25, "degC", 2),
        ("25 ˚C", 25, "degC", 2), ("25º C", 25, "degC", 2), ("100 \u2126", 100, "ohm", 3),
        ("28 p/kWh", 28, "p/kWh", 2), ("0.28 £/kWh", 0.28, "GBP/kWh", 2), ("£5", 5, "GBP", 1),
    ],
)  # fmt: skip
def test_a_quantity_is_read(text: str, value: float, unit: str, figures: int) -> None:
    written = read_written(text)
    assert (written.value, written.unit.symbol, written.significant_figures) == (value, unit, figures)
    assert (written.text, written.uncertainty, written.is_mixed) == (text, None, False)


@pytest.mark.parametrize(
    ("text", "value", "unit", "figures"),
    [
        ("1 h 20 min", 80, "min", 2), ("20 min 30 s", 1230, "s", 4), ("1h20min", 80, "min", 2),
        ("1 h 2 min", 62, "min", 2),
        ("1 hour and 20 minutes", 80, "min", 2), ("1 h, 20 min", 80, "min", 2), ("1 h 20 min 30 s", 4830, "s", 4),
        ("2 days 3 h", 51, "h", 2), ("20 min 30.5 s", 1230.5, "s", 5), ("20 min 30,50 s", 1230.5, "s", 6),
        ("1 H 20 MIN.", 80, "min", 2), ("0 min 5 s", 5, "s", 1), ("0 h 0 min", 0, "min", 1), ("2 h 30 s", 7230, "s", 4),
        ("0 min 0.0000000 s", 0, "s", 1),
        # minutes are meant behind hours
        ("1h 20m", 80, "min", 2), ("1h20m", 80, "min", 2), ("1 h 20 m 30 s", 4830, "s", 4), ("1 h 20", 80, "min", 2),
        ("1h20", 80, "min", 2), ("1h05", 65, "min", 2), ("1h3", 63, "min", 2), ("1 hour 5.", 65, "min", 2),
        ("1 d 1 h 20", 1520, "min", 4),
        ("-1 h 20 min", -80, "min", 2), ("−1h 20m", -80, "min", 2), ("- 20 min 30 s", -1230, "s", 4),
        ("+1 h 20 min", 80, "min", 2),
    ],
)  # fmt: skip
def test_a_time_may_be_given_in_several_units(text: str, value: float, unit: str, figures: int) -> None:
    written = read_written(text, dimension="time")
    assert (written.value, written.unit.symbol, written.significant_figures) == (value, unit, figures)
    assert (written.text, written.is_mixed) == (text, True)


@pytest.mark.parametrize(
    ("text", "value", "uncertainty", "unit"),
    [
        ("0.50 ± 0.01 A", 0.5, 0.01, "A"), ("(0.50 ± 0.01) A", 0.5, 0.01, "A"), ("0.50 A ± 0.01 A", 0.5, 0.01, "A"),
        ("0.50 A ± 0.01", 0.5, 0.01, "A"), ("0.50±0.01A", 0.5, 0.01, "A"), ("0.50 +/- 0.01 A", 0.5, 0.01, "A"),
        ("0.50 +- 0.01 A", 0.5, 0.01, "A"), ("0.50 + / - 0.01 A", 0.5, 0.01, "A"), ("0,50 ± 0,01 A", 0.5, 0.01, "A"),
        ("0.50 A ± 2 %", 0.5, 0.01, "A"), ("-0.50 V ± 2%", -0.5, 0.01, "V"), ("95 % ± 2 %", 95, 2, "%"),
        ("95 ± 2 %", 95, 2, "%"), ("0.5 A ± 10 mA", 0.5, 0.01, "A"), ("25 °C ± 1 K", 25, 1, "degC"),
        ("0.500(2) A", 0.5, 0.002, "A"), ("96485.3(12) C/mol", 96485.3, 1.2, "C/mol"),
        ("6.02(1)e23 /mol", 6.02e23, 1e21, "1/mol"),
        ("120(3) s", 120, 3, "s"), ("(6.02 ± 0.01) × 10^23 /mol", 6.02e23, 1e21, "1/mol"),
        ("(6.02 ± 0.01)e23", 6.02e23, 1e21, "1"),
        ("20 min 30 s ± 5 s", 1230, 5, "s"), ("1 h 20 min ± 30 s", 80, 0.5, "min"), ("12 ± 3", 12, 3, "1"),
        ("£0.28/kWh ± 5%", 0.28, 0.014, "GBP/kWh"),
        ("0.50 (±0.01) A", 0.5, 0.01, "A"), ("0.50(± 0.01)A", 0.5, 0.01, "A"), ("0.50 (+/- 0.01) A", 0.5, 0.01, "A"),
        ("0.50 A (±0.01 A)", 0.5, 0.01, "A"), ("0.50 A (± 2 %)", 0.5, 0.01, "A"), ("0.50 A (±0.01)", 0.5, 0.01, "A"),
        ("6.02 (±0.01) × 10^23 /mol", 6.02e23, 1e21, "1/mol"), ("1 h 20 (± 5 min)", 80, 5, "min"),
        ("8.31 J/(mol K) (± 0.01 J/(mol K))", 8.31, 0.01, "J/(mol K)"),
        ("8.31 (±0.01) J/(mol K)", 8.31, 0.01, "J/(mol K)"),
    ],
)  # fmt: skip
def test_an_uncertainty_is_read(text: str, value: float, uncertainty: float, unit: str) -> None:
    written = read_written(text)
    assert (written.value, written.unit.symbol) == (value, unit)
    assert written.uncertainty == pytest.approx(uncertainty, rel=1e-12)


def test_the_letter_c_is_read_as_what_is_expected() -> None:
    assert read_written("25 C").unit.symbol == "C"
    assert read_written("25 C", dimension="temperature").unit.symbol == "degC"
    assert read_written("25 ± 1 C", dimension="temperature").unit.symbol == "degC"


@pytest.mark.parametrize(
    ("text", "code", "position", "hint"),
    [
        ("", "unreadable-quantity", 0, '"0.50 A"'), ("   ", "unreadable-quantity", 0, '"0.50 A"'),
        ("A", "unreadable-quantity", 0, '"0.50 A"'), ("about 5 A", "unreadable-quantity", 0, '"0.50 A"'),
        ("½ h", "unreadable-quantity", 0, '"0.50 A"'), ("warm", "unreadable-quantity", 0, '"0.50 A"'),
        ("XYZ 5", "unreadable-quantity", 0, '"0.50 A"'), ("£", "unreadable-quantity", 0, '"0.50 A"'),
        ("£.", "unreadable-quantity", 0, '"0.50 A"'), ("£5 A", "unreadable-quantity", 2, "Write"),
        ("£5/xyzzy", "unreadable-quantity", 2, "understood"), ("5 xyzzy", "unreadable-quantity", 2, "understood"),
        (" 5 A;", "unreadable-quantity", 4, "understood"), ("5 m\ns", "unreadable-quantity", 3, "understood"),
        ("0.5.3 A", "unreadable-quantity", 0, "one decimal point"),
        ("12, A", "unreadable-quantity", 0, "one decimal point"),
        ("1..2 A", "unreadable-quantity", 0, "one decimal point"),
        ("1,2,3 A", "unreadable-quantity", 0, "one decimal point"),
        ("1 20 A", "unreadable-quantity", 0, "without spaces"),
        ("1234 500 A", "unreadable-quantity", 0, "without spaces"),
        ("10^-3 mol", "unreadable-quantity", 0, '"1 x 10^-3 mol"'),
        ("10⁻³ mol", "unreadable-quantity", 0, '"1 x 10⁻³ mol"'),
        ("5-10 A", "unreadable-quantity", 0, "± 0.01"), ("5 A to 10 A", "unreadable-quantity", 0, "± 0.01"),
        ("1.5 h 20 min", "unreadable-quantity", 0, "1 h 20 min"),
        ("20 min 1 h", "unreadable-quantity", 0, "1 h 20 min"),
        ("1 h 75", "unreadable-quantity", 0, "1 h 20 min"), ("20 min 30", "unreadable-quantity", 0, "1 h 20 min"),
        ("-1.5 h 20 min", "unreadable-quantity", 0, "1 h 20 min"), ("1 h 2.5", "unreadable-quantity", 0, "1 h 20 min"),
        ("9" * 40 + " h 5 min", "unreadable-quantity", 0, "1 h 20 min"),
        ("1 d 20 m", "unreadable-quantity", 0, "1 h 20 min"),
        ("20 m 30 s", "unreadable-quantity", 0, "20 min 30 s"), ("1 h 1 h", "unreadable-quantity", 0, "1 h 20 min"),
        ("20:30", "ambiguous-number", 0, "20 min 30 s"), ("1:20:00", "ambiguous-number", 0, "1 h 20 min"),
        ("1,500 g", "ambiguous-number", 0, '"1500"'), ("-1,500 g", "ambiguous-number", 1, '"1.5"'),
        ("1.500.000 g", "ambiguous-number", 0, '"1500000"'), ("1,500,000 g", "ambiguous-number", 0, '"1500000"'),
        ("1,500.25 g", "ambiguous-number", 0, '"1500.25"'), ("1.500,25 g", "ambiguous-number", 0, '"1500.25"'),
        ("0,500,000 g", "ambiguous-number", 0, "decimal point"),
        ("6.02 x 1023", "ambiguous-number", 7, '"10^23"'), ("6.02 x 10 mol", "unreadable-quantity", 7, "10^23"),
        ("6.02 x 10^", "unreadable-quantity", 7, "10^23"), ("6.02 x 10^^3", "unreadable-quantity", 7, "10^23"),
        ("nan", "not-finite", 0, '"0.50 A"'), ("NaN A", "not-finite", 0, '"0.50 A"'),
        ("inf A", "not-finite", 0, '"0.50 A"'),
        ("-Infinity", "not-finite", 0, '"0.50 A"'), ("∞ A", "not-finite", 0, '"0.50 A"'),
        ("1e41 A", "absurd-magnitude", 0, "-40 to 40"), ("1e-41 A", "absurd-magnitude", 0, "-40 to 40"),
        ("1e999999999 A", "absurd-magnitude", 0, "-40 to 40"), ("1 x 10^99 A", "absurd-magnitude", 0, "-40 to 40"),
        ("9" * 70, "absurd-magnitude", 0, "-40 to 40"), ("0." + "0" * 50 + "1 A", "absurd-magnitude", 0, "-40 to 40"),
        ("0.5 ± 0 A", "zero-quantity", 6, "Leave the uncertainty out"),
        ("0.5 ± -0.1 A", "negative-quantity", 6, "Leave the uncertainty out"),
        ("(0.5 ± 0) A", "zero-quantity", 0, "Leave the uncertainty out"),
        ("0.5 A ± 3 min", "wrong-dimension", 8, "per cent"), ("£5 ± 1 EUR", "wrong-dimension", 5, "per cent"),
        ("0.5 ± 0.1 ± 0.1 A", "unreadable-quantity", 6, '"0.50 A"'),
        ("0.500(2) A ± 0.1 A", "unreadable-quantity", 13, '"0.50 A"'),
        ("0.5 A ± A", "unreadable-quantity", 8, '"0.50 A"'), ("(0.5 ± 0.1 A", "unreadable-quantity", 0, '"0.50 A"'),
        ("(0.5 A ± 0.1 A)", "unreadable-quantity", 1, '"0.50 A"'), ("( ± 0.1) A", "unreadable-quantity", 1, '"0.50 A"'),
        ("(0.5 ± ) A", "unreadable-quantity", 1, '"0.50 A"'),
        ("0.5 A ± 0.1 xyzzy", "unreadable-quantity", 12, "understood"),
        ("0.50 (±0.01 A", "unreadable-quantity", 5, "in brackets"), ("0.5 (± 0) A", "zero-quantity", 0, "Leave"),
        ("0.500(2) (± 0.1) A", "unreadable-quantity", 0, '"0.50 A"'),
        ("0.5 (±0.1 A) A", "unreadable-quantity", 0, '"0.50 A"'), ("77 °F", "unreadable-quantity", 3, "degC"),
        ("± 0.1 A", "unreadable-quantity", 0, '"0.50 A"'), ("x" * 81, "unreadable-quantity", 80, '"0.50 A"'),
        ("1 " + "A" * 50, "unreadable-quantity", 42, "understood"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_refused(text: str, code: str, position: int, hint: str) -> None:
    with pytest.raises(IonwrightError) as caught:
        read_written(text)
    assert (caught.value.code, caught.value.position) == (code, position)
    assert hint in caught.value.remedy


@pytest.mark.parametrize("text", ["1 atm", "1 bar", "1atm", " 1 atmosphere "])
def test_a_standard_pressure_is_exact(text: str) -> None:
    written = read_written(text)
    assert (written.significant_figures, written.is_exact) == (15, True)


@pytest.mark.parametrize(
    ("text", "figures"),
    [
        ("1.0 atm", 2), ("1.00 bar", 3), ("2 atm", 1), ("+1 atm", 1), ("-1 bar", 1), ("1e0 bar", 1), ("1 kPa", 1),
        ("1 mbar", 1), ("1 A", 1), ("1 atm s", 1), ("1 atm ± 0.1 atm", 1), ("1 ± 0.1 bar", 1), ("1 (±0.1) bar", 1),
        ("1(1) atm", 1),
    ],
)  # fmt: skip
def test_a_measured_pressure_keeps_the_figures_that_were_written(text: str, figures: int) -> None:
    written = read_written(text)
    assert (written.significant_figures, written.is_exact) == (figures, False)


@pytest.mark.parametrize("text", ["77 F", "77 f", "77 °F", "77 ºF", "77 deg F", "77 degrees Fahrenheit"])
def test_fahrenheit_is_told_to_be_celsius(text: str) -> None:
    with pytest.raises(IonwrightError) as caught:
        read_written(text, dimension="temperature")
    assert (caught.value.code, caught.value.position) == ("unreadable-quantity", 3)
    assert "Fahrenheit" in caught.value.detail
    assert "degC" in caught.value.remedy


def test_the_letter_f_is_a_faraday_where_no_temperature_is_expected() -> None:
    with pytest.raises(IonwrightError, match="mole of electrons"):
        read_written("2 F", dimension="charge")


def test_advice_fits_what_is_expected() -> None:
    with pytest.raises(IonwrightError, match=r"such as .96500 C/mol"):
        read_written("big", dimension="molar charge")


@pytest.mark.parametrize(
    ("text", "dimension", "quantity", "message"),
    [
        ("20 min", "current", "current", "The current is in amperes; you gave minutes."),
        ("0.5 A", "time", "time", "The time is in seconds, minutes or hours; you gave amperes."),
        ("0.5", "current", "current", "The current is in amperes; you gave a number without a unit."),
        ("0.5 A", "fraction", "current efficiency",
         "The current efficiency is a plain number or a percentage; you gave amperes."),
        ("5 g/cm3", "molar mass", "molar mass", "The molar mass is in grams per mole; you gave g/cm³."),
        ("5 A/s", "current", "current", "The current is in amperes; you gave A/s."),
    ],
)  # fmt: skip
def test_a_wrong_dimension_is_told_in_words(text: str, dimension: str, quantity: str, message: str) -> None:
    with pytest.raises(IonwrightError) as caught:
        expect(read_written(text, dimension=dimension), dimension, quantity)
    assert (caught.value.code, caught.value.detail) == ("wrong-dimension", message)


def test_a_missing_unit_is_offered() -> None:
    with pytest.raises(IonwrightError, match=r'Write "0.5 A" if that is meant'):
        expect(read_written(" 0.5"), "current", "current")


def test_a_temperature_without_a_unit_is_offered_degrees_celsius() -> None:
    with pytest.raises(IonwrightError, match=r'Write "25 degC" if that is meant'):
        expect(read_written("25", dimension="temperature"), "temperature", "temperature")


def test_the_right_dimension_passes() -> None:
    assert expect(read_written("500 mA"), "current", "current") is None
