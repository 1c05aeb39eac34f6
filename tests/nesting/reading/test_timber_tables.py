from decimal import Decimal
from pathlib import Path

import pytest

from nesting.lengths import Unit, inch, mm
from nesting.reading.timber_tables import read_timber
from nesting.timber import Timber
from tests.nesting.reading.job_files import PART, SHEET, message, read, said, table

PINE = '[[timber]]\nname = "pine"\nsection = [30, 20]\nlength = 2400\n'
BOX = """[[cabinet]]
name = "Box"
height = 500
width = 400
depth = 300
baffle = { fit = "inset" }
back = { fit = "inset" }
battens = { section = [20, 30] }
"""


def test_every_key_is_read_and_the_smaller_side_comes_first() -> None:
    root = table(f"{PINE}price = 5.40\ncount = 3\ntrim = 5\n")
    assert read_timber(root.tables("timber")) == (
        Timber(
            name="pine",
            section=(mm(20), mm(30)),
            length=mm(2400),
            price=Decimal("5.40"),
            count=3,
            trim=mm(5),
        ),
    )
    assert said(root) == ""


def test_without_more_words_there_is_as_much_as_needed_for_nothing() -> None:
    (timber,) = read_timber(table(PINE).tables("timber"))
    assert (timber.price, timber.count, timber.trim) == (Decimal(0), None, 0)


def test_an_inch_file_is_read_in_inches() -> None:
    text = '[[timber]]\nname = "pine"\nsection = ["3/4", "1 1/2"]\nlength = 96\n'
    (timber,) = read_timber(table(text, Unit.INCH).tables("timber"))
    assert (timber.section, timber.length) == ((inch("3/4"), inch("1 1/2")), inch(96))


@pytest.mark.parametrize(
    ("line", "what"),
    [
        ("trim = 150\nlength = 300", "leave nothing"),
        ("trim = 1200", "key 'trim'"),
        ("colour = 3", "'colour' is not known here"),
        ("count = 0", "key 'count'"),
    ],
)
def test_what_no_timber_is_is_refused(line: str, what: str) -> None:
    text = PINE if "length" not in line else PINE.replace("length = 2400\n", "")
    root = table(f"{text}{line}\n")
    assert read_timber(root.tables("timber")) == ()
    assert what in said(root)


@pytest.mark.parametrize("section", ["20", "[20]", "[20, 30, 40]"])
def test_a_section_has_two_sides(section: str) -> None:
    root = table(PINE.replace("[30, 20]", section))
    read_timber(root.tables("timber"))
    assert "two sides are needed" in said(root)


def test_a_name_is_used_once() -> None:
    root = table(PINE + PINE)
    assert len(read_timber(root.tables("timber"))) == 1
    assert "is taken already" in said(root)


def test_the_job_carries_its_timber_and_lists_it_among_its_numbers(tmp_path: Path) -> None:
    job = read(tmp_path, f"{SHEET}{PART}{PINE}")
    assert [each.name for each in job.timber] == ["pine"]
    listed = {each.name: each.value for each in job.assumptions}
    assert listed["section and length of pine"] == "20 × 30 × 2400 mm"


def test_battens_of_a_section_that_no_timber_has_are_asked_about(tmp_path: Path) -> None:
    wrong = PINE.replace("[30, 20]", "[40, 20]")
    text = message(tmp_path, f"{SHEET}{BOX}{wrong}")
    assert "no timber has the section of the battens, 20 × 30 mm" in text
    assert read(tmp_path, f"{SHEET}{BOX}{PINE}").timber
