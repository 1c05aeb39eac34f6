import pytest

from nesting.lengths import mm
from nesting.reading.sheet_tables import read_sheets
from nesting.sheets import Defect, Sheet, Use
from tests.nesting.reading.job_files import SHEET, said, table

KNOT = "[[sheet.defect]]\nalong = 600\nacross = 300\nlength = 80\nwidth = 50\n"


def sheets(text: str) -> list[Sheet]:
    root = table(text)
    found = [sheet for sheet, _ in read_sheets(root.tables("sheet"))]
    root.faults.raise_any()
    return found


def fault(text: str) -> str:
    root = table(text)
    read_sheets(root.tables("sheet"))
    return said(root)


def test_two_tape_readings_say_where_a_defect_is() -> None:
    (sheet,) = sheets(SHEET + "count = 1\n" + KNOT + 'what = "knot hole"\n')
    assert sheet.defects == (
        Defect(what="knot hole", x=mm(600), y=mm(300), length=mm(80), width=mm(50)),
    )
    assert (sheet.name, sheet.count, sheet.told_from) == ("birch 18", 1, "")


@pytest.mark.parametrize(
    ("corner", "place"),
    [
        ("bottom left", (0, 0)),
        ("bottom right", (2370, 0)),
        ("top left", (0, 1170)),
        ("top right", (2370, 1170)),
    ],
)
def test_a_crushed_corner_needs_no_readings(corner: str, place: tuple[int, int]) -> None:
    text = f'[[sheet.defect]]\ncorner = "{corner}"\nlength = 70\nwidth = 50\n'
    (sheet,) = sheets(SHEET + "count = 1\n" + text)
    (defect,) = sheet.defects
    assert (defect.x, defect.y) == (mm(place[0]), mm(place[1]))


def test_sheets_with_defects_are_told_apart_from_the_others_of_their_kind() -> None:
    stain = KNOT + 'on = 3\nuse = "hidden parts"\n'
    found = sheets(SHEET + "count = 4\n" + KNOT + stain)
    assert [(sheet.name, sheet.count, len(sheet.defects)) for sheet in found] == [
        ("birch 18", 2, 0),
        ("birch 18, no. 1", 1, 1),
        ("birch 18, no. 3", 1, 1),
    ]
    assert found[2].defects[0].use is Use.HIDDEN_PARTS
    assert [sheet.told_from for sheet in found] == ["", "birch 18", "birch 18"]


def test_a_defect_is_on_a_sheet_in_hand() -> None:
    assert fault(SHEET + KNOT) == (
        "job.toml, line 1, [[sheet]] 1 'birch 18': a defect lies on a sheet in hand, but not how "
        "many of these there are.\n"
        "Add a line such as count = 1; sheets still to be bought are a [[sheet]] of their own."
    )


def test_a_defect_beyond_the_edge_is_refused() -> None:
    message = fault(SHEET + "count = 1\n" + KNOT.replace("600", "2400"))
    assert "key 'along': it reaches to 2480 mm, beyond the length of 2440 mm." in message
    assert "along = 2400" in message


def test_a_defect_on_a_sheet_that_is_not_there_is_refused() -> None:
    message = fault(SHEET + "count = 2\n" + KNOT + "on = 3\n")
    assert "key 'on': it is on sheet 3, and there are 2." in message


def test_a_corner_and_readings_contradict_each_other() -> None:
    message = fault(SHEET + "count = 1\n" + KNOT + 'corner = "top left"\n')
    assert "'along' is given for a defect at a corner." in message
    assert "'across' is given for a defect at a corner." in message


def test_a_use_that_is_not_known_names_the_nearest() -> None:
    message = fault(SHEET + "count = 1\n" + KNOT + 'use = "hidden"\n')
    assert "Did you mean 'hidden parts'?" in message
