from nesting.lengths import mm
from nesting.parts import Grain, Part, Status
from nesting.reading.plain_parts import ReadPart, check_together, read_part
from nesting.reading.sheet_tables import read_sheets
from nesting.reading.stock import Stock
from nesting.reading.tables import Table
from tests.nesting.reading.job_files import PART, SHEET, said, table

STOCK = Stock(
    sheets=tuple(sheet for sheet, _ in read_sheets(table(SHEET).tables("sheet"))), is_complete=True
)
KERF = mm("2.4")


def read_all(root: Table) -> list[ReadPart]:
    found = [read_part(each, STOCK, KERF) for each in root.tables("part")]
    return [each for each in found if each is not None]


def refused(text: str) -> str:
    root = table(text)
    check_together(read_all(root))
    return said(root)


def test_a_part_is_read_key_by_key() -> None:
    text = PART + (
        'count = 2\ngrain = "width"\nmaterial = "birch plywood"\nthickness = 18\noversize = 3\n'
    )
    (read,) = read_all(table(text))
    assert read.part == Part(
        name="Shelf",
        length=mm(562),
        width=mm(300),
        count=2,
        grain=Grain.WIDTH,
        material="birch plywood",
        thickness=mm(18),
        oversize=mm(3),
        status=Status.OVERSIZE,
    )
    assert not read.has_default_grain


def test_a_part_of_which_little_is_said_is_one_final_piece_that_may_be_turned() -> None:
    (read,) = read_all(table(PART))
    assert (read.part.count, read.part.grain, read.part.status) == (1, Grain.ANY, Status.FINAL)
    assert read.has_default_grain


def test_a_part_larger_than_every_sheet_is_left_to_the_engine() -> None:
    assert refused(PART.replace("562", "5000")) == ""


def test_a_part_narrower_than_the_kerf_is_refused() -> None:
    assert refused(PART.replace("300", "0.3")) == (
        "job.toml, line 4, [[part]] 1 'Shelf', key 'width': "
        "the part is 0.3 mm across, less than the kerf of 2.4 mm.\n"
        "    width = 0.3\n"
        "            ^^^\n"
        "Check the figure and its unit, and the kerf under [saw]."
    )


def test_a_part_shorter_than_the_kerf_is_refused() -> None:
    assert "key 'length': the part is 2.3 mm across" in refused(PART.replace("562", "2.3"))


def test_a_part_as_narrow_as_the_kerf_is_not_refused() -> None:
    assert refused(PART.replace("300", "2.4")) == ""


def test_a_part_without_anything_is_told_all_that_is_missing() -> None:
    assert refused("[[part]]\n") == (
        "job.toml, line 1, [[part]] 1: 'name' is missing.\n"
        'Add a line such as name = "...".\n'
        "job.toml, line 1, [[part]] 1: 'length' is missing.\n"
        "Add a line such as length = 600.\n"
        "job.toml, line 1, [[part]] 1: 'width' is missing.\n"
        "Add a line such as width = 600."
    )


def test_a_name_twice_is_refused_where_it_comes_again() -> None:
    assert refused(PART + PART) == (
        "job.toml, line 6, [[part]] 2 'Shelf', key 'name': "
        "the name 'Shelf' is taken already (line 1).\n"
        '    name = "Shelf"\n'
        "           ^^^^^^^\n"
        "Give every part its own name; more of the same part is a higher count."
    )


def test_twenty_thousand_pieces_are_not_too_many() -> None:
    assert refused(PART + "count = 20000\n") == ""


def test_more_pieces_than_that_are_refused_in_one_part() -> None:
    assert refused(PART + "count = 20001\n") == (
        "job.toml, line 5, [[part]] 1 'Shelf', key 'count': it is more than 20000.\n"
        "    count = 20001\n"
        "            ^^^^^\n"
        "Check the figure."
    )


def test_more_pieces_than_that_are_refused_where_they_become_too_many() -> None:
    three = "".join(
        PART.replace("Shelf", name) + "count = 9000\n" for name in ("one", "two", "three", "four")
    )
    assert refused(three) == (
        "job.toml, line 15, [[part]] 3 'three', key 'count': "
        "with this part the job comes to 27000 pieces, more than 20000.\n"
        "    count = 9000\n"
        "            ^^^^\n"
        "Check the counts, or split the job."
    )


def test_parts_that_must_match_are_told_by_a_word() -> None:
    rail = PART.replace("Shelf", "Rail").replace("562", "400")
    root = table(PART + 'match = "depth"\n' + rail + 'match = "depth"\n')
    assert [read.part.match for read in read_all(root)] == ["depth", "depth"]
    assert refused(PART + 'match = "depth"\n' + rail + 'match = "depth"\n') == ""


def test_parts_without_a_size_in_common_cannot_match() -> None:
    rail = PART.replace("Shelf", "Rail").replace("562", "400").replace("300", "299")
    assert refused(PART + 'match = "depth"\n' + rail + 'match = "depth"\n') == (
        "job.toml, line 10, [[part]] 2 'Rail', key 'match': "
        "it shares no size with the other parts that must match as 'depth'.\n"
        '    match = "depth"\n'
        "            ^^^^^^^\n"
        "Give them an equal length or width, oversize counted, or take the word away."
    )
