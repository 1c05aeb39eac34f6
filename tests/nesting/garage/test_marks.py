import pytest

from nesting.errors import InputError
from nesting.garage.events import CutMade, Mark, PartRead, PieceSpoilt, SheetMissing, SheetRead
from nesting.garage.marking import add_mark, add_marks
from nesting.garage.marks import Marks
from nesting.garage.planned import Planned
from nesting.lengths import mm
from tests.nesting.garage.plans_read import after_cuts, planned
from tests.nesting.hand_made import two_cabinets


@pytest.fixture(scope="module")
def plan() -> Planned:
    return planned(*two_cabinets())


def refusal(plan: Planned, marks: Marks, mark: Mark) -> str:
    with pytest.raises(InputError) as caught:
        add_mark(plan, marks, mark)
    return str(caught.value)


def test_a_cut_waits_for_the_cut_that_frees_its_piece(plan: Planned) -> None:
    said = refusal(plan, Marks(), CutMade(sheet=1, cut=3))
    assert said == (
        "cut 1.3: it goes across P2, which comes free with cut 1.2, and that is not marked.\n"
        "Mark 1.2 first, or give a range such as 1.2-1.3."
    )


def test_a_cut_in_another_piece_may_be_made_out_of_turn(plan: Planned) -> None:
    """Where two pieces lie ready, it is the person's own affair which is cut first."""
    marks = after_cuts(plan, 4)
    ready = [
        piece.cut_by
        for piece in plan.sheets[0].pieces
        if piece.cut_by and 0 < piece.made_by <= 4 < piece.cut_by
    ]
    assert len(ready) > 1
    later = add_mark(plan, marks, CutMade(sheet=1, cut=max(ready)))
    assert later.last_cut == (1, max(ready))


def test_every_cut_can_be_marked_in_the_printed_order(plan: Planned) -> None:
    assert len(after_cuts(plan, plan.cut_count).cuts) == plan.cut_count


@pytest.mark.parametrize(
    ("mark", "said"),
    [
        (CutMade(sheet=1, cut=99), "sheet 1 of plan"),
        (CutMade(sheet=2, cut=1), "sheet 2: plan"),
        (PieceSpoilt(code="Q7"), "has no such piece"),
        (PieceSpoilt(code="WASTE"), "has no such piece"),
        (PieceSpoilt(code="A1"), "that is not marked"),
        (PieceSpoilt(code="S1", left=((mm(2440), mm(1220)),)), "not smaller than it was"),
        (PieceSpoilt(code="S1", left=((mm(300), mm(1300)),)), "not smaller than it was"),
        (PartRead(code="S1", size=(mm(1), mm(1))), "it is not a part"),
        (SheetRead(sheet=1, size=(mm(1219), mm(2440))), "more than 2 % off"),
        (SheetRead(sheet=1, diagonals=(mm(2440), mm(2728))), "a diagonal does not belong"),
        (SheetRead(sheet=1, thickness=(mm(12),)), "15 % off the nominal thickness"),
    ],
)
def test_what_cannot_be_true_is_refused(plan: Planned, mark: Mark, said: str) -> None:
    assert said in refusal(plan, Marks(), mark)


def test_a_piece_that_is_cut_up_cannot_be_spoilt(plan: Planned) -> None:
    assert "has gone across it" in refusal(plan, after_cuts(plan, 3), PieceSpoilt(code="P1"))


def test_a_spoilt_piece_is_not_cut_as_planned(plan: Planned) -> None:
    marks = after_cuts(plan, 2, PieceSpoilt(code="P2"))
    assert "marked as spoilt" in refusal(plan, marks, CutMade(sheet=1, cut=3))
    assert "spoilt already" in refusal(plan, marks, PieceSpoilt(code="P2"))


def test_a_sheet_that_is_cut_is_neither_missing_nor_of_another_size(plan: Planned) -> None:
    marks = after_cuts(plan, 1)
    assert "cannot be missing" in refusal(plan, marks, SheetMissing(sheet=1))
    assert "no longer counts" in refusal(plan, marks, SheetRead(sheet=1, size=(mm(2439), mm(1219))))
    thick = add_mark(plan, marks, SheetRead(sheet=1, thickness=(mm("17.6"),)))
    assert thick.sheets[1].thickness == (mm("17.6"),)


def test_readings_of_one_sheet_add_up_over_several_marks(plan: Planned) -> None:
    marks = add_marks(
        plan,
        Marks(),
        (
            SheetRead(sheet=1, size=(mm("2438.5"), mm(1219))),
            SheetRead(sheet=1, thickness=(mm("17.6"), mm("17.8"))),
        ),
    )
    assert marks.sheets[1].size == (mm("2438.5"), mm(1219))
    assert marks.sheets[1].thickness == (mm("17.6"), mm("17.8"))


def test_a_cut_marked_twice_counts_once(plan: Planned) -> None:
    marks = after_cuts(plan, 2)
    assert add_mark(plan, marks, CutMade(sheet=1, cut=2)).cuts == marks.cuts
