"""Tasks about amounts in few words."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
from task_parts import half

from ionwright.curricula.host import load_curricula
from ionwright.teaching.quantities import (
    AskedQuantity,
    StatedQuantity,
    TaskConventions,
    TaskDescription,
    solve_task,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.curricula.host import Registry
    from ionwright.teaching.quantities import ProcessDescription, Solved


@pytest.fixture(scope="session")
def curricula() -> Registry:
    return load_curricula()


@pytest.fixture(scope="session")
def solve(curricula: Registry) -> Callable[..., Solved]:
    """Solves a task: processes, what is known and asked by phrases, and the curriculum."""

    def solved(
        *processes: ProcessDescription | str,
        known: dict[str, str],
        find: str | tuple[str, ...],
        curriculum: str = "a-level",
        **conventions: Any,
    ) -> Solved:
        description = TaskDescription(
            processes=tuple(half(p) if isinstance(p, str) else p for p in processes),
            known=tuple(
                StatedQuantity(phrase, text, where=f"known/{phrase}") for phrase, text in known.items()
            ),
            find=tuple(
                AskedQuantity(phrase, where="find") for phrase in ((find,) if isinstance(find, str) else find)
            ),
            conventions=TaskConventions(**conventions),
        )
        return solve_task(description, curricula[curriculum])

    return solved
