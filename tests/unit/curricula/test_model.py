"""Situations, rulings and conventions."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from ionwright.chemistry.process import Kind
from ionwright.curricula.constants import PrintedConstants
from ionwright.curricula.model import PASS, Conventions, Ruling, Situation, undecidable

CONVENTIONS = Conventions(
    hydrogen={"acidic": ("ions",), "neutral": ("water", "ions"), "alkaline": ("water",)},
    oxygen={"acidic": ("water",), "neutral": ("ions", "water"), "alkaline": ("ions",)},
)


def test_a_situation_sifts_what_remains_and_not_the_whole_competition(
    situation_at: Callable[..., Situation],
) -> None:
    whole = situation_at("cathode", "CuSO4")
    rest = replace(whole, remaining=whole.of(Kind.HYDROGEN))
    assert rest.of(Kind.METAL) == ()
    assert len(rest.competition.of(Kind.METAL)) == 1


@pytest.mark.parametrize(
    ("electrode", "substance", "entrants"),
    [
        ("cathode", "CuSO4", ["Cu^2+ + 2e- -> Cu", "2H^+ + 2e- -> H2"]),
        ("cathode", "FeCl3", ["Fe^3+ + e- -> Fe^2+", "2H^+ + 2e- -> H2"]),
        ("anode", "KIO3", ["IO3^- + H2O -> IO4^- + 2H^+ + 2e-", "4OH^- -> O2 + 2H2O + 4e-"]),
        ("anode", "Na2S2O3", ["2S2O3^2- -> S4O6^2- + 2e-", "4OH^- -> O2 + 2H2O + 4e-"]),
    ],
)
def test_an_ion_enters_with_its_printed_couples_or_with_all_where_none_is_printed(
    situation_at: Callable[..., Situation], electrode: str, substance: str, entrants: list[str]
) -> None:
    found = situation_at(electrode, substance).entrants()
    assert [process.written("").ascii for process in found] == entrants


@pytest.mark.parametrize(
    ("medium", "hydrogen", "also", "oxygen"),
    [
        ("acidic", "2H^+ + 2e- -> H2", [], "2H2O -> O2 + 4H^+ + 4e-"),
        ("neutral", "2H2O + 2e- -> H2 + 2OH^-", ["2H^+ + 2e- -> H2"], "4OH^- -> O2 + 2H2O + 4e-"),
        ("alkaline", "2H2O + 2e- -> H2 + 2OH^-", [], "4OH^- -> O2 + 2H2O + 4e-"),
    ],
)
def test_hydrogen_and_oxygen_are_written_as_the_medium_and_the_course_say(
    situation_at: Callable[..., Situation], medium: str, hydrogen: str, also: list[str], oxygen: str
) -> None:
    (gas,) = situation_at("cathode", "NaCl").of(Kind.HYDROGEN)
    (other,) = situation_at("anode", "NaCl").of(Kind.OXYGEN)
    assert CONVENTIONS.written(gas, medium).ascii == hydrogen
    assert [half.ascii for half in CONVENTIONS.also_written(gas, medium)] == also
    assert CONVENTIONS.written(other, medium).ascii == oxygen


def test_a_process_with_one_form_has_no_other_form(situation_at: Callable[..., Situation]) -> None:
    (copper, *_) = situation_at("cathode", "CuSO4").of(Kind.METAL)
    assert CONVENTIONS.written(copper, "neutral").ascii == "Cu^2+ + 2e- -> Cu"
    assert CONVENTIONS.also_written(copper, "neutral") == ()


def test_a_melt_writes_its_gases_from_ions(situation_at: Callable[..., Situation]) -> None:
    (oxygen,) = situation_at("anode", "NaOH", state="molten").of(Kind.OXYGEN)
    assert CONVENTIONS.written(oxygen, "molten").ascii == "4OH^- -> O2 + 2H2O + 4e-"


def test_conventions_ask_for_states_only_on_demand_and_print_no_constants_unless_told() -> None:
    assert CONVENTIONS.state_symbols == "asked"
    assert CONVENTIONS.oxidation_also_minus
    assert CONVENTIONS.constants == PrintedConstants()


def test_what_is_undecidable_is_told_with_its_reason() -> None:
    ruling = undecidable("Nobody knows.")
    assert ruling.is_undecidable
    assert ruling.because == ("Nobody knows.",)
    assert ruling.chosen is None


def test_passing_is_the_empty_ruling() -> None:
    assert Ruling() == PASS
