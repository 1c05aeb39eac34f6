"""What the rehearsal catches, and what it says then."""

from collections.abc import Callable
from typing import Any

import pytest

from plans.rehearsal import rehearse
from tests.plans.rehearsal.samples import (
    SAMPLES,
    cut,
    inches,
    line,
    metric,
    no_kerf,
    part,
    plan,
    sheet,
    thin_trim,
    trims,
)
from tests.plans.rehearsal.samples import row as table_row

Json = dict[str, Any]
DO_NOT_CUT = "Do not cut from this plan; make it again with 'setout plan'."


def first(document: Json) -> Json:
    sheet: Json = document["sheets"][0]
    return sheet


def row(document: Json, number: int) -> Json:
    found: Json = first(document)["printed"]["rows"][number - 1]
    return found


def whats(document: Json) -> list[str]:
    """Return the first line of every fault."""
    return [str(fault).split("\n")[0] for fault in rehearse(document).faults]


@pytest.mark.parametrize("sample", SAMPLES.values(), ids=SAMPLES)
def test_a_sound_plan_passes(sample: Callable[[], Json]) -> None:
    assert rehearse(sample()).faults == ()


def test_figures_tell_what_was_sawn() -> None:
    rehearsal = rehearse(metric())
    assert (rehearsal.sheets, rehearsal.cuts, rehearsal.parts) == (1, 7, 3)
    assert rehearsal.worst_deviation == 0
    assert rehearsal.figures == (
        "1 sheet",
        "7 cuts",
        "3 parts",
        "worst part 0 mm off its printed size",
    )


def test_a_keep_size_that_is_printed_wrong_is_told_at_its_cut_and_its_part() -> None:
    document = metric()
    row(document, 4)["keep"] = "564"
    assert [str(fault) for fault in rehearse(document).faults] == [
        (
            f"sheet 1, cut 4: the guide at 524 mm left of the blade does not lead to its keep "
            f"size, 526 mm does.\n{DO_NOT_CUT}"
        ),
        (
            f"sheet 1, cut 4: the guide at 694.4 mm right of the blade does not lead to its keep "
            f"size, 696.4 mm does.\n{DO_NOT_CUT}"
        ),
        f"sheet 1, cut 4: it is printed at 564 mm, but drawn at 562 mm.\n{DO_NOT_CUT}",
        (
            f"sheet 1, A1: it is printed 562 mm × 356 mm as it lies, but comes out as "
            f"564 mm × 356 mm.\n{DO_NOT_CUT}"
        ),
    ]


def test_a_keep_size_with_its_guide_and_drawing_wrong_still_spoils_the_part() -> None:
    document = metric()
    row(document, 4).update(keep="564", guide_left="526", guide_right="696.4")
    first(document)["cuts"][3]["band"]["x"] = 574
    assert (
        "sheet 1, A1: it is printed 562 mm × 356 mm as it lies, but comes out as 564 mm × 356 mm."
        in whats(document)
    )


def test_a_held_piece_is_checked_against_its_printed_size() -> None:
    document = metric()
    row(document, 5)["hold_size"] = "425.6 × 358"
    assert whats(document) == ["sheet 1, cut 5: P5 is printed 358 mm along y, but is 356 mm."]


def test_a_cut_that_stops_inside_a_piece_is_caught() -> None:
    document = metric()
    first(document)["cuts"][2]["band"]["length"] = 900
    assert whats(document) == ["sheet 1, cut 3: its band does not run from edge to edge of P2."]


def test_a_cut_beyond_the_piece_stops_the_sheet() -> None:
    document = inches()
    row(document, 3)["keep"] = "14"
    assert (
        "sheet 1, cut 3: its fresh edge at 14 in is off P2, which reaches to 13.375 in."
        in whats(document)
    )
    assert str(rehearse(document).faults[-1]).endswith(
        f"The rest of this sheet was not sawn. {DO_NOT_CUT}"
    )


def test_a_piece_that_is_not_there_stops_the_sheet() -> None:
    document = metric()
    row(document, 5)["hold"] = "P9"
    assert whats(document) == ["sheet 1, cut 5: there is no piece P9 to hold."]


def test_a_piece_named_as_another_is_caught() -> None:
    document = metric()
    row(document, 5)["free_code"] = "A1"
    assert "sheet 1, cut 5: A1 is the code of another piece already." in whats(document)


def test_a_piece_held_twice_does_not_go_round_in_circles() -> None:
    document = no_kerf()
    row(document, 2)["free_code"] = "S1"
    assert "sheet 1, cut 2: S1 is the code of another piece already." in whats(document)


