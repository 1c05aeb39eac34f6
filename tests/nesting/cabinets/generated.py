"""Generated cabinets of all families and joints."""

from dataclasses import replace

from hypothesis import reject
from hypothesis import strategies as st

from nesting.cabinets.closing_design import Closing, Covering, Fit, Fitted, Margins
from nesting.cabinets.construction import Construction
from nesting.cabinets.design import Battens, BoxDesign, Braces, Corners, GrainRound
from nesting.cabinets.expand import construct
from nesting.cabinets.families import Design
from nesting.cabinets.joints import Joint, JointKind
from nesting.cabinets.shelving import Dividers, Grille, Shelves
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.errors import InputError
from nesting.lengths import Length, Unit, mm
from tests.nesting.cabinets.designs import BIRCH, POPLAR, box_designs, tenths

STEP = mm("0.5")

JOINTS = st.one_of(
    st.sampled_from([Joint(kind=kind) for kind in JointKind]),
    st.builds(Joint, kind=st.just(JointKind.REBATE), depth=tenths(2, 8)),
    st.builds(Joint, kind=st.just(JointKind.GROOVE), depth=tenths(2, 8), tongue=tenths(2, 8)),
    st.builds(Joint, kind=st.just(JointKind.FINGER), fingers=st.sampled_from([3, 5, 9, 15])),
)
MARGINS = st.builds(Margins, left=tenths(0, 3), right=tenths(0, 3), bottom=tenths(0, 3))


@st.composite
def let_in_closings(draw: st.DrawFn, wanted: BoxDesign) -> dict[str, object]:
    """A baffle or back, or both, in a rebate or a groove, without its frame; none as often."""
    changes: dict[str, object] = {}
    battens = wanted.battens
    for name, frame in (("baffle", "front"), ("back", "rear")):
        if not draw(st.booleans()):
            continue
        is_rebate = draw(st.booleans())
        changes[name] = Closing(
            fit=Fit.REBATE if is_rebate else Fit.GROOVE,
            board=draw(st.sampled_from([None, POPLAR])),
            set_back=draw(st.just(0) | tenths(1, 20)) if is_rebate else draw(tenths(3, 20)),
            depth=draw(st.none() | tenths(2, 8)),
            play=draw(tenths(0, 1)),
            wrapped=draw(st.booleans()) if is_rebate else None,
            fitted=draw(st.sampled_from(Fitted)),
            extra=draw(MARGINS),
            gap=draw(st.just(0) | tenths(20, 100)) if is_rebate else 0,
        )
        if battens is not None:
            battens = Battens(
                section=battens.section,
                front=battens.front and frame != "front",
                rear=battens.rear and frame != "rear",
                corners=battens.corners,
            )
    return {**changes, "battens": battens} if changes else {}


@st.composite
def joined_boxes(draw: st.DrawFn) -> BoxDesign:
    """Boxes with every joint, open backs, seams on one side, grilles, shelves and dividers."""
    wanted = draw(box_designs())
    changes: dict[str, object] = {
        "joint": draw(JOINTS),
        "flush": draw(tenths(0, 2)),
        "grain_round": draw(st.sampled_from(GrainRound)),
    }
    if wanted.back is not None and wanted.back.fit is not Fit.NONE:
        gap = draw(st.just(0) | tenths(20, 100))
        upper = draw(st.none() | tenths(20, 60)) if gap else None
        changes["back"] = replace(wanted.back, gap=gap, upper=upper)
    changes |= draw(let_in_closings(wanted))
    if wanted.baffle is not None and wanted.baffle.fit is Fit.INSET and "baffle" not in changes:
        baffle = replace(wanted.baffle, extra=draw(MARGINS))
        changes["baffle"] = baffle
        if baffle.set_back > mm(8) and draw(st.booleans()):
            changes["grille"] = Grille(section=(mm(6), mm(20)), cloth=mm(1), piping=mm(2))
    if draw(st.booleans()):
        changes["braces"] = None
        changes["shelves"] = Shelves(
            count=draw(st.integers(1, 3)),
            set_back=draw(st.just(0) | tenths(1, 20)),
            groove=draw(st.just(0) | tenths(1, 4)),
            board=draw(st.sampled_from([None, POPLAR])),
        )
        changes["dividers"] = draw(
            st.none() | st.builds(Dividers, count=st.integers(1, 2), groove=tenths(0, 4))
        )
    return replace(wanted, **changes)  # type: ignore[arg-type]


@st.composite
def wedges(draw: st.DrawFn) -> WedgeDesign:
    """Wedges with and without top, front, covering; baffle and back flush, set back or planted."""
    depth, height = draw(tenths(250, 700)), draw(tenths(250, 700))
    closing = st.builds(
        Closing,
        fit=st.sampled_from([Fit.INSET, Fit.PLANTED, Fit.NONE]),
        board=st.sampled_from([None, POPLAR]),
        wrapped=st.booleans(),
    ) | st.builds(
        Closing,
        fit=st.just(Fit.INSET),
        set_back=tenths(1, 30),
        wrapped=st.booleans(),
    )
    covering = st.builds(Covering, thickness=tenths(0, 3), ease=tenths(0, 2))
    baffle, back = draw(closing), draw(closing)
    battens = Battens(
        section=(draw(tenths(8, 20)), draw(tenths(20, 30))),
        front=baffle.fit is Fit.INSET and draw(st.booleans()),
        rear=back.fit is Fit.INSET and draw(st.booleans()),
        corners=draw(st.sampled_from([Corners.ACROSS, Corners.UPRIGHT])),
    )
    braces = st.builds(Braces, depth=tenths(20, 60), count=st.integers(1, 2))
    return WedgeDesign(
        name="Generated",
        height=height,
        width=draw(tenths(250, 900)),
        depth=depth,
        top=draw(st.sampled_from([0, depth // 4, depth // 2])),
        front=draw(st.sampled_from([0, height // 5, height // 3])),
        board=BIRCH,
        joint=draw(st.sampled_from([Joint(), Joint(kind=JointKind.REBATE, depth=mm(6))])),
        baffle=baffle,
        back=back,
        battens=draw(st.sampled_from([None, battens])),
        braces=draw(st.none() | braces),
        covering=draw(st.none() | covering),
    )


DESIGNS = st.one_of(joined_boxes(), wedges())


def lay_out_or_skip(
    wanted: Design, thickness: Length, step: Length = STEP, unit: Unit = Unit.MM
) -> Construction:
    """Return a cabinet in space; skip what is refused for want of room."""
    try:
        measured = {BIRCH: thickness, POPLAR: mm("11.8")}
        return construct(wanted, measured, step=step, unit=unit)
    except InputError:
        reject()
