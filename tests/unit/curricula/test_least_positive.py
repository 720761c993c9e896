"""Standard potentials at the anode."""

from collections.abc import Callable

import pytest

from ionwright.curricula.concentration import ConcentrationRule
from ionwright.curricula.model import Ruling, Situation
from ionwright.curricula.rules.least_positive import LeastPositive

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]
RULE = LeastPositive(ConcentrationRule(1.0, (0.05, 2.0), "concentrated"))
OXYGEN, CHLORINE = "4OH^- -> O2 + 2H2O + 4e-", "2Cl^- -> Cl2 + 2e-"


@pytest.mark.parametrize(
    ("substance", "concentration", "half"),
    [
        ("KI", "dilute", "2I^- -> I2 + 2e-"),
        ("KBr", "dilute", "2Br^- -> Br2 + 2e-"),
        ("Na2SO4", None, OXYGEN),
        ("NaOH", None, OXYGEN),
        ("NaCl", "5 mol/dm3", CHLORINE),
        ("NaCl", "concentrated", CHLORINE),
        ("NaCl", "dilute", OXYGEN),
        ("NaCl", "0.001 mol/dm3", OXYGEN),
        ("SnCl2", None, "Sn^2+ -> Sn^4+ + 2e-"),
        ("FeCl2", None, "Fe^2+ -> Fe^3+ + e-"),
        ("Na2S2O3", None, "2S2O3^2- -> S4O6^2- + 2e-"),
        ("Na2C2O4", None, "C2O4^2- -> 2CO2 + 2e-"),
    ],
)
def test_the_least_positive_couple_is_oxidised_and_chloride_goes_by_concentration(
    quick_at: SituationAt, choice: Choice, substance: str, concentration: str | None, half: str
) -> None:
    situation = quick_at("anode", substance, concentration=concentration)
    assert choice(RULE.apply(situation)) == half


@pytest.mark.parametrize(
    ("concentration", "is_contested"),
    [
        ("concentrated", False),
        ("5 mol/dm3", False),
        ("1.5 mol/dm3", True),
        (None, True),
        ("0.5 mol/dm3", True),
        ("dilute", True),
    ],
)
def test_chloride_is_contested_unless_it_is_plainly_concentrated(
    situation_at: SituationAt, concentration: str | None, *, is_contested: bool
) -> None:
    ruling = RULE.apply(situation_at("anode", "NaCl", concentration=concentration))
    assert ruling.is_contested is is_contested
    assert bool(ruling.also_accepted) is is_contested


def test_concentrated_chloride_is_explained_by_the_extra_voltage_that_oxygen_needs(
    situation_at: SituationAt, told: Told
) -> None:
    ruling = RULE.apply(situation_at("anode", "NaCl", concentration="concentrated"))
    assert ruling.because == (
        (
            "E° for chlorine (+1.36 V) is only a little more positive than for oxygen (+1.23 V). "
            "In a concentrated solution chloride ions win, because oxygen needs a large extra voltage to form."
        ),
    )
    assert told(ruling.ruled_out) == {
        OXYGEN: "E° for oxygen (+1.23 V) is a little less positive, but it forms so slowly that chlorine comes first."
    }


def test_dilute_chloride_is_explained_by_the_potentials(situation_at: SituationAt, told: Told) -> None:
    ruling = RULE.apply(situation_at("anode", "NaCl", concentration="0.01 mol/dm3"))
    assert ruling.because[0].endswith("In a dilute solution water is oxidised first.")
    assert told(ruling.ruled_out) == {
        CHLORINE: "E° for chlorine (+1.36 V) is more positive than for oxygen (+1.23 V)."
    }
    assert ruling.assumptions == (
        "0.01 mol/dm³ of chloride ions was read as dilute; the line was drawn at 1 mol/dm³.",
    )


def test_in_alkali_hydroxide_at_0_40_V_comes_before_chloride(  # noqa: N802 - V is the volt
    situation_at: SituationAt, choice: Choice, told: Told
) -> None:
    ruling = RULE.apply(situation_at("anode", "NaCl", "NaOH", concentration="concentrated"))
    assert choice(ruling) == OXYGEN
    assert told(ruling.ruled_out) == {
        CHLORINE: "E° for chlorine (+1.36 V) is more positive than for oxygen (+0.40 V)."
    }


