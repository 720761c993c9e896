"""A bath that runs out of one ion after the other: what forms until when, and how the charge is divided."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.circuit import Circuit, Process
from ionwright.chemistry.species import species
from ionwright.teaching.prediction import Prediction, predict

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from ionwright.chemistry.species import Species

__all__ = ["Stage", "circuit_of_stages", "stages"]

_MOST: Final = 6
_NOT_COUNTED: Final = frozenset((species("H^+"), species("OH^-")))
"""Ions that water supplies anew, so that their running out changes nothing but the form of the half-equation."""

_ELECTRODES: Final = ("cathode", "anode")


@dataclass(frozen=True, slots=True)
class Stage:
    """A span of charge in which the same processes run.

    Parameters
    ----------
    prediction
        What happens in the cell as it then is.
    start_C, end_C
        Charge passed since the start of the run [C]; the end is None if nothing runs out any more.
    runs_out
        The ions of which nothing is left at its end.
    """

    prediction: Prediction
    start_C: float
    end_C: float | None
    runs_out: tuple[Species, ...]

    def process(self, electrode: str, bath: str) -> Process | None:
        """The process at an electrode; None if the course leaves it undecided."""
        account = self.prediction.cathode if electrode == "cathode" else self.prediction.anode
        if account.half_equation is None:
            return None
        return Process(electrode, account.half_equation, f"{bath} {electrode}", bath)


def stages(prediction: Prediction, volume_dm3: float, faraday_C_mol: float) -> tuple[Stage, ...]:
    """The stages through which a bath of some volume goes, the last one without an end.

    Parameters
    ----------
    prediction
        What happens at the start; it holds the concentrations.
    volume_dm3
        Volume of the bath, taken as constant.
    faraday_C_mol
        The Faraday constant with which the course reckons.

    Returns
    -------
    tuple[Stage, ...]
        One stage if no ion with a known concentration is used up, or an electrode is undecided.
    """
    amounts = _amounts(prediction, volume_dm3)
    found: list[Stage] = []
    start_C = 0.0
    gone: frozenset[Species] = frozenset()
    while len(found) < _MOST:
        used = _used_per_electron(Stage(prediction, start_C, None, ()), amounts)
        if not used:
            break
        electrons = min(amounts[kind] / number for kind, number in used.items())
        runs_out = tuple(k for k, number in used.items() if amounts[k] <= electrons * number * (1 + 1e-9))
        end_C = start_C + electrons * faraday_C_mol
        found.append(Stage(prediction, start_C, end_C, runs_out))
        amounts = {k: left - electrons * used.get(k, 0.0) for k, left in amounts.items() if k not in runs_out}
        start_C, gone = end_C, gone | frozenset(runs_out)
        prediction = predict(found[0].prediction.cell.without(gone), prediction.curriculum)
    return (*found, Stage(prediction, start_C, None, ()))


def _amounts(prediction: Prediction, volume_dm3: float) -> dict[Species, float]:
    """What the bath holds of each ion whose concentration is known [mol]."""
    return {
        present.ion.species: present.concentration * volume_dm3
        for present in prediction.cell.electrolyte.ions
        if present.source == "electrolyte"
        and present.concentration
        and present.ion.species not in _NOT_COUNTED
    }


def _used_per_electron(stage: Stage, amounts: Mapping[Species, float]) -> dict[Species, float]:
    """How many particles of each counted ion are used up for one electron, both electrodes taken together [1]."""
    processes = tuple(stage.process(electrode, "cell") for electrode in _ELECTRODES)
    if None in processes:
        return {}
    circuit = Circuit(tuple(p for p in processes if p is not None))
    net = {kind: -float(circuit.net_per_electron("cell", kind.ascii)) for kind in amounts}
    return {kind: number for kind, number in net.items() if number > 0}


def circuit_of_stages(
    begun: Sequence[Stage], bath: str, simple: Circuit, *, is_last_over: bool = False
) -> Circuit | None:
    """The processes among which a charge is divided that lasts into several stages; None if one is undecided.

    Every process but the last at an electrode goes on until its ion has run out.

    Parameters
    ----------
    begun
        The stages that the charge lasts into.
    simple
        The circuit of the first stage alone.
    is_last_over
        Whether the last of them ends with the charge.
    """
    processes: dict[tuple[str, str], Process] = {}
    used_up: list[tuple[str, str]] = []
    for stage in begun:
        for electrode in _ELECTRODES:
            plain = stage.process(electrode, bath)
            if plain is None:
                return None
            name = f"{electrode} {_main_product(stage, electrode)}"
            process = processes.setdefault(
                (electrode, plain.half.ascii), Process(name, plain.half, plain.electrode, bath)
            )
            ended = stage is not begun[-1] or is_last_over
            used_up += [
                (process.id, kind.ascii)
                for kind in stage.runs_out
                if ended and process.per_electron(kind.ascii) < 0
            ]
    return Circuit(
        _named_simply(tuple(processes.values())), simple.is_over_water, tuple(used_up), simple.present
    )


def _main_product(stage: Stage, electrode: str) -> str:
    account = stage.prediction.cathode if electrode == "cathode" else stage.prediction.anode
    return " ".join(kind.ascii for kind in account.products)


def _named_simply(processes: tuple[Process, ...]) -> tuple[Process, ...]:
    """A process that is alone at its electrode goes by the name of the electrode."""
    alone = [p for p in processes if sum(other.electrode == p.electrode for other in processes) == 1]
    return tuple(
        Process(p.id.partition(" ")[0], p.half, p.electrode, p.bath) if p in alone else p for p in processes
    )
