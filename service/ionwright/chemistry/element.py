"""The chemical elements: symbols, names and relative atomic masses."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from importlib import resources
from types import MappingProxyType
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["ELEMENTS", "Element", "find_element"]


@dataclass(frozen=True, slots=True)
class Element:
    """One chemical element.

    Parameters
    ----------
    symbol
        One or two letters, the first a capital.
    number
        Atomic number, 1 to 118.
    name
        The name in British spelling, in lower case.
    other_names
        Other spellings that people use, in lower case.
    relative_atomic_mass
        Relative to one twelfth of a carbon-12 atom; None where the table holds no figure.
    source
        Where the mass was read; empty without a mass.
    """

    symbol: str
    number: int
    name: str
    other_names: tuple[str, ...] = ()
    relative_atomic_mass: float | None = None
    source: str = ""


def _load() -> Mapping[str, Element]:
    table = tomllib.loads(
        resources.files(__package__).joinpath("data").joinpath("elements.toml").read_text(encoding="utf-8")
    )
    elements = {
        row["symbol"]: Element(**{**row, "other_names": tuple(row.get("other_names", ()))})
        for row in table["element"]
    }
    return MappingProxyType(elements)


ELEMENTS: Mapping[str, Element] = _load()
"""Every element by its symbol, in order of atomic number."""

_BY_NAME = {name: element for element in ELEMENTS.values() for name in (element.name, *element.other_names)}


def find_element(text: str) -> Element | None:
    """Return the element with this symbol (``"Na"``) or name (``"sodium"``, in any case), or None.

    Parameters
    ----------
    text
        A symbol in its exact spelling, or a name.
    """
    return ELEMENTS.get(text) or _BY_NAME.get(text.strip().lower())
