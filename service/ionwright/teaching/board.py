"""Balancing as it is written on the board, step by step, with the sentences that a teacher says."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.balancing import OXIDATION, REDOX, REDUCTION
from ionwright.chemistry.combination import combine
from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, WATER
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import Unbalanced
from ionwright.chemistry.medium import NEUTRAL
from ionwright.chemistry.net_equation import equation_of
from ionwright.chemistry.notation import species_text
from ionwright.chemistry.oxidation_change import numbers_in
from ionwright.chemistry.skeleton import HYDRONIUM, OXIDE
from ionwright.chemistry.species import ELECTRON
from ionwright.chemistry.stoichiometry import Equation, Term

if TYPE_CHECKING:
    from collections.abc import Iterable
    from fractions import Fraction

    from ionwright.chemistry.balancing import Balanced
    from ionwright.chemistry.combination import Combined
    from ionwright.chemistry.linear_system import Net
    from ionwright.chemistry.species import Species
    from ionwright.chemistry.splitting import Halves

__all__ = ["Step", "board_steps", "check_step", "combination_steps", "signed"]

_CHARGE: Final = "charge"
_MINUS: Final = "−"
_ADDED: Final = "Add the two. The electrons cancel, and so does what stands on both sides."


@dataclass(frozen=True, slots=True)
class Step:
    """One line on the board: what is said, and the equation as it stands then.

    Parameters
    ----------
    text
        A sentence or two.
    equation
        The equation after this step; all but the last may still be open in some respects.
    """

    text: str
    equation: Equation


def board_steps(balanced: Balanced) -> tuple[Step, ...]:
    """The way to a balanced equation; the equation of the last step is the answer.

    Parameters
    ----------
    balanced
        A half-equation is built up element by element. A whole redox equation is put together from its
        half-equations.

    Raises
    ------
    Unbalanced
        If a step did not do what its sentence says.
    """
    halves = balanced.halves if balanced.kind == REDOX else None
    steps = _from_halves(balanced, halves) if halves else _by_elements(balanced)
    if not steps or steps[-1].equation != balanced.equation:
        steps.append(
            Step("Written in order:" if steps else "Everything agrees as it stands.", balanced.equation)
        )
    balanced.equation.check()
    return tuple(steps)


def signed(number: Fraction | int) -> str:
    """A number with its sign, as oxidation numbers and charges are written: +7, −2, 0, +5/2."""
    if number == 0:
        return "0"
    return f"{'+' if number > 0 else _MINUS}{abs(number)}"


# ------------------------------------------------------------------ element by element


def _by_elements(balanced: Balanced) -> list[Step]:
    """Balance the principal element, oxygen, hydrogen, charge; then go over to the ions of the medium."""
    net = _net(balanced.equation)
    aids = balanced.skeleton.aids
    order = balanced.skeleton.order
    plain = _in_acid(net, aids)
    helpers = {WATER, HYDROGEN_ION} if WATER in aids else {*aids}
    steps: list[Step] = []
    shown = {kind: number for kind, number in plain.items() if kind not in helpers and kind != ELECTRON}
    is_open = {_CHARGE, *(symbol for kind in helpers for symbol, _ in kind.atoms)}
    _add(steps, _principal_text(shown, is_open), shown, order, is_open)
    for aid, element in ((WATER, "O"), (OXIDE, "O"), (HYDROGEN_ION, "H")):
        if aid in helpers and plain.get(aid):
            is_open.discard(element)
            shown = shown | {aid: plain[aid]}
            _add(steps, _aid_text(aid, element, plain[aid]), shown, order, is_open)
    text = _charge_text(shown, plain.get(ELECTRON, 0))
    _add(steps, text, shown | {ELECTRON: plain.get(ELECTRON, 0)}, order, set())
    return steps + _to_the_ions_of_the_medium(balanced, net, plain)


def _net(equation: Equation) -> Net:
    net = {term.species: int(term.coefficient) for term in equation.left}
    return net | {term.species: -int(term.coefficient) for term in equation.right}


def _in_acid(net: Net, aids: tuple[Species, ...]) -> Net:
    """The same with hydrogen ions in the place of hydroxide ions, or of hydronium ions, of the medium."""
    plain = dict(net)
    if WATER in aids:
        for ion, sign in ((HYDROXIDE, -1), (HYDRONIUM, 1)):
            number = plain.pop(ion, 0) if ion in aids or ion == HYDROXIDE else 0
            plain[WATER] = plain.get(WATER, 0) + number
            plain[HYDROGEN_ION] = plain.get(HYDROGEN_ION, 0) + sign * number
    return plain


def _add(steps: list[Step], text: str, net: Net, order: Iterable[Species], is_open: set[str]) -> None:
    """Add a step, unless it has nothing to say or a side is still empty; make sure that it does what it says."""
    equation = equation_of(net, _with_all(order, net))
    if not text or not equation.left or not equation.right:
        return
    check_step(text, equation, is_open)
    steps.append(Step(text, equation))


def check_step(text: str, equation: Equation, is_open: set[str]) -> None:
    """Make sure that a step does what it says.

    Parameters
    ----------
    text
        What is said.
    equation
        How it stands then.
    is_open
        Symbols of the elements that need not agree yet, and ``"charge"``.

    Raises
    ------
    Unbalanced
        If anything else does not agree.
    """
    atoms, charge = equation.imbalance()
    if not is_open.issuperset(atoms) or (charge and _CHARGE not in is_open):
        raise Unbalanced("unbalanced", f"{equation.ascii} does not do what the step says: {text}")


def _with_all(order: Iterable[Species], net: Net) -> tuple[Species, ...]:
    ordered = tuple(order)
    extra = tuple(kind for kind in net if kind not in ordered)
    return (*ordered[:-1], *extra, ordered[-1])


def _principal_text(shown: Net, is_open: set[str]) -> str:
    counts: dict[str, int] = {}
    for kind, number in shown.items():
        for symbol, atoms in kind.atoms:
            if number > 0 and symbol not in is_open:
                counts[symbol] = counts.get(symbol, 0) + number * atoms
    if not counts:
        return ""
    others = [_name(symbol) for symbol in ("O", "H") if symbol in is_open]
    but = f" other than {' and '.join(others)}" if others else ""
    listed = _listed([f"{number} {symbol}" for symbol, number in counts.items()])
    return f"Make the elements{but} agree: {listed} on each side."


def _aid_text(aid: Species, element: str, number: int) -> str:
    less, more = ("left", "right") if number > 0 else ("right", "left")
    missing = abs(number) * dict(aid.atoms)[element]
    with_what = {WATER: "water", HYDROGEN_ION: "hydrogen ions", OXIDE: "oxide ions"}[aid]
    return (
        f"Balance {_name(element)} with {with_what}: the {more} has {missing} {element} more,"
        f" so write {_counted(abs(number), aid)} on the {less}."
    )


def _charge_text(shown: Net, electrons: int) -> str:
    left = sum(number * kind.charge for kind, number in shown.items() if number > 0)
    right = sum(-number * kind.charge for kind, number in shown.items() if number < 0)
    if not electrons:
        return (
            f"The charge agrees already, {signed(left)} on each side: no electrons are needed,"
            " so this is not a half-equation."
        )
    side = "left" if electrons > 0 else "right"
    return (
        f"Balance the charge with electrons: it is {signed(left)} on the left and {signed(right)} on the right,"
        f" so write {_counted(abs(electrons), ELECTRON)} on the {side}."
    )


def _to_the_ions_of_the_medium(balanced: Balanced, net: Net, plain: Net) -> list[Step]:
    """Replace hydrogen ions by what the medium holds, where that is another ion."""
    number = plain.get(HYDROGEN_ION, 0)
    if net == {kind: n for kind, n in plain.items() if n} or not number:
        return []
    if net.get(HYDRONIUM):
        text = (
            f"Write the hydrogen ions as {species_text(HYDRONIUM)}: each takes up one {species_text(WATER)},"
            " so the same number of water molecules is added on the other side."
        )
        return [Step(text, balanced.equation)]
    hydroxide = _counted(abs(number), HYDROXIDE)
    lack = (
        "A neutral solution has no"
        if balanced.skeleton.medium == NEUTRAL
        else "An alkaline solution holds no"
    )
    text = (
        f"{lack} {species_text(HYDROGEN_ION)} to speak of: add {hydroxide} on both sides. With"
        f" {_counted(abs(number), HYDROGEN_ION)} they become {_counted(abs(number), WATER)}."
    )
    uncancelled = _with_water_on_both_sides(net, plain, number, balanced.skeleton.order)
    uncancelled.check()
    steps = [Step(text, uncancelled)]
    if uncancelled != balanced.equation:
        common = min(abs(plain[WATER]), abs(number))
        text = f"Cancel {_counted(common, WATER)} on both sides."
        steps.append(Step(text, balanced.equation))
    return steps


def _with_water_on_both_sides(net: Net, plain: Net, number: int, order: tuple[Species, ...]) -> Equation:
    """The equation once hydroxide ions have met the hydrogen ions, before any water cancels."""
    old, new = plain.get(WATER, 0), number
    if old * new >= 0:
        return equation_of(net, order)
    dry = equation_of({kind: n for kind, n in net.items() if kind != WATER}, order)
    at_left, at_right = (old, -new) if old > 0 else (new, -old)
    return Equation(
        _inserted(dry.left, Term(WATER, at_left), order), _inserted(dry.right, Term(WATER, at_right), order)
    )


def _inserted(terms: tuple[Term, ...], term: Term, order: tuple[Species, ...]) -> tuple[Term, ...]:
    return tuple(sorted((*terms, term), key=lambda one: order.index(one.species)))


# ------------------------------------------------------------------ from two half-equations


def _from_halves(balanced: Balanced, halves: Halves) -> list[Step]:
    """Write the half-equations, make their electrons equal, add them."""
    steps = [
        Step(_half_text(REDUCTION, halves.reduction), halves.reduction),
        Step(_half_text(OXIDATION, halves.oxidation), halves.oxidation),
    ]
    steps += _multiplied(REDUCTION, halves.reduction, halves.reduction_multiplier, halves.electrons)
    steps += _multiplied(OXIDATION, halves.oxidation, halves.oxidation_multiplier, halves.electrons)
    text = _ADDED
    answer = _net(balanced.equation)
    sums = [combine(halves.reduction, halves.oxidation, join_water=join).overall for join in (True, False)]
    found = next((overall for overall in sums if _net(overall) == answer), None)
    overall = balanced.equation if found else sums[0]
    if (common := _divisor(halves, overall)) > 1:
        text += f" Then divide by {common}."
    steps.append(Step(text, overall))
    if not found:
        text = "Write the substances that were given in the place of their ions, with the ions that took no part."
        steps.append(Step(text, balanced.equation))
    return steps


def _multiplied(kind: str, half: Equation, times: int, electrons: int) -> list[Step]:
    if times == 1:
        return []
    text = f"Multiply the {kind} by {times}, so that {_counted(electrons, ELECTRON)} stand in both."
    return [Step(text, half.scaled(times))]


def combination_steps(reduction: Equation, oxidation: Equation, combined: Combined) -> tuple[Step, ...]:
    """The way from two half-equations to their sum; the equation of the last step is the overall equation.

    Parameters
    ----------
    reduction, oxidation
        The half-equations.
    combined
        What they add up to.
    """
    steps = _multiplied(REDUCTION, reduction, combined.reduction_multiplier, combined.electrons)
    steps += _multiplied(OXIDATION, oxidation, combined.oxidation_multiplier, combined.electrons)
    return (*steps, Step(_ADDED, combined.overall))


def _divisor(halves: Halves, overall: Equation) -> int:
    """Say by how much the sum of the multiplied half-equations is divided to have the smallest numbers."""
    reduction, oxidation = _net(halves.reduction), _net(halves.oxidation)
    kind, number = next(
        (kind, number)
        for kind, number in _net(overall).items()
        if kind not in (WATER, HYDROGEN_ION, HYDROXIDE)
    )
    added = halves.reduction_multiplier * reduction.get(kind, 0)
    return (added + halves.oxidation_multiplier * oxidation.get(kind, 0)) // number


def _half_text(kind: str, half: Equation) -> str:
    changes = _changes(half)
    said = f": {_listed(changes)}" if changes else ""
    return f"Write the {kind} by itself{said}."


def _changes(half: Equation) -> list[str]:
    """For each element that changes: from which number to which."""
    values: dict[str, tuple[dict[str, None], dict[str, None]]] = {}
    for found in numbers_in(half):
        if found.changes and found.number.value is not None:
            sides = values.setdefault(found.number.element, ({}, {}))
            sides[found.side == "right"][signed(found.number.value)] = None
    return [
        f"{_name(element)} goes from {' and '.join(left)} to {' and '.join(right)}"
        for element, (left, right) in values.items()
        if left and right
    ]


# ------------------------------------------------------------------ words


def _name(symbol: str) -> str:
    element = ELEMENTS.get(symbol)
    return element.name if element else symbol


def _counted(number: int, kind: Species) -> str:
    return f"{'' if number == 1 else number}{species_text(kind)}"


def _listed(parts: list[str]) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
