"""How a plugin package hands over the declaration that ships inside it."""

from __future__ import annotations

from importlib.resources import files
from typing import TYPE_CHECKING

from ionwright.curricula.declaration import read_declaration

if TYPE_CHECKING:
    from ionwright.curricula.model import Curriculum


def curriculum_from_package(package: str, name: str = "curriculum.toml") -> Curriculum:
    """The curriculum declared in a TOML file of an installed package.

    Parameters
    ----------
    package
        Import name of the package, usually ``__name__``.
    name
        Name of the file in it.

    Raises
    ------
    CurriculumFileFault
        With every fault of the file.
    """
    text = files(package).joinpath(name).read_text(encoding="utf-8")
    return read_declaration(text, f"{package}/{name}")[0]
