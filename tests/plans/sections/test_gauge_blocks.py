"""Gauge blocks: sizes equal a and b + k, and no guide sum is printed with them."""

import copy
from dataclasses import replace
from typing import Any

import pytest

from nesting.job import Job
from nesting.layout import Layout, PartLeaf
from nesting.lengths import mm
from nesting.saw import Face, SetWith
from nesting.sheets import Trim
from plans.pages.clashes import find_clashes
from plans.pages.pages import make_pages
from plans.pages.paper import A4, LETTER
from plans.pages.shapes import Page, Text
from plans.phone.records import Cut
from plans.phone.screens import make_phone_page
from plans.plan import Figures, Plan, make_plan
from plans.plan_file import plan_document
from plans.rehearsal import rehearse
from plans.rehearsal.printed import UNITS, read_figure
from plans.sections.cut_table import CutRow, guide_positions, make_rows
from plans.sections.gauge_blocks import make_gauge_blocks
from plans.writers.html import write_phone
from tests.nesting.hand_made import BIRCH, SAW, part, strips, two_cabinets
from tests.nesting.hand_made import job as job_of
from tests.plans.rehearsal.real_plans import planned
from tests.plans.sections.helpers import worked_out

RANDOM = range(12)
Json = dict[str, Any]


def with_blocks(job: Job) -> Job:
    return replace(job, saw=replace(job.saw, set_with=SetWith.BLOCKS))


def rows_of(job: Job, layout: Layout) -> list[tuple[CutRow, ...]]:
    return [make_rows(job, sheet) for sheet in worked_out(job, layout).sheets]


def plan_of(job: Job, layout: Layout) -> tuple[Plan, Json]:
    figures = Figures(layout=layout)
    plan = make_plan(job, figures)
    return plan, plan_document(job, figures, plan)


def words(page: Page) -> list[str]:
    return [shape.words for shape in page.shapes if isinstance(shape, Text)]


def test_the_blocks_of_the_published_example_are_38_and_132_4() -> None:
    # a 38, b 130, kerf 2.4: the example of a guide's two places, see the rehearsal's samples
    job, _ = two_cabinets()
    left, right = make_gauge_blocks(with_blocks(job))
    assert (left.name, left.size) == ("A", "38 mm")
    assert (right.name, right.size) == ("B", "132.4 mm")
    assert make_gauge_blocks(job) == ()


@pytest.mark.parametrize("seed", RANDOM)
def test_mark_and_block_lead_to_the_guide_of_the_cut_table(seed: int) -> None:
    _, made, result, _ = planned(seed)
    job = with_blocks(made)
    unit, saw = UNITS[job.unit.value], job.saw
    worked = worked_out(job, result.layout)
    for rows, sheet in zip(rows_of(job, result.layout), worked.sheets, strict=True):
        for row, step in zip(rows, sheet.sequence.steps, strict=True):
            if not row.mark:
                continue
            mark = read_figure(row.mark, unit)
            left, right = guide_positions(job, step)
            assert abs(mark - saw.base_left - left) <= unit.half_step + 1
            assert abs(mark + saw.kerf + saw.base_right - right) <= unit.half_step + 1


@pytest.mark.parametrize("face", Face)
def test_a_row_with_blocks_holds_no_guide_figure_and_is_else_the_same(face: Face) -> None:
    job, layout = two_cabinets()
    job = replace(job, saw=replace(SAW, marked_face=face))
    for rows, own in zip(rows_of(job, layout), rows_of(with_blocks(job), layout), strict=True):
        for row, block in zip(rows, own, strict=True):
            assert (block.guide_left, block.guide_right) == ("", "")
            same = replace(block, guide_left=row.guide_left, guide_right=row.guide_right)
            assert replace(same, blocks="", mark="") == row


