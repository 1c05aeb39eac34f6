"""`setout plan`: search, rehearse, write the pages, the plan file and the phone page."""

from collections.abc import Callable, Iterable, Sequence
from contextlib import AbstractContextManager, nullcontext
from dataclasses import replace
from pathlib import Path
from typing import Any

from nesting.errors import Fault, LayoutError
from plans.commands.plan_files import check_marks, checked_folder, read_standing, write_plan
from plans.commands.plan_options import PlanOptions, Progress
from plans.outcome import ExitStatus, Outcome


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

    standing = read_standing(job_file, folder)
    result = solve_in_kits(job, solve)
    ways = _ways(job, result, solve) if options.ways else ()
    job, layout = add_spares(job, prefer_one_lot(job, result.layout))
    result = replace(result, layout=layout)
    made, document = make_rehearsed(job, result, ways)
    made = with_chance(made, document)
    messages = []
    if folder is not None:
        check_marks(job_file, standing, made.fingerprint)
        made = with_changes(made, standing, job)
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


def with_changes(made: Any, standing: Any, job: Any) -> Any:  # noqa: ANN401
    """Return a plan whose first page says what is new since the plan that it takes the place of.

    Args:
        made: The plan.
        standing: The plan file that stands there, or None.
        job: What is planned.
    """
    from plans.changes import list_replanned
    from plans.plan_reading import planned_of

    if standing is None or standing["fingerprint"] == made.fingerprint:
        return made
    changes = list_replanned(planned_of(standing), job)
    return replace(made, overview=replace(made.overview, changes=changes))


def _ways(job: Any, result: Any, solve: Callable[[Any], Any]) -> tuple[Any, ...]:  # noqa: ANN401
    """Return the ways to buy as lines of the shopping page; the plan itself is not sought again."""
    from nesting.batches import solve_in_kits
    from nesting.buying import find_ways
    from plans.sections.ways import make_way_lines

    return make_way_lines(
        find_ways(job, lambda asked: result if asked == job else solve_in_kits(asked, solve))
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
