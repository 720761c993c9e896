"""The hooks that a plugin may use: a change of this contract must be seen here."""

import inspect

import pluggy

from ionwright.curricula import hookspecs


def hooks() -> dict[str, inspect.Signature]:
    manager = pluggy.PluginManager(hookspecs.PROJECT)
    manager.add_hookspecs(hookspecs)
    return {
        name: inspect.signature(getattr(hookspecs, name))
        for name in vars(manager.hook)
        if not name.startswith("_")
    }


def test_the_hooks_and_their_arguments_are_these() -> None:
    assert {name: list(signature.parameters) for name, signature in hooks().items()} == {
        "ionwright_curricula": []
    }


def test_every_hook_says_when_it_is_called_what_it_gives_and_since_when() -> None:
    for name in hooks():
        text = inspect.getdoc(getattr(hookspecs, name)) or ""
        assert [word in text for word in ("Called:", "Result:", "Since:")] == [True] * 3


def test_the_version_of_the_contract_is_1() -> None:
    assert hookspecs.HOOK_VERSION == 1


def test_a_plugin_and_the_host_meet_under_one_project_name() -> None:
    assert (
        hookspecs.PROJECT == hookspecs.hookimpl.project_name == hookspecs.hookspec.project_name == "ionwright"
    )
