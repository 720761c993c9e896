"""Melts: the ions of the salt itself are discharged."""

from collections.abc import Callable

import pytest

from ionwright.curricula.model import PASS, Ruling, Situation
from ionwright.curricula.rules.melt import MeltAnode, MeltCathode

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]


@pytest.mark.parametrize(
    ("electrolyte", "at_cathode", "at_anode"),
    [
        (["PbBr2"], "Pb^2+ + 2e- -> Pb", "2Br^- -> Br2 + 2e-"),
        (["NaCl"], "Na^+ + e- -> Na", "2Cl^- -> Cl2 + 2e-"),
        (["KI"], "K^+ + e- -> K", "2I^- -> I2 + 2e-"),
        (["LiH"], "Li^+ + e- -> Li", "2H^- -> H2 + 2e-"),
        (["NaOH"], "Na^+ + e- -> Na", "4OH^- -> O2 + 2H2O + 4e-"),
        (["NaCl", "CaCl2"], "Na^+ + e- -> Na", "2Cl^- -> Cl2 + 2e-"),
        (["Al2O3", "Na3AlF6"], "Al^3+ + 3e- -> Al", "2O^2- -> O2 + 4e-"),
        (["PbBr2", "NaCl"], "Pb^2+ + 2e- -> Pb", "2Br^- -> Br2 + 2e-"),
        (["NaCl", "NaI"], "Na^+ + e- -> Na", "2I^- -> I2 + 2e-"),
        (["NaCl", "NaF"], "Na^+ + e- -> Na", "2Cl^- -> Cl2 + 2e-"),
    ],
)
def test_the_ions_that_give_way_most_easily_are_discharged(
    situation_at: SituationAt, choice: Choice, electrolyte: list[str], at_cathode: str, at_anode: str
) -> None:
    cathode = MeltCathode().apply(situation_at("cathode", *electrolyte, state="molten"))
    anode = MeltAnode().apply(situation_at("anode", *electrolyte, state="molten"))
    assert choice(cathode) == at_cathode
    assert choice(anode) == at_anode


def test_a_single_pair_of_ions_needs_no_comparison(situation_at: SituationAt) -> None:
    cathode = MeltCathode().apply(situation_at("cathode", "PbBr2", state="molten"))
    anode = MeltAnode().apply(situation_at("anode", "PbBr2", state="molten"))
    assert cathode.because == (
        "Lead(II) ions are the only positive ions in the melt, so they are discharged and lead forms.",
    )
    assert anode.because == (
        "Bromide ions are the only negative ions in the melt, so they are discharged and bromine forms.",
    )


def test_metals_and_halides_that_stay_have_their_reasons(situation_at: SituationAt, told: Told) -> None:
    cathode = MeltCathode().apply(situation_at("cathode", "PbBr2", "NaCl", state="molten"))
    anode = MeltAnode().apply(situation_at("anode", "PbBr2", "NaCl", state="molten"))
    assert cathode.because == (
        "Of the metals in the melt lead is the one whose ions are discharged most easily.",
    )
    assert told(cathode.ruled_out) == {
        "Na^+ + e- -> Na": "Sodium ions are discharged less easily than those of lead."
    }
    assert told(anode.ruled_out) == {
        "2Cl^- -> Cl2 + 2e-": "Chloride ions are discharged less easily than bromide ions."
    }


def test_the_salt_that_lowers_the_melting_point_is_told_as_such(
    situation_at: SituationAt, told: Told
) -> None:
    ruling = MeltCathode().apply(situation_at("cathode", "NaCl", "CaCl2", state="molten"))
    assert told(ruling.ruled_out) == {
        "Ca^2+ + 2e- -> Ca": "Calcium ions belong to the salt that lowers the melting point; sodium is discharged."
    }


def test_oxygen_on_carbon_is_contested_because_the_anode_burns(situation_at: SituationAt, told: Told) -> None:
    ruling = MeltAnode().apply(situation_at("anode", "Al2O3", "Na3AlF6", state="molten"))
    assert ruling.is_contested
    assert told(ruling.also_accepted) == {
        "C + 2O^2- -> CO2 + 4e-": "On carbon the oxygen burns the anode, so carbon dioxide is what leaves the cell."
    }


def test_carbon_in_a_chloride_melt_does_not_burn(situation_at: SituationAt) -> None:
    assert not MeltAnode().apply(situation_at("anode", "NaCl", state="molten")).is_contested


@pytest.mark.parametrize("substance", ["KNO3", "Na2SO4"])
def test_melts_of_oxo_anions_are_beyond_school(situation_at: SituationAt, substance: str) -> None:
    cathode = MeltCathode().apply(situation_at("cathode", substance, state="molten"))
    anode = MeltAnode().apply(situation_at("anode", substance, state="molten"))
    assert cathode.is_undecidable
    assert anode.is_undecidable
    assert anode.because[0].endswith("school courses have no rule for its anode.")


def test_a_carbonate_melt_is_beyond_school_at_the_cathode_only(
    situation_at: SituationAt, choice: Choice
) -> None:
    assert MeltCathode().apply(situation_at("cathode", "Na2CO3", state="molten")).is_undecidable
    assert (
        choice(MeltAnode().apply(situation_at("anode", "Na2CO3", state="molten")))
        == "2CO3^2- -> O2 + 2CO2 + 4e-"
    )


def test_solutions_are_passed_on(situation_at: SituationAt) -> None:
    assert MeltCathode().apply(situation_at("cathode", "NaCl")) is PASS
    assert MeltAnode().apply(situation_at("anode", "NaCl")) is PASS


def test_both_rules_say_what_they_do() -> None:
    assert MeltCathode().sentence.startswith("In a melt there is no water")
    assert MeltAnode().sentence.startswith("In a melt the negative ions")


def test_an_oxide_melt_may_burn_the_carbon_of_its_anode(
    situation_at: SituationAt, choice: Choice, told: Told
) -> None:
    rule = MeltAnode("carbon-dioxide")
    ruling = rule.apply(situation_at("anode", "Al2O3", state="molten"))
    assert choice(ruling) == "C + 2O^2- -> CO2 + 4e-"
    assert [remark.process.written("").ascii for remark in ruling.also_accepted] == ["2O^2- -> O2 + 4e-"]
    assert told(ruling.ruled_out) == {"2O^2- -> O2 + 4e-": "At hot carbon no free oxygen is left."}
    assert "burns to carbon dioxide" in rule.sentence


def test_an_inert_anode_in_an_oxide_melt_gives_oxygen_all_the_same(
    situation_at: SituationAt, choice: Choice
) -> None:
    ruling = MeltAnode("carbon-dioxide").apply(
        situation_at("anode", "Al2O3", state="molten", anode="platinum")
    )
    assert choice(ruling) == "2O^2- -> O2 + 4e-"


def test_a_hydride_is_left_open_where_hydrogen_at_the_anode_is_not_taught(situation_at: SituationAt) -> None:
    situation = situation_at("anode", "LiH", state="molten")
    ruling = MeltAnode(is_hydride_taught=False).apply(situation)
    assert ruling.is_undecidable
    assert "in fact hydrogen forms there" in ruling.because[0]
    assert not MeltAnode().apply(situation).is_undecidable
