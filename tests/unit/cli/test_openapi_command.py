"""`ionwright openapi`: the document to read or to write, and a quick start for all commands."""

from __future__ import annotations

import json
import subprocess
import sys
from typing import TYPE_CHECKING

from click.testing import CliRunner

from ionwright.cli import main

if TYPE_CHECKING:
    from pathlib import Path


def test_the_document_is_printed() -> None:
    result = CliRunner().invoke(main, ["openapi"])
    assert result.exit_code == 0
    assert json.loads(result.stdout)["info"]["title"] == "Ionwright"


def test_the_document_and_its_examples_are_written(tmp_path: Path) -> None:
    result = CliRunner().invoke(main, ["openapi", "--write", str(tmp_path / "contract")])
    assert result.exit_code == 0
    assert str(tmp_path / "contract" / "ionwright.json") in result.stdout
    document = json.loads((tmp_path / "contract" / "ionwright.json").read_text(encoding="utf-8"))
    assert document["openapi"] == "3.1.0"
    assert (tmp_path / "contract" / "examples" / "nickel-plated-bracket.json").is_file()


def test_help_imports_neither_the_api_nor_the_chemistry() -> None:
    script = (
        "import sys\n"
        "from ionwright.cli import main\n"
        "main(['--help'], standalone_mode=False)\n"
        "heavy = {'flask', 'marshmallow', 'orjson', 'ionwright.api', 'ionwright.chemistry', 'ionwright.curricula'}\n"
        "print(sorted(heavy & set(sys.modules)), file=sys.stderr)\n"
    )
    done = subprocess.run([sys.executable, "-c", script], check=True, capture_output=True, text=True)
    assert done.stderr.strip() == "[]"
    for command in ("curricula", "openapi", "predict", "serve"):
        assert f"  {command} " in done.stdout


def test_the_version_is_told() -> None:
    result = CliRunner().invoke(main, ["--version"])
    assert result.stdout.startswith("ionwright, version ")
