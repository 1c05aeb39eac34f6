"""The command line: the only place that prints."""

import codecs
import errno
import io
import json
import sys
import traceback
from collections.abc import Callable, Iterator
from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from nesting.errors import InputError, NestingError, NoFitError
from plans.commands import buy as buy_command
from plans.commands import mark as mark_command
from plans.commands import offcuts as offcuts_command
from plans.commands import parts as parts_command
from plans.commands import plan as plan_command
from plans.commands import rehearse as rehearse_command
from plans.commands import resume as resume_command
from plans.commands import start as start_command
from plans.outcome import ExitStatus, Outcome
from plans.progress import ProgressLine

MOST_FAULTS = 30
"""Faults shown at once."""
LARGEST_NUMBER = 1_000_000_000
"""Of a leftover in the book: more than anybody writes on boards."""

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    help="From a cabinet or a part list to a printed, checked plan for cutting it.",
)


offcuts_app = typer.Typer(
    no_args_is_help=True,
    rich_markup_mode=None,
    help="The book of leftovers: what stands in the garage from job to job.",
)


class PaperName(StrEnum):
    """Papers that the pages are made for."""

    A4 = "A4"
    LETTER = "Letter"


# Whether a file can be read is for the command to say, in the words of every other fault.
JobFile = Annotated[
    Path, typer.Argument(metavar="JOB", readable=False, help="The job file (TOML).")
]
PlanFile = Annotated[
    Path, typer.Argument(metavar="PLAN", readable=False, help="A plan file (NAME.plan.json).")
]
Json = Annotated[bool, typer.Option("--json", help="Print the result as JSON.")]
Quiet = Annotated[bool, typer.Option("--quiet", help="Print nothing but the result and errors.")]
Debug = Annotated[bool, typer.Option("--debug", help="Show where in the code an error arose.")]


@app.command()
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
    """Ask a few questions and write a job file that plans as it stands."""
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
    _run(lambda: start_command.start(file, given, ask), quiet=quiet, debug=debug)


@app.command()
def parts(job: JobFile, json: Json = False, quiet: Quiet = False, debug: Debug = False) -> None:
    """Work out every part, with the sum behind its size. Needs no sheets."""
    _run(lambda: parts_command.parts(job), as_json=json, quiet=quiet, debug=debug)


