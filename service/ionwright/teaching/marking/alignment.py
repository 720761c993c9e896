"""Lays a student's line beside one that may have been meant, and finds what differs, by its root."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.ion import IONS
from ionwright.teaching.marking.expectation import Standing
from ionwright.teaching.marking.fault_codes import (
    ATOMS_NOT_BALANCED,
    ELECTRONS_WRONG_SIDE,
    MONATOMIC_GAS,
    NO_ELECTRONS,
    SPECTATOR_IONS,
    WRONG_ELECTRON_COUNT,
    WRONG_ION_CHARGE,
    WRONG_SPECIES,
    Finding,
)
from ionwright.teaching.marking.line import AIDS, DIATOMIC, Amounts, Line

if TYPE_CHECKING:
    from ionwright.chemistry.equation import Number
    from ionwright.chemistry.species import Species
    from ionwright.teaching.marking.expectation import Target

__all__ = ["Alignment", "aligned"]

_WEIGHTS: Final = {
    MONATOMIC_GAS: 1.0,
    WRONG_ION_CHARGE: 1.5,
    SPECTATOR_IONS: 1.5,
    WRONG_SPECIES: 3.0,
    ATOMS_NOT_BALANCED: 1.0,
    WRONG_ELECTRON_COUNT: 1.0,
    NO_ELECTRONS: 1.0,
    ELECTRONS_WRONG_SIDE: 1.0,
}


@dataclass(frozen=True, slots=True)
class Alignment:
    """What differs between a line and the one beside which it was laid.

    Parameters
    ----------
    target
        The line that was compared with.
    findings
        What differs; empty if the line is a multiple of the target.
    weight
        How much has to be assumed to take the one for the other.
    """

    target: Target
    findings: tuple[Finding, ...]
    weight: float


@dataclass(slots=True)
class _Work:
    """The two sides while what differs is taken out of them, and what was found so far."""

    written: Line
    target: Target
    left: Amounts
    right: Amounts
    findings: list[Finding]
    halved: list[Species]

    def sides(self) -> tuple[tuple[str, Amounts, Amounts], ...]:
        """For each side its name, what stands there, and what should."""
        return (
            ("left", self.left, dict(self.target.line.left)),
            ("right", self.right, dict(self.target.line.right)),
        )


def aligned(written: Line, target: Target) -> Alignment | None:
    """Compare a line with a target; None if they are about different things.

    Parameters
    ----------
    written
        The student's line.
    target
        What it may have been meant to be.
    """
    if target.left_formulas.isdisjoint(written.left_formulas) or target.right_formulas.isdisjoint(
        written.right_formulas
    ):
        return None
    work = _Work(written, target, dict(written.left), dict(written.right), [], [])
    for side, mine, theirs in work.sides():
        _take_variants(work, side, mine, theirs)
    if target.standing is not Standing.RIGHT and len(work.findings) > 1:
        return None  # to put so much right in a line that is wrong anyway explains nothing
    _take_spectators(work)
    if target.left_names.isdisjoint(work.left) or target.right_names.isdisjoint(work.right):
        return None
    _take_lone_spectators(work)
    is_same_matter = _note_other_species(work)
    _note_numbers(work, is_same_matter=is_same_matter)
    if target.standing is Standing.REVERSED and _turns_other_ions(work):
        return None
    weight = target.standing.value + sum(_WEIGHTS[finding.code] for finding in work.findings)
    return Alignment(target, tuple(work.findings), weight)


def _turns_other_ions(work: _Work) -> bool:
    """Whether a line differs from a reverse in an ion and in the side of its electrons: then it is no reverse."""
    codes = {finding.code for finding in work.findings}
    return {WRONG_ION_CHARGE, ELECTRONS_WRONG_SIDE} <= codes and _is_consistent(work.written)


# ------------------------------------------------------------------ species


def _take_variants(work: _Work, side: str, mine: Amounts, theirs: Amounts) -> None:
    """Put right what is the right species but for its charge, or but for being a single atom."""
    for wanted in theirs:
        if wanted in mine:
            continue
        for other in list(mine):
            if other in theirs:
                continue
            if other.formula == wanted.formula or _is_signless(other, wanted):
                found = _charge_finding(work, side, other, wanted)
                if found.code != WRONG_SPECIES or not any(f.code == WRONG_SPECIES for f in work.findings):
                    work.findings.append(found)
            elif not other.charge and other.formula in DIATOMIC and wanted.formula == f"{other.formula}2":
                work.findings.append(Finding(MONATOMIC_GAS, side, other, wanted))
                work.halved.append(wanted)
            else:
                continue
            mine[wanted] = mine.pop(other)
            break


def _is_signless(other: Species, wanted: Species) -> bool:
    """Whether the number of a charge was written and its sign left out: Cu2 for Cu^2+."""
    number = abs(wanted.charge)
    return number > 1 and not other.charge and other.formula == f"{wanted.formula}{number}"


def _charge_finding(work: _Work, side: str, other: Species, wanted: Species) -> Finding:
    """A wrong charge; or another species, if a consistent line gives metal for ions or ions for metal.

    Where the question is about two ions of one element, every charge of it that there is makes another change.
    """
    exists = not other.charge or other in IONS
    if exists and work.target.is_between_ions and (_is_another_change(work.written) or not other.charge):
        return Finding(WRONG_SPECIES, side, other, wanted)
    is_other_kind = bool(other.charge) != bool(wanted.charge)
    if side == "right" and exists and is_other_kind and _is_consistent(work.written):
        return Finding(WRONG_SPECIES, side, other, wanted)
    return Finding(WRONG_ION_CHARGE, side, other, wanted)


def _is_another_change(line: Line) -> bool:
    """Whether a line balances and holds no ion that does not exist."""
    return _is_consistent(line) and all(
        not kind.charge or kind in IONS for side in (line.left, line.right) for kind in side
    )


def _is_consistent(line: Line) -> bool:
    return bool(line.electrons) and line.is_balanced


def _take_spectators(work: _Work) -> None:
    """Cancel what stands on both sides and, in the target, on one side at most."""
    left, right = work.target.line.left, work.target.line.right
    for kind in [kind for kind in work.left if kind in work.right]:
        both = min(work.left[kind], work.right[kind])
        if kind in left and kind in right:
            continue
        if (kind in left and work.left[kind] == both) or (kind in right and work.right[kind] == both):
            continue  # cancelling would leave nothing where it belongs: that is another fault
        for amounts in (work.left, work.right):
            amounts[kind] -= both
            if not amounts[kind]:
                del amounts[kind]
        work.findings.append(Finding(SPECTATOR_IONS, "", kind))


def _take_lone_spectators(work: _Work) -> None:
    """Take out ions that stand on one side only and have nothing to do with the process.

    Where something is missing beside them they stand in its place, which is another fault.
    """
    for side, mine, theirs in work.sides():
        if any(kind not in mine for kind in theirs):
            continue
        for kind in list(mine):
            if kind.charge and kind not in theirs and kind not in AIDS:
                if (names := work.target.left_names | work.target.right_names) and _shares(kind, names):
                    continue
                del mine[kind]
                work.findings.append(Finding(SPECTATOR_IONS, side, kind))


def _shares(kind: Species, names: frozenset[Species]) -> bool:
    """Whether an ion holds an element of the process other than oxygen and hydrogen, or nothing but these."""
    elements = {symbol for name in names for symbol, _ in name.atoms} - {"O", "H"}
    own = {symbol for symbol, _ in kind.atoms}
    return own <= {"O", "H"} or not own.isdisjoint(elements)


def _note_other_species(work: _Work) -> bool:
    """Note what is missing or too much; returns whether the two lines are about the same matter."""
    missing = [(side, kind) for side, mine, theirs in work.sides() for kind in theirs if kind not in mine]
    extra = [(side, kind) for side, mine, theirs in work.sides() for kind in mine if kind not in theirs]
    if not missing and not extra:
        return True
    if all(kind in AIDS for _, kind in extra) and work.written.unbalanced_elements:
        side, kind = (missing or extra)[0]
        finding = Finding(ATOMS_NOT_BALANCED, side, instead=kind) if missing else None
        work.findings.append(finding or Finding(ATOMS_NOT_BALANCED, side, kind))
        return True
    side, kind = (extra or missing)[0]
    work.findings.append(
        Finding(WRONG_SPECIES, side, kind) if extra else Finding(WRONG_SPECIES, side, instead=kind)
    )
    return False


# ------------------------------------------------------------------ numbers


def _note_numbers(work: _Work, *, is_same_matter: bool) -> None:
    written, wanted = work.written, work.target.line.electrons
    if not written.has_electrons:
        work.findings.append(Finding(NO_ELECTRONS))
    elif (written.electrons > 0) != (wanted > 0) or _is_split_in_vain(work):
        work.findings.append(
            Finding(ELECTRONS_WRONG_SIDE, "left" if written.taken and wanted < 0 else "right")
        )
    excused = {MONATOMIC_GAS, WRONG_ION_CHARGE, WRONG_SPECIES, SPECTATOR_IONS}
    is_consequence = _is_consistent(written) and any(f.code in excused for f in work.findings)
    if is_same_matter and not is_consequence:
        _note_edits(work)


def _is_split_in_vain(work: _Work) -> bool:
    """Whether electrons stand on both sides although, taken together, their number is right."""
    written = work.written
    if not (written.taken and written.released):
        return False
    return not written.unbalanced_elements and not written.charge_difference


def _note_edits(work: _Work) -> None:
    """Note the fewest numbers that have to change, among all multiples of the target."""
    tries = [_fewest_edits(work, [])]
    if work.halved:
        tries.append(_fewest_edits(work, work.halved))
    species_edits, electrons_differ = min(tries, key=lambda edits: len(edits[0]) + edits[1])
    has_atoms = any(finding.code == ATOMS_NOT_BALANCED for finding in work.findings)
    if species_edits and not has_atoms:
        side, kind = species_edits[0]
        work.findings.append(Finding(ATOMS_NOT_BALANCED, side, kind))
    if electrons_differ and not (has_atoms and not species_edits):
        work.findings.append(Finding(WRONG_ELECTRON_COUNT))  # which explains why the charge does not balance


Edits = tuple[list[tuple[str, "Species"]], bool]


def _fewest_edits(work: _Work, halved: list[Species]) -> Edits:
    """The species whose numbers differ from the nearest multiple, and whether the electrons do."""
    pairs: list[tuple[str, Species, Number, Number]] = []
    for side, mine, theirs in work.sides():
        for kind, number in theirs.items():
            if kind in mine:
                # single atoms counted as such: 2Cl for Cl2 has the atoms that it needs
                amount: Number = Fraction(mine[kind]) / 2 if kind in halved else mine[kind]
                pairs.append((side, kind, amount, number))
    electrons, wanted = _size(work.written.electrons), _size(work.target.line.electrons)
    scales: list[tuple[Number, Number]] = [(1, 1), *((pair[2], pair[3]) for pair in pairs)]
    if electrons:
        scales.append((electrons, wanted))
    best: Edits = [], False
    fewest = len(pairs) + 2
    for times, over in scales:
        edits = [(side, kind) for side, kind, amount, number in pairs if amount * over != number * times]
        differs = bool(electrons) and electrons * over != wanted * times
        if len(edits) + differs < fewest:
            fewest, best = len(edits) + differs, (edits, differs)
    return best


def _size(number: Number) -> Number:
    return number if number > 0 else -number
