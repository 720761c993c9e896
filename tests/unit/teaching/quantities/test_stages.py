"""Baths that run out of one ion after the other."""

import pytest
from task_parts import cell

MIXTURE = ("AgNO3@0.050 mol/dm3", "Cu(NO3)2@0.050 mol/dm3")


def answered(solved):
    return {answer.key.of: answer.value for answer in solved.answers}


@pytest.fixture
def mixture():
    return cell(*MIXTURE, cathode="platinum", anode="platinum")


def test_silver_goes_before_copper_and_hydrogen_comes_last(solve, mixture):
    solved = solve(mixture, known={"bath_volume": "200 cm3", "charge": "100 C"}, find="mass of Ag")
    products = [[kind.ascii for kind in stage.prediction.cathode.products] for stage in solved.stages]
    assert products == [["Ag"], ["Cu"], ["H2"]]
    # 0.010 mol Ag+ take 965 C, 0.010 mol Cu2+ another 1930 C, at 96500 C/mol
    assert [stage.end_C for stage in solved.stages] == [pytest.approx(965), pytest.approx(2895), None]
    assert [[kind.ascii for kind in stage.runs_out] for stage in solved.stages] == [["Ag^+"], ["Cu^2+"], []]


def test_the_charge_is_divided_among_the_stages_it_lasts_into(solve, mixture):
    solved = solve(
        mixture,
        known={"current": "0.500 A", "time": "60.0 min", "bath_volume": "200 cm3"},
        find=("mass of Ag", "mass of Cu", "amount of O2"),
    )
    # 1800 C: 965 C for all the silver, 835 C for copper; 1800 C / (4 x 96500 C/mol) of oxygen
    assert answered(solved) == {
        "Ag": pytest.approx(1.079),
        "Cu": pytest.approx(0.274728, rel=1e-5),
        "O2": pytest.approx(0.00466321, rel=1e-5),
    }


def test_once_both_metals_are_out_hydrogen_takes_the_rest(solve, mixture):
    solved = solve(
        mixture, known={"charge": "3600 C", "bath_volume": "200 cm3"}, find=("mass of Cu", "amount of H2")
    )
    # 3600 - 2895 = 705 C
    assert answered(solved) == {"Cu": pytest.approx(0.635), "H2": pytest.approx(705 / 193000)}


def test_a_charge_that_ends_in_the_first_stage_is_not_divided(solve, mixture):
    solved = solve(mixture, known={"charge": "300 C", "bath_volume": "200 cm3"}, find="mass of Ag")
    assert [process.id for process in solved.worked.task.circuit.processes] == ["cathode", "anode"]
    assert answered(solved) == {"Ag": pytest.approx(0.335440, rel=1e-5)}


def test_both_electrodes_can_change_at_once(solve):
    solved = solve(
        cell("CuCl2@1.0 mol/dm3"),
        known={"charge": "5790 C", "bath_volume": "20 cm3"},
        find=("amount of Cl2", "amount of O2"),
    )
    # 0.020 mol Cu2+ and 0.040 mol Cl- are gone after 3860 C; 1930 C are left for oxygen
    assert answered(solved) == {"Cl2": pytest.approx(0.020), "O2": pytest.approx(0.005)}


def test_a_bath_whose_anode_gives_back_has_no_stages(solve):
    solved = solve(
        cell("CuSO4@0.50 mol/dm3", cathode="copper", anode="copper"),
        known={"charge": "100 C", "bath_volume": "100 cm3"},
        find="concentration of Cu2+",
    )
    assert solved.stages == ()
    assert answered(solved) == {"Cu^2+": pytest.approx(0.50)}


def test_without_a_concentration_there_are_no_stages(solve):
    solved = solve(cell("CuSO4"), known={"charge": "100 C", "bath_volume": "100 cm3"}, find="mass of Cu")
    assert solved.stages == ()


def test_without_a_volume_there_are_no_stages(solve, mixture):
    assert solve(mixture, known={"charge": "100 C"}, find="mass of Ag").stages == ()


def test_a_run_that_lasts_longer_does_not_change_when_an_ion_ran_out(solve):
    solved = solve(
        cell("CuSO4@0.100 mol/dm3"),
        known={"current": "0.500 A", "time": "3.00 h", "bath_volume": "100 cm3"},
        find=("exhaustion_time of Cu2+", "exhaustion_charge of Cu2+"),
    )
    assert [answer.value for answer in solved.answers] == [pytest.approx(3860), pytest.approx(1930)]


def test_ions_run_out_in_turn(solve):
    solved = solve(
        cell("AgNO3@0.0100 mol/dm3", "Cu(NO3)2@0.0100 mol/dm3"),
        known={"current": "0.500 A", "time": "10.0 min", "bath_volume": "200 cm3"},
        find=("exhaustion_time of Ag+", "exhaustion_time of Cu2+", "time_left of Cu2+"),
    )
    # 0.0020 mol of each: 193 C for silver, then 386 C for copper, at 0.500 A
    assert [answer.value for answer in solved.answers] == [pytest.approx(v) for v in (386, 1158, 558)]


@pytest.mark.parametrize(
    ("known", "find", "value"),
    [({}, "exhaustion_charge of Cu2+", 579), ({"mass of Cu": "0.0635 g"}, "charge", 386)],
)
def test_what_comes_second_may_be_asked_without_saying_how_long(solve, known, find, value):
    run = cell("AgNO3@0.0100 mol/dm3", "Cu(NO3)2@0.0100 mol/dm3")
    solved = solve(run, known={"bath_volume": "200 cm3", **known}, find=find)
    assert solved.answers[0].value == pytest.approx(value)


def test_losses_do_not_keep_an_ion_from_running_out(solve):
    solved = solve(
        cell("CuSO4@0.100 mol/dm3"),
        known={"charge": "3000 C", "bath_volume": "100 cm3", "efficiency at cathode": "80.0%"},
        find="exhaustion_charge of Cu2+",
    )
    assert solved.answers[0].value == pytest.approx(2412.5)