def test_a_block_is_named_only_where_the_guide_has_room() -> None:
    job, layout = two_cabinets()
    for rows, own in zip(rows_of(job, layout), rows_of(with_blocks(job), layout), strict=True):
        for row, block in zip(rows, own, strict=True):
            named = {"": "A or B", "left": "B", "right": "A", "both": "B beyond"}[row.unusable]
            if not row.unusable and row.guide_room in ("left", "right"):
                named = {"left": "A", "right": "B"}[row.guide_room]
            assert block.blocks == named


def test_a_trim_is_marked_where_the_kerf_begins() -> None:
    job, layout = two_cabinets()
    first = rows_of(with_blocks(job), layout)[0][0]
    assert (first.mark, first.keep, first.blocks) == ("7.6", "trim 10", "B")


def test_a_trim_thinner_than_the_kerf_has_no_mark_and_still_rehearses() -> None:
    thin = replace(BIRCH, trim=Trim(bottom=mm(1)))
    shelf = with_blocks(job_of(part("Shelf", 562, 300), sheets=[thin]))
    sheet = strips(shelf, [(mm(300), [PartLeaf(part=0, copy=0)])])
    layout = Layout(sheets=(sheet,))
    first = rows_of(shelf, layout)[0][0]
    assert (first.keep, first.mark, first.blocks) == ("trim 1", "", "none")
    assert first.remark.endswith("plane this edge down to the KEEP size")
    plan, document = plan_of(shelf, layout)
    assert rehearse(document).faults == ()
    cut = next(screen for screen in make_phone_page(plan).screens if isinstance(screen, Cut))
    assert (cut.setting, cut.guides) == ("No guide is set for this cut: see above.", ())


@pytest.mark.parametrize("seed", RANDOM)
def test_a_plan_with_blocks_rehearses_and_a_wrong_mark_or_block_does_not(seed: int) -> None:
    _, made, result, _ = planned(seed)
    job = with_blocks(made)
    plan, document = plan_of(job, result.layout)
    assert [str(fault) for fault in rehearse(document).faults] == []
    if not any(row.mark for view in plan.sheets for row in view.rows):
        return
    unit = UNITS[job.unit.value]
    for block in ("A", "B"):
        wrong = copy.deepcopy(document)
        size = read_figure(document["blocks"][block].removesuffix(f" {unit.name}"), unit)
        wrong["blocks"][block] = (
            "40 mm" if size == mm(38) else f"{38 if unit.name == 'mm' else 9} {unit.name}"
        )
        assert rehearse(wrong).faults
    for sheet in document["sheets"]:
        for place, row in enumerate(sheet["printed"]["rows"]):
            if not row.get("mark"):
                continue
            wrong = copy.deepcopy(document)
            moved = "2" if row["mark"] != "2" else "5"
            wrong["sheets"][sheet["number"] - 1]["printed"]["rows"][place]["mark"] = moved
            assert rehearse(wrong).faults, row


def test_the_pages_and_the_phone_name_blocks_and_no_guide_sum() -> None:
    job, layout = two_cabinets()
    by_tape = rows_of(job, layout)
    plan, _ = plan_of(with_blocks(job), layout)
    printed = {text for view in plan.sheets for row in view.rows for text in (row.mark, row.keep)}
    sums = {
        figure for rows in by_tape for row in rows for figure in (row.guide_left, row.guide_right)
    } - printed
    phone = write_phone(make_phone_page(plan)).decode()
    for paper in (A4, LETTER):
        pages = make_pages(plan, paper, read_aloud=True)
        said = [text for page in pages for text in words(page)]
        assert not sums & set(said)
        assert {"38 mm", "132.4 mm", "B", "A or B", "at the mark"} <= set(said)
        assert any("block B at the mark 7 point 6" in text for text in said)
        for page in pages:
            assert find_clashes(page) == (), page.title
    for figure in sums:
        assert f"</small> {figure}<" not in phone
    assert "A or B at" in phone
    assert "Block at its mark" in phone
