"""The REST interface: `create_app` makes the WSGI application."""

from ionwright.api.app import create_app
from ionwright.api.settings import Settings

__all__ = ["Settings", "create_app"]
