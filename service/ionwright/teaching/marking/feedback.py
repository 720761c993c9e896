"""What a student is told: one sentence that helps without giving the answer away, and one that gives it away."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.notation import species_text
from ionwright.curricula.wording import sentence_start
from ionwright.teaching.marking.expectation import OXIDATION, Standing
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
from ionwright.teaching.marking.feedback_on_species import (
    monatomic_gas,
    spectator_ions,
    wrong_ion_charge,
    wrong_species,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.chemistry.equation import Number
    from ionwright.teaching.marking.line import Line
    from ionwright.teaching.marking.telling import Told, Words

__all__ = ["told"]

_FOLLOWED_THROUGH: Final = frozenset({WRONG_SPECIES, WRONG_ELECTRODE, REVERSED})
_OTHER: Final = {"cathode": "anode", "anode": "cathode"}


def told(finding: Finding, context: Told) -> Words:
    """What a student is told of one fault: the sentence that helps, and the one that gives the answer away."""
    helps, reveals = _WORDS[finding.code](finding, context)
    if context.is_followed and finding.code in _FOLLOWED_THROUGH:
        helps = _followed(helps, finding)
    return " ".join(helps.split()), " ".join(reveals.split())


def _followed(helps: str, finding: Finding) -> str:
    """Say first what is right: a line that is consistent in itself is told so."""
    if "half-equation" in helps or "balances" in helps or helps.startswith("The change is right"):
        return helps
    first, _, rest = helps.partition(" ")
    letters = first.partition("(")[0]  # Manganese(IV)
    is_word = letters[1:].islower() and (len(letters) > 2 or letters in ("It", "At"))
    begun = f"{first.lower() if is_word else first} {rest}"
    return f"Your line balances{', and' if finding.is_other_form else '. But'} {begun}"


# ------------------------------------------------------------------ about the line as a whole


def _not_a_half_equation(_: Finding, context: Told) -> Words:
    if not context.expectation.gives_both(context.line) and not _holds_more_than_a_half(context):
        where = f" {context.place}" if context.place else ""
        helps = (
            f"Your line shows no electrons gained or lost. Show what happens to one kind of particle{where}, "
            "with electrons."
        )
        return helps, f"The half-equation is {context.right_line}"
    place = f"what happens {context.place}" if context.place else "one of the two changes in it"
    helps = (
        f"This is an equation for a whole reaction. A half-equation shows {place} only, with its electrons."
    )
    return helps, f"The half-equation is {context.right_line}"


def _holds_more_than_a_half(context: Told) -> bool:
    """Whether a line balances and shows the change that was asked for beside another one."""
    line = context.line
    return line.is_balanced and any(
        one.left_names <= line.left.keys() and one.right_names <= line.right.keys()
        for one in context.expectation.targets
        if one.standing is Standing.RIGHT
    )


def _wrong_electrode(_: Finding, context: Told) -> Words:
    electrode = context.expectation.electrode
    other = _OTHER.get(electrode, "other electrode")
    asks = f"Which ions move to the {electrode}"
    if not any(kind.charge for kind in context.nearest.reactants):
        asks = f"What is there at the {electrode}"  # its own metal, or water
    helps = f"This belongs to the other electrode. {asks}, and are electrons gained or lost there?"
    if context.expectation.is_turned:
        helps = f"This belongs to the other electrode. Which ions move to the {electrode}?"
        return helps, f"Your line is for the {other}. {_turned(context)}"
    return helps, f"Your line is for the {other}. At the {electrode}: {context.right_line}"


def _reversed(_: Finding, context: Told) -> Words:
    if context.expectation.is_turned:
        return f"The change is right, but {_asked_for(context)}", _turned(context)
    which = f"{sentence_start(context.place)}, are" if context.place else "Are"
    line = "It" if context.is_followed else "Your line"
    helps = f"{line} runs backwards. {which} electrons gained or lost? Turn it round to show that."
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
    left, right = _charges(context.line)
    if left != right:
        helps = f"The charge is {_signed(left)} on the left and {_signed(right)} on the right. "
        helps += "Change the number of electrons until they are equal."
        return helps, f"{_needed(context)} {context.right_line}"
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
    if finding.instead is not None and (symbol := _short_of(finding, symbols)):
        other, name = "left" if finding.side == "right" else "right", ELEMENTS[symbol].name
        which = "product" if finding.side == "right" else "substance that reacts"
        helps = f"Your {other} side holds more {name} than your {finding.side} side. Which other {which} holds {name}?"
        return helps, f"{_left_out(finding, context)} {context.right_line}"
    names = " and of ".join(ELEMENTS[symbol].name for symbol in symbols[:3]) or "each element"
    helps = f"Count the atoms of {names} on both sides: they are not equal."
    return helps, f"{_left_out(finding, context)} {context.right_line}"


def _left_out(finding: Finding, context: Told) -> str:
    """What is missing, if it is so in the right line that is shown and not in another that was meant."""
    shown = context.nearest.reactants if finding.side == "left" else context.nearest.products
    if finding.instead is None or finding.instead not in shown:
        return ""
    return f"{species_text(finding.instead)} is missing."


def _short_of(finding: Finding, symbols: tuple[str, ...]) -> str:
    """The element that a missing species would bring; the one that is not hydrogen first."""
    brought = [symbol for symbol, _ in finding.instead.atoms if symbol in symbols] if finding.instead else []
    return next((symbol for symbol in brought if symbol != "H"), next(iter(brought), ""))


def _not_lowest_terms(finding: Finding, context: Told) -> Words:
    if finding.is_remark:
        helps = "This is right. It is usually written with the smallest whole numbers."
    else:
        helps = "The chemistry is right, but this course wants the smallest whole numbers."
    return helps, context.right_line


def _arrow(_: Finding, context: Told) -> Words:
    return "This course writes a single arrow, →, between the two sides.", context.right_line


def _state_symbols(finding: Finding, context: Told) -> Words:
    written = species_text(finding.about) if finding.about else "each substance"
    if finding.is_missing:
        helps = f"State symbols are wanted here, and {written} has none."
    else:
        helps = f"Look again at the state symbol of {written}: in which state is it here?"
    return helps, f"{written}({finding.reason}): {context.right_line}"


_WORDS: Final[dict[str, Callable[[Finding, Told], Words]]] = {
    NOT_A_HALF_EQUATION: _not_a_half_equation,
    WRONG_ELECTRODE: _wrong_electrode,
    REVERSED: _reversed,
    WRONG_SPECIES: wrong_species,
    MONATOMIC_GAS: monatomic_gas,
    WRONG_ION_CHARGE: wrong_ion_charge,
    SPECTATOR_IONS: spectator_ions,
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
