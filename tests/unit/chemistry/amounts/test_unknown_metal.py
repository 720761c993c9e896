"""A metal of which only a letter is known, or an ion of which only the charge is not."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.amounts.unknown_metal import (
    UNKNOWN_LETTERS,
    is_unknown_metal,
    metal_half,
    read_unknown_metal,
    substance,
    substance_html,
    substance_text,
)
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import QuantityFault


def test_no_letter_for_an_unknown_metal_is_a_symbol() -> None:
    assert UNKNOWN_LETTERS.isdisjoint(ELEMENTS)
    assert is_unknown_metal("X")
    assert not is_unknown_metal("K")
    assert not is_unknown_metal("Cr")


@pytest.mark.parametrize(
    ("of", "text", "html"),
    [
        ("X", "X", "X"),
        ("X^+", "Xᶻ⁺", "X<sup><i>z</i>+</sup>"),
        ("Cu^2+", "Cu²⁺", "Cu<sup>2+</sup>"),
        ("Ag", "Ag", "Ag"),
    ],
)
def test_a_metal_and_its_ion_are_written_for_people(of: str, text: str, html: str) -> None:
    assert substance_text(of) == text
    assert substance_html(of) == html


def test_an_unknown_metal_is_a_species_of_one_atom() -> None:
    assert substance("X").atoms == (("X", 1),)
    assert (substance("X").charge, substance("X^+").charge) == (0, 1)
    assert substance("Cu^2+").charge == 2


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("M^2+ + 2e- -> M", ("M", 2)),
        ("M2+ + 2e- → M", ("M", 2)),
        ("X³⁺(aq) + 3e⁻ → X(s)", ("X", 3)),
        ("X^{3+} + 3e^- -> X", ("X", 3)),
        ("Q+ + e- = Q", ("Q", 1)),
        ("Cu^2+ + 2e- -> Cu", None),
        ("M^2+ + 2e- -> X", None),
        ("M^9+ + 9e- -> M", None),
        ("", None),
        ("M" * 1000, None),
    ],
)
def test_the_half_equation_of_an_unknown_metal_is_told_from_others(
    text: str, read: tuple[str, int] | None
) -> None:
    assert read_unknown_metal(text) == read


@pytest.mark.parametrize("text", ["M^2+ + 3e- -> M", "M+ + 2e- -> M", "M^3+ + e- -> M"])
def test_electrons_that_do_not_fit_the_charge_are_refused(text: str) -> None:
    with pytest.raises(QuantityFault) as raised:
        read_unknown_metal(text)
    assert raised.value.code == "bad-electron-count"
    assert raised.value.remedy


@pytest.mark.parametrize("symbol", ["Cr", "X"])
def test_a_metal_with_an_unknown_charge_stands_for_one_electron(symbol: str) -> None:
    half = metal_half(symbol)
    assert abs(half.electrons) == 1
    assert [term.species.ascii for term in half.right] == [symbol]


@pytest.mark.parametrize("symbol", ["", "Xy", "cr", "B2", "XX"])
def test_what_is_neither_a_symbol_nor_a_letter_has_no_half_equation(symbol: str) -> None:
    with pytest.raises(KeyError):
        metal_half(symbol)


def test_the_charge_of_an_ion_follows_from_charge_and_mass(find: Callable[..., list[float]]) -> None:
    """5790 C are 0.0600 mol of electrons, 1.04 g of chromium are 0.0200 mol."""
    known = {"charge": "5790 C", ("mass", "Cr"): "1.04 g"}
    assert find("Cr", known, "ion_charge") == pytest.approx([3])


def test_the_molar_mass_of_an_unknown_metal_follows_from_its_charge(find: Callable[..., list[float]]) -> None:
    """3860 C are 0.0400 mol of electrons, 0.0200 mol of the metal: 1.174 g ÷ 0.0200 mol."""
    known = {"charge": "3860 C", ("mass", "X"): "1.174 g", "ion_charge": "2"}
    assert find("X", known, "molar_mass", "relative_atomic_mass") == pytest.approx([58.7, 58.7])


def test_the_charge_of_an_unknown_metal_follows_from_its_molar_mass(find: Callable[..., list[float]]) -> None:
    known = {"charge": "3860 C", "mass": "1.174 g", "relative_atomic_mass": "58.7"}
    assert find("X", known, "ion_charge") == pytest.approx([2])


def test_another_metal_in_series_gives_the_charge(find: Callable[..., list[float]]) -> None:
    """2.158 g of silver are 0.0200 mol of electrons, and 0.52 g ÷ 52.0 g/mol are 0.0100 mol."""
    halves = {"silver": "Ag^+ + e- -> Ag", "unknown": "Cr"}
    known = {("mass", "Ag"): "2.158 g", ("mass", "Cr"): "0.520 g"}
    assert find(halves, known, ("ion_charge", "", "unknown")) == pytest.approx([2])


def test_an_unknown_metal_with_an_unknown_charge_needs_one_of_them(
    refusal: Callable[..., QuantityFault],
) -> None:
    fault = refusal("X", {"charge": "3860 C", "mass": "1.174 g"}, "molar_mass")
    assert (fault.code, fault.where) == ("needs-more", "find")
    assert "the number of charges on the ion" in fault.remedy
