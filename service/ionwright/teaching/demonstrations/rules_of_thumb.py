"""Rules of thumb, each with the sentence that a plan tells when it rests on one."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from ionwright.chemistry.units import read_unit
from ionwright.chemistry.written_quantity import Written, read_written

__all__ = ["RuleOfThumb", "rule_of_thumb"]


@dataclass(frozen=True, slots=True)
class RuleOfThumb:
    """An order of magnitude of our own.

    Parameters
    ----------
    written
        The figure with its unit.
    says
        The rule as a sentence.
    """

    written: Written
    says: str

    def in_unit(self, symbol: str) -> float:
        """The figure, counted in a unit of the same dimension."""
        return self.written.value * self.written.unit.si / read_unit(symbol).si

    @property
    def sentence(self) -> str:
        """The rule with its standing."""
        return f"{self.says} (Our own rule of thumb, an order of magnitude.)"


@cache
def rule_of_thumb(name: str) -> RuleOfThumb:
    """The rule of this name in the table."""
    text = files("ionwright.teaching").joinpath("data", "demonstrations.toml").read_text(encoding="utf-8")
    row = tomllib.loads(text)[name]
    return RuleOfThumb(read_written(row["value"]), row["says"])
