"""`setout parts`: the calculator alone, with the sum behind every size."""

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path
from typing import Any

from plans.commands.tables import make_table
from plans.outcome import ExitStatus, Outcome

HEADINGS = ("cabinet", "part", "count", "length", "width", "board", "status")
RIGHT = (False, False, True, True, True, False, False)
BATTEN_HEADINGS = ("cabinet", "batten", "count", "length", "section", "status")
BATTEN_RIGHT = (False, False, True, True, False, False)


def parts(job_file: Path) -> Outcome:
    """List the parts and battens of a job with sums, screws, assembly, questions and warnings.

    Needs no sheets in the job file.

    Raises:
        InputError: The job file or a list it names is wrong.
    """
    from nesting.reading.job_toml import read_job

    job = read_job(job_file, needs_sheets=False)
    return Outcome(status=ExitStatus.DONE, text="\n".join(_lines(job)), data=_data(job))


def _lines(job: Any) -> list[str]:  # noqa: ANN401 - the record loads late
    from nesting.cabinets.advice import find_look_alikes
    from nesting.cabinets.from_holes import offer_from_holes
    from plans.sections.finished import list_fit_warnings, say_finished
    from plans.sections.frame import make_frames

    lines = [f"{job.name}: sizes in {job.unit.value}", ""]
    lines += make_table(
        HEADINGS,
        RIGHT,
        [(_part_cells(part, job), _part_remarks(part)) for part in _gather(job.parts)],
    )
    battens = _gather(batten for build in job.cabinets for batten in build.battens)
    if battens:
        lines += ["", "Battens"]
        lines += make_table(
            BATTEN_HEADINGS,
            BATTEN_RIGHT,
            [(_batten_cells(batten, job), list(batten.sums)) for batten in battens],
        )
    plain = [part for part in job.parts if not part.cabinet]
    firsts = {build.letters[0] for build in job.cabinets}
    others = [part for part in job.parts if part.cabinet in firsts]
    lines += [f"Warning: {text}" for text in find_look_alikes(plain, job.unit, others)]
    for build, frame in zip(job.cabinets, make_frames(job), strict=True):
        lines += ["", f"{build.name} ({', '.join(build.letters)})"]
        for heading, texts in (
            ("Finished", say_finished(build, job.unit)),
            ("Closes", build.sums),
            ("Moved by the measured thickness", build.changes),
            ("Edges", [_edge(edge) for edge in build.edges]),
            ("Bench", build.advice),
            ("Bench", offer_from_holes(build, job.parts, job.unit)),
            ("From a hole", [_from_hole(taken) for taken in build.from_holes]),
            ("Screws", [_fixing(row) for row in frame.fixings]),
            ("Assembly", [_step(step) for step in frame.steps]),
            ("Question", build.questions),
            ("Warning", (*build.warnings, *list_fit_warnings(build))),
        ):
            lines += [f"  {heading}: {text}" for text in texts]
    return lines


def _gather(pieces: Iterable[Any]) -> list[Any]:
    """Return pieces, those that differ by nothing but their cabinet as one row: "A, B"."""
    groups: dict[Any, list[Any]] = {}
    for piece in pieces:
        groups.setdefault(replace(piece, cabinet=""), []).append(piece)
    return [
        replace(
            alike,
            cabinet=", ".join(piece.cabinet for piece in group),
            count=sum(piece.count for piece in group),
        )
        for alike, group in groups.items()
    ]


def _fixing(row: Any) -> str:  # noqa: ANN401
    return f"{'; '.join(row.joints)}: {row.screws}; {row.positions}"


def _step(step: Any) -> str:  # noqa: ANN401
    after = f" After this no more: {step.impossible}." if step.impossible else ""
    return f"{step.number}. {step.what}{after}"


def _edge(edge: Any) -> str:  # noqa: ANN401
    owner = f"{edge.owner} runs through" if edge.owner else "open"
    return f"{edge.name}: {owner}{f', {edge.joint} joint' if edge.joint else ''}"


