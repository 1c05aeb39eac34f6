from dataclasses import replace
from decimal import Decimal

import pytest

from nesting.lengths import inch, mm
from nesting.sheets import Sheet, SheetGrain, Trim

BIRCH = Sheet(
    name="birch 18",
    material="birch plywood",
    thickness=mm(18),
    length=mm(2440),
    width=mm(1220),
)


def test_a_sheet_is_bought_as_needed_with_its_grain_along_the_length_where_nothing_is_said() -> (
    None
):
    assert (BIRCH.count, BIRCH.owned, BIRCH.price) == (None, False, Decimal(0))
    assert BIRCH.grain is SheetGrain.LENGTH


def test_an_unmeasured_sheet_is_as_thick_as_it_is_called() -> None:
    assert BIRCH.real_thickness == mm(18)


def test_a_thickness_is_the_mean_of_eight_readings_to_a_tenth_of_a_millimetre() -> None:
    # EN 324-1:1993: eight readings, the mean given to 0.1 mm. The readings are made up: their
    # mean is 141.65 / 8 = 17.70625.
    readings = ("17.70", "17.65", "17.75", "17.70", "17.60", "17.80", "17.75", "17.70")
    assert replace(BIRCH, measured=tuple(map(mm, readings))).real_thickness == mm("17.7")


@pytest.mark.parametrize(
    ("readings", "mean"),
    [
        (("17.7",), "17.7"),
        (("17.64",), "17.6"),
        (("17.65",), "17.7"),
        (("17.6", "17.7"), "17.7"),  # 17.65, a half goes up
        (("17.6", "17.6", "17.7"), "17.6"),  # 17.6333
        (("17.6", "17.7", "17.7"), "17.7"),  # 17.6667
    ],
)
def test_a_mean_is_rounded_to_the_nearest_tenth(readings: tuple[str, ...], mean: str) -> None:
    assert replace(BIRCH, measured=tuple(map(mm, readings))).real_thickness == mm(mean)


def test_a_reading_in_inches_stays_on_the_tape_measure() -> None:
    # Sheet-size pages: what is sold as 3/4 in is 23/32 in = 18.25625 mm.
    sheet = replace(BIRCH, thickness=inch("3/4"), measured=(inch("23/32"),))
    assert sheet.real_thickness == inch("23/32")


def test_the_mean_of_inch_readings_is_given_as_finely_as_a_metric_one() -> None:
    readings = (inch("23/32"), inch("23/32"), inch("0.703"))
    exact = sum(readings) / 3
    mean = replace(BIRCH, measured=readings).real_thickness
    assert abs(mean - exact) <= inch("1/64") / 10
    assert mean % (inch("1/64") // 5) == 0


def test_what_is_usable_lies_between_the_trims() -> None:
    trim = Trim(left=mm(10), right=mm(5), top=mm(3), bottom=mm(20))
    sheet = replace(BIRCH, trim=trim)
    assert (sheet.usable_length, sheet.usable_width) == (mm(2425), mm(1197))
