"""Joints: what the builder says about how the panels of a carcass meet at its four long edges."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from nesting.errors import Fault, InputError
from nesting.lengths import Length, mm

FEWEST_FINGERS = 3


class JointKind(Enum):
    """How two panels meet at a corner."""

    BUTT = "butt"
    MITRE = "mitre"
    REBATE = "rebate"
    GROOVE = "groove"
    FINGER = "finger"


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """The joint at the four long edges of a carcass.

    Attributes:
        kind: A butt, a mitre, a rebate in the panel that runs through, a tongue in a groove of it,
            or fingers.
        depth: How deep a rebate or groove goes into the panel that runs through; None for half its
            nominal thickness.
        tongue: Thickness of the tongue that goes into a groove; None for half the thickness.
        fingers: How many fingers, those of both panels counted; odd, so that the panel that runs
            through has both ends. None for what the width gives.
        finger_width: About how wide a finger is; None for about the thickness of the board
            (common practice, no source).
        fit: How much wider a slot is than the finger that goes into it.
    """

    kind: JointKind = JointKind.BUTT
    depth: Length | None = None
    tongue: Length | None = None
    fingers: int | None = None
    finger_width: Length | None = None
    fit: Length = mm("0.1")

    def __post_init__(self) -> None:
        """Refuse what no joint can be; what depends on thickness is checked with the sums."""
        faults = tuple(self._find_faults())
        if faults:
            raise InputError(faults)

    def _find_faults(self) -> Iterator[Fault]:
        for name, value, kinds in (
            ("depth", self.depth, (JointKind.REBATE, JointKind.GROOVE)),
            ("tongue", self.tongue, (JointKind.GROOVE,)),
            ("fingers", self.fingers, (JointKind.FINGER,)),
            ("finger_width", self.finger_width, (JointKind.FINGER,)),
        ):
            if value is not None and self.kind not in kinds:
                usable = " or ".join(kind.value for kind in kinds)
                yield Fault(
                    where="joint",
                    what=f"a {self.kind.value} has no {name.replace('_', ' ')}",
                    remedy=f"Leave it out, or make the joint a {usable}.",
                )
            elif value is not None and value <= 0:
                yield Fault(
                    where="joint",
                    what=f"its {name.replace('_', ' ')} is not more than 0",
                    remedy="Give more than 0, or leave it out for the usual one.",
                )
        if self.fingers is not None and self.fingers > 0:
            yield from self._find_finger_faults(self.fingers)
        if self.fit < 0:
            yield Fault(
                where="joint", what="its fit is negative", remedy="Give 0 or more, such as 0.1."
            )

    def _find_finger_faults(self, fingers: int) -> Iterator[Fault]:
        if self.finger_width is not None:
            yield Fault(
                where="joint",
                what="both the number and the width of the fingers are given",
                remedy="Leave one out: it follows from the other and the depth of the carcass.",
            )
        if fingers < FEWEST_FINGERS or fingers % 2 == 0:
            yield Fault(
                where="joint",
                what=f"{fingers} fingers do not begin and end with the same panel",
                remedy="Give an odd number of 3 or more.",
            )
