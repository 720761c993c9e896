"""What a teacher says at each step of the working, as a sentence."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from functools import cache, lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.naming import name_of
from ionwright.chemistry.amounts.relations import Product, Sum
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.notation import rendered

if TYPE_CHECKING:
    from ionwright.chemistry.amounts.circuit import Circuit
    from ionwright.chemistry.amounts.quantity import Key
    from ionwright.chemistry.amounts.relations import Relation

__all__ = ["SERIES", "placed", "sentence"]

SERIES: Final = "The electrodes are in series, so that the same amount of electrons passes through each."
"""Said once, where the electrons of one process are taken to another."""

_ELECTRODES: Final = frozenset({"cathode", "anode"})


@cache
def _table() -> dict[str, dict[str, str]]:
    """The sentences of the laws, by the quantity that is found."""
    text = files("ionwright.teaching").joinpath("data", "working.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


@lru_cache(maxsize=4096)
def sentence(relation: Relation, key: Key, circuit: Circuit) -> str:
    """What is said when a quantity is found by a relation."""
    if isinstance(relation, Product) and relation.name == "stoichiometry":
        amount = relation.result
        return placed(_by_the_half_equation(amount, circuit), amount.process, circuit)
    law = (
        f"{relation.name} over water"
        if circuit.is_over_water and relation.name == "gas law"
        else relation.name
    )
    fixed = _table().get(law, {}).get(key.kind) or _table().get(relation.name, {}).get(key.kind)
    of = next((member.of for member in (key, *relation.members) if member.of), "")
    said = fixed.replace("{of}", substance_text(of) if of else "") if fixed else _generic(relation, key)
    return placed(said, _process(relation, key), circuit)


def _process(relation: Relation, key: Key) -> str:
    if key.process or isinstance(relation, Sum):
        return key.process
    return next((member.process for member in relation.members if member.process), "")


def placed(text: str, process: str, circuit: Circuit) -> str:
    """The sentence, with the process it is about where there are several."""
    if len(circuit.processes) == 1 or all(p.id != process for p in circuit.processes):
        return text
    start = f"At the {process}" if process in _ELECTRODES else f"In “{process}”"
    is_name = text[:1] == text[:2].strip() or text.startswith(("By trial", "For an"))
    return f"{start}: {text}" if is_name else f"{start}, {text[:1].lower()}{text[1:]}"


def _by_the_half_equation(amount: Key, circuit: Circuit) -> str:
    process = next((p for p in circuit.processes if p.id == amount.process), None)
    process = process or circuit.touching(amount.process, amount.of)[0]
    half = process.half.without_states()
    electrons = abs(Fraction(half.electrons))
    number = abs(process.per_electron(amount.of) * electrons)
    go, written = "goes" if electrons == 1 else "go", rendered(half)["text"]
    name = substance_text(amount.of)
    return f"By the half-equation {written}, {electrons} mol of electrons {go} with {number} mol of {name}."


def _generic(relation: Relation, key: Key) -> str:
    """The relation read aloud."""
    if isinstance(relation, Product):
        _, numerators, divisors = relation.rearranged(key)
        said = " times ".join(f"the {name_of(k)}" for k in numerators) or "one"
        if divisors:
            said += " divided by " + " and ".join(f"the {name_of(k)}" for k in divisors)
        return f"The {name_of(key)} is {said}."
    if isinstance(relation, Sum):
        _, added, subtracted = relation.rearranged(key)
        said = " plus ".join(f"the {name_of(k)}" for k in added)
        said += "".join(f" minus the {name_of(k)}" for k in subtracted)
        return f"The {name_of(key)} is {said}."
    return f"The tables give the {name_of(key)}."
