"""The wedge: what the builder says about a cabinet with a sloped baffle."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Covering, Fit, Margins
from nesting.cabinets.design import Battens, Braces, Corners
from nesting.cabinets.fittings import Fittings
from nesting.cabinets.joints import Joint, JointKind
from nesting.errors import Fault, InputError
from nesting.lengths import Length, mm


@dataclass(frozen=True, slots=True, kw_only=True)
class WedgeDesign:
    """A cabinet whose baffle leans back, such as a stage wedge.

    The two sides run through and have the outline of the cabinet. Between them stand bottom, back,
    top, baffle and front. Sizes are those of the bare wood, outside.

    Attributes:
        name: Name of the design, unique in the job.
        count: How many cabinets are built to it.
        height: Outside height at the back.
        width: Outside width.
        depth: Outside depth along the floor.
        top: Outside depth of the top; 0 where the baffle runs up to the back.
        front: Outside height of the upright front below the baffle; 0 where the baffle runs down
            to the floor.
        board: What it is cut from.
        joint: How bottom, top and front meet the sides: a butt, or rebates in the sides.
        baffle: The sloped baffle: between the sides, flush with their edges or set back, or planted
            on them. None while nobody has said.
        back: The back, in the same ways. None while nobody has said.
        battens: Frames behind an inset baffle and back, if any.
        braces: Braces between the sides, if any.
        covering: What the outside is covered with; None for bare or painted wood.
        measure_first: Whether baffle and back wait for a measurement of the standing carcass.
        allowance: How much larger those blanks are in both directions.
        bevel_allowance: What a blank has at each edge that gets a bevel.
        answers: What the builder has said about parts that are easily forgotten, by name.
        fittings: Holes, screws and all else beside the panels.
    """

    name: str
    count: int = 1
    height: Length
    width: Length
    depth: Length
    top: Length
    front: Length = 0
    board: Board
    joint: Joint = Joint()
    baffle: Closing | None = None
    back: Closing | None = None
    battens: Battens | None = None
    braces: Braces | None = None
    covering: Covering | None = None
    measure_first: bool = True
    allowance: Length = mm(3)
    bevel_allowance: Length = mm(3)
    answers: tuple[tuple[str, str], ...] = ()
    fittings: Fittings = Fittings()

    def __post_init__(self) -> None:
        """Refuse what no wedge can be; what depends on thickness is checked with the sums."""
        faults = tuple(self._find_faults())
        if faults:
            raise InputError(faults)

    def _find_faults(self) -> Iterator[Fault]:
        where = f"cabinet {self.name!r}"
        for name in ("height", "width", "depth"):
            if getattr(self, name) <= 0:
                yield Fault(
                    where=f"{where}, {name}",
                    what=f"its outside {name} must be more than 0",
                    remedy=f"Give the outside {name} of the bare cabinet.",
                )
        for name, most, of in (("top", self.depth, "depth"), ("front", self.height, "height")):
            if not 0 <= getattr(self, name) < most:
                yield Fault(
                    where=f"{where}, {name}",
                    what=f"it is not less than the outside {of}",
                    remedy=f"Give less than the {of}, 0 for none: the baffle has the rest.",
                )
        for name in ("allowance", "bevel_allowance"):
            if getattr(self, name) < 0:
                yield Fault(
                    where=f"{where}, {name}",
                    what="it is negative",
                    remedy="Give how much larger the blanks are, 0 for none.",
                )
        if self.count < 1:
            yield Fault(
                where=f"{where}, count",
                what=f"it is {self.count}",
                remedy="Give a whole number of 1 or more, or take the cabinet out.",
            )
        if self.joint.kind not in {JointKind.BUTT, JointKind.REBATE}:
            yield Fault(
                where=f"{where}, joint",
                what=f"the sides of a wedge have no {self.joint.kind.value} joints",
                remedy='Write joint = "butt" or "rebate".',
            )
        yield from self._find_closing_faults(where)
        yield from self._find_filling_faults(where)

    def _find_closing_faults(self, where: str) -> Iterator[Fault]:
        for name, closing in (("baffle", self.baffle), ("back", self.back)):
            if closing is not None and closing.fit.is_let_in:
                yield Fault(
                    where=f"{where}, {name}",
                    what=f"the {name} of a wedge sits in no rebate or groove: its sides have none",
                    remedy='Write fit = "inset", "planted" or "none".',
                )
            if closing is not None and closing.set_back and closing.fit is not Fit.INSET:
                yield Fault(
                    where=f"{where}, {name}",
                    what=f"only an inset {name} can be set back",
                    remedy=f"Make the {name} inset, or leave the set-back out.",
                )
            if closing is not None and (closing.gap or closing.extra != Margins()):
                yield Fault(
                    where=f"{where}, {name}",
                    what=f"the {name} of a wedge is one board, with the same clearance all round",
                    remedy="Leave gap, upper and extra out.",
                )

    def _find_filling_faults(self, where: str) -> Iterator[Fault]:
        battens, braces = self.battens, self.braces
        if battens is not None and battens.corners is Corners.MITRED:
            yield Fault(
                where=f"{where}, battens",
                what="the battens of a wedge are not mitred",
                remedy='Write corners = "across" or "upright".',
            )
        for name, closing, has_frame in (
            ("baffle", self.baffle, battens is not None and battens.front),
            ("back", self.back, battens is not None and battens.rear),
        ):
            if has_frame and (closing is None or closing.fit is not Fit.INSET):
                yield Fault(
                    where=f"{where}, battens",
                    what=f"a frame needs an inset {name} to carry, and there is none",
                    remedy=f"Make the {name} inset, or leave that frame out.",
                )
        if braces is not None and (braces.depth <= 0 or braces.count < 1):
            yield Fault(
                where=f"{where}, braces",
                what="they need a depth of more than 0 and a count of 1 or more",
                remedy="Give both, or leave the braces out.",
            )
