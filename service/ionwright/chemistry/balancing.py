"""Balance half-equations and whole redox equations, exactly, with what the medium offers."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.balancing_faults import (
    no_solution,
    nothing_changes,
    several_solutions,
    two_readings,
    unknown_medium,
)
from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, WATER
from ionwright.chemistry.couple_meant import couple_meant
from ionwright.chemistry.faults import NoSolution, SeveralSolutions
from ionwright.chemistry.linear_system import LinearSystem
from ionwright.chemistry.medium import ACIDIC, ALKALINE
from ionwright.chemistry.net_equation import equation_of, for_neutral, with_ions_of
from ionwright.chemistry.oxidation_change import changes_of, numbers_in
from ionwright.chemistry.skeleton import (
    MEDIA,
    in_usual_spelling,
    make_skeleton,
    other_readings,
    read_skeleton,
    readings_by_side,
)
from ionwright.chemistry.species import ELECTRON
from ionwright.chemistry.splitting import Halves, split

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.linear_system import Net, Solutions
    from ionwright.chemistry.oxidation_change import NumberInEquation
    from ionwright.chemistry.skeleton import Skeleton
    from ionwright.chemistry.species import Species
    from ionwright.chemistry.stoichiometry import Equation

__all__ = [
    "NOT_REDOX",
    "OXIDATION",
    "REDOX",
    "REDUCTION",
    "Balanced",
    "Halves",
    "Remark",
    "balance",
    "balance_equation",
]

OXIDATION: Final = "oxidation"
REDUCTION: Final = "reduction"
REDOX: Final = "redox"
NOT_REDOX: Final = "not-redox"


class Remark(NamedTuple):
    """Something to tell about the way an answer was found: a code, and the species that it is about."""

    code: str
    species: tuple[Species, ...] = ()


@dataclass(frozen=True, slots=True)
class Balanced:
    """A balanced equation.

    Parameters
    ----------
    equation
        In smallest whole numbers.
    kind
        `OXIDATION` or `REDUCTION` for a half-equation. If the electrons cancel: `REDOX` for a whole redox
        equation, `NOT_REDOX` if nothing is oxidised.
    electrons
        How many, above zero; 0 if they cancel.
    side
        Where the electrons stand: ``"left"``, ``"right"``, or empty.
    skeleton
        What was given and what the medium added.
    oxidation_numbers
        Of every element in every species of the equation.
    remarks
        What to tell about the way to it.
    """

    equation: Equation
    kind: str
    electrons: int
    side: str
    skeleton: Skeleton
    oxidation_numbers: tuple[NumberInEquation, ...]
    remarks: tuple[Remark, ...] = ()

    @property
    def is_half_equation(self) -> bool:
        """True if electrons stand in it."""
        return self.electrons > 0

    @property
    def halves(self) -> Halves | None:
        """The half-equations of a whole redox equation; None for any other, and where it cannot be split."""
        return split(self.equation, self.skeleton) if self.kind == REDOX else None


def balance(text: str, medium: str | None = None) -> Balanced:
    """Balance a half-equation, or a whole redox equation, of which the species are given.

    Parameters
    ----------
    text
        What reacts, an arrow, what forms, in any usual spelling. Numbers in front of the species count only
        where they settle between several solutions.
    medium
        ``"acidic"`` adds H2O and H^+, ``"alkaline"`` H2O and OH^-, ``"neutral"`` uses up neither ion (unless
        water alone forms) but may form it, ``"molten"`` adds O^2-, ``"none"`` nothing. If left out: alkaline
        where OH^- is given, else acidic.

    Returns
    -------
    Balanced
        Each given species on its side; species of the medium, and electrons, on either.

    Raises
    ------
    FormulaError
        The text cannot be read.
    NoSolution
        ``no-solution``, with the elements that cannot be made to agree.
    SeveralSolutions
        ``several-solutions``, with a basis and what would settle it.
    IonwrightError
        ``unknown-medium``.

    Example
    -------
    >>> balance("MnO4^- -> Mn^2+", "acidic").equation.ascii
    'MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O'
    """
    given = read_skeleton(text)
    try:
        found = balance_equation(given, medium)
    except NoSolution:
        others = tuple(other_readings(text, given))
        if not others:
            raise
        for other in others:
            with suppress(NoSolution, SeveralSolutions):
                return balance_equation(other, medium)
        fitting = _fitting_by_side(others, given, medium)
        if len(fitting) > 1:
            raise two_readings(given, tuple(one.skeleton.given for one in fitting)) from None
        if fitting:
            return fitting[0]
        raise
    if found.skeleton.spectators:  # what seems to stand on both sides may be one text for two species
        fitting = _fitting_by_side(other_readings(text, given), given, medium)
        if len(fitting) == 1:
            return fitting[0]
    return found


def _fitting_by_side(others: Iterable[Equation], given: Equation, medium: str | None) -> list[Balanced]:
    """Balance what a text means if its sides are read differently, wherever that makes sense."""
    fitting: list[Balanced] = []
    for meant in readings_by_side(others, given):
        with suppress(NoSolution, SeveralSolutions):
            found = balance_equation(meant, medium)
            if not found.skeleton.has_electrons or meant.electrons * found.equation.electrons > 0:
                fitting.append(found)
    return fitting


def balance_equation(given: Equation, medium: str | None = None) -> Balanced:
    """Balance an equation that is read already; as `balance`.

    Raises
    ------
    NoSolution, SeveralSolutions, IonwrightError
        As `balance`.
    """
    given = in_usual_spelling(given)
    remarks: list[Remark] = []
    if medium is None:
        written = {term.species for term in (*given.left, *given.right)}
        medium = ALKALINE if HYDROXIDE in written else ACIDIC
        remarks.append(Remark(f"taken-as-{medium}"))
    if medium not in MEDIA:
        raise unknown_medium(medium)
    skeleton = make_skeleton(given, medium)
    if not skeleton.left and not skeleton.right:
        raise nothing_changes(skeleton)
    net, solutions = _solved(skeleton, remarks)
    if net is None:
        raise (
            several_solutions(skeleton, solutions)
            if solutions.are_several
            else no_solution(skeleton, solutions)
        )
    if skeleton.dropped:
        remarks.append(Remark("not-in-this-medium", skeleton.dropped))
    if skeleton.spectators:
        remarks.append(Remark("on-both-sides", skeleton.spectators))
    return _described(for_neutral(net, skeleton), skeleton, remarks)


# ------------------------------------------------------------------ solving


def _solved(skeleton: Skeleton, remarks: list[Remark]) -> tuple[Net | None, Solutions]:
    """Return the numbers that are meant, if they are clear, and the solutions of the system that speaks of them.

    A whole redox equation keeps atoms and charge in several ways as long as electrons may be left over; without
    them in one. So it is asked whether there is a single solution with electrons; whether the species are a
    couple of the table; whether there is a single solution without electrons, then with electrons but with less
    from the medium (first of all where the species are of oxygen and hydrogen alone), then with the numbers that
    were given.
    """
    free = (ELECTRON, *reversed(skeleton.aids), *skeleton.spectators)
    half = LinearSystem(free, skeleton.left, skeleton.right).solutions()
    whole = half if len(half.basis) < 2 or skeleton.has_electrons else half.without(ELECTRON)
    only = whole.only
    if (
        whole is half or not only
    ) and not half.are_several:  # one without electrons is one of several with them
        return only, half
    if couple := couple_meant(skeleton):
        remarks.append(Remark("as-in-the-table"))
        return couple, half
    if _is_of_oxygen_and_hydrogen(skeleton) and (plain := _with_less(skeleton, half)):
        return plain, half
    if only:
        return only, whole
    told = whole if whole.are_several else half
    if told is half and (plain := _with_less(skeleton, half)):
        return plain, told
    settled = _settled(skeleton, told.system.free)
    if settled:
        remarks.append(Remark("numbers-given-were-used"))
    return settled, told


def _is_of_oxygen_and_hydrogen(skeleton: Skeleton) -> bool:
    """Say whether water, if it is not written, could stand for any of the species: HO2 -> O2 means no water."""
    for kind in (*skeleton.left, *skeleton.right):
        for symbol, _ in kind.atoms:
            if symbol not in ("O", "H"):
                return False
    return WATER not in (*skeleton.given.reactants, *skeleton.given.products)


def _with_less(skeleton: Skeleton, half: Solutions) -> Net | None:
    """Return the only solution that needs less than the medium offers, as H2O2 -> O2 needs no water.

    Where oxygen stands in nothing but the given species on both sides, water could take part in more than one
    way; the one in which it only carries hydrogen ions is meant.
    """
    written = {term.species for term in (*skeleton.given.left, *skeleton.given.right)}
    if WATER in skeleton.aids and WATER not in written:
        if HYDROGEN_ION in skeleton.aids:
            only = half.without(WATER).only
        else:
            free = (ELECTRON, HYDROGEN_ION, *skeleton.spectators)
            only = LinearSystem(free, skeleton.left, skeleton.right).solutions().only
        if only:
            return with_ions_of(only, skeleton)
    return half.without(*[kind for kind in skeleton.aids if kind not in written]).only


def _settled(skeleton: Skeleton, free: tuple[Species, ...]) -> Net | None:
    """Return the only solution in which species stand in the ratio in which they were given."""
    given = skeleton.coefficients()
    told = {kind: number for kind, number in given.items() if number != 1}
    for numbers in (given, told) if len(told) > 1 else (given,) if told else ():
        (first, reference), *others = numbers.items()
        conditions = []
        for kind, number in others:
            left, right = Fraction(number, reference).as_integer_ratio()
            conditions.append({first: left, kind: -right})
        system = LinearSystem(free, skeleton.left, skeleton.right, tuple(conditions))
        if only := system.solutions().only:
            return only
    return None


# ------------------------------------------------------------------ describing


def _described(net: Net, skeleton: Skeleton, remarks: list[Remark]) -> Balanced:
    equation = equation_of(net, skeleton.order)
    numbers = numbers_in(equation)
    electrons = net.get(ELECTRON, 0)
    if electrons:
        kind, side = (REDUCTION, "left") if electrons > 0 else (OXIDATION, "right")
    else:
        side = ""
        changes = changes_of(numbers)
        is_redox = changes or (changes is None and split(equation, skeleton) is not None)
        kind = REDOX if is_redox else NOT_REDOX
        remarks.append(Remark("electrons-cancel" if kind == REDOX else "nothing-is-oxidised"))
    return Balanced(
        equation=equation,
        kind=kind,
        electrons=abs(electrons),
        side=side,
        skeleton=skeleton,
        oxidation_numbers=numbers,
        remarks=tuple(remarks),
    )
