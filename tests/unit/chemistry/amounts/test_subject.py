"""What a quantity belongs to, said and unsaid."""

from collections.abc import Mapping

import pytest

from ionwright.chemistry.amounts import Circuit, Key, Process
from ionwright.chemistry.amounts.subject import keys_meant
from ionwright.chemistry.equation import read_equation
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.medium import with_states
from ionwright.errors import IonwrightError

BRINE = {"cathode": "2H2O + 2e- -> H2 + 2OH-", "anode": "2Cl- -> Cl2 + 2e-"}
PLATING = {"plating": "Ni^2+ + 2e- -> Ni"}
SHARED = {"nickel": "Ni^2+ + 2e- -> Ni @ cathode @ bath", "hydrogen": "2H+ + 2e- -> H2 @ cathode @ bath"}
OXYGEN = {"oxygen": "2H2O -> O2 + 4H+ + 4e-"}
TWO_COPPERS = {"one": "Cu^2+ + 2e- -> Cu", "two": "Cu^2+ + 2e- -> Cu"}
DICHROMATE = {"reduction": "Cr2O7^2- + 14H+ + 6e- -> 2Cr^3+ + 7H2O"}


def circuit_of(halves: Mapping[str, str]) -> Circuit:
    processes = []
    for id_, said in halves.items():
        half, electrode, bath = (*said.split(" @ "), "", "")[:3]
        processes.append(Process(id_, with_states(read_equation(half)), electrode or id_, bath or id_))
    return Circuit(tuple(processes))


def refused(halves: Mapping[str, str], quantity: str, of: str = "", process: str = "") -> IonwrightError:
    with pytest.raises(IonwrightError) as raised:
        keys_meant(circuit_of(halves), quantity, of, process)
    return raised.value


@pytest.mark.parametrize(
    ("halves", "quantity", "key"),
    [
        (PLATING, "current", Key("current")),
        (PLATING, "efficiency", Key("efficiency", "plating")),
        (PLATING, "mass", Key("mass", "plating", "Ni")),
        (PLATING, "thickness", Key("thickness", "plating", "Ni")),
        (PLATING, "volume", Key("solid_volume", "plating", "Ni")),
        (PLATING, "concentration", Key("concentration", "plating", "Ni^2+")),
        (PLATING, "bath_volume", Key("bath_volume", "plating")),
        (OXYGEN, "volume", Key("volume", "oxygen", "O2")),
        (OXYGEN, "amount", Key("amount", "oxygen", "O2")),
        (SHARED, "thickness", Key("thickness", "nickel", "Ni")),
        (SHARED, "volume", Key("volume", "hydrogen", "H2")),
        (SHARED, "bath_volume", Key("bath_volume", "bath")),
        (DICHROMATE, "amount", Key("amount", "reduction", "Cr^3+")),
    ],
)
def test_a_quantity_without_a_substance_is_of_the_likely_one(
    halves: Mapping[str, str], quantity: str, key: Key
) -> None:
    assert keys_meant(circuit_of(halves), quantity, "", "") == (key,)


@pytest.mark.parametrize(
    ("halves", "quantity", "of", "key"),
    [
        (BRINE, "mass", "Cl2", Key("mass", "anode", "Cl2")),
        (BRINE, "mass", "chlorine", Key("mass", "anode", "Cl2")),
        (BRINE, "volume", "hydrogen", Key("volume", "cathode", "H2")),
        (BRINE, "amount", "OH-", Key("amount", "cathode", "OH^-")),
        (BRINE, "amount", "water", Key("amount", "cathode", "H2O")),
        (PLATING, "mass", "nickel", Key("mass", "plating", "Ni")),
        (PLATING, "amount", "Ni2+", Key("amount", "plating", "Ni^2+")),
        (SHARED, "share", "H2", Key("share", "hydrogen")),
        (SHARED, "efficiency", "nickel", Key("share", "nickel")),
        (OXYGEN, "volume", "H2O", Key("solid_volume", "oxygen", "H2O")),
    ],
)
def test_a_substance_may_be_named_by_formula_or_by_name(
    halves: Mapping[str, str], quantity: str, of: str, key: Key
) -> None:
    assert keys_meant(circuit_of(halves), quantity, of, "") == (key,)


def test_a_compound_stands_for_the_one_of_its_ions_that_takes_part() -> None:
    assert keys_meant(circuit_of(BRINE), "mass", "NaOH", "") == (Key("mass", "cathode", "NaOH"),)
    assert keys_meant(circuit_of(PLATING), "concentration", "NiSO4", "") == (
        Key("concentration", "plating", "NiSO4"),
    )


