"""Where was I? What is said of the guide where the yard, or a plane, makes a cut."""

from dataclasses import replace
from typing import Any

from nesting.garage.events import CutMade
from nesting.garage.marking import add_marks
from nesting.garage.marks import Marks
from nesting.layout import Layout, PartLeaf
from nesting.lengths import mm
from nesting.saw import SetWith
from nesting.sheets import Trim
from plans.plan import Figures, make_plan
from plans.plan_file import plan_document
from plans.plan_reading import planned_of
from plans.standing import find_standing, say_going_on
from tests.nesting.hand_made import BIRCH, job, part, strips
from tests.plans.yard_plans import document_of, half_sheets, narrow_pieces


def say_after(document: dict[str, Any], *cuts: tuple[int, int]) -> str:
    planned = planned_of(document)
    marks = add_marks(planned, Marks(), tuple(CutMade(sheet=sheet, cut=cut) for sheet, cut in cuts))
    return find_standing(document, planned, marks).text


def test_a_cut_of_the_yard_leaves_no_setting_on_the_guide_at_home() -> None:
    document = document_of(half_sheets())
    cuts = document["sheets"][0]["cuts"]
    assert [cut["by"] for cut in cuts[:2]] == ["yard", "home"]
    said = say_after(document, (1, 1))
    assert "Next is cut 1.2: " in said
    assert "guide" not in said
    planned = planned_of(document)
    marks = add_marks(planned, Marks(), (CutMade(sheet=1, cut=1),))
    assert "guide" not in say_going_on(document, planned, marks, document)


def test_a_cut_that_the_yard_makes_next_is_said_to_be_the_yards() -> None:
    document = document_of(narrow_pieces())
    assert [cut["by"] for cut in document["sheets"][0]["cuts"][:2]] == ["yard", "yard"]
    for cuts in ((), ((1, 1),)):
        said = say_after(document, *cuts)
        assert said.endswith("The yard makes this cut.")
        assert "guide" not in said


def test_an_edge_that_is_planed_leaves_no_setting_on_the_guide() -> None:
    """With blocks: a trim thinner than the kerf has no mark, so nothing is set for it."""
    thin = replace(BIRCH, trim=Trim(bottom=mm(1)))
    shelf = job(part("Shelf", 562, 300), sheets=[thin])
    shelf = replace(shelf, saw=replace(shelf.saw, set_with=SetWith.BLOCKS))
    layout = Layout(sheets=(strips(shelf, [(mm(300), [PartLeaf(part=0, copy=0)])]),))
    figures = Figures(layout=layout)
    document = plan_document(shelf, figures, make_plan(shelf, figures))
    assert document["sheets"][0]["printed"]["rows"][0]["blocks"] == "none"
    said = say_after(document, (1, 1))
    assert "Next is cut 1.2: " in said
    assert "guide" not in said
