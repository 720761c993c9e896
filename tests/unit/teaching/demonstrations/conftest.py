"""Plans in few words."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

from ionwright.chemistry.cell import CellDescription
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.teaching.demonstrations import Aim, DemonstrationDescription, plan_demonstration

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.curricula.host import Registry
    from ionwright.teaching.demonstrations import Plan

OF_CELL = ("state", "cathode", "anode", "ph")


@pytest.fixture(scope="session")
def planned(registry: Registry) -> Callable[..., Plan]:
    """Plans: a substance with its concentration behind an @, aims as phrase and value, and the bench."""

    def plan(electrolyte: str, *aims: tuple[str, str], curriculum: str = "a-level", **rest: Any) -> Plan:
        substance, _, concentration = electrolyte.partition("@")
        of_cell = {name: rest.pop(name) for name in OF_CELL if name in rest}
        cell = CellDescription(electrolyte=(Ingredient(substance, concentration or None),), **of_cell)
        told = tuple(Aim(value, phrase, where=f"aims/{i}") for i, (phrase, value) in enumerate(aims))
        return plan_demonstration(
            DemonstrationDescription(cell=cell, aims=told, **rest), registry[curriculum]
        )

    return plan
