"""A value that rides along with a cache key without counting in it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

Value = TypeVar("Value")


@dataclass(frozen=True, slots=True)
class Aside(Generic[Value]):
    """Holds a value that the rest of a cache key already decides; all asides are equal.

    Parameters
    ----------
    value
        What the cached function works with.
    """

    value: Value

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Aside)

    def __hash__(self) -> int:
        return 0
