"""What would be enough to answer a wish: the quantities that a task might state besides."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.circuit_relations import circuit_relations
from ionwright.chemistry.amounts.known_values import keys_at_hand
from ionwright.chemistry.amounts.naming import listed, name_of
from ionwright.chemistry.amounts.network import reachable
from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.subject import keys_meant
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

    from ionwright.chemistry.amounts.task import Task

__all__ = ["what_would_do"]

_LIKELY: Final = (
    "time", "current", "charge", "mass", "volume", "amount", "area", "thickness", "density", "current_density",
    "bath_volume", "bath_concentration", "concentration", "temperature", "pressure", "voltage", "energy",
    "energy_price", "cost", "efficiency", "share", "amount_of_electrons", "number_of_particles", "molar_mass",
    "ion_charge",
)  # fmt: skip
_OF_ONE_PROCESS: Final = frozenset({"share", "efficiency"})
_MOST_SINGLE: Final = 5
_IN_PAIRS: Final = 18
_MOST_PAIRS: Final = 3


def what_would_do(task: Task, given: Collection[Key], wanted: tuple[Key, ...], key: Key) -> list[str]:
    """Ways to make a quantity follow, in words: single quantities; if none is enough, pairs; else one fuller set.

    Parameters
    ----------
    given
        What the task states.
    wanted
        All that it asks for.
    key
        Of these, what cannot be found yet.
    """
    search = _Search(task, tuple(given), wanted, key)
    candidates = search.candidates()
    single = [(one,) for one in candidates if search.is_enough((one,))]
    current, time = Key("current"), Key("time")
    if single:
        by_current = (current, time)
        needs_both = (Key("charge"),) in single and (current,) not in single and (time,) not in single
        is_open = current not in given and time not in given
        return [
            _said(way) for way in ([by_current] if needs_both and is_open else []) + single[:_MOST_SINGLE]
        ]
    pairs = [pair for pair in combinations(candidates[:_IN_PAIRS], 2) if search.is_enough(pair)]
    if pairs:
        return [_said(pair) for pair in pairs[:_MOST_PAIRS]]
    fullest = search.smallest_of(candidates)
    return [_said(fullest)] if fullest else []


def _said(way: tuple[Key, ...]) -> str:
    return listed([f"the {name_of(key, is_whole=key.kind in _OF_ONE_PROCESS)}" for key in way])


class _Search:
    """Tries what would follow if a task stated more."""

    def __init__(self, task: Task, given: tuple[Key, ...], wanted: tuple[Key, ...], key: Key) -> None:
        self._task = task
        self._given = given
        self._wanted = wanted
        self._key = key

    def candidates(self) -> list[Key]:
        """What a task might state, the likeliest first."""
        taken = {*self._given, self._key}
        likely = (*_LIKELY, "molar_gas_volume") if "volume" in self._key.kind else _LIKELY
        found = (key for kind in likely for key in self._keys(kind) if key not in taken)
        return list(dict.fromkeys(found))

    def _keys(self, kind: str) -> Iterator[Key]:
        process = self._key.process if QUANTITIES[kind].scope in {"process", "species"} else ""
        of = self._key.of if QUANTITIES[kind].scope == "bath" and kind != "bath_volume" else ""
        for place in dict.fromkeys((process, "")):
            try:
                yield from keys_meant(self._task.circuit, kind, of, place)
            except IonwrightError:
                continue
            return

    def is_enough(self, more: tuple[Key, ...]) -> bool:
        """Whether the quantity would follow if these were stated too."""
        given = (*self._given, *more)
        known, mentioned = keys_at_hand(self._task, given, self._wanted)
        asked = frozenset(key.kind for key in self._wanted)
        return self._key in reachable(circuit_relations(self._task.circuit, mentioned, asked), known)

    def smallest_of(self, candidates: list[Key]) -> tuple[Key, ...]:
        """A set from which nothing can be left out; empty if even all of them are not enough."""
        kept = tuple(candidates)
        if not self.is_enough(kept):
            return ()
        for one in reversed(candidates):
            fewer = tuple(key for key in kept if key != one)
            if self.is_enough(fewer):
                kept = fewer
        return kept
