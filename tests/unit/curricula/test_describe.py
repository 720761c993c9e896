"""A curriculum told in words and plain data."""

import json
from dataclasses import replace

import pytest

from ionwright.curricula.describe import describe
from ionwright.curricula.host import load_curricula
from ionwright.curricula.scope import CourseScope

REGISTRY = load_curricula()


@pytest.mark.parametrize("id_", list(REGISTRY))
def test_a_description_is_plain_data_with_a_sentence_for_each_rule(id_: str) -> None:
    told = json.loads(json.dumps(describe(REGISTRY[id_])))
    assert told["id"] == id_
    assert len(told["rules"]["cathode"]) == len(REGISTRY[id_].cathode_rules)
    assert all(sentence.endswith(".") for side in told["rules"].values() for sentence in side)


def test_the_rules_stand_in_the_order_in_which_they_are_applied() -> None:
    cathode = describe(REGISTRY["gcse"])["rules"]["cathode"]
    assert cathode[0].startswith("In a melt there is no water")
    assert cathode[-1].startswith("A metal above hydrogen in the reactivity series stays in solution")


def test_conventions_and_constants_stand_side_by_side() -> None:
    assert describe(REGISTRY["a-level"])["conventions"] == {
        "hydrogen_from": {"acidic": ["ions"], "neutral": ["water", "ions"], "alkaline": ["water"]},
        "oxygen_from": {"acidic": ["water"], "neutral": ["water", "ions"], "alkaline": ["ions"]},
        "state_symbols": "asked",
        "oxidation_also_minus": True,
        "faraday_constant": "96500 C/mol",
        "molar_gas_volume": "24.0 dm3/mol",
        "gas_conditions": "room temperature and pressure",
        "other_molar_gas_volumes": {"stp, 273 K and 101 kPa": "22.4 dm3/mol"},
        "avogadro_constant": "6.02e23 /mol",
        "elementary_charge": "1.60e-19 C",
        "gas_constant": "8.31 J/(mol K)",
        "relative_atomic_mass_decimals": 1,
    }


def test_relative_atomic_masses_of_a_course_are_told() -> None:
    conventions = describe(REGISTRY["igcse"])["conventions"]
    assert conventions["relative_atomic_masses"] == {"Cu": "64", "Cl": "35.5"}
    assert conventions["relative_atomic_mass_decimals"] == 0


def test_a_constant_that_a_course_does_not_use_is_absent() -> None:
    assert "faraday_constant" not in describe(REGISTRY["gcse"])["conventions"]


def test_certainty_and_sources_are_told() -> None:
    told = describe(REGISTRY["igcse"])
    assert told["certainty"]["concentration"] == "low"
    assert "O level chemistry syllabus, electrolysis topic" in told["sources"]


@pytest.mark.parametrize("id_", list(REGISTRY))
def test_what_a_course_covers_is_told(id_: str) -> None:
    scope = describe(REGISTRY[id_])["scope"]
    assert scope["quantities"]
    assert scope["electrodes"]
    assert scope["vocabulary"]


def test_what_a_declaration_does_not_say_of_its_scope_is_absent() -> None:
    assert "melts" not in describe(REGISTRY["terminale"])["scope"]
    assert describe(replace(REGISTRY["gcse"], scope=CourseScope()))["scope"] == {}
