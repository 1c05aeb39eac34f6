"""What the calculator hands on: the parts of one cabinet and what goes with them."""

from dataclasses import dataclass

from nesting.cabinets.discs import FromHole
from nesting.cabinets.edges import Edge
from nesting.cabinets.families import Design
from nesting.cabinets.fit_out import FitOut
from nesting.cabinets.panels import Bar, Panel, Space
from nesting.lengths import Length
from nesting.parts import Batten, Part


@dataclass(frozen=True, slots=True, kw_only=True)
class CabinetBuild:
    """One design, expanded: all its cabinets' parts, battens, questions and warnings.

    Attributes:
        name: Name of the design.
        letters: Letters of the cabinets built to it, in order.
        outside: Height, width and depth of the bare box, rounded to the step.
        parts: Sheet parts of all its cabinets.
        battens: Battens of all its cabinets.
        sums: Sums that close the box, such as "500 = 17.7 + 464.6 + 17.7".
        questions: Things that the design leaves open and the builder must answer.
        warnings: Things that the builder should look at before buying.
        advice: How to cut so that joints line up and grain runs on.
        changes: Every size that the measured thickness has moved, against the nominal one.
        edges: The twelve edges of the box, each with the panel that runs through.
        panels: The panels of one cabinet as solids in space.
        bars: The battens of one cabinet as solids in space.
        spaces: The inside, recesses and clearances of one cabinet.
        fit_out: Holes, assembly, covering, fixings, volume and what else fittings add.
        from_holes: Parts that come out of its holes and are cut from no sheet.
        design: What it was made from, for making it again in another size; None where unknown.
    """

    name: str
    letters: tuple[str, ...]
    outside: tuple[Length, Length, Length]
    parts: tuple[Part, ...]
    battens: tuple[Batten, ...] = ()
    sums: tuple[str, ...] = ()
    questions: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    advice: tuple[str, ...] = ()
    changes: tuple[str, ...] = ()
    edges: tuple[Edge, ...] = ()
    panels: tuple[Panel, ...] = ()
    bars: tuple[Bar, ...] = ()
    spaces: tuple[Space, ...] = ()
    fit_out: FitOut | None = None
    from_holes: tuple[FromHole, ...] = ()
    design: Design | None = None
