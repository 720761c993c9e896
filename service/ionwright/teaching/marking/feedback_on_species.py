"""What a student is told about one species: that it is strange, missing, miswritten, or takes no part."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.notation import species_text
from ionwright.curricula.wording import ions, product, sentence_start
from ionwright.teaching.marking.feedback_on_changes import other_change, other_species
from ionwright.teaching.marking.line import AIDS
from ionwright.teaching.marking.rewriting import ions_of

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species
    from ionwright.teaching.marking.expectation import Expectation
    from ionwright.teaching.marking.fault_codes import Finding
    from ionwright.teaching.marking.line import Line
    from ionwright.teaching.marking.telling import Told, Words

__all__ = ["monatomic_gas", "spectator_ions", "wrong_ion_charge", "wrong_species"]


def monatomic_gas(finding: Finding, context: Told) -> Words:
    """Single atoms where molecules form."""
    name = ELEMENTS[finding.about.formula].name if finding.about else "this element"
    helps = f"{sentence_start(name)} does not come as single atoms. How is a molecule of it written?"
    molecule = species_text(finding.instead) if finding.instead else ""
    return helps, f"A molecule of {name} is {molecule}: {context.right_line}"


def wrong_ion_charge(finding: Finding, context: Told) -> Words:
    """A species with another charge than it has."""
    kind, right = finding.about, finding.instead
    if kind is None or right is None:
        return "Check the charges of the ions in your line.", context.right_line
    written, is_left = species_text(kind), finding.side == "left"
    if not right.charge:
        question = (
            f"Does {_called(right)} carry one before it reacts?"
            if is_left
            else "Does it, once it has formed?"
        )
        helps = f"{written} carries a charge in your line. {question}"
    elif not kind.charge and kind.formula == f"{right.formula}{abs(right.charge)}":
        helps = f"Look at {written} again. If its number is meant as a charge, it needs a sign, + or −."
    elif not kind.charge:
        wrote = f"an atom, {written}" if _is_atom(kind) else f"{written}, without a charge"
        where = f"is {context.medium}" if is_left else "forms"
        helps = f"You wrote {wrote}. Which particle {where}, and what is its charge?"
    else:
        helps = f"Check the charge of {written}: is this the ion that is here?"
    return helps, f"It is {species_text(right)}, not {written}: {context.right_line}"


def _is_atom(kind: Species) -> bool:
    return len(kind.atoms) == 1 and kind.atoms[0][1] == 1


def spectator_ions(finding: Finding, context: Told) -> Words:
    """What takes no part in the change."""
    kind = finding.about
    written = species_text(kind) if kind else "what stands on both sides"
    if kind is not None and not kind.charge and len(kind.atoms) > 1:
        helps = (
            f"{written} is a whole substance, and only one of its ions takes part. A half-equation leaves out the "
            "ions that stay as they are."
        )
    else:
        what = "ion" if kind is None or kind.charge else "substance"
        helps = f"This {what} does not react. Leave it out."
        if not finding.side:
            helps = f"This {what} stands on both sides unchanged. Leave out what does not change."
    return helps, f"{written} does not belong there as it stands: {context.right_line}"


def wrong_species(finding: Finding, context: Told) -> Words:
    """Something that has no place in the right line, or that it misses."""
    if finding.is_other_form:
        return _other_form(finding, context)
    if finding.about is None:
        return _missing(finding, context)
    return _strange(finding.about, finding, context)


def _strange(kind: Species, finding: Finding, context: Told) -> Words:
    if finding.instead is not None:
        return _misspelt(kind, finding.instead, finding, context)
    if not finding.reason:
        return _out_of_place(kind, finding, context), f"The right line is {context.right_line}"
    denied = _denied(kind, context)
    if _gives_away(finding.reason, context):
        return f"{denied}, because {_veiled(context)} What is it?", f"{finding.reason} {context.right_line}"
    return f"{denied}. {finding.reason}", f"{finding.reason} {context.right_line}"


def _misspelt(kind: Species, instead: Species, finding: Finding, context: Told) -> Words:
    """The right element in another species than the right one."""
    written = species_text(kind)
    shown = f"It is {species_text(instead)}, not {written}: {context.right_line}"
    if _is_atom(instead) and len(kind.atoms) == 1 and kind.atoms[0][1] > 1:
        name = sentence_start(ELEMENTS[kind.atoms[0][0]].name)
        if instead.charge and kind.charge:
            return f"{name} stands {context.medium} as single ions. How is one of them written?", shown
        if not instead.charge and not kind.charge:
            return f"{name} is not made of molecules. How is it written in an equation?", shown
    if context.is_followed:
        return other_species(kind, instead, finding, context)
    if kind.formula == instead.formula and kind.charge and instead.charge:
        return f"Check the charge of {written}: is this the ion that is here?", shown
    subject = "What reacts" if finding.side == "left" else "What forms"
    return f"{subject} is not written {written}. Look at its formula and its charge again.", shown


def _out_of_place(kind: Species, finding: Finding, context: Told) -> str:
    """A species for which the course gives no reason, since nobody would expect it."""
    question, line = context.expectation, context.line
    if question.is_molten and not AIDS.isdisjoint((*line.left, *line.right)):
        return "The electrolyte is molten, so there is no water in it. Which ions are there?"
    if not question.electrode and context.is_followed:
        return other_change(kind, finding, context)
    if (
        question.electrode
        and not question.is_turned
        and (helps := _out_of_place_there(kind, finding, context))
    ):
        return helps
    if _is_absent(kind, finding, context):
        return f"There {_is_or_are(kind)} no {_called(kind)} at this electrode. What is there?"
    return f"{sentence_start(_called(kind))} {_is_or_are(kind)} not what belongs here. {_look_again(context)}"


def _out_of_place_there(kind: Species, finding: Finding, context: Told) -> str:
    """What can be said of a strange species where it is known what the electrode and the electrolyte are."""
    question, line = context.expectation, context.line
    if finding.side == "left" and _stays(kind, question):
        change = "gives up" if question.electrode == "anode" else "takes up"
        where = "in the melt" if question.is_molten else "in solution"
        return f"{sentence_start(_called(kind))} stay {where}: something else {change} electrons more easily."
    if finding.side == "left" and question.electrode == "anode" and _dissolves(kind, line):
        name = _called(kind)
        denied = f"This anode is not made of {name}, so there is no {name} to dissolve."
        return f"{denied} What else can give up electrons?"
    if line.electrons and (line.electrons > 0) != (question.electrode == "cathode"):
        asks = "are electrons gained or lost? Which particle does so there?"
        return f"{sentence_start(context.place)}, {asks}"
    if finding.side == "right" and _should_be_element(kind, question):
        return f"{species_text(kind)} is a compound. Which element forms {context.place}?"
    if _is_electrolyte(kind, question):
        is_one_of_them = any(one.charge for one in context.nearest.reactants)
        asks = "Which of them takes part?" if is_one_of_them else "What is there besides them?"
        return f"{species_text(kind)} stands {context.medium} as its ions. {asks}"
    return ""


def _should_be_element(kind: Species, question: Expectation) -> bool:
    """Whether a compound stands for an element that it holds, as NiSO4 for Ni."""
    products = {kind for one in question.forms for kind in one.products if not kind.charge} - AIDS
    elements = {one.atoms[0][0] for one in products if len(one.atoms) == 1}
    return (
        not kind.charge
        and len(kind.atoms) > 1
        and len(elements) == len(products)
        and any(symbol in elements for symbol, _ in kind.atoms)
    )


def _is_electrolyte(kind: Species, question: Expectation) -> bool:
    """Whether a compound is made of ions of the electrolyte."""
    parts = ions_of(kind)
    return bool(parts) and question.present.issuperset(part for part, _ in parts)


def _stays(kind: Species, question: Expectation) -> bool:
    """Whether an ion of the electrolyte moves to the electrode and is not discharged there."""
    return kind in question.present and kind in IONS and (kind.charge < 0) == (question.electrode == "anode")


def _dissolves(kind: Species, line: Line) -> bool:
    """Whether a line lets a metal go into solution."""
    return (
        _is_atom(kind)
        and not kind.charge
        and any(one.formula == kind.formula and one.charge > 0 for one in line.right)
    )


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
