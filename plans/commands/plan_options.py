"""How to plan, as asked for on the command line."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

Progress = Callable[[Any], None]
"""Told how far a search is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOptions:
    """How to plan, and where to write.

    Attributes:
        out: Folder to write into; None for beside the job file.
        paper: Name of the paper, "A4" or "Letter".
        seed: Seed of the search.
        effort: Iterations of each search; None for the default.
        seconds: Cap on the time, or None.
        svg: Also write each page as a picture.
        writes: False where the plan goes to standard output only.
        book: Let parts come from the book of leftovers, whatever the job file says.
        pages: Which pages the PDF has, "overview,sheets" or "3,5-8"; "" for all.
        ways: Print other ways to buy on the shopping page.
        read_aloud: Also print the cuts in words, for one who reads and one who saws.
        turn_tiles: Print every other tile of a template upside down.
    """

    out: Path | None = None
    paper: str = "A4"
    seed: int = 1
    effort: int | None = None
    seconds: float | None = None
    svg: bool = False
    writes: bool = True
    book: bool = False
    pages: str = ""
    ways: bool = False
    read_aloud: bool = False
    turn_tiles: bool = False
