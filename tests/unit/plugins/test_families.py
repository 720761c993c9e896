"""What each family of courses answers cell by cell, how it writes equations, what it prints and how it marks."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from ionwright.curricula.host import Registry
    from ionwright.teaching import Prediction

FAMILIES = [
    tomllib.loads(path.read_text(encoding="utf-8"))
    for path in sorted(Path(__file__).with_name("families").glob("*.toml"))
]
EACH_FAMILY = pytest.mark.parametrize("family", FAMILIES, ids=[family["id"] for family in FAMILIES])


def rows(member: str) -> pytest.MarkDecorator:
    """One test for each row of a member of each family."""
    found = [(family["id"], row) for family in FAMILIES for row in family[member]]
    return pytest.mark.parametrize(("id_", "row"), found, ids=lambda part: " ".join(texts_of(part)))


def texts_of(part: Any) -> Iterable[str]:
    if isinstance(part, str):
        return [part]
    return [text for inner in (part.values() if isinstance(part, dict) else part) for text in texts_of(inner)]


def test_every_family_that_ships_beside_the_first_three_is_here(registry: Registry) -> None:
    assert {family["id"] for family in FAMILIES} == set(registry) - {"a-level", "gcse", "igcse"}


@rows("cells")
def test_each_cell_gets_an_answer_that_the_course_accepts(
    answers: Callable[..., tuple[str, str]], id_: str, row: dict[str, Any]
) -> None:
    told = answers(id_, row["electrolyte"], row.get("concentration"), **row.get("rest", {}))
    assert list(told) == row["answers"]


@rows("forms")
def test_hydrogen_and_oxygen_are_written_as_the_medium_asks(
    forms: Callable[[str, str], list[list[str]]], id_: str, row: dict[str, Any]
) -> None:
    assert forms(id_, row["electrolyte"]) == [row["hydrogen"], row["oxygen"]]


@rows("reasons")
def test_the_reason_is_that_of_the_course(
    prediction: Callable[..., Prediction], id_: str, row: dict[str, Any]
) -> None:
    account = getattr(prediction(id_, row["electrolyte"]), row["electrode"])
    assert row["words"] in " ".join(account.verdict.because)


@EACH_FAMILY
def test_the_constants_are_those_that_the_course_prints(registry: Registry, family: dict[str, Any]) -> None:
    printed = registry[family["id"]].conventions.constants.described()
    told = {name: value for name, value in printed.items() if "relative" not in name}
    assert told == family["constants"]


@EACH_FAMILY
def test_the_relative_atomic_masses_are_those_of_its_periodic_table(
    registry: Registry, family: dict[str, Any]
) -> None:
    printed = registry[family["id"]].conventions.constants
    pairs = family["relative_atomic_masses"].split(", ")
    symbols = [pair.split()[0] for pair in pairs]
    assert [f"{symbol} {printed.relative_atomic_mass(symbol)}" for symbol in symbols] == pairs


@EACH_FAMILY
def test_it_marks_as_the_course_does(registry: Registry, family: dict[str, Any]) -> None:
    marking = registry[family["id"]].marking
    assert {name: getattr(marking, name) for name in family["marking"]} == family["marking"]


@EACH_FAMILY
def test_how_sure_the_declaration_is_of_its_parts_is_told(registry: Registry, family: dict[str, Any]) -> None:
    assert dict(registry[family["id"]].certainty) == family["certainty"]
