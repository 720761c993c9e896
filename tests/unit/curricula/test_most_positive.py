"""Standard potentials at the cathode."""

import re
from collections.abc import Callable

import pytest

from ionwright.curricula.model import Ruling, Situation
from ionwright.curricula.rules.most_positive import MostPositive

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]
AS_ION, AS_WATER = MostPositive("H+"), MostPositive("water")
HYDROGEN = "2H^+ + 2e- -> H2"


@pytest.mark.parametrize(
    ("substance", "rest", "as_ion", "as_water"),
    [
        ("CuSO4", {}, "Cu^2+ + 2e- -> Cu", "Cu^2+ + 2e- -> Cu"),
        ("ZnSO4", {}, HYDROGEN, "Zn^2+ + 2e- -> Zn"),  # -0.76 V against 0.00 V or -0.83 V
        ("NiSO4", {}, HYDROGEN, "Ni^2+ + 2e- -> Ni"),
        ("MnSO4", {}, HYDROGEN, HYDROGEN),  # -1.18 V loses to both
        ("NaCl", {}, HYDROGEN, HYDROGEN),
        ("ZnSO4", {"ph": 1.0}, HYDROGEN, HYDROGEN),  # in acid hydrogen ions count
        ("FeCl3", {}, "Fe^3+ + e- -> Fe^2+", "Fe^3+ + e- -> Fe^2+"),
        ("NaOH", {}, HYDROGEN, HYDROGEN),
        ("K[Ag(CN)2]", {"ph": 12.0}, "[Ag(CN)2]^- + e- -> Ag + 2CN^-", "[Ag(CN)2]^- + e- -> Ag + 2CN^-"),
    ],
)
def test_the_most_positive_couple_is_reduced_with_hydrogen_where_the_course_puts_it(
    *,
    situation_at: SituationAt,
    choice: Choice,
    substance: str,
    rest: dict[str, float],
    as_ion: str,
    as_water: str,
) -> None:
    situation = situation_at("cathode", substance, **rest)
    assert choice(AS_ION.apply(situation)) == as_ion
    assert choice(AS_WATER.apply(situation)) == as_water


def test_the_choice_and_every_refusal_name_their_potentials(situation_at: SituationAt, told: Told) -> None:
    ruling = AS_ION.apply(situation_at("cathode", "CuSO4", "ZnSO4"))
    figures = [
        re.findall(r"[+−]?\d\.\d\d V", text) for text in (*ruling.because, *told(ruling.ruled_out).values())
    ]
    assert figures[0] == ["+0.34 V", "0.00 V"]
    assert ["−0.76 V", "+0.34 V"] in figures
    assert figures[-1] == ["0.00 V", "+0.34 V"]


def test_a_second_change_of_the_same_ion_is_not_said_to_leave_it_in_solution(
    situation_at: SituationAt, told: Told
) -> None:
    ruling = AS_ION.apply(situation_at("cathode", "CuSO4"))
    assert told(ruling.ruled_out)["Cu^2+ + e- -> Cu^+"] == "Copper(II) ions change to copper first."


def test_a_couple_that_no_sheet_prints_gives_way_to_the_printed_one(
    situation_at: SituationAt, told: Told
) -> None:
    """Permanganate to manganese dioxide stands at +1.67 V, but sheets print the +1.51 V to manganese(II)."""
    ruling = AS_ION.apply(situation_at("cathode", "KMnO4", ph=1.0))
    assert told(ruling.ruled_out)["MnO4^- + 4H^+ + 3e- -> MnO2 + 2H2O"] == (
        "Permanganate ions change to manganese(II) ions first."
    )


def test_in_alkali_hydrogen_stands_at_the_figure_for_water(situation_at: SituationAt) -> None:
    ruling = AS_ION.apply(situation_at("cathode", "NaOH"))
    assert "water to hydrogen (−0.83 V)" in ruling.because[0]
    assert ruling.because[0].endswith("so hydrogen forms first.")


def test_a_process_without_rivals_needs_no_comparison(situation_at: SituationAt) -> None:
    assert AS_ION.apply(situation_at("cathode", "H2SO4")).because == (
        "No other ion that could be reduced is present, so hydrogen forms.",
    )


