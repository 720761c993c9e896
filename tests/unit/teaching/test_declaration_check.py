"""What a declared curriculum decides on the standard cells, beside the one that it builds on."""

from dataclasses import replace

import pytest

from ionwright.chemistry.cell import make_cell
from ionwright.curricula import Curriculum
from ionwright.curricula.host import load_curricula
from ionwright.teaching import predict
from ionwright.teaching.declaration_check import STANDARD_CELLS, decisions

REGISTRY = load_curricula()


@pytest.mark.parametrize("curriculum", REGISTRY.values(), ids=list(REGISTRY))
def test_the_decisions_are_those_of_predictions(curriculum: Curriculum) -> None:
    checked = decisions(curriculum)
    assert [cell.description for cell in checked] == list(STANDARD_CELLS)
    for cell in checked:
        prediction = predict(make_cell(cell.description), curriculum)
        accounts = (prediction.cathode, prediction.anode)
        assert [decision.products for decision in cell.decided] == [
            account.verdict.chosen.products if account.verdict.chosen else () for account in accounts
        ]
        assert cell.base is None
        assert cell.differs == (False, False)


def test_what_differs_from_the_base_is_told_electrode_by_electrode() -> None:
    checked = decisions(REGISTRY["gcse"], REGISTRY["igcse"])
    differing = {
        f"{cell.description.electrolyte[0].substance} {cell.description.electrolyte[0].concentration}"
        for cell in checked
        if cell.differs == (False, True)
    }
    assert "NaCl dilute" in differing
    assert "NaCl concentrated" not in differing
    assert all(cell.differs == (False, False) for cell in decisions(REGISTRY["gcse"], REGISTRY["gcse"]))


def test_rules_that_come_to_no_decision_are_told_as_a_fault() -> None:
    silent = replace(REGISTRY["gcse"], id="silent", anode_rules=())
    cell = decisions(silent)[0]
    assert cell.decided[0].products
    assert cell.decided[1].fault == "No rule of silent decides the anode."
