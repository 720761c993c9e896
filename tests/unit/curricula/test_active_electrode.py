"""Anodes that react themselves."""

from collections.abc import Callable

import pytest

from ionwright.curricula.model import PASS, Ruling, Situation
from ionwright.curricula.rules.active_electrode import ActiveElectrode

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]
COPPER_ONLY = ActiveElectrode(("copper",), "oxygen", is_slow_told=False)
WITH_FILMS = ActiveElectrode(("copper", "stainless-steel", "lead"), "film", is_slow_told=True)


def test_a_taught_anode_dissolves_and_nothing_is_contested(
    situation_at: SituationAt, choice: Choice, told: Told
) -> None:
    ruling = COPPER_ONLY.apply(situation_at("anode", "CuSO4", anode="copper"))
    assert choice(ruling) == "Cu -> Cu^2+ + 2e-"
    assert (ruling.is_contested, ruling.otherwise, ruling.assumptions) == (False, "", ())
    assert told(ruling.ruled_out) == {
        "4OH^- -> O2 + 2H2O + 4e-": "Hydroxide ions stay in solution: copper is oxidised more easily.",
    }


def test_a_deeper_course_says_why_ions_that_are_slow_to_oxidise_stay_too(
    situation_at: SituationAt, told: Told
) -> None:
    ruling = WITH_FILMS.apply(situation_at("anode", "CuSO4", anode="copper"))
    assert told(ruling.ruled_out)["2SO4^2- -> S2O8^2- + 2e-"] == (
        "Sulfate ions stay in solution: copper is oxidised more easily."
    )


def test_an_anode_that_the_course_does_not_name_dissolves_too_but_is_contested(
    situation_at: SituationAt, choice: Choice
) -> None:
    ruling = COPPER_ONLY.apply(situation_at("anode", "NiSO4", anode="nickel"))
    assert choice(ruling) == "Ni -> Ni^2+ + 2e-"
    assert "treats every anode as inert" in ruling.otherwise
    assert ruling.assumptions == (
        "The course does not name nickel as an active electrode; the same reasoning was applied to it.",
    )


def test_cations_that_could_be_oxidised_are_not_spoken_of(situation_at: SituationAt, told: Told) -> None:
    ruling = WITH_FILMS.apply(situation_at("anode", "FeSO4", anode="copper"))
    unspoken = [remark.process.reactant.ascii for remark in ruling.ruled_out if not remark.because]
    assert unspoken == ["Fe^2+"]
    assert "Fe^2+" not in " ".join(told(ruling.ruled_out))


@pytest.mark.parametrize(
    ("substance", "anode", "half", "film"),
    [
        ("H2SO4", "lead", "Pb + SO4^2- -> PbSO4 + 2e-", "lead(II) sulfate"),
        ("H2SO4", "aluminium", "2Al + 3H2O -> Al2O3 + 6H^+ + 6e-", "aluminium oxide"),
    ],
)
def test_a_skin_counts_as_the_answer_only_in_a_course_that_teaches_films(
    *, situation_at: SituationAt, choice: Choice, substance: str, anode: str, half: str, film: str
) -> None:
    situation = situation_at("anode", substance, anode=anode)
    plain, deep = COPPER_ONLY.apply(situation), WITH_FILMS.apply(situation)
    assert choice(plain) == ""
    assert plain.also_accepted[0].because == f"In fact a film of {film} grows on the anode first."
    assert choice(deep) == half


@pytest.mark.parametrize(("substance", "film"), [("NaCl", "silver chloride"), ("KI", "silver iodide")])
def test_a_halide_film_on_silver_is_the_answer_in_every_course(
    situation_at: SituationAt, substance: str, film: str
) -> None:
    ruling = COPPER_ONLY.apply(situation_at("anode", substance, anode="silver"))
    assert ruling.because[0].endswith(f"what forms does not dissolve: a film of {film} grows on it.")


@pytest.mark.parametrize(
    ("substance", "anode"),
    [("CuSO4", "graphite"), ("NaOH", "copper"), ("NaCl", "platinum"), ("NaOH", "nickel")],
)
def test_an_inert_or_passive_anode_is_passed_on(
    situation_at: SituationAt, substance: str, anode: str
) -> None:
    assert COPPER_ONLY.apply(situation_at("anode", substance, anode=anode)) is PASS


@pytest.mark.parametrize(
    ("rule", "end"),
    [
        (WITH_FILMS, "the course teaches it for copper, stainless steel or lead."),
        (ActiveElectrode((), "oxygen", is_slow_told=False), "the course teaches it for other metals."),
    ],
)
def test_the_rule_says_for_which_materials_it_is_taught(rule: ActiveElectrode, end: str) -> None:
    assert rule.sentence.endswith(end)
