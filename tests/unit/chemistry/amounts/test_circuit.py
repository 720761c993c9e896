"""A circuit: what its processes take and give for each electron, and which of them share an electrode or a bath."""

from fractions import Fraction

import pytest

from ionwright.chemistry.amounts import Circuit, Process
from ionwright.chemistry.equation import read_equation
from ionwright.chemistry.medium import with_states


def process(id_: str, half: str, electrode: str = "", bath: str = "") -> Process:
    return Process(id_, with_states(read_equation(half)), electrode or id_, bath or id_)


ALUMINIUM = process("aluminium", "Al^3+ + 3e- -> Al")
OXYGEN = process("oxygen", "2H2O -> O2 + 4H+ + 4e-", bath="tank")
COPPER = process("copper", "Cu^2+ + 2e- -> Cu", bath="tank")
COPPER_ANODE = process("anode", "Cu -> Cu^2+ + 2e-", bath="tank")


@pytest.mark.parametrize(
    ("one", "of", "number"),
    [
        (ALUMINIUM, "Al", Fraction(1, 3)),
        (ALUMINIUM, "Al^3+", Fraction(-1, 3)),
        (OXYGEN, "O2", Fraction(1, 4)),
        (OXYGEN, "H^+", Fraction(1)),
        (OXYGEN, "H2O", Fraction(-1, 2)),
        (OXYGEN, "Cl2", Fraction(0)),
    ],
)
def test_a_species_is_formed_or_used_up_in_proportion_to_the_electrons(
    one: Process, of: str, number: Fraction
) -> None:
    assert one.per_electron(of) == number


def test_the_terms_of_a_process_leave_out_the_electrons() -> None:
    assert [term.species.ascii for term in OXYGEN.terms] == ["H2O", "O2", "H^+"]


@pytest.mark.parametrize(("of", "state"), [("O2", "g"), ("H2O", "l"), ("H^+", "aq"), ("Cl2", "")])
def test_a_species_has_its_state_in_a_process_that_holds_it(of: str, state: str) -> None:
    assert OXYGEN.state(of) == state


def test_a_process_is_found_by_its_id() -> None:
    assert Circuit((ALUMINIUM, OXYGEN)).process("oxygen") is OXYGEN
    with pytest.raises(KeyError):
        Circuit((ALUMINIUM, OXYGEN)).process("chlorine")


def test_processes_with_the_same_electrode_share_its_current() -> None:
    hydrogen = process("hydrogen", "2H+ + 2e- -> H2", electrode="cathode")
    nickel = process("nickel", "Ni^2+ + 2e- -> Ni", electrode="cathode")
    circuit = Circuit((hydrogen, nickel, OXYGEN))
    assert circuit.is_shared(hydrogen)
    assert circuit.is_shared(nickel)
    assert not circuit.is_shared(OXYGEN)


def test_a_bath_is_touched_by_what_takes_from_it_or_gives_to_it() -> None:
    circuit = Circuit((COPPER, COPPER_ANODE, OXYGEN))
    assert circuit.touching("tank", "Cu^2+") == (COPPER, COPPER_ANODE)
    assert circuit.touching("tank", "H^+") == (OXYGEN,)
    assert circuit.touching("elsewhere", "Cu^2+") == ()


def test_a_bath_whose_anode_dissolves_gains_what_it_loses() -> None:
    assert Circuit((COPPER, COPPER_ANODE)).net_per_electron("tank", "Cu^2+") == 0
    assert Circuit((COPPER, OXYGEN)).net_per_electron("tank", "Cu^2+") == Fraction(-1, 2)
