"""What the products of electrolysis look like, how they are tested, and what to beware of."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Final

from ionwright.chemistry.formula import read_formula
from ionwright.chemistry.ionic_compound import compound_from
from ionwright.chemistry.ionic_formula import neutral_unit
from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["GENERAL_CAUTION", "SUBSTANCES", "Substance"]


@dataclass(frozen=True, slots=True)
class Substance:
    """A product of electrolysis.

    Parameters
    ----------
    formula
        Canonical ASCII, such as ``"Cl2"``.
    name
        School name, in lower case.
    state
        gas, liquid or solid at room temperature, or "in solution".
    appearance
        Look and smell, as a short phrase.
    observation
        What is seen in a solution, a sentence with ``{electrode}`` for cathode or anode.
    observation_in_melt
        The same in a melt; equal to `observation` where nothing differs.
    test, test_result
        What to do, and what happens then; two sentences, both empty without a test for a classroom.
    test_in_melt, test_result_in_melt
        The same for what comes off a melt; equal to the others where nothing differs.
    hazard
        The dangers, as a short phrase.
    ghs
        Codes of hazard statements.
    caution
        What to beware of, as a sentence; empty if there is nothing.
    colours_solution
        What the product does to the colour of the solution, a sentence with ``{electrode}``; empty if nothing.
    source
        Key into ``sources.toml``.
    verified
        Whether the whole row was read in its source.
    """

    formula: str
    name: str
    state: str
    appearance: str
    observation: str
    observation_in_melt: str
    test: str
    test_result: str
    test_in_melt: str
    test_result_in_melt: str
    hazard: str
    ghs: tuple[str, ...]
    caution: str
    colours_solution: str
    source: str
    verified: bool


def _substance(row: dict[str, Any]) -> Substance:
    test, result = row.get("test", ""), row.get("test_result", "")
    return Substance(
        formula=row["formula"],
        name=row["name"],
        state=row["state"],
        appearance=row["appearance"],
        observation=row["observation"],
        observation_in_melt=row.get("observation_in_melt", row["observation"]),
        test=test,
        test_result=result,
        test_in_melt=row.get("test_in_melt", test),
        test_result_in_melt=row.get("test_result_in_melt", result),
        hazard=row["hazard"],
        ghs=tuple(row["ghs"]),
        caution=row.get("caution", ""),
        colours_solution=row.get("colours_solution", ""),
        source=row["source"],
        verified=row["verified"],
    )


_TABLE: Final = read_table("substances.toml")
_LOW_HAZARD: Final = {"hazard": "low hazard", "ghs": []}


def _film(row: dict[str, Any]) -> Substance:
    name = row.get("name") or _name(row["formula"])
    seen = f"A {row['looks']} film of {name} grows on the {{electrode}}."
    return _substance(
        {
            **_TABLE["film_metal"].get(row["metal"], _LOW_HAZARD),
            "formula": row["formula"],
            "name": name,
            "state": "solid",
            "appearance": row["looks"],
            "observation": seen,
            "source": "recalled",
            "verified": False,
        }
    )


def _name(formula: str) -> str:
    unit = neutral_unit(read_formula(formula))
    if unit is None:
        raise ValueError(formula)
    return compound_from(unit).name


SUBSTANCES: Final[Mapping[str, Substance]] = MappingProxyType(
    {one.formula: one for one in (*map(_substance, _TABLE["substance"]), *map(_film, _TABLE["film"]))}
)
"""Every product that the tables know, by canonical formula."""

GENERAL_CAUTION: Final[str] = _TABLE["common_caution"][0]["text"]
"""What holds for every cell, and the deference to local rules and the school's own risk assessment."""