def _from_hole(taken: Any) -> str:  # noqa: ANN401
    where = f"the {taken.leaves} of the {taken.hole}, {taken.panel} of {taken.cabinet}"
    return f"{taken.part.name}, one from {where}"


def _part_cells(part: Any, job: Any) -> tuple[str, ...]:  # noqa: ANN401
    from nesting.lengths import format_length

    return (
        part.cabinet,
        part.name,
        str(part.count),
        format_length(part.length, job.unit),
        format_length(part.width, job.unit),
        f"{part.material} {format_length(part.thickness, job.unit)}",
        _status(part, job),
    )


def _part_remarks(part: Any) -> list[str]:  # noqa: ANN401
    remarks = [
        f"{side}: {text}" for side, text in zip(("length", "width"), part.sums, strict=False)
    ]
    remarks += [f"larger: {text}" for text in part.allowances]
    remarks += [f"to do: {text}" for text in part.to_do]
    return [*remarks, *([part.note] if part.note else [])]


def _batten_cells(batten: Any, job: Any) -> tuple[str, ...]:  # noqa: ANN401
    from nesting.lengths import format_length

    return (
        batten.cabinet,
        batten.name,
        str(batten.count),
        format_length(batten.length, job.unit),
        " × ".join(format_length(side, job.unit) for side in batten.section),
        _status(batten, job),
    )


def _status(piece: Any, job: Any) -> str:  # noqa: ANN401
    """Return the status, and the size of the blank where that is larger."""
    from nesting.lengths import format_length
    from nesting.parts import Part

    finished, blank = [piece.length], [piece.length + piece.oversize]
    if isinstance(piece, Part):
        finished, blank = [piece.length, piece.width], [piece.blank_length, piece.blank_width]
    if finished == blank:
        return str(piece.status.value)
    shown = " × ".join(format_length(side, job.unit) for side in blank)
    return f"{piece.status.value}, blank {shown}"


def _data(job: Any) -> dict[str, Any]:  # noqa: ANN401
    from nesting.lengths import format_length
    from plans.sections.finished import list_fit_warnings, say_finished
    from plans.sections.frame import make_frames

    return {
        "parts": [_part_row(part, job) for part in job.parts],
        "battens": [
            {
                "name": batten.name,
                "cabinet": batten.cabinet,
                "count": batten.count,
                "length": format_length(batten.length, job.unit),
                "section": [format_length(side, job.unit) for side in batten.section],
                "oversize": format_length(batten.oversize, job.unit),
                "unit": job.unit.value,
                "status": batten.status.value,
                "sums": list(batten.sums),
            }
            for build in job.cabinets
            for batten in build.battens
        ],
        "cabinets": [
            {
                "name": build.name,
                "letters": list(build.letters),
                "sums": list(build.sums),
                "changes": list(build.changes),
                "edges": {edge.name: edge.owner for edge in build.edges},
                "advice": list(build.advice),
                "from_holes": [_from_hole(taken) for taken in build.from_holes],
                "questions": list(build.questions),
                "warnings": [*build.warnings, *list_fit_warnings(build)],
                "finished": list(say_finished(build, job.unit)),
                "screws": [_fixing(row) for row in frame.fixings],
                "assembly": [_step(step) for step in frame.steps],
            }
            for build, frame in zip(job.cabinets, make_frames(job), strict=True)
        ],
    }


def _part_row(part: Any, job: Any) -> dict[str, Any]:  # noqa: ANN401
    from nesting.lengths import format_length

    return {
        "name": part.name,
        "cabinet": part.cabinet,
        "count": part.count,
        "length": format_length(part.length, job.unit),
        "width": format_length(part.width, job.unit),
        "oversize": format_length(part.oversize, job.unit),
        "blank": [
            format_length(part.blank_length, job.unit),
            format_length(part.blank_width, job.unit),
        ],
        "allowances": list(part.allowances),
        "unit": job.unit.value,
        "material": part.material,
        "thickness": format_length(part.thickness, job.unit),
        "grain": part.grain.value,
        "status": part.status.value,
        "sums": list(part.sums),
        "to_do": list(part.to_do),
        "note": part.note,
    }
