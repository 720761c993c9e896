"""The vapour pressure of water against published points, and its inverse."""

from math import inf, nan

import pytest

from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.tables import read_table
from ionwright.chemistry.water_vapour import (
    GREATEST_RELATIVE_ERROR,
    temperature_of_vapour_pressure,
    vapour_pressure_kPa,
)

TABLE = read_table("water_vapour.toml")
POINTS = [(point["t_C"], point["kPa"]) for point in TABLE["point"]]


def test_the_points_are_one_for_each_degree_of_a_school_laboratory() -> None:
    assert [t_C for t_C, _ in POINTS] == list(range(10, 41))
    assert all(point["verified"] for point in TABLE["point"])
    assert GREATEST_RELATIVE_ERROR == 1e-4


@pytest.mark.parametrize(("t_C", "kPa"), POINTS)
def test_every_published_point_is_met_within_the_stated_error(t_C: float, kPa: float) -> None:
    assert vapour_pressure_kPa(t_C) == pytest.approx(kPa, rel=GREATEST_RELATIVE_ERROR)


@pytest.mark.parametrize(
    ("t_C", "kPa", "tolerance_kPa"), [(0, 0.6112, 1e-4), (50, 12.352, 2e-3), (100, 101.42, 0.01)]
)
def test_the_ends_of_the_range_are_those_of_steam_tables(
    t_C: float, kPa: float, tolerance_kPa: float
) -> None:
    assert vapour_pressure_kPa(t_C) == pytest.approx(kPa, abs=tolerance_kPa)


@pytest.mark.parametrize(("t_C", "printed"), [(20, "2.34"), (25, "3.17")])
def test_the_figures_of_a_school_data_sheet_come_out(t_C: float, printed: str) -> None:
    assert f"{vapour_pressure_kPa(t_C):.2f}" == printed


def test_water_boils_under_one_atmosphere_at_nearly_100_degrees() -> None:
    assert temperature_of_vapour_pressure(101.325) == pytest.approx(99.974, abs=0.002)


@pytest.mark.parametrize("t_C", [-0.1, 100.1, -273.15, 1e300, inf, -inf, nan])
def test_a_temperature_at_which_water_is_no_liquid_is_refused(t_C: float) -> None:
    with pytest.raises(QuantityFault) as caught:
        vapour_pressure_kPa(t_C)
    assert caught.value.code == "out-of-range"
    assert "from 0 to 100 °C" in caught.value.detail
    assert caught.value.remedy


@pytest.mark.parametrize("p_kPa", [0.0, -1.0, 0.61, 101.5, inf, nan])
def test_a_pressure_that_liquid_water_never_has_is_refused(p_kPa: float) -> None:
    with pytest.raises(QuantityFault) as caught:
        temperature_of_vapour_pressure(p_kPa)
    assert caught.value.code == "out-of-range"
    assert "0.611 to 101.4 kPa" in caught.value.detail


@pytest.mark.parametrize("t_C", [0.0, 100.0])
def test_the_ends_of_the_range_have_an_inverse(t_C: float) -> None:
    assert temperature_of_vapour_pressure(vapour_pressure_kPa(t_C)) == pytest.approx(t_C, abs=1e-9)


def test_every_source_of_the_table_resolves_and_is_used() -> None:
    used = {TABLE["formula"]["source"], *(point["source"] for point in TABLE["point"])}
    assert used == set(TABLE["sources"])
