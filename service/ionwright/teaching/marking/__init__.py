"""The marking desk: a student's line against what was asked."""

from ionwright.teaching.marking.checking import CORRECT, INCORRECT, Fault, Marking, check
from ionwright.teaching.marking.document import marking_document
from ionwright.teaching.marking.expectation import DIRECTIONS, Expectation, MarkingFault
from ionwright.teaching.marking.fault_codes import IN_ORDER, UNREADABLE
from ionwright.teaching.marking.questions import electrode_expectation, given_expectation

__all__ = [
    "CORRECT",
    "DIRECTIONS",
    "INCORRECT",
    "IN_ORDER",
    "UNREADABLE",
    "Expectation",
    "Fault",
    "Marking",
    "MarkingFault",
    "check",
    "electrode_expectation",
    "given_expectation",
    "marking_document",
]
