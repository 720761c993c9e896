"""Tasks that leave open how much there is are worked for a unit of it."""

from collections.abc import Callable, Mapping

import pytest

from ionwright.chemistry.amounts import Key, WorkedOut
from ionwright.chemistry.amounts.unit_amount import unit_amounts
from ionwright.chemistry.faults import QuantityFault

NICKEL = "Ni^2+ + 2e- -> Ni"
ALUMINIUM = "Al^3+ + 3e- -> Al"


@pytest.mark.parametrize(
    ("half", "known", "asked", "value"),
    [
        (NICKEL, {"current_density": "20 mA/cm2"}, "growth_rate", 6.834721e-7),
        (NICKEL, {"current_density": "20 mA/cm2", "efficiency": "50%"}, "growth_rate", 3.417360e-7),
        (NICKEL, {"current_density": "20 mA/cm2", "time": "20 min"}, "thickness", 8.201665e-4),
        (NICKEL, {"current_density": "20 mA/cm2", "thickness": "8.201665 um"}, "time", 1200),
        (NICKEL, {"growth_rate": "0.4100832 um/min"}, "current_density", 0.02),
        (ALUMINIUM, {"voltage": "5.0 V"}, "specific_energy", 53611.11),
        (ALUMINIUM, {"specific_energy": "53611.11 J/g"}, "voltage", 5),
    ],
)
def test_what_does_not_depend_on_the_size_needs_none(
    find: Callable[..., list[float]], half: str, known: Mapping[str, str], asked: str, value: float
) -> None:
    """The same figures as for 25 cm² and 0.50 A, and as for 1.00 kg."""
    assert find(half, known, asked) == pytest.approx([value], rel=1e-6)


def test_what_was_chosen_is_told(work: Callable[..., WorkedOut]) -> None:
    worked = work(ALUMINIUM, {"voltage": "5.0 V"}, "specific_energy")
    assert {key: written.text for key, written in worked.knowns.chosen.items()} == {
        Key("mass", "process", "Al"): "1 kg"
    }
    assert worked.figures(Key("specific_energy", "process", "Al")) == 2


def test_nothing_is_chosen_where_the_size_is_said(work: Callable[..., WorkedOut]) -> None:
    worked = work(NICKEL, {"current_density": "20 mA/cm2", "area": "25 cm2", "time": "20 min"}, "thickness")
    assert worked.knowns.chosen == {}


def test_nothing_is_chosen_where_the_answer_is_a_size(refusal: Callable[..., QuantityFault]) -> None:
    fault = refusal(NICKEL, {"current_density": "20 mA/cm2", "time": "20 min"}, "mass")
    assert (fault.code, fault.where) == ("needs-more", "find")


def test_a_rate_of_growth_is_reckoned_for_a_minute_and_a_square_centimetre() -> None:
    mentioned = (Key("current_density", "plating"), Key("growth_rate", "plating", "Ni"))
    assert list(unit_amounts(mentioned)) == [(Key("area", "plating"), "1 cm2"), (Key("time"), "1 min")]


def test_a_plain_task_leaves_nothing_open() -> None:
    rate, mass = Key("growth_rate", "plating", "Ni"), Key("mass", "plating", "Ni")
    assert list(unit_amounts((Key("current"), Key("time"), mass))) == []
    assert list(unit_amounts((rate, mass))) == []
