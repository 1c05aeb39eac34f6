"""Designs that several tests use, and generated ones."""

from dataclasses import replace

from hypothesis import strategies as st

from nesting.cabinets.boards import Board
from nesting.cabinets.box import lay_out_box
from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.closing_design import Closing, Covering, Fit, Fitted
from nesting.cabinets.construction import Construction
from nesting.cabinets.design import Battens, BoxDesign, Braces, Corners, Through
from nesting.cabinets.expand import expand
from nesting.cabinets.hidden_parts import HiddenPart
from nesting.lengths import Length, Unit, mm
from nesting.parts import Part

BIRCH = Board(material="birch plywood", thickness=mm(18))
POPLAR = Board(material="poplar plywood", thickness=mm(12))
ANSWERS = tuple((part.value, "none") for part in HiddenPart)
BARE = BoxDesign(
    name="Stage box",
    height=mm(600),
    width=mm(500),
    depth=mm(350),
    board=BIRCH,
    baffle=Closing(fit=Fit.INSET, held_by="glue and corner blocks"),
    back=Closing(fit=Fit.INSET, held_by="screws into corner blocks"),
    answers=ANSWERS,
)


MEASURED = mm("17.7")
STEP = mm("0.5")


def design(**changes: object) -> BoxDesign:
    return replace(BARE, **changes)  # type: ignore[arg-type]


def build(
    wanted: BoxDesign,
    thickness: Length = MEASURED,
    step: Length = STEP,
    unit: Unit = Unit.MM,
) -> CabinetBuild:
    measured = {BIRCH: thickness, POPLAR: mm("11.8")}
    letters = tuple("ABCDEF"[: wanted.count])
    return expand(wanted, letters=letters, measured=measured, step=step, unit=unit)


def lay_out(wanted: BoxDesign, thickness: Length = MEASURED) -> Construction:
    measured = {BIRCH: thickness, POPLAR: mm("11.8")}
    return lay_out_box(wanted, measured, step=STEP, unit=Unit.MM)


def part(built: CabinetBuild, name: str) -> Part:
    return next(each for each in built.parts if each.name == name)


def tenths(least: int, most: int) -> st.SearchStrategy[Length]:
    """Lengths in tenths of a millimetre between two limits in millimetres."""
    return st.integers(least * 10, most * 10).map(lambda tenth: tenth * mm("0.1"))


CLOSINGS = st.one_of(
    st.none(),
    st.builds(Closing, fit=st.sampled_from([Fit.PLANTED, Fit.NONE]), board=st.none()),
    st.builds(
        Closing,
        fit=st.just(Fit.INSET),
        board=st.sampled_from([None, POPLAR]),
        set_back=st.one_of(st.just(0), tenths(1, 40)),
        wrapped=st.sampled_from([None, True, False]),
        fitted=st.sampled_from(Fitted),
    ),
)


@st.composite
def box_designs(draw: st.DrawFn) -> BoxDesign:
    """Boxes of all kinds that can be built."""
    baffle, back = draw(CLOSINGS), draw(CLOSINGS)
    battens = Battens(
        section=(draw(tenths(10, 25)), draw(tenths(25, 50))),
        front=baffle is not None and baffle.fit is Fit.INSET and draw(st.booleans()),
        rear=back is not None and back.fit is Fit.INSET and draw(st.booleans()),
        corners=draw(st.sampled_from(Corners)),
    )
    covering = st.builds(Covering, thickness=tenths(0, 3), ease=tenths(0, 2))
    braces = st.builds(Braces, depth=tenths(20, 60), count=st.integers(1, 3))
    return BoxDesign(
        name="Generated",
        height=draw(tenths(250, 1500)),
        width=draw(tenths(250, 1500)),
        depth=draw(tenths(350, 900)),
        board=BIRCH,
        through=draw(st.sampled_from(Through)),
        baffle=baffle,
        back=back,
        battens=draw(st.sampled_from([None, battens])),
        covering=draw(st.none() | covering),
        braces=draw(st.none() | braces),
    )


THICKNESSES = tenths(9, 25)
