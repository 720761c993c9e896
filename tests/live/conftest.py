"""One service for all live tests of a run."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from service import Service, running_service

if TYPE_CHECKING:
    from collections.abc import Iterator


@pytest.fixture(scope="session")
def service(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Service]:
    log = tmp_path_factory.mktemp("live") / "service.log"
    with running_service(log) as running:
        yield running
    text = log.read_text()
    assert "Traceback" not in text, text
