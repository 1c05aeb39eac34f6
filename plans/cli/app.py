"""All commands together, in the order in which one comes to need them."""

import io
import sys

import typer

from plans.cli.job import mark, parts, rehearse, start
from plans.cli.offcuts import offcuts_app
from plans.cli.planning import buy, plan, resume
from plans.outcome import ExitStatus

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    help="From a cabinet or a part list to a printed, checked plan for cutting it.",
)
for command in (start, parts, plan, buy, mark, resume, rehearse):
    app.command()(command)
app.add_typer(offcuts_app, name="offcuts")


def main() -> None:
    """Run the command line."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):  # a letter that it does not know stops nothing
            stream.reconfigure(errors="backslashreplace")
    try:
        app()
    except KeyboardInterrupt:
        sys.exit(int(ExitStatus.INTERRUPTED))
