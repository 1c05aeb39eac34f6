"""`setout rehearse`: saw the printed numbers of a plan file virtually."""

from pathlib import Path

from plans.outcome import ExitStatus, Outcome


def rehearse_file(plan_file: Path, errors: str | None = None, seed: int = 1) -> Outcome:
    """Rehearse a plan file and report.

    Args:
        plan_file: The plan file.
        errors: Standard deviation of a setting of the guide as text, to try how much the plan
            forgives; None for not trying.
        seed: Seed of the random errors.

    Raises:
        InputError: The file is not a plan.
    """
    from plans.rehearsal import read_plan, rehearse

    rehearsal = rehearse(read_plan(plan_file))
    faults = [str(fault) for fault in rehearsal.faults]
    figures = ", ".join(rehearsal.figures)
    verdict = "Every part comes out as printed." if not faults else "Do not cut from this plan."
    if errors is not None and not faults:
        return _with_errors(plan_file, errors, seed)
    return Outcome(
        status=ExitStatus.FAILED if faults else ExitStatus.DONE,
        text="\n".join([*faults, f"{plan_file}: {len(faults)} faults; {figures}.", verdict]),
        data={"faults": faults, "figures": list(rehearsal.figures)},
    )


def _with_errors(plan_file: Path, text: str, seed: int) -> Outcome:
    """Saw the plan many times with random errors and say how often every part comes out."""
    from dataclasses import replace

    from nesting.tolerance import Errors, rehearse_errors
    from plans.mark_words import read_length
    from plans.plan_reading import read_planned
    from plans.sections.chance import show_chance
    from plans.sections.numbers import show_with_unit

    planned = read_planned(plan_file)
    unit = planned.unit
    setting = 0 if text.strip() == "0" else read_length(text, unit, "--errors")
    errors = replace(Errors(), setting=setting)
    found = rehearse_errors(planned.sheets, errors, seed=seed)
    off = f"a little off, two in three by less than {show_with_unit(setting, unit)}"
    head = (
        f"With settings {off if setting else 'exact'}, every part comes out, to "
        f"{show_with_unit(errors.forgiven, unit)}, in {show_chance(found.chance)} of the trials."
    )
    lines = [
        head,
        *(
            f"Sheet {strip.sheet}, {strip.piece} ({', '.join(strip.parts)}): "
            f"{show_chance(strip.chance)}"
            for strip in found.strips
        ),
    ]
    if found.worst is not None:
        lines.append(f"Worst: sheet {found.worst.sheet}, {found.worst.piece}.")
    lines += [
        f"With every blank {show_with_unit(slack, unit)} larger: {show_chance(chance)}."
        for slack, chance in found.with_slack
    ]
    return Outcome(
        text="\n".join(lines),
        data={
            "chance": found.chance / 1000,
            "strips": [
                {
                    "sheet": strip.sheet,
                    "piece": strip.piece,
                    "parts": list(strip.parts),
                    "chance": strip.chance / 1000,
                }
                for strip in found.strips
            ],
            "with_slack": [
                {"slack": show_with_unit(slack, unit), "chance": chance / 1000}
                for slack, chance in found.with_slack
            ],
        },
    )
