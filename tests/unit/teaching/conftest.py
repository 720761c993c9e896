"""Predictions by name of the course, and equations dressed with states."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.cell import Cell
from ionwright.curricula.host import Registry, load_curricula
from ionwright.teaching import Prediction, predict


@pytest.fixture(scope="session")
def registry() -> Registry:
    return load_curricula()


@pytest.fixture(scope="session")
def told_of(cell_of: Callable[..., Cell], registry: Registry) -> Callable[..., Prediction]:
    def make(*electrolyte: str, curriculum: str = "a-level", **rest: object) -> Prediction:
        return predict(cell_of(*electrolyte, **rest), registry[curriculum])

    return make
