"""What to write on every panel before it is cut free (in the order of cutting)."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """One label.

    Attributes:
        code: Code of the part or offcut.
        copy: "2 of 4".
        name: Name in words, with the cabinet.
        size: Finished size and measured thickness, "562 × 300 × 17.7".
        blank: Blank size where it differs, else "".
        grain: "grain along the 562", or "any grain".
        grain_along_length: True where the arrow runs along the part's length; None for no grain.
        face: "this is the BACK face".
        status: "final", "oversize +3" or "measure first".
        to_do: What is still done to it.
        look_alikes: Codes it must not be taken for.
        origin: "sheet 1, cut 7".
    """

    code: str
    copy: str
    name: str
    size: str
    blank: str
    grain: str
    grain_along_length: bool | None
    face: str
    status: str
    to_do: tuple[str, ...]
    look_alikes: tuple[str, ...]
    origin: str
