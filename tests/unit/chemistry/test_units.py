"""Units as a bench writes them: what is read, what it is worth, and what is refused."""

import subprocess
import sys
from itertools import pairwise

import pytest

from ionwright.chemistry.unit_text import read_factors
from ionwright.chemistry.unit_words import SYMBOLS, TOKENS, WORDS
from ionwright.chemistry.units import (
    OTHER,
    Unit,
    dimension_said,
    example_of,
    is_counted_in,
    read_unit,
    unit_said,
)
from ionwright.errors import IonwrightError

LAZY = """
import sys
from ionwright.chemistry import figures, units, written_quantity
from ionwright.errors import IonwrightError
for text in ("", "coulumb", "cm99", "x" * 1000, "A" * 40, "__import__", "m**9", "kg-", "10**10**10", "/", "((((m))))"):
    try:
        written_quantity.read_written(f"1.0 {text}") if text else units.read_unit("\\0")
    except IonwrightError:
        continue
    raise SystemExit(f"read: {text}")
print(sorted({"pint", "uncertainties", "numpy"} & set(sys.modules)))
"""


@pytest.mark.parametrize(
    ("text", "symbol", "dimension", "si"),
    [
        ("A", "A", "current", 1), ("mA", "mA", "current", 1e-3), ("µA", "uA", "current", 1e-6),
        ("μA", "uA", "current", 1e-6), ("kA", "kA", "current", 1e3), ("amps", "A", "current", 1),
        ("Amp", "A", "current", 1), ("milliamperes", "mA", "current", 1e-3), ("AMPERE", "A", "current", 1),
        ("s", "s", "time", 1), ("ms", "ms", "time", 1e-3), ("sec", "s", "time", 1), ("min", "min", "time", 60),
        ("mins", "min", "time", 60), ("h", "h", "time", 3600), ("hrs", "h", "time", 3600), ("d", "d", "time", 86400),
        ("days", "d", "time", 86400), ("min.", "min", "time", 60),
        ("C", "C", "charge", 1), ("mC", "mC", "charge", 1e-3), ("MC", "MC", "charge", 1e6),
        ("coulombs", "C", "charge", 1), ("A h", "A h", "charge", 3600), ("Ah", "A h", "charge", 3600),
        ("h A", "A h", "charge", 3600), ("mAh", "mA h", "charge", 3.6), ("A s", "A s", "charge", 1),
        ("A·min", "A min", "charge", 60), ("ampere-hours", "A h", "charge", 3600), ("amp hour", "A h", "charge", 3600),
        ("mol", "mol", "amount", 1), ("mmol", "mmol", "amount", 1e-3), ("umol", "umol", "amount", 1e-6),
        ("kmol", "kmol", "amount", 1e3), ("moles", "mol", "amount", 1),
        ("kg", "kg", "mass", 1), ("g", "g", "mass", 1e-3), ("mg", "mg", "mass", 1e-6), ("µg", "ug", "mass", 1e-9),
        ("t", "t", "mass", 1e3), ("tonnes", "t", "mass", 1e3), ("grammes", "g", "mass", 1e-3),
        ("m", "m", "length", 1), ("µm", "um", "length", 1e-6), ("nm", "nm", "length", 1e-9),
        ("microns", "um", "length", 1e-6), ("centimeters", "cm", "length", 1e-2),
        ("cm3", "cm3", "volume", 1e-6), ("cm³", "cm3", "volume", 1e-6), ("cm^3", "cm3", "volume", 1e-6),
        ("cm**3", "cm3", "volume", 1e-6), ("cm^{3}", "cm3", "volume", 1e-6), ("cc", "cm3", "volume", 1e-6),
        ("cubic centimetres", "cm3", "volume", 1e-6), ("dm3", "dm3", "volume", 1e-3), ("mm3", "mm3", "volume", 1e-9),
        ("L", "L", "volume", 1e-3), ("l", "L", "volume", 1e-3), ("ml", "mL", "volume", 1e-6),
        ("uL", "uL", "volume", 1e-9), ("litres", "L", "volume", 1e-3), ("Liter", "L", "volume", 1e-3),
        ("cm²", "cm2", "area", 1e-4), ("dm2", "dm2", "area", 1e-2), ("square cm", "cm2", "area", 1e-4),
        ("cm cm", "cm2", "area", 1e-4),
        ("K", "K", "temperature", 1), ("kelvin", "K", "temperature", 1), ("Pa", "Pa", "pressure", 1),
        ("hPa", "hPa", "pressure", 100), ("kPa", "kPa", "pressure", 1e3), ("bar", "bar", "pressure", 1e5),
        ("mbar", "mbar", "pressure", 100), ("atm", "atm", "pressure", 101325),
        ("mmHg", "mmHg", "pressure", 133.322387415), ("Torr", "Torr", "pressure", 101325 / 760),
        ("V", "V", "voltage", 1), ("mV", "mV", "voltage", 1e-3), ("J/C", "J/C", "voltage", 1), ("W", "W", "power", 1),
        ("Ω", "ohm", "resistance", 1), ("kΩ", "kohm", "resistance", 1e3), ("V/A", "V/A", "resistance", 1),
        ("kJ", "kJ", "energy", 1e3), ("kWh", "kWh", "energy", 3.6e6), ("kW h", "kWh", "energy", 3.6e6),
        ("kilowatt-hours", "kWh", "energy", 3.6e6), ("eV", "eV", "energy", 1.602176634e-19),
        ("%", "%", "fraction", 0.01), ("per cent", "%", "fraction", 0.01), ("percent", "%", "fraction", 0.01),
        ("", "1", "fraction", 1), ("1", "1", "fraction", 1), ("atoms", "1", "fraction", 1),
        ("ppm", "ppm", "fraction", 1e-6),
        ("g/mol", "g/mol", "molar mass", 1e-3), ("dm³ mol⁻¹", "dm3/mol", "molar volume", 1e-3),
        ("L per mole", "L/mol", "molar volume", 1e-3), ("C/mol", "C/mol", "molar charge", 1),
        ("C mol-1", "C/mol", "molar charge", 1), ("C mol^-1", "C/mol", "molar charge", 1),
        ("C·mol⁻¹", "C/mol", "molar charge", 1), ("mol^{-1} C", "C/mol", "molar charge", 1),
        ("mol-1", "1/mol", "per amount", 1), ("/mol", "1/mol", "per amount", 1), ("1/mol", "1/mol", "per amount", 1),
        ("1 / mol", "1/mol", "per amount", 1), ("1 per mole", "1/mol", "per amount", 1),
        ("mol/dm3", "mol/dm3", "concentration", 1e3), ("mol L-1", "mol/L", "concentration", 1e3),
        ("M", "M", "concentration", 1e3), ("mM", "mM", "concentration", 1), ("molar", "M", "concentration", 1e3),
        ("g/cm3", "g/cm3", "density", 1e3), ("g/dm3", "g/dm3", "density", 1), ("mg/m3", "mg/m3", "density", 1e-6),
        ("mA/cm2", "mA/cm2", "current density", 10), ("A dm⁻²", "A/dm2", "current density", 100),
        ("um/min", "um/min", "speed", 1e-6 / 60), ("µm/h", "um/h", "speed", 1e-6 / 3600),
        ("J/(mol K)", "J/(mol K)", "gas constant", 1), ("J K-1 mol-1", "J/(mol K)", "gas constant", 1),
        ("J/mol K", "J/(mol K)", "gas constant", 1), ("J/mol/K", "J/(mol K)", "gas constant", 1),
        ("J / (K·mol)", "J/(mol K)", "gas constant", 1), ("kWh/kg", "kWh/kg", "specific energy", 3.6e6),
        ("mg/C", "mg/C", "electrochemical equivalent", 1e-6), ("cm3/min", "cm3/min", "volume rate", 1e-6 / 60),
        ("1/h", "1/h", "per time", 1 / 3600), ("A/s", "A/s", OTHER, 1), ("h/min", "h/min", "fraction", 60),
        ("1/kWh", "1/kWh", "price of energy", 1 / 3.6e6),
    ],
)  # fmt: skip
def test_a_unit_is_read(text: str, symbol: str, dimension: str, si: float) -> None:
    unit = read_unit(text)
    assert (unit.symbol, unit.dimension) == (symbol, dimension)
    assert unit.si == pytest.approx(si, rel=1e-15)
    assert (unit.offset, unit.currency) == (0.0, "")


