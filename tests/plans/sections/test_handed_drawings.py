"""Left and right from a job file to the drawings: mirrored where they should be, on either face."""

from functools import cache
from pathlib import Path

import pytest

from nesting.lengths import mm
from nesting.reading.job_toml import read_job_text
from nesting.solve import solve
from plans.plan import Plan, make_plan
from plans.plan_file import plan_document
from plans.rehearsal import rehearse

JOB = """
[saw]
marked_face = "{face}"
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
measured = [17.7]
length = 2440
width = 1220
[[cabinet]]
name = "Side fill"
family = "box"
height = 600
width = 400
depth = 350
baffle = "inset"
back = {{ fit = "inset", held_by = "screws" }}
[[cabinet.hole]]
name = "left handle"
kind = "handle"
panel = "left side"
from_top = 180
from_front = 120
window = [100, 60]
depth = 60
[[cabinet.hole]]
name = "right handle"
kind = "handle"
panel = "right side"
from_top = 180
from_front = 120
window = [100, 60]
depth = 60
"""
DEPTH = mm(350)
FACES = ["back", "front"]


@cache
def planned(face: str) -> Plan:
    job = read_job_text(JOB.format(face=face), Path("job.toml"))
    result = solve(job, effort=0)
    plan = make_plan(job, result)
    assert rehearse(plan_document(job, result, plan)).faults == ()
    return plan


@pytest.mark.parametrize("face", FACES)
def test_the_holes_of_a_left_and_a_right_side_are_drawn_as_mirror_images(face: str) -> None:
    left, right = planned(face).bench.holes
    assert (left.panel, right.panel) == ("left side", "right side")
    assert left.face == right.face == "outside face"
    # Seen from outside the front of the left side lies at the right, that of the right at the left.
    assert left.sides[:2] == right.sides[1::-1] == ("rear", "front")
    ((one,), (other,)) = (left.holes, right.holes)
    assert one.centre == other.centre == ("front 120", "top 180")
    assert one.at == (DEPTH - other.at[0], other.at[1])
    assert other.at[0] == mm(120)


@pytest.mark.parametrize("face", FACES)
def test_handed_sides_have_codes_of_their_own_and_say_which_face_is_marked(face: str) -> None:
    names = {part.code: part.name for part in planned(face).parts}
    assert sorted(name for name in names.values() if "Side" in name) == [
        "Side, left",
        "Side, right",
    ]
    inside = "inside" if face == "back" else "outside"
    faces = {label.name.split(", cabinet")[0]: label.face for label in planned(face).labels}
    assert faces["Side, left"] == faces["Side, right"] == f"{face.upper()} face: {inside}"


def test_the_marked_face_mirrors_every_sheet_and_no_size_or_figure_to_set() -> None:
    """The good face up instead of down turns the sheet over about its length."""
    down, up = planned("back"), planned("front")
    assert down.parts == up.parts
    for before, after in zip(down.sheets, up.sheets, strict=True):
        width = before.width
        for one, other in zip(before.parts, after.parts, strict=True):
            assert (one.code, one.rect.x, one.rect.length, one.rect.width) == (
                other.code,
                other.rect.x,
                other.rect.length,
                other.rect.width,
            )
            assert one.rect.y + one.rect.width + other.rect.y == width
        figures = [
            [(row.keep, row.keep_code, row.guide_left, row.guide_right) for row in sheet.rows]
            for sheet in (before, after)
        ]
        assert figures[0] == figures[1]
        assert "top left as you stand" in before.home_text
        assert "bottom left as you stand" in after.home_text
