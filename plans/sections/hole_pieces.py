"""Parts that come out of holes: their codes, and the panel that each is cut out of."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.boards import Board, measure_boards, real_thickness
from nesting.cabinets.discs import FromHole
from nesting.layout import PartLeaf
from nesting.lengths import Length
from plans.sections.codes import free_codes
from plans.sections.part_words import full_name
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
    job = worked.job
    taken = [each for build in job.cabinets for each in build.from_holes]
    panels = dict(_list_panels(worked))
    measured, real = measure_boards(job.sheets), dict(_list_thicknesses(worked))
    pieces = []
    for code, each in zip(free_codes(job, worked.part_codes, len(taken)), taken, strict=True):
        name = f"{each.panel}, cabinet {each.cabinet}"
        panel = panels.get(name, name)
        board = Board(material=each.part.material, thickness=each.part.thickness)
        pieces.append(
            HolePiece(
                code=code,
                taken=each,
                panel=panel,
                thickness=real.get(panel, real_thickness(board, measured)),
            )
        )
    return tuple(pieces)


def _list_panels(worked: Worked) -> Iterator[tuple[str, str]]:
    """Yield name and code of what was cut by an earlier plan, and of what is still to be cut."""
    if worked.job.earlier is not None:
        for finished in worked.job.earlier.finished:
            yield finished.name, finished.code
    for part, codes in zip(worked.job.parts, worked.part_codes, strict=True):
        if codes:
            yield full_name(part), codes[0]


def _list_thicknesses(worked: Worked) -> Iterator[tuple[str, Length]]:
    for sheet in worked.sheets:
        for freed in sheet.freed:
            if isinstance(freed.place.node, PartLeaf):
                yield sheet.codes[freed.place.path], sheet.sheet.real_thickness
