"""Cells with known answers: the products and the reasons under each curriculum."""

import tomllib
from pathlib import Path

import pytest

from ionwright.chemistry.cell import CellDescription
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.curricula.host import load_curricula
from ionwright.teaching import Prediction, predict, prediction_document

REGISTRY = load_curricula()
ROWS = tomllib.loads(Path(__file__).with_name("cells.toml").read_text(encoding="utf-8"))["cell"]
CASES = [
    pytest.param(row, curriculum, id=f"{curriculum}: {'+'.join(row['electrolyte'])} {place}")
    for place, row in enumerate(ROWS)
    for curriculum in ("gcse", "igcse", "a-level")
    if curriculum in row
]


def predicted(row: dict[str, object], curriculum: str) -> Prediction:
    concentration = row.get("concentration")
    description = CellDescription(
        electrolyte=tuple(Ingredient(substance, concentration) for substance in row["electrolyte"]),
        state=row.get("state", "aqueous"),
        cathode=row.get("cathode", "graphite"),
        anode=row.get("anode", "graphite"),
    )
    return predict(description, REGISTRY[curriculum])


@pytest.mark.parametrize(("row", "curriculum"), CASES)
def test_products_and_reasons_are_those_a_teacher_gives(row: dict[str, object], curriculum: str) -> None:
    cathode, anode, *reasons = row[curriculum]
    prediction = predicted(row, curriculum)
    for account, product in ((prediction.cathode, cathode), (prediction.anode, anode)):
        formed = [kind.ascii for kind in account.products]
        assert (formed[:1] or ["?"]) == [product], account.verdict.because
    told = " ".join(prediction.cathode.verdict.because), " ".join(prediction.anode.verdict.because)
    for reason, text in zip(reasons, told, strict=False):
        assert reason in text


@pytest.mark.parametrize(("row", "curriculum"), CASES)
def test_contested_electrodes_are_marked_and_list_another_answer(
    row: dict[str, object], curriculum: str
) -> None:
    prediction = predicted(row, curriculum)
    for name in row.get("contested", {}).get(curriculum, []):
        verdict = getattr(prediction, name).verdict
        assert verdict.is_contested
        assert verdict.also_accepted
        assert all(remark.because.endswith(".") for remark in verdict.also_accepted)


def test_a_process_that_the_course_never_speaks_of_is_not_told() -> None:
    description = CellDescription(electrolyte=(Ingredient("AgNO3"),), cathode="brass", anode="silver")
    for curriculum in REGISTRY.values():
        told = prediction_document(predict(description, curriculum), frozenset({"ascii"}))["anode"][
            "competition"
        ]
        assert [one["half_equation"]["ascii"] for one in told if one["outcome"] == "discharged"] == [
            "Ag -> Ag^+ + e-"
        ]
        assert all("Ag^2+" not in one["half_equation"]["ascii"] for one in told)
