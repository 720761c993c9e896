"""One application with the built-in curricula, and a client that speaks to it without a server."""

from __future__ import annotations

import pytest
from flask import Flask
from flask.testing import FlaskClient

from ionwright.api import Settings, create_app


@pytest.fixture(scope="session")
def app() -> Flask:
    return create_app(Settings())


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    return app.test_client()
