"""A sheet as it is drawn, seen from the marked face."""

from dataclasses import replace

import pytest

from nesting.layout import Rect
from nesting.lengths import Unit, inch, mm
from nesting.saw import Face
from nesting.sheets import SheetGrain
from plans.sections.sheet_view import SheetView, draw, grain_words, make_sheet_view
from tests.nesting.hand_made import BIRCH, SAW, job, two_cabinets
from tests.plans.sections.helpers import worked_out


def view(face: Face) -> SheetView:
    made, layout = two_cabinets()
    made = replace(made, saw=replace(SAW, marked_face=face))
    return make_sheet_view(made, worked_out(made, layout).sheets[0])


def test_seen_from_the_back_the_home_corner_is_top_left() -> None:
    drawn = view(Face.BACK)
    assert drawn.home == "top left"
    assert drawn.home_text == "HOME CORNER: top left as you stand"
    assert drawn.face_text == "Drawn as seen from the BACK: the good face lies down."
    side = next(part for part in drawn.parts if part.code == "A1")
    assert side.rect == Rect(x=mm(10), y=mm(10), length=mm(562), width=mm(300))


def test_seen_from_the_front_it_is_mirrored_top_to_bottom() -> None:
    back, front = view(Face.BACK), view(Face.FRONT)
    assert front.home == "bottom left"
    for before, after in zip(back.parts, front.parts, strict=True):
        assert (before.code, before.finished, before.blank) == (
            after.code,
            after.finished,
            after.blank,
        )
        assert (before.rect.x, before.rect.length, before.rect.width) == (
            after.rect.x,
            after.rect.length,
            after.rect.width,
        )
        assert before.rect.y + after.rect.y + after.rect.width == BIRCH.width


def test_drawing_twice_mirrored_gives_the_same() -> None:
    rect = Rect(x=mm(10), y=mm(20), length=mm(300), width=mm(40))
    assert draw(draw(rect, BIRCH, Face.FRONT), BIRCH, Face.FRONT) == rect


def test_parts_rests_and_kerfs_cover_the_sheet_exactly() -> None:
    drawn = view(Face.FRONT)
    rects = [part.rect for part in drawn.parts] + [rest.rect for rest in drawn.rests]
    rects += [cut.band for cut in drawn.cuts]
    assert sum(rect.length * rect.width for rect in rects) == drawn.length * drawn.width
    assert all(0 <= rect.y <= rect.y + rect.width <= drawn.width for rect in rects)


def test_the_far_trims_are_drawn_too() -> None:
    assert len(view(Face.BACK).trims) == 4
    assert Rect(x=mm(2430), y=0, length=mm(10), width=mm(1220)) in view(Face.BACK).trims


def test_the_trims_are_named_as_they_are_drawn() -> None:
    made, layout = two_cabinets()
    sheet = replace(BIRCH, trim=replace(BIRCH.trim, right=mm("7.5"), top=mm(3)))
    texts = {}
    for face in Face:
        other = replace(made, sheets=(sheet,), saw=replace(SAW, marked_face=face))
        texts[face] = make_sheet_view(other, worked_out(other, layout).sheets[0]).trim_text
    assert texts[Face.FRONT] == "left 10, right 7.5, top 3, bottom 10"
    assert texts[Face.BACK] == "left 10, right 7.5, top 10, bottom 3"


def test_the_head_of_the_page() -> None:
    drawn = view(Face.BACK)
    assert (drawn.stock, drawn.material, drawn.measured) == (
        "birch 18",
        "birch plywood 18",
        "17.7",
    )
    assert (drawn.size, drawn.mass, drawn.settings, drawn.minutes) == ("2440 × 1220", "36.7", 6, 47)
    assert (drawn.grain, drawn.grain_text) == ("length", "GRAIN RUNS ALONG THE 2440")


@pytest.mark.parametrize(
    ("grain", "width", "words"),
    [
        (SheetGrain.WIDTH, mm(1220), "GRAIN RUNS ALONG THE 1220"),
        (SheetGrain.NONE, mm(1220), "NO GRAIN"),
        (SheetGrain.WIDTH, mm(2440), "GRAIN RUNS UP AND DOWN AS DRAWN: both sides are 2440"),
    ],
)
def test_grain_is_said_in_words(grain: SheetGrain, width: int, words: str) -> None:
    assert grain_words(job(), replace(BIRCH, grain=grain, width=width)) == words


def test_inches_are_printed_as_fractions() -> None:
    made, layout = two_cabinets()
    drawn = make_sheet_view(
        replace(made, unit=Unit.INCH), worked_out(replace(made, unit=Unit.INCH), layout).sheets[0]
    )
    # 2440 mm is 96.063 in and 1220 mm 48.031 in: 96 4/64 and 48 2/64 (arithmetic).
    assert drawn.size == "96 1/16 × 48 1/32"
    assert inch("96 1/16") - mm(2440) < inch("1/64")
