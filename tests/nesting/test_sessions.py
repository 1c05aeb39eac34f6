"""Where the work can be left, checked by sawing up a list of rectangles."""

from dataclasses import replace
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.cut_sequence import minutes, order_cuts
from nesting.cut_sequence.sequence import Sequence
from nesting.job import Job
from nesting.kits import find_kits
from nesting.layout import Layout, PartLeaf, Rect, RestLeaf, walk
from nesting.lengths import Length, mm
from nesting.sessions import Moment, find_stops, plan_sessions
from tests.nesting.hand_made import guillotine_jobs, job, part, strips, two_cabinets

STORE = (mm(2450), mm(620))


def ordered(made: Job, layout: Layout) -> tuple[Sequence, ...]:
    return tuple(order_cuts(made, sheet) for sheet in layout.sheets)


def pieces_after(made: Job, layout: Layout, moment: Moment) -> list[Rect]:
    """Saw up to a moment, band by band, and return what is left: dust out, all else kept."""
    sequence = ordered(made, layout)[moment.sheet - 1]
    sheet = made.sheets[sequence.sheet]
    pieces = [Rect(x=0, y=0, length=sheet.length, width=sheet.width)]
    for step in sequence.steps[: moment.cut]:
        pieces.remove(step.piece)
        piece, band = step.piece, step.band
        if step.direction.value == "rip":
            halves = [
                replace(piece, width=band.y - piece.y),
                replace(
                    piece,
                    y=band.y + band.width,
                    width=piece.y + piece.width - band.y - band.width,
                ),
            ]
        else:
            halves = [
                replace(piece, length=band.x - piece.x),
                replace(
                    piece,
                    x=band.x + band.length,
                    length=piece.x + piece.length - band.x - band.length,
                ),
            ]
        pieces += [half for half in halves if half.length > 0 and half.width > 0]
    return pieces


def is_small(rect: Rect, store: tuple[Length, Length]) -> bool:
    return max(rect.length, rect.width) <= max(store) and min(rect.length, rect.width) <= min(store)


@settings(max_examples=30, deadline=None)
@given(made=guillotine_jobs(most_cuts=15), data=st.data())
def test_at_each_stop_no_piece_exceeds_what_can_be_stored(
    made: tuple[Job, Layout], data: st.DataObject
) -> None:
    store = (mm(data.draw(st.integers(600, 2500))), mm(data.draw(st.integers(300, 1300))))
    stops = find_stops(*made, ordered(*made), store)
    (sheet,) = made[0].sheets
    whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
    waste = {
        place.rect
        for place in walk(made[1].sheets[0].root, whole)
        if isinstance(place.node, RestLeaf) and not place.node.is_offcut
    }
    for cut in range(1, len(ordered(*made)[0].steps) + 1):
        moment = Moment(sheet=1, cut=cut)
        is_stored = all(
            is_small(rect, store) for rect in pieces_after(*made, moment) if rect not in waste
        )
        assert (moment in stops) == is_stored


def test_the_stops_of_a_plan_are_those_after_which_all_is_small() -> None:
    made, layout = two_cabinets()
    stops = find_stops(made, layout, ordered(made, layout), STORE)
    assert stops
    cuts = len(ordered(made, layout)[0].steps)
    for cut in range(1, cuts + 1):
        moment = Moment(sheet=1, cut=cut)
        kept = [r for r in pieces_after(made, layout, moment) if min(r.length, r.width) >= mm(80)]
        assert (moment in stops) == all(is_small(rect, STORE) for rect in kept)


def test_sessions_hold_every_cut_once_and_end_at_stops() -> None:
    made, layout = two_cabinets()
    sequences = ordered(made, layout)
    sessions = plan_sessions(made, layout, sequences, store=STORE, most_minutes=Decimal(15))
    assert len(sessions) > 1
    cuts = [cut for one in sessions for cut in range(one.first.cut, one.last.cut + 1)]
    assert cuts == list(range(1, len(sequences[0].steps) + 1))
    assert all(session.is_storable for session in sessions)
    total = minutes(made, sequences[0])
    setting, turn = made.times.setting, made.times.turn
    over = sum((session.minutes for session in sessions), Decimal(0)) - total
    # A session may begin at a setting that stood before; a turn between two counts in neither.
    assert -turn * len(sessions) <= over <= setting * len(sessions)


def test_with_all_the_time_there_is_one_session() -> None:
    made, layout = two_cabinets()
    (session,) = plan_sessions(
        made, layout, ordered(made, layout), store=STORE, most_minutes=Decimal(10_000)
    )
    assert session.minutes == minutes(made, ordered(made, layout)[0])


def test_where_nothing_can_be_stored_the_work_is_one_session() -> None:
    made, layout = two_cabinets()
    (session,) = plan_sessions(
        made, layout, ordered(made, layout), store=(mm(100), mm(100)), most_minutes=Decimal(5)
    )
    assert not session.is_storable


def test_the_first_whole_cabinet_is_found_at_its_last_part() -> None:
    """Cabinet A has its two sides on the first strip, cabinet B one on either strip."""
    made = job(
        replace(part("Side", 562, 300, 2), cabinet="A"),
        replace(part("Side", 500, 300, 2), cabinet="B"),
    )
    sheet = strips(
        made,
        [
            (mm(300), [PartLeaf(part=1, copy=0), PartLeaf(part=0, copy=0)]),
            (mm(300), [PartLeaf(part=1, copy=1), PartLeaf(part=0, copy=1)]),
        ],
    )
    layout = Layout(sheets=(sheet,))
    sequences = ordered(made, layout)
    kit = find_kits(made, layout, sequences)[0]
    assert kit.closes is not None
    cabinet, moment = kit.cabinet, Moment(sheet=kit.closes[0], cut=kit.closes[1])
    sizes = {"A": mm(562), "B": mm(500)}
    for letter, size in sizes.items():
        free = [
            r for r in pieces_after(made, layout, moment) if (r.length, r.width) == (size, mm(300))
        ]
        assert len(free) == 2 or letter != cabinet
    earlier = Moment(sheet=1, cut=moment.cut - 1)
    before = [r.length for r in pieces_after(made, layout, earlier) if r.width == mm(300)]
    assert all(before.count(size) < 2 for size in sizes.values())