def test_a_metal_between_the_two_figures_for_hydrogen_is_contested(situation_at: SituationAt) -> None:
    ruling = AS_ION.apply(situation_at("cathode", "ZnSO4"))
    assert ruling.is_contested
    assert [remark.because for remark in ruling.also_accepted] == [
        (
            "Measured against water at −0.83 V, zinc at −0.76 V would come first; "
            "courses differ, and the metal is accepted with that argument."
        )
    ]


def test_of_several_such_metals_the_most_positive_is_named_first(situation_at: SituationAt) -> None:
    ruling = AS_ION.apply(situation_at("cathode", "ZnSO4", "NiSO4"))
    assert [remark.process.metal for remark in ruling.also_accepted] == ["Ni", "Zn"]


def test_where_the_metal_wins_against_water_hydrogen_is_accepted_too(situation_at: SituationAt) -> None:
    ruling = AS_WATER.apply(situation_at("cathode", "ZnSO4"))
    assert [remark.because for remark in ruling.also_accepted] == [
        "Measured against hydrogen ions at 0.00 V, hydrogen would come first; it is accepted too."
    ]


@pytest.mark.parametrize(
    ("substance", "rest"), [("CuSO4", {}), ("MnSO4", {}), ("ZnSO4", {"ph": 1.0}), ("NaOH", {}), ("NaCl", {})]
)
def test_nothing_is_contested_where_both_figures_give_one_answer(
    situation_at: SituationAt, substance: str, rest: dict[str, float]
) -> None:
    assert not AS_ION.apply(situation_at("cathode", substance, **rest)).is_contested
    assert AS_ION.apply(situation_at("cathode", substance, **rest)).also_accepted == ()


@pytest.mark.parametrize(("rule", "end"), [(AS_ION, "0.00 V."), (AS_WATER, "−0.83 V (from water).")])
def test_the_rule_says_where_hydrogen_stands(rule: MostPositive, end: str) -> None:
    assert rule.sentence.endswith(f"hydrogen counts as {end}")


@pytest.mark.parametrize(
    ("substance", "half", "also"),
    [
        ("NiSO4", "Ni^2+ + 2e- -> Ni", [HYDROGEN]),
        ("SnSO4", "Sn^2+ + 2e- -> Sn", [HYDROGEN]),
        ("FeSO4", HYDROGEN, ["Fe^2+ + 2e- -> Fe"]),
        ("ZnSO4", HYDROGEN, ["Zn^2+ + 2e- -> Zn"]),
        ("MnSO4", HYDROGEN, []),
        ("CuSO4", "Cu^2+ + 2e- -> Cu", []),
    ],
)
def test_hydrogen_at_ph_7_parts_nickel_and_tin_from_iron_and_zinc(
    situation_at: SituationAt, choice: Choice, substance: str, half: str, also: list[str]
) -> None:
    ruling = MostPositive("H+ at pH 7").apply(situation_at("cathode", substance))
    assert choice(ruling) == half
    assert [remark.process.written("").ascii for remark in ruling.also_accepted] == also
    assert ruling.is_contested is bool(also)


def test_the_figure_at_ph_7_is_told(situation_at: SituationAt) -> None:
    rule = MostPositive("H+ at pH 7")
    assert "−0.41 V in a neutral solution" in rule.sentence
    assert (
        "hydrogen ions at pH 7 to hydrogen (−0.41 V)"
        in rule.apply(situation_at("cathode", "NaCl")).because[0]
    )


def test_an_ion_that_water_turns_back_is_not_counted(
    situation_at: SituationAt, choice: Choice, told: Told
) -> None:
    ruling = AS_WATER.apply(situation_at("cathode", "Cr2(SO4)3"))
    assert choice(ruling) == "Cr^3+ + 3e- -> Cr"
    assert told(ruling.ruled_out)["Cr^3+ + e- -> Cr^2+"] == (
        "Chromium(II) ions would give hydrogen with the water, so chromium(III) ions are not counted as changing their "
        "charge."
    )


def test_where_changes_of_charge_are_rare_the_metal_or_hydrogen_is_accepted(
    situation_at: SituationAt, choice: Choice
) -> None:
    ruling = MostPositive("H+", "contested").apply(situation_at("cathode", "FeCl3"))
    assert choice(ruling) == "Fe^3+ + e- -> Fe^2+"
    assert [remark.process.written("").ascii for remark in ruling.also_accepted] == [HYDROGEN]
    assert ruling.is_contested
    assert not AS_ION.apply(situation_at("cathode", "FeCl3")).is_contested
