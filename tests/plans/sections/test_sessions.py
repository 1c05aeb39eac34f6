"""Stopping points and kits as they are printed."""

import itertools
from dataclasses import replace
from decimal import Decimal

from nesting.cut_sequence import minutes
from nesting.job import Job
from nesting.layout import Layout, PartLeaf
from nesting.lengths import mm
from nesting.terms import Evening, Terms
from plans.sections.sessions import (
    make_kit_rows,
    make_session_rows,
    say_first_cabinet,
    say_session,
)
from plans.sections.worked import Worked
from tests.nesting.hand_made import job, part, strips, two_cabinets
from tests.plans.sections.helpers import worked_out

STORE = (mm(2450), mm(620))


def with_evening(minutes_: int) -> Worked:
    made, layout = two_cabinets()
    evening = Evening(minutes=Decimal(minutes_), store=STORE)
    return worked_out(replace(made, terms=Terms(evening=evening)), layout)


def test_a_job_that_does_not_ask_has_no_sessions() -> None:
    assert make_session_rows(worked_out(*two_cabinets())) == ()


def test_sessions_follow_each_other_without_a_gap_and_take_all_the_minutes() -> None:
    worked = with_evening(20)
    rows = make_session_rows(worked)
    steps = [f"1.{step.number}" for step in worked.sheets[0].sequence.steps]
    assert len(rows) > 1
    assert (rows[0].first, rows[-1].last) == (steps[0], steps[-1])
    for before, after in itertools.pairwise(rows):
        assert steps.index(after.first) == steps.index(before.last) + 1
    whole = minutes(worked.job, worked.sheets[0].sequence)
    # a setting that two sessions share is made again, so that they may take a little longer
    assert sum(int(row.minutes) for row in rows) >= int(whole) - len(rows)


def test_a_session_is_one_line() -> None:
    first, *_, last = make_session_rows(with_evening(20))
    assert say_session(first).startswith("Session 1: cuts 1.1 to 1.")
    assert say_session(first).endswith("All that lies about can be put away flat.")
    assert say_session(last).endswith("Then all cuts are made.")


def test_a_last_session_beyond_the_time_says_that_it_has_no_stop() -> None:
    (short,) = make_session_rows(with_evening(1000))
    assert short.text == "Then all cuts are made."
    made, layout = two_cabinets()
    nowhere = Evening(minutes=Decimal(20), store=(mm(50), mm(50)))
    (long,) = make_session_rows(worked_out(replace(made, terms=Terms(evening=nowhere)), layout))
    assert long.text.startswith("There is no natural stop within it")


def pair_of_cabinets() -> tuple[Job, Layout]:
    """Return two boxes of two sides and a top, A wholly in the first strip."""
    made = job(
        *(
            replace(kind, cabinet=letter)
            for letter in "AB"
            for kind in (part("Side", 562, 300, 2), part("Top", 400, 300, 1))
        )
    )
    rows = [
        [PartLeaf(part=side, copy=0), PartLeaf(part=side, copy=1), PartLeaf(part=top, copy=0)]
        for side, top in ((0, 1), (2, 3))
    ]
    return made, Layout(sheets=(strips(made, [(mm(300), row) for row in rows]),))


def test_kits_come_in_the_order_in_which_they_are_complete() -> None:
    worked = worked_out(*pair_of_cabinets())
    rows = make_kit_rows(worked)
    assert {row.cabinet for row in rows} == {"A", "B"}
    assert [(row.parts, row.sheets) for row in rows] == [("3", "1"), ("3", "1")]
    cuts = [int(row.closes.removeprefix("1.")) for row in rows]
    assert cuts == sorted(cuts)
    order = [sheet.codes[freed.place.path] for sheet in worked.sheets for freed in sheet.freed]
    for row in rows:
        assert sorted(row.stack, key=order.index, reverse=True) == list(row.stack)
        assert all(code.startswith(row.cabinet) for code in row.stack)


def test_the_first_whole_cabinet_is_named_where_there_are_several() -> None:
    worked = worked_out(*pair_of_cabinets())
    first, open_parts = say_first_cabinet(worked)
    row = make_kit_rows(worked)[0]
    assert first == (
        f"The first whole cabinet is {row.cabinet}, after cut {row.closes}: "
        "put it together dry there"
    )
    assert open_parts.startswith("At most ")
    assert say_first_cabinet(worked_out(*two_cabinets())) == ()
