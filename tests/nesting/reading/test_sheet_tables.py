from decimal import Decimal

import pytest

from nesting.lengths import Unit, inch, mm
from nesting.reading.sheet_tables import default_trim, read_sheets
from nesting.sheets import Sheet, SheetGrain, Trim
from tests.nesting.reading.job_files import SHEET, said, table

TEN = Trim(left=mm(10), right=mm(10), top=mm(10), bottom=mm(10))


def read_one(text: str) -> Sheet:
    root = table(text)
    ((sheet, _),) = read_sheets(root.tables("sheet"))
    assert said(root) == ""
    return sheet


OFF = "is more than 15 % off the thickness of 18 mm"
MEASURE = "Measure again, or correct the figure that is mistyped."
TRIM = "Give how much of each edge is not used, a little only."
WHOLE = "Write a whole number of 1 or more."
GRAIN = "Write 'length', 'width' or 'none'."


def refused(text: str) -> str:
    root = table(text)
    read_sheets(root.tables("sheet"))
    return said(root)


def test_a_sheet_is_read_key_by_key() -> None:
    text = SHEET + (
        'measured = [17.7, 17.6]\ngrain = "width"\ncount = 4\n'
        "trim = { left = 10, right = 5, top = 0, bottom = 2.5 }\n"
    )
    assert read_one(text) == Sheet(
        name="birch 18",
        material="birch plywood",
        thickness=mm(18),
        measured=(mm("17.7"), mm("17.6")),
        length=mm(2440),
        width=mm(1220),
        grain=SheetGrain.WIDTH,
        price=Decimal("62.00"),
        count=4,
        trim=Trim(left=mm(10), right=mm(5), top=0, bottom=mm("2.5")),
    )


def test_a_sheet_of_which_little_is_said_has_the_usual_trim() -> None:
    sheet = read_one(SHEET)
    assert (sheet.trim, sheet.count, sheet.measured) == (TEN, None, ())
    assert sheet.grain is SheetGrain.LENGTH


def test_the_usual_trim_of_an_inch_job_is_three_eighths() -> None:
    assert default_trim(Unit.INCH) == inch("3/8")


def test_the_usual_trim_covers_an_unmeasured_sheet() -> None:
    # Acceptance of the honest sheet size: of an unmeasured 2440 no more than 2440 - 4 - 2 * 5 may
    # be used.
    sheet = read_one(SHEET)
    assert sheet.usable_length <= mm(2440 - 4 - 2 * 5)
    assert sheet.usable_width <= mm(1220 - 3 - 2 * 5)


def test_one_length_of_trim_is_for_all_edges() -> None:
    assert read_one(SHEET + "trim = 0\n").trim == Trim()


def test_a_trim_for_some_edges_leaves_the_others_as_usual() -> None:
    assert read_one(SHEET + "trim.left = 3\n").trim == Trim(
        left=mm(3), right=mm(10), top=mm(10), bottom=mm(10)
    )


def test_a_sheet_may_be_wider_than_long() -> None:
    sheet = read_one(SHEET.replace("length = 2440", "length = 610"))
    assert (sheet.length, sheet.width) == (mm(610), mm(1220))


def test_an_owned_sheet_is_free_and_counted() -> None:
    sheet = read_one(SHEET.replace("price = 62.00", "owned = true\ncount = 1"))
    assert (sheet.owned, sheet.price, sheet.count) == (True, Decimal(0), 1)


@pytest.mark.parametrize(
    ("line", "what", "remedy"),
    [
        ("measured = [17.7, 1.77]", f"1.77 mm {OFF}", MEASURE),
        ("measured = [20.8]", f"20.8 mm {OFF}", MEASURE),
        ("trim = 700", "the trims leave nothing of the width of 1220 mm", TRIM),
        ("trim = -1", "'-1' is negative", "Write a length of 0 or more."),
        ("count = 0", "0 is less than 1", WHOLE),
        ("count = 1.5", "1.5 is not a whole number", WHOLE),
        ('grain = "any"', "'any' is not one of the choices", GRAIN),
        ("owned = 1", "1 is neither true nor false", "Write true or false, without quotes."),
    ],
)
def test_one_bad_value_is_named_with_its_line(line: str, what: str, remedy: str) -> None:
    key, start = line.split(" ", maxsplit=1)[0], line.index("=") + 2
    assert refused(SHEET + line) == (
        f"job.toml, line 8, [[sheet]] 1 'birch 18', key '{key}': {what}.\n"
        f"    {line}\n"
        f"    {' ' * start}{'^' * (len(line) - start)}\n"
        f"{remedy}"
    )