@pytest.mark.parametrize(
    ("text", "symbol", "dimension", "currency"),
    [
        ("£", "GBP", "currency", "GBP"), ("EUR", "EUR", "currency", "EUR"), ("$", "USD", "currency", "USD"),
        ("₹", "INR", "currency", "INR"), ("p", "p", "currency", "GBP"), ("ct", "ct", "currency", "EUR"),
        ("GBP/kWh", "GBP/kWh", "price of energy", "GBP"), ("p/kWh", "p/kWh", "price of energy", "GBP"),
        ("£ per kWh", "GBP/kWh", "price of energy", "GBP"), ("€/MWh", "EUR/MWh", "price of energy", "EUR"),
        ("GBP/EUR", "GBP/EUR", OTHER, ""), ("GBP EUR", "GBP EUR", OTHER, ""), ("p/GBP", "p/GBP", "fraction", "GBP"),
    ],
)  # fmt: skip
def test_money_keeps_its_currency(text: str, symbol: str, dimension: str, currency: str) -> None:
    unit = read_unit(text)
    assert (unit.symbol, unit.dimension, unit.currency) == (symbol, dimension, currency)


@pytest.mark.parametrize(
    "text", ["degC", "°C", "℃", "deg C", "degrees Celsius", "celsius", "degree C", " ° C"]
)
def test_degrees_celsius_have_an_offset(text: str) -> None:
    assert read_unit(text) == Unit("degC", "°C", r"\mathrm{{}^{\circ}C}", "temperature", 1.0, 273.15)


