"""What a student is told of a line that balances but shows another change than the one asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ionwright.chemistry.notation import species_text
from ionwright.teaching.marking.expectation import Standing
from ionwright.teaching.marking.line import AIDS, naming

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species
    from ionwright.teaching.marking.fault_codes import Finding
    from ionwright.teaching.marking.line import Line
    from ionwright.teaching.marking.telling import Told, Words

__all__ = ["other_change", "other_species"]


def other_species(kind: Species, instead: Species, finding: Finding, context: Told) -> Words:
    """A line that is right in itself, about another change than the one that was asked for."""
    shown = f"It is {species_text(instead)}, not {species_text(kind)}: {context.right_line}"
    if finding.side == "right" and context.place and not instead.charge:
        helps = f"Your line balances, but it stops at {species_text(kind)}. Which substance forms {context.place}?"
        return helps, shown
    asks = "does the question start from" if finding.side == "left" else "is asked for on the right"
    return f"Your line is a correct half-equation, but for another change. Which particle {asks}?", shown


def other_change(kind: Species, finding: Finding, context: Told) -> str:
    """A line that balances, about another change than the one that was given."""
    line = context.line
    rights = [one for one in context.expectation.targets if one.standing is Standing.RIGHT]
    same_left = any(one.left_names == naming(line.left) for one in rights)
    same_right = any(one.right_names == naming(line.right) for one in rights)
    if any(_differ_by_medium(line, one.line) for one in rights):
        return (
            "Your line balances, and the change is right. But it is written for another solution. Is the one that "
            "was meant acidic or alkaline?"
        )
    sides = context.expectation.sides
    others = {*line.left, *line.right} - {kind} - AIDS - sides[0] - sides[1]
    if not others and any(
        _differ_by_hydrogen_ions(kind, one) for one in sides[finding.side == "right"] - AIDS
    ):
        return (
            f"Your line balances, and the change is right. But look at {species_text(kind)}: does it hold as many "
            "hydrogen ions in the line that was asked for?"
        )
    asks = {
        (True, False): "Which product is asked for?",
        (False, True): "Which particle does the question start from?",
    }.get((same_left, same_right), "Read again what was asked for.")
    return f"Your line balances, but it shows another change. {asks}"


def _differ_by_medium(one: Line, other: Line) -> bool:
    """Whether two half-equations show one change, each with what its own solution lends."""
    return (
        one.left.keys() - AIDS == other.left.keys() - AIDS
        and one.right.keys() - AIDS == other.right.keys() - AIDS
        and (one.electrons > 0) == (other.electrons > 0)
    )


def _differ_by_hydrogen_ions(one: Species, other: Species) -> bool:
    """Whether one is the acid of the other, as HSO4^- is of SO4^2-."""
    atoms, others = dict(one.atoms), dict(other.atoms)
    hydrogen = atoms.pop("H", 0) - others.pop("H", 0)
    return bool(atoms) and atoms == others and hydrogen == one.charge - other.charge
