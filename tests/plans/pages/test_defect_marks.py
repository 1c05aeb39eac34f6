from dataclasses import replace

from nesting.defects import solve_clear
from nesting.lengths import mm
from nesting.saw import Face, Saw
from nesting.sheets import Defect, Use
from plans.pages.clashes import find_clashes
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Hatch, HatchKind, Page, Text
from plans.pages.strokes import strokes_of
from plans.plan import Plan, make_plan
from tests.nesting.defects.defect_jobs import unsound
from tests.nesting.hand_made import SAW, job, part

KNOT = Defect(what="knot hole", x=mm(1150), y=mm(600), length=mm(80), width=mm(50))
STAIN = Defect(
    what="stain", x=mm(300), y=mm(300), length=mm(90), width=mm(60), use=Use.HIDDEN_PARTS
)


def planned(saw: Saw = SAW) -> Plan:
    sides = replace(part("Side", 1100, 1000, count=2), is_hidden=True)
    made = job(sides, sheets=[unsound(KNOT, STAIN)], saw=saw)
    return make_plan(made, solve_clear(made, effort=1))


def sheet_page(plan: Plan) -> Page:
    return next(page for page in make_pages(plan, A4) if page.title.startswith("Sheet 1"))


def test_a_defect_has_a_hatch_of_its_own_and_both_readings() -> None:
    page = sheet_page(planned())
    kinds = [shape.kind for shape in page.shapes if isinstance(shape, Hatch)]
    assert kinds.count(HatchKind.DEFECT) == kinds.count(HatchKind.STAIN) == 1
    words = [shape.words for shape in page.shapes if isinstance(shape, Text)]
    assert {"1150 / 600", "300 / 300"} <= set(words)
    assert "Knot hole: 1150 from the left edge and 600 from the top edge" in " ".join(words)
    assert find_clashes(page) == ()


def test_with_the_good_face_up_the_second_reading_is_from_the_bottom_edge() -> None:
    plan = planned(Saw(marked_face=Face.FRONT))
    knot, _ = plan.sheets[0].defects
    assert "600 from the bottom edge" in knot.text
    assert knot.rect.y == plan.sheets[0].width - KNOT.y - KNOT.width


def test_hatches_of_waste_and_of_both_kinds_of_defect_differ_in_black_and_white() -> None:
    """One leans to the right, one both ways, one is broken and leans to the left."""
    lines = {
        kind: strokes_of(Hatch(x=0, y=0, width=10, height=10, kind=kind))
        for kind in (HatchKind.WASTE, HatchKind.DEFECT, HatchKind.STAIN)
    }
    rising = {
        kind: {(each.x2 - each.x1) * (each.y2 - each.y1) < 0 for each in strokes}
        for kind, strokes in lines.items()
    }
    assert rising[HatchKind.WASTE] == {True}
    assert rising[HatchKind.DEFECT] == {True, False}
    assert rising[HatchKind.STAIN] == {False}
    assert all(each.pen.dashes for each in lines[HatchKind.STAIN])


def test_the_legend_explains_a_defect_only_where_there_is_one() -> None:
    assert {"crossed hatch", "dashed hatch"} <= {word for word, _ in planned().overview.legend}
    sound = job(part("Side", 1100, 1000, count=2))
    plan = make_plan(sound, solve_clear(sound, effort=1))
    assert not {"crossed hatch", "dashed hatch"} & {word for word, _ in plan.overview.legend}
