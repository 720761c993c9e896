"""A table of whole tasks: their values were worked out by hand formulas, apart from the code under test."""

import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from task_parts import cell, half

from ionwright.errors import IonwrightError
from ionwright.teaching.quantities import ProcessDescription

TASKS = tomllib.loads(Path(__file__).with_name("tasks.toml").read_text(encoding="utf-8"))["task"]
TOLERANCE = 2e-3


def processes(run):
    if isinstance(run, str):
        return (half(run),)
    if "cell" in run and isinstance(run["cell"], dict):
        members = dict(run["cell"])
        return (cell(*members.pop("electrolyte"), **members),)
    return tuple(process(id_, what) for id_, what in run.items())


def process(id_, what):
    if isinstance(what, dict) and "metal" in what:
        return ProcessDescription(id=id_, metal=what["metal"])
    if isinstance(what, dict):
        members = dict(what)
        texts = (f"{substance}@{amount}" for substance, amount in members.pop("electrolyte"))
        return replace(cell(*texts, **members), id=id_)
    return half(what, id_) if isinstance(what, str) else half(what[0], id_, what[1])


def conventions(task):
    stated = task.get("conventions", {})
    return {
        "constants": tuple(stated.get("constants", {}).items()),
        "relative_atomic_masses": tuple(stated.get("relative_atomic_masses", {}).items()),
        "gas_collected": stated.get("gas_collected", ""),
    }


def named(task):
    return f"{task['run']} {task['known']}"[:100]


@pytest.mark.parametrize("task", [task for task in TASKS if "answers" in task], ids=named)
def test_a_task_has_these_answers(solve, task):
    asked = tuple(phrase for phrase, *_ in task["answers"])
    solved = solve(
        *processes(task["run"]), known=task["known"], find=asked, curriculum=task.get("curriculum", "a-level"),
        **conventions(task),
    )  # fmt: skip
    assert len(solved.answers) == len(asked)
    for answer, (_, value, *figures) in zip(solved.answers, task["answers"], strict=True):
        assert answer.value == pytest.approx(value, rel=task.get("tolerance", TOLERANCE))
        assert not figures or [answer.figures] == figures
        if "uncertainty" in task:
            assert answer.uncertainty == pytest.approx(task["uncertainty"], rel=0.02)


@pytest.mark.parametrize("task", [task for task in TASKS if "refused" in task], ids=named)
def test_a_task_is_refused(solve, task):
    with pytest.raises(IonwrightError) as refusal:
        solve(
            *processes(task["run"]), known=task["known"], find=tuple(task["find"]),
            curriculum=task.get("curriculum", "a-level"), **conventions(task),
        )  # fmt: skip
    assert refusal.value.code == task["refused"]
    assert str(refusal.value)


def test_the_table_holds_enough_of_both():
    answered = sum("answers" in task for task in TASKS)
    assert answered > 250
    assert len(TASKS) - answered > 60
