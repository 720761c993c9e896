"""Why a skeleton cannot be balanced, or not in one way only, told so that it can be mended."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import NoSolution, SeveralSolutions
from ionwright.chemistry.linear_system import CHARGE
from ionwright.chemistry.null_space import null_space
from ionwright.chemistry.positive_combination import primitive_whole
from ionwright.chemistry.skeleton import MEDIA
from ionwright.chemistry.species import ELECTRON
from ionwright.chemistry.stoichiometry import Equation, Term
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from ionwright.chemistry.linear_system import Net, Solutions
    from ionwright.chemistry.skeleton import Skeleton
    from ionwright.chemistry.species import Species

__all__ = ["no_solution", "nothing_changes", "several_solutions", "two_readings", "unknown_medium"]

_FORGOTTEN = "Look for a species that was forgotten, or for a slip in a formula."


def unknown_medium(medium: str) -> IonwrightError:
    """Tell that there is no such medium."""
    return IonwrightError(
        "unknown-medium",
        f"There is no medium {medium[:40]!r}.",
        where="medium",
        remedy=f"Use {', '.join(MEDIA)}.",
    )


def nothing_changes(skeleton: Skeleton) -> NoSolution:
    """Tell that both sides hold the same species."""
    detail = f"Nothing happens in {skeleton.given.ascii}: both sides hold the same species."
    return NoSolution(
        "no-solution", detail, remedy="Write what reacts on the left and what forms on the right."
    )


def two_readings(given: Equation, meant: tuple[Equation, ...]) -> NoSolution:
    """Tell that a text can be read in several ways that all make sense.

    Parameters
    ----------
    given
        The likeliest reading, in which nothing happens.
    meant
        The others.
    """
    others = {kind for one in meant for kind in (*one.reactants, *one.products)}
    known = {*given.reactants, *given.products}
    kinds = [*known & others, *others - known]
    detail = (
        f"Nothing happens in {given.ascii}: both sides hold the same species. What is written can be read as"
        f" {_either(sorted({kind.ascii for kind in kinds if _is_twofold(kind, kinds)}))}."
    )
    remedy = f"Put a caret before each charge: {_either([one.ascii for one in meant])}."
    return NoSolution("no-solution", detail, remedy=remedy)


def no_solution(skeleton: Skeleton, solutions: Solutions) -> NoSolution:
    """Tell which element or charge cannot be made to agree, and what would mend it if that is seen."""
    rows = solutions.system.rows()
    detail = _on_one_side(rows, solutions)
    remedy = _FORGOTTEN
    if not detail and solutions.refutation:
        detail = _at_odds(rows, solutions, solutions.refutation)
    if not detail and len(solutions.basis) == 1:
        detail, remedy = _on_the_wrong_side(skeleton, solutions)
    if not detail:
        detail = _too_many_demands(rows)
    return NoSolution("no-solution", detail, remedy=remedy)


def several_solutions(skeleton: Skeleton, solutions: Solutions) -> SeveralSolutions:
    """Tell that the skeleton balances in several independent ways, and show simple ones."""
    order = skeleton.order
    basis = tuple([_written(net, order) for net in solutions.independent()])
    detail = f"{len(basis)} independent equations balance with these species, and so does every sum of their multiples."
    remedy = "Leave out what does not take part, write each reaction by itself"
    if all(equation.electrons for equation in basis):
        remedy = (
            f"Write each half-equation by itself, such as {basis[0].ascii}; leave out what does not take part"
        )
    has_choice = len(solutions.system.left) + len(solutions.system.right) > 2
    if has_choice:
        bound = [kind.ascii for kind in (*solutions.system.left, *solutions.system.right)]
        remedy += (
            f", or give the numbers that are known, such as how many {bound[0]} there are to each {bound[1]}"
        )
    if ELECTRON not in solutions.system.free:
        remedy += "; for half-equations, write the electrons too"
    return SeveralSolutions(detail, remedy=f"{remedy}.", basis=basis)


# ------------------------------------------------------------------ reasons


def _name(row: str) -> str:
    element = ELEMENTS.get(row)
    return f"{element.name} ({row})" if element else row


def _on_one_side(rows: Mapping[str, list[int]], solutions: Solutions) -> str:
    """Tell the elements that stand on one side alone, so that nothing can make up for them."""
    system = solutions.system
    columns = system.columns
    found = []
    for symbol, row in rows.items():
        holding = [at for at, entry in enumerate(row) if entry]
        if any(at < len(system.free) for at in holding):
            continue
        sides = {row[at] > 0 for at in holding}
        if len(sides) == 1 and symbol != CHARGE:
            side = "left" if sides.pop() else "right"
            where = ", ".join(columns[at].ascii for at in holding)
            found.append(f"{_name(symbol)} stands only on the {side}, in {where}")
    text = "; ".join(found)
    return f"{text[:1].upper()}{text[1:]}." if text else ""


def _at_odds(rows: Mapping[str, list[int]], solutions: Solutions, weights: Mapping[int, int]) -> str:
    """Tell which elements cannot agree together, with a count that shows it."""
    columns = solutions.system.columns
    width = len(columns)
    first_right = width - len(solutions.system.right)
    transposed = [[row[at] for row in rows.values()] for at in range(width)]
    scaled = primitive_whole([weights.get(at, 0) for at in range(width)])
    vectors = null_space([[*column, -scaled[at]] for at, column in enumerate(transposed)], len(rows) + 1)
    factors = vectors[-1]  # of the last column, which is a sum of the others
    involved = {name: factor for name, factor in zip(rows, factors, strict=False) if factor}
    counts = {
        columns[at]: factors[-1] * scaled[at] * (1 if at < first_right else -1)
        for at in range(width)
        if scaled[at]
    }
    others = (
        ", and 0 for the others"
        if len(counts) < len(solutions.system.left) + len(solutions.system.right)
        else ""
    )
    numbers = _listed([f"{kind.ascii} {_signed(value)}" for kind, value in counts.items()])
    return (
        f"{_capital(_listed([_name(name) for name in involved]))} cannot agree at the same time. For each species,"
        f" {_rule(involved)}: that makes {numbers}{others}. Both sides must come to the same, and with these they"
        " never do."
    )


def _rule(factors: Mapping[str, int]) -> str:
    """Say how to count: so many for each atom of one element, less so many for each of another."""
    added = [f"{factor} for each {name}" for name, factor in factors.items() if factor > 0]
    taken = [f"{-factor} for each {name}" for name, factor in factors.items() if factor < 0]
    text = f"count {_listed(added)}" if added else "start from 0"
    return f"{text} and take away {_listed(taken)}" if taken else text


def _signed(value: int) -> str:
    return f"{value:+d}".replace("-", "−")


def _on_the_wrong_side(skeleton: Skeleton, solutions: Solutions) -> tuple[str, str]:
    """Tell what the only equation that keeps the atoms looks like, and what is wrong with it."""
    system = solutions.system
    (vector,) = solutions.basis
    first = len(system.free)
    own = [vector[at] for at in range(first, len(vector))]
    if sum(number < 0 for number in own) > sum(number > 0 for number in own):
        vector = tuple(-number for number in vector)
    columns = system.columns
    missing = [columns[at] for at in range(first, len(vector)) if not vector[at]]
    wrong = [columns[at] for at in range(first, len(vector)) if vector[at] < 0]
    net = solutions.net(vector)
    equation = _written(net, skeleton.order)
    reasons = []
    if wrong:
        reasons.append(f"{_species(wrong)} would stand on the other side")
    if missing:
        reasons.append(f"{_species(missing)} would have no part in it")
    elements = dict.fromkeys(symbol for kind in (*wrong, *missing) for symbol, _ in kind.atoms)
    free = {symbol for kind in system.free for symbol, _ in kind.atoms}
    blamed = [_name(symbol) for symbol in elements if symbol not in free] or [_name(s) for s in elements]
    detail = (
        f"{_capital(_listed(blamed))} cannot be made to agree as it stands. The only equation that balances with"
        f" these species is {equation.ascii}: {' and '.join(reasons)}."
    )
    remedy = (
        f"Put {_species(wrong)} on the other side, or look for a forgotten species." if wrong else _FORGOTTEN
    )
    return detail, remedy


def _too_many_demands(rows: Mapping[str, list[int]]) -> str:
    # electrons can always make the charge agree
    names = _capital(_listed([_name(name) for name in rows if name != CHARGE]))
    return f"{names} cannot all agree: whatever the numbers, at least one of them differs between the sides."


def _written(net: Net, order: tuple[Species, ...]) -> Equation:
    return Equation(
        tuple(Term(kind, net[kind]) for kind in order if net.get(kind, 0) > 0),
        tuple(Term(kind, -net[kind]) for kind in order if net.get(kind, 0) < 0),
    )


def _species(kinds: Iterable[Species]) -> str:
    return _listed([kind.ascii for kind in kinds])


def _listed(parts: list[str]) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"


def _either(parts: list[str]) -> str:
    return " or ".join(parts)


def _is_twofold(kind: Species, kinds: list[Species]) -> bool:
    """Say whether a species is spelt like another one once the caret is left out."""
    plain = kind.ascii.replace("^", "")
    return any(other != kind and other.ascii.replace("^", "") == plain for other in kinds)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
