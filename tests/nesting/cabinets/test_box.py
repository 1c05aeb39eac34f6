import pytest

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.design import Battens, BoxDesign, Braces, Through
from nesting.errors import InputError
from nesting.lengths import mm
from nesting.parts import Status
from tests.nesting.cabinets.designs import POPLAR, build, design, lay_out, part


def sizes(wanted: BoxDesign, thickness: str = "18", step: str = "0.1") -> dict[str, int]:
    """Every size of every part, by name and side."""
    built = build(wanted, thickness=mm(thickness), step=mm(step))
    return {
        f"{each.name} {side}": getattr(each, side)
        for each in built.parts
        for side in ("length", "width")
    }


def changes(before: dict[str, int], after: dict[str, int]) -> dict[str, int]:
    assert before.keys() == after.keys()
    return {name: after[name] - before[name] for name in before if after[name] != before[name]}


def test_a_thinner_board_leaves_the_outside_alone_and_grows_parts_between_by_two_differences() -> (
    None
):
    """Acceptance: thickness 18.0 to 17.7, each part between two panels grows by exactly 0.6."""
    grown = changes(sizes(design(), "18"), sizes(design(), "17.7"))
    assert grown == dict.fromkeys(
        ["Top or bottom length", "Baffle length", "Baffle width", "Back length", "Back width"],
        mm("0.6"),
    )
    assert build(design(), thickness=mm(18)).outside == build(design()).outside


def test_letting_top_and_bottom_run_through_changes_two_sizes_by_two_thicknesses() -> None:
    """The other pair of panels is short by two thicknesses; nothing else moves."""
    swapped = changes(sizes(design()), sizes(design(through=Through.TOP_AND_BOTTOM)))
    assert swapped == {"Side length": -mm(36), "Top or bottom length": mm(36)}


def test_planting_the_baffle_changes_its_two_sizes_and_the_depth_of_the_carcass() -> None:
    planted = design(baffle=Closing(fit=Fit.PLANTED))
    assert changes(sizes(design()), sizes(planted)) == {
        "Baffle length": mm(36),
        "Baffle width": mm(36),
        "Side width": -mm(18),
        "Top or bottom width": -mm(18),
    }


def test_the_outside_depth_holds_with_planted_panels() -> None:
    both = design(
        baffle=Closing(fit=Fit.PLANTED, board=POPLAR), back=Closing(fit=Fit.PLANTED, board=POPLAR)
    )
    built = build(both, step=mm("0.1"))
    assert part(built, "Side").width + 2 * mm("11.8") == mm(350)


def test_an_inset_baffle_of_another_board_moves_no_panel_of_the_carcass() -> None:
    other = design(baffle=Closing(fit=Fit.INSET, board=POPLAR))
    assert sizes(design()) == sizes(other)
    baffle = part(build(other), "Baffle")
    assert (baffle.material, baffle.thickness) == ("poplar plywood", mm(12))


def test_what_goes_into_the_standing_carcass_waits_for_a_measurement() -> None:
    built = build(design(braces=Braces(depth=mm(100))))
    waiting = {each.name: each.oversize for each in built.parts if each.oversize}
    assert waiting == {"Baffle": mm(3), "Back": mm(3), "Brace": mm(3)}
    assert {each.name for each in built.parts if each.status is Status.FINAL} == {
        "Side",
        "Top or bottom",
    }


def test_a_planted_baffle_is_final() -> None:
    built = build(design(baffle=Closing(fit=Fit.PLANTED)))
    assert part(built, "Baffle").status is Status.FINAL


def test_a_design_can_make_every_size_final() -> None:
    frames = Battens(section=(mm(20), mm(20)), front=True)
    built = build(design(measure_first=False, battens=frames))
    assert {(each.status, each.oversize) for each in built.parts} == {(Status.FINAL, 0)}
    assert {(each.status, each.oversize) for each in built.battens} == {(Status.FINAL, 0)}