def test_the_bare_letter_is_celsius_only_where_a_temperature_is_expected() -> None:
    assert read_unit("C").dimension == "charge"
    assert read_unit(" C ", "temperature").symbol == "degC"
    assert read_unit("C/mol", "temperature").dimension == "molar charge"


@pytest.mark.parametrize(
    ("text", "shown", "latex"),
    [
        ("dm3/mol", "dm³/mol", r"\mathrm{dm^3\,mol^{-1}}"), ("um/min", "µm/min", r"\mathrm{\mu m\,min^{-1}}"),
        ("mol-1", "mol⁻¹", r"\mathrm{mol^{-1}}"), ("%", "%", r"\mathrm{\%}"), ("1", "", ""),
        ("J/(mol K)", "J/(mol K)", r"\mathrm{J\,mol^{-1}\,K^{-1}}"), ("mohm", "mΩ", r"\mathrm{m\Omega}"),
        ("A/cm2", "A/cm²", r"\mathrm{A\,cm^{-2}}"), ("GBP/kWh", "£/kWh", r"\mathrm{\text{£}\,kWh^{-1}}"),
        ("mol-1 K-1", "mol⁻¹ K⁻¹", r"\mathrm{mol^{-1}\,K^{-1}}"),
    ],
)  # fmt: skip
def test_a_unit_is_shown(text: str, shown: str, latex: str) -> None:
    unit = read_unit(text)
    assert (unit.text, unit.latex) == (shown, latex)


