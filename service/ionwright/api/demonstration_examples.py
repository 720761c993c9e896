"""The examples of the operations that plan demonstrations: what the museum shows to its school parties."""

from __future__ import annotations

from typing import Any

from ionwright.api.example import Example

_SHORT = ["ascii", "text"]


def _plan(name: str, summary: str, **members: Any) -> Example:
    return Example(
        name=name,
        operation="planDemonstration",
        summary=summary,
        method="POST",
        path="/v1/demonstrations",
        body=members,
    )


DEMONSTRATION_EXAMPLES = (
    _plan(
        "bracket-within-a-lesson",
        "Two micrometres of nickel on the bracket, within a visit of twenty-five minutes",
        cell={"electrolyte": "NiSO4", "concentration": "0.25 mol/dm3", "cathode": "steel", "anode": "nickel"},
        aims="2.0 um of Ni",
        within="25 min",
        cathode_area="40 cm2",
        bath_volume="250 cm3",
        efficiency="95%",
        curriculum="a-level",
        notation=_SHORT,
    ),
    _plan(
        "brine-in-the-lamp-room",
        "Hydrogen from the brine of the rock pools, and what the chlorine does to the air of the lamp room",
        cell={"electrolyte": "NaCl", "concentration": "2.0 mol/dm3"},
        aims=[{"quantity": "volume", "of": "H2", "value": "30 cm3"}],
        within="10 to 20 min",
        bath_volume="150 cm3",
        room_volume="120 m3",
        air_changes="4 /h",
        curriculum="igcse",
        notation=_SHORT,
    ),
    _plan(
        "more-copper-than-a-visit-gives",
        "Ten grams of copper in twenty minutes: more than the supply of the museum gives, and by how much",
        cell={
            "electrolyte": "CuSO4",
            "concentration": "0.50 mol/dm3",
            "cathode": "copper",
            "anode": "copper",
        },
        aims="10 g of Cu",
        within="20 min",
        highest_current="2.0 A",
        electrode_area="50 cm2",
        curriculum="gcse",
        notation=_SHORT,
    ),
    _plan(
        "zinc-from-the-bracket-bath",
        "Refused: the bath of the bracket holds no zinc, and the problem names what it gives",
        cell={"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel"},
        aims="visible Zn",
        curriculum="gcse",
    ),
    Example(
        name="acid-by-address",
        operation="lookUpDemonstration",
        summary="Enough hydrogen to see, from dilute acid, as an address to link",
        path="/v1/demonstrations",
        parameters={
            "electrolyte": "H2SO4",
            "concentration": "0.50 mol/dm3",
            "aim": ["visible H2"],
            "within": "20 min",
            "curriculum": "gcse",
            "notation": _SHORT,
        },
    ),
)
