"""Plating baths."""

from collections.abc import Callable

import pytest

from ionwright.curricula.model import PASS, Ruling, Situation
from ionwright.curricula.rules.plating import Plating

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]


@pytest.mark.parametrize(
    ("substance", "anode", "half"),
    [
        ("NiSO4", "nickel", "Ni^2+ + 2e- -> Ni"),
        ("ZnSO4", "zinc", "Zn^2+ + 2e- -> Zn"),
        ("SnSO4", "tin", "Sn^2+ + 2e- -> Sn"),
        ("FeSO4", "iron", "Fe^2+ + 2e- -> Fe"),
    ],
)
def test_a_metal_a_little_above_hydrogen_deposits_in_its_bath(
    situation_at: SituationAt, choice: Choice, substance: str, anode: str, half: str
) -> None:
    ruling = Plating().apply(situation_at("cathode", substance, anode=anode))
    assert choice(ruling) == half
    assert ruling.because[0].endswith("although it stands above hydrogen in the reactivity series.")
    assert not ruling.is_contested


def test_hydrogen_is_accepted_beside_it_and_every_process_has_a_reason(
    situation_at: SituationAt, told: Told
) -> None:
    ruling = Plating().apply(situation_at("cathode", "NiSO4", "Na2SO4", anode="nickel"))
    assert told(ruling.ruled_out) == {
        "Na^+ + e- -> Na": "Sodium ions stay in solution while nickel deposits.",
        "2H^+ + 2e- -> H2": "In a plating bath most of the current deposits nickel; little hydrogen forms.",
    }
    assert [remark.process.written("").ascii for remark in ruling.also_accepted] == ["2H^+ + 2e- -> H2"]


def test_in_acid_the_plated_metal_is_contested(situation_at: SituationAt) -> None:
    assert Plating().apply(situation_at("cathode", "ZnSO4", anode="zinc", ph=2.0)).is_contested


def test_more_acid_than_metal_ions_leaves_the_choice_to_the_ordinary_rule_and_marks_it_contested(
    situation_at: SituationAt,
) -> None:
    """Against 1 mol/dm3 of hydrogen ions, 0.1 mol/dm3 of zinc ions do not plate."""
    ruling = Plating().apply(
        situation_at("cathode", "ZnSO4", concentration="0.1 mol/dm3", anode="zinc", ph=0.0)
    )
    assert ruling.chosen is None
    assert ruling.is_contested
    assert [remark.process.metal for remark in ruling.also_accepted] == ["Zn"]


def test_a_silver_complex_plates_without_a_word_about_hydrogen(
    situation_at: SituationAt, choice: Choice
) -> None:
    ruling = Plating().apply(situation_at("cathode", "K[Ag(CN)2]", anode="silver"))
    assert choice(ruling) == "[Ag(CN)2]^- + e- -> Ag + 2CN^-"
    assert "although" not in ruling.because[0]


@pytest.mark.parametrize(
    ("electrolyte", "anode"),
    [
        (["NiSO4"], "graphite"),
        (["CuSO4"], "copper"),  # copper is below hydrogen: the ordinary rule chooses it
        (["AgNO3"], "silver"),
        (["NiSO4", "CuSO4"], "nickel"),  # the nobler copper comes first
        (["NiCl2", "FeCl3"], "nickel"),  # iron(III) ions are reduced first
        (["MgCl2"], "magnesium"),  # magnesium cannot be plated from water
        (["MnSO4"], "manganese"),
        (["NaCl"], "copper"),
    ],
)
def test_what_is_no_bath_or_needs_no_help_is_passed_on(
    situation_at: SituationAt, electrolyte: list[str], anode: str
) -> None:
    assert Plating().apply(situation_at("cathode", *electrolyte, anode=anode)) is PASS


def test_the_rule_says_what_it_does() -> None:
    assert "set up for plating" in Plating().sentence
