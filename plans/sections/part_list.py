"""Every part with its finished size, its status and where it comes from."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRow:
    """One piece of one part.

    Attributes:
        code: Its code.
        name: Its name.
        cabinet: Letter of its cabinet, "" for none.
        copy: "2 of 4".
        finished: Finished size as text, "562 × 300".
        blank: Size as cut; equal to finished where nothing is added.
        thickness: Measured thickness where known, else nominal, as text.
        grain: "grain along the 562", or "any".
        status: "final", "oversize +3" or "measure first".
        sheet: Number of its sheet as text, "-" where it was not placed.
        cut: Number of the cut that frees it.
        sums: How its sizes came about.
        look_alikes: Codes of parts within 15 mm of it in both sizes, one per kind.
        to_do: What is still done to it.
        material: Its material.
    """

    code: str
    name: str
    cabinet: str
    copy: str
    finished: str
    blank: str
    thickness: str
    grain: str
    status: str
    sheet: str
    cut: str
    sums: tuple[str, ...]
    look_alikes: tuple[str, ...]
    to_do: tuple[str, ...]
    material: str
