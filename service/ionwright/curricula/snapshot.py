"""Remembers what objects hold, so that a change made to them can be found and undone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from typing import Any, Final

__all__ = ["Snapshot"]

_ABSENT: Final = object()


class Snapshot:
    """The fields of a dataclass and of every dataclass within it, as they are when this is made.

    Parameters
    ----------
    root
        A dataclass; its tuples, lists, mappings and dataclasses are followed to their ends.
    """

    __slots__ = ("_held", "_lists", "_mappings")

    def __init__(self, root: object) -> None:
        self._held: list[tuple[object, str, object]] = []
        self._lists: list[tuple[list[Any], list[Any]]] = []
        self._mappings: list[tuple[dict[Any, Any], dict[Any, Any]]] = []
        waiting, seen = [root], {id(root)}
        while waiting:
            for part in self._parts(waiting.pop()):
                if id(part) not in seen:
                    seen.add(id(part))
                    waiting.append(part)

    def _parts(self, one: object) -> list[Any]:
        if is_dataclass(one) and not isinstance(one, type):
            held = [(field.name, getattr(one, field.name, _ABSENT)) for field in fields(one)]
            self._held += [(one, name, value) for name, value in held]
            return [value for _, value in held]
        if isinstance(one, list):
            self._lists.append((one, list(one)))
        elif isinstance(one, dict):
            self._mappings.append((one, dict(one)))
        if isinstance(one, Mapping):
            return list(one.values())
        return list(one) if isinstance(one, tuple | list | frozenset) else []

    def restore(self) -> tuple[str, ...]:
        """Undo what was changed; the names of the fields that were, such as ``"Situation.remaining"``."""
        changed = []
        for one, name, value in self._held:
            if getattr(one, name, _ABSENT) is not value:
                changed.append(f"{type(one).__name__}.{name}")
                object.__setattr__(one, name, value)
        for content, kept in self._lists:
            if content != kept:
                changed.append("a list")
                content[:] = kept
        for mapping, stored in self._mappings:
            if mapping != stored:
                changed.append("a mapping")
                mapping.clear()
                mapping.update(stored)
        return tuple(changed)
