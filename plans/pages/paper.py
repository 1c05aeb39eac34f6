"""Paper, and the part of it that is printed on."""

from dataclasses import dataclass, replace

LEFT = 7.0  # most desk printers leave out about 5 mm along every edge: common practice, no source
TOP = 9.0
BOTTOM = 8.0
NOTES = 15.0  # white at the right for pencil notes, beside the row they belong to


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """A size of paper.

    Attributes:
        name: What it is sold as.
        width_mm: Left to right, in millimetres.
        height_mm: Top to bottom, in millimetres.
    """

    name: str
    width_mm: float
    height_mm: float

    @property
    def body_width(self) -> float:
        """Width between the margins, in millimetres."""
        return self.width_mm - LEFT - NOTES

    @property
    def body_height(self) -> float:
        """Height between the margins, in millimetres."""
        return self.height_mm - TOP - BOTTOM


A4 = Paper(name="A4", width_mm=210.0, height_mm=297.0)  # ISO 216
LETTER = Paper(name="Letter", width_mm=215.9, height_mm=279.4)  # 8.5 in x 11 in
PAPERS = {paper.name: paper for paper in (A4, LETTER)}


def turn(paper: Paper) -> Paper:
    """Return the same paper turned a quarter."""
    return replace(paper, width_mm=paper.height_mm, height_mm=paper.width_mm)
