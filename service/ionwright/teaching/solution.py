"""What happens to the electrolyte: which ions leave, form and stay, pH and colour, and what it becomes."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from ionwright.chemistry.compound import compound_of
from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, WATER
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import ACIDIC, ALKALINE, MOLTEN, NEUTRAL
from ionwright.chemistry.notation import species_text
from ionwright.chemistry.solubility import solubility
from ionwright.curricula.wording import ions, listed, product, sentence_start

if TYPE_CHECKING:
    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.equation import Equation
    from ionwright.chemistry.species import Species

RISES, FALLS, UNCHANGED, NO_PH = "rises", "falls", "unchanged", "does not apply"
COLOURLESS = "colourless"
# Products that stay dissolved and colour the solution.
_COLOURED_PRODUCTS = {"Br2": "orange", "I2": "brown"}


@dataclass(frozen=True, slots=True)
class SolutionAccount:
    """The electrolyte as the current flows.

    Parameters
    ----------
    removed, formed, remaining
        Ions used up, made, and left alone.
    precipitates
        Names of solids that form where new ions meet others.
    ph
        ``"rises"``, ``"falls"``, ``"unchanged"`` or, for a melt, ``"does not apply"``.
    colour, becomes, summary
        In words.
    """

    removed: tuple[Species, ...]
    formed: tuple[Species, ...]
    remaining: tuple[Species, ...]
    precipitates: tuple[str, ...]
    ph: str
    colour: str
    becomes: str
    summary: str


def solution_account(cell: Cell, overall: Equation) -> SolutionAccount:
    """What the overall equation does to the electrolyte of a cell."""
    names = tuple(d.compound.name for d in cell.electrolyte.ingredients)
    return _account(cell.own_ions, cell.medium, names, overall)


@lru_cache(maxsize=4096)
def _account(
    own: tuple[Species, ...], medium: str, names: tuple[str, ...], overall: Equation
) -> SolutionAccount:
    change = _change(overall, medium)
    removed = tuple(kind for kind, amount in change.items() if kind.charge and amount < 0)
    formed = tuple(kind for kind, amount in change.items() if kind.charge and amount > 0)
    remaining = tuple(kind for kind in own if kind not in removed)
    if medium == MOLTEN:
        return _melt_account(removed, formed, remaining, names)
    solids = _precipitates(own, removed, formed)
    uses_water = change.get(WATER, 0) < 0
    becomes = _becomes(own, removed, formed, solids, names, uses_water=uses_water)
    colour = _colour(own, removed, formed, overall)
    ph = _ph(change, medium, solids, formed)
    if removed or formed:
        summary = _summary(removed, formed, remaining, solids, becomes)
    else:
        summary = _summary_without_change(remaining, overall, becomes, uses_water=uses_water)
    return SolutionAccount(
        removed, formed, remaining, tuple(n for n, _, _ in solids), ph, colour, becomes, summary
    )


def _change(overall: Equation, medium: str) -> dict[Species, float]:
    """Net amounts, with hydrogen and hydroxide ions that water supplies written as the other one that it leaves."""
    net: dict[Species, float] = {}
    for sign, terms in ((-1, overall.left), (1, overall.right)):
        for term in terms:
            net[term.species] = net.get(term.species, 0) + sign * float(term.coefficient)
    if medium != MOLTEN:
        _settle(net, HYDROGEN_ION, HYDROXIDE, uses_up=medium == ACIDIC, meets=medium == ALKALINE)
        _settle(net, HYDROXIDE, HYDROGEN_ION, uses_up=medium == ALKALINE, meets=medium == ACIDIC)
    return net


def _settle(net: dict[Species, float], one: Species, other: Species, *, uses_up: bool, meets: bool) -> None:
    """Replace an ion that is consumed though only water holds it, or made where the other one is plentiful."""
    amount = net.get(one, 0)
    if (amount < 0 and not uses_up) or (amount > 0 and meets):
        net[one] = 0
        net[other] = net.get(other, 0) - amount
        net[WATER] = net.get(WATER, 0) + amount


def _precipitates(
    own: tuple[Species, ...], removed: tuple[Species, ...], formed: tuple[Species, ...]
) -> tuple[tuple[str, Species, Species], ...]:
    """Solids that new ions make with others: name, cation, anion."""
    there = tuple(kind for kind in (*own, *formed) if kind not in removed or kind in formed)
    found = []
    for cation in (kind for kind in there if kind.charge > 0 and kind != HYDROGEN_ION):
        for anion in (kind for kind in there if kind.charge < 0):
            is_new = cation in formed or anion in formed
            if is_new and solubility(cation, anion).category in {"insoluble", "very-slight"}:
                found.append((compound_of(IONS[cation], IONS[anion]).name, cation, anion))
    return tuple(found)


def _ph(
    change: dict[Species, float],
    medium: str,
    solids: tuple[tuple[str, Species, Species], ...],
    formed: tuple[Species, ...],
) -> str:
    acid, alkali = change.get(HYDROGEN_ION, 0), change.get(HYDROXIDE, 0)
    if alkali > 0 and any(anion == HYDROXIDE and cation in formed for _, cation, anion in solids):
        return UNCHANGED  # the metal that dissolves takes up as much hydroxide as the cathode makes
    if acid > 0 or alkali < 0:
        return FALLS
    if acid < 0 or alkali > 0:
        return RISES
    if change.get(WATER, 0) < 0 and medium != NEUTRAL:
        return FALLS if medium == ACIDIC else RISES
    return UNCHANGED


def _short_colour(kind: Species) -> str:
    known = IONS.get(kind)
    return known.colour.partition("(")[0].strip() if known else COLOURLESS


def _colour(
    own: tuple[Species, ...], removed: tuple[Species, ...], formed: tuple[Species, ...], overall: Equation
) -> str:
    before = {kind: colour for kind in own if not (colour := _short_colour(kind)).startswith(COLOURLESS)}
    after = {kind: colour for kind in formed if not (colour := _short_colour(kind)).startswith(COLOURLESS)}
    parts = [
        f"the {colour} colour of the {ions(kind)} fades" for kind, colour in before.items() if kind in removed
    ]
    parts += [f"turns {colour} with {ions(kind)}" for kind, colour in after.items() if kind not in before]
    parts += [
        f"turns {_COLOURED_PRODUCTS[kind.formula]} round the anode"
        for kind in overall.products
        if kind.formula in _COLOURED_PRODUCTS
    ]
    stays = [colour for kind, colour in before.items() if kind not in removed]
    if stays:
        parts.append(f"stays {listed(dict.fromkeys(stays))}")
    return ", ".join(parts) if parts else f"stays {COLOURLESS}"


def _becomes(
    own: tuple[Species, ...],
    removed: tuple[Species, ...],
    formed: tuple[Species, ...],
    solids: tuple[tuple[str, Species, Species], ...],
    names: tuple[str, ...],
    *,
    uses_water: bool,
) -> str:
    same = _solution_name(listed(names))
    if not removed and not formed:
        return f"more concentrated {same}" if uses_water else f"unchanged {same}"
    gone = {cation for _, cation, _ in solids if cation in formed} | {
        HYDROXIDE for _, _, anion in solids if anion == HYDROXIDE and HYDROXIDE in formed
    }
    left = [kind for kind in (*own, *formed) if kind not in removed and kind not in gone]
    cations = [kind for kind in dict.fromkeys(left) if kind.charge > 0]
    anions = [kind for kind in dict.fromkeys(left) if kind.charge < 0]
    solid = f" with a precipitate of {listed(dict.fromkeys(name for name, _, _ in solids))}" if solids else ""
    if not cations or not anions:
        return (
            f"more dilute {same}, and in the end water{solid}"
            if not cations and not anions
            else f"more dilute {same}{solid}"
        )
    if len(cations) == len(anions) == 1:
        return f"{_solution_name(compound_of(IONS[cations[0]], IONS[anions[0]]).name)}{solid}"
    return f"a solution of {listed(species_text(kind) for kind in (*cations, *anions))}{solid}"


def _solution_name(name: str) -> str:
    return name if name.endswith((" acid", "water")) else f"{name} solution"


def _summary(
    removed: tuple[Species, ...],
    formed: tuple[Species, ...],
    remaining: tuple[Species, ...],
    solids: tuple[tuple[str, Species, Species], ...],
    becomes: str,
) -> str:
    parts = [
        *([f"{listed(ions(kind) for kind in removed)} leave the solution"] if removed else []),
        *([_arrival(formed)] if formed else []),
        *([f"{listed(ions(kind) for kind in remaining)} stay"] if remaining else []),
    ]
    sentences = [f"{sentence_start('; '.join(parts))}."]
    if solids:
        named = listed(dict.fromkeys(name for name, _, _ in solids))
        sentences.append(f"Where the new ions meet the others, solid {named} forms.")
    sentences.append(f"The electrolyte becomes {becomes}.")
    return " ".join(sentences)


def _summary_without_change(
    remaining: tuple[Species, ...], overall: Equation, becomes: str, *, uses_water: bool
) -> str:
    stay = f"{sentence_start(listed(ions(kind) for kind in remaining))} stay. " if remaining else ""
    if uses_water:
        return f"Only water is used up. {stay}The electrolyte becomes {becomes}."
    carried = product(overall.products[0])
    return (
        f"{sentence_start(carried)} is carried from the anode to the cathode: for every ion discharged another forms, "
        "so the solution does not change."
    )


def _arrival(formed: tuple[Species, ...]) -> str:
    left = [kind for kind in formed if kind in {HYDROGEN_ION, HYDROXIDE}]
    made = [kind for kind in formed if kind not in left]
    phrases = []
    if left:
        phrases.append(f"{listed(ions(kind) for kind in left)} from water are left behind")
    if made:
        phrases.append(f"{listed(ions(kind) for kind in made)} are made")
    return "; ".join(phrases)


def _melt_account(
    removed: tuple[Species, ...],
    formed: tuple[Species, ...],
    remaining: tuple[Species, ...],
    names: tuple[str, ...],
) -> SolutionAccount:
    salt = f"molten {listed(names)}"
    if remaining:
        stay = f" {sentence_start(listed(ions(kind) for kind in remaining))} stay in the melt."
    else:
        stay = ""
    if removed:
        summary = f"{sentence_start(listed(ions(kind) for kind in removed))} leave the melt, which is slowly used up.{stay}"
    else:
        summary = f"The melt does not change.{stay}"
    return SolutionAccount(
        removed, formed, remaining, (), NO_PH, NO_PH, f"less {salt}" if removed else salt, summary
    )
