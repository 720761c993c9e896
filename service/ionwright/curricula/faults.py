"""What the curricula layer refuses."""

from ionwright.errors import IonwrightError


class CurriculumFault(IonwrightError):
    """A curriculum that is asked for but not there, or a declaration that cannot be used."""


class UnknownCurriculum(CurriculumFault, KeyError):
    """An id that no curriculum has; a KeyError too, so that the registry keeps the promises of a mapping."""


class CurriculumFileFault(CurriculumFault):
    """A declaration with faults: all of them at once, each with its key path.

    Parameters
    ----------
    origin
        The file or package that holds the declaration.
    faults
        Pairs of key path and what is wrong there.
    """

    def __init__(self, origin: str, faults: tuple[tuple[str, str], ...]) -> None:
        self.listed = "; ".join(f"{path or 'the declaration'}: {text}" for path, text in faults)
        super().__init__("bad-curriculum", f"{origin}: {self.listed}")
        self.origin = origin
        self.faults = faults
