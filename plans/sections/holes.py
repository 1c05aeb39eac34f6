"""Holes as they are marked and made: coordinates first, a panel at a time."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.bodies import cross_axes
from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.hole_places import find_faces
from nesting.cabinets.hole_sheets import HoleSheet
from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import round_size
from nesting.job import Job
from nesting.lengths import Length, Unit
from plans.sections.numbers import show

OUTSIDE = "outside"
MARK = 1
"""Place of the line that marks the centre in the order of a hole sheet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltText:
    """One bolt: its number, its two distances as printed, and as lengths in the drawing."""

    number: str
    distances: tuple[str, str]
    at: tuple[Length, Length]


@dataclass(frozen=True, slots=True, kw_only=True)
class HoleText:
    """One hole.

    Attributes:
        code: Such as "H1", the same on every page.
        name: What it is called.
        centre: Distances from the two edges, as printed.
        sizes: What each circle is, and its size: cut-out, bolt circle, flange, recess.
        bolts: The bolts.
        chord: From one bolt to the next, as printed; "" for none.
        at: The centre in the drawing, from its lower left corner.
        cut_out: Its diameter, 0 for a window.
        window: Its sides in the drawing, None where it is round.
        bolt_circle: Diameter, 0 for none.
        flange: Diameter, 0 where not known.
    """

    code: str
    name: str
    centre: tuple[str, str]
    sizes: tuple[tuple[str, str], ...]
    bolts: tuple[BoltText, ...]
    chord: str
    at: tuple[Length, Length]
    cut_out: Length
    window: tuple[Length, Length] | None
    bolt_circle: Length
    flange: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class HoleOrder:
    """What is done for holes that are made alike, in order."""

    codes: str
    steps: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelHoles:
    """The holes of one panel that are marked on one face.

    Attributes:
        panel: Name of the panel.
        design: Name of the design.
        letters: Its cabinets.
        face: Which face is drawn and marked.
        edges: The edges that something is measured from.
        sides: Names of the drawing's left, right, bottom and top.
        across: Extent of the drawing, left to right.
        up: Extent of the drawing, bottom to top.
        size: The same as printed.
        when: The moment at which the two edges exist.
        holes: The holes.
    """

    panel: str
    design: str
    letters: str
    face: str
    edges: tuple[str, ...]
    sides: tuple[str, str, str, str]
    across: Length
    up: Length
    size: str
    when: str
    holes: tuple[HoleText, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _View:
    """How a face of a panel is seen: its directions, its extents, and whether left and right swap.

    Attributes:
        panel: The panel.
        axes: Across and up.
        extents: The finished size along them.
        is_mirrored: True where the low end of the first direction lies at the right.
    """

    panel: Panel
    axes: tuple[Axis, Axis]
    extents: tuple[Length, Length]
    is_mirrored: bool

    def place(
        self, edges: tuple[str, str], distances: tuple[Length, Length]
    ) -> tuple[Length, Length]:
        """Return where something stands in the drawing that is measured from two edges."""
        low = [
            distance if edge == axis.ends[0] else extent - distance
            for axis, extent, edge, distance in zip(
                self.axes, self.extents, edges, distances, strict=True
            )
        ]
        return (self.extents[0] - low[0] if self.is_mirrored else low[0]), low[1]

    @property
    def sides(self) -> tuple[str, str, str, str]:
        """Names of the drawing's left, right, bottom and top."""
        left, right = self.axes[0].ends[:: -1 if self.is_mirrored else 1]
        bottom, top = self.axes[1].ends
        return left, right, bottom, top


def make_panel_holes(job: Job) -> tuple[PanelHoles, ...]:
    """Return the holes of all designs, panel by panel, codes running on."""
    found: list[PanelHoles] = []
    number = 1
    for build in job.cabinets:
        for group in _groups(build):
            made = _panel_holes(job, build, group, number)
            found.append(made)
            number += len(made.holes)
    return tuple(found)


def _groups(build: CabinetBuild) -> list[list[HoleSheet]]:
    """Return the holes that are marked on one face of one panel."""
    groups: dict[tuple[str, str], list[HoleSheet]] = {}
    for hole in build.fit_out.holes if build.fit_out else ():
        groups.setdefault((hole.panel, hole.face), []).append(hole)
    return list(groups.values())


def _panel_holes(job: Job, build: CabinetBuild, group: list[HoleSheet], number: int) -> PanelHoles:
    view = _view(job, build, group[0])
    holes = tuple(
        _hole(hole, view, f"H{place}", job.unit) for place, hole in enumerate(group, start=number)
    )
    edges = tuple(dict.fromkeys(edge for hole in group for edge in hole.edges))
    return PanelHoles(
        panel=view.panel.name,
        design=build.name,
        letters=", ".join(build.letters),
        face=group[0].face,
        edges=edges,
        sides=view.sides,
        across=view.extents[0],
        up=view.extents[1],
        size=f"{show(view.extents[0], job.unit)} wide × {show(view.extents[1], job.unit)} high "
        "as drawn",
        when=group[0].when,
        holes=holes,
    )


def _view(job: Job, build: CabinetBuild, hole: HoleSheet) -> _View:
    panel = next(panel for panel in build.panels if panel.name == hole.panel)
    axes = cross_axes(panel.normal)
    spans = {span.axis: span for span in (panel.length, panel.width)}
    height, width, depth = build.outside
    whole = (width, depth, height)[panel.normal.index]
    is_low = sum(find_faces(panel)) < whole
    from_high = is_low is not hole.face.startswith(OUTSIDE)
    # From the front, the right and above the low end lies at the left; else it lies at the right.
    is_mirrored = from_high if panel.normal is Axis.DEPTH else not from_high
    return _View(
        panel=panel,
        axes=axes,
        extents=(round_size(spans[axes[0]], job.step), round_size(spans[axes[1]], job.step)),
        is_mirrored=is_mirrored,
    )


def _hole(hole: HoleSheet, view: _View, code: str, unit: Unit) -> HoleText:
    return HoleText(
        code=code,
        name=hole.name,
        centre=_distances(hole.edges, hole.centre, unit),
        sizes=tuple(_sizes(hole, unit)),
        bolts=tuple(
            BoltText(
                number=str(bolt.number),
                distances=(show(bolt.distances[0], unit), show(bolt.distances[1], unit)),
                at=view.place(hole.edges, bolt.distances),
            )
            for bolt in hole.bolts
        ),
        chord=show(hole.chord, unit) if hole.chord else "",
        at=view.place(hole.edges, hole.centre),
        cut_out=hole.cut_out,
        window=hole.window,
        bolt_circle=hole.bolt_circle,
        flange=hole.flange,
    )


def _distances(
    edges: tuple[str, str], distances: tuple[Length, Length], unit: Unit
) -> tuple[str, str]:
    first, second = (
        f"{edge} {show(distance, unit)}" for edge, distance in zip(edges, distances, strict=True)
    )
    return first, second


def _sizes(hole: HoleSheet, unit: Unit) -> Iterator[tuple[str, str]]:
    """Yield the circles from the inside out, each with its own name."""
    if hole.window:
        yield "window", f"{show(hole.window[0], unit)} × {show(hole.window[1], unit)}"
    else:
        yield "cut-out", show(hole.cut_out, unit)
    if hole.bolt_circle:
        yield "bolt circle", show(hole.bolt_circle, unit)
    if hole.flange:
        yield "flange", show(hole.flange, unit)
    if hole.recess:
        yield "recess depth", show(hole.recess, unit)


def make_hole_orders(job: Job) -> tuple[HoleOrder, ...]:
    """Return what is done for every hole, those that are made alike together."""
    alike: dict[tuple[str, ...], list[str]] = {}
    sheets = [hole for build in job.cabinets for group in _groups(build) for hole in group]
    for number, hole in enumerate(sheets, start=1):
        mark = f"Mark the centre on the {hole.face}, as drawn."
        steps = (*hole.order[:MARK], mark, *hole.order[MARK + 1 :])
        alike.setdefault(steps, []).append(f"H{number}")
    return tuple(HoleOrder(codes=", ".join(codes), steps=steps) for steps, codes in alike.items())
