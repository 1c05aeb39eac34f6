"""A plan whose printed figures do not make its parts is never written."""

from pathlib import Path

import pytest

from nesting.lengths import Length, Unit, mm
from plans.sections import cut_table
from plans.sections.precision import show_keep
from tests.plans.commands.invoking import setout

JOB = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 1220
width = 610
[[part]]
name = "Shelf"
length = 562
width = 280
count = 4
"""


def _show_2_mm_more(length: Length, unit: Unit, *, is_fine: bool) -> str:
    return show_keep(length + mm(2), unit, is_fine=is_fine)


@pytest.mark.parametrize("stands", [True, False])
def test_a_fault_in_printing_a_figure_leaves_no_new_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, *, stands: bool
) -> None:
    job = tmp_path / "shelf.toml"
    job.write_text(JOB, "utf-8")
    if stands:
        assert setout("plan", job, "--effort", "0").exit_code == 0
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    assert len(before) == (4 if stands else 1)
    monkeypatch.setattr(cut_table, "show_keep", _show_2_mm_more)
    job.write_text(JOB.replace("562", "560"), "utf-8")
    result = setout("plan", job, "--effort", "0")
    assert result.exit_code not in (0, 2, 3)
    assert "failed its own rehearsal and was not written" in result.stderr
    after = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    assert {**after, job.name: before[job.name]} == before
