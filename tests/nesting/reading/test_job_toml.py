from pathlib import Path

import pytest

from nesting.errors import InputError
from nesting.lengths import Unit, inch, mm
from nesting.parts import Part
from nesting.reading.job_toml import read_job
from nesting.saw import Saw
from nesting.yard import Yard
from tests.nesting.reading.job_files import PART, SHEET, message, read, write

NO_SHEET = (
    "job.toml: there is no sheet to cut from.\n"
    "Add a [[sheet]] with name, material, thickness, length and width."
)
NOTHING = (
    "job.toml: there is nothing to cut.\n"
    "Add a [[cabinet]] with name, height, width and depth, a [[part]] with name, length "
    "and width, or a [[part_list]] with a file."
)


def test_a_sheet_and_a_part_are_a_job(tmp_path: Path) -> None:
    job = read(tmp_path, SHEET + PART)
    assert (job.name, job.unit, job.step, job.saw) == ("job", Unit.MM, mm("0.5"), Saw())
    assert [sheet.name for sheet in job.sheets] == ["birch 18"]
    assert job.parts == (
        Part(
            name="Shelf",
            length=mm(562),
            width=mm(300),
            material="birch plywood",
            thickness=mm(18),
        ),
    )


def test_the_heading_of_a_job_is_read(tmp_path: Path) -> None:
    heading = '[job]\nname = "Hall shelves"\nunits = "mm"\nstep = 1\n'
    job = read(tmp_path, heading + SHEET + PART)
    assert (job.name, job.step) == ("Hall shelves", mm(1))


def test_the_unit_holds_for_the_whole_file_wherever_it_stands(tmp_path: Path) -> None:
    text = SHEET.replace("2440", "96").replace("1220", "48").replace("= 18", '= "3/4"')
    part = PART.replace("562", '"22 1/8"').replace("300", "12")
    job = read(tmp_path, part + text + '[job]\nunits = "in"\n')
    assert (job.parts[0].length, job.parts[0].width) == (inch("22 1/8"), inch(12))
    assert (job.unit, job.step) == (Unit.INCH, inch("1/32"))


def test_the_same_sizes_in_either_unit_are_the_same_parts_and_sheets(tmp_path: Path) -> None:
    metric = SHEET + PART
    inches = metric
    for size in (" 18", "2440", "1220", "562", "300"):
        inches = inches.replace(f"{size}\n", f' "{size.strip()} mm"\n')
    job = read(tmp_path, '[job]\nunits = "in"\n' + inches)
    assert job.unit is Unit.INCH
    assert job.parts == read(tmp_path, metric).parts
    assert job.sheets[0].length == read(tmp_path, metric).sheets[0].length


def test_an_empty_file_is_told_what_to_write(tmp_path: Path) -> None:
    assert message(tmp_path, "") == f"{NO_SHEET}\n{NOTHING}"


def test_a_job_without_sheets_is_refused(tmp_path: Path) -> None:
    assert message(tmp_path, PART) == NO_SHEET


def test_a_job_without_parts_is_refused(tmp_path: Path) -> None:
    assert message(tmp_path, SHEET) == NOTHING


def test_an_empty_list_of_parts_is_nothing_to_cut(tmp_path: Path) -> None:
    assert message(tmp_path, "part = []\n" + SHEET) == NOTHING


def test_parts_can_be_worked_out_without_sheets(tmp_path: Path) -> None:
    path = write(tmp_path, PART + "thickness = 18\n")
    job = read_job(path, needs_sheets=False)
    assert job.sheets == ()
    assert (job.parts[0].material, job.parts[0].thickness) == ("sheet", mm(18))


def test_parts_worked_out_without_sheets_must_say_their_thickness(tmp_path: Path) -> None:
    with pytest.raises(InputError) as refused:
        read_job(write(tmp_path, PART), needs_sheets=False)
    assert str(refused.value) == (
        "job.toml, line 1, [[part]] 1 'Shelf': 'thickness' is missing.\n"
        "Add a line such as thickness = 18."
    )


def test_sheets_that_are_there_are_used_where_none_is_needed(tmp_path: Path) -> None:
    job = read_job(write(tmp_path, SHEET + PART), needs_sheets=False)
    assert job == read(tmp_path, SHEET + PART)


def test_yard_and_car_are_read_and_left_out_where_the_file_has_none(tmp_path: Path) -> None:
    plain = read(tmp_path, SHEET + PART)
    assert (plain.yard, plain.car) == (None, None)
    car = "[car]\nopening = [1000, 700]\nfloor_length = 1500\n"
    job = read(tmp_path, f"{SHEET}{PART}[yard]\nmax_cuts = 2\n{car}")
    assert job.yard == Yard(max_cuts=2)
    assert job.car is not None
    assert job.car.arch_width == mm(1000)


def test_a_covering_without_a_cabinet_is_refused(tmp_path: Path) -> None:
    assert message(tmp_path, SHEET + PART + "[covering]\nthickness = 1\n") == (
        "job.toml, line 12, [covering]: there is no [[cabinet]] to cover.\n"
        "Take this table out, or add a cabinet."
    )


def test_a_table_that_is_not_known_names_the_nearest(tmp_path: Path) -> None:
    assert message(tmp_path, SHEET + PART + "[swa]\nkerf = 3\n") == (
        "job.toml, line 12: 'swa' is not known here.\n"
        "    [swa]\n"
        "     ^^^\n"
        "Did you mean 'saw'? Known here: 'job', 'saw', 'keep', 'time', 'sheet', 'covering', "
        "'part', 'part_list', 'cabinet', 'merge', 'yard', 'car', 'timber', 'buy', 'session' and "
        "'batch'."
    )


