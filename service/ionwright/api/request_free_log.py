"""A log without requests: what pupils send, and from where, is never written down."""

from __future__ import annotations

from gunicorn.glogging import Logger

REFUSED = "Invalid request from ip="
FAILED = "Error handling request"


class RequestFreeLog(Logger):  # type: ignore[misc]  # gunicorn ships no types
    """Gunicorn's log with the two messages reworded that quote a request or its sender."""

    def warning(self, msg: str, *args: object, **kwargs: object) -> None:
        """Log a warning; a refused request is counted, not quoted."""
        if msg.startswith(REFUSED):
            super().warning("A request that is not valid HTTP was refused")
        else:
            super().warning(msg, *args, **kwargs)

    def exception(self, msg: str, *args: object, **kwargs: object) -> None:
        """Log an exception with its traceback, without the address that was asked for."""
        if msg.startswith(FAILED):
            super().exception("A request could not be handled", **kwargs)
        else:
            super().exception(msg, *args, **kwargs)
