"""What a plan asks of the bath: how much of each ion it uses up, and how strong or large the bath has to be."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, NamedTuple

from ionwright.chemistry.notation import species_text
from ionwright.teaching.demonstrations.measure import Measure, fitting
from ionwright.teaching.demonstrations.reckoning import Asked, Reckoning, stated
from ionwright.teaching.demonstrations.rules_of_thumb import rule_of_thumb

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ionwright.chemistry.amounts.circuit import Process
    from ionwright.chemistry.species import Species
    from ionwright.teaching.demonstrations.turnover import Turnover
    from ionwright.teaching.prediction import Prediction

__all__ = ["BathUse", "Run", "bath_uses"]


class Run(NamedTuple):
    """The bath of a plan and what passes through it."""

    current_A: float
    bath_dm3: float | None
    figures: int


@dataclass(frozen=True, slots=True)
class BathUse:
    """What becomes of one ion of the electrolyte that is used up.

    Parameters
    ----------
    of
        Canonical ASCII.
    used
        Net amount that is used up.
    needed_amount
        Amount that the bath should hold so that at most a tenth of it is used up.
    needed_concentration
        That amount in the bath; None if its volume is not known, or for a melt.
    needed_volume
        Volume of the bath as described that holds that amount; None if its concentration is not known.
    share
        Part of the ion that is used up [%]; None unless volume and concentration are known.
    runs_out_after
        Time at the current of the plan until none is left; None as for the share.
    is_enough
        Whether the bath keeps most of the ion; None as for the share.
    says
        All of that in words.
    """

    of: str
    used: Measure
    needed_amount: Measure
    needed_concentration: Measure | None
    needed_volume: Measure | None
    share: Measure | None
    runs_out_after: Measure | None
    is_enough: bool | None
    says: str


def bath_uses(
    reckoning: Reckoning,
    prediction: Prediction,
    processes: Sequence[Process],
    turned: tuple[Sequence[Turnover], Sequence[Turnover]],
    run: Run,
) -> tuple[BathUse, ...]:
    """What becomes of each ion of the electrolyte that the cell uses up.

    Parameters
    ----------
    turned
        What forms, and what is used up.
    """
    formed, used = turned
    own = {
        present.ion.species: present.concentration
        for present in prediction.cell.electrolyte.ions
        if present.source == "electrolyte"
    }
    found = []
    for ion in _removed(prediction, processes):
        net = sum(one.amount_mol for one in used if one.of == ion.ascii)
        net -= sum(one.amount_mol for one in formed if one.of == ion.ascii)
        if ion in own and net > 0:
            found.append(_use(reckoning, ion, net, own[ion], run))
    return tuple(found)


def _removed(prediction: Prediction, processes: Sequence[Process]) -> tuple[Species, ...]:
    """The ions that the cell as a whole uses up; of an electrode that stands alone, all that it takes."""
    if prediction.solution is not None:
        return prediction.solution.removed
    return tuple(
        dict.fromkeys(
            t.species
            for p in processes
            for t in p.half.left
            if t.species.charge and not t.species.is_electron
        )
    )


def _use(
    reckoning: Reckoning, ion: Species, used_mol: float, concentration: float | None, run: Run
) -> BathUse:
    of, figures = ion.ascii, run.figures
    needed_mol = used_mol / rule_of_thumb("bath_share").in_unit("1")
    needed = stated("amount_at_start", needed_mol, "mol", of)
    needed_concentration = needed_volume = share = runs_out = None
    is_enough: bool | None = None
    if run.bath_dm3 is not None:
        volume = stated("bath_volume", run.bath_dm3, "dm3")
        value = reckoning.value([needed, volume], Asked("bath_concentration", "mol/dm3", of))
        needed_concentration = fitting(value, "mol/dm3", figures)
    if concentration:
        strength = stated("bath_concentration", concentration, "mol/dm3", of)
        value = reckoning.value([needed, strength], Asked("bath_volume", "dm3"))
        needed_volume = fitting(value, "dm3", figures)
    if run.bath_dm3 is not None and concentration:
        volume = stated("bath_volume", run.bath_dm3, "dm3")
        current = stated("current", run.current_A, "A")
        at_start, time = reckoning.values(
            [volume, strength, current],
            [Asked("amount_at_start", "mol", of), Asked("exhaustion_time", "s", of)],
        )
        share, runs_out = fitting(used_mol / at_start, "1", 2), fitting(time, "s", 2)
        is_enough = needed_mol <= at_start * (1 + 1e-9)
    use = BathUse(
        of,
        fitting(used_mol, "mol", figures),
        fitting(needed_mol, "mol", figures),
        needed_concentration,
        needed_volume,
        share,
        runs_out,
        is_enough,
        "",
    )
    return replace(use, says=_told(use, species_text(ion)))


def _told(use: BathUse, name: str) -> str:
    sentences = [f"{use.used.text} of {name} is used up."]
    if use.share is not None and use.runs_out_after is not None:
        if use.share.counted_in("1") > 1:
            sentences.append(
                f"The bath holds less than that: it runs out after {use.runs_out_after.text}, before the aim is met."
            )
        else:
            sentences.append(
                f"That is {use.share.text} of what the bath holds; it would run out after {use.runs_out_after.text}."
            )
    if use.is_enough:
        sentences.append("The bath keeps most of it.")
    else:
        sentences.append(
            f"To keep nine tenths, the bath should hold at least {use.needed_amount.text} of it{_ways(use)}."
        )
    return " ".join(sentences)


def _ways(use: BathUse) -> str:
    ways = []
    if use.needed_concentration is not None:
        ways.append(f"{use.needed_concentration.text} in the volume given")
    if use.needed_volume is not None:
        ways.append(f"{use.needed_volume.text} of the solution as it is")
    return f": {', or '.join(ways)}" if ways else ""
