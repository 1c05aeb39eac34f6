"""The files of a plan: what stands where they go, and writing them."""

import os
from pathlib import Path
from typing import Any

from nesting.errors import Fault, InputError
from plans.commands.plan_options import PlanOptions


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


def read_standing(job_file: Path, folder: Path | None) -> Any:  # noqa: ANN401
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


def check_marks(job_file: Path, standing: Any, fingerprint: str) -> None:  # noqa: ANN401
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
