"""Test Ionwright from a clone: makes its environment, then lint, format, types, layers and the tests.

`python3 tests/run.py [OPTIONS]`; the options go to pytest, such as `tests/unit/cli` or `-k hydrates`.
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - an older Python reads this file too, and deserves the sentence
    sys.exit("Ionwright needs Python 3.11 or newer; this is Python %d.%d." % sys.version_info[:2])  # noqa: UP031

import shutil
import subprocess
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "service"))

from environment import CLONE, Environment, EnvironmentFault, say

ENVIRONMENT = Environment(
    folder=CLONE / ".venv-test",
    install=("--editable", ".[test]"),
    sources=(CLONE / "pyproject.toml",),
    command="python3 tests/run.py",
)
CHECKS = (
    ("ruff", "check"),
    ("ruff", "format", "--check"),
    ("mypy",),
    ("lint-imports", "--no-logo"),
)
CHROMIUM = ("chromium", "chromium-browser", "google-chrome")
NOTHING_COLLECTED = 5


def main(options: list[str]) -> int:
    """Run every check, then the tests; returns 0 only if all of them pass."""
    try:
        ENVIRONMENT.make_ready()
    except EnvironmentFault as fault:
        sys.exit(str(fault))
    failed = [" ".join(check) for check in CHECKS if not run(*check)]
    if not any(map(shutil.which, CHROMIUM)):
        say("Skipped: the browser tests, for want of Chromium (Debian: apt-get install chromium)")
    if failed:
        say(f"FAILED before the tests: {', '.join(failed)}")
    passed = run_chosen(options) if options else run_all()
    return 0 if passed and not failed else 1


def run(program: str, *arguments: str, accept: tuple[int, ...] = (0,)) -> bool:
    """Run a program of the environment in the clone; tells whether its exit code was acceptable."""
    say(f"== {' '.join((program, *arguments))}")
    done = subprocess.run([str(ENVIRONMENT.program(program)), *arguments], check=False, cwd=CLONE)
    return done.returncode in accept


def run_chosen(options: list[str]) -> bool:
    """Run pytest as the reader asks."""
    return run("pytest", *options)


def run_all() -> bool:
    """Run all tests: the benchmarks first and alone, since they compare times, then the rest on two cores."""
    alone = run("pytest", "-m", "benchmark", "-s", accept=(0, NOTHING_COLLECTED))
    if not alone:
        say("FAILED: the benchmarks")
    return run("pytest", "-n", "2", "-m", "not benchmark") and alone


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
