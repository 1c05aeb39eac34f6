"""The commands that search: `setout plan`, `buy` and `resume`."""

from typing import Annotated

import typer

from plans.cli.options import (
    Book,
    Debug,
    Effort,
    JobFile,
    Json,
    OutFolder,
    Paper,
    PaperName,
    PlanFolder,
    Quiet,
    Seconds,
    Seed,
    Svg,
)
from plans.cli.running import run_searching
from plans.commands import buy as buy_command
from plans.commands import plan as plan_command
from plans.commands import resume as resume_command
from plans.commands.plan_options import PlanOptions


def plan(
    job: JobFile,
    out: OutFolder = None,
    paper: Paper = PaperName.A4,
    seed: Seed = 1,
    effort: Effort = None,
    seconds: Seconds = None,
    svg: Svg = False,
    pages: Annotated[
        str, typer.Option(help="Only these pages: overview,sheets,labels or 3,5-8. Default: all.")
    ] = "",
    book: Book = False,
    ways: Annotated[
        bool, typer.Option("--ways", help="Print other ways to buy, too; searches longer.")
    ] = False,
    read_aloud: Annotated[
        bool, typer.Option("--read-aloud", help="Also print the cuts in words, to be read out.")
    ] = False,
    turn_tiles: Annotated[
        bool,
        typer.Option("--turn-tiles", help="Print every other tile of a template upside down."),
    ] = False,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Lay the parts on sheets, rehearse the cuts and write the pages."""
    options = PlanOptions(
        out=out,
        paper=paper.value,
        seed=seed,
        effort=effort,
        seconds=seconds,
        svg=svg,
        pages=pages,
        writes=not json or out is not None,
        book=book,
        ways=ways,
        read_aloud=read_aloud,
        turn_tiles=turn_tiles,
    )
    run_searching(
        lambda progress: plan_command.plan(job, options, progress),
        as_json=json,
        quiet=quiet,
        debug=debug,
    )


def buy(
    job: JobFile,
    seed: Seed = 1,
    effort: Effort = None,
    seconds: Seconds = None,
    book: Annotated[bool, typer.Option("--book", help="Use the book of leftovers.")] = False,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """List ways to buy, priced, and sizes that nearly save a sheet. Writes nothing."""
    options = buy_command.BuyOptions(seed=seed, effort=effort, seconds=seconds, book=book)
    run_searching(
        lambda progress: buy_command.buy(job, options, progress),
        as_json=json,
        quiet=quiet,
        debug=debug,
    )


def resume(
    job: JobFile,
    out: PlanFolder = None,
    paper: Paper = PaperName.A4,
    seed: Seed = 1,
    effort: Effort = None,
    seconds: Seconds = None,
    svg: Svg = False,
    book: Book = False,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Plan the rest from the record, with what is in hand now."""
    options = PlanOptions(
        out=out,
        paper=paper.value,
        seed=seed,
        effort=effort,
        seconds=seconds,
        svg=svg,
        book=book,
        writes=not json or out is not None,
    )
    run_searching(
        lambda progress: resume_command.resume(job, options, progress),
        as_json=json,
        quiet=quiet,
        debug=debug,
    )
