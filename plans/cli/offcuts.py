"""`setout offcuts`: the book of leftovers, with commands of its own."""

from pathlib import Path
from typing import Annotated

import typer

from plans.cli.options import Debug, Json, PlanFile, Quiet
from plans.cli.running import run
from plans.commands import offcuts as offcuts_command

LARGEST_NUMBER = 1_000_000_000
"""Of a leftover in the book: more than anybody writes on boards."""

offcuts_app = typer.Typer(
    no_args_is_help=True,
    rich_markup_mode=None,
    help="The book of leftovers that stand in the garage.",
)


Numbers = Annotated[
    list[int],
    typer.Argument(metavar="NUMBER...", min=1, max=LARGEST_NUMBER, help="Numbers in the book."),
]
Day = Annotated[
    str | None, typer.Option("--date", metavar="DAY", help="Such as 2026-11-25. Default: today.")
]
Units = Annotated[str, typer.Option(help="mm or in, for sizes without a unit.")]


@offcuts_app.command("list")
def offcuts_list(
    units: Units = "mm",
    day: Day = None,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """List the leftovers, the keep rule and what to throw."""
    run(lambda: offcuts_command.list_all(units, day), as_json=json, quiet=quiet, debug=debug)


@offcuts_app.command("add")
def offcuts_add(
    material: Annotated[str, typer.Argument(help="Such as 'birch plywood'.")],
    size: Annotated[str, typer.Argument(help="Such as 600x300.")],
    thickness: Annotated[str, typer.Option(help="Thickness that it was sold as.")],
    measured: Annotated[str | None, typer.Option(help="Thickness as measured.")] = None,
    grain: Annotated[
        str, typer.Option(help="Side of the size that the grain runs along: length, width or none.")
    ] = "length",
    good: Annotated[
        str, typer.Option(help="Edges to measure from: left,right,top,bottom or all.")
    ] = "",
    units: Units = "mm",
    day: Day = None,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Write a leftover into the book."""
    options = offcuts_command.AddOptions(
        material=material,
        size=size,
        thickness=thickness,
        measured=measured,
        grain=grain,
        good=good,
        units=units,
        day=day,
    )
    run(lambda: offcuts_command.add_one(options), as_json=json, quiet=quiet, debug=debug)


@offcuts_app.command("from")
def offcuts_from(
    plan: PlanFile,
    day: Day = None,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Take over the leftovers of a plan that has been cut."""
    run(lambda: offcuts_command.take_over(plan, day), as_json=json, quiet=quiet, debug=debug)


@offcuts_app.command("reserve")
def offcuts_reserve(
    numbers: Numbers,
    job: Annotated[Path, typer.Option("--for", metavar="JOB", help="The job file.")],
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Reserve leftovers for a job."""
    run(lambda: offcuts_command.reserve_some(numbers, job), quiet=quiet, debug=debug)


@offcuts_app.command("release")
def offcuts_release(numbers: Numbers, quiet: Quiet = False, debug: Debug = False) -> None:
    """Let other jobs have leftovers that were reserved."""
    run(lambda: offcuts_command.release_some(numbers), quiet=quiet, debug=debug)


@offcuts_app.command("take")
def offcuts_take(
    numbers: Numbers, day: Day = None, quiet: Quiet = False, debug: Debug = False
) -> None:
    """Strike leftovers out: used up or thrown out."""
    run(lambda: offcuts_command.take_some(numbers, day), quiet=quiet, debug=debug)


@offcuts_app.command("rule")
def offcuts_rule(
    smallest: Annotated[
        str | None, typer.Option(metavar="SIZE", help="Smallest piece worth keeping: 300x100.")
    ] = None,
    space: Annotated[
        str | None, typer.Option(metavar="M2", help="Room in square metres of board, or none.")
    ] = None,
    units: Units = "mm",
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Say which leftovers are kept and how much room there is."""
    run(lambda: offcuts_command.set_rule(smallest, space, units), quiet=quiet, debug=debug)


@offcuts_app.command("export")
def offcuts_export(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="A CSV file to write.")],
    units: Units = "mm",
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Write the book as a table."""
    run(lambda: offcuts_command.export(file, units), quiet=quiet, debug=debug)
