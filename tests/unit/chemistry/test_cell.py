"""Cells made from descriptions: what is read, what is assumed, what is refused and in which order."""

import pytest

from ionwright.chemistry.cell import CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.species import species
from ionwright.errors import IonwrightError


def described(*electrolyte: str, **rest: object) -> CellDescription:
    return CellDescription(electrolyte=tuple(map(Ingredient, electrolyte)), **rest)


def refusal(description: CellDescription) -> IonwrightError:
    with pytest.raises(IonwrightError) as caught:
        make_cell(description)
    return caught.value


def test_a_bare_electrolyte_gets_graphite_electrodes_and_water() -> None:
    cell = make_cell(described("CuSO4"))
    assert (cell.cathode.id, cell.anode.id, cell.medium) == ("graphite", "graphite", "neutral")
    assert not cell.is_molten
    assert (cell.melt_C, cell.temperature_C, cell.current_density_A_cm2) == (None, None, None)


def test_the_ions_of_water_are_not_the_cells_own() -> None:
    assert [kind.ascii for kind in make_cell(described("NaCl")).own_ions] == ["Na^+", "Cl^-"]
    assert {kind.ascii for kind in make_cell(described("H2SO4")).own_ions} == {"H^+", "SO4^2-"}


def test_conditions_are_read_into_numbers() -> None:
    cell = make_cell(described("NiSO4", temperature="323.15 K", current_density="1 A/dm2", ph=4.0))
    assert cell.temperature_C == pytest.approx(50)
    assert cell.current_density_A_cm2 == pytest.approx(0.01)


WRONG = {
    "state": "gaseous",
    "cathode": "wood",
    "anode": "unobtainium",
    "supply": "ac",
    "temperature": "warm",
    "current_density": "lots",
}


@pytest.mark.parametrize(
    ("mended", "code", "where"),
    [
        ([], "bad-state", "state"),
        (["state"], "non-conducting-electrode", "cathode"),
        (["state", "cathode"], "unknown-electrode", "anode"),
        (["state", "cathode", "anode"], "alternating-supply", "supply"),
        (["state", "cathode", "anode", "supply"], "unreadable-quantity", "temperature"),
        (["state", "cathode", "anode", "supply", "temperature"], "unreadable-quantity", "current_density"),
    ],
)
def test_of_many_faults_the_first_in_the_order_of_checks_is_told(
    mended: list[str], code: str, where: str
) -> None:
    fault = refusal(described("CuSO4", **{key: value for key, value in WRONG.items() if key not in mended}))
    assert (fault.code, fault.where) == (code, where)


@pytest.mark.parametrize(
    ("substance", "code"),
    [
        ("Qz", "unknown-element"),
        ("NaCl2", "charges-do-not-cancel"),
        ("AgCl", "insoluble"),
        ("sugar", "non-electrolyte"),
    ],
)
def test_the_electrolyte_is_judged_before_electrodes_supply_and_conditions(substance: str, code: str) -> None:
    rest = {key: value for key, value in WRONG.items() if key != "state"}
    fault = refusal(described(substance, **rest))
    assert fault.code == code
    assert fault.where == "electrolyte/0/substance"


def test_a_substance_that_cannot_be_read_comes_before_a_solid_state() -> None:
    assert refusal(described("Qz", state="solid")).code == "unknown-element"
    assert refusal(described("NaCl", state="solid", cathode="wood")).code == "ions-cannot-move"


def test_a_long_state_is_repeated_in_part_only() -> None:
    fault = refusal(described("NaCl", state="x" * 5000))
    assert fault.detail == f"'{'x' * 40}' is not a state that an electrolyte can be in here."


@pytest.mark.parametrize(
    ("supply", "code"),
    [
        ("ac", "alternating-supply"),
        ("A.C.", "alternating-supply"),
        ("Alternating current", "alternating-supply"),
        ("mains", "alternating-supply"),
        ("dynamo", "unknown-supply"),
        ("", "unknown-supply"),
    ],
)
def test_only_direct_current_collects_products(supply: str, code: str) -> None:
    fault = refusal(described("NaCl", supply=supply))
    assert (fault.code, fault.where) == (code, "supply")
    assert "dc" in fault.remedy


@pytest.mark.parametrize("temperature", ["-10 degC", "0 degC", "25 degC", "100 degC", "105 degC", "300 K"])
def test_water_may_be_anything_near_its_liquid_range(temperature: str) -> None:
    assert make_cell(described("NaCl", temperature=temperature)).temperature_C is not None


@pytest.mark.parametrize("temperature", ["-11 degC", "106 degC", "0 K", "5000 degC"])
def test_a_solution_outside_the_liquid_range_of_water_is_refused(temperature: str) -> None:
    fault = refusal(described("NaCl", temperature=temperature))
    assert (fault.code, fault.where) == ("out-of-range", "temperature")
    assert fault.detail.startswith("A solution in water is not liquid at ")


