"""Whether the service may listen where it was told to: beyond this machine only once it can ask for a key."""

from __future__ import annotations

import ipaddress
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

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


def refusal(hosts: Iterable[str], environment: Mapping[str, str]) -> str:
    """Two lines on why the service may not listen on `hosts`; empty if it may.

    Parameters
    ----------
    hosts
        Addresses or names that the service is about to listen on.
    environment
        The process environment, which may say that a container's network is the fence.

    Notes
    -----
    This version cannot ask for keys, so none can exist, and nothing but the container's fence lifts the refusal.
    """
    outside = [host for host in hosts if not is_loopback(host)]
    if not outside or environment.get(BEHIND, "").strip() == CONTAINER:
        return ""
    return (
        f"Ionwright does not listen on {outside[0] or 'every address'}: others on the network could use it, "
        "and there is no key to ask them for yet.\n"
        "Leave out --host to serve this machine only, or put the service in a container that publishes its "
        "port on 127.0.0.1 (see README.md, School IT)."
    )
