"""The wedge: what the builder says about a cabinet with a sloped baffle."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.boards import Board
from nesting.cabinets.design import Closing, Covering, Fit, Margins
from nesting.cabinets.fittings import Fittings
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
        baffle: The sloped baffle; between the sides, flush with their edges. None while nobody
            has said.
        back: The back, between the other panels. None while nobody has said.
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
    baffle: Closing | None = None
    back: Closing | None = None
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
        yield from self._find_closing_faults(where)

    def _find_closing_faults(self, where: str) -> Iterator[Fault]:
        for name, closing in (("baffle", self.baffle), ("back", self.back)):
            if closing is not None and (closing.fit is Fit.PLANTED or closing.set_back):
                yield Fault(
                    where=f"{where}, {name}",
                    what=f"the {name} of a wedge stands flush between the sides",
                    remedy='Write fit = "inset" without a set-back, or "none".',
                )
            if closing is not None and (closing.gap or closing.extra != Margins()):
                yield Fault(
                    where=f"{where}, {name}",
                    what=f"the {name} of a wedge is one board, with the same clearance all round",
                    remedy="Leave gap, upper and extra out.",
                )
