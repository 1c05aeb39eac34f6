"""What the phone says, against the records of the printed pages."""

from dataclasses import replace

import pytest

from nesting.lengths import Unit
from nesting.saw import Hand
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Text
from plans.phone.records import (
    Cut,
    End,
    Holes,
    Loading,
    Safety,
    SetUp,
    SheetStart,
    Shop,
    Stop,
    Yard,
)
from plans.phone.screens import make_phone_page
from plans.plan import Plan
from plans.sections.handed import make_handed
from tests.plans.full_plan import full_plan
from tests.plans.pages.plan_samples import make_sample_plan, random_sheet
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
    assert screen.guides == ()


def test_two_people_are_called_for_once_and_other_remarks_stay() -> None:
    for seed in RANDOM:
        for screen in cuts_of(random_plan(seed)):
            row = screen.held.row
            assert (screen.people == "TWO PEOPLE") == (row.people > 1)
            assert "TWO PEOPLE" not in screen.remark
            said = "; ".join(words for words in (row.remark, row.support) if words)
            assert said.endswith(screen.remark)
            assert len(said) - len(screen.remark) <= len("TWO PEOPLE; ")


def test_every_cut_carries_the_short_cautions_of_a_sheet_page() -> None:
    plan = two_cabinets_plan()
    short = tuple(caution.short for caution in plan.cautions if "sheet" in caution.where)
    assert short
    stand = "Stand left of the line of the cut."
    assert all(screen.cautions == (stand, *short) for screen in cuts_of(plan))


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
    assert set_up.note in printed["Setting up"]


def test_the_other_hand_swaps_the_guides_and_the_stand_mark_and_nothing_else() -> None:
    plan = two_cabinets_plan()
    left = replace(plan, handed=make_handed(Hand.LEFT))
    for mine, other in zip(cuts_of(plan), cuts_of(left), strict=True):
        assert [guide.sign for guide in mine.guides] == ["L", "R"]
        assert other.guides == mine.guides[::-1]
        assert other.cautions == ("Stand right of the line of the cut.", *mine.cautions[1:])
        assert replace(other, guides=mine.guides, cautions=mine.cautions) == mine


@pytest.mark.parametrize("count", [2, 7])
def test_sheets_cut_alike_have_their_screens_once_with_a_box_for_each(count: int) -> None:
    views = tuple(random_sheet(3, 6, number, Unit.MM) for number in range(1, count + 1))
    page = make_phone_page(make_sample_plan(views))
    (start,) = (screen for screen in page.screens if isinstance(screen, SheetStart))
    assert start.title == f"Sheet 1 × {count}"
    assert start.alike.startswith(f"{count} SHEETS ARE CUT ALIKE: 1, 2")
    cuts = [screen for screen in page.screens if isinstance(screen, Cut)]
    assert len(cuts) == len(views[0].rows)
    for screen, *rows in zip(cuts, *(view.rows for view in views), strict=True):
        assert [copy.number for copy in screen.copies] == list(range(1, count + 1))
        for copy, row in zip(screen.copies, rows, strict=True):
            assert copy.hold == row.hold
            assert copy.made == tuple(code for code in (row.keep_code, row.free_code) if code)


def test_a_sheet_of_its_own_has_no_boxes() -> None:
    assert all(screen.copies == () for screen in cuts_of(two_cabinets_plan()))


def test_a_screen_to_stop_at_follows_every_session_but_the_last() -> None:
    _, _, plan = full_plan()
    sessions = plan.workshop.sessions
    assert len(sessions) > 2
    screens = make_phone_page(plan).screens
    stops = [number for number, screen in enumerate(screens) if isinstance(screen, Stop)]
    assert [screens[number - 1].key for number in stops] == [
        "sheet-{}-cut-{}".format(*row.last.split(".")) for row in sessions[:-1]
    ]
    for row, number in zip(sessions[:-1], stops, strict=True):
        stop = screens[number]
        assert isinstance(stop, Stop)
        (words,) = stop.lines
        assert words == f"Session {row.number} is over. {row.text} Tired? Stop for today."


def test_screens_stand_in_the_order_of_use() -> None:
    _, _, plan = full_plan()
    screens = make_phone_page(plan).screens
    kinds = list(dict.fromkeys(type(screen) for screen in screens))
    assert kinds == [Shop, Yard, Loading, Safety, SetUp, SheetStart, Cut, Stop, Holes, End]


def test_the_end_names_what_only_the_paper_shows() -> None:
    _, _, plan = full_plan()
    end = make_phone_page(plan).screens[-1]
    assert isinstance(end, End)
    titles = {page.title for page in make_pages(plan, A4)}
    for title in ("Measure first", "Frame and joints", "Assembly", "Checks", "Offcuts and log"):
        assert title in end.on_paper
        assert any(title in printed for printed in titles)
    assert "Covering" not in end.on_paper
    bare = make_phone_page(two_cabinets_plan()).screens[-1]
    assert isinstance(bare, End)
    assert bare.on_paper == "On paper only: the parts list, the labels, Offcuts and log."
