"""A virtual environment inside the clone, made when it is needed and renewed when its contents changed.

Used by the two commands of the README. Standard library only: it runs before anything is installed.
"""

from __future__ import annotations

import hashlib
import importlib.util
import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

CLONE = Path(__file__).resolve().parent.parent
STAMP = "ionwright-installed.txt"

NO_VENV = """\
This Python cannot make virtual environments: its ensurepip module is missing.
On Debian and Ubuntu install it with: sudo apt-get install python3-venv"""

NO_PACKAGES = """\
The packages could not be installed; pip says why above.
Without internet: in a clone on a connected machine with the same Python and system, run
  python3 -m pip download --dest wheels {request} "hatchling>=1.25"
Then bring the folder here and run the command again as
  PIP_NO_INDEX=1 PIP_FIND_LINKS=/full/path/to/wheels {command}"""


class EnvironmentFault(Exception):
    """The environment cannot be made; the message says what to do about it."""


@dataclass(frozen=True, slots=True)
class Environment:
    """One virtual environment of the clone and what belongs in it.

    Parameters
    ----------
    folder
        Where it lies; a folder that git ignores.
    install
        What pip is asked to install, such as ``(".",)``.
    sources
        The files and folders whose change calls for a new installation.
    command
        The command that the reader gave, for the advice when something fails.
    """

    folder: Path
    install: tuple[str, ...]
    sources: tuple[Path, ...]
    command: str

    def program(self, name: str) -> Path:
        """Path of a program in the environment, such as ``python``."""
        if os.name == "nt":
            return self.folder / "Scripts" / f"{name}.exe"
        return self.folder / "bin" / name

    def make_ready(self) -> None:
        """Make the environment or bring it up to date; does nothing when it already fits.

        Raises
        ------
        EnvironmentFault
            If this Python cannot make one, or the packages cannot be had.
        """
        python = self._python_stamp()
        wanted = f"{python}\n{content_hash(self.sources)}\n{' '.join(self.install)}\n"
        found = self._stamp()
        if found == wanted:
            return
        self._stamp_path.unlink(missing_ok=True)
        if not found.startswith(f"{python}\n"):
            self._create()
        self._install()
        self._stamp_path.write_text(wanted, encoding="utf-8")

    @property
    def _stamp_path(self) -> Path:
        return self.folder / STAMP

    def _stamp(self) -> str:
        try:
            return self._stamp_path.read_text(encoding="utf-8")
        except OSError:
            return ""

    def _python_stamp(self) -> str:
        # the folder counts, because an environment that was moved has programs that point nowhere
        return f"{sys.version.split()[0]} {sys.base_prefix} {self.folder}"

    def _create(self) -> None:
        if importlib.util.find_spec("ensurepip") is None:
            raise EnvironmentFault(NO_VENV)
        say(f"Making a virtual environment in {self.folder.name}")
        made = subprocess.run(
            [sys.executable, "-m", "venv", "--clear", str(self.folder)],
            check=False,
            capture_output=True,
            text=True,
        )
        if made.returncode:
            raise EnvironmentFault(f"{made.stdout}{made.stderr}".strip() or NO_VENV)

    def _install(self) -> None:
        say(f"Installing {' '.join(self.install)} (about a minute the first time)")
        installed = subprocess.run(
            [
                str(self.program("python")),
                *("-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--no-input"),
                *self.install,
            ],
            check=False,
            cwd=CLONE,
        )
        if installed.returncode:
            request = next(word for word in self.install if not word.startswith("-"))
            raise EnvironmentFault(NO_PACKAGES.format(request=f'"{request}"', command=self.command))


def content_hash(sources: Sequence[Path]) -> str:
    """SHA-256 over the names and contents of the files in `sources`, byte code left out."""
    digest = hashlib.sha256()
    for path in _files(sources):
        digest.update(path.as_posix().encode())
        digest.update(hashlib.sha256(path.read_bytes()).digest())
    return digest.hexdigest()


def _files(sources: Sequence[Path]) -> Iterator[Path]:
    for source in sources:
        if source.is_file():
            yield source
        else:
            yield from sorted(
                path for path in source.rglob("*") if path.is_file() and "__pycache__" not in path.parts
            )


def say(text: str) -> None:
    """Tell the reader what is going on, at once and apart from the results."""
    print(text, file=sys.stderr, flush=True)
