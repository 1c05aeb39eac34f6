from pathlib import Path

from nesting.job import Assumption
from tests.nesting.reading.job_files import PART, SHEET, read

FULL = """[job]
name = "Hall shelves"
step = 1
[saw]
kerf = 2.4
guide_length = 2700
base_left = 38
base_right = 130
marked_face = "front"
lift_limit_kg = 20
smallest_held = 60
guide_width = 100
[keep]
length = 300
width = 100
[time]
setting = 2
cut = 1.5
metre = 0.4
lift = 1
turn = 1
"""


def listed(folder: Path, text: str) -> dict[str, tuple[str, bool]]:
    return {a.name: (a.value, a.is_default) for a in read(folder, text).assumptions}


def test_everything_that_is_left_out_is_listed_as_a_default(tmp_path: Path) -> None:
    assert listed(tmp_path, SHEET.replace("price = 62.00\n", "") + PART) == {
        "kerf": ("2.4 mm", True),
        "left edge of the base plate to the kerf": ("38 mm", True),
        "kerf to the right edge of the base plate": ("130 mm", True),
        "longest guided cut": ("2700 mm", True),
        "narrowest piece that can be held": ("60 mm", True),
        "width of the guide": ("100 mm", True),
        "marked face": ("good face down, back marked", True),
        "hand at the saw": ("right", True),
        "one person lifts": ("20 kg", True),
        "sizes are rounded to": ("0.5 mm", True),
        "thickness of birch 18": ("18 mm, nominal", True),
        "size of birch 18": ("2440 × 1220 mm", False),
        "face grain of birch 18": ("along the length, 2440 mm", True),
        "trim of birch 18": ("10 mm on each edge", True),
        "price of birch 18": ("none given, reckoned as 0", True),
        "grain of Shelf": ("any: these parts may be turned", True),
        "smallest offcut worth keeping": ("300 × 100 mm", True),
        "minutes of work": (
            "2.0 a setting, 1.5 a cut, 0.4 a metre, 1.0 a lift, 1.0 a turn",
            True,
        ),
    }


def test_what_is_said_is_listed_as_said_even_where_it_is_the_usual_value(tmp_path: Path) -> None:
    sheet = SHEET + 'measured = [17.7, 17.8]\ngrain = "none"\ntrim = 0\n'
    assert listed(tmp_path, FULL + sheet + PART + 'grain = "any"\n') == {
        "kerf": ("2.4 mm", False),
        "left edge of the base plate to the kerf": ("38 mm", False),
        "kerf to the right edge of the base plate": ("130 mm", False),
        "longest guided cut": ("2700 mm", False),
        "narrowest piece that can be held": ("60 mm", False),
        "width of the guide": ("100 mm", False),
        "marked face": ("good face up", False),
        "hand at the saw": ("right", True),
        "one person lifts": ("20 kg", False),
        "sizes are rounded to": ("1 mm", False),
        "thickness of birch 18": ("17.8 mm, mean of 2 readings", False),
        "size of birch 18": ("2440 × 1220 mm", False),
        "face grain of birch 18": ("none", False),
        "trim of birch 18": ("0 mm on each edge", False),
        "smallest offcut worth keeping": ("300 × 100 mm", False),
        "minutes of work": ("2 a setting, 1.5 a cut, 0.4 a metre, 1 a lift, 1 a turn", False),
    }


def test_an_inch_job_is_listed_in_inches(tmp_path: Path) -> None:
    text = SHEET.replace("2440", "96").replace("1220", "48").replace("= 18", '= "3/4"')
    part = PART.replace("562", "22").replace("300", "12")
    found = listed(tmp_path, '[job]\nunits = "in"\n' + text + part)
    assert [
        found[name][0]
        for name in (
            "kerf",
            "sizes are rounded to",
            "thickness of birch 18",
            "size of birch 18",
            "trim of birch 18",
            "smallest offcut worth keeping",
            "minutes of work",
        )
    ] == [
        "3/32 in",
        "1/32 in",
        "3/4 in, nominal",
        "96 × 48 in",
        "3/8 in on each edge",
        "12 × 4 in",
        "2.0 a setting, 1.5 a cut, 0.12 a foot, 1.0 a lift, 1.0 a turn",
    ]


def test_trims_of_which_some_are_left_out_are_listed_side_by_side_as_default(
    tmp_path: Path,
) -> None:
    found = listed(tmp_path, SHEET + "trim = { left = 3 }\n" + PART)
    assert found["trim of birch 18"] == ("left 3 mm, right 10 mm, top 10 mm, bottom 10 mm", True)


def test_trims_for_all_edges_are_no_default(tmp_path: Path) -> None:
    trim = "trim = { left = 3, right = 3, top = 3, bottom = 3 }\n"
    assert listed(tmp_path, SHEET + trim + PART)["trim of birch 18"] == ("3 mm on each edge", False)


def test_half_of_what_is_kept_is_still_a_default(tmp_path: Path) -> None:
    found = listed(tmp_path, SHEET + PART + "[keep]\nwidth = 50\n")
    assert found["smallest offcut worth keeping"] == ("300 × 50 mm", True)


def test_the_price_of_an_owned_sheet_is_no_question(tmp_path: Path) -> None:
    owned = SHEET.replace("price = 62.00", "owned = true\ncount = 1")
    assert "price of birch 18" not in listed(tmp_path, owned + PART)


def test_a_grain_along_the_width_names_the_width(tmp_path: Path) -> None:
    found = listed(tmp_path, SHEET + 'grain = "width"\n' + PART)
    assert found["face grain of birch 18"] == ("along the width, 1220 mm", False)


def test_every_assumption_says_how_to_check_it(tmp_path: Path) -> None:
    for assumption in read(tmp_path, SHEET + PART).assumptions:
        assert assumption.check.endswith((".", "?"))
    assert read(tmp_path, SHEET + PART).assumptions[0] == Assumption(
        name="kerf",
        value="2.4 mm",
        is_default=True,
        check="Saw a scrap, push it together and measure what is missing.",
    )
