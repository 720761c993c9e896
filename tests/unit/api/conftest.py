"""One application with the built-in curricula, and a client that speaks to it without a server."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from ionwright.api import Settings, create_app

if TYPE_CHECKING:
    from flask import Flask
    from flask.testing import FlaskClient


@pytest.fixture(scope="session")
def app() -> Flask:
    return create_app(Settings())


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    return app.test_client()
