"""What is left over and worth keeping."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class OffcutRow:
    """One offcut.

    Attributes:
        code: Its code, "L2".
        size: Size as text, the side along the sheet's length first.
        material: Material and measured thickness.
        grain: "grain along the 600", or "no grain".
        sheet: Number of the sheet it comes from.
        cut: Number of the cut that frees it.
        good_edges: The edges that were cut, not raw.
        could_be: Codes of parts that could be cut again from it.
    """

    code: str
    size: str
    material: str
    grain: str
    sheet: str
    cut: str
    good_edges: str
    could_be: tuple[str, ...]
