"""The table of elements is complete and consistent."""

from itertools import pairwise

import pytest

from ionwright.chemistry.element import ELEMENTS, find_element


def test_there_are_118_elements_in_order_of_atomic_number() -> None:
    assert [element.number for element in ELEMENTS.values()] == list(range(1, 119))


def test_symbols_and_names_are_unique_and_well_formed() -> None:
    for symbol, element in ELEMENTS.items():
        assert element.symbol == symbol
        assert symbol[0].isupper()
        assert symbol[1:] == symbol[1:].lower()
        assert len(symbol) <= 2
        assert element.name == element.name.lower()
    assert len({element.name for element in ELEMENTS.values()}) == 118


@pytest.mark.parametrize(
    ("symbol", "number", "mass"), [("H", 1, 1.008), ("Ni", 28, 58.69), ("Cu", 29, 63.55), ("Ag", 47, 107.87)]
)
def test_masses_of_the_metals_at_the_lighthouse(symbol: str, number: int, mass: float) -> None:
    element = ELEMENTS[symbol]
    assert element.number == number
    assert element.relative_atomic_mass == pytest.approx(mass, abs=0.01)


def test_every_mass_has_a_source_and_no_source_lacks_a_mass() -> None:
    for element in ELEMENTS.values():
        assert (element.relative_atomic_mass is None) == (element.source == "")


def test_masses_rise_with_the_atomic_number_but_for_the_known_exceptions() -> None:
    known = [element for element in ELEMENTS.values() if element.relative_atomic_mass]
    exceptions = {("Co", "Ni"), ("Te", "I"), ("Ar", "K")}
    for lighter, heavier in pairwise(known):
        if (lighter.symbol, heavier.symbol) not in exceptions:
            assert (lighter.relative_atomic_mass or 0) < (heavier.relative_atomic_mass or 0)


@pytest.mark.parametrize(
    ("text", "symbol"),
    [
        ("Al", "Al"),
        ("aluminium", "Al"),
        ("Aluminum", "Al"),
        ("cesium", "Cs"),
        ("sulphur", "S"),
        (" Nickel ", "Ni"),
    ],
)
def test_an_element_is_found_by_symbol_and_by_either_spelling_of_its_name(text: str, symbol: str) -> None:
    found = find_element(text)
    assert found is not None
    assert found.symbol == symbol


@pytest.mark.parametrize("text", ["", "al", "AL", "lighthouse"])
def test_what_is_no_element_is_not_found(text: str) -> None:
    assert find_element(text) is None
