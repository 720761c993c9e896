"""Densities of metals that are plated."""

import pytest

from ionwright.chemistry.densities import DENSITIES, Density, density_g_cm3
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.tables import read_table
from ionwright.chemistry.written_quantity import read_written


@pytest.mark.parametrize(
    ("formula", "value", "printed"),
    [
        ("Cu", 8.96, "8.96 g/cm3"),
        ("Ag", 10.5, "10.5 g/cm3"),
        ("Ni", 8.9, "8.90 g/cm3"),
        ("Zn", 7.134, "7.134 g/cm3"),
        ("Cr", 7.15, "7.15 g/cm3"),
        ("Au", 19.3, "19.3 g/cm3"),
    ],
)
def test_a_metal_has_its_density_with_the_figures_of_the_handbook(
    formula: str, value: float, printed: str
) -> None:
    density = density_g_cm3(formula)
    assert density is not None
    assert (density.value, density.printed, density.t_C) == (value, printed, 25)
    assert density.verified


def test_tin_is_the_white_form_that_plates() -> None:
    tin = density_g_cm3("Sn")
    assert tin is not None
    assert tin.value == 7.287


@pytest.mark.parametrize("formula", ["", "Cl2", "copper", "Xx"])
def test_what_the_table_lacks_has_no_density(formula: str) -> None:
    assert density_g_cm3(formula) is None


def test_every_density_is_of_an_element_and_could_be_that_of_a_metal() -> None:
    assert len(DENSITIES) == 19
    assert set(DENSITIES) <= set(ELEMENTS)
    assert all(0.5 < density.value < 23 for density in DENSITIES.values())


@pytest.mark.parametrize("density", DENSITIES.values(), ids=list(DENSITIES))
def test_a_printed_density_is_read_with_two_figures_or_more(density: Density) -> None:
    written = read_written(density.printed)
    assert written.unit.symbol == "g/cm3"
    assert written.value == density.value
    assert written.significant_figures >= 2


def test_every_source_of_a_density_resolves_and_every_source_is_used() -> None:
    assert {density.source for density in DENSITIES.values()} == set(read_table("densities.toml")["sources"])
