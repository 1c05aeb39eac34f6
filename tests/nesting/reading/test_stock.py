import pytest

from nesting.lengths import Length, Unit, mm
from nesting.reading.sheet_tables import read_sheets
from nesting.reading.stock import Stock, read_material
from tests.nesting.reading.job_files import SHEET, said, table

TWELVE = SHEET.replace("18", "12")
POPLAR = SHEET.replace("birch", "poplar")


def stock(*sheets: str) -> Stock:
    found = tuple(sheet for sheet, _ in read_sheets(table("".join(sheets)).tables("sheet")))
    assert len(found) == len(sheets)
    return Stock(sheets=found, is_complete=True)


def chosen(text: str, sheets: Stock) -> tuple[str, Length]:
    one = table(f"[part]\n{text}").table("part")
    found = read_material(one, sheets)
    assert said(one) == ""
    return found


def refused(text: str, sheets: Stock, unit: Unit = Unit.MM) -> str:
    one = table(f"[part]\n{text}", unit).table("part")
    read_material(one, sheets)
    return said(one)


def test_nothing_need_be_said_where_there_is_no_choice() -> None:
    assert chosen("", stock(SHEET)) == ("birch plywood", mm(18))


def test_the_thickness_alone_is_enough_for_one_material() -> None:
    assert chosen("thickness = 12", stock(SHEET, TWELVE)) == ("birch plywood", mm(12))


def test_the_material_alone_is_enough_where_it_has_one_thickness() -> None:
    assert chosen('material = "poplar plywood"', stock(SHEET, TWELVE, POPLAR)) == (
        "poplar plywood",
        mm(18),
    )


def test_two_sizes_of_the_same_board_are_no_choice() -> None:
    half = SHEET.replace('"birch 18"', '"half"').replace("2440", "1220")
    assert chosen("", stock(SHEET, half)) == ("birch plywood", mm(18))


def test_a_material_left_out_among_several_is_asked_for() -> None:
    assert refused("", stock(SHEET, POPLAR)) == (
        "job.toml, line 1, [part]: 'material' is left out, and the sheets are of several.\n"
        "Write which it is: 'birch plywood' or 'poplar plywood'."
    )


def test_a_thickness_left_out_among_several_is_asked_for() -> None:
    assert refused("", stock(SHEET, TWELVE)) == (
        "job.toml, line 1, [part]: "
        "'thickness' is left out, and sheets of 'birch plywood' come in several.\n"
        "Write which it is: 18 mm or 12 mm."
    )


def test_a_material_that_no_sheet_is_of_names_what_there_is() -> None:
    assert refused('material = "birch playwood"', stock(SHEET, POPLAR)) == (
        "job.toml, line 2, [part], key 'material': no sheet is of 'birch playwood'.\n"
        '    material = "birch playwood"\n'
        "               ^^^^^^^^^^^^^^^^\n"
        "Did you mean 'birch plywood'? The sheets are of 'birch plywood' and 'poplar plywood'; "
        "write one of these, or add a [[sheet]]."
    )


def test_a_measured_thickness_is_answered_with_the_nominal_one() -> None:
    assert refused("thickness = 17.7", stock(SHEET)) == (
        "job.toml, line 2, [part], key 'thickness': "
        "no sheet of 'birch plywood' is sold as 17.7 mm thick.\n"
        "    thickness = 17.7\n"
        "                ^^^^\n"
        "Write the nominal thickness, which is how the sheet is sold; the nearest is 18 mm."
    )


@pytest.mark.parametrize(("thickness", "nearest"), [("14", "12"), ("15.1", "18"), ("15", "12")])
def test_the_nearest_of_several_thicknesses_is_named(thickness: str, nearest: str) -> None:
    assert refused(f"thickness = {thickness}", stock(SHEET, TWELVE)).endswith(
        "There are 18 mm, 12 mm. "
        "Write the nominal thickness, which is how the sheet is sold; "
        f"the nearest is {nearest} mm."
    )


def test_nothing_is_said_about_material_where_the_sheets_are_not_known() -> None:
    assert refused('material = "oak"\nthickness = 5', Stock(sheets=(), is_complete=False)) == ""


def test_a_bad_material_is_told_even_where_the_sheets_are_not_known() -> None:
    assert refused("material = 5", Stock(sheets=(), is_complete=False)) == (
        "job.toml, line 2, [part], key 'material': 5 is not text.\n"
        "    material = 5\n"
        "               ^\n"
        "Put it in quotes."
    )


def test_without_sheets_the_thickness_must_be_said() -> None:
    none = Stock(sheets=(), is_complete=True)
    assert chosen("thickness = 18", none) == ("sheet", mm(18))
    assert refused("", none) == (
        "job.toml, line 1, [part]: 'thickness' is missing.\nAdd a line such as thickness = 18."
    )
