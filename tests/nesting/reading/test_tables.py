from decimal import Decimal
from enum import Enum

from nesting.lengths import Unit, inch, mm
from tests.nesting.reading.job_files import said, table


class Side(Enum):
    LENGTH = "length"
    WIDTH = "width"


GOOD = """
[all]
text = " Hall "
length = 464.6
zero = 0
lengths = [17.7, "18 mm"]
lone = 18
whole = 3
number = 62.00
flag = true
choice = "width"
"""


def test_good_values_are_read_as_they_are_meant() -> None:
    root = table(GOOD)
    one = root.table("all")
    assert one.text("text") == "Hall"
    assert one.length("length") == mm("464.6")
    assert one.length("zero", may_be_zero=True) == 0
    assert one.lengths("lengths") == (mm("17.7"), mm(18))
    assert one.lengths("lone") == (mm(18),)
    assert one.whole("whole") == 3
    assert one.number("number") == Decimal("62.00")
    assert one.flag("flag") is True
    assert one.choice("choice", Side) is Side.WIDTH
    one.finish()
    root.finish()
    assert said(root) == ""
    assert root.is_sound


def test_what_is_left_out_has_its_default() -> None:
    one = table("[all]\n").table("all")
    assert one.text("text", "Job") == "Job"
    assert one.length("length", mm(5)) == mm(5)
    assert one.length("length", 0) == 0
    assert one.lengths("lengths") == ()
    assert one.whole("whole", 7) == 7
    assert one.number("number", Decimal(0)) == 0
    assert one.flag("flag") is False
    assert one.choice("choice", Side, Side.WIDTH) is Side.WIDTH
    assert said(one) == ""


def test_what_must_be_there_is_asked_for_with_an_example() -> None:
    one = table("\n[all]\n").table("all")
    one.text("name")
    one.length("width")
    one.whole("count", least=1)
    one.number("price")
    one.choice("grain", Side)
    assert said(one) == (
        "job.toml, line 2, [all]: 'name' is missing.\n"
        'Add a line such as name = "...".\n'
        "job.toml, line 2, [all]: 'width' is missing.\n"
        "Add a line such as width = 600.\n"
        "job.toml, line 2, [all]: 'count' is missing.\n"
        "Add a line such as count = 1.\n"
        "job.toml, line 2, [all]: 'price' is missing.\n"
        "Add a line such as price = 1.\n"
        "job.toml, line 2, [all]: 'grain' is missing.\n"
        'Add a line such as grain = "length".'
    )
    assert not one.is_sound


def test_bare_numbers_are_in_the_unit_of_the_table() -> None:
    one = table('[all]\nwidth = 2\ntext = "23 5/8"\n', Unit.INCH).table("all")
    assert (one.length("width"), one.length("text")) == (inch(2), inch("23 5/8"))


def test_an_example_for_an_inch_job_is_in_inches() -> None:
    one = table("[all]\n", Unit.INCH).table("all")
    one.length("width")
    assert said(one) == (
        "job.toml, line 1, [all]: 'width' is missing.\n"
        'Add a line such as width = "23 5/8".'
    )  # fmt: skip


def test_a_fault_names_line_table_and_key_and_points_at_the_value() -> None:
    root = table('# job\n[[sheet]]\nname = "oak"\n[[sheet]]\nname = "birch 18"\nwidth = "30 cm"\n')
    for each in root.tables("sheet"):
        each.text("name")
        each.length("width", mm(1))
    assert said(root) == (
        "job.toml, line 6, [[sheet]] 2 'birch 18', key 'width': '30 cm' is in 'cm'.\n"
        '    width = "30 cm"\n'
        "            ^^^^^^^\n"
        "Write millimetres (18 mm) or inches (23/32 in)."
    )
    assert not root.is_sound


