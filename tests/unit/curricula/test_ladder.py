"""The reactivity series at the cathode."""

from collections.abc import Callable

import pytest

from ionwright.curricula.model import Ruling, Situation
from ionwright.curricula.rules.ladder import Ladder

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]
SHORT = ("K", "Na", "Mg", "Al", "C", "Zn", "Fe", "H", "Cu", "Ag")
LONG = ("K", "Na", "Mg", "Al", "C", "Zn", "Fe", "Ni", "Sn", "Pb", "H", "Cu", "Hg", "Ag", "Au")
LADDER = Ladder(SHORT, LONG)
HYDROGEN = "2H^+ + 2e- -> H2"


@pytest.mark.parametrize(
    ("electrolyte", "half"),
    [
        (["CuSO4"], "Cu^2+ + 2e- -> Cu"),
        (["AgNO3"], "Ag^+ + e- -> Ag"),
        (["CuSO4", "AgNO3"], "Ag^+ + e- -> Ag"),
        (["Hg2(NO3)2"], "Hg2^2+ + 2e- -> 2Hg"),
        (["ZnSO4"], HYDROGEN),
        (["FeCl3"], HYDROGEN),
        (["NaCl"], HYDROGEN),
        (["NiSO4"], HYDROGEN),
        (["H2SO4"], HYDROGEN),
        (["ZnSO4", "CuSO4"], "Cu^2+ + 2e- -> Cu"),
    ],
)
def test_the_least_reactive_metal_below_hydrogen_deposits_else_hydrogen(
    quick_at: SituationAt, choice: Choice, electrolyte: list[str], half: str
) -> None:
    quick = quick_at("cathode", *electrolyte)
    assert choice(LADDER.apply(quick)) == half


def test_a_deposit_is_explained_and_so_is_what_stays(situation_at: SituationAt, told: Told) -> None:
    ruling = LADDER.apply(situation_at("cathode", "CuSO4", "ZnSO4"))
    assert ruling.because == (
        (
            "Copper is below hydrogen in the reactivity series, so copper(II) ions are discharged in preference to "
            "hydrogen ions."
        ),
    )
    assert told(ruling.ruled_out) == {
        "Zn^2+ + 2e- -> Zn": "Zinc is above copper in the reactivity series, so zinc ions stay in solution.",
        HYDROGEN: "Hydrogen is above copper in the reactivity series, so hydrogen ions stay in solution.",
    }


@pytest.mark.parametrize(
    ("electrolyte", "start"),
    [
        (
            ["NaCl"],
            "Sodium is above hydrogen in the reactivity series, so hydrogen ions are discharged instead",
        ),
        (["NaCl", "MgCl2"], "Sodium and magnesium are above hydrogen in the reactivity series,"),
        (["HCl"], "Hydrogen ions are the only positive ions that can be discharged here,"),
        (["NH4Cl"], "Hydrogen ions are the only positive ions that can be discharged here,"),
    ],
)
def test_hydrogen_is_explained_by_the_metals_above_it(
    situation_at: SituationAt, electrolyte: list[str], start: str
) -> None:
    assert LADDER.apply(situation_at("cathode", *electrolyte)).because[0].startswith(start)


def test_each_metal_above_hydrogen_is_told_once(situation_at: SituationAt, told: Told) -> None:
    ruling = LADDER.apply(situation_at("cathode", "FeCl3"))
    assert told(ruling.ruled_out) == {
        "Fe^3+ + 3e- -> Fe": "Iron is above hydrogen in the reactivity series, so iron(III) ions stay in solution."
    }


@pytest.mark.parametrize(
    ("substance", "assumption"),
    [
        (
            "NiSO4",
            "Nickel is not on this course's reactivity series; a longer series places it above hydrogen.",
        ),
        (
            "Hg(CH3COO)2",
            "Mercury is not on this course's reactivity series; a longer series places it below hydrogen.",
        ),
    ],
)
def test_the_longer_series_is_used_with_a_word_of_warning(
    situation_at: SituationAt, substance: str, assumption: str
) -> None:
    assert LADDER.apply(situation_at("cathode", substance)).assumptions == (assumption,)


@pytest.mark.parametrize(
    ("substance", "ions"),
    [
        ("MnSO4", "manganese(II) ions"),
        ("CoCl2", "cobalt(II) ions"),
        ("VOSO4", "oxidovanadium(IV) ions"),
        ("KMnO4", "permanganate ions"),
        ("K2Cr2O7", "dichromate ions"),
    ],
)
def test_what_stands_on_neither_series_is_not_decided(
    situation_at: SituationAt, substance: str, ions: str
) -> None:
    ruling = LADDER.apply(situation_at("cathode", substance))
    assert ruling.is_undecidable
    assert ruling.because == (
        f"This course has no rule for {ions} at the cathode: it compares metals with hydrogen and goes no further.",
    )


def test_without_a_longer_series_a_metal_that_is_not_printed_is_not_decided(
    situation_at: SituationAt,
) -> None:
    assert Ladder(SHORT, ()).apply(situation_at("cathode", "NiSO4")).is_undecidable


def test_the_series_is_told_without_the_mark_for_carbon() -> None:
    assert LADDER.sentence.endswith(
        "The series is: potassium, sodium, magnesium, aluminium, zinc, iron, hydrogen, copper, silver."
    )
