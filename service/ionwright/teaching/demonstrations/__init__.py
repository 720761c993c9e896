"""Demonstrations: what current for how long shows what should be seen, and where it may be done."""

from ionwright.teaching.demonstrations.description import Aim, DemonstrationDescription, aim_of
from ionwright.teaching.demonstrations.document import demonstration_document
from ionwright.teaching.demonstrations.plan import Plan
from ionwright.teaching.demonstrations.planning import plan_demonstration

__all__ = [
    "Aim",
    "DemonstrationDescription",
    "Plan",
    "aim_of",
    "demonstration_document",
    "plan_demonstration",
]