def test_a_part_that_no_cut_makes_is_caught_with_what_is_left_instead() -> None:
    document = metric()
    row(document, 7)["keep_code"] = "P7"
    assert whats(document) == [
        "sheet 1, C1: no cut makes it.",
        "sheet 1, P7: it is left over, but is no part or offcut.",
    ]


def test_wood_that_falls_free_without_a_name_is_caught() -> None:
    document = metric()
    row(document, 6)["free_code"] = ""
    assert whats(document) == ["sheet 1, cut 6: what falls free has no name."]


def test_a_name_for_nothing_is_caught() -> None:
    document = inches()
    row(document, 3)["free_code"] = "P3"
    assert whats(document) == ["sheet 1, cut 3: nothing falls free that could be P3."]


def test_waste_needs_no_more_than_dust() -> None:
    document = inches()
    row(document, 3)["free_code"] = "WASTE"
    assert whats(document) == []


def test_a_wrong_thickness_is_caught() -> None:
    document = metric()
    first(document)["printed"]["parts"][0]["thickness"] = "18"
    assert whats(document) == ["sheet 1, A1: it is printed 18 mm thick, but its sheet is 17.7 mm."]


@pytest.mark.parametrize(
    ("part", "grain", "is_across"),
    [(0, "width", True), (0, "any", False), (1, "length", True), (1, "width", False)],
)
def test_a_part_across_the_grain_is_caught(part: int, grain: str, *, is_across: bool) -> None:
    document = metric()
    first(document)["parts"][part]["grain"] = grain
    code = first(document)["parts"][part]["code"]
    assert whats(document) == ([f"sheet 1, {code}: it lies across the grain."] if is_across else [])


def test_grain_does_not_matter_on_a_sheet_that_has_none() -> None:
    document = metric()
    first(document)["grain"] = "none"
    first(document)["parts"][0]["grain"] = "width"
    assert whats(document) == []


def test_measuring_from_a_raw_edge_is_caught() -> None:
    document = no_kerf()
    first(document)["trim"] = trims(5, 0, 0, 0)
    first(document)["printed"]["trims"] = "left 5, right 0, top 0, bottom 0"
    assert whats(document) == [
        "sheet 1, cut 1: it is measured from the left edge, which is still raw.",
        "sheet 1, A1: its left edge is still raw.",
        "sheet 1, A1: it reaches into the trim along the left edge.",
    ]


def test_trimming_a_straight_edge_is_caught() -> None:
    document = thin_trim()
    first(document)["trim"] = trims(0, 0, 0, 0)
    first(document)["printed"]["trims"] = "left 0, right 0, top 0, bottom 0"
    assert whats(document) == [
        "sheet 1, cut 1: it trims the edge of least y, which is straight already."
    ]


def test_a_figure_off_the_piece_must_be_struck_out() -> None:
    document = metric()
    row(document, 1)["unusable"] = ""
    row(document, 5)["unusable"] = "left"
    assert whats(document) == [
        (
            "sheet 1, cut 1: the guide left of the blade would lie off the piece, and is not "
            "struck out."
        ),
        (
            "sheet 1, cut 5: the guide right of the blade would lie off the piece, and is not "
            "struck out."
        ),
    ]


def test_a_setting_is_shared_by_equal_cuts_only() -> None:
    document = no_kerf()
    row(document, 1)["setting"] = 2
    assert whats(document) == [
        "sheet 1, cut 1: its setting is 2, the first one is 1.",
        "sheet 1, cut 2: setting 1 follows setting 2.",
    ]
    document = metric()
    for number in range(4, 8):
        row(document, number)["setting"] -= 1
    assert whats(document) == [
        "sheet 1, cut 4: it differs from cut 3, with which it shares a setting."
    ]


def test_an_oversize_blank_must_be_larger_and_a_final_one_must_not() -> None:
    document = metric()
    first(document)["printed"]["parts"][2]["status"] = "final"
    assert whats(document) == [
        "sheet 1, C1: it is final, but its blank is off its finished size by 3 mm."
    ]
    document = metric()
    first(document)["printed"]["parts"][0]["status"] = "oversize"
    assert whats(document) == [
        "sheet 1, A1: it is oversize, but its blank is not larger than the finished part."
    ]
    document["sheets"][0]["printed"]["parts"][0]["status"] = "measure first"
    assert whats(document) == []


def test_a_sum_is_held_to_the_cuts_figure_by_figure() -> None:
    document = metric()
    lines = first(document)["printed"]["sums"]
    lines[1]["text"] = "990 = 560 + 2.4 + 302 + 2.4 + 123.2 left"  # still adds up
    lines[2] = {"piece": "P9", "text": "1 = 1"}
    assert whats(document) == [
        "sheet 1, sum of P3: its figures are not those that its cuts make.",
        "sheet 1, sum of P9: no such piece is cut.",
    ]