def test_readings_up_to_15_per_cent_off_are_believed() -> None:
    assert read_one(SHEET + "measured = [15.3, 20.7]\n").measured == (mm("15.3"), mm("20.7"))


@pytest.mark.parametrize("trim", ["{ left = 2000, right = 440 }", "{ top = 1210 }"])
def test_trims_that_leave_nothing_are_refused(trim: str) -> None:
    assert "the trims leave nothing of the" in refused(f"{SHEET}trim = {trim}\n")


def test_a_sheet_in_metres_is_refused() -> None:
    text = SHEET.replace("2440", "2.44").replace("1220", "1.22")
    assert refused(text) == (
        "job.toml, line 5, [[sheet]] 1 'birch 18', key 'length': "
        "2.44 mm is too small for a sheet.\n"
        "    length = 2.44\n"
        "             ^^^^\n"
        "Check the figure: bare numbers are in mm here.\n"
        "job.toml, line 6, [[sheet]] 1 'birch 18', key 'width': "
        "1.22 mm is too small for a sheet.\n"
        "    width = 1.22\n"
        "            ^^^^\n"
        "Check the figure: bare numbers are in mm here."
    )


def test_a_sheet_longer_than_20_m_is_refused() -> None:
    assert refused(SHEET.replace("2440", "24400")) == (
        "job.toml, line 5, [[sheet]] 1 'birch 18', key 'length': "
        "'24400' is more than 20000 mm, too long to be meant.\n"
        "    length = 24400\n"
        "             ^^^^^\n"
        "Check the figures and the unit: bare numbers are in mm here."
    )


def test_an_owned_sheet_with_a_price_and_no_count_is_refused() -> None:
    assert refused(SHEET + "owned = true\n") == (
        "job.toml, line 7, [[sheet]] 1 'birch 18', key 'price': "
        "a sheet that is owned has a price.\n"
        "    price = 62.00\n"
        "            ^^^^^\n"
        "Take the price out: the sheet costs nothing more. "
        "Or write owned = false if it is still to be bought.\n"
        "job.toml, line 8, [[sheet]] 1 'birch 18', key 'owned': "
        "a sheet is owned, but not how many of them.\n"
        "    owned = true\n"
        "            ^^^^\n"
        "Add a line such as count = 1."
    )


def test_a_name_twice_is_refused_where_it_comes_again() -> None:
    assert refused(SHEET + SHEET) == (
        "job.toml, line 9, [[sheet]] 2 'birch 18', key 'name': "
        "the name 'birch 18' is taken already (line 1).\n"
        '    name = "birch 18"\n'
        "           ^^^^^^^^^^\n"
        "Give every kind of sheet its own name."
    )


def test_sheets_without_names_are_not_also_said_to_share_one() -> None:
    nameless = SHEET.replace('name = "birch 18"\n', "")
    assert refused(nameless + nameless) == (
        "job.toml, line 1, [[sheet]] 1: 'name' is missing.\n"
        'Add a line such as name = "...".\n'
        "job.toml, line 7, [[sheet]] 2: 'name' is missing.\n"
        'Add a line such as name = "...".'
    )


def test_a_bad_sheet_does_not_hide_a_good_one() -> None:
    root = table(SHEET.replace("18\n", "0\n") + SHEET.replace("birch 18", "birch 18 b"))
    assert [sheet.name for sheet, _ in read_sheets(root.tables("sheet"))] == ["birch 18 b"]
