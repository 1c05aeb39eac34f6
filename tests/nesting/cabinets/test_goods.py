from dataclasses import replace

from nesting.cabinets.design import BoxDesign, Braces
from nesting.cabinets.fittings import Fittings, Hardware, Screws
from nesting.cabinets.holes import Fastener, Hole, HoleKind
from nesting.lengths import mm
from tests.nesting.cabinets.fit_samples import FRAMED, fit, woofer

HANDLE = Hole(
    name="handle",
    kind=HoleKind.HANDLE,
    panel="left side",
    window=(mm(200), mm(100)),
    bolts=6,
    fastener=Fastener.SCREWS,
)


def counts(wanted: BoxDesign, fittings: Fittings) -> dict[str, int]:
    return {line.name: line.count for line in fit(wanted, fittings).goods if line.count}


def test_everything_is_counted_for_all_cabinets() -> None:
    fittings = Fittings(
        holes=(woofer(), HANDLE), hardware=Hardware(feet=4, corners=8), screws=Screws()
    )
    one, three = (counts(replace(FRAMED, count=count), fittings) for count in (1, 3))
    assert three == {name: 3 * count for name, count in one.items()}
    assert {name: one[name] for name in one if not name.endswith("mm")} == {
        "T-nuts": 8,
        "bolts for the drivers": 8,
        "drivers": 1,
        "screws for the handles": 6,
        "handles": 1,
        "feet": 4,
        "corner pieces": 8,
    }


def test_screws_are_as_many_as_the_map_shows() -> None:
    """Acceptance: counts derive from the same model as the drawings."""
    fitted = fit(FRAMED, Fittings(screws=Screws()))
    listed = sum(line.count for line in fitted.goods if line.name.startswith("screws"))
    assert listed == sum(len(row.positions) for row in fitted.fixings) > 0


def test_taking_a_brace_out_takes_its_screws_off_the_list_and_no_t_nut() -> None:
    """Acceptance: deleting a brace removes its screws; the drivers keep theirs."""
    fittings = Fittings(holes=(woofer(),), screws=Screws())
    braced = replace(FRAMED, braces=Braces(depth=mm(60)))
    before, after = fit(braced, fittings), fit(FRAMED, fittings)
    own = sum(len(row.positions) for row in before.fixings if "brace" in row.joint)
    listed = [
        sum(line.count for line in fitted.goods if line.name.startswith("screws"))
        for fitted in (before, after)
    ]
    assert listed[0] - listed[1] == own > 0
    for name in ("T-nuts", "bolts for the drivers"):
        assert counts(braced, fittings)[name] == counts(FRAMED, fittings)[name] == woofer().bolts


def test_glue_is_by_the_length_of_all_joints() -> None:
    line = fit(replace(FRAMED, count=2)).goods[-1]
    assert line.name == "glue"
    assert line.text == f"Glue for joints {line.length / mm(1000):.1f} m long in all"


def test_feet_leave_room_for_corner_pieces() -> None:
    """Common practice, no source. 60 - 40 / 2 = 40 < 45 mm."""
    near = Hardware(feet=4, foot_inset=mm(60), corners=8)
    (said,) = fit(FRAMED, Fittings(hardware=near)).warnings
    assert said == (
        "A foot begins 40 mm from the edge, and the corner pieces reach 45 mm. Set the feet "
        "further in."
    )
    assert not fit(FRAMED, Fittings(hardware=replace(near, foot_inset=mm(65)))).warnings
    assert not fit(FRAMED, Fittings(hardware=replace(near, corners=0))).warnings


def test_feet_that_meet_under_the_cabinet_are_told() -> None:
    (said,) = fit(FRAMED, Fittings(hardware=Hardware(feet=4, foot_inset=mm(160)))).warnings
    assert said.startswith("The feet of opposite sides meet")
