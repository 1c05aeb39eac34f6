"""Sizes old and new after a change of thickness."""

from nesting.cabinets.comparing import compare_builds
from nesting.lengths import mm
from tests.nesting.cabinets.designs import build, design


def test_every_size_that_a_thinner_board_moves_is_listed_with_old_and_new() -> None:
    """Acceptance: 18.0 to 17.7, outside unchanged, each part between two panels grows by 0.6."""
    before = build(design(), thickness=mm(18), step=mm("0.1"))
    after = build(design(), thickness=mm("17.7"), step=mm("0.1"))
    assert compare_builds(before, after) == (
        "Top or bottom: length 464 → 464.6",
        "Baffle: length 564 → 564.6",
        "Baffle: width 464 → 464.6",
        "Back: length 564 → 564.6",
        "Back: width 464 → 464.6",
    )


def test_a_build_lists_what_its_measured_thickness_moved() -> None:
    assert build(design(), thickness=mm("17.7"), step=mm("0.1")).changes[0] == (
        "Top or bottom: length 464 → 464.6"
    )


def test_nothing_is_listed_where_boards_are_as_thick_as_they_are_called() -> None:
    assert build(design(), thickness=mm(18)).changes == ()


def test_a_part_that_is_new_has_no_old_size() -> None:
    less = design(back=None)
    assert compare_builds(build(less), build(design()))[-2:] == (
        "Back: length none → 564.5",
        "Back: width none → 464.5",
    )
