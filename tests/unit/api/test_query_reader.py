"""Reading queries: the members they stand for, and what each fault says."""

from __future__ import annotations

from typing import Any

import pytest
from werkzeug.datastructures import MultiDict

from ionwright.api.problems import Problem
from ionwright.api.query_reader import check_no_query, prediction_members, search_members


def query(*pairs: tuple[str, str]) -> MultiDict[str, str]:
    return MultiDict(pairs)


@pytest.mark.parametrize(
    ("pairs", "members"),
    [
        ([("electrolyte", "NaCl"), ("curriculum", "gcse")], {"electrolyte": "NaCl", "curriculum": "gcse"}),
        ([("electrolyte", "NaCl@1 M"), ("electrolyte", "KI@1 M")], {"electrolyte": ["NaCl@1 M", "KI@1 M"]}),
        ([("ph", "3.5")], {"ph": 3.5}),
        ([("ph", "1e1")], {"ph": 10.0}),
        ([("notation", "ascii,html")], {"notation": "ascii,html"}),
        ([("notation", "ascii"), ("notation", "html")], {"notation": "ascii,html"}),
    ],
)
def test_queries_stand_for_members(pairs: list[tuple[str, str]], members: dict[str, Any]) -> None:
    assert prediction_members(query(*pairs)) == members


@pytest.mark.parametrize(
    ("pairs", "parameter", "code", "words"),
    [
        ([("electrolite", "NaCl")], "electrolite", "unknown-field", 'Did you mean "electrolyte"?'),
        ([("cathode", "Cu"), ("cathode", "Pt")], "cathode", "repeated", "is given 2 times"),
        ([("ph", "acid")], "ph", "bad-number", "such as 3.5"),
        ([("ph", "٣")], "ph", "bad-number", "a number in digits"),
        ([("ph", "1_0")], "ph", "bad-number", "a number in digits"),
        ([("ph", "nan")], "ph", "bad-number", "a number in digits"),
    ],
)
def test_each_fault_names_its_parameter(
    pairs: list[tuple[str, str]], parameter: str, code: str, words: str
) -> None:
    with pytest.raises(Problem) as caught:
        prediction_members(query(*pairs))
    (error,) = caught.value.document()["errors"]
    assert (error["in"], error["parameter"], error["code"]) == ("query", parameter, code)
    assert words in error["detail"]


def test_a_search_has_a_limit() -> None:
    assert search_members(query(), default=50, highest=1000) == ("", 50)
    assert search_members(query(("search", " nickel "), ("limit", "5")), default=50, highest=1000) == (
        "nickel",
        5,
    )


@pytest.mark.parametrize("limit", ["0", "1001", "-1", "x", "1.5", "", "9" * 400, "٣"])
def test_a_limit_out_of_range_is_refused(limit: str) -> None:
    with pytest.raises(Problem, match="from 1 to 1000"):
        search_members(query(("limit", limit)), default=50, highest=1000)


def test_operations_without_parameters_say_so() -> None:
    with pytest.raises(Problem, match=r'There is no query parameter "page"\. Leave it out\.'):
        check_no_query(query(("page", "2")))
