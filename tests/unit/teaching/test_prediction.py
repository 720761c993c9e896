"""The whole account of a cell."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.cell import CellDescription
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.faults import CellRefused
from ionwright.curricula.host import Registry
from ionwright.teaching import Prediction, predict

ToldOf = Callable[..., Prediction]


def test_a_description_and_the_cell_made_from_it_give_the_same_account(
    told_of: ToldOf, registry: Registry
) -> None:
    told = told_of("CuSO4", anode="copper")
    description = CellDescription(electrolyte=(Ingredient("CuSO4"),), anode="copper")
    assert predict(description, registry["a-level"]) == told


def test_a_description_of_an_impossible_cell_is_refused(registry: Registry) -> None:
    with pytest.raises(CellRefused):
        predict(CellDescription(electrolyte=(Ingredient("AgCl"),)), registry["gcse"])


def test_without_a_choice_at_one_electrode_nothing_is_said_of_the_whole(told_of: ToldOf) -> None:
    told = told_of("NaCl", "NaI", curriculum="gcse")
    assert (told.accounts, told.solution) == (None, None)
    assert (told.anode.products, told.anode.half_equation, told.anode.also_written) == ((), None, ())
    assert (told.anode.observations, told.anode.tests) == ((), ())
    assert [kind.ascii for kind in told.cathode.products] == ["H2"]


def test_assumptions_of_the_cell_and_of_both_electrodes_are_told_once(told_of: ToldOf) -> None:
    told = told_of("NiSO4", anode="nickel", curriculum="gcse")
    assert len(told.assumptions) == len(set(told.assumptions)) > 0
    assert set(told.anode.verdict.assumptions) <= set(told.assumptions)


@pytest.mark.parametrize(("substance", "is_told"), [("Na2SO4", True), ("CuSO4", False)])
def test_the_volumes_of_two_gases_are_compared_at_the_anode(
    told_of: ToldOf, substance: str, *, is_told: bool
) -> None:
    last = told_of(substance).anode.observations[-1]
    assert last.endswith("by volume.") is is_told


def test_the_form_that_a_course_prefers_comes_first(told_of: ToldOf) -> None:
    cathode = told_of("NaCl").cathode
    assert str(cathode.half_equation) == "2H2O + 2e- -> H2 + 2OH^-"
    assert [half.ascii for half in cathode.also_written] == ["2H^+ + 2e- -> H2"]