def test_the_reason_names_both_partners_of_the_change(situation_at: SituationAt) -> None:
    assert RULE.apply(situation_at("anode", "KI")).because == (
        (
            "E° for the change between iodide ions and iodine (+0.54 V) is the least positive of those possible here, "
            "so iodide ions are oxidised first."
        ),
    )


@pytest.mark.parametrize(
    ("substance", "because"),
    [
        ("Na2SO4", "Nothing else here can be oxidised more easily, so water is oxidised."),
        ("NaOH", "Nothing else here can be oxidised more easily, so hydroxide ions are oxidised."),
    ],
)
def test_water_or_hydroxide_without_a_rival_needs_no_comparison(
    quick_at: SituationAt, substance: str, because: str
) -> None:
    assert RULE.apply(quick_at("anode", substance)).because == (because,)


def test_a_tie_with_oxygen_is_left_to_oxygen_and_the_other_is_accepted(
    quick_at: SituationAt, choice: Choice, told: Told
) -> None:
    """Oxygen and manganese dioxide both stand at +1.23 V on school sheets."""
    ruling = RULE.apply(quick_at("anode", "MnSO4"))
    dioxide = "Mn^2+ + 2H2O -> MnO2 + 4H^+ + 2e-"
    assert choice(ruling) == OXYGEN
    assert told(ruling.ruled_out)[dioxide].endswith("(+1.23 V) is no less positive than for oxygen.")
    assert list(told(ruling.also_accepted)) == [dioxide]


def test_the_rule_says_what_it_does() -> None:
    assert "least positive standard potential is oxidised first" in RULE.sentence


CONCENTRATION = ConcentrationRule(1.0, (0.05, 2.0), "concentrated")


@pytest.mark.parametrize("concentration", [None, "dilute", "0.001 mol/dm3", "concentrated"])
def test_chloride_may_come_first_at_any_concentration(
    quick_at: SituationAt, choice: Choice, concentration: str | None
) -> None:
    rule = LeastPositive(CONCENTRATION, "first")
    situation = quick_at("anode", "NaCl", concentration=concentration)
    ruling = rule.apply(situation)
    assert choice(ruling) == CHLORINE
    assert not ruling.is_contested
    assert rule.also_reads(situation.cell) == ()


def test_chloride_never_comes_first_in_alkali(quick_at: SituationAt, choice: Choice) -> None:
    assert choice(LeastPositive(CONCENTRATION, "first").apply(quick_at("anode", "NaCl", "NaOH"))) == OXYGEN


@pytest.mark.parametrize(("concentration", "half"), [("concentrated", CHLORINE), ("dilute", OXYGEN)])
def test_where_chlorine_is_argued_the_other_answer_is_accepted_too(
    quick_at: SituationAt, choice: Choice, concentration: str, half: str
) -> None:
    ruling = LeastPositive(CONCENTRATION, "argued").apply(
        quick_at("anode", "NaCl", concentration=concentration)
    )
    assert choice(ruling) == half
    assert {choice(ruling)} | {r.process.written("").ascii for r in ruling.also_accepted} == {
        CHLORINE,
        OXYGEN,
    }
    assert ruling.is_contested


@pytest.mark.parametrize(("substance", "other"), [("SnCl2", CHLORINE), ("FeSO4", OXYGEN)])
def test_where_changes_of_charge_are_rare_the_halogen_or_oxygen_is_accepted(
    quick_at: SituationAt, substance: str, other: str
) -> None:
    ruling = LeastPositive(CONCENTRATION, "first", "contested").apply(quick_at("anode", substance))
    assert [remark.process.written("").ascii for remark in ruling.also_accepted] == [other]
    assert ruling.is_contested


def test_each_way_with_chloride_is_told() -> None:
    told = {LeastPositive(CONCENTRATION, way).sentence for way in ("by-concentration", "argued", "first")}
    assert len(told) == 3
    assert "the halogen or oxygen is accepted" in LeastPositive(CONCENTRATION, "first", "contested").sentence