@app.command()
def plan(
    job: JobFile,
    out: Annotated[
        Path | None, typer.Option(help="Folder to write into. Default: beside the job file.")
    ] = None,
    paper: Annotated[PaperName, typer.Option(help="Paper to print on.")] = PaperName.A4,
    seed: Annotated[int, typer.Option(min=0, help="Another seed, another search.")] = 1,
    effort: Annotated[
        int | None, typer.Option(min=0, help="Iterations of the search. Decides the plan.")
    ] = None,
    seconds: Annotated[
        float | None, typer.Option(min=0.0, help="Stop searching after this long.")
    ] = None,
    svg: Annotated[bool, typer.Option("--svg", help="Also write each page as SVG.")] = False,
    pages: Annotated[
        str, typer.Option(help="Only these pages: overview,sheets,labels or 3,5-8. Default: all.")
    ] = "",
    book: Annotated[
        bool, typer.Option("--book", help="Use the book of leftovers, and reserve what is used.")
    ] = False,
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
    options = plan_command.PlanOptions(
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
    with ProgressLine(sys.stderr, is_quiet=quiet) as progress:
        outcome = _attempt(lambda: plan_command.plan(job, options, progress), debug=debug)
    _finish(outcome, as_json=json, quiet=quiet)


@app.command()
def buy(
    job: JobFile,
    seed: Annotated[int, typer.Option(min=0, help="Another seed, another search.")] = 1,
    effort: Annotated[
        int | None, typer.Option(min=0, help="Iterations of each search. Decides the plans.")
    ] = None,
    seconds: Annotated[
        float | None, typer.Option(min=0.0, help="Stop searching after this long.")
    ] = None,
    book: Annotated[bool, typer.Option("--book", help="Use the book of leftovers.")] = False,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """List ways to buy, priced, and sizes that nearly save a sheet. Writes nothing."""
    options = buy_command.BuyOptions(seed=seed, effort=effort, seconds=seconds, book=book)
    with ProgressLine(sys.stderr, is_quiet=quiet) as progress:
        outcome = _attempt(lambda: buy_command.buy(job, options, progress), debug=debug)
    _finish(outcome, as_json=json, quiet=quiet)


@app.command()
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
    out: Annotated[Path | None, typer.Option(help="Folder of the plan file.")] = None,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Record what was cut, measured or spoilt, and say what comes next."""
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
    _run(lambda: mark_command.mark(job, options), as_json=json, quiet=quiet, debug=debug)


@app.command()
def resume(
    job: JobFile,
    out: Annotated[
        Path | None, typer.Option(help="Folder of the plan file. Default: beside the job file.")
    ] = None,
    paper: Annotated[PaperName, typer.Option(help="Paper to print on.")] = PaperName.A4,
    seed: Annotated[int, typer.Option(min=0, help="Another seed, another search.")] = 1,
    effort: Annotated[
        int | None, typer.Option(min=0, help="Iterations of the search. Decides the plan.")
    ] = None,
    seconds: Annotated[
        float | None, typer.Option(min=0.0, help="Stop searching after this long.")
    ] = None,
    svg: Annotated[bool, typer.Option("--svg", help="Also write each page as SVG.")] = False,
    book: Annotated[
        bool, typer.Option("--book", help="Use the book of leftovers, and reserve what is used.")
    ] = False,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Plan what is left from the record, with the pieces that are in the garage now."""
    options = plan_command.PlanOptions(
        out=out,
        paper=paper.value,
        seed=seed,
        effort=effort,
        seconds=seconds,
        svg=svg,
        book=book,
        writes=not json or out is not None,
    )
    with ProgressLine(sys.stderr, is_quiet=quiet) as progress:
        outcome = _attempt(lambda: resume_command.resume(job, options, progress), debug=debug)
    _finish(outcome, as_json=json, quiet=quiet)


@app.command()
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
    _run(
        lambda: rehearse_command.rehearse_file(plan, errors, seed),
        as_json=json,
        quiet=quiet,
        debug=debug,
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
    """List the leftovers, the keep rule and what to throw where there is no room."""
    _run(lambda: offcuts_command.list_all(units, day), as_json=json, quiet=quiet, debug=debug)


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
    _run(lambda: offcuts_command.add_one(options), as_json=json, quiet=quiet, debug=debug)


@offcuts_app.command("from")
def offcuts_from(
    plan: PlanFile,
    day: Day = None,
    json: Json = False,
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Take over the leftovers of a plan that has been cut."""
    _run(lambda: offcuts_command.take_over(plan, day), as_json=json, quiet=quiet, debug=debug)


@offcuts_app.command("reserve")
def offcuts_reserve(
    numbers: Numbers,
    job: Annotated[Path, typer.Option("--for", metavar="JOB", help="The job file.")],
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Reserve leftovers for a job."""
    _run(lambda: offcuts_command.reserve_some(numbers, job), quiet=quiet, debug=debug)


@offcuts_app.command("release")
def offcuts_release(numbers: Numbers, quiet: Quiet = False, debug: Debug = False) -> None:
    """Let other jobs have leftovers that were reserved."""
    _run(lambda: offcuts_command.release_some(numbers), quiet=quiet, debug=debug)


@offcuts_app.command("take")
def offcuts_take(
    numbers: Numbers, day: Day = None, quiet: Quiet = False, debug: Debug = False
) -> None:
    """Strike leftovers out: used up or thrown out."""
    _run(lambda: offcuts_command.take_some(numbers, day), quiet=quiet, debug=debug)


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
    _run(lambda: offcuts_command.set_rule(smallest, space, units), quiet=quiet, debug=debug)


@offcuts_app.command("export")
def offcuts_export(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="A CSV file to write.")],
    units: Units = "mm",
    quiet: Quiet = False,
    debug: Debug = False,
) -> None:
    """Write the book as a table."""
    _run(lambda: offcuts_command.export(file, units), quiet=quiet, debug=debug)


app.add_typer(offcuts_app, name="offcuts")


def _ask(question: str, default: str) -> str:
    return str(typer.prompt(question, default=default, err=True))


def _run(
    command: Callable[[], Outcome], *, as_json: bool = False, quiet: bool, debug: bool
) -> None:
    _finish(_attempt(command, debug=debug), as_json=as_json, quiet=quiet)


def _attempt(command: Callable[[], Outcome], *, debug: bool) -> Outcome:
    """Run a command; whatever goes wrong becomes a message and a status."""
    try:
        return command()
    except (Exception, KeyboardInterrupt) as error:  # noqa: BLE001 - no traceback at the saw
        if debug:
            traceback.print_exc()
        return _explain(error)


def _explain(error: BaseException) -> Outcome:
    match error:
        case InputError():
            return Outcome(status=ExitStatus.WRONG_INPUT, messages=tuple(_list_faults(error)))
        case NoFitError():
            return _failure(ExitStatus.SOME_PARTS_DO_NOT_FIT, str(error))
        case NestingError():
            return _failure(ExitStatus.FAILED, str(error))
        case KeyboardInterrupt() | typer.Abort():
            return _failure(ExitStatus.INTERRUPTED, "Interrupted: nothing was written.")
        case OSError():
            return _failure(ExitStatus.FAILED, _sentence(error))
        case _:
            return _failure(
                ExitStatus.FAILED,
                f"setout: something unexpected went wrong ({error!r}).\n"
                "Nothing was written. Run it again with --debug and report what it prints.",
            )


def _list_faults(error: InputError) -> Iterator[str]:
    """Yield the faults, not so many that the first ones scroll away."""
    yield from map(str, error.faults[:MOST_FAULTS])
    rest = len(error.faults) - MOST_FAULTS
    if rest > 0:
        yield f"{rest} more such faults are not shown. Mend these first."


def _failure(status: ExitStatus, message: str) -> Outcome:
    return Outcome(status=status, messages=(message,))


def _sentence(error: OSError) -> str:
    place = error.filename or "writing"
    reason = (error.strerror or str(error)).lower()
    remedy = _REMEDIES.get(error.errno or 0, "Check the name, the folder and the disk.")
    return f"{place}: {reason}.\nEarlier files are as they were. {remedy}"


_REMEDIES = {
    errno.ENOSPC: "Make room on the disk.",
    errno.EDQUOT: "Make room on the disk.",
    errno.EFBIG: "Make room on the disk.",
    errno.EACCES: "Change its permissions, or name another folder.",
    errno.EPERM: "Change its permissions, or name another folder.",
    errno.EROFS: "Name another folder.",
    errno.EISDIR: "Move the folder away, or choose another name.",
    errno.ENAMETOOLONG: "Choose a shorter name.",
}


def _finish(outcome: Outcome, *, as_json: bool, quiet: bool) -> None:
    failed = outcome.status not in (ExitStatus.DONE, ExitStatus.SOME_PARTS_DO_NOT_FIT)
    if outcome.messages and (failed or not quiet):
        typer.echo("\n".join(outcome.messages), err=True)
    try:
        if as_json and outcome.data:
            typer.echo(json.dumps(outcome.data, ensure_ascii=not _writes_utf_8(), indent=1))
        elif outcome.text and not as_json:
            typer.echo(outcome.text)
    except OSError as error:
        if error.errno == errno.EPIPE:  # whoever reads has seen enough
            raise
        typer.echo(f"standard output: {_sentence(error)}", err=True)
        raise typer.Exit(int(ExitStatus.FAILED)) from None
    raise typer.Exit(int(outcome.status))


def _writes_utf_8() -> bool:
    encoding = getattr(sys.stdout, "encoding", None) or "utf-8"
    return codecs.lookup(encoding).name == "utf-8"


def main() -> None:
    """Run the command line."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):  # a letter that it does not know stops nothing
            stream.reconfigure(errors="backslashreplace")
    try:
        app()
    except KeyboardInterrupt:
        sys.exit(int(ExitStatus.INTERRUPTED))