def test_an_ion_that_is_present_and_takes_no_part_belongs_to_its_bath_only() -> None:
    process = Process("plating", with_states(read_equation("Ni^2+ + 2e- -> Ni")), "plating", "bath")
    present = Circuit((process,), present=(("bath", "SO4^2-"),))
    assert keys_meant(present, "concentration", "SO4 2-", "") == (Key("concentration", "bath", "SO4^2-"),)
    with pytest.raises(QuantityFault) as raised:
        keys_meant(present, "mass", "SO4 2-", "")
    assert raised.value.code == "not-in-task"


def test_a_quantity_that_fits_several_stands_for_all_of_them() -> None:
    assert keys_meant(circuit_of(BRINE), "volume", "", "") == (
        Key("volume", "cathode", "H2"), Key("volume", "anode", "Cl2"),
    )  # fmt: skip
    assert keys_meant(circuit_of(TWO_COPPERS), "efficiency", "", "") == (
        Key("efficiency", "one"), Key("efficiency", "two"),
    )  # fmt: skip


def test_a_process_settles_which_of_several_is_meant() -> None:
    assert keys_meant(circuit_of(TWO_COPPERS), "mass", "Cu", "two") == (Key("mass", "two", "Cu"),)
    assert keys_meant(circuit_of(BRINE), "volume", "", "anode") == (Key("volume", "anode", "Cl2"),)


def test_a_bath_may_be_named_in_place_of_its_processes() -> None:
    assert keys_meant(circuit_of(SHARED), "mass", "Ni", "bath") == (Key("mass", "nickel", "Ni"),)


def test_what_sure_quantities_belong_to_decides_for_the_others() -> None:
    found = keys_meant(circuit_of(BRINE), "efficiency", "", "", frozenset({"anode"}))
    assert found == (Key("efficiency", "anode"),)


def test_a_preference_that_fits_nothing_decides_nothing() -> None:
    found = keys_meant(circuit_of(BRINE), "efficiency", "", "", frozenset({"elsewhere"}))
    assert len(found) == 2


def test_the_charge_of_a_process_that_shares_an_electrode_is_its_own_part() -> None:
    assert keys_meant(circuit_of(SHARED), "charge", "", "nickel") == (Key("useful_charge", "nickel"),)
    assert keys_meant(circuit_of(SHARED), "amount_of_electrons", "", "nickel") == (
        Key("electrons_used", "nickel"),
    )
    assert keys_meant(circuit_of(SHARED), "current", "", "nickel") == (Key("current"),)
    assert keys_meant(circuit_of(BRINE), "charge", "", "anode") == (Key("charge"),)


@pytest.mark.parametrize(
    ("quantity", "of", "process", "detail", "remedy"),
    [
        ("mass", "Cu", "", "Cu takes no part in this task.", "Those that do are H₂O, H₂, OH⁻, Cl⁻, Cl₂."),
        ("mass", "", "tank", 'No process is called "tank".', 'There are "cathode", "anode".'),
        ("thickness", "", "", "Nothing in this task forms a layer, so that there is no thickness.", "Ask for an"),
        ("thickness", "H2", "", "H₂ is a gas, so that it forms no layer and has no thickness here.", "Ask for its"),
        ("density", "Cl-", "", "Cl⁻ stays in solution, so that it forms no layer and has no density here.", "Ask"),
        ("volume", "Cl-", "", "Cl⁻ stays in solution, so that it has no volume of its own.", "Ask for its amount"),
        (
            "concentration", "Cl2", "", "Cl₂ is not dissolved, so that it has no concentration at the end.",
            "Ask for an ion: Cl⁻.",
        ),
    ],
)  # fmt: skip
def test_what_has_no_such_quantity_is_refused_with_what_there_is(
    quantity: str, of: str, process: str, detail: str, remedy: str
) -> None:
    fault = refused(BRINE, quantity, of, process)
    assert isinstance(fault, QuantityFault)
    assert (fault.code, fault.detail) == ("not-in-task", detail)
    assert fault.remedy.startswith(remedy)


def test_a_formula_that_cannot_be_read_is_refused_as_such() -> None:
    fault = refused(BRINE, "mass", "Xx2")
    assert fault.code == "unknown-element"
    assert fault.remedy
