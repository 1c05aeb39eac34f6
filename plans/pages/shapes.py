"""What stands on a page: a few kinds of shape, each with its meaning.

A shape says what it means (a cut, waste, a part's code); how thick, how dashed or how hatched
that is drawn follows from the meaning in one place, `plans.pages.strokes`, the same on all pages.
Everything is black on white: meaning never rests on colour.
"""

from dataclasses import dataclass
from enum import Enum
from typing import TypeAlias


class LineKind(Enum):
    """What a line means."""

    CUT = "cut"
    NEXT_CUT = "cut of this page"
    SHEET_EDGE = "sheet edge"
    REFERENCE_EDGE = "reference edge"
    GRAIN = "grain"
    LEADER = "leader"
    DIMENSION = "dimension"
    RULE = "rule"
    HEAVY_RULE = "heavy rule"
    SAME_SETTING = "one setting of the guide"
    STOP = "the work can be left here"
    BLANK = "blank to write on"
    BOX = "box"
    SCISSORS = "cut out here"
    SUPPORT = "batten under the work"
    DEFECT_EDGE = "edge of a defect"


class HatchKind(Enum):
    """What an area of a sheet means."""

    PART = "part"
    WASTE = "waste"
    OFFCUT = "offcut"
    DEFECT = "defect"
    STAIN = "defect for hidden parts"


class Anchor(Enum):
    """The point of a text that its x names."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


class Role(Enum):
    """What a text is for; its smallest height follows from that."""

    NOTE = "note"
    FIGURE = "figure used at the saw"
    CODE = "code"
    CUT_NUMBER = "cut number"
    KEEP = "keep size"
    TITLE = "title"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A straight line from one point to another."""

    x1: float
    y1: float
    x2: float
    y2: float
    kind: LineKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Rectangle:
    """The outline of a rectangle; nothing inside it is painted over."""

    x: float
    y: float
    width: float
    height: float
    kind: LineKind


@dataclass(frozen=True, slots=True, kw_only=True)
class TickBox:
    """A square to tick, at least 6 mm."""

    x: float
    y: float
    size: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """An upright rectangle in which nothing else may be drawn, because a text stands there."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Hatch:
    """An area of a sheet with its meaning; the hatch leaves the gaps free."""

    x: float
    y: float
    width: float
    height: float
    kind: HatchKind
    gaps: tuple[Gap, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Solid:
    """A small filled polygon: an arrow head, a corner mark."""

    points: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """One line of text.

    Attributes:
        x: Of the anchor.
        y: Of the baseline.
        words: What it says.
        height: Height of its capitals and figures.
        role: What it is for. In codes and cut numbers 6 and 9 are underlined.
        bold: True for the heavier weight.
        anchor: Which point of it lies at x.
        is_upright: True where it is turned a quarter and reads from the bottom up; then the anchor
            and the width run along y.
        is_struck: True where it is struck out: it must not be used.
    """

    x: float
    y: float
    words: str
    height: float
    role: Role = Role.NOTE
    bold: bool = False
    anchor: Anchor = Anchor.START
    is_upright: bool = False
    is_struck: bool = False


Shape: TypeAlias = Line | Rectangle | TickBox | Hatch | Solid | Text


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One page, ready for any writer.

    Attributes:
        width_mm: Of the paper.
        height_mm: Of the paper.
        title: Of the page, also its bookmark.
        job_name: On every page.
        fingerprint: On every page.
        shapes: What stands on it.
    """

    width_mm: float
    height_mm: float
    title: str
    job_name: str
    fingerprint: str
    shapes: tuple[Shape, ...]