@pytest.mark.parametrize(
    ("substance", "temperature", "melt_C"),
    [
        ("NaCl", None, 820.7),  # 800.7 degC and a margin of 20
        ("PbBr2", None, 391.0),  # 371 degC and the margin
        ("NaCl", "900 degC", 900.0),
        ("NaCl", "1173.15 K", 900.0),
    ],
)
def test_a_melt_is_worked_a_little_above_its_melting_point_or_as_asked(
    substance: str, temperature: str | None, melt_C: float
) -> None:
    cell = make_cell(described(substance, state="molten", temperature=temperature))
    assert cell.is_molten
    assert cell.melt_C == pytest.approx(melt_C)


def test_a_melt_without_a_figure_is_taken_at_800_degrees() -> None:
    cell = make_cell(described("CuF2", state="molten"))
    assert cell.electrolyte.melting_point_C is None
    assert cell.melt_C == 800.0


def test_a_melt_below_its_melting_point_is_a_solid() -> None:
    fault = refusal(described("NaCl", state="molten", temperature="700 degC"))
    assert (fault.code, fault.where) == ("ions-cannot-move", "temperature")
    assert fault.remedy == "It melts at about 801 °C: give a higher temperature, or leave it out."


@pytest.mark.parametrize(
    ("electrodes", "where"),
    [
        ({"cathode": "tin"}, "cathode"),
        ({"anode": "lead"}, "anode"),
        ({"cathode": "mercury", "anode": "tin"}, "cathode"),
    ],
)
def test_an_electrode_that_melts_in_the_melt_is_refused(electrodes: dict[str, str], where: str) -> None:
    fault = refusal(described("PbBr2", state="molten", **electrodes))
    assert (fault.code, fault.where) == ("electrode-reacts", where)


def test_a_solid_electrode_may_stand_in_a_melt_and_mercury_in_water() -> None:
    assert make_cell(described("PbBr2", state="molten", cathode="steel")).cathode.id == "steel"
    assert make_cell(described("NaCl", cathode="mercury")).cathode.id == "mercury"


def test_the_word_for_an_ion_is_that_of_the_substance_that_brings_it() -> None:
    pair = (Ingredient("NaCl", "dilute"), Ingredient("K2SO4", "concentrated"))
    cell = make_cell(CellDescription(electrolyte=pair))
    assert cell.word_for(species("Cl^-")) == "dilute"
    assert cell.word_for(species("SO4^2-")) == "concentrated"
    assert cell.word_for(species("Br^-")) is None


def test_a_number_or_nothing_is_no_word() -> None:
    assert make_cell(described("NaCl")).word_for(species("Cl^-")) is None
    one = (Ingredient("NaCl", "2 mol/dm3"),)
    assert make_cell(CellDescription(electrolyte=one)).word_for(species("Cl^-")) is None


@pytest.mark.parametrize(
    ("electrolyte", "anode", "metal"),
    [
        (["NiSO4"], "nickel", "Ni"), (["CuSO4"], "copper", "Cu"), (["AgNO3"], "silver", "Ag"),
        (["ZnSO4"], "galvanised steel", "Zn"), (["CuSO4", "ZnSO4"], "zinc", "Zn"),
        (["K[Ag(CN)2]"], "silver", "Ag"),
        (["CuSO4"], "graphite", ""), (["CuSO4"], "nickel", ""), (["NaCl"], "copper", ""),
        (["CuSO4"], "coated titanium", ""),
    ],
)  # fmt: skip
def test_a_bath_is_a_solution_of_the_ions_of_its_active_anode(
    electrolyte: list[str], anode: str, metal: str
) -> None:
    assert make_cell(described(*electrolyte, anode=anode)).plating_metal() == metal


def test_a_melt_is_no_plating_bath() -> None:
    assert make_cell(described("ZnCl2", state="molten", anode="zinc")).plating_metal() == ""


def test_a_passive_anode_shows_its_film_in_water() -> None:
    cell = make_cell(described("NaOH", anode="nickel"))
    assert cell.anode_behaviour() == "passive"
    assert cell.anode_film() == "The nickel turns dark at the surface and gas bubbles off it."


@pytest.mark.parametrize(
    ("substance", "anode"), [("CuSO4", "copper"), ("NaOH", "graphite"), ("NaOH", "zinc")]
)
def test_an_anode_that_reacts_or_does_nothing_shows_no_film(substance: str, anode: str) -> None:
    assert make_cell(described(substance, anode=anode)).anode_film() == ""


def test_a_melt_shows_no_film_whatever_the_anode() -> None:
    cell = make_cell(described("NaOH", state="molten", anode="nickel"))
    assert cell.anode_film() == ""
    assert cell.at_anode().electrode == "anode"


def test_a_refusal_of_a_cell_is_a_refusal_of_the_chemistry() -> None:
    assert isinstance(refusal(described("NaCl", supply="ac")), CellRefused)


@pytest.mark.parametrize("supply", ["DC", "d.c.", "direct current", "Battery"])
def test_words_of_everyday_use_mean_direct_current(supply: str) -> None:
    assert make_cell(described("NaCl", supply=supply)).electrolyte.state == "aqueous"


@pytest.mark.parametrize(
    ("state", "meant"),
    [("AQ", "aqueous"), ("in water", "aqueous"), ("Molten", "molten"), ("fused", "molten")],
)
def test_words_of_everyday_use_mean_a_state(state: str, meant: str) -> None:
    assert make_cell(described("NaCl", state=state)).electrolyte.state == meant
