"""A sheet whose diagonals differ is planned again within the rectangle that it still holds."""

from math import hypot
from pathlib import Path

from tests.plans.commands.invoking import done, plan_of

LENGTH, WIDTH, LEAN = 2440, 1220, 30
JOB = f"""
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = {LENGTH}
width = {WIDTH}
price = 60
[[part]]
name = "Shelf"
length = 1205
width = 380
count = 9
grain = "length"
"""


def reach(job: Path, number: int) -> float:
    """Return how far the parts of one sheet reach along its length."""
    parts = plan_of(job)["sheets"][number - 1]["parts"]
    ends = [part["x"] + part["length"] for part in parts]
    return float(max(ends) - min(part["x"] for part in parts))


def test_diagonals_that_differ_leave_no_part_beyond_the_square_rest_of_the_sheet(
    tmp_path: Path,
) -> None:
    """Two sides of a leaning sheet are offset by LEAN: its rectangle is shorter by as much.

    Of a parallelogram with these sides the diagonals are those of plane geometry.
    """
    job = tmp_path / "shelf.toml"
    job.write_text(JOB, "utf-8")
    done("plan", job, "--effort", "0")
    assert reach(job, 1) > LENGTH - LEAN
    longer, shorter = hypot(LENGTH + LEAN, WIDTH), hypot(LENGTH - LEAN, WIDTH)
    done("mark", job, "--sheet", "1", "--diagonals", f"{longer:.1f},{shorter:.1f}")
    said = done("resume", job, "--effort", "1")
    assert f"leans {LEAN}" in said
    sheets = plan_of(job)["sheets"]
    assert sum(len(sheet["parts"]) for sheet in sheets) == 9
    (leaning,) = (sheet for sheet in sheets if sheet["trim"]["left"] >= LEAN)
    assert leaning["parts"]
    assert reach(job, leaning["number"]) <= LENGTH - LEAN
