"""Amounts in electrolysis: quantities, the relations between them, and what follows from what is known."""

from ionwright.chemistry.amounts.circuit import Circuit, Process
from ionwright.chemistry.amounts.faraday import WorkedOut, work_out
from ionwright.chemistry.amounts.quantity import QUANTITIES, TOLD, Key, QuantityKind
from ionwright.chemistry.amounts.task import Constants, Given, Task, Wanted

__all__ = [
    "QUANTITIES",
    "TOLD",
    "Circuit",
    "Constants",
    "Given",
    "Key",
    "Process",
    "QuantityKind",
    "Task",
    "Wanted",
    "WorkedOut",
    "work_out",
]
