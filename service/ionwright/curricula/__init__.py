"""Curricula: ordered discharge rules and conventions. This is the surface that plugins use."""

from ionwright.curricula.constants import PrintedConstants
from ionwright.curricula.describe import describe
from ionwright.curricula.faults import CurriculumFault, CurriculumFileFault
from ionwright.curricula.hookspecs import HOOK_VERSION, hookimpl
from ionwright.curricula.marking import MarkingConventions
from ionwright.curricula.model import (
    PASS,
    Conventions,
    Curriculum,
    DischargeRule,
    ReadsNothingElse,
    Remark,
    Ruling,
    Situation,
)
from ionwright.curricula.package import curriculum_from_package
from ionwright.curricula.scope import CourseScope
from ionwright.curricula.verdict import Verdict, judge

__all__ = [
    "HOOK_VERSION",
    "PASS",
    "Conventions",
    "CourseScope",
    "Curriculum",
    "CurriculumFault",
    "CurriculumFileFault",
    "DischargeRule",
    "MarkingConventions",
    "PrintedConstants",
    "ReadsNothingElse",
    "Remark",
    "Ruling",
    "Situation",
    "Verdict",
    "curriculum_from_package",
    "describe",
    "hookimpl",
    "judge",
]
