"""Loads curricula from installed plugins and from a folder of TOML files; faults set one aside, never the rest."""

from __future__ import annotations

import difflib
import logging
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from functools import cache, partial
from importlib.metadata import EntryPoint, entry_points
from typing import TYPE_CHECKING, Any

import pluggy

from ionwright.curricula import hookspecs
from ionwright.curricula.constant_faults import faults_of_constants
from ionwright.curricula.declaration import is_id, read_declaration
from ionwright.curricula.faults import CurriculumFault, CurriculumFileFault, UnknownCurriculum
from ionwright.curricula.guard import guarded
from ionwright.curricula.model import Curriculum
from ionwright.curricula.time_limit import within
from ionwright.curricula.trial import try_out

if TYPE_CHECKING:
    from pathlib import Path

GROUP = "ionwright.plugins"
_DISTRIBUTION = "ionwright"
_BUILT_IN = "built-in"
_LOADING_LIMIT_S = 10.0
_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Origin:
    """Where a curriculum comes from: ``"built-in"``, ``"plugin"`` or ``"file"``, and its name and version."""

    kind: str
    name: str
    version: str


@dataclass(frozen=True, slots=True)
class SetAside:
    """A plugin or file that could not be used, and why."""

    kind: str
    name: str
    reason: str


class Registry(Mapping[str, Curriculum]):
    """The curricula at hand, by id.

    Parameters
    ----------
    curricula
        By id, in the order in which they are listed.
    origins
        Where each comes from.
    set_aside
        What could not be used; a list may grow as rules fail.
    bases
        Gives the declarations, by id, on which others may build; asked when the first one is needed.
    """

    def __init__(
        self,
        curricula: Mapping[str, Curriculum],
        origins: Mapping[str, Origin],
        set_aside: Collection[SetAside] = (),
        bases: Callable[[], Mapping[str, Mapping[str, Any]]] = dict,
    ) -> None:
        self._curricula = dict(sorted(curricula.items()))
        self.origins = dict(origins)
        self._set_aside = set_aside
        self._bases = cache(bases)

    def declared(self, text: str, origin: str) -> Curriculum:
        """The curriculum that a TOML text declares; it may build on those of the plugins, and is not kept.

        Parameters
        ----------
        origin
            What to call the text in a fault.

        Raises
        ------
        CurriculumFileFault
            With every fault of the text and the key path of each.
        """
        curriculum, _ = read_declaration(text, origin, self._bases())
        return curriculum

    @property
    def set_aside(self) -> tuple[SetAside, ...]:
        """What could not be used so far, and which rules failed."""
        return tuple(self._set_aside)

    def __getitem__(self, id_: str) -> Curriculum:
        """The curriculum with this id; capitals and spaces in place of hyphens are forgiven.

        Raises
        ------
        UnknownCurriculum
            Code ``unknown-curriculum``, with near matches in the remedy.
        """
        found = self._curricula.get(id_) or self._curricula.get("-".join(id_[:40].casefold().split()))
        if found is not None:
            return found
        near = difflib.get_close_matches(id_[:40].casefold(), self._curricula, n=2, cutoff=0.6)
        hint = f"Did you mean {' or '.join(near)}? " if near else ""
        raise UnknownCurriculum(
            "unknown-curriculum",
            f"There is no curriculum '{id_[:40]}' here.",
            where="curriculum",
            remedy=f"{hint}Known: {', '.join(self._curricula)}.",
        )

    def __iter__(self) -> Iterator[str]:
        """The ids in order."""
        return iter(self._curricula)

    def __len__(self) -> int:
        """How many curricula there are."""
        return len(self._curricula)

    def __contains__(self, id_: object) -> bool:
        """Whether there is a curriculum with this id."""
        return id_ in self._curricula


