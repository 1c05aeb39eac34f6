"""What stands on the pages of a sheet besides its cuts."""

from plans.sections.coupons import Coupon
from plans.sections.sessions import SMALL, KitRow, SessionRow
from plans.sections.sheet_notes import SheetNotes, make_sheet_notes
from plans.sections.workshop import Workshop


def session(number: str, last: str) -> SessionRow:
    return SessionRow(
        number=number,
        first="1.1",
        last=last,
        minutes="44",
        sawn="13.2 m",
        settings="6",
        lifts="2",
        text=SMALL,
    )


def kit(cabinet: str, closes: str) -> KitRow:
    return KitRow(cabinet=cabinet, parts="8", sheets="1, 2", closes=closes, stack=("A1", "A2"))


def coupon_of(sheet: str, source: str = "waste") -> Coupon:
    return Coupon(
        mark=f"TEST S{sheet}",
        sheet=sheet,
        stock="birch 18",
        size="250 × 80",
        source=source,
        source_size="600 × 120",
        cut="7",
    )


SHOP = Workshop(
    sessions=(session("1", "1.9"), session("2", "2.4"), session("3", "3.11")),
    kits=(kit("A", "2.4"), kit("B", "3.8"), kit("C", "never")),
    coupons=(coupon_of("1"), coupon_of("2", "L4"), coupon_of("3", "L4")),
)


def test_a_sheet_carries_its_own_stop_and_the_cabinet_that_it_completes() -> None:
    notes = make_sheet_notes(SHOP, (2,))
    assert dict(notes.stops) == {
        "4": "STOP HERE. Session 2 is over. All that lies about can be put away flat. Tired? Stop "
        "for today."
    }
    assert dict(notes.closes) == {"4": "Now all 8 parts of cabinet A are there."}
    assert notes.test_piece == (
        "Test piece for saw and router, 250 × 80: out of L4 of cut 7, last. Write TEST S2 on it."
    )


def test_sheets_that_are_cut_alike_say_of_which_of_them_it_is_true() -> None:
    notes = make_sheet_notes(SHOP, (2, 3))
    assert set(notes.stops) == {"4"}
    assert "with this cut of sheet 2" in notes.stops["4"]
    assert notes.closes["8"] == "Sheet 3: now all 8 parts of cabinet B are there."
    assert notes.test_piece.endswith("Write TEST S2, TEST S3 on it.")


def test_nothing_is_said_of_a_stop_after_the_last_cut_of_all() -> None:
    assert dict(make_sheet_notes(SHOP, (3,)).stops) == {}


def test_a_sheet_without_anything_to_say_says_nothing() -> None:
    assert make_sheet_notes(Workshop(), (1,)) == SheetNotes()
    assert make_sheet_notes(SHOP, (1,)).test_piece.startswith("Test piece for saw and router, 250")
    assert "the waste of cut 7" in make_sheet_notes(SHOP, (1,)).test_piece
