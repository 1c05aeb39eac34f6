"""What the phone says, against the records of the printed pages."""

from dataclasses import replace

import pytest

from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Text
from plans.phone.screens import Cut, Safety, SetUp, SheetStart, make_phone_page
from plans.plan import Plan
from tests.plans.phone.helpers import RANDOM, random_plan, two_cabinets_plan


def cuts_of(plan: Plan) -> list[Cut]:
    return [screen for screen in make_phone_page(plan).screens if isinstance(screen, Cut)]


def test_there_is_one_screen_for_every_cut_in_order() -> None:
    plan = two_cabinets_plan()
    rows = [row for view in plan.sheets for row in view.rows]
    assert [screen.held.row for screen in cuts_of(plan)] == rows
    # two trims, three rips and ten crosscuts
    assert [screen.count for screen in cuts_of(plan)][:2] == ["cut 1 of 15", "cut 2 of 15"]


def test_safety_and_setting_up_come_before_the_first_cut() -> None:
    screens = make_phone_page(two_cabinets_plan()).screens
    kinds = [type(screen) for screen in screens]
    first = kinds.index(Cut)
    assert kinds.index(Safety) < kinds.index(SetUp) < kinds.index(SheetStart) < first


@pytest.mark.parametrize("seed", RANDOM)
def test_every_screen_has_a_name_of_its_own_and_every_place_a_screen(seed: int) -> None:
    page = make_phone_page(random_plan(seed))
    keys = [screen.key for screen in page.screens]
    assert len(set(keys)) == len(keys)
    assert {place.key for place in page.places} <= set(keys)


def test_the_guide_stays_exactly_where_the_table_says_so() -> None:
    for screen in cuts_of(two_cabinets_plan()):
        row = screen.held.row
        if row.same_as:
            assert screen.setting == f"Same setting as cut {row.same_as}: do not move the guide."
        else:
            assert screen.setting == "New setting. Guide at"


def test_a_cut_of_the_yard_has_no_guide_to_set() -> None:
    plan = two_cabinets_plan()
    view = plan.sheets[0]
    first = replace(view.rows[0], guide_left="", guide_right="", unusable="")
    sheets = (replace(view, rows=(first, *view.rows[1:])),)
    screen = cuts_of(replace(plan, sheets=sheets))[0]
    assert screen.setting == "The yard makes this cut."


def test_two_people_are_called_for_once_and_other_remarks_stay() -> None:
    for seed in RANDOM:
        for screen in cuts_of(random_plan(seed)):
            row = screen.held.row
            assert (screen.people == "TWO PEOPLE") == (row.people > 1)
            assert "TWO PEOPLE" not in screen.remark
            assert row.remark.endswith(screen.remark)
            assert len(row.remark) - len(screen.remark) <= len("TWO PEOPLE; ")


def test_every_cut_carries_the_short_cautions_of_a_sheet_page() -> None:
    plan = two_cabinets_plan()
    short = tuple(caution.short for caution in plan.cautions if "sheet" in caution.where)
    assert short
    assert all(screen.cautions == short for screen in cuts_of(plan))


def test_safety_and_setting_up_say_what_the_paper_says() -> None:
    plan = two_cabinets_plan()
    printed = {
        page.title: " ".join(shape.words for shape in page.shapes if isinstance(shape, Text))
        for page in make_pages(plan, A4)
    }
    screens = make_phone_page(plan).screens
    safety = next(screen for screen in screens if isinstance(screen, Safety))
    set_up = next(screen for screen in screens if isinstance(screen, SetUp))
    assert all(caution.full in printed["Safety"] for caution in safety.cautions[:3])
    assert all(line in printed["Setting up"] for line in set_up.lines)
