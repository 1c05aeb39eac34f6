"""Gauge blocks: sizes equal a and b + k, and no guide sum is printed with them."""

from dataclasses import astuple, replace

import pytest

from nesting.job import Job
from nesting.layout import Layout, PartLeaf
from nesting.lengths import mm
from nesting.saw import Face
from nesting.sheets import Trim
from plans.rehearsal.printed import UNITS, read_figure
from plans.sections.cut_table import guide_positions, make_rows
from plans.sections.gauge_blocks import BlockRow, make_block_rows, make_gauge_blocks
from tests.nesting.hand_made import BIRCH, SAW, part, strips, two_cabinets
from tests.nesting.hand_made import job as job_of
from tests.plans.rehearsal.real_plans import planned
from tests.plans.sections.helpers import worked_out

RANDOM = range(12)


def block_rows(job: Job, layout: Layout) -> list[tuple[BlockRow, ...]]:
    return [
        make_block_rows(job, sheet, make_rows(job, sheet))
        for sheet in worked_out(job, layout).sheets
    ]


def test_the_blocks_of_the_published_example_are_38_and_132_4() -> None:
    # a 38, b 130, kerf 2.4: the example of a guide's two places, see the rehearsal's samples
    left, right = make_gauge_blocks(two_cabinets()[0])
    assert (left.name, left.size) == ("A", "38 mm")
    assert (right.name, right.size) == ("B", "132.4 mm")


@pytest.mark.parametrize("seed", RANDOM)
def test_mark_and_block_lead_to_the_guide_of_the_cut_table(seed: int) -> None:
    _, job, result, _ = planned(seed)
    unit = UNITS[job.unit.value]
    saw = job.saw
    for rows, sheet in zip(
        block_rows(job, result.layout), worked_out(job, result.layout).sheets, strict=True
    ):
        for row, step in zip(rows, sheet.sequence.steps, strict=True):
            if not row.mark:
                continue
            mark = read_figure(row.mark, unit)
            left, right = guide_positions(job, step)
            assert abs(mark - saw.base_left - left) <= unit.half_step + 1
            assert abs(mark + saw.kerf + saw.base_right - right) <= unit.half_step + 1


@pytest.mark.parametrize("face", Face)
def test_a_row_with_blocks_holds_no_guide_figure(face: Face) -> None:
    job, layout = two_cabinets()
    job = replace(job, saw=replace(SAW, marked_face=face))
    for sheet, rows in zip(worked_out(job, layout).sheets, block_rows(job, layout), strict=True):
        for row, own in zip(make_rows(job, sheet), rows, strict=True):
            texts = set(astuple(own))
            assert not {row.guide_left, row.guide_right} & (texts - {own.mark, own.keep})
            assert (own.keep, own.number, own.same_as) == (row.keep, row.number, row.same_as)


def test_a_block_that_would_lie_off_the_piece_is_not_named() -> None:
    job, layout = two_cabinets()
    (sheet,) = worked_out(job, layout).sheets
    named = {"": "block A or B", "left": "block B", "right": "block A", "both": ""}
    rows = make_rows(job, sheet)
    for row, own in zip(rows, make_block_rows(job, sheet, rows), strict=True):
        assert own.blocks == named[row.unusable]
        assert bool(own.remark) == (own.blocks == "")


def test_a_trim_is_marked_where_the_kerf_begins() -> None:
    job, layout = two_cabinets()
    first = block_rows(job, layout)[0][0]
    assert (first.mark, first.keep, first.blocks) == ("7.6", "trim 10", "block B")


def test_a_trim_thinner_than_the_kerf_has_no_mark() -> None:
    thin = replace(BIRCH, trim=Trim(bottom=mm(1)))
    shelf = job_of(part("Shelf", 562, 300), sheets=[thin])
    sheet = strips(shelf, [(mm(300), [PartLeaf(part=0, copy=0)])])
    first = block_rows(shelf, Layout(sheets=(sheet,)))[0][0]
    assert (first.keep, first.mark, first.blocks) == ("trim 1", "", "")
    assert (
        first.remark == "The mark would lie off the piece: plane this edge down to the keep size."
    )
