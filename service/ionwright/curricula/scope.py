"""What a course covers, in its own words: sums, electrodes, melts, works of industry, observations, vocabulary."""

from __future__ import annotations

from dataclasses import dataclass, fields

__all__ = ["CourseScope"]


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseScope:
    """What a course covers; nothing here decides a cell.

    Parameters
    ----------
    quantities
        Which sums with charge and amounts are asked; empty if that is not known.
    electrodes
        Which sorts of electrodes are met.
    melts
        Which melts are set.
    industry
        Which works of industry are taught.
    observations
        What is looked for.
    vocabulary
        Words that its papers use.
    """

    quantities: str = ""
    electrodes: tuple[str, ...] = ()
    melts: tuple[str, ...] = ()
    industry: tuple[str, ...] = ()
    observations: tuple[str, ...] = ()
    vocabulary: tuple[str, ...] = ()

    def described(self) -> dict[str, str | list[str]]:
        """The scope as plain data; what the declaration does not say is absent."""
        told: dict[str, str | list[str]] = {}
        for one in fields(self):
            value = getattr(self, one.name)
            if value:
                told[one.name] = value if isinstance(value, str) else list(value)
        return told
