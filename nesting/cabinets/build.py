"""What the calculator hands on: the parts of one cabinet and what goes with them."""

from dataclasses import dataclass

from nesting.lengths import Length
from nesting.parts import Batten, Part


@dataclass(frozen=True, slots=True, kw_only=True)
class CabinetBuild:
    """One design, expanded: all its cabinets' parts, battens, questions and warnings.

    Attributes:
        name: Name of the design.
        letters: Letters of the cabinets built to it, in order.
        outside: Height, width and depth of the bare box.
        parts: Sheet parts of all its cabinets.
        battens: Battens of all its cabinets.
        sums: Sums that close the box, such as "500 = 17.7 + 464.6 + 17.7".
        questions: Things that the design leaves open and the builder must answer.
        warnings: Things that the builder should look at before buying.
    """

    name: str
    letters: tuple[str, ...]
    outside: tuple[Length, Length, Length]
    parts: tuple[Part, ...]
    battens: tuple[Batten, ...] = ()
    sums: tuple[str, ...] = ()
    questions: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
