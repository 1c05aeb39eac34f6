"""Designs: what the builder says about a cabinet, before any sum is made."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import Enum

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Covering, Fit, find_closing_faults
from nesting.cabinets.fittings import Fittings, LoadsFrom
from nesting.cabinets.joints import Joint
from nesting.cabinets.shelving import Dividers, Grille, Shelves
from nesting.errors import Fault, InputError
from nesting.lengths import Length, mm


class Through(Enum):
    """Which pair of carcass panels runs through to the outside at the four long edges."""

    SIDES = "sides"
    TOP_AND_BOTTOM = "top and bottom"


class Corners(Enum):
    """How the four battens of a frame meet."""

    ACROSS = "across"
    UPRIGHT = "upright"
    MITRED = "mitred"


class Along(Enum):
    """The direction of the cabinet that the face grain of a panel follows."""

    HEIGHT = "height"
    WIDTH = "width"
    DEPTH = "depth"
    ANY = "any"


class GrainRound(Enum):
    """Round which panels of the carcass the face grain is to run on."""

    NO = "no"
    ALL = "all round"
    OVER_TOP = "over the top"


@dataclass(frozen=True, slots=True, kw_only=True)
class Battens:
    """Frames of battens that inset panels rest against.

    Attributes:
        section: Thickness and width, the smaller first. The wider side lies on the carcass.
        front: Whether a frame stands behind the baffle.
        rear: Whether a frame stands before the back.
        corners: How the battens of a frame meet.
    """

    section: tuple[Length, Length]
    front: bool = False
    rear: bool = False
    corners: Corners = Corners.ACROSS

    def __post_init__(self) -> None:
        """Refuse a section that is none."""
        thin, wide = self.section
        if not 0 < thin <= wide:
            _refuse(
                [
                    Fault(
                        where="battens",
                        what="their section is not two sizes, the smaller first",
                        remedy="Give thickness and width, such as 20 and 30.",
                    )
                ]
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Braces:
    """Boards that lie flat between the sides, spread evenly over the inside height.

    Attributes:
        depth: Extent from front to rear; they stand midway between baffle and back.
        count: How many in each cabinet, at least 1.
        board: What they are cut from; None for the carcass's board.
    """

    depth: Length
    count: int = 1
    board: Board | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Grains:
    """The direction of the cabinet that the face grain follows, for each kind of panel."""

    sides: Along = Along.HEIGHT
    top_and_bottom: Along = Along.WIDTH
    baffle: Along = Along.HEIGHT
    back: Along = Along.HEIGHT


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxDesign:
    """A plain box with butt joints.

    The outside sizes are those of the bare wood with baffle and back in place: covering comes on
    top of them, feet and handles too.

    Attributes:
        name: Name of the design, unique in the job.
        count: How many cabinets are built to it.
        height: Outside height of the bare box.
        width: Outside width of the bare box.
        depth: Outside depth of the bare box, a planted baffle or back included.
        board: What the carcass is cut from.
        through: Which pair of carcass panels runs through.
        joint: How the four carcass panels meet.
        flush: What panels that run through, planted panels and fingers have at each end or edge
            that is trimmed flush after gluing.
        bevel_allowance: What a blank has at each edge that gets a bevel.
        baffle: The front; None while nobody has said.
        back: The rear; None while nobody has said.
        battens: Frames behind inset panels, if any.
        braces: Braces between the sides, if any.
        shelves: Shelves, if any.
        dividers: Dividers, if any.
        grille: The grille before the baffle, if any.
        covering: What the outside is covered with; None for bare or painted wood.
        grains: The face grain of each kind of panel.
        measure_first: Whether what goes into the standing carcass waits for a measurement.
        allowance: How much larger those blanks are in both directions.
        grain_round: Round which panels of the carcass the face grain is to run on.
        joint_first: Whether a mirrored pair that has a joint across it is cut from one wide blank.
        answers: What the builder has said about parts that are easily forgotten, by name.
        fittings: Holes, screws and all else beside the panels.
    """

    name: str
    count: int = 1
    height: Length
    width: Length
    depth: Length
    board: Board
    through: Through = Through.SIDES
    joint: Joint = Joint()
    flush: Length = 0
    bevel_allowance: Length = mm(3)
    baffle: Closing | None = None
    back: Closing | None = None
    battens: Battens | None = None
    braces: Braces | None = None
    shelves: Shelves | None = None
    dividers: Dividers | None = None
    grille: Grille | None = None
    covering: Covering | None = None
    grains: Grains = Grains()
    measure_first: bool = True
    allowance: Length = mm(3)
    grain_round: GrainRound = GrainRound.NO
    joint_first: bool = False
    answers: tuple[tuple[str, str], ...] = ()
    fittings: Fittings = Fittings()

    def __post_init__(self) -> None:
        """Refuse what no box can be; what depends on thickness is checked with the sums."""
        _refuse(_find_faults(self))


def _find_faults(design: BoxDesign) -> Iterator[Fault]:
    where = f"cabinet {design.name!r}"
    for name in ("height", "width", "depth"):
        if getattr(design, name) <= 0:
            yield Fault(
                where=f"{where}, {name}",
                what=f"its outside {name} must be more than 0",
                remedy=f"Give the outside {name} of the bare box.",
            )
    if design.count < 1:
        yield Fault(
            where=f"{where}, count",
            what=f"it is {design.count}",
            remedy="Give a whole number of 1 or more, or take the cabinet out.",
        )
    for name in ("allowance", "flush", "bevel_allowance"):
        if getattr(design, name) < 0:
            yield Fault(
                where=f"{where}, {name}",
                what="it is negative",
                remedy="Give how much larger the blanks are, 0 for none.",
            )
    recessed = {Fit.INSET, Fit.GROOVE}
    if design.grille is not None and (design.baffle is None or design.baffle.fit not in recessed):
        yield Fault(
            where=f"{where}, grille",
            what="it stands in the recess before an inset baffle, and there is none",
            remedy="Make the baffle inset and set it back, or leave the grille out.",
        )
    yield from _find_closing_faults(design, where)
    yield from _find_grain_faults(design.grains, where)
    yield from _find_strip_faults(design, where)


def _find_closing_faults(design: BoxDesign, where: str) -> Iterator[Fault]:
    battens = design.battens
    for name, closing, has_frame in (
        ("baffle", design.baffle, battens is not None and battens.front),
        ("back", design.back, battens is not None and battens.rear),
    ):
        if closing is not None:
            yield from find_closing_faults(name, closing, where)
        if has_frame and not (closing is not None and closing.fit is Fit.INSET):
            yield Fault(
                where=f"{where}, battens",
                what=f"a frame needs an inset {name} to carry, and there is none",
                remedy=f"Make the {name} inset, or leave that frame out.",
            )
    baffle, comes_from = design.baffle, design.fittings.assembly.baffle_from
    if baffle is not None and comes_from is LoadsFrom.REAR and baffle.fit is not Fit.INSET:
        yield Fault(
            where=f"{where}, assembly",
            what="only an inset baffle goes in from the rear",
            remedy='Make the baffle inset, or leave baffle_from = "rear" out.',
        )
    braces = design.braces
    if braces is not None and (braces.depth <= 0 or braces.count < 1):
        yield Fault(
            where=f"{where}, braces",
            what="they need a depth of more than 0 and a count of 1 or more",
            remedy="Give both, or leave the braces out.",
        )

    if braces is not None and (design.shelves or design.dividers):
        yield Fault(
            where=f"{where}, braces",
            what="they would stand where the shelves or dividers do",
            remedy="Leave the braces out: shelves and dividers stiffen the cabinet too.",
        )


def _find_grain_faults(grains: Grains, where: str) -> Iterator[Fault]:
    for name, along, never in (
        ("the sides", grains.sides, Along.WIDTH),
        ("top and bottom", grains.top_and_bottom, Along.HEIGHT),
        ("the baffle", grains.baffle, Along.DEPTH),
        ("the back", grains.back, Along.DEPTH),
    ):
        if along is never:
            possible = ", ".join(each.value for each in Along if each is not never)
            yield Fault(
                where=f"{where}, grain",
                what=f"the {never.value} runs through the thickness of {name}",
                remedy=f"Choose one of: {possible}.",
            )


def _find_strip_faults(design: BoxDesign, where: str) -> Iterator[Fault]:
    if design.grain_round is GrainRound.NO:
        return
    grains = design.grains
    pair = (grains.sides, grains.top_and_bottom)
    if pair not in ((Along.HEIGHT, Along.WIDTH), (Along.ANY, Along.ANY)):
        yield Fault(
            where=f"{where}, grain_round",
            what="the grain of the sides, or of top and bottom, is to run from front to rear",
            remedy="It runs round where the sides have theirs along the height and top and bottom "
            "along the width: leave 'grain' out, or 'grain_round'.",
        )
    if design.joint_first:
        yield Fault(
            where=f"{where}, joint_first",
            what="the sides cannot lie beside each other and one behind the other too",
            remedy="Leave out 'joint_first' or 'grain_round'.",
        )


def _refuse(faults: Iterable[Fault]) -> None:
    found = tuple(faults)
    if found:
        raise InputError(found)
