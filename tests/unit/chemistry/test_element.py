"""The table of elements is complete and consistent."""

from decimal import Decimal
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


_WITHOUT_STABLE_ISOTOPES = {"Tc", "Pm", "Po", "At", "Rn", "Fr", "Ra", "Ac"}


def test_every_element_that_occurs_with_a_settled_mixture_of_isotopes_has_a_mass() -> None:
    without = {element.symbol for element in ELEMENTS.values() if element.relative_atomic_mass is None}
    assert without == _WITHOUT_STABLE_ISOTOPES | {
        element.symbol for element in ELEMENTS.values() if element.number > 92
    }


@pytest.mark.parametrize(
    ("symbol", "mass"),
    [
        ("He", 4.0026), ("Ar", 39.95), ("Sc", 44.9559), ("Ge", 72.63), ("As", 74.9216), ("Se", 78.971), ("Y", 88.9058),
        ("Zr", 91.224), ("Nb", 92.9064), ("Mo", 95.95), ("Rh", 102.9055), ("In", 114.818), ("Sb", 121.76),
        ("Te", 127.6), ("La", 138.9055), ("Hf", 178.486), ("Ta", 180.9479), ("Re", 186.207), ("Os", 190.23),
        ("Th", 232.0377), ("Pa", 231.0359), ("U", 238.0289),
    ],
)  # fmt: skip
def test_masses_are_those_of_the_tables_to_four_decimals_at_most(symbol: str, mass: float) -> None:
    assert ELEMENTS[symbol].relative_atomic_mass == mass


def test_the_masses_add_up_to_the_checked_sum() -> None:
    """The sum was worked out from the source, so a slip in any row shows."""
    masses = [Decimal(str(element.relative_atomic_mass)) for element in ELEMENTS.values() if element.source]
    assert (len(masses), sum(masses)) == (84, Decimal("8750.592"))


def test_every_mass_has_a_source_and_no_source_lacks_a_mass() -> None:
    for element in ELEMENTS.values():
        assert (element.relative_atomic_mass is None) == (element.source == "")


def test_masses_rise_with_the_atomic_number_but_for_the_known_exceptions() -> None:
    known = [element for element in ELEMENTS.values() if element.relative_atomic_mass]
    exceptions = {("Co", "Ni"), ("Te", "I"), ("Ar", "K"), ("Th", "Pa")}
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
