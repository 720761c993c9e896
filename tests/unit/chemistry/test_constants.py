"""Physical constants: their values, and how they hang together."""

import pytest

from ionwright.chemistry.constants import CONSTANTS
from ionwright.chemistry.tables import read_table
from ionwright.chemistry.written_quantity import read_written


@pytest.mark.parametrize(
    ("id_", "value", "unit", "symbol"),
    [
        ("faraday_constant", 96485.33212331, "C/mol", "F"),
        ("avogadro_constant", 6.02214076e23, "1/mol", "L"),
        ("elementary_charge", 1.602176634e-19, "C", "e"),
        ("gas_constant", 8.31446261815324, "J/(mol K)", "R"),
        ("zero_celsius", 273.15, "K", "T0"),
        ("atmosphere", 101325.0, "Pa", "atm"),
        ("standard_pressure", 100000.0, "Pa", "p0"),
    ],
)
def test_each_constant_has_its_value_unit_and_symbol(id_: str, value: float, unit: str, symbol: str) -> None:
    constant = CONSTANTS[id_]
    assert constant.value == pytest.approx(value, rel=1e-13)
    assert (constant.unit, constant.symbol) == (unit, symbol)
    assert constant.is_exact
    assert constant.verified


def test_the_faraday_constant_is_the_charge_of_a_mole_of_electrons() -> None:
    product = CONSTANTS["avogadro_constant"].value * CONSTANTS["elementary_charge"].value
    assert CONSTANTS["faraday_constant"].value == pytest.approx(product, rel=1e-14)


def test_no_constant_is_left_out_of_the_table_of_expectations() -> None:
    assert len(CONSTANTS) == 7


@pytest.mark.parametrize("id_", list(CONSTANTS))
def test_the_printed_figure_is_the_value_to_ten_figures_with_a_unit(id_: str) -> None:
    number, _, unit = CONSTANTS[id_].printed.partition(" ")
    assert float(number) == pytest.approx(CONSTANTS[id_].value, rel=5e-10)
    assert unit == CONSTANTS[id_].unit.removeprefix("1")


@pytest.mark.parametrize(
    ("id_", "dimension", "figures"),
    [
        ("faraday_constant", "molar charge", 10),
        ("avogadro_constant", "per amount", 9),
        ("elementary_charge", "charge", 10),
        ("gas_constant", "gas constant", 10),
        ("atmosphere", "pressure", 6),
    ],
)
def test_the_printed_figure_is_read_as_what_it_is(id_: str, dimension: str, figures: int) -> None:
    written = read_written(CONSTANTS[id_].printed)
    assert written.unit.dimension == dimension
    assert written.significant_figures == figures
    assert written.value * written.unit.si == pytest.approx(CONSTANTS[id_].value, rel=5e-10)


def test_every_source_of_a_constant_resolves_and_every_source_is_used() -> None:
    assert {constant.source for constant in CONSTANTS.values()} == set(
        read_table("constants.toml")["sources"]
    )


def test_the_constants_cannot_be_changed() -> None:
    with pytest.raises(TypeError):
        CONSTANTS["faraday_constant"] = CONSTANTS["gas_constant"]  # type: ignore[index]
