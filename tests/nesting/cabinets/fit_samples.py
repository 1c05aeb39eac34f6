"""Fitted cabinets that several tests use."""

from dataclasses import replace

from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.design import Battens, BoxDesign
from nesting.cabinets.fit_out import FitOut, Subject, fit_out
from nesting.cabinets.fittings import Clearances, Fittings
from nesting.cabinets.hole_places import PlacedHole, place_holes
from nesting.cabinets.holes import Fastener, Hole, HoleKind
from nesting.lengths import Length, Unit, mm
from tests.nesting.cabinets.designs import MEASURED, STEP, build, design, lay_out

WOOFER = Hole(
    name="woofer",
    kind=HoleKind.DRIVER,
    panel="baffle",
    places=(("bottom", mm(250)),),
    cut_out=mm(278),
    bolt_circle=mm(305),
    bolts=8,
    flange=mm(320),
    recess=mm(6),
    fastener=Fastener.T_NUTS,
    depth=mm(130),
    magnet=mm(160),
)
FRAMED = design(
    baffle=Closing(fit=Fit.INSET),
    back=Closing(fit=Fit.INSET),
    battens=Battens(section=(mm(20), mm(30)), front=True, rear=True),
)
COVERED = replace(
    FRAMED,
    baffle=Closing(fit=Fit.INSET, wrapped=False),
    back=Closing(fit=Fit.INSET, wrapped=True),
    covering=Covering(thickness=mm(1)),
)


def woofer(**changes: object) -> Hole:
    return replace(WOOFER, **changes)  # type: ignore[arg-type]


def place(wanted: BoxDesign, *holes: Hole) -> tuple[PlacedHole, ...]:
    return place_holes("Stage box", holes, lay_out(wanted), Clearances().edge, Unit.MM)


def fit(
    wanted: BoxDesign,
    fittings: Fittings | None = None,
    *holes: Hole,
    thickness: Length = MEASURED,
) -> FitOut:
    given = fittings or Fittings()
    built = build(wanted, thickness)
    subject = Subject(
        name=wanted.name,
        letters=built.letters,
        construction=lay_out(wanted, thickness),
        covering=wanted.covering,
        baffle=wanted.baffle,
        back=wanted.back,
    )
    fittings = replace(given, holes=given.holes + holes)
    return fit_out(subject, fittings, {}, step=STEP, unit=Unit.MM)
