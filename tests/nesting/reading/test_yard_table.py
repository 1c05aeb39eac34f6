from decimal import Decimal
from pathlib import Path

import pytest

from nesting.car import Car
from nesting.lengths import Unit, inch, mm
from nesting.reading.yard_table import assume_car, assume_yard, read_car, read_yard
from nesting.yard import Yard
from tests.nesting.reading.job_files import PART, SHEET, message, read, said, table

CAR = "[car]\nopening = [1000, 700]\nfloor_length = 1500\n"


def test_every_key_of_the_yard_is_read() -> None:
    root = table(
        "[yard]\nkerf = 4\nmax_cuts = 2\nmin_piece = 300\nprice_per_cut = 1.5\nrough = 2\n"
        'unit = "in"\n'
    )
    assert read_yard(root.table("yard")) == Yard(
        kerf=mm(4),
        max_cuts=2,
        min_piece=mm(300),
        price_per_cut=Decimal("1.5"),
        rough=mm(2),
        unit=Unit.INCH,
    )
    assert said(root) == ""


def test_an_empty_yard_table_has_the_usual_figures_of_its_unit() -> None:
    assert read_yard(table("[yard]\n").table("yard")) == Yard()
    inches = read_yard(table("[yard]\n", Unit.INCH).table("yard"))
    assert inches is not None
    assert (inches.kerf, inches.rough, inches.unit) == (inch("1/8"), inch("1/8"), Unit.INCH)


@pytest.mark.parametrize(
    ("line", "what"),
    [
        ("rough = 0", "key 'rough'"),
        ("kerf = 30", "key 'kerf'"),
        ("max_cuts = 0", "key 'max_cuts'"),
        ('unit = "cm"', "key 'unit'"),
        ("maxcuts = 2", "'maxcuts' is not known here"),
    ],
)
def test_what_no_yard_does_is_refused(line: str, what: str) -> None:
    root = table(f"[yard]\n{line}\n")
    read_yard(root.table("yard"))
    assert what in said(root)
    assert line in said(root)


def test_every_key_of_the_car_is_read() -> None:
    root = table(f"{CAR}arch_width = 950\nclearance = 10\n")
    assert read_car(root.table("car")) == Car(
        opening_width=mm(1000),
        opening_height=mm(700),
        floor_length=mm(1500),
        arch_width=mm(950),
        clearance=mm(10),
    )
    assert said(root) == ""


def test_a_car_in_inches_has_a_clearance_in_inches() -> None:
    text = '[car]\nopening = [39, "27 1/2"]\nfloor_length = 60\n'
    car = read_car(table(text, Unit.INCH).table("car"))
    assert car is not None
    assert (car.opening_height, car.clearance) == (inch("27 1/2"), inch("3/4"))


def test_a_car_without_an_opening_is_told_what_to_measure(tmp_path: Path) -> None:
    assert message(tmp_path, f"{SHEET}{PART}[car]\nfloor_length = 1500\n") == (
        "job.toml, line 12, [car]: 'opening' is missing.\n"
        "Add a line such as opening = [1000, 700]: the width of the open tailgate, then its height."
    )


@pytest.mark.parametrize("opening", ["1000", "[1000]", "[1000, 700, 300]", "[]"])
def test_an_opening_is_two_lengths(tmp_path: Path, opening: str) -> None:
    text = f"{SHEET}{PART}[car]\nopening = {opening}\nfloor_length = 1500\n"
    assert "key 'opening': two lengths are needed" in message(tmp_path, text)


def test_a_clearance_that_fills_the_car_is_refused(tmp_path: Path) -> None:
    text = f"{SHEET}{PART}[car]\nopening = [400, 300]\nfloor_length = 1500\nclearance = 200\n"
    assert "the clearance leaves no room in the car" in message(tmp_path, text)


def test_what_yard_and_car_rest_on_is_listed_with_its_check(tmp_path: Path) -> None:
    job = read(tmp_path, f"{SHEET}{PART}[yard]\nkerf = 4\n{CAR}")
    listed = {each.name: each for each in job.assumptions}
    assert not listed["yard's kerf"].is_default
    assert listed["a yard cut may be off by"].value == "3 mm"
    assert listed["a yard cut may be off by"].is_default
    assert listed["opening of the car, width × height"].value == "1000 × 700 mm"
    assert listed["free on every side in the car"].is_default
    assert all(each.check for each in job.assumptions)


def test_nothing_is_listed_where_there_is_no_yard_and_no_car() -> None:
    root = table("")
    assert list(assume_yard(None, root)) == []
    assert list(assume_car(None, root)) == []
