"""What is told of a curriculum is what the contract describes, conventions included."""

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from ionwright.curricula import PrintedConstants, describe
from ionwright.curricula.host import load_curricula

DOCUMENT = json.loads((Path(__file__).parents[2] / "openapi" / "ionwright.json").read_text(encoding="utf-8"))
SCHEMAS: dict[str, Any] = DOCUMENT["components"]["schemas"]
DESCRIBED: dict[str, Any] = SCHEMAS["CurriculumConventions"]
CURRICULA = load_curricula()


@pytest.mark.parametrize("id_", list(CURRICULA))
def test_the_conventions_of_a_curriculum_have_the_shape_that_is_described(id_: str) -> None:
    told = json.loads(json.dumps(describe(CURRICULA[id_])["conventions"]))
    jsonschema.validate(told, DESCRIBED | {"components": DOCUMENT["components"]})
    assert set(told) <= set(DESCRIBED["properties"])


def test_every_constant_that_a_course_may_print_is_described_with_an_example() -> None:
    for name in PrintedConstants.__dataclass_fields__:
        assert DESCRIBED["properties"][name]["description"]
        assert DESCRIBED["properties"][name]["examples"]
        assert name not in DESCRIBED["required"]
