"""Tells a curriculum in words and plain data, from its rules and conventions."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from ionwright.curricula.model import Curriculum


def describe(curriculum: Curriculum) -> dict[str, Any]:
    """What a curriculum is, as plain data: rules as sentences, conventions, marking, scope, sources and certainty."""
    conventions = curriculum.conventions
    return {
        "id": curriculum.id,
        "title": curriculum.title,
        "region": curriculum.region,
        "stage": curriculum.stage,
        "summary": curriculum.summary,
        "rules": {
            "cathode": [rule.sentence for rule in curriculum.cathode_rules],
            "anode": [rule.sentence for rule in curriculum.anode_rules],
        },
        "conventions": {
            "hydrogen_from": {medium: list(forms) for medium, forms in conventions.hydrogen.items()},
            "oxygen_from": {medium: list(forms) for medium, forms in conventions.oxygen.items()},
            "state_symbols": conventions.state_symbols,
            "oxidation_also_minus": conventions.oxidation_also_minus,
            **conventions.constants.described(),
        },
        "marking": curriculum.marking.described(),
        "scope": curriculum.scope.described(),
        "certainty": dict(curriculum.certainty),
        "sources": list(curriculum.sources),
    }
