"""Processes that do not run at an ordinary electrode."""

from collections.abc import Callable

import pytest

from ionwright.curricula.model import Ruling, Situation
from ionwright.curricula.rules.slow import SlowOxidationsOut, SlowReductionsOut

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]


@pytest.mark.parametrize(
    ("substance", "half", "start"),
    [
        ("NaNO3", "NO3^- + H2O + 2e- -> NO2^- + 2OH^-", "Nitrate is reduced only slowly"),
        ("NaClO3", "ClO3^- + 3H2O + 6e- -> Cl^- + 6OH^-", "Chlorate(V) is reduced only slowly"),
        ("K2CrO4", "CrO4^2- + 4H2O + 3e- -> Cr(OH)3 + 5OH^-", "Chromate is reduced only slowly"),
    ],
)
def test_a_deep_course_names_the_reductions_that_are_too_slow(
    situation_at: SituationAt, told: Told, substance: str, half: str, start: str
) -> None:
    (reason,) = told(
        SlowReductionsOut(is_told=True).apply(situation_at("cathode", substance)).ruled_out
    ).items()
    assert reason[0] == half
    assert reason[1].startswith(start)


@pytest.mark.parametrize(
    ("substance", "half"),
    [
        ("Na2SO4", "2SO4^2- -> S2O8^2- + 2e-"),
        ("NaF", "2F^- -> F2 + 2e-"),
        ("CH3COONa", "2CH3COO^- -> C2H6 + 2CO2 + 2e-"),
        ("NH4NO3", "NH4^+ + 3H2O -> NO3^- + 10H^+ + 8e-"),
    ],
)
def test_a_deep_course_names_the_oxidations_that_are_too_slow(
    situation_at: SituationAt, told: Told, substance: str, half: str
) -> None:
    ruling = SlowOxidationsOut(is_told=True).apply(situation_at("anode", substance))
    assert list(told(ruling.ruled_out)) == [half]


def test_a_plain_course_rules_them_out_without_a_word(situation_at: SituationAt) -> None:
    rulings = [
        SlowReductionsOut(is_told=False).apply(situation_at("cathode", "NaNO3")),
        SlowOxidationsOut(is_told=False).apply(situation_at("anode", "Na2SO4")),
    ]
    assert [[remark.because for remark in ruling.ruled_out] for ruling in rulings] == [[""], [""]]


def test_a_cell_without_a_slow_process_is_left_alone(situation_at: SituationAt) -> None:
    assert SlowReductionsOut(is_told=True).apply(situation_at("cathode", "CuSO4")) == Ruling()
    assert SlowOxidationsOut(is_told=True).apply(situation_at("anode", "NaCl")) == Ruling()


def test_an_ion_whose_oxidation_is_in_no_table_leaves_the_anode_undecided(situation_at: SituationAt) -> None:
    ruling = SlowOxidationsOut(is_told=False).apply(situation_at("anode", "KSCN"))
    assert ruling.is_undecidable
    assert ruling.because == (
        "Thiocyanate ions are oxidised before water, and no rule of this course says what they give.",
    )


def test_both_rules_say_what_they_do() -> None:
    assert "nitrate" in SlowReductionsOut(is_told=True).sentence
    assert "never discharged" in SlowOxidationsOut(is_told=True).sentence
