"""The French Terminale family of courses."""

from ionwright.curricula import Curriculum, curriculum_from_package, hookimpl


@hookimpl
def ionwright_curricula() -> tuple[Curriculum, ...]:
    """The curriculum declared beside this file."""
    return (curriculum_from_package(__name__),)