def test_a_cost_that_is_not_the_sum_of_the_prices_is_caught() -> None:
    document = metric()
    document["cost"] = 29.5
    assert whats(document) == [
        "plan: it costs 29.50, but its sheets 30.00.",
        "plan: it costs 29.50, less than its bound 30.00.",
    ]


def test_sheets_of_one_stock_must_be_alike() -> None:
    document = thin_trim()
    document["sheets"][1]["stock"] = "lime 18"
    assert whats(document) == ["sheet 2: it is not like sheet 1, of the same stock."]


def test_a_part_on_two_sheets_is_caught() -> None:
    document = thin_trim()
    second = document["sheets"][1]
    second["parts"][0]["code"] = second["printed"]["parts"][0]["code"] = "A1"
    assert whats(document) == ["A1: 2 things of this plan carry this code."]


def test_the_yard_may_saw_with_another_kerf_but_its_edge_stays_raw() -> None:
    document = inches()
    document["yard"] = {"kerf": 4, "rough": 3}
    cut = first(document)["cuts"][0]
    cut.update(by="yard", kerf=4)
    cut["band"]["length"] = 4
    row(document, 1).update(guide_left="", guide_right="", unusable="both")
    first(document)["offcuts"][0].update(x=362.775, length=856.425)
    first(document)["printed"]["offcuts"][0]["size"] = "33 23/32 × 24"
    raw = [what for what in whats(document) if "raw" in what]
    assert raw
    assert all("raw" in what or "yard" in what for what in whats(document))


@pytest.mark.parametrize("keep", ["356.05", "355.95"])
def test_rounding_within_half_a_step_passes(keep: str) -> None:
    document = metric()
    row(document, 3)["keep"] = keep
    assert whats(document) == []


def test_rounding_that_adds_up_to_more_than_a_part_allows_is_told_with_its_remedy() -> None:
    # Four strips of 75.04 fill 300.16, with a kerf of 0. Printed, three of 75 leave 75.2 of 300.2.
    assert [str(fault) for fault in rehearse(four_strips()).faults] == [
        (
            "sheet 1, A4: it is printed 75 mm × 200 mm as it lies, but comes out as "
            "75.2 mm × 200 mm.\nOne side is what other cuts leave, and each of their figures was "
            "rounded. Give all "
            "sizes of the job in whole tenths of a millimetre, and plan again."
        )
    ]


def four_strips() -> Json:
    starts, left = (0, 75.04, 150.08, 225.12), ("crosscut", "left edge", "75")
    guides, codes = ("37", "205"), ("A1", "A2", "A3", "A4")
    return plan(
        sheet(
            length=300.16,
            width=200,
            parts=[
                part(code, "Strip", (x, 0, 75.04, 200), (75.04, 200))
                for code, x in zip(codes, starts, strict=True)
            ],
            cuts=[
                cut(number, "crosscut", (x, 0, 0, 200), 0)
                for number, x in enumerate(starts[1:], start=1)
            ],
            printed={
                "size": "300.2 × 200",
                "trims": "left 0, right 0, top 0, bottom 0",
                "rows": [
                    table_row(1, "S1", "300.2 × 200", *left, "A1", *guides, "", "P1", 1),
                    table_row(2, "P1", "225.1 × 200", *left, "A2", *guides, "", "P2", 1),
                    table_row(3, "P2", "150.1 × 200", *left, "A3", *guides, "right", "A4", 1),
                ],
                "parts": [line(code, "75 × 200", "75 × 200", "18") for code in codes],
                "offcuts": [],
                "sums": [],
            },
        ),
        kerf=0,
    )


@pytest.mark.parametrize("side", ["left", "right", "top", "bottom"])
def test_a_trim_that_is_drawn_otherwise_than_printed_is_caught(side: str) -> None:
    document = metric()
    first(document)["trim"][side] = 12
    assert any("trim of the" in what and "is 12 mm" in what for what in whats(document))


def test_the_trim_drawn_at_the_top_is_the_low_one_seen_from_the_back_only() -> None:
    document = thin_trim()
    assert first(document)["printed"]["trims"] == "left 0, right 0, top 2, bottom 0"
    assert whats(document) == []
    first(document)["printed"]["trims"] = "left 0, right 0, top 0, bottom 2"
    assert whats(document) == [
        "sheet 1: the trim of the edge of least y is printed 0 mm, but is 2 mm.",
        "sheet 1: the trim of the edge of greatest y is printed 2 mm, but is 0 mm.",
    ]
