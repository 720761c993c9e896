"""What only a concentrated solution gives: peroxodisulfate, and the coupling of a carboxylate."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.species import species
from ionwright.curricula.concentration import ConcentrationRule
from ionwright.curricula.model import PASS, Ruling, Situation
from ionwright.curricula.rules.from_concentrated import ACCEPTED, ANSWER, FromConcentrated

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]
CONCENTRATION = ConcentrationRule(3.0, (2.0, 6.0), "dilute")
RULE = FromConcentrated({species("SO4^2-"): ANSWER, species("CH3COO^-"): ANSWER}, CONCENTRATION)
PEROXODISULFATE = "2SO4^2- -> S2O8^2- + 2e-"
ETHANE = "2CH3COO^- -> C2H6 + 2CO2 + 2e-"


@pytest.mark.parametrize(
    ("substance", "concentration", "half", "is_contested"),
    [
        ("H2SO4", "concentrated", PEROXODISULFATE, False),
        ("H2SO4", "18 mol/dm3", PEROXODISULFATE, False),
        ("H2SO4", "5 mol/dm3", PEROXODISULFATE, True),
        ("CH3COONa", "concentrated", ETHANE, False),
    ],
)
def test_a_concentrated_solution_gives_its_special_product(
    *,
    situation_at: SituationAt,
    choice: Choice,
    substance: str,
    concentration: str,
    half: str,
    is_contested: bool,
) -> None:
    ruling = RULE.apply(situation_at("anode", substance, concentration=concentration))
    assert choice(ruling) == half
    assert ruling.is_contested is is_contested
    assert [remark.process.products[0].ascii for remark in ruling.also_accepted] == ["O2"]


@pytest.mark.parametrize(
    ("electrolyte", "concentration"),
    [
        (["H2SO4"], "dilute"),
        (["H2SO4"], "1 mol/dm3"),
        (["H2SO4"], None),
        (["Na2SO4"], "concentrated"),
        (["CuSO4", "H2SO4"], "concentrated"),
        (["HCl", "H2SO4"], "concentrated"),
        (["CH3COONa"], None),
        (["NaCl"], "concentrated"),
    ],
    ids=lambda one: "+".join(one) if isinstance(one, list) else str(one),
)
def test_it_passes_for_all_else(
    situation_at: SituationAt, electrolyte: list[str], concentration: str | None
) -> None:
    assert RULE.apply(situation_at("anode", *electrolyte, concentration=concentration)) is PASS


def test_a_course_may_only_accept_it(situation_at: SituationAt) -> None:
    rule = FromConcentrated({species("SO4^2-"): ACCEPTED}, CONCENTRATION)
    ruling = rule.apply(situation_at("anode", "H2SO4", concentration="concentrated"))
    assert ruling.chosen is None
    assert ruling.is_contested
    assert [remark.process.written("").ascii for remark in ruling.also_accepted] == [PEROXODISULFATE]


def test_the_sentence_tells_what_is_answer_and_what_is_accepted() -> None:
    rule = FromConcentrated({species("SO4^2-"): ACCEPTED, species("CH3COO^-"): ANSWER}, CONCENTRATION)
    assert rule.sentence == (
        "From a concentrated solution ethanoate ions are oxidised themselves; from a concentrated solution the "
        "oxidation of sulfate ions is accepted (sulfate only in sulfuric acid)."
    )
