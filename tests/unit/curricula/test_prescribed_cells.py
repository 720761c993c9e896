"""A closed list of cells."""

from collections.abc import Callable

import pytest

from ionwright.curricula.model import PASS, Situation
from ionwright.curricula.rules.prescribed_cells import PrescribedCell, PrescribedCells

SituationAt = Callable[..., Situation]
IODIDE = PrescribedCell("potassium iodide with inert electrodes", frozenset({"KI"}), "aqueous", "inert")
ACID = PrescribedCell("acidified water", frozenset({"H2SO4"}), "aqueous", "inert")
COPPER = PrescribedCell("copper(II) sulfate with copper", frozenset({"CuSO4"}), "aqueous", "copper")
BATH = PrescribedCell("plating baths", frozenset(), "aqueous", "plating")
MELT = PrescribedCell("molten sodium chloride", frozenset({"NaCl"}), "molten", "any")
RULE = PrescribedCells((IODIDE, ACID, COPPER, BATH, MELT))


@pytest.mark.parametrize(
    ("electrolyte", "rest", "is_prescribed"),
    [
        (["KI"], {}, True),
        (["KI"], {"anode": "platinum"}, True),
        (["KI"], {"anode": "copper"}, False),
        (["KI"], {"state": "molten"}, False),
        (["KI", "NaCl"], {}, False),
        (["H2O", "H2SO4"], {}, True),
        (["H2O"], {}, False),
        (["CuSO4"], {"anode": "copper"}, True),
        (["CuSO4"], {}, False),
        (["NiSO4"], {"anode": "nickel"}, True),
        (["NaCl"], {"state": "molten"}, True),
        (["NaCl"], {}, False),
    ],
    ids=str,
)
def test_only_the_cells_of_the_list_go_on_to_the_later_rules(
    *, situation_at: SituationAt, electrolyte: list[str], rest: dict[str, str], is_prescribed: bool
) -> None:
    situation = situation_at("cathode", *electrolyte, **rest)
    ruling = RULE.apply(situation)
    assert (ruling is PASS) is is_prescribed
    assert ruling.is_undecidable is not is_prescribed
    assert RULE.also_reads(situation.cell) is is_prescribed


def test_the_refusal_and_the_sentence_name_the_cells(situation_at: SituationAt) -> None:
    names = (
        "potassium iodide with inert electrodes, acidified water, copper(II) sulfate with copper, plating baths and "
        "molten sodium chloride"
    )
    assert names in RULE.sentence
    assert names in RULE.apply(situation_at("anode", "NaCl")).because[0]
