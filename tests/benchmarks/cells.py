"""Cells without end, no two alike, all of which can be answered."""

from __future__ import annotations

import itertools
import random
from typing import TYPE_CHECKING, Any

from ionwright.chemistry.electrolytes import known_electrolytes

if TYPE_CHECKING:
    from collections.abc import Iterator

ELECTRODES = ("graphite", "platinum", "copper", "nickel", "steel", "silver", "zinc")
CURRICULA = ("gcse", "igcse", "a-level")


def unlike_cells(seed: int) -> Iterator[dict[str, Any]]:
    """Yield requests for predictions, each of another cell."""
    chance = random.Random(seed)  # noqa: S311 - the same cells every time, and no secret
    soluble = [known.formula for known in known_electrolytes() if known.solubility == "soluble"]
    for number in itertools.count(1):
        yield {
            "electrolyte": chance.choice(soluble),
            "concentration": f"0.{chance.randrange(1, 9)}{seed % 97:02}{number:07} mol/dm3",
            "cathode": chance.choice(ELECTRODES),
            "anode": chance.choice(ELECTRODES),
            "curriculum": chance.choice(CURRICULA),
        }
