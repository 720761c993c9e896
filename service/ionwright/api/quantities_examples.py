"""The examples of the operations that work out quantities: what the museum weighs, times and collects."""

from __future__ import annotations

from typing import Any

from ionwright.api.example import Example

_SHORT = ["ascii", "text"]
_NICKEL = "Ni^2+ + 2e- -> Ni"


def _task(name: str, summary: str, **members: Any) -> Example:
    return Example(
        name=name,
        operation="solveQuantities",
        summary=summary,
        method="POST",
        path="/v1/quantities",
        body=members,
    )


QUANTITIES_EXAMPLES = (
    _task(
        "nickel-on-the-bracket",
        "How much nickel settles on the bracket in twenty minutes",
        half_equation=_NICKEL,
        known={"current": "0.50 A", "time": "20 min"},
        find="mass of Ni",
        curriculum="a-level",
        conventions={"faraday_constant": "96500 C/mol", "relative_atomic_masses": {"Ni": "58.7"}},
    ),
    _task(
        "coat-of-the-bracket",
        "How thick the coat gets, when the bath works with 95% efficiency, and how fast it grows",
        half_equation=_NICKEL,
        known={"current": "1.20 A", "time": "45 min", "area": "160 cm2", "efficiency": "95%"},
        find=["thickness of Ni in um", "growth rate of Ni in um/h"],
        curriculum="a-level",
        notation=_SHORT,
    ),
    _task(
        "hydrogen-from-the-rock-pools",
        "Hydrogen from brine, collected over water in the fog-signal house",
        cell={"electrolyte": "NaCl", "concentration": "concentrated"},
        electrode="cathode",
        known={"current": "0.80 A", "time": "15 min", "temperature": "18 degC", "pressure": "101.2 kPa"},
        find="volume of H2 in cm3",
        curriculum="a-level",
        conventions={"gas_collected": "over water"},
        notation=_SHORT,
    ),
    _task(
        "silver-and-copper-in-series",
        "The silver of the reflector, weighed, tells how much copper the next cell lays down",
        processes=[
            {"id": "silver cell", "half_equation": "Ag^+ + e- -> Ag"},
            {"id": "copper cell", "half_equation": "Cu^2+ + 2e- -> Cu"},
        ],
        known=[{"quantity": "mass", "of": "Ag", "process": "silver cell", "value": "2.16 g"}],
        find=[
            {"quantity": "mass", "of": "Cu", "process": "copper cell", "unit": "mg"},
            {"quantity": "charge"},
        ],
        curriculum="a-level",
        notation=_SHORT,
    ),
    _task(
        "copper-bath-used-up",
        "How long until a little bath of copper sulfate between graphite rods holds no copper any more",
        cell={"electrolyte": "CuSO4", "concentration": "0.100 mol/dm3"},
        known={"current": "0.750 A", "bath_volume": "250 cm3"},
        find=["exhaustion time of Cu^2+ in min"],
        curriculum="gcse",
        notation=_SHORT,
    ),
    _task(
        "a-meter-that-wavers",
        "The ammeter of the lamp room wavers: the uncertainty of the current goes into the mass of silver",
        half_equation="Ag^+ + e- -> Ag",
        known={"current": "0.50 ± 0.01 A", "time": "30.0 min"},
        find="mass of Ag",
        curriculum="a-level",
        notation=_SHORT,
    ),
    _task(
        "charge-of-the-chromium-ion",
        "Which chromium ion is in the old bath: its charge, from the gain in mass",
        metal="Cr",
        known={"current": "1.50 A", "time": "40.0 min", "mass": "0.647 g"},
        find="ion charge",
        curriculum="a-level",
    ),
    _task(
        "amperes-in-minutes",
        "Refused: the current is given in minutes",
        half_equation=_NICKEL,
        known={"current": "20 min", "time": "20 min"},
        find="mass",
        curriculum="a-level",
    ),
    _task(
        "time-forgotten",
        "Refused: without a time the mass stays open, and the problem says what would be enough",
        half_equation=_NICKEL,
        known={"current": "0.50 A"},
        find="mass",
        curriculum="a-level",
    ),
    Example(
        name="nickel-by-address",
        operation="lookUpQuantities",
        summary="The nickel on the bracket, as an address to link",
        path="/v1/quantities",
        parameters={
            "half_equation": _NICKEL,
            "current": "0.50 A",
            "time": "20 min",
            "find": ["mass", "number of particles"],
            "curriculum": "a-level",
            "notation": _SHORT,
        },
    ),
)
