"""The command `ionwright`; each command imports what it needs only when it runs."""

from __future__ import annotations

import click

from ionwright import __version__
from ionwright.cli.balance import balance, combine
from ionwright.cli.check import check
from ionwright.cli.compare import compare
from ionwright.cli.curricula import curricula
from ionwright.cli.demonstration import demonstration
from ionwright.cli.openapi import openapi
from ionwright.cli.predict import predict
from ionwright.cli.quantities import quantities
from ionwright.cli.serve import serve

__all__ = ["main"]


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, prog_name="ionwright")
def main() -> None:
    """Work out electrolysis cells for teaching: what is discharged at each electrode, and why."""


for command in (
    serve,
    predict,
    compare,
    balance,
    combine,
    check,
    quantities,
    demonstration,
    curricula,
    openapi,
):
    main.add_command(command)
