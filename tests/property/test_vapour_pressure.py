"""Laws of the vapour pressure of water: it rises with temperature, and its inverse leads back."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from ionwright.chemistry.water_vapour import temperature_of_vapour_pressure, vapour_pressure_kPa

TEMPERATURES = st.floats(0, 100)


@given(TEMPERATURES, TEMPERATURES)
def test_warmer_water_has_the_higher_vapour_pressure(one: float, other: float) -> None:
    assume(abs(one - other) > 1e-9)
    cooler, warmer = sorted((one, other))
    assert vapour_pressure_kPa(cooler) < vapour_pressure_kPa(warmer)


@given(TEMPERATURES)
def test_the_temperature_of_a_vapour_pressure_leads_back(t_C: float) -> None:
    assert temperature_of_vapour_pressure(vapour_pressure_kPa(t_C)) == pytest.approx(t_C, abs=1e-8)


@given(st.floats(0.61122, 101.41))
def test_the_pressure_at_the_temperature_of_a_vapour_pressure_leads_back(p_kPa: float) -> None:
    t_C = temperature_of_vapour_pressure(p_kPa)
    assert 0 <= t_C <= 100
    assert vapour_pressure_kPa(t_C) == pytest.approx(p_kPa, rel=1e-10)
