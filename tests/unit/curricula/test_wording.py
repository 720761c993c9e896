"""Pieces of sentences."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.chemistry.species import species
from ionwright.curricula.model import Situation
from ionwright.curricula.wording import (
    contender,
    forming,
    ions,
    listed,
    metal,
    product,
    products,
    sentence_start,
    volts,
)


@pytest.mark.parametrize(
    ("kind", "phrase"),
    [
        ("Cu^2+", "copper(II) ions"), ("Cl^-", "chloride ions"), ("H^+", "hydrogen ions"), ("SO4^2-", "sulfate ions"),
        ("Na^+", "sodium ions"), ("W^6+", "W⁶⁺ ions"),
    ],
)  # fmt: skip
def test_ions_are_named_in_the_plural(kind: str, phrase: str) -> None:
    assert ions(species(kind)) == phrase


@pytest.mark.parametrize(("symbol", "name"), [("Fe", "iron"), ("Hg", "mercury"), ("H", "hydrogen")])
def test_a_metal_has_its_name(symbol: str, name: str) -> None:
    assert metal(symbol) == name


@pytest.mark.parametrize(
    ("kind", "name"),
    [("Cl2", "chlorine"), ("O2", "oxygen"), ("Fe^2+", "iron(II) ions"), ("XeF6", "XeF₆")],
)
def test_a_product_has_its_name_or_at_least_its_formula(kind: str, name: str) -> None:
    assert product(species(kind)) == name


@pytest.mark.parametrize(
    ("electrode", "substance", "rest", "kind", "listed_products", "sentence"),
    [
        ("cathode", "CuSO4", {}, Kind.METAL, "copper", "copper forms"),
        ("cathode", "NaCl", {"cathode": "mercury"}, Kind.AMALGAM, "sodium amalgam", "sodium amalgam forms"),
        ("cathode", "FeCl3", {}, Kind.CHARGE, "iron(II) ions", "iron(II) ions form"),
        ("anode", "NaCl", {}, Kind.HALOGEN, "chlorine", "chlorine forms"),
        (
            "anode",
            "CH3COONa",
            {},
            Kind.REACTION,
            "ethane and carbon dioxide",
            "ethane and carbon dioxide form",
        ),
    ],
)
def test_products_are_listed_with_a_verb_in_the_right_number(
    *,
    situation_at: Callable[..., Situation],
    electrode: str,
    substance: str,
    rest: dict[str, str],
    kind: Kind,
    listed_products: str,
    sentence: str,
) -> None:
    (process, *_) = situation_at(electrode, substance, **rest).of(kind)
    assert products(process) == listed_products
    assert forming(process) == sentence


@pytest.mark.parametrize(
    ("substance", "rest", "kind", "phrase"),
    [
        ("CuSO4", {"anode": "copper"}, Kind.DISSOLVES, "the copper of the anode"),
        ("NaCl", {"anode": "silver"}, Kind.FILM, "the silver of the anode"),
        ("Al2O3", {"state": "molten"}, Kind.BURNS, "the carbon of the anode"),
        ("NaCl", {}, Kind.OXYGEN, "hydroxide ions"),
        ("NaCl", {}, Kind.HALOGEN, "chloride ions"),
    ],
)
def test_what_competes_is_an_ion_or_the_anode_itself(
    situation_at: Callable[..., Situation], substance: str, rest: dict[str, str], kind: Kind, phrase: str
) -> None:
    process: ElectrodeProcess = situation_at("anode", substance, **rest).of(kind)[0]
    assert contender(process) == phrase


@pytest.mark.parametrize(
    ("potential_V", "text"),
    [(0.34, "+0.34 V"), (-0.76, "−0.76 V"), (0.0, "0.00 V"), (-0.004, "0.00 V"), (1.2, "+1.20 V")],
)
def test_a_potential_has_two_decimals_and_its_sign_but_zero_has_none(potential_V: float, text: str) -> None:
    assert volts(potential_V) == text


@pytest.mark.parametrize(
    ("items", "joint", "text"),
    [
        ([], "and", ""),
        (["a"], "and", "a"),
        (["a", "b"], "and", "a and b"),
        (["a", "b", "c"], "or", "a, b or c"),
    ],
)
def test_items_are_joined_as_in_a_sentence(items: list[str], joint: str, text: str) -> None:
    assert listed(items, joint) == text


@pytest.mark.parametrize(
    ("text", "started"), [("iron(II) ions", "Iron(II) ions"), ("", ""), ("E° falls", "E° falls")]
)
def test_only_the_first_letter_of_a_sentence_is_changed(text: str, started: str) -> None:
    assert sentence_start(text) == started
