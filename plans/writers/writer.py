"""Every writer behind one protocol: from pages to the files that hold them."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from plans.pages.shapes import Page
from plans.writers.pdf import write_pdf
from plans.writers.svg import write_svg


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """One file's content.

    Attributes:
        ending: What follows the job's name, such as ".pdf" or ".page-03.svg".
        content: Its bytes.
    """

    ending: str
    content: bytes


class Writer(Protocol):
    """Turns pages into files; the same pages always give the same bytes."""

    def __call__(self, pages: Sequence[Page]) -> tuple[Written, ...]:
        """Return the files that hold the pages."""


def pdf_files(pages: Sequence[Page]) -> tuple[Written, ...]:
    """Return one PDF file that holds all pages."""
    return (Written(ending=".pdf", content=write_pdf(pages)),)


def svg_files(pages: Sequence[Page]) -> tuple[Written, ...]:
    """Return one SVG file for each page."""
    return tuple(
        Written(ending=f".page-{number:02d}.svg", content=write_svg(page))
        for number, page in enumerate(pages, start=1)
    )


WRITERS: dict[str, Writer] = {"pdf": pdf_files, "svg": svg_files}
