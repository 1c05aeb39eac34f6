"""The commands that work on a job without a search: `setout start`, `parts`, `mark`, `rehearse`."""

import sys
from pathlib import Path
from typing import Annotated

import typer

from plans.cli.options import Debug, JobFile, Json, PlanFile, PlanFolder, Quiet
from plans.cli.running import run
from plans.commands import mark as mark_command
from plans.commands import parts as parts_command
from plans.commands import rehearse as rehearse_command
from plans.commands import start as start_command


def start(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="The job file to write.")],
    name: Annotated[str | None, typer.Option(help="Title of the job.")] = None,
    units: Annotated[str | None, typer.Option(help="mm or in.")] = None,
    height: Annotated[str | None, typer.Option(help="Outside height of the cabinet.")] = None,
    width: Annotated[str | None, typer.Option(help="Outside width.")] = None,
    depth: Annotated[str | None, typer.Option(help="Outside depth.")] = None,
    count: Annotated[str | None, typer.Option(help="How many cabinets.")] = None,
    sheet_length: Annotated[str | None, typer.Option(help="Length of a sheet.")] = None,
    sheet_width: Annotated[str | None, typer.Option(help="Width of a sheet.")] = None,
    thickness: Annotated[str | None, typer.Option(help="Nominal thickness of a sheet.")] = None,
    price: Annotated[str | None, typer.Option(help="Price of a sheet.")] = None,
    kerf: Annotated[str | None, typer.Option(help="Width that the saw removes.")] = None,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Ask a few questions and write a job file."""
    given = {
        "name": name,
        "units": units,
        "height": height,
        "width": width,
        "depth": depth,
        "count": count,
        "sheet_length": sheet_length,
        "sheet_width": sheet_width,
        "thickness": thickness,
        "price": price,
        "kerf": kerf,
    }
    ask = _ask if sys.stdin.isatty() else None
    run(lambda: start_command.start(file, given, ask), quiet=quiet, debug=debug)


def parts(job: JobFile, json: Json = False, quiet: Quiet = False, debug: Debug = False) -> None:
    """Work out every part, with the sum behind its size. Needs no sheets."""
    run(lambda: parts_command.parts(job), as_json=json, quiet=quiet, debug=debug)


def mark(
    job: JobFile,
    cuts: Annotated[
        list[str] | None,
        typer.Argument(metavar="[CUTS]...", help="Cuts made: 1.7, 1.1-1.7, or 1.all for sheet 1."),
    ] = None,
    reading: Annotated[
        tuple[str, str] | None,
        typer.Option(metavar="CODE SIZE", help="A part measured from the work: A3 440.5x860."),
    ] = None,
    first_off: Annotated[
        tuple[str, str] | None,
        typer.Option(metavar="CODE SIZE", help="The first part of its kind, as cut: A1 561.8x300."),
    ] = None,
    spoilt: Annotated[
        str | None, typer.Option(metavar="CODE", help="A part or piece that has gone wrong.")
    ] = None,
    left: Annotated[
        list[str] | None,
        typer.Option(metavar="SIZE", help="What can still be used of it: 400x310."),
    ] = None,
    missing: Annotated[
        int | None, typer.Option(metavar="SHEET", help="A sheet that is not there.")
    ] = None,
    sheet: Annotated[
        int | None, typer.Option(metavar="SHEET", help="The sheet that these readings are of:")
    ] = None,
    measured: Annotated[
        str | None, typer.Option(metavar="SIZE", help="its size, 2438.5x1219,")
    ] = None,
    diagonals: Annotated[
        str | None, typer.Option(metavar="LENGTHS", help="its diagonals, 2727.1,2728.4,")
    ] = None,
    thickness: Annotated[
        str | None, typer.Option(metavar="LENGTHS", help="its thickness, 17.6,17.8,")
    ] = None,
    defect: Annotated[
        list[str] | None,
        typer.Option(
            metavar="PLACE",
            help="a place that is not sound: its distances from the home corner along the sheet's "
            "length and width, and its size, 410,260,120x90,",
        ),
    ] = None,
    stain: Annotated[
        list[str] | None,
        typer.Option(metavar="PLACE", help="the same, where hidden parts may lie on it."),
    ] = None,
    undo: Annotated[bool, typer.Option("--undo", help="Take back what was marked last.")] = False,
    out: PlanFolder = None,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Record what was cut, measured or spoilt; say what is next."""
    options = mark_command.MarkOptions(
        cuts=tuple(cuts or ()),
        reading=reading,
        first_off=first_off,
        spoilt=spoilt,
        left=tuple(left or ()),
        missing=missing,
        sheet=sheet,
        measured=measured,
        diagonals=diagonals,
        thickness=thickness,
        defects=tuple(defect or ()),
        stains=tuple(stain or ()),
        undo=undo,
        out=out,
    )
    run(lambda: mark_command.mark(job, options), as_json=json, quiet=quiet, debug=debug)


def rehearse(
    plan: PlanFile,
    errors: Annotated[
        str | None,
        typer.Option(metavar="LENGTH", help="Try how much it forgives: settings so far off, 0.5."),
    ] = None,
    seed: Annotated[int, typer.Option(min=0, help="Seed of the random errors.")] = 1,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Saw the printed numbers of a plan virtually and report."""
    run(
        lambda: rehearse_command.rehearse_file(plan, errors, seed),
        as_json=json,
        quiet=quiet,
        debug=debug,
    )


def _ask(question: str, default: str) -> str:
    return str(typer.prompt(question, default=default, err=True))
