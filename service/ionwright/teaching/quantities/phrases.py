"""Quantities by a phrase: "mass of Ni in mg at bracket" to the quantity, its substance, unit and process."""

from __future__ import annotations

import re
from difflib import get_close_matches
from functools import lru_cache
from typing import Final, NamedTuple

from ionwright.chemistry.amounts.quantity import TOLD
from ionwright.chemistry.faults import QuantityFault

__all__ = ["Phrase", "quantity_name", "read_phrase"]

_LONGEST: Final = 160
_OTHER_WORDS: Final = {
    "gas_volume": "volume", "moles": "amount", "mole": "amount", "number_of_moles": "amount",
    "amount_of_substance": "amount",
    "electrons": "amount_of_electrons", "current_efficiency": "efficiency", "yield": "efficiency", "duration": "time",
    "particles": "number_of_particles", "atoms": "number_of_particles", "molecules": "number_of_particles",
    "coating_thickness": "thickness", "layer": "thickness", "electric_charge": "charge", "coulombs": "charge",
    "amps": "current", "potential": "voltage", "price": "energy_price", "concentration_at_start": "bath_concentration",
    "initial_concentration": "bath_concentration", "final_concentration": "concentration",
    "concentration_at_end": "concentration", "volume_of_solution": "bath_volume", "solution_volume": "bath_volume",
    "molar_volume": "molar_gas_volume", "vapour_pressure": "water_vapour_pressure", "surface": "area",
    "electrode_area": "area", "relative_molecular_mass": "molar_mass", "plating_rate": "growth_rate",
    "charge_number": "ion_charge", "valency": "ion_charge",
    "amount_at_the_start": "amount_at_start", "concentration_at_the_start": "bath_concentration",
    "concentration_at_the_end": "concentration", "change_in_concentration": "concentration_change",
    "change_of_concentration": "concentration_change",
}  # fmt: skip


class Phrase(NamedTuple):
    """What a phrase says; empty where it does not say it."""

    quantity: str
    of: str = ""
    unit: str = ""
    process: str = ""


def quantity_name(text: str) -> str:
    """The name of the quantity that a word stands for, spaces and hyphens taken as underscores.

    Raises
    ------
    QuantityFault
        ``unknown-quantity``, with the name that was probably meant.
    """
    name = re.sub(r"[\s\-]+", "_", text.strip().lower()[:_LONGEST])
    name = _OTHER_WORDS.get(name, name)
    if name in TOLD:
        return name
    near = next(iter(get_close_matches(name, TOLD, n=1, cutoff=0.7)), "")
    remedy = f'Did you mean "{near}"?' if near else f"The quantities are {', '.join(TOLD)}."
    raise QuantityFault("unknown-quantity", f'There is no quantity "{text.strip()[:60]}".', remedy=remedy)


@lru_cache(maxsize=2048)
def read_phrase(text: str) -> Phrase:
    """Read a phrase such as "mass", "mass of Ni", "mass of Ni in mg" or "mass of Ag in g at silver cell".

    Raises
    ------
    QuantityFault
        ``unknown-quantity``.
    """
    if len(text) > _LONGEST:
        detail = f"The name of a quantity is longer than {_LONGEST} characters."
        raise QuantityFault(
            "unknown-quantity", detail, remedy='Write a name, or for example "mass of Ni in mg".'
        )
    rest = _FATE.sub(r"\1", " ".join(text.split()))
    start = next((name for name in _IN_WORDS if rest.lower().startswith(name)), "")
    tail, unit, process = rest[len(start) :], "", ""
    for _ in range(2):  # either may stand last
        at, within = tail.rfind(" at "), tail.rfind(" in ")
        if at > within:
            tail, process = tail[:at], tail[at + 4 :].strip()
        elif within > at:
            tail, unit = tail[:within], tail[within + 4 :].strip()
    head, _, of = tail.partition(" of ")
    return _of_electrons(quantity_name(start + head), of.strip(), unit, process)


_IN_WORDS: Final = tuple(
    name.replace("_", " ") for name in (*TOLD, *_OTHER_WORDS) if {"of", "at", "in"} & set(name.split("_"))
)
"""Names that hold the words by which a phrase is divided."""

_FATE: Final = re.compile(
    r"(\S) (?:that (?:is|was) )?(?:deposited|dissolved|discharged|evolved|formed|given off|liberated|needed"
    r"|passed|plated|produced|released|required|set free|taken|used)(?= (?:in|at) |$)",
    re.IGNORECASE,
)
"""Words that say what becomes of a substance, or what a quantity is for, and change nothing."""

_ELECTRON: Final = frozenset({"e", "e-", "e⁻", "e^-", "electron", "electrons"})


def _of_electrons(quantity: str, of: str, unit: str, process: str) -> Phrase:
    """The phrase, with the amount of e- taken for that of electrons."""
    own = {"amount": "amount_of_electrons", "number_of_particles": "number_of_electrons"}.get(quantity)
    return Phrase(own, "", unit, process) if own and of in _ELECTRON else Phrase(quantity, of, unit, process)
