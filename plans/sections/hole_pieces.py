"""Parts that come out of holes: their codes, and the panel that each is cut out of."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.discs import FromHole
from nesting.layout import PartLeaf
from nesting.lengths import Length
from plans.sections.codes import free_codes
from plans.sections.worked import Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class HolePiece:
    """One part from a hole.

    Attributes:
        code: Its code.
        taken: What it is and the hole that it comes out of.
        panel: Code of the panel with the hole.
        thickness: Real thickness of that panel, and so of the part.
    """

    code: str
    taken: FromHole
    panel: str
    thickness: Length

    @property
    def origin(self) -> str:
        """Where it comes from, in words."""
        return f"from the {self.taken.leaves} of {self.panel}, {self.taken.hole}"


def list_hole_pieces(worked: Worked) -> tuple[HolePiece, ...]:
    """Return the parts from holes, cabinet by cabinet; their codes share a letter of their own."""
    taken = [each for build in worked.job.cabinets for each in build.from_holes]
    panels = {
        (part.cabinet, part.name): codes[0]
        for part, codes in zip(worked.job.parts, worked.part_codes, strict=True)
        if codes
    }
    real = dict(_list_thicknesses(worked))
    codes = free_codes(worked.job, worked.part_codes, len(taken))
    pieces = []
    for code, each in zip(codes, taken, strict=True):
        # Where the panel is cut already, an earlier plan tells its code.
        panel = panels.get((each.cabinet, each.panel), f"{each.panel}, cabinet {each.cabinet}")
        pieces.append(
            HolePiece(
                code=code,
                taken=each,
                panel=panel,
                thickness=real.get(panel, each.part.thickness),
            )
        )
    return tuple(pieces)


def _list_thicknesses(worked: Worked) -> Iterator[tuple[str, Length]]:
    for sheet in worked.sheets:
        for freed in sheet.freed:
            if isinstance(freed.place.node, PartLeaf):
                yield sheet.codes[freed.place.path], sheet.sheet.real_thickness
