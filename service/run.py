"""Run Ionwright from a clone: makes its environment, installs the service and starts it on this machine.

`python3 service/run.py [--host HOST] [--port PORT] [--workers N]`, the options of `ionwright serve`.
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - an older Python reads this file too, and deserves the sentence
    sys.exit("Ionwright needs Python 3.11 or newer; this is Python %d.%d." % sys.version_info[:2])  # noqa: UP031

import os
import subprocess

from environment import CLONE, Environment, EnvironmentFault

ENVIRONMENT = Environment(
    folder=CLONE / ".venv",
    install=(".",),
    sources=(CLONE / "pyproject.toml", CLONE / "README.md", CLONE / "service", CLONE / "plugins"),
    command="python3 service/run.py",
)


def main(options: list[str]) -> int:
    """Serve with the given options of `ionwright serve`; returns the exit code if it comes back."""
    try:
        ENVIRONMENT.make_ready()
    except EnvironmentFault as fault:
        sys.exit(str(fault))
    command = [str(ENVIRONMENT.program("python")), "-m", "ionwright", "serve", *options]
    if os.name != "nt":
        os.execv(command[0], command)  # noqa: S606 - no shell is meant: signals go straight to the service
    return subprocess.run(command, check=False).returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
