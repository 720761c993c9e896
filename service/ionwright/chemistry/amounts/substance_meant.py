"""What the name of a substance in a task can stand for, and which ion of a process a compound goes with."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.unknown_metal import is_unknown_metal, substance
from ionwright.chemistry.compound import read_substance
from ionwright.chemistry.element import find_element
from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.species import readings, species
from ionwright.chemistry.substance import SUBSTANCES
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Collection

    from ionwright.chemistry.species import Species

__all__ = ["compound_meant", "ion_carried", "meanings"]

_STATE: Final = re.compile(r"\s*\((?:s|l|g|aq)\)\s*\Z")


@lru_cache(maxsize=512)
def meanings(text: str) -> tuple[Species, ...]:
    """What a formula or a name can stand for, the likeliest first; a state symbol at its end is left out.

    Raises
    ------
    FormulaError
        It is no formula and no known name.
    """
    plain = _STATE.sub("", text.strip())
    if is_unknown_metal(plain):
        return (substance(plain),)
    element = find_element(plain)
    if element and element.name == plain.lower():
        return tuple(species(formula) for formula in (element.symbol, f"{element.symbol}2"))
    by_name = tuple(species(one.formula) for one in SUBSTANCES.values() if one.name == plain.lower())
    return by_name or readings(plain)


@lru_cache(maxsize=512)
def compound_meant(text: str) -> str:
    """The formula of the compound that a text names; empty if it names none."""
    try:
        return read_substance(_STATE.sub("", text.strip())).compound.formula
    except IonwrightError:
        return ""


@lru_cache(maxsize=512)
def _ions(formula: str) -> tuple[tuple[Species, int], ...]:
    try:
        return tuple((ion.species, number) for ion, number in read_substance(formula).compound.ions)
    except (IonwrightError, FormulaError):
        return ()


def ion_carried(formula: str, there: Collection[Species]) -> tuple[Species, int] | None:
    """The ion among those that are there which a compound holds, and how many of it; None unless it is just one.

    So the mass of NaOH can be asked for where OH⁻ forms, and the concentration of CuSO4 where Cu²⁺ is used up.
    """
    found = [(kind, number) for kind, number in _ions(formula) if kind in there]
    return found[0] if len(found) == 1 else None
