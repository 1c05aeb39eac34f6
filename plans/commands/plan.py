"""`setout plan`: search, rehearse, write the pages, the plan file and the phone page."""

import os
from collections.abc import Callable, Iterable, Sequence
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from nesting.errors import Fault, InputError, LayoutError
from plans.outcome import ExitStatus, Outcome

Progress = Callable[[Any], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOptions:
    """How to plan, and where to write.

    Attributes:
        out: Folder to write into; None for beside the job file.
        paper: Name of the paper, "A4" or "Letter".
        seed: Seed of the search.
        effort: Iterations of each search; None for the default.
        seconds: Cap on the time, or None.
        svg: Also write each page as a picture.
        writes: False where the plan goes to standard output only.
        book: Let parts come from the book of leftovers, whatever the job file says.
        pages: Which pages the PDF has, "overview,sheets" or "3,5-8"; "" for all.
        ways: Print other ways to buy on the shopping page.
        read_aloud: Also print the cuts in words, for one who reads and one who saws.
        turn_tiles: Print every other tile of a template upside down.
    """

    out: Path | None = None
    paper: str = "A4"
    seed: int = 1
    effort: int | None = None
    seconds: float | None = None
    svg: bool = False
    writes: bool = True
    book: bool = False
    pages: str = ""
    ways: bool = False
    read_aloud: bool = False
    turn_tiles: bool = False


def plan(job_file: Path, options: PlanOptions, progress: Progress | None = None) -> Outcome:
    """Plan a job file and write what is printed.

    Args:
        job_file: The job file.
        options: How, and where to.
        progress: Told how far the search is.

    Raises:
        InputError: The job file, a list it names, a page's name or the output folder is wrong, or
            the plan that stands there is being cut.
        BusyError: Another command works on the job.
        LayoutError: The plan failed its own rehearsal; nothing is written.
        OSError: A file could not be written; what stood before is whole.
    """
    from plans.locks import hold
    from plans.pages.choosing import check_page_names

    if options.pages:
        check_page_names(options.pages)
    if not options.writes:
        return _plan(job_file, options, None, progress)
    folder = checked_folder(options.out or job_file.parent)
    with hold(job_file):
        return _plan(job_file, options, folder, progress)


def _plan(
    job_file: Path, options: PlanOptions, folder: Path | None, progress: Progress | None
) -> Outcome:
    from nesting.reading.job_toml import read_job
    from plans.commands.booked import plan_with_book

    job = read_job(job_file)
    if not (options.book or job.keep.use_book):
        return _plan_job(job_file, job, options, folder, progress, lambda _: nullcontext())
    return plan_with_book(
        job,
        str(job_file.resolve()),
        lambda job, reserving: _plan_job(job_file, job, options, folder, progress, reserving),
        reserves=folder is not None,
    )


def _plan_job(
    job_file: Path,
    job: Any,  # noqa: ANN401
    options: PlanOptions,
    folder: Path | None,
    progress: Progress | None,
    reserving: Callable[[Iterable[str]], AbstractContextManager[None]],
) -> Outcome:
    """Plan a job and write it while what it uses of the book is reserved."""
    from nesting.batches import solve_in_kits
    from nesting.first_cuts import solve_with_yard
    from nesting.lots import prefer_one_lot
    from nesting.solve import DEFAULT_EFFORT
    from nesting.spares import add_spares
    from plans.plan_file import dump
    from plans.sections.sessions import say_session

    def solve(job: Any) -> Any:  # noqa: ANN401
        return solve_with_yard(
            job,
            effort=DEFAULT_EFFORT if options.effort is None else options.effort,
            seed=options.seed,
            seconds=options.seconds,
            progress=progress,
        )

    standing = _read_standing(job_file, folder)
    result = solve_in_kits(job, solve)
    ways = _ways(job, result, solve) if options.ways else ()
    job, layout = add_spares(job, prefer_one_lot(job, result.layout))
    result = replace(result, layout=layout)
    made, document = make_rehearsed(job, result, ways)
    made = with_chance(made, document)
    messages = []
    if folder is not None:
        _check_marks(job_file, standing, made.fingerprint)
        with reserving(job.sheets[sheet.sheet].name for sheet in result.layout.sheets):
            messages.append(write_plan(folder, job_file.stem, made, dump(document), options))
    if result.interrupted:
        messages.append("Interrupted: this is the best plan found so far.")
    return Outcome(
        status=plan_status(
            is_interrupted=result.interrupted, is_complete=not made.overview.unplaced
        ),
        text="\n".join(
            [
                *made.overview.figures,
                made.overview.bound_text,
                *map(say_session, made.workshop.sessions),
                *made.overview.unplaced,
            ]
        ),
        data=document,
        messages=tuple(messages),
    )


def make_rehearsed(job: Any, solved: Any, ways: Sequence[Any] = ()) -> tuple[Any, Any]:  # noqa: ANN401
    """Return the plan of a job and the content of its plan file, once its rehearsal passes.

    Args:
        job: The job.
        solved: How it is laid out.
        ways: Other ways to buy, as lines of the shopping page.

    Raises:
        LayoutError: The rehearsal found a fault.
    """
    from plans.plan import make_plan
    from plans.plan_file import plan_document
    from plans.rehearsal import rehearse

    made = make_plan(job, solved, tuple(ways))
    document = plan_document(job, solved, made)
    _check_rehearsal(rehearse(document).faults)
    return made, document


def with_chance(made: Any, document: Any) -> Any:  # noqa: ANN401
    """Return a plan that says how much it forgives, tried on its own plan file."""
    from nesting.tolerance import rehearse_errors
    from plans.plan_reading import planned_of
    from plans.sections.chance import USUAL, say_chance

    errors, sheets = USUAL[made.unit], planned_of(document).sheets
    found, closer = (
        rehearse_errors(sheets, replace(errors, setting=errors.setting // part), slacks=())
        for part in (1, 2)
    )
    return replace(made, chance=say_chance(found, closer, errors, made.unit))


def _ways(job: Any, result: Any, solve: Callable[[Any], Any]) -> tuple[Any, ...]:  # noqa: ANN401
    """Return the ways to buy as lines of the shopping page; the plan itself is not sought again."""
    from nesting.batches import solve_in_kits
    from nesting.buying import find_ways
    from plans.sections.ways import make_way_lines

    return make_way_lines(
        find_ways(job, lambda asked: result if asked == job else solve_in_kits(asked, solve))
    )


def _read_standing(job_file: Path, folder: Path | None) -> Any:  # noqa: ANN401
    """Return the content of the plan file that a new plan would replace; None where none stands.

    Raises:
        InputError: It cannot be read, so that nobody knows whether it is being cut.
    """
    from plans.rehearsal import read_plan

    plan_file = None if folder is None else folder / f"{job_file.stem}.plan.json"
    if plan_file is None or not plan_file.exists():
        return None
    try:
        return read_plan(plan_file)
    except InputError as error:
        (fault,) = error.faults
        raise InputError(
            [
                Fault(
                    where=fault.where,
                    what=f"{fault.what}, and a new plan would replace it",
                    remedy=f"Move {plan_file.name} away, or name another folder with --out.",
                )
            ]
        ) from error


def _check_marks(job_file: Path, standing: Any, fingerprint: str) -> None:  # noqa: ANN401
    """Let no new plan replace one that is being cut.

    Args:
        job_file: The job file.
        standing: The plan that stands where the new one goes, or None.
        fingerprint: Of the new plan.

    Raises:
        InputError: Marks stand for the one that stands there, and the new one is another.
    """
    from plans.record import marks_of, read_record, record_path

    if standing is None:
        return
    record = record_path(job_file)
    before = str(standing.get("fingerprint", ""))
    is_begun = "earlier" in standing or bool(marks_of(read_record(record), before))
    if before != fingerprint and is_begun:
        raise InputError(
            [
                Fault(
                    where=record.name,
                    what=f"plan {before} is being cut, and a new plan would replace it",
                    remedy=f"Go on with 'setout resume {job_file}'. To begin anew, move "
                    f"{job_file.stem}.plan.json away, or name another folder with --out.",
                )
            ]
        )


def _check_rehearsal(faults: Sequence[Fault]) -> None:
    """Let no plan pass that its rehearsal found fault with.

    Raises:
        LayoutError: There is a fault.
    """
    if faults:
        raise LayoutError(
            "The plan failed its own rehearsal and was not written. This is a fault of setout; "
            "please report it with the job file.\n" + "\n".join(map(str, faults))
        )


def plan_status(*, is_interrupted: bool, is_complete: bool) -> ExitStatus:
    """Return how planning ended."""
    if is_interrupted:
        return ExitStatus.INTERRUPTED
    return ExitStatus.DONE if is_complete else ExitStatus.SOME_PARTS_DO_NOT_FIT


def checked_folder(folder: Path) -> Path:
    """Return the folder to write into, made if need be, before any work is done."""
    refusal = InputError(
        [
            Fault(
                where=str(folder),
                what="it is not a folder that can be written to",
                remedy="Name another folder with --out.",
            )
        ]
    )
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise refusal from error
    if not os.access(folder, os.W_OK):
        raise refusal
    return folder


def write_plan(folder: Path, stem: str, made: Any, plan_text: str, options: PlanOptions) -> str:  # noqa: ANN401
    """Write pages, plan file and phone page, each whole or not at all; say what was written."""
    from plans.pages.choosing import choose_pages
    from plans.pages.pages import make_pages
    from plans.pages.paper import PAPERS
    from plans.phone.screens import make_phone_page
    from plans.writers.html import write_phone
    from plans.writers.pdf import write_pdf
    from plans.writers.svg import write_svg
    from plans.writers.whole_file import write_whole

    whole = make_pages(
        made,
        PAPERS[options.paper],
        read_aloud=options.read_aloud,
        turns_tiles=options.turn_tiles,
    )
    pages = choose_pages(whole, options.pages) if options.pages else whole
    count = f"{len(pages)} of {len(whole)} pages" if options.pages else f"{len(whole)} pages"
    contents = {
        folder / f"{stem}.pdf": write_pdf(pages),
        folder / f"{stem}.plan.json": plan_text.encode(),
        folder / f"{stem}.html": write_phone(make_phone_page(made)),
    }
    if options.svg:
        for number, page in enumerate(pages, start=1):
            contents[folder / f"{stem}.page-{number:02d}.svg"] = write_svg(page)
    replaced = write_whole(contents)
    return "\n".join(
        f"{'Replaced' if path in replaced else 'Wrote'} {path}"
        + (f" ({count})" if path.suffix == ".pdf" else "")
        for path in contents
        if path.suffix != ".svg" or path.name.endswith("page-01.svg")
    )