def test_each_bad_element_of_a_list_is_a_fault() -> None:
    root = table('measured = [17.7, "x", -1]')
    assert root.lengths("measured") == (mm("17.7"),)
    assert said(root) == (
        "job.toml, line 1, key 'measured': 'x' is not a length.\n"
        '    measured = [17.7, "x", -1]\n'
        "               ^^^^^^^^^^^^^^^\n"
        "Write a number, such as 464.6, 18 mm or 23/32 in.\n"
        "job.toml, line 1, key 'measured': '-1' is negative.\n"
        '    measured = [17.7, "x", -1]\n'
        "               ^^^^^^^^^^^^^^^\n"
        "Write a length of more than 0."
    )


def test_an_unknown_key_names_the_nearest_known_one() -> None:
    one = table("[saw]\nkurf = 2.4\n").table("saw")
    one.length("kerf", 0)
    one.length("guide_length", 0)
    one.finish()
    assert said(one) == (
        "job.toml, line 2, [saw]: 'kurf' is not known here.\n"
        "    kurf = 2.4\n"
        "    ^^^^\n"
        "Did you mean 'kerf'? Known here: 'kerf' and 'guide_length'."
    )


def test_an_unknown_table_is_reported_where_it_begins() -> None:
    root = table("[saw]\n\n[[shet]]\n[[shet]]\n")
    root.table("saw")
    root.tables("sheet")
    root.finish()
    assert said(root) == (
        "job.toml, line 3: 'shet' is not known here.\n"
        "Did you mean 'sheet'? Known here: 'saw' and 'sheet'."
    )


def test_a_table_that_should_be_one_of_several_says_how_to_write_it() -> None:
    root = table("[sheet]\nwidth = 3\n")
    assert root.tables("sheet") == ()
    assert said(root) == (
        "job.toml, line 1: each sheet must be a table of its own.\n"
        "    [sheet]\n"
        "     ^^^^^\n"
        "Write [[sheet]] on a line of its own, in double brackets, and its keys below it."
    )


def test_a_table_that_should_be_the_only_one_says_how_to_write_it() -> None:
    root = table("[[saw]]\nkerf = 3\n")
    assert root.table("saw").is_absent
    assert said(root) == (
        "job.toml, line 1: [saw] must be one table.\n"
        "Write [saw] on a line of its own, in single brackets, and its keys below it."
    )


def test_a_value_in_the_place_of_a_table_asks_for_nothing_inside_it() -> None:
    root = table("saw = 3\n")
    root.table("saw").length("kerf")
    assert said(root) == (
        "job.toml, line 1: [saw] must be one table.\n"
        "    saw = 3\n"
        "    ^^^\n"
        "Write [saw] on a line of its own, in single brackets, and its keys below it."
    )


def test_a_fault_in_an_inline_table_points_into_it() -> None:
    root = table("[[sheet]]\ntrim = { left = 10, right = -5 }\n")
    trim = root.tables("sheet")[0].table("trim")
    trim.length("left")
    trim.length("right")
    assert said(root) == (
        "job.toml, line 2, [[sheet]] 1, trim, key 'right': '-5' is negative.\n"
        "    trim = { left = 10, right = -5 }\n"
        "                                ^^\n"
        "Write a length of more than 0."
    )


def test_a_table_inside_a_table_can_be_one_of_several() -> None:
    root = table('[[cabinet]]\n[[cabinet.port]]\n[[cabinet.port]]\nname = "low"\n')
    ports = root.tables("cabinet")[0].tables("port")
    assert [port.label for port in ports] == [
        "[[cabinet]] 1, port 1",
        "[[cabinet]] 1, port 2 'low'",
    ]
    assert [port.line for port in ports] == [2, 3]
    assert ports[1].place == "line 3"


def test_where_the_line_is_not_known_the_message_does_without() -> None:
    root = table('sheet = [\n { name = "a" },\n { name = 5 },\n]\n')
    for each in root.tables("sheet"):
        each.text("name")
    assert said(root) == (
        "job.toml, line 1, [[sheet]] 2, key 'name': 5 is not text.\nPut it in quotes."
    )


def test_the_values_that_come_with_a_fault_make_no_further_fault() -> None:
    one = table("[all]\nwidth = true\ncount = 0\n").table("all")
    assert one.length("width") > 0
    assert one.whole("count", least=1) == 1
    assert one.length("count", mm(7)) == mm(7)
