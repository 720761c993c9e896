"""Tasks about amounts: read, solved under a curriculum, and worked like on the board."""

from ionwright.teaching.quantities.description import (
    AskedQuantity,
    ProcessDescription,
    StatedQuantity,
    TaskConventions,
    TaskDescription,
)
from ionwright.teaching.quantities.document import quantities_document
from ionwright.teaching.quantities.solving import Solved, solve_task

__all__ = [
    "AskedQuantity",
    "ProcessDescription",
    "Solved",
    "StatedQuantity",
    "TaskConventions",
    "TaskDescription",
    "quantities_document",
    "solve_task",
]
