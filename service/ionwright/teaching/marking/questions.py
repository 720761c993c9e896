"""From a question to its expectation: given half-equations, or an electrode of a cell under a curriculum."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from ionwright.chemistry.cell import Cell, CellDescription, make_cell
from ionwright.chemistry.equation import Equation, Term, read_equation
from ionwright.chemistry.medium import with_states
from ionwright.chemistry.species import ELECTRON, Species, species
from ionwright.curricula.verdict import Verdict, judge
from ionwright.curricula.wording import ions, sentence_start
from ionwright.errors import IonwrightError
from ionwright.teaching.marking.expectation import (
    OXIDATION,
    REDUCTION,
    Expectation,
    MarkingFault,
    Standing,
    targets_of,
)

if TYPE_CHECKING:
    from ionwright.chemistry.process import ElectrodeProcess
    from ionwright.curricula.model import Curriculum

OTHER = {"cathode": "anode", "anode": "cathode"}
Wrong = tuple[Equation, Standing, str]


class _Question:
    """A question as the key of a cache; curricula compare by identity, since one object is one curriculum."""

    __slots__ = ("_key", "curriculum", "parts")

    def __init__(self, curriculum: Curriculum, *parts: object) -> None:
        self.curriculum = curriculum
        self.parts = parts
        self._key = hash((id(curriculum), parts))

    def __hash__(self) -> int:
        return self._key

    def __eq__(self, other: object) -> bool:
        return (
            isinstance(other, _Question) and self.curriculum is other.curriculum and self.parts == other.parts
        )


# ------------------------------------------------------------------ given half-equations


def given_expectation(
    texts: tuple[str, ...], curriculum: Curriculum, *, states_asked: bool = False
) -> Expectation:
    """What is expected where the question gives the half-equations that are right.

    Parameters
    ----------
    texts
        One or several half-equations, the model answer first.
    curriculum
        Whose marking conventions count.
    states_asked
        Whether the task asks for state symbols.

    Raises
    ------
    IonwrightError
        If a text cannot be read, does not balance or holds no electrons; ``where`` is ``expected/0`` and so on.
    """
    return _given(_Question(curriculum, texts, states_asked))


@lru_cache(maxsize=1024)
def _given(question: _Question) -> Expectation:
    texts: tuple[str, ...] = question.parts[0]  # type: ignore[assignment]  # as given_expectation puts them
    curriculum, states_asked = question.curriculum, bool(question.parts[1])
    if not texts:
        raise MarkingFault("expectation-missing", "No half-equation is expected.", where="expected")
    forms = tuple(_given_form(text, f"expected/{index}") for index, text in enumerate(texts))
    return Expectation(
        forms=forms,
        targets=targets_of(forms),
        marking=curriculum.marking,
        wants_states=curriculum.marking.wants_states(asked=states_asked),
        course=curriculum.title,
    )


def _given_form(text: str, where: str) -> Equation:
    try:
        form = read_equation(text)
    except IonwrightError as fault:
        raise fault.within(where) from None
    if not form.is_balanced:
        raise MarkingFault(
            "expectation-unbalanced",
            f"{form.ascii} does not balance, so no answer can be marked against it.",
            where=where,
            remedy="Make atoms and charge agree on both sides.",
        )
    if not form.electrons:
        raise MarkingFault(
            "expectation-without-electrons",
            f"{form.ascii} holds no electrons, so it is no half-equation.",
            where=where,
            remedy="Write the half-equation of one electrode, such as Ni^2+ + 2e- -> Ni.",
        )
    return form


# ------------------------------------------------------------------ an electrode of a cell


def electrode_expectation(
    cell: CellDescription,
    electrode: str,
    curriculum: Curriculum,
    *,
    written_as: str = "",
    states_asked: bool = False,
) -> Expectation:
    """What is expected at one electrode of a cell; kept per question, so that a class set costs one judgement.

    Parameters
    ----------
    cell
        The cell, in words.
    electrode
        ``"cathode"`` or ``"anode"``.
    curriculum
        Whose rules and marking conventions count.
    written_as
        ``"reduction"`` or ``"oxidation"`` if the task asks for one whichever way the process runs; else empty.
    states_asked
        Whether the task asks for state symbols.

    Raises
    ------
    IonwrightError
        If the cell would not work, or the course cannot decide what happens at the electrode.
    """
    return _at_electrode(_Question(curriculum, cell, electrode, written_as, states_asked))


@lru_cache(maxsize=1024)
def _at_electrode(question: _Question) -> Expectation:
    description, electrode, written_as, states_asked = question.parts
    curriculum = question.curriculum
    cell = make_cell(description)  # type: ignore[arg-type]  # as electrode_expectation puts them
    here = judge(cell, str(electrode), curriculum)
    there = judge(cell, OTHER[str(electrode)], curriculum)
    if here.chosen is None:
        raise MarkingFault(
            "expectation-undecided",
            f"{' '.join(here.because)} So no answer for the {electrode} can be marked.",
            where="electrode",
            remedy="Choose another curriculum, or give the half-equation that you expect.",
        )
    backwards = _is_backwards(here.chosen.forms[0][1], str(written_as))
    lines = _Lines(cell, curriculum, backwards=backwards)
    forms = lines.accepted(here)
    products = (frozenset(here.chosen.products), frozenset(there.chosen.products if there.chosen else ()))
    return Expectation(
        forms=forms,
        targets=targets_of(forms, tuple(lines.wrong(here, there, forms))),
        marking=curriculum.marking,
        electrode=str(electrode),
        wants_states=curriculum.marking.wants_states(asked=bool(states_asked)),
        present=frozenset(present.ion.species for present in cell.electrolyte.ions),
        both_products=products if all(products) and not products[0] & products[1] else (),
        course=curriculum.title,
        is_turned=backwards,
        is_molten=cell.is_molten,
    )


def _is_backwards(half: Equation, written_as: str) -> bool:
    """Whether the task asks for the process the other way round than it runs."""
    return written_as == (OXIDATION if half.electrons > 0 else REDUCTION)


def _accepted(verdict: Verdict) -> list[ElectrodeProcess]:
    """The processes that count as right: the chosen one, and its rivals where the choice itself is contested.

    Where it is not, what a course says of another answer is a remark on it and earns nothing.
    """
    rivals = [remark.process for remark in verdict.also_accepted] if verdict.is_contested else []
    return [process for process in (verdict.chosen, *rivals) if process]


class _Lines:
    """The half-equations of one cell as a curriculum writes them, turned round if the task asks for it."""

    __slots__ = ("_backwards", "_cell", "_conventions")

    def __init__(self, cell: Cell, curriculum: Curriculum, *, backwards: bool) -> None:
        self._cell = cell
        self._conventions = curriculum.conventions
        self._backwards = backwards

    def accepted(self, verdict: Verdict) -> tuple[Equation, ...]:
        """Every line that the curriculum takes at an electrode, the preferred one first."""
        return tuple(dict.fromkeys(form for p in _accepted(verdict) for form in self._taken(p)))

    def wrong(self, here: Verdict, there: Verdict, right: tuple[Equation, ...]) -> list[Wrong]:
        """The lines that a student may write instead, each with how it stands to the question."""
        found: list[Wrong] = []
        for process in _accepted(here):
            found += [
                (form, Standing.OTHER_FORM, self._form_reason())
                for form in self._every(process)
                if form not in right
            ]
        for process in _accepted(there):
            for _, form in process.forms:
                found.append((form, Standing.OTHER_ELECTRODE, ""))
                found.append((form.reversed(), Standing.REVERSED_ELSEWHERE, ""))
        for verdict, standing in ((here, Standing.PASSED_OVER), (there, Standing.ELSEWHERE)):
            found += self._not_chosen(verdict, standing, right)
        return found

    def _not_chosen(self, verdict: Verdict, standing: Standing, right: tuple[Equation, ...]) -> list[Wrong]:
        found: list[Wrong] = []
        for remark in verdict.passed_over:
            forms = [form for form in self._every(remark.process) if form not in right]
            reason = remark.because if standing is Standing.PASSED_OVER else ""
            found += [(form, standing, reason) for form in forms]
            found += [(form.reversed(), Standing.REVERSED_ELSEWHERE, "") for form in forms]
        idle = self._idle_metals(verdict)
        return found + [(self._turned(half), standing, reason) for half, reason in idle]

    def _idle_metals(self, verdict: Verdict) -> list[tuple[Equation, str]]:
        """Deposits of metals whose ions are there and of which the course does not speak."""
        side = verdict.competition.electrode
        if side != "cathode":
            return []
        return [
            (_deposit(kind), f"{sentence_start(ions(kind))} move to the {side} and are not discharged there.")
            for kind in verdict.spectators
            if kind.charge > 0 and len(kind.atoms) == 1
        ]

    def _form_reason(self) -> str:
        kind = {"acidic": "hydroxide ions", "alkaline": "hydrogen ions"}.get(self._cell.medium)
        solution = f"an {self._cell.medium} solution"
        return (
            f"In {solution} there are hardly any {kind}, so they are not what reacts or forms."
            if kind
            else ""
        )

    def _taken(self, process: ElectrodeProcess) -> list[Equation]:
        medium = self._cell.medium
        forms = [
            self._conventions.written(process, medium),
            *self._conventions.also_written(process, medium),
        ]
        return [self._turned(form) for form in forms]

    def _every(self, process: ElectrodeProcess) -> list[Equation]:
        return [self._turned(form) for _, form in process.forms]

    def _turned(self, form: Equation) -> Equation:
        return form.reversed() if self._backwards else form


def _deposit(kind: Species) -> Equation:
    (symbol, count), *_ = kind.atoms
    return with_states(
        Equation((Term(kind), Term(ELECTRON, kind.charge)), (Term(species(symbol), count),)),
    )
