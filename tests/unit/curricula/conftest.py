"""What a rule gets to see, made from a cell."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from ionwright.chemistry.cell import Cell
from ionwright.curricula.model import Conventions, Remark, Ruling, Situation

BOTH = dict.fromkeys(("acidic", "neutral", "alkaline"), ("ions", "water"))


@pytest.fixture(scope="session")
def situation_at(cell_of: Callable[..., Cell]) -> Callable[..., Situation]:
    def make(electrode: str, *electrolyte: str, **rest: object) -> Situation:
        cell = cell_of(*electrolyte, **rest)
        competition = cell.at_cathode() if electrode == "cathode" else cell.at_anode()
        return Situation(cell, competition, competition.processes, Conventions(BOTH, BOTH))

    return make


@pytest.fixture(scope="session")
def told() -> Callable[[tuple[Remark, ...]], dict[str, str]]:
    """Remarks by the half-equation that they are about, those that say nothing left out."""

    def tell(remarks: tuple[Remark, ...]) -> dict[str, str]:
        return {one.process.written("").ascii: one.because for one in remarks if one.because}

    return tell


@pytest.fixture(scope="session")
def choice() -> Callable[[Ruling], str]:
    def read(ruling: Ruling) -> str:
        return ruling.chosen.written("").ascii if ruling.chosen else ""

    return read


@pytest.fixture(scope="session")
def quick_at(situation_at: Callable[..., Situation]) -> Callable[..., Situation]:
    """The situation once the rule on slow processes has spoken."""

    def make(electrode: str, *electrolyte: str, **rest: object) -> Situation:
        whole = situation_at(electrode, *electrolyte, **rest)
        return replace(whole, remaining=tuple(process for process in whole.remaining if not process.slow))

    return make
