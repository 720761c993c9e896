"""Whether the service may listen where it was told to: beyond this machine only once a key exists."""

from __future__ import annotations

import ipaddress
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

KEYS = "IONWRIGHT_KEYS"
BEHIND = "IONWRIGHT_BEHIND"
CONTAINER = "container"


def is_loopback(host: str) -> bool:
    """Whether only programs on this machine can reach `host`: 127.0.0.0/8, ::1 or localhost.

    A name other than localhost counts as reachable from outside, whatever it resolves to now.
    """
    bare = host.strip("[]").lower()
    if bare == "localhost":
        return True
    try:
        return ipaddress.ip_address(bare).is_loopback
    except ValueError:
        return False


def key_file(environment: Mapping[str, str]) -> Path:
    """Path of the file of keys: ``IONWRIGHT_KEYS``, else ``keys.toml`` among the user's settings."""
    given = environment.get(KEYS, "").strip()
    if given:
        return Path(given)
    settings = environment.get("XDG_CONFIG_HOME", "").strip()
    return (Path(settings) if settings else Path("~/.config").expanduser()) / "ionwright" / "keys.toml"


def refusal(hosts: Iterable[str], environment: Mapping[str, str]) -> str:
    """Two lines on why the service may not listen on `hosts`; empty if it may.

    Parameters
    ----------
    hosts
        Addresses or names that the service is about to listen on.
    environment
        The process environment: names the file of keys, or says that a container's network is the fence.
    """
    outside = [host for host in hosts if not is_loopback(host)]
    if not outside or environment.get(BEHIND, "").strip() == CONTAINER:
        return ""
    keys = key_file(environment)
    if _holds_something(keys):
        return ""
    return (
        f"Ionwright does not listen on {outside[0] or 'every address'}: others on the network could use it, "
        f"and there is no key yet ({keys} is missing or empty).\n"
        "Leave out --host to serve this machine only, or put the service in a container that publishes its "
        "port on 127.0.0.1 (see README.md, School IT)."
    )


def _holds_something(keys: Path) -> bool:
    try:
        return keys.stat().st_size > 0
    except OSError:
        return False
