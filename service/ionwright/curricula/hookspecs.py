"""What a plugin may contribute. Hooks gain arguments within a version and never lose any."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pluggy

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.curricula.model import Curriculum

PROJECT = "ionwright"
HOOK_VERSION = 1

hookspec = pluggy.HookspecMarker(PROJECT)
hookimpl = pluggy.HookimplMarker(PROJECT)


@hookspec
def ionwright_curricula() -> Iterable[Curriculum]:  # type: ignore[empty-body]  # a hook specification has no body
    """Curricula to offer, each with an id that no other plugin uses.

    Called: once, when the service or a command starts.
    Result: every plugin's curricula are collected; an empty tuple is the polite answer.
    Since: hook version 1.
    """
