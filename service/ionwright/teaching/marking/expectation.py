"""What a question expects: the lines that are right, and the wrong ones that a student may have meant."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from functools import cached_property
from typing import TYPE_CHECKING

from ionwright.errors import IonwrightError
from ionwright.teaching.marking.line import HYDROGEN_ION, HYDRONIUM, Line, line_of, naming

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.equation import Equation
    from ionwright.chemistry.species import Species
    from ionwright.curricula.marking import MarkingConventions

REDUCTION = "reduction"
OXIDATION = "oxidation"
DIRECTIONS = (REDUCTION, OXIDATION)
"""How a task may ask for a process to be written, whichever way it runs."""


class MarkingFault(IonwrightError):
    """A question against which no answer can be marked."""


class Standing(Enum):
    """How a line that a student may have meant stands to the question; the value is what it takes to assume it.

    The values are weights: a line is taken for the one that explains it with the least trouble, and each
    deviation inside a line weighs about one.
    """

    RIGHT = 0.0
    OTHER_ELECTRODE = 1.0
    REVERSED = 1.05
    OTHER_FORM = 1.1
    PASSED_OVER = 1.2
    ELSEWHERE = 1.6
    REVERSED_ELSEWHERE = 2.0


def _formulas(kinds: frozenset[Species]) -> frozenset[str]:
    """Formulas without the charge, and with its number where its sign may have been left out."""
    signless = {f"{kind.formula}{abs(kind.charge)}" for kind in kinds if abs(kind.charge) > 1}
    return frozenset({kind.formula for kind in kinds} | signless)


@dataclass(frozen=True, slots=True)
class Target:
    """One line that a student may have meant.

    Parameters
    ----------
    equation
        The line.
    standing
        How it stands to the question.
    reason
        Why it is not the answer, as a sentence; may be empty.
    line
        Its amounts.
    left_names, right_names, left_formulas, right_formulas
        What names the process on each side, with and without the charge.
    is_between_ions
        Whether one ion becomes another by its charge alone, as Fe^2+ and Fe^3+.
    """

    equation: Equation
    standing: Standing
    reason: str = ""
    line: Line = field(init=False, compare=False)
    left_names: frozenset[Species] = field(init=False, compare=False)
    right_names: frozenset[Species] = field(init=False, compare=False)
    left_formulas: frozenset[str] = field(init=False, compare=False)
    right_formulas: frozenset[str] = field(init=False, compare=False)
    is_between_ions: bool = field(init=False, compare=False)

    def __post_init__(self) -> None:
        line = line_of(self.equation)
        left, right = naming(line.left), naming(line.right)
        object.__setattr__(self, "line", line)
        object.__setattr__(self, "left_names", left)
        object.__setattr__(self, "right_names", right)
        object.__setattr__(self, "left_formulas", _formulas(left))
        object.__setattr__(self, "right_formulas", _formulas(right))
        ions = {kind.formula for kind in left if kind.charge} & {
            kind.formula for kind in right if kind.charge
        }
        object.__setattr__(self, "is_between_ions", bool(ions))


@dataclass(frozen=True, kw_only=True)
class Expectation:
    """What a question expects.

    Parameters
    ----------
    forms
        Every line that is right, the model answer first; multiples of them are right too.
    targets
        The forms, and the wrong lines that a student may have meant.
    marking
        The conventions that count.
    electrode
        ``"cathode"`` or ``"anode"``; empty if a half-equation was given.
    wants_states
        Whether state symbols count.
    present
        The ions of the electrolyte; empty if a half-equation was given.
    both_products
        What the cell gives at this electrode and at the other one; empty if not known.
    course
        Title of the curriculum.
    is_turned
        Whether the task asks for the process the other way round than it runs at the electrode.
    is_molten
        Whether the electrolyte is molten.
    """

    forms: tuple[Equation, ...]
    targets: tuple[Target, ...]
    marking: MarkingConventions
    electrode: str = ""
    wants_states: bool = False
    present: frozenset[Species] = frozenset()
    both_products: tuple[frozenset[Species], ...] = ()
    course: str = ""
    is_turned: bool = False
    is_molten: bool = False

    @property
    def model_answer(self) -> Equation:
        """The line that a teacher would show."""
        return self.forms[0]

    def gives_both(self, line: Line) -> bool:
        """Whether the products of both electrodes stand on one side of a line."""
        return self.has_both(line.left) or self.has_both(line.right)

    def has_both(self, side: Iterable[Species]) -> bool:
        """Whether the products of both electrodes, as such or as single atoms, are among these species."""
        if len(self.both_products) != 2:
            return False
        elements = {_element(kind) for kind in side} - {""}
        return all(any(_element(kind) in elements for kind in products) for products in self.both_products)

    @cached_property
    def known(self) -> frozenset[Species]:
        """Every species that an answer may be expected to hold."""
        targets = (kind for one in self.targets for side in (one.line.left, one.line.right) for kind in side)
        found = frozenset((*targets, *self.present))
        return found | {HYDRONIUM} if HYDROGEN_ION in found else found

    @cached_property
    def sides(self) -> tuple[frozenset[Species], frozenset[Species]]:
        """What stands on the left and on the right of the lines that are right."""
        right = [one.line for one in self.targets if one.standing is Standing.RIGHT]
        return (
            frozenset(kind for line in right for kind in line.left),
            frozenset(kind for line in right for kind in line.right),
        )


def _element(kind: Species) -> str:
    return kind.atoms[0][0] if len(kind.atoms) == 1 and not kind.charge else ""


def targets_of(
    forms: tuple[Equation, ...], others: tuple[tuple[Equation, Standing, str], ...] = ()
) -> tuple[Target, ...]:
    """The lines to compare with: the forms, their reverses, and what else is known to be wrong."""
    right = [Target(form, Standing.RIGHT) for form in forms]
    backwards = [Target(form.reversed(), Standing.REVERSED) for form in forms]
    return (*right, *backwards, *(Target(*other) for other in others))
