"""Runs code of others for a limited time, so that code that hangs holds nobody up."""

from __future__ import annotations

import ctypes
from threading import Thread
from typing import TYPE_CHECKING, ParamSpec, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable

__all__ = ["TimeLimitPassed", "within"]

Arguments = ParamSpec("Arguments")
Result = TypeVar("Result")


class TimeLimitPassed(Exception):
    """The code did not come back in time."""


def within(
    seconds: float, function: Callable[Arguments, Result], *args: Arguments.args, **kwargs: Arguments.kwargs
) -> Result:
    """What a function returns, if it does so in time.

    It runs in a thread of its own. One that is late is stopped at its next step of Python; one that waits for something
    outside Python is left behind, and ends with the process.

    Parameters
    ----------
    seconds
        Time it may take [s].

    Raises
    ------
    TimeLimitPassed
        If it is not back in time.
    BaseException
        Whatever the function raises.
    """
    returned: list[Result] = []
    raised: list[BaseException] = []

    def run() -> None:
        try:
            returned.append(function(*args, **kwargs))
        except BaseException as fault:
            raised.append(fault)

    thread = Thread(target=run, name="limited", daemon=True)
    thread.start()
    thread.join(seconds)
    if returned:
        return returned[0]
    if raised:
        raise raised[0]
    if thread.ident is not None:
        ctypes.pythonapi.PyThreadState_SetAsyncExc(
            ctypes.c_ulong(thread.ident), ctypes.py_object(TimeLimitPassed)
        )
    raise TimeLimitPassed(f"longer than {seconds:g} s")
