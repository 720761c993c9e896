"""Courses in which the task gives the couples."""

from collections.abc import Callable

import pytest

from ionwright.curricula.model import Ruling, Situation
from ionwright.curricula.rules.given_couples import GivenCouples

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]
RULE = GivenCouples()


@pytest.mark.parametrize(
    ("electrode", "substance", "rest", "half"),
    [
        ("cathode", "Na2SO4", {}, "2H^+ + 2e- -> H2"),
        ("cathode", "NaCl", {}, "2H^+ + 2e- -> H2"),
        ("anode", "Na2SO4", {}, "4OH^- -> O2 + 2H2O + 4e-"),
        ("anode", "AgNO3", {}, "4OH^- -> O2 + 2H2O + 4e-"),
        ("cathode", "CuSO4", {"anode": "copper"}, "Cu^2+ + 2e- -> Cu"),
        ("anode", "CuSO4", {"anode": "copper"}, "Cu -> Cu^2+ + 2e-"),
        ("cathode", "ZnSO4", {"anode": "zinc"}, "Zn^2+ + 2e- -> Zn"),
    ],
)
def test_what_needs_no_couples_is_decided(
    *, quick_at: SituationAt, choice: Choice, electrode: str, substance: str, rest: dict[str, str], half: str
) -> None:
    ruling = RULE.apply(quick_at(electrode, substance, **rest))
    assert choice(ruling) == half
    assert bool(ruling.assumptions) is bool(rest)


@pytest.mark.parametrize(
    ("electrode", "substance", "rest", "named"),
    [
        ("anode", "NaCl", {}, "chloride ions to chlorine and hydroxide ions to oxygen"),
        (
            "cathode",
            "CuSO4",
            {},
            "copper(II) ions to copper and hydrogen ions to hydrogen",
        ),
        (
            "anode",
            "Na2SO4",
            {"anode": "copper"},
            "the copper of the anode to copper(II) ions and hydroxide ions",
        ),
        (
            "cathode",
            "NaCl",
            {"cathode": "mercury"},
            "sodium ions to sodium amalgam and hydrogen ions to hydrogen",
        ),
    ],
)
def test_of_several_processes_none_is_guessed(
    quick_at: SituationAt, electrode: str, substance: str, rest: dict[str, str], named: str
) -> None:
    ruling = RULE.apply(quick_at(electrode, substance, **rest))
    assert ruling.is_undecidable
    assert named in ruling.because[0]


def test_a_metal_that_never_comes_out_of_water_is_said_to_stay(quick_at: SituationAt, told: Told) -> None:
    ruling = RULE.apply(quick_at("cathode", "NaCl"))
    assert told(ruling.ruled_out) == {
        "Na^+ + e- -> Na": "Sodium ions stay in solution: sodium never deposits from water."
    }
