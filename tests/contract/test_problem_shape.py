"""Problems: every code that the service can answer with is in the table, and all have one shape."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from ionwright.api.problem_kinds import FAULT_KINDS, PROBLEM_KINDS, ProblemKind
from ionwright.api.problems import Fault, Problem, json_pointer
from ionwright.errors import IonwrightError

SERVICE = Path(__file__).resolve().parents[2] / "service" / "ionwright"
REFUSALS = {
    "FormulaError",
    "UnknownSpecies",
    "CellRefused",
    "CurriculumFault",
    "IonwrightError",
    "MarkingFault",
    "NoSolution",
}
NEVER_SENT = {
    # they stop the start of the service, or set a file aside
    "bad-setting",
    "bad-curriculum",
    "no-curricula",
    # the reader of requests finds these first, with more to say
    "bad-state",
    "unknown-supply",
    "unknown-notation",
    "unknown-medium",
    # an answer of ours that does not balance: it is a failure of the service
    "unbalanced",
}


def codes_raised_below() -> set[str]:
    """Codes in the first argument of each refusal that the layers below the API make."""
    found = set()
    for layer in ("chemistry", "curricula", "teaching"):
        for path in (SERVICE / layer).rglob("*.py"):
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if isinstance(node, ast.Call) and getattr(node.func, "id", "") in REFUSALS and node.args:
                    first = node.args[0]
                    if isinstance(first, ast.Constant) and isinstance(first.value, str):
                        found.add(first.value)
    return found


def test_every_refusal_of_the_layers_below_is_explained() -> None:
    raised = codes_raised_below()
    assert len(raised) > 10
    assert raised - set(PROBLEM_KINDS) - NEVER_SENT == set()


@pytest.mark.parametrize("kind", PROBLEM_KINDS.values(), ids=lambda kind: kind.code)
def test_every_kind_is_written_for_people(kind: ProblemKind) -> None:
    code, status, title, meaning = kind.code, kind.status, kind.title, kind.meaning
    assert code == code.lower()
    assert 400 <= status < 600
    assert title[0].isupper()
    assert not title.endswith(".")
    assert meaning.endswith(".")


def test_fault_codes_and_problem_codes_do_not_overlap() -> None:
    assert set(FAULT_KINDS) & set(PROBLEM_KINDS) == set()


@pytest.mark.parametrize("code", sorted(PROBLEM_KINDS))
def test_a_problem_document_has_the_members_of_rfc_9457(code: str) -> None:
    problem = Problem(code, "What is wrong.", faults=[Fault(("electrolyte", 0), code, "What is wrong.", 3)])
    assert problem.document() == {
        "type": f"tag:ionwright,2026:problem:{code}",
        "title": PROBLEM_KINDS[code].title,
        "status": PROBLEM_KINDS[code].status,
        "code": code,
        "detail": "What is wrong.",
        "errors": [
            {
                "in": "body",
                "pointer": "/electrolyte/0",
                "code": code,
                "detail": "What is wrong.",
                "position": 3,
            }
        ],
    }
    assert problem.answer().headers[0] == ("Content-Type", "application/problem+json")


def test_a_code_that_only_a_plugin_knows_is_a_refusal() -> None:
    problem = Problem("no-harbour-licence", "The harbour master has not agreed.")
    assert problem.status == 422
    assert problem.document()["title"] == "No harbour licence"


def test_pointers_are_escaped() -> None:
    assert json_pointer(("a/b", "c~d", 0)) == "/a~1b/c~0d/0"


def test_the_root_error_carries_what_a_problem_needs() -> None:
    error = IonwrightError("insoluble", "It does not dissolve.", remedy="Melt it.").within("electrolyte/0")
    assert str(error) == "It does not dissolve. Melt it."
    assert error.where == "electrolyte/0"
