"""What a process does to its bath: concentrations, what is left, and when an ion runs out."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.amounts import Circuit, Key, Process, WorkedOut
from ionwright.chemistry.amounts.bath_relations import bath_relations
from ionwright.chemistry.equation import read_equation
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.medium import with_states

Find = Callable[..., list[float]]
Refusal = Callable[..., QuantityFault]

COPPER = "Cu^2+ + 2e- -> Cu"
NICKEL = "Ni^2+ + 2e- -> Ni"
OXYGEN = "2H2O -> O2 + 4H+ + 4e-"
IN_ONE_BATH = {"cathode": f"{COPPER} @ cathode @ bath", "anode": f"{OXYGEN} @ anode @ bath"}
REFINING = {"cathode": f"{COPPER} @ cathode @ bath", "anode": "Cu -> Cu^2+ + 2e- @ anode @ bath"}
SHARED = {"nickel": f"{NICKEL} @ cathode @ bath", "hydrogen": "2H+ + 2e- -> H2 @ cathode @ bath"}
BATH = {"bath_volume": "200 cm3", "bath_concentration": "0.100 mol/dm3"}
A_THIRD = {"current": "0.500 A", "time": "2573.333 s"}
"""1286.6667 C are 0.0133333 mol of electrons, which take a third of the 0.0200 mol of copper ions."""


def test_a_concentration_falls_by_what_is_used_up(find: Find) -> None:
    """0.0066667 mol from 0.200 dm³ are 0.0333333 mol/dm³."""
    known = {**BATH, **A_THIRD}
    found = find(COPPER, known, "concentration", "concentration_change", "amount_left")
    assert found == pytest.approx([0.0666667, 0.0333333, 0.0133333], rel=1e-5)


def test_the_concentration_at_the_start_follows_from_that_at_the_end(find: Find) -> None:
    known = {"bath_volume": "200 cm3", "concentration": "0.0666667 mol/dm3", **A_THIRD}
    assert find(COPPER, known, "bath_concentration") == pytest.approx([0.1], rel=1e-5)


def test_the_volume_of_a_bath_follows_from_a_change_of_concentration(find: Find) -> None:
    known = {"concentration_change": "0.0333333 mol/dm3", **A_THIRD}
    assert find(COPPER, known, "bath_volume") == pytest.approx([0.2], rel=1e-5)


def test_the_time_follows_from_two_concentrations(find: Find) -> None:
    known = {**BATH, "concentration": "0.0750 mol/dm3", "current": "0.500 A"}
    assert find(COPPER, known, "time") == pytest.approx([1930], rel=1e-9)


def test_an_ion_runs_out_after_the_charge_of_all_of_it(find: Find) -> None:
    """0.0200 mol take 0.0400 mol of electrons, 3860 C, at 0.500 A in 7720 s."""
    known = {**BATH, "current": "0.500 A"}
    assert find(COPPER, known, "exhaustion_charge", "exhaustion_time") == pytest.approx([3860, 7720])


def test_what_has_passed_is_taken_from_what_may_still_pass(find: Find) -> None:
    """3860 C less 1286.667 C, and 7720 s less 2573.333 s."""
    found = find(COPPER, {**BATH, **A_THIRD}, "charge_left", "time_left")
    assert found == pytest.approx([2573.333, 5146.667], rel=1e-6)


def test_at_an_efficiency_of_80_percent_a_quarter_more_charge_has_to_pass(find: Find) -> None:
    known = {**BATH, "current": "0.500 A", "efficiency": "80%"}
    assert find(COPPER, known, "exhaustion_charge", "exhaustion_time") == pytest.approx([4825, 9650])


def test_a_share_of_the_current_takes_longer(find: Find) -> None:
    """Half of the current goes into nickel: twice 0.0400 mol × 96500 C/mol."""
    known = {
        "bath_volume": "200 cm3", ("bath_concentration", "Ni^2+"): "0.100 mol/dm3", ("share", "Ni"): "50.0%",
        "current": "2.00 A",
    }  # fmt: skip
    found = find(SHARED, known, ("exhaustion_charge", "Ni^2+"), ("exhaustion_time", "Ni^2+"))
    assert found == pytest.approx([7720, 3860])


def test_an_ion_that_is_formed_was_not_there_at_the_start_if_nothing_is_said(
    work: Callable[..., WorkedOut],
) -> None:
    """1286.6667 C form 0.0133333 mol of hydrogen ions in 0.200 dm³."""
    worked = work(IN_ONE_BATH, {"bath_volume": "200 cm3", **A_THIRD}, ("concentration", "H^+"))
    assert worked.values[Key("concentration", "bath", "H^+")].number == pytest.approx(0.0666667, rel=1e-5)
    assert [said for _, said in worked.knowns.assumptions] == ["No H⁺ was in the solution at the start."]


def test_an_ion_that_is_formed_is_added_to_what_was_there(find: Find) -> None:
    known = {"bath_volume": "200 cm3", ("bath_concentration", "H^+"): "0.0100 mol/dm3", **A_THIRD}
    assert find(IN_ONE_BATH, known, ("concentration", "H^+")) == pytest.approx([0.0766667], rel=1e-5)


def test_an_anode_that_dissolves_keeps_the_concentration(find: Find) -> None:
    known = {**BATH, **A_THIRD}
    assert find(REFINING, known, ("concentration", "Cu^2+")) == pytest.approx([0.1])


def test_the_change_of_a_bath_whose_anode_dissolves_is_zero(find: Find) -> None:
    known = {**BATH, **A_THIRD}
    assert find(REFINING, known, ("concentration_change", "Cu^2+")) == [0]


@pytest.mark.parametrize("asked", ["exhaustion_time", "exhaustion_charge", "charge_left", "time_left"])
def test_an_ion_that_the_anode_gives_back_never_runs_out(refusal: Refusal, asked: str) -> None:
    fault = refusal(REFINING, {**BATH, **A_THIRD}, (asked, "Cu^2+"))
    assert (fault.code, fault.where) == ("contradictory", "find")
    assert "does not run out: as much goes into the solution" in fault.detail


def test_an_ion_that_is_formed_never_runs_out(refusal: Refusal) -> None:
    fault = refusal(IN_ONE_BATH, {"bath_volume": "200 cm3", **A_THIRD}, ("exhaustion_time", "H^+"))
    assert (fault.code, fault.where) == ("contradictory", "find")
    assert fault.detail == "H⁺ does not run out: it is formed."


def test_more_than_the_bath_holds_cannot_be_used_up(refusal: Refusal) -> None:
    known = {**BATH, "current": "0.500 A", "time": "2.50 h"}
    fault = refusal(COPPER, known, "concentration")
    assert fault.code == "contradictory"
    assert fault.where.startswith("known/")
    assert fault.detail == "The bath holds only 0.0200 mol of Cu²⁺: it runs out before that."


def test_using_up_all_but_a_little_more_than_all_is_put_down_to_rounding(find: Find) -> None:
    """3900 C in place of 3860 C: one in a hundred more than there is."""
    (left,) = find(COPPER, {**BATH, "charge": "3900 C"}, "amount_left")
    assert left == pytest.approx(-0.0002073, rel=1e-3)


def test_an_ion_is_taken_and_given_back_by_several_processes(find: Find) -> None:
    """Two thirds of what copper sulfate loses at the cathode come back from the anode, where oxygen forms too.

    0.0600 mol of electrons take 0.0300 mol of ions; 0.0400 mol of them bring 0.0200 mol back.
    """
    halves = {**REFINING, "oxygen": f"{OXYGEN} @ anode @ bath"}
    known = {
        "charge": "5790 C", "bath_volume": "200 cm3", ("bath_concentration", "Cu^2+"): "0.100 mol/dm3",
        ("share", "O2"): "33.33333%",
    }  # fmt: skip
    found = find(halves, known, ("amount_left", "Cu^2+"), ("concentration", "Cu^2+"))
    assert found == pytest.approx([0.01, 0.05], rel=1e-6)


def test_a_cathode_with_losses_takes_less_than_its_anode_gives(find: Find) -> None:
    """0.0400 mol of electrons bring 0.0200 mol, of which 95 % are taken: 0.0010 mol more in 0.200 dm³."""
    known = {**BATH, "charge": "3860 C", ("efficiency", "", "cathode"): "95%"}
    found = find(REFINING, known, ("concentration", "Cu^2+"))
    assert found == pytest.approx([0.105], rel=1e-9)


def test_whether_an_ion_runs_out_that_only_partly_comes_back_is_left_open(refusal: Refusal) -> None:
    known = {**BATH, "charge": "3860 C", ("efficiency", "", "anode"): "95%"}
    fault = refusal(REFINING, known, ("exhaustion_charge", "Cu^2+"))
    assert (fault.code, fault.where) == ("needs-more", "find")


def test_two_processes_that_take_the_same_ion_empty_the_bath_together(find: Find) -> None:
    """At two cathodes in one bath, each with its own half-equation, 1930 C take 0.0100 mol each from 0.0500 mol."""
    halves = {"one": f"{COPPER} @ one @ bath", "two": f"{COPPER} @ two @ bath"}
    known = {"charge": "1930 C", "bath_volume": "500 cm3", "bath_concentration": "0.100 mol/dm3"}
    found = find(halves, known, ("concentration", "Cu^2+"), ("exhaustion_charge", "Cu^2+"))
    assert found == pytest.approx([0.06, 4825], rel=1e-9)


def test_when_several_processes_with_losses_empty_a_bath_is_left_open(refusal: Refusal) -> None:
    halves = {"one": f"{COPPER} @ one @ bath", "two": f"{COPPER} @ two @ bath"}
    known = {
        "bath_volume": "500 cm3",
        "bath_concentration": "0.100 mol/dm3",
        ("efficiency", "", "one"): "90%",
    }
    assert refusal(halves, known, ("exhaustion_charge", "Cu^2+")).code == "needs-more"


def test_what_is_used_up_by_the_end_is_all_that_was_there(find: Find) -> None:
    """With 0.0200 mol gone, 3860 C have passed."""
    assert find(COPPER, BATH, "charge", used_up=(("process", "Cu^2+"),)) == pytest.approx([3860])


def test_a_metal_is_not_dissolved_and_has_no_concentration(refusal: Refusal) -> None:
    fault = refusal(COPPER, {**BATH, **A_THIRD}, ("concentration", "Cu"))
    assert (fault.code, fault.where) == ("not-in-task", "find")
    assert fault.remedy == "Ask for an ion: Cu²⁺."


def test_the_concentration_of_a_compound_is_that_of_its_ion_that_takes_part(find: Find) -> None:
    known = {"bath_volume": "200 cm3", ("bath_concentration", "CuSO4"): "0.100 mol/dm3", **A_THIRD}
    assert find(COPPER, known, ("concentration", "CuSO4")) == pytest.approx([0.0666667], rel=1e-5)


def test_an_ion_that_takes_no_part_keeps_its_concentration(find: Find) -> None:
    known = {"bath_volume": "200 cm3", ("bath_concentration", "SO4^2-"): "0.100 mol/dm3", **A_THIRD}
    asked = (("concentration", "SO4^2-"), ("concentration_change", "SO4^2-"), ("amount_at_start", "SO4^2-"))
    found = find(COPPER, known, *asked, present=(("process", "SO4^2-"),))
    assert found == pytest.approx([0.1, 0, 0.02])


def test_an_ion_that_takes_no_part_never_runs_out(refusal: Refusal) -> None:
    known = {"bath_volume": "200 cm3", ("bath_concentration", "SO4^2-"): "0.100 mol/dm3", **A_THIRD}
    fault = refusal(COPPER, known, ("exhaustion_time", "SO4^2-"), present=(("process", "SO4^2-"),))
    assert (fault.code, fault.where) == ("contradictory", "find")
    assert fault.detail == "SO₄²⁻ does not run out: it takes no part."


def test_what_is_not_in_a_bath_has_no_relations_there() -> None:
    process = Process("plating", with_states(read_equation(COPPER)), "plating", "bath")
    assert bath_relations(Circuit((process,)), (Key("concentration", "bath", "Na^+"),)) == []