def test_the_depth_of_the_carcass_matches() -> None:
    built = build(design(count=2))
    matched = [each for each in built.parts if each.match]
    assert {each.match for each in matched} == {"Stage box: depth"}
    assert {each.width for each in matched} == {mm(350)}
    assert sum(each.count for each in matched) == 8


def test_symmetric_pairs_are_interchangeable() -> None:
    built = build(design())
    assert {each.name: (each.count, each.note) for each in built.parts} == {
        "Side": (2, "interchangeable"),
        "Top or bottom": (2, "interchangeable"),
        "Baffle": (1, ""),
        "Back": (1, ""),
    }


def test_braces_are_spread_evenly() -> None:
    laid = lay_out(design(braces=Braces(depth=mm(100), count=2)))
    inside = laid.spaces[0].box
    heights = [inside.low[2], *(h for brace in laid.inner for h in brace.through), inside.high[2]]
    gaps = [heights[n + 1] - heights[n] for n in (0, 2, 4)]
    assert max(gaps) - min(gaps) <= 2  # nanometres
    assert sum(gaps) + 2 * mm("17.7") == inside.high[2] - inside.low[2]


@pytest.mark.parametrize(
    ("changed", "message"),
    [
        (
            {"width": mm(30)},
            (
                "cabinet 'Stage box', width: 30 mm leaves no inside: 17.7 left side + 17.7 right "
                "side take 35.4 mm.\n"
                "Make the width more than 35.4 mm, or what stands in it thinner."
            ),
        ),
        (
            {"depth": mm(40), "baffle": Closing(fit=Fit.INSET, set_back=mm(10))},
            (
                "cabinet 'Stage box', depth: 40 mm leaves no inside: 10 set-back + 17.7 baffle + "
                "17.7 back take 45.4 mm.\n"
                "Make the depth more than 45.4 mm, or what stands in it thinner."
            ),
        ),
        (
            {"covering": Covering(thickness=mm(1), ease=mm(300))},
            (
                "cabinet 'Stage box', baffle: covering and clearance take 602 mm of its opening, "
                "which leaves nothing.\n"
                "Check the thickness of the covering and the clearance.\n"
                "cabinet 'Stage box', back: covering and clearance take 602 mm of its opening, "
                "which leaves nothing.\n"
                "Check the thickness of the covering and the clearance."
            ),
        ),
        (
            {"battens": Battens(section=(mm(240), mm(240)), front=True), "depth": mm(600)},
            (
                "cabinet 'Stage box', battens: two of 240 mm fill the opening.\n"
                "Choose a smaller section, or leave the battens out."
            ),
        ),
        (
            {"braces": Braces(depth=mm(400))},
            (
                "cabinet 'Stage box', braces: 400 mm is deeper than the room between baffle and "
                "back, 314.6 mm.\n"
                "Make them 314.6 mm deep or less."
            ),
        ),
        (
            {"braces": Braces(depth=mm(100), count=40)},
            "cabinet 'Stage box', braces: 40 of them fill the inside height.\nTake fewer.",
        ),
    ],
)
def test_a_box_that_cannot_be_built_is_refused_with_its_sum(
    changed: dict[str, object], message: str
) -> None:
    with pytest.raises(InputError) as error:
        build(design(**changed))
    assert str(error.value) == message


def test_a_board_without_a_reading_counts_with_its_nominal_thickness() -> None:
    oak = Board(material="oak plywood", thickness=mm(20))
    built = build(design(board=oak), step=mm("0.1"))
    assert part(built, "Top or bottom").length == mm(460)


def test_outside_sizes_are_rounded_before_anything_is_worked_out_from_them() -> None:
    """The opening then belongs to the panels as they are cut, not as they were drawn."""
    odd = design(height=mm("600.3"), width=mm("500.2"), depth=mm("350.8"))
    built = build(odd)
    assert built.outside == (mm("600.5"), mm(500), mm(351))
    assert (part(built, "Side").length, part(built, "Side").width) == (mm("600.5"), mm(351))
    assert part(built, "Top or bottom").sums == (
        "464.5 = 500 - 17.7 - 17.7 (464.6, to the nearest 0.5)",
        "351 = outside depth",
    )
