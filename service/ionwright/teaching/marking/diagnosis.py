"""Finds what a line was meant to be, and names its faults by their root as an examiner would."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

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
    WRONG_ION_CHARGE,
    WRONG_SPECIES,
    Finding,
)
from ionwright.teaching.marking.line import AIDS, Line, is_multiple
from ionwright.teaching.marking.rewriting import split, with_known_formulas, without_hydronium

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species
    from ionwright.teaching.marking.expectation import Target

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
    line = with_known_formulas(line, expectation)
    plain = without_hydronium(line)
    if exact := _exact(plain, expectation):
        return [], exact
    apart = split(line, expectation)
    if _is_whole_equation(line, apart or line, expectation):
        return [Finding(NOT_A_HALF_EQUATION)], None
    best = _nearest(line, expectation)
    if apart is not None:
        best = _better(best, _with_compounds(line, apart, _nearest(apart, expectation)))
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


def _with_compounds(written: Line, split: Line, found: Alignment | None) -> Alignment | None:
    """The comparison of a line whose compounds were taken apart: a compound is an ion with its spectators."""
    if found is None:
        return None
    as_typed, taken_apart = _placed(written), set(_placed(split))
    side, whole = next(one for one in as_typed if one not in taken_apart)
    is_for_element = any(
        _is_hidden_ion(one, as_typed) and one.instead and not one.instead.charge for one in found.findings
    )
    has_ions_across = any(one.code == SPECTATOR_IONS and not one.side for one in found.findings)
    if is_for_element and (side == "left" or not has_ions_across):
        return None  # a compound where an element should react or form
    others = tuple(
        one
        for one in found.findings
        # The charge of an ion that stands only inside the compound is nothing that the student wrote.
        if one.code != SPECTATOR_IONS and not _is_hidden_ion(one, as_typed)
    )
    return Alignment(
        found.target, (Finding(SPECTATOR_IONS, side, whole), *others), found.weight + _BASE_WEIGHT_OF_COMPOUND
    )


def _is_hidden_ion(finding: Finding, as_typed: list[tuple[str, Species]]) -> bool:
    """Whether the charge is blamed of an ion that stands only inside a compound."""
    return finding.code == WRONG_ION_CHARGE and (finding.side, finding.about) not in as_typed


def _placed(line: Line) -> list[tuple[str, Species]]:
    """Every species of a line with the side that it stands on, from left to right."""
    return [("left", kind) for kind in line.left] + [("right", kind) for kind in line.right]


def _right_targets(expectation: Expectation) -> list[Target]:
    return [target for target in expectation.targets if target.standing is Standing.RIGHT]


# ------------------------------------------------------------------ lines that are no half-equation


def _is_whole_equation(written: Line, split: Line, expectation: Expectation) -> bool:
    if not written.electrons and written.is_balanced and written.left.keys() != written.right.keys():
        return True
    if written.has_electrons:
        return _shows_both_electrodes(written, expectation)
    if expectation.gives_both(written):
        return True
    if split is not written and _is_taken_apart(written, split):
        return True
    rest = [kind for kind in split.left if kind not in split.right and kind not in AIDS]
    wanted = max(
        len(target.left_names) for target in expectation.targets if target.standing is Standing.RIGHT
    )
    return len(rest) > wanted and any(kind not in split.left and kind not in AIDS for kind in split.right)


def _shows_both_electrodes(written: Line, expectation: Expectation) -> bool:
    """Whether what reacts and what forms at both electrodes stands in a line, each substance as it is.

    Where both electrodes start from one substance, as water, a line that shows its electrons is a half-equation
    with a product too many.
    """
    here = _reactants(expectation, Standing.RIGHT)
    there = _reactants(expectation, Standing.OTHER_ELECTRODE)
    return any(
        expectation.has_both(products)
        and any(one in reactants and other in reactants for one in here for other in there if one != other)
        for reactants, products in ((written.left, written.right), (written.right, written.left))
    )


def _reactants(expectation: Expectation, standing: Standing) -> set[Species]:
    return {kind for one in expectation.targets if one.standing is standing for kind in one.left_names}


def _is_taken_apart(written: Line, split: Line) -> bool:
    """Whether a compound changes in a line without electrons, rather than standing there unchanged."""
    if split.left.keys() == split.right.keys():
        return True  # ions join or part, nothing more
    net = {kind for kind in (*split.left, *split.right) if split.left.get(kind) != split.right.get(kind)}
    return len([kind for kind in net if kind not in AIDS]) > 2 or not any(
        kind in split.right for kind in split.left
    )


# ------------------------------------------------------------------ what the comparison comes to


def _with_standing(best: Alignment, expectation: Expectation) -> list[Finding]:
    target, findings = best.target, list(best.findings)
    standing = target.standing
    if standing is Standing.OTHER_ELECTRODE:
        # where one metal deposits and dissolves, only a line that balances shows which electrode was meant
        is_reverse = any(form.reversed() == target.equation for form in expectation.forms)
        findings.insert(0, Finding(REVERSED if is_reverse and findings else WRONG_ELECTRODE))
    elif standing is Standing.REVERSED:
        findings.insert(0, Finding(REVERSED))
    elif standing is Standing.OTHER_FORM:
        findings = [one for one in findings if one.code != WRONG_SPECIES]
        findings.insert(0, _refused_form(best, expectation))
    elif standing is not Standing.RIGHT:
        is_of_left = (expectation.electrode == "anode") != expectation.is_turned
        side = "left" if is_of_left or standing is Standing.REVERSED_ELSEWHERE else "right"
        about = next(iter(target.left_names if side == "left" else target.right_names))
        findings = [one for one in findings if one.code != WRONG_SPECIES]
        findings.insert(0, Finding(WRONG_SPECIES, side, about, reason=target.reason))
    return findings


def _refused_form(best: Alignment, expectation: Expectation) -> Finding:
    """The right product by a form that the course does not take: about the ion that tells it from the right one."""
    target = best.target
    usual = {one for form in _right_targets(expectation) for one in _placed(form.line)}
    strange = [one for one in _placed(target.line) if one not in usual]
    side, about = next((one for one in strange if one[1].charge), strange[0] if strange else ("", None))
    return Finding(WRONG_SPECIES, side, about, reason=target.reason, is_other_form=True)


def _like_nothing(line: Line, expectation: Expectation) -> list[Finding]:
    """The faults of a line that is about something else than the cell or the question."""
    findings = [_strange(line, expectation)]
    if not line.has_electrons:
        findings.append(Finding(NO_ELECTRONS))
    elif line.taken and line.released:
        findings.append(Finding(ELECTRONS_WRONG_SIDE, "left"))
    if line.unbalanced_elements:
        findings.append(Finding(ATOMS_NOT_BALANCED))
    elif line.has_electrons and line.charge_difference:
        findings.append(Finding(CHARGE_NOT_BALANCED))
    return findings


def _strange(line: Line, expectation: Expectation) -> Finding:
    """What the question has no room for; if there is nothing of the kind, what is missing.

    What names a process comes before what the medium lends; what stands in no right line before what stands on
    the other side of one; another substance before another charge; the left side before the right.
    """
    right = _right_targets(expectation)
    expected = {one for form in right for one in _placed(form.line)}
    kinds, spelt = {kind for _, kind in expected}, {(side, kind.formula) for side, kind in expected}
    foreign = [one for one in _placed(line) if one not in expected]
    for side, kind in sorted(
        foreign, key=lambda one: (one[1] in AIDS, one[1] in kinds, (one[0], one[1].formula) in spelt)
    ):
        return Finding(
            WRONG_SPECIES, side, kind, _of_same_element(kind, {k for at, k in expected if at == side})
        )
    return _missing(line, right)


def _missing(line: Line, right: list[Target]) -> Finding:
    """What the likest right line holds and this one does not."""

    def absent(target: Target) -> list[tuple[str, Species]]:
        sides = (("left", target.left_names, line.left), ("right", target.right_names, line.right))
        return [(side, kind) for side, names, there in sides for kind in names if kind not in there]

    fewest = min([absent(target) for target in right], key=len)
    side, kind = fewest[0] if fewest else ("", None)
    return Finding(WRONG_SPECIES, side, None, kind)


def _of_same_element(kind: Species, expected: set[Species]) -> Species | None:
    """The expected species that holds the one element of a strange one: Cl^- for Cl2^-, Na for Na2."""
    symbols = {symbol for symbol, _ in kind.atoms}
    return next((one for one in expected if len(symbols) == 1 and {s for s, _ in one.atoms} == symbols), None)
