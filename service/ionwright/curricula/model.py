"""What a curriculum is made of: ordered discharge rules for each electrode, and conventions."""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING, Protocol

from ionwright.chemistry.process import FROM_IONS, FROM_WATER, Competition, ElectrodeProcess, Kind
from ionwright.curricula.constants import PrintedConstants
from ionwright.curricula.marking import MarkingConventions
from ionwright.curricula.scope import CourseScope

if TYPE_CHECKING:
    from collections.abc import Collection, Hashable, Mapping

    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.equation import Equation


@dataclass(frozen=True, slots=True)
class Remark:
    """A process with what is to be said of it; an empty sentence leaves out what the course never speaks of."""

    process: ElectrodeProcess
    because: str


@dataclass(frozen=True, slots=True)
class Situation:
    """What a discharge rule gets to see: the cell, the competition, and the processes no earlier rule ruled out."""

    cell: Cell
    competition: Competition
    remaining: tuple[ElectrodeProcess, ...]
    conventions: Conventions

    def of(self, *kinds: Kind) -> tuple[ElectrodeProcess, ...]:
        """The remaining processes of these kinds."""
        return tuple(process for process in self.remaining if process.kind in kinds)

    def without(self, processes: Collection[ElectrodeProcess | None]) -> Situation:
        """The same situation with these processes out of the running."""
        rest = tuple(process for process in self.remaining if process not in processes)
        return Situation(self.cell, self.competition, rest, self.conventions)

    def entrants(self) -> tuple[ElectrodeProcess, ...]:
        """For each reactant the couples that school data sheets print, or all its couples where they print none."""
        printed = {process.reactant for process in self.remaining if process.is_listed}
        return tuple(p for p in self.remaining if p.is_listed or p.reactant not in printed)


@dataclass(frozen=True, slots=True)
class Ruling:
    """What one rule says: it chooses, rules out, leaves undecided, or passes (the empty ruling).

    Parameters
    ----------
    chosen
        The process that runs; None if the rule does not choose.
    because
        Sentences a teacher would read out, for the choice or for leaving it undecided.
    ruled_out
        Processes out of the running, each with its reason.
    also_accepted
        Other answers that the curriculum accepts, each with its reason.
    is_contested
        Whether courses, marking schemes or real cells differ on this choice.
    is_undecidable
        Whether the curriculum's rules do not reach this cell.
    otherwise
        Set by a rule whose choice the course may not teach: what to say of the answer that the rules after it give.
    assumptions
        What the rule had to assume, as sentences.
    """

    chosen: ElectrodeProcess | None = None
    because: tuple[str, ...] = ()
    ruled_out: tuple[Remark, ...] = ()
    also_accepted: tuple[Remark, ...] = ()
    is_contested: bool = False
    is_undecidable: bool = False
    otherwise: str = ""
    assumptions: tuple[str, ...] = ()


PASS = Ruling()


def undecidable(reason: str) -> Ruling:
    """The ruling that the curriculum's rules do not reach this cell, for a reason told as a sentence."""
    return Ruling(is_undecidable=True, because=(reason,))


class DischargeRule(Protocol):
    """One reason, applied in order: it chooses, rules out, or passes, and always says why.

    A rule may also have a method ``also_reads(cell)`` that gives, as a hashable value, what it takes into account
    beyond substances, ions, medium, the material of the electrode it judges and a melt's temperature. Verdicts are
    then kept for cells that are alike in all this; without the method the rule is applied anew to every cell.
    `ReadsNothingElse` has it for rules that need no more.
    """

    @property
    def sentence(self) -> str:
        """The rule in words, for the page that tells what a curriculum does."""
        ...  # pragma: no cover

    def apply(self, situation: Situation) -> Ruling:
        """Judge the remaining processes; must not change anything and must not depend on anything else."""
        ...  # pragma: no cover


class ReadsNothingElse:
    """Base of rules that look at the substances, the medium and the electrode they judge, and at no amounts."""

    __slots__ = ()

    def also_reads(self, cell: Cell) -> Hashable:
        """Nothing else."""
        return ()


@dataclass(frozen=True, slots=True)
class Conventions:
    """How a curriculum writes and counts.

    Parameters
    ----------
    hydrogen, oxygen
        For each medium (``acidic``, ``neutral``, ``alkaline``) the forms of the half-equation that it
        takes, preferred first: ``"ions"`` (from H⁺ or OH⁻) and ``"water"``.
    state_symbols
        ``"asked"`` (only where a task asks), ``"required"`` or ``"not-used"``.
    oxidation_also_minus
        Whether electrons subtracted on the left are accepted in an oxidation.
    constants
        The constants that the course prints, and its relative atomic masses.
    """

    hydrogen: Mapping[str, tuple[str, ...]]
    oxygen: Mapping[str, tuple[str, ...]]
    state_symbols: str = "asked"
    oxidation_also_minus: bool = True
    constants: PrintedConstants = field(default_factory=PrintedConstants)

    def written(self, process: ElectrodeProcess, medium: str) -> Equation:
        """The half-equation in the form this curriculum prefers."""
        return process.written(_FORMS[self._accepted(process, medium)[0]])

    def also_written(self, process: ElectrodeProcess, medium: str) -> tuple[Equation, ...]:
        """The other forms of the half-equation that this curriculum accepts."""
        if len(process.forms) == 1:
            return ()
        return tuple(process.written(_FORMS[name]) for name in self._accepted(process, medium)[1:])

    def _accepted(self, process: ElectrodeProcess, medium: str) -> tuple[str, ...]:
        table = self.hydrogen if process.kind is Kind.HYDROGEN else self.oxygen
        return table.get(medium, ("ions",))


_FORMS = {"ions": FROM_IONS, "water": FROM_WATER}


@dataclass(frozen=True, slots=True, kw_only=True)
class Curriculum:
    """An ordered set of discharge rules for each electrode, plus conventions.

    Parameters
    ----------
    id
        Stable word in lower case with hyphens.
    title, region, stage, summary
        For people; the stage is an age range or a school stage.
    cathode_rules, anode_rules
        Applied in order until one chooses.
    conventions
        How equations are written and quantities counted.
    marking
        How half-equations are marked.
    scope
        What the course covers, in words.
    certainty
        How sure the declaration is of each of its parts: ``high``, ``medium`` or ``low`` by part.
    sources
        Where the facts come from, in words.
    """

    id: str
    title: str
    region: str
    stage: str
    summary: str
    cathode_rules: tuple[DischargeRule, ...]
    anode_rules: tuple[DischargeRule, ...]
    conventions: Conventions
    marking: MarkingConventions = field(default_factory=MarkingConventions)
    scope: CourseScope = field(default_factory=CourseScope)
    certainty: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    sources: tuple[str, ...] = ()
