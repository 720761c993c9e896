"""Finds what a line was meant to be, and names its faults by their root as an examiner would."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.compound import read_substance
from ionwright.errors import IonwrightError
from ionwright.teaching.marking.alignment import Alignment, aligned
from ionwright.teaching.marking.expectation import Expectation, Standing
from ionwright.teaching.marking.fault_codes import (
    ATOMS_NOT_BALANCED,
    CHARGE_NOT_BALANCED,
    ELECTRONS_WRONG_SIDE,
    NO_ELECTRONS,
    NOT_A_HALF_EQUATION,
    REVERSED,
    SPECTATOR_IONS,
    WRONG_ELECTRODE,
    WRONG_SPECIES,
    Finding,
)
from ionwright.teaching.marking.line import AIDS, HYDROGEN_ION, HYDRONIUM, WATER, Amounts, Line, is_multiple

if TYPE_CHECKING:
    from ionwright.chemistry.equation import Number
    from ionwright.chemistry.species import Species

__all__ = ["Diagnosis", "diagnosed"]

_BASE_WEIGHT_OF_COMPOUND: Final = 1.5
_MOST_WEIGHT: Final = 5.0
"""A comparison that has to assume more than this explains nothing."""

Diagnosis = tuple[list[Finding], "Alignment | None"]


def diagnosed(line: Line, expectation: Expectation) -> Diagnosis:
    """What is wrong with a line, and the line that it was taken for; None if it is like none that is known.

    Parameters
    ----------
    line
        The student's line.
    expectation
        What the question expects.
    """
    if exact := _exact(line, expectation):
        return [], exact
    plain = _without_hydronium(line)
    if plain is not line and (exact := _exact(plain, expectation)):
        return [], exact
    split = _split(line, expectation)
    if _is_whole_equation(line, split or line, expectation):
        return [Finding(NOT_A_HALF_EQUATION)], None
    best = _nearest(line, expectation)
    if split is not None:
        best = _better(best, _with_compounds(line, split, _nearest(split, expectation)))
    if best is None or best.weight > _MOST_WEIGHT:
        return _like_nothing(line, expectation), None
    return _with_standing(best, expectation), best


def _exact(line: Line, expectation: Expectation) -> Alignment | None:
    for target in expectation.targets:
        if target.standing is not Standing.RIGHT:
            return None
        if is_multiple(line, target.line):
            return Alignment(target, (), 0.0)
    return None


def _nearest(line: Line, expectation: Expectation) -> Alignment | None:
    best: Alignment | None = None
    for target in expectation.targets:
        if best is None or target.standing.value < best.weight:
            best = _better(best, aligned(line, target))
    return best


def _better(one: Alignment | None, other: Alignment | None) -> Alignment | None:
    if one is None or other is None:
        return one or other
    return other if other.weight < one.weight else one


# ------------------------------------------------------------------ ways of writing that come to the same


def _without_hydronium(line: Line) -> Line:
    """The line with H^+ for H3O^+, the water that comes with it cancelled."""
    if HYDRONIUM not in line.left and HYDRONIUM not in line.right:
        return line
    left, right = _dehydrated(line.left), _dehydrated(line.right)
    both = min(left.get(WATER, 0), right.get(WATER, 0))
    return replace(line, left=_less(left, WATER, both), right=_less(right, WATER, both))


def _dehydrated(amounts: object) -> Amounts:
    found: Amounts = dict(amounts)  # type: ignore[call-overload]  # a mapping of amounts
    number = found.pop(HYDRONIUM, 0)
    if number:
        found[HYDROGEN_ION] = found.get(HYDROGEN_ION, 0) + number
        found[WATER] = found.get(WATER, 0) + number
    return found


def _less(amounts: Amounts, kind: Species, number: Number) -> Amounts:
    left_over = {**amounts, kind: amounts.get(kind, 0) - number}
    return {one: amount for one, amount in left_over.items() if amount}


def _split(line: Line, expectation: Expectation) -> Line | None:
    """The line with whole ionic compounds written as their ions; None if it holds none."""
    compounds = {
        kind: parts
        for side in (line.left, line.right)
        for kind in side
        if kind not in expectation.known and (parts := _ions_of(kind))
    }
    if not compounds:
        return None
    left, right = _apart(line.left, compounds), _apart(line.right, compounds)
    return replace(line, left=left, right=right)


Parts = tuple[tuple["Species", int], ...]


def _apart(amounts: object, compounds: dict[Species, Parts]) -> Amounts:
    found: Amounts = {}
    given: Amounts = dict(amounts)  # type: ignore[call-overload]  # a mapping of amounts
    for kind, amount in given.items():
        for part, count in compounds.get(kind, ((kind, 1),)):
            found[part] = found.get(part, 0) + amount * count
    return found


def _ions_of(kind: Species) -> Parts:
    if kind.charge or len(kind.atoms) < 2 or kind == WATER or len(kind.formula) > 40:
        return ()
    return _ions_of_compound(kind.formula)


@lru_cache(maxsize=512)
def _ions_of_compound(formula: str) -> Parts:
    try:
        compound = read_substance(formula).compound
    except IonwrightError:
        return ()
    return () if compound.role == "water" else tuple((one.species, n) for one, n in compound.lattice_ions)


def _with_compounds(written: Line, split: Line, found: Alignment | None) -> Alignment | None:
    """The comparison of a line whose compounds were taken apart: a compound is an ion with its spectators."""
    if found is None:
        return None
    side, whole = next(
        (side, kind)
        for side, amounts, apart in (
            ("left", written.left, split.left),
            ("right", written.right, split.right),
        )
        for kind in amounts
        if kind not in apart
    )
    others = tuple(one for one in found.findings if one.code != SPECTATOR_IONS)
    return Alignment(
        found.target, (Finding(SPECTATOR_IONS, side, whole), *others), found.weight + _BASE_WEIGHT_OF_COMPOUND
    )


# ------------------------------------------------------------------ lines that are no half-equation


def _is_whole_equation(written: Line, split: Line, expectation: Expectation) -> bool:
    if not written.electrons and written.is_balanced and written.left.keys() != written.right.keys():
        return True
    if len(expectation.both_products) == 2:
        # the products of both electrodes, as such or as single atoms, stand on one side
        sides = (_atoms_alone(written.left), _atoms_alone(written.right))
        if any(all(_holds(side, products) for products in expectation.both_products) for side in sides):
            return True
    if written.has_electrons:
        return False
    if split is not written and _is_taken_apart(written, split):
        return True
    rest = [kind for kind in split.left if kind not in split.right and kind not in AIDS]
    wanted = max(
        len(target.left_names) for target in expectation.targets if target.standing is Standing.RIGHT
    )
    return len(rest) > wanted and any(kind not in split.left and kind not in AIDS for kind in split.right)


def _holds(side: frozenset[str], products: frozenset[Species]) -> bool:
    return any(_element(product) in side for product in products)


def _atoms_alone(amounts: object) -> frozenset[str]:
    given: Amounts = dict(amounts)  # type: ignore[call-overload]  # a mapping of amounts
    return frozenset(_element(kind) for kind in given if not kind.charge and len(kind.atoms) == 1) - {""}


def _element(kind: Species) -> str:
    return kind.atoms[0][0] if len(kind.atoms) == 1 and not kind.charge else ""


def _is_taken_apart(written: Line, split: Line) -> bool:
    """Whether a compound changes in a line without electrons, rather than standing there unchanged."""
    net = {kind for kind in (*split.left, *split.right) if split.left.get(kind) != split.right.get(kind)}
    return len([kind for kind in net if kind not in AIDS]) > 2 or not any(
        kind in split.right for kind in split.left
    )


# ------------------------------------------------------------------ what the comparison comes to


def _with_standing(best: Alignment, expectation: Expectation) -> list[Finding]:
    target, findings = best.target, list(best.findings)
    standing = target.standing
    if standing is Standing.OTHER_ELECTRODE:
        findings.insert(0, Finding(WRONG_ELECTRODE))
        if any(form.reversed() == target.equation for form in expectation.forms):
            findings.append(Finding(REVERSED))
    elif standing is Standing.REVERSED:
        findings.insert(0, Finding(REVERSED))
    elif standing is not Standing.RIGHT:
        side = "left" if expectation.electrode == "anode" else "right"
        about = next(iter(target.left_names if side == "left" else target.right_names))
        findings = [one for one in findings if one.code != WRONG_SPECIES]
        findings.insert(0, Finding(WRONG_SPECIES, side, about, reason=target.reason))
    return findings


def _like_nothing(line: Line, expectation: Expectation) -> list[Finding]:
    """The faults of a line that is about something else than the cell or the question."""
    findings = [_strange(line, expectation)]
    if not line.has_electrons:
        findings.append(Finding(NO_ELECTRONS))
    elif line.taken and line.released:
        findings.append(Finding(ELECTRONS_WRONG_SIDE, "left"))
    if line.unbalanced_elements():
        findings.append(Finding(ATOMS_NOT_BALANCED))
    elif line.has_electrons and line.charge_difference():
        findings.append(Finding(CHARGE_NOT_BALANCED))
    return findings


def _strange(line: Line, expectation: Expectation) -> Finding:
    """What the question has no room for: first on the left, then on the right."""
    right = [target.line for target in expectation.targets if target.standing is Standing.RIGHT]
    expected = {
        "left": {k for one in right for k in one.left},
        "right": {k for one in right for k in one.right},
    }
    for side, amounts in (("left", line.left), ("right", line.right)):
        for kind in amounts:
            if kind not in expected[side] and kind not in AIDS:
                return Finding(WRONG_SPECIES, side, kind, _of_same_element(kind, expected[side]))
    side, amounts = ("left", line.left) if line.left else ("right", line.right)
    return Finding(WRONG_SPECIES, side, next(iter(amounts), None))


def _of_same_element(kind: Species, expected: set[Species]) -> Species | None:
    """The expected species that holds the one element of a strange one: Cl^- for Cl2^-, Na for Na2."""
    symbols = {symbol for symbol, _ in kind.atoms}
    return next((one for one in expected if len(symbols) == 1 and {s for s, _ in one.atoms} == symbols), None)
