"""The two figures for water in alkali."""

from ionwright.curricula.potentials import HYDROXIDE_V, WATER_V


def test_data_sheets_print_these_figures_for_water_at_ph_14() -> None:
    assert WATER_V == -0.83
    assert HYDROXIDE_V == 0.40