def test_a_key_before_the_first_table_is_not_known(tmp_path: Path) -> None:
    assert message(tmp_path, "kerf = 3\n" + SHEET + PART).startswith(
        "job.toml, line 1: 'kerf' is not known here.\n    kerf = 3\n    ^^^^\n"
    )


def test_all_faults_come_together_in_the_order_of_the_file(tmp_path: Path) -> None:
    text = (
        '[[part]]\nname = "Shelf"\nlength = 0\nwdith = 300\n'
        "[time]\ncut = -1\n"
        "[job]\nunits = 5\n"
        '[[sheet]]\nname = "birch 18"\nmaterial = "birch plywood"\nthickness = 18\n'
        "length = 2440\n"
        "[saw]\nkerf = true\n"
    )
    assert message(tmp_path, text) == (
        "job.toml, line 1, [[part]] 1 'Shelf': 'width' is missing.\n"
        "Add a line such as width = 600.\n"
        "job.toml, line 3, [[part]] 1 'Shelf', key 'length': '0' is zero.\n"
        "    length = 0\n"
        "             ^\n"
        "Write a length of more than 0.\n"
        "job.toml, line 4, [[part]] 1 'Shelf': 'wdith' is not known here.\n"
        "    wdith = 300\n"
        "    ^^^^^\n"
        "Did you mean 'width'? Known here: 'name', 'length', 'width', 'count', 'grain', "
        "'material', 'thickness', 'oversize', 'face', 'match', 'free' and 'free_limit'.\n"
        "job.toml, line 6, [time], key 'cut': -1 is less than 0.\n"
        "    cut = -1\n"
        "          ^^\n"
        "Write a number of 0 or more.\n"
        "job.toml, line 8, [job], key 'units': 5 is not one of the choices.\n"
        "    units = 5\n"
        "            ^\n"
        "Write 'mm' or 'in'.\n"
        "job.toml, line 9, [[sheet]] 1 'birch 18': 'width' is missing.\n"
        "Add a line such as width = 600.\n"
        "job.toml, line 15, [saw], key 'kerf': true is not a length.\n"
        "    kerf = true\n"
        "           ^^^^\n"
        'Write a number, such as 464.6, or text with a unit, such as "18 mm" or "23/32 in".'
    )


def test_a_bad_sheet_makes_no_further_faults_of_its_parts(tmp_path: Path) -> None:
    part = PART + 'material = "oak"\nthickness = 3\n'
    assert message(tmp_path, SHEET.replace("2440", "true") + part) == (
        "job.toml, line 5, [[sheet]] 1 'birch 18', key 'length': true is not a length.\n"
        "    length = true\n"
        "             ^^^^\n"
        'Write a number, such as 464.6, or text with a unit, such as "18 mm" or "23/32 in".'
    )


def test_a_step_of_a_decimetre_is_refused(tmp_path: Path) -> None:
    assert message(tmp_path, "[job]\nstep = 100\n" + SHEET + PART) == (
        "job.toml, line 2, [job], key 'step': '100' is more than 5 mm, too long to be meant.\n"
        "    step = 100\n"
        "           ^^^\n"
        "Check the figures and the unit: bare numbers are in mm here."
    )


def test_a_file_that_is_not_toml_is_told_where_it_stops_being_so(tmp_path: Path) -> None:
    assert message(tmp_path, SHEET + PART.replace("300", "11 5/8")) == (
        "job.toml, line 11: something follows the value.\n"
        "    width = 11 5/8\n"
        "               ^\n"
        'Put text, units and fractions in quotes, such as "18 mm" or "11 5/8 in", '
        "and begin a new line for the next key."
    )


def test_a_byte_order_mark_and_other_line_ends_are_tolerated(tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    path.write_bytes(b"\xef\xbb\xbf" + (SHEET + PART).replace("\n", "\r\n").encode())
    assert read_job(path) == read(tmp_path, SHEET + PART)


def test_a_missing_job_file_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "none.toml"
    with pytest.raises(InputError) as refused:
        read_job(path)
    assert str(refused.value) == (f"{path}: there is no such file.\nCheck the name and the folder.")


def test_cabinets_count_towards_the_pieces_of_a_job(tmp_path: Path) -> None:
    cabinet = '[[cabinet]]\nname = "Box"\nheight = 600\nwidth = 500\ndepth = 350\ncount = 500\n'
    assert message(tmp_path, SHEET + PART + "count = 18500\n" + cabinet) == (
        "job.toml: with its cabinets the job comes to 20500 pieces, more than 20000.\n"
        "Check the counts, or split the job."
    )


def test_a_title_taken_from_the_name_of_a_file_can_always_be_printed(tmp_path: Path) -> None:
    path = write(tmp_path, SHEET + PART, "two\nlines\t" + "x" * 200 + ".toml")
    title = read_job(path).name
    assert title.startswith("two_lines_x")
    assert title.isprintable()
    assert len(title) == 80


def test_a_name_that_is_far_too_long_is_not_repeated_in_messages(tmp_path: Path) -> None:
    with pytest.raises(InputError) as caught:
        read(tmp_path, SHEET + PART.replace("Shelf", "x" * 3000))
    assert "the text has 3000 characters" in str(caught.value)
    assert len(str(caught.value)) < 500
