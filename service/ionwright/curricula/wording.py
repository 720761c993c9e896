"""Pieces of sentences about ions, metals and potentials."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.notation import species_text
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.chemistry.substance import SUBSTANCES

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.species import Species


@lru_cache(maxsize=1024)
def ions(kind: Species) -> str:
    """The ions of a kind, as a noun phrase: ``"copper(II) ions"``."""
    known = IONS.get(kind)
    name = known.name if known else f"{species_text(kind)} ion"
    return name if name.endswith("s") else f"{name}s"


@lru_cache(maxsize=256)
def metal(symbol: str) -> str:
    """The metal's name in a sentence."""
    return ELEMENTS[symbol].name


@lru_cache(maxsize=1024)
def product(kind: Species) -> str:
    """A product's name in a sentence: ``"chlorine"``, ``"iron(II) ions"``."""
    if kind.charge:
        return ions(kind)
    known = SUBSTANCES.get(kind.ascii)
    return known.name if known else species_text(kind)


def products(process: ElectrodeProcess) -> str:
    """The products of a process, listed; of a deposit only the metal."""
    if process.kind is Kind.AMALGAM:
        return f"{metal(process.metal)} amalgam"
    if process.kind is Kind.METAL:
        return metal(process.metal)
    return listed(product(kind) for kind in process.products)


@lru_cache(maxsize=1024)
def forming(process: ElectrodeProcess) -> str:
    """The products with their verb: ``"copper forms"``, ``"iron(II) ions form"``."""
    is_plural = not process.metal and (len(process.products) > 1 or process.products[0].charge)
    return f"{products(process)} {'form' if is_plural else 'forms'}"


@lru_cache(maxsize=1024)
def contender(process: ElectrodeProcess) -> str:
    """What competes: ``"copper(II) ions"``, ``"hydrogen ions"``, ``"the copper of the anode"``."""
    if process.kind in {Kind.DISSOLVES, Kind.FILM}:
        return f"the {metal(process.metal)} of the anode"
    if process.kind is Kind.BURNS:
        return "the carbon of the anode"
    return ions(process.reactant)


@lru_cache(maxsize=256)
def volts(potential_V: float) -> str:
    """A potential to two decimals with its sign: ``"+0.34 V"``, ``"−0.76 V"``."""
    if round(potential_V, 2) == 0:
        return "0.00 V"
    return f"{potential_V:+.2f} V".replace("-", "\N{MINUS SIGN}")


def listed(items: Iterable[str], joint: str = "and") -> str:
    """The items as a list in a sentence; empty for none."""
    *front, last = list(items) or [""]
    return f"{', '.join(front)} {joint} {last}" if front else last


def sentence_start(text: str) -> str:
    """The text with a capital first letter and the rest as it is."""
    return text[:1].upper() + text[1:]
