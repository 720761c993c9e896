"""The mercury cathode."""

from collections.abc import Callable

import pytest

from ionwright.curricula.model import Ruling, Situation
from ionwright.curricula.rules.mercury import Amalgam

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]


@pytest.mark.parametrize(
    ("substance", "half"),
    [("NaCl", "Na^+ + e- -> Na"), ("KOH", "K^+ + e- -> K"), ("LiCl", "Li^+ + e- -> Li")],
)
def test_a_group_1_metal_dissolves_in_mercury_before_hydrogen_forms(
    situation_at: SituationAt, choice: Choice, substance: str, half: str
) -> None:
    ruling = Amalgam().apply(situation_at("cathode", substance, cathode="mercury"))
    assert choice(ruling) == half
    assert ruling.is_contested
    assert [remark.because for remark in ruling.also_accepted] == [
        "A course that does not teach the mercury cathode answers hydrogen."
    ]


def test_each_process_passed_over_for_an_amalgam_has_its_own_reason(
    situation_at: SituationAt, told: Told
) -> None:
    ruling = Amalgam().apply(situation_at("cathode", "NaCl", "MgCl2", cathode="mercury"))
    assert told(ruling.ruled_out) == {
        "Mg^2+ + 2e- -> Mg": "Magnesium ions stay in solution while sodium dissolves in the mercury.",
        "2H^+ + 2e- -> H2": "Hydrogen forms so slowly on mercury that sodium comes first.",
    }


@pytest.mark.parametrize(
    ("electrolyte", "rest"),
    [(["NaCl", "CuSO4"], {}), (["NaCl", "ZnCl2"], {}), (["NaCl", "HCl"], {}), (["Na2SO4"], {"ph": 1.0})],
)
def test_no_amalgam_forms_beside_an_easier_metal_or_in_acid(
    situation_at: SituationAt, told: Told, electrolyte: list[str], rest: dict[str, float]
) -> None:
    ruling = Amalgam().apply(situation_at("cathode", *electrolyte, cathode="mercury", **rest))
    assert ruling.chosen is None
    assert told(ruling.ruled_out) == {
        "Na^+ + e- -> Na": "Other ions are discharged more easily, so no sodium amalgam forms."
    }


def test_other_cathodes_are_left_alone(situation_at: SituationAt) -> None:
    assert Amalgam().apply(situation_at("cathode", "NaCl")) == Ruling()


def test_the_rule_says_what_it_does() -> None:
    assert Amalgam().sentence.startswith("At a mercury cathode sodium and its like form an amalgam")
