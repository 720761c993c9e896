"""The answers of a curriculum as short texts, so that a table of cells can be read."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.cell import CellDescription
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.curricula import Curriculum
from ionwright.curricula.host import Registry, load_curricula
from ionwright.teaching import Prediction, predict

Answers = Callable[..., tuple[str, str]]


@pytest.fixture(scope="session")
def registry() -> Registry:
    return load_curricula()


def predicted(
    curriculum: Curriculum, cell: str, concentration: str | None, rest: dict[str, str]
) -> Prediction:
    ingredients = tuple(Ingredient(substance, concentration) for substance in cell.split(" + "))
    return predict(CellDescription(electrolyte=ingredients, **rest), curriculum)


@pytest.fixture(scope="session")
def prediction(registry: Registry) -> Callable[..., Prediction]:
    def make(id_: str, cell: str, concentration: str | None = None, **rest: str) -> Prediction:
        return predicted(registry[id_], cell, concentration, rest)

    return make


@pytest.fixture(scope="session")
def answers(registry: Registry) -> Answers:
    """Both answers: ``"Zn | H2"`` if it is contested and the second is accepted too, ``"?"`` if it is left open."""

    def make(id_: str, cell: str, concentration: str | None = None, **rest: str) -> tuple[str, str]:
        told = predicted(registry[id_], cell, concentration, rest)
        found = []
        for account in (told.cathode, told.anode):
            accepted = account.verdict.also_accepted if account.verdict.is_contested else ()
            ways = [[kind.ascii for kind in account.products]]
            ways += [[kind.ascii for kind in remark.process.products] for remark in accepted]
            found.append(" | ".join(" + ".join(way) for way in ways) or "?")
        return found[0], found[1]

    return make


@pytest.fixture(scope="session")
def forms(registry: Registry) -> Callable[[str, str], list[list[str]]]:
    """How hydrogen and oxygen are written in a solution, the preferred form first."""

    def make(id_: str, cell: str) -> list[list[str]]:
        told = predicted(registry[id_], cell, None, {})
        return [
            [half.ascii for half in (account.half_equation, *account.also_written) if half]
            for account in (told.cathode, told.anode)
        ]

    return make
