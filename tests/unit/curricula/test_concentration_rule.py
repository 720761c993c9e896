"""How a course reads a concentration."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.cell import Cell
from ionwright.chemistry.species import species
from ionwright.curricula.concentration import ConcentrationRule

RULE = ConcentrationRule(1.0, (0.1, 2.0), "concentrated")
CHLORIDE = species("Cl^-")


@pytest.mark.parametrize(
    ("word", "is_concentrated"),
    [("dilute", False), ("concentrated", True), ("very dilute", False), ("saturated", True), ("conc", True)],
)
def test_the_word_in_the_task_settles_it(
    cell_of: Callable[..., Cell], word: str, is_concentrated: bool
) -> None:
    reading = RULE.read(cell_of("NaCl", concentration=word), CHLORIDE)
    assert reading.is_concentrated is is_concentrated
    assert (reading.is_doubtful, reading.assumption) == (False, "")


@pytest.mark.parametrize(
    ("substance", "given", "is_concentrated", "is_doubtful"),
    [
        ("NaCl", "0.05 mol/dm3", False, False),
        ("NaCl", "0.1 mol/dm3", False, True),
        ("NaCl", "0.999 mol/dm3", False, True),
        ("NaCl", "1 mol/dm3", True, True),
        ("NaCl", "2 mol/dm3", True, True),
        ("NaCl", "2.01 mol/dm3", True, False),
        ("NaCl", "5 mol/dm3", True, False),
        ("MgCl2", "0.6 mol/dm3", True, True),  # 1.2 mol/dm3 of chloride
        ("MgCl2", "0.04 mol/dm3", False, False),  # 0.08 mol/dm3 of chloride
        ("FeCl3", "1 mol/dm3", True, False),  # 3 mol/dm3 of chloride
        ("NaCl", "58.44 g/dm3", True, True),  # one mole of sodium chloride weighs 58.44 g
    ],
)
def test_a_number_is_compared_on_the_ion_and_not_on_the_formula(
    cell_of: Callable[..., Cell], substance: str, given: str, is_concentrated: bool, is_doubtful: bool
) -> None:
    reading = RULE.read(cell_of(substance, concentration=given), CHLORIDE)
    assert reading.is_concentrated is is_concentrated
    assert reading.is_doubtful is is_doubtful


def test_a_number_is_echoed_with_the_line_that_was_drawn(cell_of: Callable[..., Cell]) -> None:
    reading = RULE.read(cell_of("MgCl2", concentration="0.6 mol/dm3"), CHLORIDE)
    assert reading.assumption == (
        "1.2 mol/dm³ of chloride ions was read as concentrated; the line was drawn at 1 mol/dm³."
    )


@pytest.mark.parametrize("word", ["concentrated", "dilute"])
def test_a_task_that_says_nothing_is_read_as_the_course_does_and_left_doubtful(
    cell_of: Callable[..., Cell], word: str
) -> None:
    reading = ConcentrationRule(1.0, (0.1, 2.0), word).read(cell_of("NaCl"), CHLORIDE)
    assert reading.is_concentrated is (word == "concentrated")
    assert reading.is_doubtful
    assert reading.assumption == f"No concentration was given, so the solution was taken as {word}."