@pytest.mark.parametrize(
    ("text", "position", "hint"),
    [
        ("coulumb", 0, '"coulomb" may be meant'), ("ma", 0, '"mA"'), ("A/CM2", 2, '"cm" may be meant'),
        ("F", 0, "amount of electrons"), ("mol/faraday", 4, "amount of electrons"), ("°F", 0, "degC"),
        ("ton", 0, "1000 kg"), ("mpa", 0, "MPa"), ("xyzzy", 0, "Units that are understood"),
        ("g/100 cm3", 2, "powers 1 to 3"), ("cm4", 2, "powers 1 to 3"), ("cm0", 2, "powers 1 to 3"),
        ("m99999999999", 1, "powers 1 to 3"), ("m^-9", 3, "powers 1 to 3"), ("cm2 cm2", 0, "third power"),
        ("cc2", 0, "third power"), ("cc cm", 0, "third power"),
        ("J/mol K-1", 0, "in brackets"), ("J/(mol K", 0, "in brackets"), ("J)", 0, "in brackets"),
        ("(J)", 0, "in brackets"), ("J/(mol/K)", 0, "in brackets"), ("J/(mol (K))", 0, "in brackets"),
        ("J/(mol K) s", 0, "in brackets"), ("cm3mol", 0, "in brackets"), ("*m", 0, "in brackets"),
        ("m//s", 0, "in brackets"), ("m/", 0, "in brackets"), ("m^", 0, "in brackets"), ("/", 0, "in brackets"),
        ("degC/min", 0, "Write K"), ("α", 0, "understood"), ("m\ns", 1, "understood"), ("m\0", 1, "understood"),
        ("m" * 41, 40, "understood"), ("m\u0663", 1, "understood"), ("\ud800", 0, "understood"),
    ],
)  # fmt: skip
def test_what_is_no_unit_is_refused_with_advice(text: str, position: int, hint: str) -> None:
    with pytest.raises(IonwrightError) as caught:
        read_unit(text)
    assert (caught.value.code, caught.value.position) == ("unreadable-quantity", position)
    assert hint in caught.value.remedy


def test_every_name_of_the_vocabulary_leads_to_a_unit() -> None:
    for name in (*SYMBOLS, *WORDS):
        assert read_unit(name).si > 0, name


def test_no_word_hides_a_symbol() -> None:
    """A word may be written in either case, so it must not mean something else than the symbol spelt like it."""
    assert [word for word in WORDS if SYMBOLS.get(word, WORDS[word]) != WORDS[word]] == []


def test_symbols_are_read_back() -> None:
    for symbol in TOKENS:
        assert read_unit(symbol).symbol == symbol
        assert read_factors(f"mol/{symbol}3") != read_factors(f"mol/{symbol}2")


def test_importing_and_refusing_needs_no_unit_library() -> None:
    ran = subprocess.run(
        [sys.executable, "-c", LAZY], capture_output=True, text=True, timeout=60, check=False
    )
    assert (ran.stdout.strip(), ran.stderr, ran.returncode) == ("[]", "", 0)


@pytest.mark.parametrize(
    ("dimension", "said", "counted"),
    [
        ("current", "amperes (A, mA)", "in amperes"),
        ("time", "seconds, minutes or hours (s, min, h)", "in seconds, minutes or hours"),
        (
            "fraction",
            "a plain number or a percentage (no unit, or %)",
            "a plain number or a percentage",
        ),
        ("currency", "money (GBP, EUR, USD)", "money"),
        (OTHER, "other ones", "in other units"),
    ],
)
def test_a_dimension_is_said_in_words(dimension: str, said: str, counted: str) -> None:
    assert (dimension_said(dimension), is_counted_in(dimension)) == (said, counted)


@pytest.mark.parametrize(
    ("text", "said"),
    [("min", "minutes"), ("mmHg", "millimetres of mercury"), ("g/cm3", "g/cm³"), ("", "a number without a unit"),
     ("bar", "bar"), ("£", "GBP"), ("p", "pence"), ("degC", "degrees Celsius"), ("kWh", "kilowatt-hours")],
)  # fmt: skip
def test_a_unit_is_said_in_words(text: str, said: str) -> None:
    assert unit_said(read_unit(text)) == said


def test_an_example_is_always_at_hand() -> None:
    assert example_of("molar charge") == "96500 C/mol"
    assert example_of("") == "0.50 A"


def test_a_product_names_its_units_in_one_order() -> None:
    order = [read_unit(text).symbol for text in ("h A", "A h", "A·h", "h·A")]
    assert all(one == other == "A h" for one, other in pairwise(order))
