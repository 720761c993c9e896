"""What a student is told: one sentence that helps without giving the answer away, and one that gives it away."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.notation import species_text
from ionwright.chemistry.typesetting import as_text
from ionwright.curricula.wording import ions, product, sentence_start
from ionwright.teaching.marking.expectation import OXIDATION, REDUCTION
from ionwright.teaching.marking.fault_codes import (
    ARROW,
    ATOMS_NOT_BALANCED,
    CHARGE_NOT_BALANCED,
    ELECTRON_SIGN,
    ELECTRONS_WRONG_SIDE,
    MONATOMIC_GAS,
    NO_ELECTRONS,
    NOT_A_HALF_EQUATION,
    NOT_LOWEST_TERMS,
    REVERSED,
    SPECTATOR_IONS,
    STATE_SYMBOLS,
    WRONG_ELECTRODE,
    WRONG_ELECTRON_COUNT,
    WRONG_ION_CHARGE,
    WRONG_SPECIES,
    Finding,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.chemistry.equation import Equation, Number
    from ionwright.chemistry.species import Species
    from ionwright.teaching.marking.expectation import Expectation
    from ionwright.teaching.marking.line import Line

__all__ = ["Told", "told"]

Words = tuple[str, str]
_OTHER: Final = {"cathode": "anode", "anode": "cathode"}


@dataclass(frozen=True, slots=True)
class Told:
    """What is said of a line: by whom it is read, what it says, and what was right.

    Parameters
    ----------
    line
        What the student wrote.
    expectation
        What the question expects.
    nearest
        The right line that comes nearest to it.
    """

    line: Line
    expectation: Expectation
    nearest: Equation

    @property
    def right_line(self) -> str:
        """The right line as text, with state symbols only where they are wanted."""
        return _right_text(self.nearest, with_states=self.expectation.wants_states)

    @property
    def change(self) -> str:
        """What the task asks for: ``"reduction"`` or ``"oxidation"``."""
        return REDUCTION if self.nearest.electrons > 0 else OXIDATION

    @property
    def place(self) -> str:
        """Where it happens: ``"at the cathode"``; empty where no electrode is named."""
        return f"at the {self.expectation.electrode}" if self.expectation.electrode else ""


@lru_cache(maxsize=1024)
def _right_text(line: Equation, *, with_states: bool) -> str:
    return f"{as_text(line if with_states else line.without_states())}."


def told(finding: Finding, context: Told) -> Words:
    """What a student is told of one fault: the sentence that helps, and the one that gives the answer away."""
    helps, reveals = _WORDS[finding.code](finding, context)
    return " ".join(helps.split()), " ".join(reveals.split())


# ------------------------------------------------------------------ about the line as a whole


def _not_a_half_equation(_: Finding, context: Told) -> Words:
    place = f"what happens {context.place}" if context.place else "one electrode"
    helps = (
        f"This is an equation for a whole reaction. A half-equation shows {place} only, with its electrons."
    )
    return helps, f"The half-equation is {context.right_line}"


def _wrong_electrode(_: Finding, context: Told) -> Words:
    electrode = context.expectation.electrode
    other = _OTHER.get(electrode, "other electrode")
    helps = (
        f"This belongs to the other electrode. Which ions move to the {electrode}, and are electrons gained "
        "or lost there?"
    )
    if context.expectation.is_turned:
        helps = f"This belongs to the other electrode. Which ions move to the {electrode}?"
        return helps, f"Your line is for the {other}. {_turned(context)}"
    return helps, f"Your line is for the {other}. At the {electrode}: {context.right_line}"


def _reversed(_: Finding, context: Told) -> Words:
    if context.expectation.is_turned:
        return f"The change is right, but {_asked_for(context)}", _turned(context)
    which = f"{sentence_start(context.place)}, are" if context.place else "Are"
    helps = f"Your line runs backwards. {which} electrons gained or lost? Turn it round to show that."
    return helps, f"{_gained_or_lost(context)} {context.right_line}"


def _asked_for(context: Told) -> str:
    article = "an" if context.change == OXIDATION else "a"
    return (
        f"the task asks for it as {article} {context.change}. On which side do the electrons stand in {article} "
        f"{context.change}?"
    )


def _turned(context: Told) -> str:
    article = "an" if context.change == OXIDATION else "a"
    electrode = context.expectation.electrode
    return f"For the {electrode}, written as {article} {context.change}: {context.right_line}"


def _no_electrons(_: Finding, context: Told) -> Words:
    helps = (
        "A half-equation shows its electrons. Compare the total charge of the two sides: how many electrons make "
        "them equal, and on which side?"
    )
    return helps, f"{_needed(context)} {context.right_line}"


def _electrons_wrong_side(finding: Finding, context: Told) -> Words:
    if finding.at is not None and finding.side == "right":
        helps = (
            "Electrons are not taken away on the right of the arrow. Add them on the side where they belong."
        )
    elif finding.at is not None:
        helps = "In this course electrons are not taken away on the left. Write them with a plus on the other side."
    elif context.expectation.is_turned:
        return sentence_start(_asked_for(context)), _turned(context)
    else:
        which = f"{sentence_start(context.place)}, are" if context.place else "Are"
        helps = f"{which} electrons gained or lost? Check on which side of the arrow that puts them."
    return helps, f"{_gained_or_lost(context)} {context.right_line}"


def _gained_or_lost(context: Told) -> str:
    if context.nearest.electrons > 0:
        return "Electrons are gained, so they stand on the left:"
    return "Electrons are lost, so they stand on the right:"


def _needed(context: Told) -> str:
    number = abs(context.nearest.electrons)
    side = "left" if context.nearest.electrons > 0 else "right"
    return f"{number} electron{'' if number == 1 else 's'} must stand on the {side}:"


def _electron_sign(_: Finding, context: Told) -> Words:
    helps = "An electron carries a negative charge: look at the sign that you gave it."
    return helps, f"Write e⁻: {context.right_line}"


def _wrong_electron_count(_: Finding, context: Told) -> Words:
    helps = (
        "The number of electrons is not right yet. Add up the charge on each side; the electrons have to make the "
        "two equal."
    )
    return helps, f"{_needed(context)} {context.right_line}"


def _charge_not_balanced(_: Finding, context: Told) -> Words:
    left, right = _charges(context.line)
    helps = f"The total charge is {_signed(left)} on the left and {_signed(right)} on the right. They have to agree."
    return helps, context.right_line


def _charges(line: Line) -> tuple[Number, Number]:
    left = sum(kind.charge * number for kind, number in line.left.items()) - line.taken
    return left, left - line.charge_difference


def _signed(charge: Number) -> str:
    return "0" if not charge else f"{abs(charge)}{'+' if charge > 0 else '−'}"


def _atoms_not_balanced(finding: Finding, context: Told) -> Words:
    symbols = context.line.unbalanced_elements
    if not symbols and finding.instead is not None:
        return "Something is missing in your line.", f"{species_text(finding.instead)}: {context.right_line}"
    names = " and of ".join(ELEMENTS[symbol].name for symbol in symbols[:3]) or "each element"
    helps = f"Count the atoms of {names} on both sides: they are not equal."
    missing = f"{species_text(finding.instead)} is missing." if finding.instead else ""
    return helps, f"{missing} {context.right_line}"


def _not_lowest_terms(finding: Finding, context: Told) -> Words:
    if finding.is_remark:
        helps = "This is right. It is usually written with the smallest whole numbers."
    else:
        helps = "The chemistry is right, but this course wants the smallest whole numbers."
    return helps, context.right_line


def _arrow(_: Finding, context: Told) -> Words:
    return "This course writes a single arrow, →, between the two sides.", context.right_line


# ------------------------------------------------------------------ about a species


def _monatomic_gas(finding: Finding, context: Told) -> Words:
    name = ELEMENTS[finding.about.formula].name if finding.about else "this element"
    helps = f"{sentence_start(name)} does not come as single atoms. How is a molecule of it written?"
    molecule = species_text(finding.instead) if finding.instead else ""
    return helps, f"A molecule of {name} is {molecule}: {context.right_line}"


def _wrong_ion_charge(finding: Finding, context: Told) -> Words:
    written = species_text(finding.about) if finding.about else "this ion"
    if finding.instead is not None and not finding.instead.charge:
        helps = f"{written} carries a charge in your line. Does it, once it has formed?"
    else:
        helps = f"Check the charge of {written}: is this the ion that is here?"
    right = species_text(finding.instead) if finding.instead else ""
    return helps, f"It is {right}, not {written}: {context.right_line}"


def _spectator_ions(finding: Finding, context: Told) -> Words:
    kind = finding.about
    written = species_text(kind) if kind else "what stands on both sides"
    if kind is not None and not kind.charge and len(kind.atoms) > 1:
        helps = (
            f"{written} is a whole substance, and only one of its ions takes part. A half-equation leaves out the "
            "ions that stay as they are."
        )
    else:
        helps = "Something in your line takes no part in the change. Leave out what stays as it is."
    return helps, f"{written} does not belong there as it stands: {context.right_line}"


def _wrong_species(finding: Finding, context: Told) -> Words:
    if finding.is_other_form:
        return _other_form(finding, context)
    if finding.about is None:
        return _missing(finding, context)
    return _strange(finding.about, finding, context)


def _strange(kind: Species, finding: Finding, context: Told) -> Words:
    if finding.instead is not None and context.line.electrons and context.line.is_balanced:
        return _other_change(kind, finding.instead, finding, context)
    if finding.instead is not None:
        written = species_text(kind)
        subject = "What reacts" if finding.side == "left" else "What forms"
        helps = f"{subject} is not written {written}. Look at its formula and its charge again."
        return helps, f"It is {species_text(finding.instead)}, not {written}: {context.right_line}"
    if _is_absent(kind, finding, context):
        helps = f"There {_is_or_are(kind)} no {_called(kind)} at this electrode. What is there?"
        return helps, f"The right line is {context.right_line}"
    if not finding.reason:
        helps = f"{sentence_start(_called(kind))} {_is_or_are(kind)} not what belongs here. {_look_again(context)}"
        return helps, f"The right line is {context.right_line}"
    denied = _denied(kind, context)
    if _gives_away(finding.reason, context):
        return f"{denied}, because {_veiled(context)} What is it?", f"{finding.reason} {context.right_line}"
    return f"{denied}. {finding.reason}", f"{finding.reason} {context.right_line}"


def _other_change(kind: Species, instead: Species, finding: Finding, context: Told) -> Words:
    """A line that is right in itself, about another change than the one that was asked for."""
    shown = f"It is {species_text(instead)}, not {species_text(kind)}: {context.right_line}"
    if context.expectation.electrode == "cathode" and finding.side == "right" and not instead.charge:
        written = species_text(kind)
        return (
            f"Your line balances, but it stops at {written}. Which substance collects on the cathode?",
            shown,
        )
    asks = "does the question start from" if finding.side == "left" else "is asked for on the right"
    return f"Your line is a correct half-equation, but for another change. Which particle {asks}?", shown


def _missing(finding: Finding, context: Told) -> Words:
    """A line in which nothing is strange, but from which something is left out."""
    missing, side = finding.instead, finding.side
    if missing is None or not side:
        return "Something that takes part is missing in your line.", context.right_line
    other = _ACROSS[side]
    there = {symbol for kind in getattr(context.line, other) for symbol, _ in kind.atoms}
    symbols = [symbol for symbol, _ in missing.atoms if symbol in there]
    symbol = next((one for one in symbols if one not in ("O", "H")), next(iter(symbols), ""))
    shown = f"{species_text(missing)} is missing on the {side}: {context.right_line}"
    if not symbol:
        return f"Something that takes part is missing on the {side} of your line.", shown
    question = "what becomes of it?" if side == "right" else "where does it come from?"
    helps = (
        f"What stands on the {other} is right so far. {sentence_start(ELEMENTS[symbol].name)} is there, but not on "
        f"the {side}: {question}"
    )
    return helps, shown


def _other_form(finding: Finding, context: Told) -> Words:
    """The right process by a form that does not suit the solution, or that the course does not take."""
    electrode = context.expectation.electrode
    asks = _FORM_REFUSED.get((electrode, finding.about.ascii if finding.about and finding.reason else ""))
    shown = f"{finding.reason} {context.right_line}"
    if asks is None:
        helps = "The change is right, but your course writes it from other particles here. Which are they?"
        return helps, shown
    return f"{'Oxygen' if electrode == 'anode' else 'The product'} is right. But {asks}", shown


_ACROSS: Final = {"left": "right", "right": "left"}
_FORM_REFUSED: Final = {
    ("cathode", "H^+"): (
        "this solution is alkaline and holds hardly any hydrogen ions. Which particle, plentiful here, gives the "
        "hydrogen?"
    ),
    ("cathode", "OH^-"): (
        "hydroxide ions do not build up in an acid. Which ion, plentiful in an acid, gives the hydrogen?"
    ),
    ("anode", "H^+"): (
        "hydrogen ions cannot be left over in an alkaline solution. Which ion gives up the electrons?"
    ),
    ("anode", "OH^-"): (
        "an acid holds hardly any hydroxide ions. Which particle, plentiful here, gives up the electrons?"
    ),
}
"""What to ask where a form holds an ion of which the solution has hardly any."""


def _denied(kind: Species, context: Told) -> str:
    if (context.expectation.electrode == "anode") != context.expectation.is_turned:
        return f"{sentence_start(_called(kind))} {_is_or_are(kind)} not what reacts here"
    if kind.formula == "H2":  # some of it often does
        return "Hydrogen is not what forms here"
    return f"{sentence_start(_called(kind))} cannot form here"


def _veiled(context: Told) -> str:
    if context.expectation.electrode == "cathode":
        return "something else at the cathode takes up electrons in preference."
    return "something else at the anode gives up electrons in preference."


def _gives_away(reason: str, context: Told) -> bool:
    """Whether a sentence names what reacts or forms in the right line."""
    kinds = (*context.nearest.reactants, *context.nearest.products)
    words = reason.lower()
    stems = {
        _called(kind).removesuffix(" ions").partition("(")[0].lower()
        for kind in kinds
        if kind.formula != "H2O"
    }
    return any(stem and stem in words for stem in stems)


def _is_absent(kind: Species, finding: Finding, context: Told) -> bool:
    known = context.expectation.known
    return (
        finding.side == "left"
        and not finding.reason
        and bool(context.expectation.electrode)
        and kind not in known
    )


def _called(kind: Species) -> str:
    """A species in a sentence: by its name where the tables have one, else by its formula."""
    if kind.charge:
        return ions(kind) if kind in IONS else species_text(kind)
    if len(kind.atoms) == 1 and kind.atoms[0][1] == 1:
        return ELEMENTS[kind.formula].name if kind.formula in ELEMENTS else species_text(kind)
    return product(kind)


def _is_or_are(kind: Species) -> str:
    return "are" if kind.charge and kind in IONS else "is"


def _look_again(context: Told) -> str:
    if context.expectation.electrode:
        return f"Think again about what is there, and what your course says happens {context.place}."
    return "Read again which change was asked for."


def _state_symbols(finding: Finding, context: Told) -> Words:
    written = species_text(finding.about) if finding.about else "each substance"
    helps = f"State symbols are wanted here, and the one of {written} is missing or not right."
    return helps, f"{written}({finding.reason}): {context.right_line}"


_WORDS: Final[dict[str, Callable[[Finding, Told], Words]]] = {
    NOT_A_HALF_EQUATION: _not_a_half_equation,
    WRONG_ELECTRODE: _wrong_electrode,
    REVERSED: _reversed,
    WRONG_SPECIES: _wrong_species,
    MONATOMIC_GAS: _monatomic_gas,
    WRONG_ION_CHARGE: _wrong_ion_charge,
    SPECTATOR_IONS: _spectator_ions,
    ELECTRON_SIGN: _electron_sign,
    NO_ELECTRONS: _no_electrons,
    ELECTRONS_WRONG_SIDE: _electrons_wrong_side,
    ATOMS_NOT_BALANCED: _atoms_not_balanced,
    WRONG_ELECTRON_COUNT: _wrong_electron_count,
    CHARGE_NOT_BALANCED: _charge_not_balanced,
    STATE_SYMBOLS: _state_symbols,
    ARROW: _arrow,
    NOT_LOWEST_TERMS: _not_lowest_terms,
}
