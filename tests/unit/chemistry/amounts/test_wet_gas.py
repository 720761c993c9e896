"""Gases that are collected over water."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.amounts import Circuit, Key, Process, WorkedOut
from ionwright.chemistry.amounts.circuit_relations import circuit_relations
from ionwright.chemistry.amounts.relations import Tabulated
from ionwright.chemistry.amounts.wet_gas import wet_gas_temperature_K
from ionwright.chemistry.equation import read_equation
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.medium import with_states

HYDROGEN = "2H+ + 2e- -> H2"
AT_20 = 0.246165
"""0.0100 mol × 8.31 J/(mol K) × 293.15 K ÷ (101.3 − 2.339) kPa [dm³]."""


def test_the_vapour_takes_its_part_of_the_pressure(find: Callable[..., list[float]]) -> None:
    known = {"charge": "1930 C", "temperature": "20.0 degC", "pressure": "101.3 kPa"}
    assert find(HYDROGEN, known, "volume", over_water=True) == pytest.approx([AT_20], rel=1e-4)


def test_a_stated_vapour_pressure_counts_before_the_tables(find: Callable[..., list[float]]) -> None:
    """2.3 kPa are rounded and no contradiction: 24.360765 ÷ 99.0."""
    known = {
        "charge": "1930 C", "temperature": "20.0 degC", "pressure": "101.3 kPa", "water_vapour_pressure": "2.3 kPa",
    }  # fmt: skip
    assert find(HYDROGEN, known, "volume", over_water=True) == pytest.approx([0.246068], rel=1e-5)


def test_the_temperature_follows_from_a_stated_vapour_pressure_and_the_gas(
    find: Callable[..., list[float]],
) -> None:
    """246.165 cm³ × (101.3 − 2.339) kPa ÷ (0.0100 mol × 8.31 J/(mol K))."""
    known = {
        "charge": "1930 C", ("volume", "H2"): "246.165 cm3", "pressure": "101.3 kPa",
        "water_vapour_pressure": "2.339 kPa",
    }  # fmt: skip
    found = find(HYDROGEN, known, "temperature", over_water=True)
    assert found == pytest.approx([293.15], rel=1e-5)


def test_the_charge_follows_from_a_wet_volume(find: Callable[..., list[float]]) -> None:
    known = {("volume", "H2"): "246.165 cm3", "temperature": "20.0 degC", "pressure": "101.3 kPa"}
    assert find(HYDROGEN, known, "charge", over_water=True) == pytest.approx([1930], rel=1e-4)


def test_the_standard_atmosphere_is_taken_over_water_too(work: Callable[..., WorkedOut]) -> None:
    worked = work(HYDROGEN, {"charge": "1930 C", "temperature": "20.0 degC"}, "volume", over_water=True)
    # 24.360765 ÷ (101.325 − 2.339)
    assert worked.values[Key("volume", "process", "H2")].number == pytest.approx(0.246104, rel=1e-5)
    assert len(worked.knowns.assumptions) == 1


def test_without_a_temperature_it_is_what_is_still_needed(refusal: Callable[..., QuantityFault]) -> None:
    fault = refusal(HYDROGEN, {"charge": "1930 C", "pressure": "101.3 kPa"}, "volume", over_water=True)
    assert (fault.code, fault.where) == ("needs-more", "find")
    assert "the temperature" in fault.remedy


def test_the_temperature_of_a_wet_gas_is_found_by_trial(find: Callable[..., list[float]]) -> None:
    known = {"charge": "1930 C", ("volume", "H2"): "246.165 cm3", "pressure": "101.3 kPa"}
    assert find(HYDROGEN, known, "temperature", over_water=True) == pytest.approx([293.15], abs=0.02)


@pytest.mark.parametrize(("pressure_kPa", "volume_dm3"), [(1.0, 0.2), (5000.0, 0.2), (102.0, 100.0)])
def test_a_pressure_that_no_temperature_gives_is_refused(pressure_kPa: float, volume_dm3: float) -> None:
    with pytest.raises(QuantityFault) as raised:
        wet_gas_temperature_K(pressure_kPa, volume_dm3, 0.01, 8.31)
    assert raised.value.code == "contradictory"
    assert raised.value.remedy


@pytest.mark.parametrize(
    ("known", "asked", "code", "where"),
    [
        ({"temperature": "150 degC"}, "volume", "out-of-range", "known/temperature"),
        ({"pressure": "5000 kPa", "volume": "0.20 dm3"}, "temperature", "contradictory", "known/pressure"),
    ],
)
def test_what_the_tables_of_water_cannot_follow_is_refused_where_it_stands(
    refusal: Callable[..., QuantityFault], known: dict[str, str], asked: str, code: str, where: str
) -> None:
    fault = refusal(HYDROGEN, {"charge": "1930 C", **known}, asked, over_water=True)
    assert (fault.code, fault.where) == (code, where)


def test_an_uncertain_temperature_makes_the_volume_uncertain(work: Callable[..., WorkedOut]) -> None:
    """d ln V / dT = 1/T + p′/(p − p_w) = (0.003411 + 0.14466/98.961) per kelvin, times 0.5 K and 246.165 cm³."""
    known = {"charge": "1930 C", "temperature": "20.0 ± 0.5 degC", "pressure": "101.3 kPa"}
    worked = work(HYDROGEN, known, "volume", over_water=True)
    number = worked.values[Key("volume", "process", "H2")].number
    assert number.nominal_value == pytest.approx(AT_20, rel=1e-4)
    assert number.std_dev == pytest.approx(0.00059978, rel=5e-3)


def test_an_uncertain_volume_makes_the_temperature_uncertain(work: Callable[..., WorkedOut]) -> None:
    """The same slope the other way: one per mille of 246.165 cm³ is 0.205 K."""
    known = {"charge": "1930 C", ("volume", "H2"): "246.165 ± 0.246165 cm3", "pressure": "101.3 kPa"}
    worked = work(HYDROGEN, known, "temperature", over_water=True)
    assert worked.values[Key("temperature")].number.std_dev == pytest.approx(0.2052, rel=5e-3)


def test_a_stated_vapour_pressure_that_leaves_no_dry_gas_is_refused(
    refusal: Callable[..., QuantityFault],
) -> None:
    known = {"charge": "1930 C", "temperature": "20 degC", "water_vapour_pressure": "500 kPa"}
    fault = refusal(HYDROGEN, known, "volume", over_water=True)
    assert fault.code == "below-vapour-pressure"
    assert fault.where == "known/water_vapour_pressure"


def test_the_vapour_pressure_follows_from_data(find: Callable[..., list[float]]) -> None:
    """101.3 kPa − 24.360765 J ÷ 246.165 cm³ = 101.3 kPa − 98.961 kPa."""
    known = {
        "charge": "1930 C", ("volume", "H2"): "246.165 cm3", "pressure": "101.3 kPa", "temperature": "20.0 degC",
    }  # fmt: skip
    assert find(HYDROGEN, known, "water_vapour_pressure", over_water=True) == pytest.approx([2.339], abs=1e-3)


def test_the_vapour_pressure_alone_comes_from_the_tables(find: Callable[..., list[float]]) -> None:
    found = find(HYDROGEN, {"temperature": "20.0 degC"}, "water_vapour_pressure", over_water=True)
    assert found == pytest.approx([2.339], rel=1e-3)


def test_a_vapour_pressure_alone_gives_its_temperature(find: Callable[..., list[float]]) -> None:
    known = {"water_vapour_pressure": "2.339 kPa"}
    assert find(HYDROGEN, known, "temperature", over_water=True) == pytest.approx([293.15], rel=1e-4)


def test_the_table_of_vapour_pressures_is_read_in_kelvins_both_ways() -> None:
    process = Process("process", with_states(read_equation(HYDROGEN)), "process", "process")
    relations = circuit_relations(Circuit((process,), is_over_water=True), (Key("temperature"),))
    (table,) = (relation for relation in relations if isinstance(relation, Tabulated))
    assert table.solved_for(table.argument, {table.result: 2.3392}) == pytest.approx(293.15, abs=0.01)
    assert table.solved_for(table.result, {table.argument: 293.15}) == pytest.approx(2.3392, rel=1e-4)
