"""Sheets that are cut alike are found, and their codes answer each other."""

from dataclasses import replace

from nesting.layout import Layout, PartLeaf
from nesting.lengths import mm
from plans.sections.repeats import find_repeats, matching_codes
from plans.sections.sheet_view import SheetView, make_sheet_view
from tests.nesting.hand_made import job, part, strips
from tests.plans.sections.helpers import worked_out


def views(*widths: int) -> tuple[SheetView, ...]:
    """Return one sheet for each width, with two sides in a strip of that width."""
    made = job(part("Side", 562, 300, 2 * len(widths)))
    sheets = tuple(
        strips(
            made, [(mm(width), [PartLeaf(part=0, copy=2 * n), PartLeaf(part=0, copy=2 * n + 1)])]
        )
        for n, width in enumerate(widths)
    )
    worked = worked_out(made, Layout(sheets=sheets))
    return tuple(make_sheet_view(made, sheet) for sheet in worked.sheets)


def test_equal_sheets_are_one_with_the_numbers_of_all() -> None:
    repeats = find_repeats(views(300, 310, 300, 300))
    assert [repeat.numbers for repeat in repeats] == [(1, 3, 4), (2,)]
    assert repeats[0].count == 3
    assert repeats[1].places == repeats[1].pieces == ()


def test_every_place_has_the_code_of_each_copy() -> None:
    repeat = find_repeats(views(300, 310, 300))[0]
    codes = {pair.drawn: pair.copies for pair in repeat.places}
    assert codes["A1"] == ("A5",)
    assert codes["A2"] == ("A6",)
    assert [pair.drawn[0] for pair in repeat.pieces] == ["P"] * len(repeat.pieces)


def test_the_printed_table_with_the_codes_put_in_place_is_the_table_of_the_copy() -> None:
    first, _, other = views(300, 310, 300)
    code_of = matching_codes(first, other) | {"": "", "WASTE": "WASTE"}
    rows = tuple(
        replace(
            row,
            hold=code_of[row.hold],
            keep_code=code_of[row.keep_code],
            free_code=code_of[row.free_code],
        )
        for row in first.rows
    )
    assert rows == other.rows


def test_sheets_that_differ_in_one_figure_stay_apart() -> None:
    first, other = views(300, 300)
    assert len(find_repeats((first, other))) == 1
    thicker = replace(other, measured="17.9")
    assert len(find_repeats((first, thicker))) == 2
