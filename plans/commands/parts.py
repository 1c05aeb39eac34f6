"""`setout parts`: the calculator alone, with the sum behind every size."""

from pathlib import Path
from typing import Any

from plans.outcome import ExitStatus, Outcome


def parts(job_file: Path) -> Outcome:
    """List every part and batten of a job with sums, questions and warnings.

    Needs no sheets in the job file.

    Raises:
        InputError: The job file or a list it names is wrong.
    """
    from nesting.reading.job_toml import read_job

    job = read_job(job_file, needs_sheets=False)
    return Outcome(status=ExitStatus.DONE, text="\n".join(_lines(job)), data={"parts": _rows(job)})


def _lines(job: Any) -> list[str]:  # noqa: ANN401
    from nesting.lengths import format_length

    lines = [f"{job.name}: sizes in {job.unit.value}", ""]
    for part in job.parts:
        cabinet = f"{part.cabinet} " if part.cabinet else ""
        size = " × ".join(format_length(side, job.unit) for side in (part.length, part.width))
        lines.append(
            f"{part.count} × {cabinet}{part.name}: {size}, {part.material} "
            f"{format_length(part.thickness, job.unit)}, {_status(part, job)}"
        )
        lines += [f"      {text}" for text in part.sums]
    for cabinet in job.cabinets:
        lines += ["", f"{cabinet.name} ({', '.join(cabinet.letters)})"]
        lines += [f"  Sum: {text}" for text in cabinet.sums]
        lines += [
            f"  Batten: {batten.count} × {batten.name}: {format_length(batten.length, job.unit)}, "
            f"section {' × '.join(format_length(side, job.unit) for side in batten.section)}"
            for batten in cabinet.battens
        ]
        lines += [f"  Question: {text}" for text in cabinet.questions]
        lines += [f"  Warning: {text}" for text in cabinet.warnings]
    return lines


def _status(part: Any, job: Any) -> str:  # noqa: ANN401
    from nesting.lengths import format_length

    if not part.oversize:
        return str(part.status.value)
    return f"{part.status.value}, blank + {format_length(part.oversize, job.unit)}"


def _rows(job: Any) -> list[dict[str, Any]]:  # noqa: ANN401
    from nesting.lengths import format_length

    return [
        {
            "name": part.name,
            "cabinet": part.cabinet,
            "count": part.count,
            "length": format_length(part.length, job.unit),
            "width": format_length(part.width, job.unit),
            "oversize": format_length(part.oversize, job.unit),
            "unit": job.unit.value,
            "material": part.material,
            "thickness": format_length(part.thickness, job.unit),
            "grain": part.grain.value,
            "status": part.status.value,
            "sums": list(part.sums),
        }
        for part in job.parts
    ]
