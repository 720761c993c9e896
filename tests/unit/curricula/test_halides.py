"""The school rule at the anode: a halide first, else oxygen."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.cell import CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.species import species
from ionwright.curricula.concentration import ConcentrationRule
from ionwright.curricula.model import PASS, Conventions, Ruling, Situation
from ionwright.curricula.rules.halides import ALWAYS, WHEN_CONCENTRATED, Halides, OxygenOtherwise

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]
IONS = tuple(map(species, ("Cl^-", "Br^-", "I^-")))
CONCENTRATION = ConcentrationRule(1.0, (0.1, 2.0), "concentrated")
EVERY = Halides(IONS, ALWAYS, CONCENTRATION)
STRONG = Halides(IONS, WHEN_CONCENTRATED, CONCENTRATION)
CHLORINE, OXYGEN = "2Cl^- -> Cl2 + 2e-", "4OH^- -> O2 + 2H2O + 4e-"


@pytest.mark.parametrize("concentration", [None, "dilute", "0.001 mol/dm3", "concentrated"])
@pytest.mark.parametrize(
    ("substance", "half"),
    [("NaCl", CHLORINE), ("KBr", "2Br^- -> Br2 + 2e-"), ("KI", "2I^- -> I2 + 2e-"), ("CuCl2", CHLORINE)],
)
def test_always_gives_the_halogen_whatever_the_concentration(
    situation_at: SituationAt, choice: Choice, substance: str, half: str, concentration: str | None
) -> None:
    ruling = EVERY.apply(situation_at("anode", substance, concentration=concentration))
    assert choice(ruling) == half
    assert not ruling.is_contested
    assert not ruling.assumptions


def test_the_reason_names_the_halide_and_speaks_of_hydroxide_only(
    situation_at: SituationAt, told: Told
) -> None:
    ruling = EVERY.apply(situation_at("anode", "FeCl2"))
    assert ruling.because == (
        "Chloride ions are present, so chlorine forms at the anode rather than oxygen.",
    )
    assert told(ruling.ruled_out) == {OXYGEN: "Chloride ions are discharged in preference to hydroxide ions."}


@pytest.mark.parametrize(
    ("given", "half", "is_contested", "also"),
    [
        ("concentrated", CHLORINE, False, []),
        ("5 mol/dm3", CHLORINE, False, []),
        ("1.5 mol/dm3", CHLORINE, True, [OXYGEN]),
        (None, CHLORINE, True, [OXYGEN]),
        ("0.5 mol/dm3", "", True, [CHLORINE]),
        ("0.01 mol/dm3", "", False, []),
        ("dilute", "", False, []),
    ],
)
def test_chloride_goes_by_the_concentration(
    *,
    situation_at: SituationAt,
    choice: Choice,
    given: str | None,
    half: str,
    is_contested: bool,
    also: list[str],
) -> None:
    ruling = STRONG.apply(situation_at("anode", "NaCl", concentration=given))
    assert choice(ruling) == half
    assert ruling.is_contested is is_contested
    assert [remark.process.written("").ascii for remark in ruling.also_accepted] == also


@pytest.mark.parametrize(("substance", "halogen"), [("KI", "iodine"), ("KBr", "bromine")])
def test_dilute_bromide_and_iodide_give_oxygen_by_rule_though_a_real_cell_gives_the_halogen(
    situation_at: SituationAt, substance: str, halogen: str
) -> None:
    ruling = STRONG.apply(situation_at("anode", substance, concentration="dilute"))
    assert ruling.chosen is None
    assert ruling.is_contested
    assert ruling.also_accepted[0].because == f"A real cell gives {halogen} even from a dilute solution."


def test_a_dilute_halide_is_ruled_out_with_a_reason_and_the_number_echoed(
    situation_at: SituationAt, told: Told
) -> None:
    ruling = STRONG.apply(situation_at("anode", "NaCl", concentration="0.01 mol/dm3"))
    assert ruling.because == ("The solution is dilute, so chloride ions stay in solution.",)
    assert told(ruling.ruled_out) == {CHLORINE: "From a dilute solution oxygen forms rather than chlorine."}
    assert ruling.assumptions == (
        "0.01 mol/dm³ of chloride ions was read as dilute; the line was drawn at 1 mol/dm³.",
    )


@pytest.mark.parametrize("rule", [EVERY, STRONG])
def test_between_two_halides_the_rule_does_not_choose_but_says_what_potentials_say(
    situation_at: SituationAt, rule: Halides
) -> None:
    ruling = rule.apply(situation_at("anode", "NaCl", "NaI"))
    assert ruling.is_undecidable
    assert "chloride ions and iodide ions" in ruling.because[0]
    assert ruling.because[0].endswith("By electrode potentials iodine would form first.")


MIXED = [("NaCl", "concentrated", "KI", "dilute"), ("NaCl", "3 mol/dm3", "KI", "0.01 mol/dm3")]


@pytest.mark.parametrize(("one", "strong", "other", "weak"), MIXED)
def test_of_two_halides_only_the_concentrated_one_stays_in_the_running(
    *, choice: Choice, one: str, strong: str, other: str, weak: str
) -> None:
    ingredients = (Ingredient(one, strong), Ingredient(other, weak))
    cell = make_cell(CellDescription(electrolyte=ingredients))
    competition = cell.at_anode()
    conventions = Conventions({}, {})
    ruling = STRONG.apply(Situation(cell, competition, competition.processes, conventions))
    assert choice(ruling) == CHLORINE


def test_two_dilute_halides_are_both_ruled_out(situation_at: SituationAt, told: Told) -> None:
    ruling = STRONG.apply(situation_at("anode", "NaCl", "KI", concentration="dilute"))
    assert ruling.chosen is None
    assert ruling.because == ("The solution is dilute, so chloride ions and iodide ions stay in solution.",)
    assert set(told(ruling.ruled_out)) == {CHLORINE, "2I^- -> I2 + 2e-"}
    assert list(told(ruling.also_accepted)) == ["2I^- -> I2 + 2e-"]


@pytest.mark.parametrize("substance", ["NaF", "Na2SO4", "NaNO3", "NaOH", "NaI"])
def test_fluoride_and_what_the_course_does_not_list_are_passed_on(
    situation_at: SituationAt, substance: str
) -> None:
    only_chloride = Halides(IONS[:1], ALWAYS, CONCENTRATION)
    assert only_chloride.apply(situation_at("anode", substance)) is PASS


@pytest.mark.parametrize(
    ("electrolyte", "because"),
    [
        (
            ["Na2SO4"],
            "Hydroxide ions are discharged more easily than sulfate ions, which stay; oxygen is given off.",
        ),
        (
            ["NaNO3", "Na2SO4"],
            (
                "Hydroxide ions are discharged more easily than nitrate ions and sulfate ions, which stay; "
                "oxygen is given off."
            ),
        ),
        (["NaCl"], "Hydroxide ions are discharged and oxygen is given off."),
        (
            ["NaOH"],
            "Hydroxide ions are the only negative ions present, so they are discharged and oxygen is given off.",
        ),
        (
            ["NaF"],
            "Hydroxide ions are discharged more easily than fluoride ions, which stay; oxygen is given off.",
        ),
    ],
)
def test_oxygen_otherwise_names_the_ions_that_stay(
    quick_at: SituationAt, choice: Choice, electrolyte: list[str], because: str
) -> None:
    quick = quick_at("anode", *electrolyte)
    ruling = OxygenOtherwise().apply(quick)
    assert choice(ruling) == OXYGEN
    assert ruling.because == (because,)


@pytest.mark.parametrize(
    ("substance", "ions"),
    [("Na2S2O3", "thiosulfate ions"), ("NaNO2", "nitrite ions"), ("Na2S", "sulfide ions")],
)
def test_an_anion_that_gives_way_before_hydroxide_is_beyond_the_course(
    situation_at: SituationAt, substance: str, ions: str
) -> None:
    ruling = OxygenOtherwise().apply(situation_at("anode", substance))
    assert ruling.is_undecidable
    assert ruling.because == (
        f"This course has no rule for {ions} at the anode: they are oxidised more easily than hydroxide ions.",
    )


@pytest.mark.parametrize(
    ("rule", "part"),
    [
        (EVERY, "If chloride ions, bromide ions or iodide ions are present, the halogen is given off"),
        (STRONG, "a number counts as concentrated from 1 mol/dm³ of the ion upwards"),
        (OxygenOtherwise(), "Otherwise hydroxide ions are discharged"),
    ],
)
def test_each_rule_says_what_it_does(rule: Halides | OxygenOtherwise, part: str) -> None:
    assert part in rule.sentence
