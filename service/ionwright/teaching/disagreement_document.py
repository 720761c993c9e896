"""The cells on which courses disagree as plain data, a page at a time."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from ionwright.teaching.comparison import Answer
    from ionwright.teaching.disagreement import Disagreement, Disagreements, RuleGroup


def disagreements_document(found: Disagreements, *, offset: int = 0, limit: int = 50) -> dict[str, Any]:
    """One page of disagreements as JSON-plain data.

    Parameters
    ----------
    offset
        How many disagreements to pass over, counted through all groups.
    limit
        The most to give.

    Returns
    -------
    dict
        Every group with its rules and its count, and in the groups the disagreements of this page.
    """
    document: dict[str, Any] = {
        "curriculum": {"id": found.curriculum.id, "title": found.curriculum.title},
        "others": [{"id": other.id, "title": other.title} for other in found.others],
        "cells": found.cells,
        "count": found.count,
        "offset": offset,
        "limit": limit,
    }
    end = offset + limit
    if end < found.count:
        document["next_offset"] = end
    groups, start = [], 0
    for group in found.groups:
        page = slice(max(0, offset - start), max(0, end - start))
        groups.append(_group(group, group.disagreements[page]))
        start += len(group.disagreements)
    return document | {"groups": groups}


def _group(group: RuleGroup, shown: tuple[Disagreement, ...]) -> dict[str, Any]:
    return {
        "electrode": group.rules.electrode,
        "rule": group.rules.rule,
        "other_rule": group.rules.other_rule,
        "others": list(group.others),
        "count": len(group.disagreements),
        "disagreements": [_disagreement(one) for one in shown],
    }


def _disagreement(one: Disagreement) -> dict[str, Any]:
    description = one.tabled.description
    return {
        "name": one.tabled.name,
        "cell": {
            "electrolyte": description.electrolyte[0].substance,
            "state": description.state,
            "cathode": description.cathode,
            "anode": description.anode,
        },
        "concentrations": list(one.concentrations),
        "answer": _answer(one.answer),
        "others": list(one.others),
        "other_answer": _answer(one.other_answer),
        "accepted_across": one.accepted_across,
    }


def _answer(answer: Answer) -> dict[str, Any]:
    return {"products": list(answer.formulas), "text": answer.text}
