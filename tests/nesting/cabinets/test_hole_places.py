from decimal import Decimal

import pytest

from nesting.cabinets.fittings import Clearances
from nesting.cabinets.hole_places import find_chord, place_bolts, place_holes
from nesting.cabinets.holes import Hole
from nesting.errors import InputError
from nesting.lengths import Unit, mm
from tests.nesting.cabinets.designs import design, lay_out
from tests.nesting.cabinets.fit_samples import place, woofer

TYPE_A = [(".5", "0"), (".97553", ".34549"), (".79389", ".90451"), (".20611", ".90451")]
TYPE_A += [(".02447", ".34549")]
TYPE_B = [("0", ".5"), (".47553", ".15451"), (".29389", "-.40451"), ("-.29389", "-.40451")]
TYPE_B += [("-.47553", ".15451")]


def circle(diameter: int = 100, bolts: int = 5, start: str = "0") -> Hole:
    """A circle of bolts in the middle of a panel."""
    return woofer(
        cut_out=mm(diameter) // 2,
        bolt_circle=mm(diameter),
        bolts=bolts,
        start_deg=Decimal(start),
        places=(("left", mm(200)), ("top", mm(200))),
        flange=mm(diameter + 10),
    )


def test_bolts_from_the_corner_of_their_square_agree_with_the_handbook() -> None:
    """Machinery's Handbook, 31st ed., p. 709: 5 holes, type A, from the corner of the square.

    Its y grows downwards, as ours does when the top is the edge that is measured from.
    """
    (placed,) = place(design(), circle())
    for found, (x, y) in zip(place_bolts(placed), TYPE_A, strict=True):
        corner = mm(150)
        assert found[0] - corner == pytest.approx(float(x) * mm(100), abs=5e-6 * mm(100))
        assert found[1] - corner == pytest.approx(float(y) * mm(100), abs=5e-6 * mm(100))


def test_a_start_angle_of_half_a_step_gives_the_other_table() -> None:
    """Ibid., p. 710: type B, from the centre; the first of ours is at the bottom, at 180 degrees.

    Their y grows downwards; seen so, ours runs the other way round the circle.
    """
    (placed,) = place(design(), circle(start="180"))
    found = sorted(
        (round((x - mm(200)) / mm(100), 5), round((y - mm(200)) / mm(100), 5))
        for x, y in place_bolts(placed)
    )
    assert found == [
        pytest.approx(pair, abs=5e-6) for pair in sorted((float(x), float(y)) for x, y in TYPE_B)
    ]


@pytest.mark.parametrize(
    ("bolts", "ratio"),
    [
        (3, 0.8660),
        (4, 0.7071),
        (5, 0.5878),
        (6, 0.5),
        (8, 0.3827),
        (10, 0.3090),
        (12, 0.2588),
        (16, 0.1951),
    ],
)
def test_the_chord_agrees_with_a_shops_spacing_table(bolts: int, ratio: float) -> None:
    """A workshop's table of hole spacings: chord over diameter, to four decimals."""
    assert find_chord(circle(bolts=bolts)) == pytest.approx(ratio * mm(100), abs=5e-5 * mm(100))


@pytest.mark.parametrize(("diagonal", "adjacent"), [(115, 80), (135, 95), (155, 110)])
def test_four_bolts_stand_as_far_apart_as_makers_list(diagonal: int, adjacent: int) -> None:
    """A trade page's list for 4, 5 and 6.5 in drivers, rounded there to 5 mm."""
    assert find_chord(circle(diagonal, bolts=4)) == pytest.approx(mm(adjacent), abs=mm("1.5"))


def test_a_hole_stands_in_the_middle_where_no_edge_is_named() -> None:
    (placed,) = place(design(), woofer(places=()))
    across, along = placed.distances
    width = placed.panel.box.high[0] - placed.panel.box.low[0]
    assert placed.edges == ("left", "bottom")
    assert (across, along) == (width // 2, (mm(600) - 2 * mm("17.7")) // 2)


def test_measuring_from_the_other_edge_finds_the_same_centre() -> None:
    (first,) = place(design(), woofer(places=(("left", mm(200)), ("bottom", mm(250)))))
    size = first.panel.box
    right = size.high[0] - size.low[0] - mm(200)
    (second,) = place(design(), woofer(places=(("right", right), ("bottom", mm(250)))))
    assert first.centre == second.centre
    offsets = [
        {(x if edges[0] == "left" else size.high[0] - size.low[0] - x, y) for x, y in bolts}
        for edges, bolts in ((p.edges, place_bolts(p)) for p in (first, second))
    ]
    assert offsets[0] == offsets[1]


def test_the_edges_of_a_panel_are_its_own() -> None:
    for panel, wrong in (("baffle", "front"), ("left side", "left"), ("top", "bottom")):
        with pytest.raises(InputError, match=f"the {panel} has no {wrong} edge"):
            place(design(), woofer(panel=panel, places=((wrong, mm(200)),)))


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        (
            {"panel": "lid"},
            (
                "cabinet 'Stage box', hole: hole 'woofer': there is no panel 'lid'.\n"
                "The panels are: left side, right side, top, bottom, baffle, back."
            ),
        ),
        (
            {"places": (("left", mm(100)), ("right", mm(100)))},
            (
                "cabinet 'Stage box', hole: hole 'woofer': its centre is measured from both left "
                "and right.\nMeasure from one of the two."
            ),
        ),
        (
            {"places": (("bottom", mm(165)),)},
            (
                "cabinet 'Stage box', hole: hole 'woofer': its outline comes within 5 mm of the "
                "bottom edge of the baffle, and 10 mm are kept.\n"
                "Move it, or keep less: [cabinet.clearances], key edge."
            ),
        ),
    ],
)
def test_a_hole_that_cannot_be_where_it_is_put_is_refused(
    changes: dict[str, object], said: str
) -> None:
    with pytest.raises(InputError) as error:
        place(design(), woofer(**changes))
    assert str(error.value) == said


def test_a_circle_fits_up_to_the_margin_and_not_beyond() -> None:
    """d <= smaller side - 2 margins: plain arithmetic."""
    laid = lay_out(design())
    side = laid.spaces[0].box.high[0] - laid.spaces[0].box.low[0]
    most = side - 2 * Clearances().edge
    for diameter, fits in ((most - most % 2, True), (most - most % 2 + 2, False)):
        hole = woofer(cut_out=diameter, bolt_circle=0, bolts=0, flange=0, recess=0, places=())
        if fits:
            place(design(), hole)
        else:
            with pytest.raises(InputError):
                place(design(), hole)


def test_a_slot_may_run_out_to_the_edge_and_nothing_else_may() -> None:
    slot = woofer(
        cut_out=0,
        window=(mm(300), mm(60)),
        bolt_circle=0,
        bolts=0,
        flange=0,
        recess=0,
        places=(("bottom", mm(30)),),
    )
    place_holes("Stage box", (slot,), lay_out(design()), mm(10), Unit.MM)
    with pytest.raises(InputError, match="within 1 mm of the bottom edge"):
        place(design(), woofer(**{**_fields(slot), "places": (("bottom", mm(31)),)}))


def _fields(hole: Hole) -> dict[str, object]:
    names = ("cut_out", "window", "bolt_circle", "bolts", "flange", "recess")
    return {name: getattr(hole, name) for name in names}
