"""The examples of the document: one story from Skerry Point, each sent by the tests as it stands here."""

from __future__ import annotations

from typing import Any

from ionwright.api.comparison_examples import COMPARISON_EXAMPLES
from ionwright.api.demonstration_examples import DEMONSTRATION_EXAMPLES
from ionwright.api.example import Example
from ionwright.api.quantities_examples import QUANTITIES_EXAMPLES

_JSON_LINES = "application/jsonl"


def _prediction(name: str, summary: str, **members: Any) -> Example:
    return Example(
        name=name,
        operation="predictElectrolysis",
        summary=summary,
        method="POST",
        path="/v1/predictions",
        body=members,
    )


_SHORT = ["ascii", "text"]
_BRACKET = {
    "electrolyte": "NiSO4",
    "concentration": "0.25 mol/dm3",
    "cathode": "steel",
    "anode": "nickel",
    "curriculum": "gcse",
}

_FIRST_YEAR = """\
format = 1
id = "skerry-foundation"
title = "Skerry Point foundation course"
stage = "lower secondary"
based_on = "igcse"

[anode]
halides = "always"
active_electrodes = ["copper", "silver", "nickel"]
"""

EXAMPLES = (
    _prediction(
        "nickel-plated-bracket", "Nickel-plating a steel bracket of the lamp room stairs", **_BRACKET
    ),
    _prediction(
        "sea-brine",
        "Concentrated brine from the rock pools, between graphite rods",
        electrolyte="NaCl",
        concentration="concentrated",
        curriculum="igcse",
        notation=_SHORT,
    ),
    _prediction(
        "silvered-reflector",
        "Silvering the copper reflector of the old lamp with a silver anode",
        electrolyte=[{"substance": "silver nitrate", "concentration": "0.10 mol/dm3"}],
        cathode="copper",
        anode="silver",
        curriculum="gcse",
        notation=_SHORT,
    ),
    _prediction(
        "zinc-on-ironwork",
        "Zinc on the ironwork of the gallery, by standard potentials",
        electrolyte="ZnSO4",
        concentration={"value": 0.5, "unit": "mol/dm3"},
        cathode="iron",
        anode="zinc",
        curriculum="a-level",
        notation=_SHORT,
    ),
    _prediction(
        "molten-lead-bromide",
        "The molten demonstration in the fume cupboard of the fog-signal house",
        electrolyte="lead(II) bromide",
        state="molten",
        curriculum="gcse",
        notation=_SHORT,
    ),
    _prediction(
        "limewash",
        "Refused: the limewash of the tower does not dissolve",
        electrolyte="CaCO3",
        curriculum="gcse",
    ),
    _prediction(
        "misspelt-field",
        "Refused: a field is misspelt, and none says which curriculum",
        electrolyte="NiSO4",
        catode="steel",
    ),
    Example(
        name="copper-purified",
        operation="lookUpPrediction",
        summary="Purifying copper from the old lightning conductor, as an address to link",
        path="/v1/predictions",
        parameters={
            "electrolyte": ["CuSO4"],
            "cathode": "copper",
            "anode": "copper",
            "curriculum": "gcse",
            "notation": _SHORT,
        },
    ),
    Example(
        name="brine-with-iodide",
        operation="lookUpPrediction",
        summary="Sea brine with a little potassium iodide: two salts, each with its concentration",
        path="/v1/predictions",
        parameters={
            "electrolyte": ["NaCl@0.5 mol/dm3", "KI@0.1 mol/dm3"],
            "curriculum": "a-level",
            "notation": _SHORT,
        },
    ),
    Example(
        name="workshop-morning",
        operation="predictElectrolysisBatch",
        summary="Three cells of one morning, one of which cannot work",
        method="POST",
        path="/v1/predictions/batch",
        body={
            "items": [
                {**_BRACKET, "notation": ["ascii"]},
                {"electrolyte": "CaCO3", "curriculum": "gcse"},
                {
                    "electrolyte": "H2SO4",
                    "concentration": "dilute",
                    "curriculum": "gcse",
                    "notation": ["ascii"],
                },
            ]
        },
    ),
    Example(
        name="workshop-lines",
        operation="predictElectrolysisBatch",
        summary="The same as JSON Lines, with a line that breaks off",
        method="POST",
        path="/v1/predictions/batch",
        media_type=_JSON_LINES,
        body=(
            '{"electrolyte":"CuCl2","curriculum":"gcse","notation":["ascii"]}\n'
            '{"electrolyte":"CuCl2","curricu\n'
        ),
    ),
    Example(
        name="lamp-room-titration",
        operation="balanceHalfEquation",
        summary="Permanganate from the lamp room's chemistry chest, in acid",
        method="POST",
        path="/v1/half-equations/balance",
        body={"equation": "MnO4- → Mn2+", "medium": "acidic", "notation": _SHORT},
    ),
    Example(
        name="silver-in-its-cyanide-bath",
        operation="balanceHalfEquation",
        summary="Why old silvering baths were stirred gently: air dissolves the silver again",
        method="POST",
        path="/v1/half-equations/balance",
        body={"equation": "Ag + CN^- + O2 -> [Ag(CN)2]^-", "medium": "alkaline", "notation": ["ascii"]},
    ),
    Example(
        name="bleach-from-brine",
        operation="lookUpBalance",
        summary="Chlorine from the brine cell meets its alkali: bleach for the slipway",
        path="/v1/half-equations/balance",
        parameters={"equation": "Cl2 -> Cl^- + ClO^-", "medium": "alkaline", "notation": _SHORT},
    ),
    Example(
        name="zinc-without-its-partner",
        operation="balanceHalfEquation",
        summary="Refused: the sulfate of the galvanising bath stands on one side only",
        method="POST",
        path="/v1/half-equations/balance",
        body={"equation": "Zn^2+ + SO4^2- -> Zn", "medium": "acidic"},
    ),
    Example(
        name="peroxide-and-permanganate",
        operation="balanceHalfEquation",
        summary="Refused: oxygen could come from either, and nothing says how much",
        method="POST",
        path="/v1/half-equations/balance",
        body={"equation": "MnO4^- + H2O2 -> Mn^2+ + O2", "medium": "acidic", "notation": ["ascii"]},
    ),
    Example(
        name="reflector-from-copper",
        operation="combineHalfEquations",
        summary="Silver on the copper reflector without any current",
        method="POST",
        path="/v1/half-equations/combine",
        body={"oxidation": "Cu -> Cu^2+ + 2e-", "reduction": "Ag^+ + e- -> Ag", "notation": _SHORT},
    ),
    Example(
        name="rust-on-the-gallery",
        operation="lookUpCombination",
        summary="Iron of the gallery in wet sea air",
        path="/v1/half-equations/combine",
        parameters={
            "oxidation": "Fe -> Fe^2+ + 2e-",
            "reduction": "O2 + 2H2O + 4e- -> 4OH^-",
            "notation": ["ascii"],
        },
    ),
    Example(
        name="two-oxidations",
        operation="combineHalfEquations",
        summary="Refused: both half-equations release electrons",
        method="POST",
        path="/v1/half-equations/combine",
        body={"oxidation": "Zn -> Zn^2+ + 2e-", "reduction": "Fe -> Fe^2+ + 2e-"},
    ),
    Example(
        name="one-electron-short",
        operation="checkHalfEquation",
        summary="A visitor's line for the nickel-plated bracket, one electron short",
        method="POST",
        path="/v1/half-equations/check",
        body={
            "answer": "Ni2+ + e- -> Ni",
            "cell": _BRACKET,
            "electrode": "cathode",
            "notation": _SHORT,
        },
    ),
    Example(
        name="single-atoms-of-chlorine",
        operation="checkHalfEquation",
        summary="Single atoms of chlorine from the brine, against a given half-equation",
        method="POST",
        path="/v1/half-equations/check",
        body={
            "answer": "Cl- → Cl + e-",
            "expected": ["2Cl^- -> Cl2 + 2e-"],
            "curriculum": "igcse",
            "notation": ["ascii"],
        },
    ),
    Example(
        name="expected-line-unbalanced",
        operation="checkHalfEquation",
        summary="Refused: the line to mark against does not balance",
        method="POST",
        path="/v1/half-equations/check",
        body={"answer": "Ag+ + e- -> Ag", "expected": ["Ag^+ -> Ag"], "curriculum": "gcse"},
    ),
    Example(
        name="class-set",
        operation="checkHalfEquationBatch",
        summary="The class that saw the brine cell: five lines for its cathode",
        method="POST",
        path="/v1/half-equations/check/batch",
        body={
            "cell": {"electrolyte": "NaCl", "concentration": "concentrated", "curriculum": "igcse"},
            "electrode": "cathode",
            "notation": ["ascii"],
            "items": [
                {"ref": "seat 1", "answer": "2H+ + 2e- -> H2"},
                {"ref": "seat 2", "answer": "2 h+ + 2e → h2"},
                {"ref": "seat 3", "answer": "Na+ + e- -> Na"},
                {"ref": "seat 4", "answer": "2Cl- -> Cl2 + 2e-"},
                {"ref": "seat 5", "answer": "hydrogen?"},
            ],
        },
    ),
    *QUANTITIES_EXAMPLES,
    *DEMONSTRATION_EXAMPLES,
    *COMPARISON_EXAMPLES,
    Example(name="all-curricula", operation="listCurricula", summary="What is loaded", path="/v1/curricula"),
    Example(
        name="gcse-rules",
        operation="getCurriculum",
        summary="The rules of one curriculum in words",
        path="/v1/curricula/{curriculum_id}",
        parameters={"curriculum_id": "gcse"},
    ),
    Example(
        name="curriculum-not-loaded",
        operation="getCurriculum",
        summary="An id that is not loaded",
        path="/v1/curricula/{curriculum_id}",
        parameters={"curriculum_id": "gcsee"},
    ),
    Example(
        name="first-year-course",
        operation="previewCurriculum",
        summary="The museum writes a course for first-year groups, and tries it on dilute brine",
        method="POST",
        path="/v1/curricula/preview",
        body={
            "declaration": _FIRST_YEAR,
            "electrolyte": "NaCl",
            "concentration": "dilute",
            "notation": _SHORT,
        },
    ),
    Example(
        name="slips-in-a-course",
        operation="previewCurriculum",
        summary="Refused: two slips in the declaration, told at once",
        method="POST",
        path="/v1/curricula/preview",
        body={
            "declaration": _FIRST_YEAR.replace("always", "often").replace('"copper"', '"coper"'),
            "electrolyte": "NaCl",
        },
    ),
    Example(
        name="nickel-salts",
        operation="listElectrolytes",
        summary="Nickel salts for an input box",
        path="/v1/electrolytes",
        parameters={"search": "nickel", "limit": 5},
    ),
    Example(
        name="all-electrodes", operation="listElectrodes", summary="All electrodes", path="/v1/electrodes"
    ),
    Example(name="alive", operation="getHealth", summary="The process is alive", path="/healthz"),
    Example(name="ready", operation="getReadiness", summary="All three courses are loaded", path="/readyz"),
)
