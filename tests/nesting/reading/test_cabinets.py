from pathlib import Path

from nesting.lengths import Unit, mm
from nesting.reading.job_toml import read_job
from tests.nesting.reading.job_files import PART, SHEET, message, read, write

BOX = """[[cabinet]]
name = "Stage box"
height = 600
width = 500
depth = 350
"""
WIDE = BOX.replace("Stage", "Wide").replace("500", "800")
MEASURED = SHEET + "measured = [17.6, 17.8]\n"


def test_a_cabinet_becomes_parts_of_the_measured_thickness(tmp_path: Path) -> None:
    job = read(tmp_path, MEASURED + BOX)
    assert [(part.cabinet, part.name, part.count, part.length) for part in job.parts] == [
        ("A", "Side", 2, mm(600)),
        ("A", "Top or bottom", 2, mm("464.5")),
    ]
    assert job.cabinets[0].sums[1] == (
        "500 = 17.7 + 464.5 + 17.7 + 0.1 (width: left side, top or bottom, right side, rounding)"
    )


def test_readings_of_several_sheets_of_one_board_are_taken_together(tmp_path: Path) -> None:
    offcut = SHEET.replace("birch 18", "offcut") + "measured = 17.4\n"
    job = read(tmp_path, MEASURED + offcut + BOX)
    assert job.parts[1].sums[0] == "465 = 500 - 17.6 - 17.6 (464.8, to the nearest 0.5)"


def test_letters_run_on_from_design_to_design_and_plain_parts_have_none(tmp_path: Path) -> None:
    job = read(tmp_path, MEASURED + PART + BOX + "count = 2\n" + WIDE)
    assert [built.letters for built in job.cabinets] == [("A", "B"), ("C",)]
    assert [part.cabinet for part in job.parts] == ["", "A", "A", "B", "B", "C", "C"]


def test_the_step_and_the_unit_of_the_job_hold(tmp_path: Path) -> None:
    inches = """[job]
units = "in"
step = "1/16"
[[sheet]]
name = "ply"
material = "plywood"
thickness = "3/4"
measured = "23/32"
length = 96
width = 48
[[cabinet]]
name = "Riser"
height = 12
width = "24 1/2"
depth = 18
"""
    job = read(tmp_path, inches)
    assert job.unit is Unit.INCH
    assert job.parts[1].sums[0] == ("23 1/16 = 24 1/2 - 23/32 - 23/32")


def test_a_cabinet_can_be_worked_out_before_any_sheet_is_chosen(tmp_path: Path) -> None:
    path = write(tmp_path, BOX + "thickness = 18\n")
    job = read_job(path, needs_sheets=False)
    assert job.parts[1].length == mm(464)
    assert job.cabinets[0].warnings[0].startswith("sheet 18 mm is not measured")


def test_a_box_without_an_inside_is_told_at_its_key(tmp_path: Path) -> None:
    assert message(tmp_path, MEASURED + BOX.replace("500", "30")) == (
        "job.toml, line 12, [[cabinet]] 1 'Stage box', key 'width': 30 mm leaves no inside: "
        "17.7 left side + 17.7 right side take 35.4 mm.\n"
        "    width = 30\n"
        "            ^^\n"
        "Make the width more than 35.4 mm, or what stands in it thinner."
    )


def test_two_designs_of_one_name_are_refused(tmp_path: Path) -> None:
    assert message(tmp_path, MEASURED + BOX + BOX) == (
        "job.toml, line 15, [[cabinet]] 2 'Stage box', key 'name': the name 'Stage box' is taken "
        "already (line 9).\n"
        '    name = "Stage box"\n'
        "           ^^^^^^^^^^^\n"
        "Give every design its own name; more of the same is a higher count."
    )


def test_the_overview_says_what_was_taken_for_granted(tmp_path: Path) -> None:
    job = read(tmp_path, MEASURED + "[covering]\nthickness = 1.2\n" + BOX)
    taken = {each.name: (each.value, each.is_default) for each in job.assumptions}
    assert taken["panels of Stage box that run through"] == ("sides", True)
    assert taken["what goes into Stage box is cut larger at first by"] == ("3 mm", True)
    assert taken["one layer of covering"] == ("1.2 mm", False)
    assert taken["clearance on each side of a panel in a covered opening"] == ("1 mm", True)
    assert taken["outside of Stage box"] == (
        "bare wood, without covering, feet and handles",
        False,
    )


def test_readings_too_far_apart_and_the_kerf_reach_what_is_said_about_a_cabinet(
    tmp_path: Path,
) -> None:
    uneven = SHEET + "measured = [17.4, 17.8]\n[saw]\nkerf = 2.6\n"
    (build,) = read(tmp_path, uneven + BOX + 'joint = "rebate"\n').cabinets
    assert any("differ by 0.4" in warning for warning in build.warnings)
    assert any("2 × 350 + 2.6 = 702.6 wide" in advice for advice in build.advice)


def test_answers_about_parts_easily_forgotten_are_kept_with_the_plan(tmp_path: Path) -> None:
    """Acceptance: the answer is stored in the plan."""
    job = read(tmp_path, MEASURED + BOX + 'answers = { feet = "four, of rubber" }\n')
    taken = {each.name: each.value for each in job.assumptions}
    assert taken["feet of Stage box"] == "four, of rubber"
    assert not any("feet" in question for question in job.cabinets[0].questions)


def test_the_slope_of_a_wedge_is_among_what_was_taken_for_granted(tmp_path: Path) -> None:
    job = read(tmp_path, MEASURED + BOX + 'family = "wedge"\n')
    taken = {each.name: (each.value, each.is_default) for each in job.assumptions}
    assert taken["depth of the top of Stage box"] == ("115 mm", True)
    assert taken["height of the front below the baffle of Stage box"] == ("100 mm", True)