class _Loader:
    """Gathers curricula one by one, so that a bad one harms no other."""

    def __init__(self) -> None:
        self.curricula: dict[str, Curriculum] = {}
        self.origins: dict[str, Origin] = {}
        self.set_aside: list[SetAside] = []

    def reject(self, kind: str, name: str, reason: str) -> None:
        _log.warning("%s %s set aside: %s", kind, name, reason)
        self.set_aside.append(SetAside(kind, name, reason))

    def add(self, curriculum: object, origin: Origin) -> None:
        if not isinstance(curriculum, Curriculum):
            self.reject(origin.kind, origin.name, f"gave a {type(curriculum).__name__}, not a Curriculum")
        elif not is_id(curriculum.id):
            self.reject(
                origin.kind,
                origin.name,
                f"{str(curriculum.id)[:60]!r} is no id: lower-case words joined by hyphens are wanted",
            )
        elif curriculum.id in self.curricula:
            holder = self.origins[curriculum.id]
            self.reject(
                origin.kind, origin.name, f"the id '{curriculum.id}' is taken by {holder.kind} {holder.name}"
            )
        elif faults := faults_of_constants(getattr(curriculum.conventions, "constants", None)):
            told = "; ".join(f"{name}: {fault}" for name, fault in faults)
            self.reject(origin.kind, origin.name, f"the constants of '{curriculum.id}' are not right: {told}")
        else:
            self.admit(curriculum, origin)

    def admit(self, curriculum: Curriculum, origin: Origin) -> None:
        """Take a curriculum in; one that brings code of its own is tried first, and watched from then on."""
        if origin.kind == "plugin":
            try:
                try_out(guarded(curriculum, lambda _: None))
                curriculum = guarded(curriculum, partial(self.reject, origin.kind, curriculum.id))
            except KeyboardInterrupt:
                raise
            except BaseException as fault:  # whatever a plugin raises, the others are served
                self.reject(origin.kind, origin.name, f"'{curriculum.id}' {_told(fault)}")
                return
        self.curricula[curriculum.id] = curriculum
        self.origins[curriculum.id] = origin

    def plugin(self, point: EntryPoint) -> None:
        origin = _origin(point)
        manager = pluggy.PluginManager(hookspecs.PROJECT)
        manager.add_hookspecs(hookspecs)
        try:
            limit_s = None if origin.kind == _BUILT_IN else _LOADING_LIMIT_S
            plugin = _in_time(limit_s, point.load)
            manager.register(plugin, name=point.name)
            manager.check_pending()
            contributed = _in_time(limit_s, partial(_contributed, manager))
        except KeyboardInterrupt:
            raise
        except BaseException as fault:  # whatever a plugin raises, the others are served
            self.reject(origin.kind, point.name, f"{type(fault).__name__}: {fault}")
            return
        if not manager.get_hookcallers(plugin):
            self.reject(origin.kind, point.name, "no function of it is marked with hookimpl")
        for curriculum in contributed:
            self.add(curriculum, origin)

    def file(self, path: Path, bases: Mapping[str, Mapping[str, Any]]) -> None:
        try:
            curriculum, _ = read_declaration(path.read_text(encoding="utf-8"), path.name, bases)
        except (CurriculumFileFault, OSError, UnicodeDecodeError) as fault:
            listed = fault.listed if isinstance(fault, CurriculumFileFault) else str(fault)
            self.reject("file", path.name, listed)
            return
        self.add(curriculum, Origin("file", path.name, ""))


def _contributed(manager: pluggy.PluginManager) -> list[object]:
    return [one for many in manager.hook.ionwright_curricula() for one in many]


def _in_time(limit_s: float | None, function: Callable[[], Any]) -> Any:
    return function() if limit_s is None else within(limit_s, function)


def _told(fault: BaseException) -> str:
    if isinstance(fault, CurriculumFault):
        return f"fails when it is tried: {fault}"
    return f"fails when it is tried: {type(fault).__name__}: {fault}"


def _origin(point: EntryPoint) -> Origin:
    distribution = point.dist
    name = distribution.name if distribution else ""
    kind = _BUILT_IN if name == _DISTRIBUTION else "plugin"
    return Origin(
        kind, point.name if kind == _BUILT_IN else name, distribution.version if distribution else ""
    )


def _bases(points: Iterable[EntryPoint]) -> dict[str, Mapping[str, Any]]:
    """The declarations of the plugins that ship one, for files that build on them."""
    found: dict[str, Mapping[str, Any]] = {}
    for point in points:
        with suppress(Exception, SystemExit):  # it is reported where the plugin itself is loaded
            curriculum, data = _shipped(point)
            found[curriculum.id] = data
    return found


def _shipped(point: EntryPoint) -> tuple[Curriculum, Mapping[str, Any]]:
    from importlib.resources import files  # noqa: PLC0415 - only needed when there is a folder of files

    text = files(point.module).joinpath("curriculum.toml").read_text(encoding="utf-8")
    return read_declaration(text, point.module)


def load_curricula(folder: Path | None = None, without: Collection[str] = ()) -> Registry:
    """Every curriculum of the installed plugins and of a folder of TOML files.

    Parameters
    ----------
    folder
        Its ``*.toml`` files are read in the order of their names; None for no folder.
    without
        Names of plugins to leave out.

    Raises
    ------
    CurriculumFault
        Code ``no-curricula`` if nothing at all could be loaded: the package is not installed properly.
    """
    points = sorted(
        (point for point in entry_points(group=GROUP) if point.name not in without),
        key=lambda point: point.name,
    )
    loader = _Loader()
    for point in points:
        loader.plugin(point)
    if folder is not None:
        bases = _bases(points)
        for path in sorted(folder.glob("*.toml")):
            loader.file(path, bases)
    if not loader.curricula:
        reasons = "; ".join(f"{one.name}: {one.reason}" for one in loader.set_aside)
        raise CurriculumFault(
            "no-curricula",
            f"No curriculum could be loaded. {reasons}".strip(),
            remedy="Install the package again, so that its plugins are registered.",
        )
    return Registry(loader.curricula, loader.origins, loader.set_aside, partial(_bases, points))
