"""Makes the electrons agree: multipliers, overall equation, and the ratio of the products."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from math import gcd, lcm
from typing import TYPE_CHECKING

from ionwright.chemistry.equation import Combined, Equation, combine

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species


@dataclass(frozen=True, slots=True)
class Share:
    """How much of one product forms beside the others, in smallest whole numbers [mol/mol or dm³/dm³]."""

    species: Species
    value: int


@dataclass(frozen=True, slots=True)
class Accounts:
    """Both electrodes together.

    Parameters
    ----------
    combined
        The overall equation with the multipliers and the number of electrons.
    moles
        Ratio of the amounts of all products.
    gas_volumes
        Ratio of the volumes of the gaseous products, at one temperature and pressure.
    """

    combined: Combined
    moles: tuple[Share, ...]
    gas_volumes: tuple[Share, ...]


@lru_cache(maxsize=4096)
def account(
    reduction: Equation, oxidation: Equation, reduced: tuple[Species, ...], oxidised: tuple[Species, ...]
) -> Accounts:
    """The overall equation of two half-equations, and the ratio in which their products form.

    Parameters
    ----------
    reduction, oxidation
        The half-equations at the cathode and at the anode.
    reduced, oxidised
        The products of each.
    """
    combined = combine(reduction, oxidation, join_water=True)
    if combined.is_transfer:
        combined = replace(combined, overall=_carried(combined.overall))
    amounts = _amounts(reduction, reduced, combined.reduction_multiplier)
    amounts += _amounts(oxidation, oxidised, combined.oxidation_multiplier)
    gases = [(species, amount) for species, amount, state in amounts if state == "g"]
    return Accounts(combined, _smallest([(s, a) for s, a, _ in amounts]), _smallest(gases))


def _carried(overall: Equation) -> Equation:
    """Of a metal that is only carried from anode to cathode, the metal alone: ligands that come and go cancel."""
    left, right = (tuple(t for t in side if not t.species.charge) for side in (overall.left, overall.right))
    return Equation(left, right) if left and right else overall


def _amounts(
    half: Equation, products: tuple[Species, ...], multiplier: int
) -> list[tuple[Species, int, str]]:
    scaled = half.scaled(multiplier)
    denominator = lcm(*(int(getattr(t.coefficient, "denominator", 1)) for t in scaled.right))
    return [
        (t.species, int(t.coefficient * denominator), t.state) for t in scaled.right if t.species in products
    ]


def _smallest(amounts: list[tuple[Species, int]]) -> tuple[Share, ...]:
    summed: dict[Species, int] = {}
    for kind, amount in amounts:
        summed[kind] = summed.get(kind, 0) + amount
    divisor = gcd(*summed.values()) or 1
    return tuple(Share(kind, amount // divisor) for kind, amount in summed.items())
