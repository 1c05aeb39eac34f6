"""The fallback map."""

from plans.sections.fallbacks import FallbackRow, make_fallback_rows
from tests.nesting.hand_made import two_cabinets
from tests.plans.sections.helpers import worked_out


def test_large_parts_name_what_they_can_become_and_small_ones_are_left_out() -> None:
    made, layout = two_cabinets()
    rows = make_fallback_rows(worked_out(made, layout))
    # a side of 562 x 300 loses a kerf both ways: no top of 400 x 300, but 3 x 80 + 2 x 2.4 go in;
    # a top of 400 x 300 is then too short for a brace of 400
    assert rows == (
        FallbackRow(
            codes=("A1", "A2", "A3", "A4"),
            name="Side",
            size="562 × 300",
            becomes="3 × Brace 400 × 80",
        ),
    )
