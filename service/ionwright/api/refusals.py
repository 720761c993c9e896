"""Refusals of the layers below as problems."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING

from ionwright.api.problems import Fault, Path, Problem

if TYPE_CHECKING:
    from ionwright.errors import IonwrightError

_log = logging.getLogger("ionwright.api")


def problem_of_refusal(
    refusal: IonwrightError,
    path: Path,
    position: int | None,
    *,
    source: str = "body",
    detail: str = "",
) -> Problem:
    """Problem for a refusal; one that is not the sender's fault is logged.

    Parameters
    ----------
    path, position
        Where it stands in the request as it was sent.
    detail
        What to say in place of the refusal's own words.
    """
    detail = detail or str(refusal)
    fault = Fault(path, refusal.code, detail, position)
    problem = Problem(refusal.code, detail, faults=[fault], source=source)
    if problem.status >= 500:
        _log.error("%s: %s", refusal.code, detail)
    return problem
