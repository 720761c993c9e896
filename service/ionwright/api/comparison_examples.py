"""The examples of the operations that compare curricula: visiting schools that follow different courses."""

from __future__ import annotations

from ionwright.api.example import Example

_SHORT = ["ascii", "text"]

COMPARISON_EXAMPLES = (
    Example(
        name="brine-for-two-schools",
        operation="compareCurricula",
        summary="Dilute brine from the rock pools: two visiting schools, two right answers at the anode",
        method="POST",
        path="/v1/comparisons",
        body={
            "electrolyte": "NaCl",
            "concentration": "0.10 mol/dm3",
            "curricula": ["gcse", "igcse", "a-level"],
            "notation": _SHORT,
        },
    ),
    Example(
        name="iodide-of-the-medicine-chest",
        operation="compareCurricula",
        summary="Brine with iodide from the old medicine chest: what the rules of a course do not reach",
        method="POST",
        path="/v1/comparisons",
        body={
            "electrolyte": [{"substance": "NaCl"}, {"substance": "KI"}],
            "concentration": "concentrated",
            "curricula": ["a-level", "gcse"],
            "notation": ["ascii"],
        },
    ),
    Example(
        name="course-that-nobody-follows",
        operation="compareCurricula",
        summary="Refused: one of the curricula is not loaded",
        method="POST",
        path="/v1/comparisons",
        body={"electrolyte": "NaCl", "curricula": ["gcse", "gsce"]},
    ),
    Example(
        name="bracket-with-inert-anode",
        operation="lookUpComparison",
        summary="The nickel bath of the bracket, when someone hangs a graphite rod in place of the nickel",
        path="/v1/comparisons",
        parameters={
            "electrolyte": ["NiSO4"],
            "concentration": "0.25 mol/dm3",
            "cathode": "steel",
            "curricula": ["a-level", "gcse"],
            "notation": ["ascii"],
        },
    ),
    Example(
        name="where-two-schools-part",
        operation="listDisagreements",
        summary="Before a joint visit of two schools: the cells on which their courses disagree at the anode",
        path="/v1/comparisons/disagreements",
        parameters={"curriculum": "gcse", "with": ["igcse"], "electrode": "anode", "limit": 5},
    ),
)
