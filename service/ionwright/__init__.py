"""Ionwright: the chemistry of electrolysis, for teaching."""

from importlib import import_module
from typing import TYPE_CHECKING

__version__ = "0.1.0"

if TYPE_CHECKING:
    from ionwright.notebook import balance as balance
    from ionwright.notebook import check as check
    from ionwright.notebook import combine as combine
    from ionwright.notebook import demonstration as demonstration
    from ionwright.notebook import faraday as faraday
    from ionwright.notebook import predict as predict

__all__ = ["__version__", "balance", "check", "combine", "demonstration", "faraday", "predict"]


def __getattr__(name: str) -> object:
    """Import the notebook functions on first use, so that `import ionwright` stays quick."""
    if name in __all__:
        found: object = getattr(import_module("ionwright.notebook"), name)
        return found
    message = f"module {__name__!r} has no attribute {name!r}"
    raise AttributeError(message)
