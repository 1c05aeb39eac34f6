"""`setout rehearse`: saw the printed numbers of a plan file virtually."""

from pathlib import Path

from plans.outcome import ExitStatus, Outcome


def rehearse_file(plan_file: Path) -> Outcome:
    """Rehearse a plan file and report.

    Raises:
        InputError: The file is not a plan.
    """
    from plans.rehearsal import read_plan, rehearse

    rehearsal = rehearse(read_plan(plan_file))
    faults = [str(fault) for fault in rehearsal.faults]
    figures = ", ".join(rehearsal.figures)
    verdict = "Every part comes out as printed." if not faults else "Do not cut from this plan."
    return Outcome(
        status=ExitStatus.FAILED if faults else ExitStatus.DONE,
        text="\n".join([*faults, f"{plan_file}: {len(faults)} faults; {figures}.", verdict]),
        data={"faults": faults, "figures": list(rehearsal.figures)},
    )
