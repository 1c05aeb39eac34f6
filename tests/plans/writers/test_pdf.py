"""The PDF read back by three other libraries: pypdf, pdfplumber and pypdfium2."""

import io
import re
import subprocess
import sys
from collections.abc import Iterator
from typing import TypeAlias

import numpy as np
import pdfplumber
import pypdfium2
import pytest
from numpy.typing import NDArray
from pypdf import PdfReader

from plans.pages.boxes import Box, text_box
from plans.pages.pages import make_pages
from plans.pages.paper import A4, LETTER, Paper
from plans.pages.shapes import (
    Anchor,
    Hatch,
    HatchKind,
    Line,
    LineKind,
    Page,
    Role,
    Shape,
    Text,
)
from plans.pages.sheet_marks import grain_arrow
from plans.writers.pdf import write_pdf
from tests.plans.pages.plan_samples import random_plan, two_bass_cabinets_plan

DPI = 300
DARK = 128  # of 255: what a printer of one bit makes black
PIXELS_PER_MM = DPI / 25.4
Ink: TypeAlias = NDArray[np.bool_]
PLAN = two_bass_cabinets_plan()
PAGES = make_pages(PLAN, A4)
CONTENT = write_pdf(PAGES)


def blank_page(*shapes: Shape) -> Page:
    return Page(
        width_mm=210.0,
        height_mm=297.0,
        title="Kinds",
        job_name="kinds",
        fingerprint="KTU-30718",
        shapes=shapes,
    )


def render(content: bytes, number: int = 0) -> Ink:
    """Return where a page is black at 300 dots to the inch, as a printer would have it."""
    image = pypdfium2.PdfDocument(content)[number].render(scale=DPI / 72, grayscale=True)
    ink: Ink = np.asarray(image.to_numpy()) < DARK
    return ink


def cut_out(ink: Ink, box: Box) -> Ink:
    left, top, right, bottom = (
        round(edge * PIXELS_PER_MM) for edge in (box.left, box.top, box.right, box.bottom)
    )
    return ink[top:bottom, left:right]


def ink_height_mm(ink: Ink) -> float:
    rows = np.flatnonzero(ink.any(axis=1))
    return float((rows[-1] - rows[0] + 1) / PIXELS_PER_MM)


@pytest.mark.parametrize(
    ("paper", "width", "height", "tolerance"),
    [
        (A4, 595.2756, 841.8898, 0.01),  # ISO 216: 210 x 297 mm; a point is 1/72 in
        (LETTER, 612.0, 792.0, 0.001),  # 8.5 x 11 in
    ],
)
def test_pages_are_as_large_as_the_paper(
    paper: Paper, width: float, height: float, tolerance: float
) -> None:
    content = write_pdf(make_pages(PLAN, paper))
    for page in PdfReader(io.BytesIO(content)).pages:
        box = sorted((float(page.mediabox.width), float(page.mediabox.height)))
        assert box == pytest.approx([width, height], abs=tolerance)


def test_the_same_plan_gives_the_same_bytes() -> None:
    assert write_pdf(make_pages(two_bass_cabinets_plan(), A4)) == CONTENT


def test_title_and_fingerprint_stand_in_the_properties_and_each_page_has_a_bookmark() -> None:
    reader = PdfReader(io.BytesIO(CONTENT))
    assert reader.metadata is not None
    assert reader.metadata.title == PLAN.job_name
    assert PLAN.fingerprint in (reader.metadata.subject or "")
    titles = [entry.title for entry in reader.outline if not isinstance(entry, list)]
    assert titles == [page.title for page in PAGES]


def test_every_page_reads_back_with_its_fingerprint_and_number() -> None:
    with pdfplumber.open(io.BytesIO(CONTENT)) as pdf:
        assert len(pdf.pages) == len(PAGES)
        for number, page in enumerate(pdf.pages, start=1):
            text = page.extract_text()
            assert PLAN.fingerprint in text
            assert f"page {number} of {len(PAGES)}" in text
            assert PLAN.job_name in text


def test_every_text_of_every_page_reads_back() -> None:
    reader = PdfReader(io.BytesIO(CONTENT))
    for page, read in zip(PAGES, reader.pages, strict=True):
        squeezed = "".join(read.extract_text().split())
        for shape in page.shapes:
            if isinstance(shape, Text):
                assert "".join(shape.words.split()) in squeezed


def test_names_from_all_over_europe_read_back() -> None:
    name = "Łódź Ærø Győr Ελλάδα Ждановка Þórshöfn"
    content = write_pdf(make_pages(random_plan(1, (2,), job_name=name), A4))
    assert name in PdfReader(io.BytesIO(content)).pages[0].extract_text()


def test_the_fonts_are_embedded_as_subsets() -> None:
    names = set()
    with pdfplumber.open(io.BytesIO(CONTENT)) as pdf:
        for page in pdf.pages:
            names |= {character["fontname"] for character in page.chars}
    # A subset's name begins with six letters and a plus (PDF 32000-1:2008, 9.6.4).
    assert all(re.fullmatch(r"[A-Z]{6}\+DejaVuSansCondensed(-Bold)?", name) for name in names)
    assert b"/FontFile2" in CONTENT
    assert len(CONTENT) < 250_000


def lettering() -> Iterator[tuple[int, Text, float]]:
    """Yield page numbers and texts to be measured, with the height that each must have."""
    for number, page in enumerate(PAGES):
        if not page.title.startswith("Sheet 1"):
            continue
        for shape in page.shapes:
            if not isinstance(shape, Text) or shape.is_upright or shape.is_struck:
                continue
            if shape.role is Role.KEEP and shape.words.isdigit():
                yield number, shape, 10.0
            elif shape.role is Role.FIGURE:
                yield number, shape, 5.0
            elif shape.words in ("A1", "B2", "D1") and number == FIRST_SHEET and shape.y < TABLE:
                yield number, shape, 10.0
            elif shape.words in ("edge", "take this piece", "HOME"):
                yield number, shape, 3.0


TABLE = 140.0  # below the drawing
FIRST_SHEET = next(number for number, page in enumerate(PAGES) if page.title == "Sheet 1")


def test_lettering_measured_on_the_rendered_page_is_as_high_as_it_must_be() -> None:
    measured = 0
    images: dict[int, Ink] = {}
    for number, text, least in lettering():
        ink = images.setdefault(number, render(CONTENT, number))
        height = ink_height_mm(cut_out(ink, text_box(text).grown(0.4)))
        assert height >= least - 1.5 / PIXELS_PER_MM, text
        measured += 1
    assert measured > 60


def test_a_hundred_millimetres_are_a_hundred_millimetres() -> None:
    number = next(number for number, page in enumerate(PAGES) if page.title.endswith("Setting up"))
    with pdfplumber.open(io.BytesIO(CONTENT)) as pdf:
        lengths = [abs(line["x1"] - line["x0"]) for line in pdf.pages[number].lines]
    # 100 mm are 283.4646 pt at 72 pt to the inch.
    assert min(abs(length - 283.4646) for length in lengths) < 0.01


def hatch_signature(kind: HatchKind) -> tuple[bool, bool, bool]:
    """Return whether an area is inked, and whether that runs rising and falling, in one bit."""
    hatch = Hatch(x=50, y=50, width=60, height=40, kind=kind)
    ink = cut_out(render(write_pdf([blank_page(hatch)])), Box(55, 55, 105, 85))
    step = 6  # half a millimetre: further than a line is thick, nearer than the next one
    rising = (ink[step:, :-step] & ink[:-step, step:]).sum()
    falling = (ink[step:, step:] & ink[:-step, :-step]).sum()
    least = 0.02 * ink.size
    return bool(ink.any()), bool(rising > least), bool(falling > least)


def hatch_continues(kind: HatchKind) -> float:
    """Return the share of a hatch's ink that goes on, either way, half a millimetre further."""
    hatch = Hatch(x=50, y=50, width=60, height=40, kind=kind)
    ink = cut_out(render(write_pdf([blank_page(hatch)])), Box(55, 55, 105, 85))
    step = 6
    inner = ink[step:-step, step:-step]
    rising = ink[: -2 * step, 2 * step :] & ink[2 * step :, : -2 * step]
    falling = ink[: -2 * step, : -2 * step] & ink[2 * step :, 2 * step :]
    return float((inner & (rising | falling)).sum() / inner.sum())


def test_a_defect_for_hidden_parts_is_hatched_with_broken_lines_in_one_bit() -> None:
    whole, broken = hatch_continues(HatchKind.DEFECT), hatch_continues(HatchKind.STAIN)
    assert hatch_continues(HatchKind.WASTE) > 0.8
    assert whole > 0.8
    assert broken < 0.6


def test_the_edge_of_a_defect_is_as_dark_in_one_bit_as_that_of_the_sheet() -> None:
    # what tells it from a part is its hatch
    defect = line_signature(Line(x1=50, y1=50, x2=150, y2=50, kind=LineKind.DEFECT_EDGE))
    sheet = line_signature(Line(x1=50, y1=50, x2=150, y2=50, kind=LineKind.SHEET_EDGE))
    assert defect == sheet


def test_areas_are_told_apart_in_one_bit() -> None:
    assert hatch_signature(HatchKind.PART) == (False, False, False)
    assert hatch_signature(HatchKind.WASTE) == (True, True, False)
    assert hatch_signature(HatchKind.DEFECT) == (True, True, True)
    edge = Hatch(x=50, y=50, width=60, height=40, kind=HatchKind.OFFCUT)
    ink = cut_out(render(write_pdf([blank_page(edge)])), Box(50, 50, 110, 90))
    top: Ink = np.any(ink[: round(2.5 * PIXELS_PER_MM)], axis=0)
    dots = int((top[1:] & ~top[:-1]).sum())
    assert dots > 20
    assert not cut_out(ink, Box(3, 3, 57, 37)).any()


def line_signature(*shapes: Shape) -> tuple[int, int, bool, bool]:
    """Return what a line across the page is in one bit.

    How many lines lie beside each other, how thick the first is in pixels, whether it is broken,
    and whether it is thicker at its end.
    """
    ink = render(write_pdf([blank_page(*shapes)]))
    middle = ink[round(40 * PIXELS_PER_MM) : round(60 * PIXELS_PER_MM)]
    columns = middle[:, round(60 * PIXELS_PER_MM) : round(100 * PIXELS_PER_MM)]
    inked = columns.any(axis=0)
    across: Ink = columns[:, int(np.flatnonzero(inked)[5])]
    starts = np.flatnonzero(across[1:] & ~across[:-1])
    thickness = int(across[starts[0] + 1 :].argmin())
    end = middle[:, round(51.5 * PIXELS_PER_MM)]
    return len(starts), thickness, not bool(inked.all()), bool(end.sum() > 2 * thickness)


def test_lines_are_told_apart_in_one_bit() -> None:
    def line(kind: LineKind) -> Line:
        return Line(x1=50, y1=50, x2=150, y2=50, kind=kind)

    kinds = {
        kind: line_signature(line(kind))
        for kind in (
            LineKind.CUT,
            LineKind.NEXT_CUT,
            LineKind.SHEET_EDGE,
            LineKind.REFERENCE_EDGE,
            LineKind.SCISSORS,
            LineKind.SUPPORT,
        )
    }
    grain = line_signature(*grain_arrow(Box(50, 49, 150, 51)))
    signatures = [*kinds.values(), grain]
    assert len(set(signatures)) == len(signatures)
    assert kinds[LineKind.REFERENCE_EDGE][0] == 2
    assert kinds[LineKind.NEXT_CUT][1] >= 1.8 * kinds[LineKind.CUT][1]
    assert kinds[LineKind.CUT][1] >= 0.7 * PIXELS_PER_MM - 1
    assert kinds[LineKind.SCISSORS][2]
    assert kinds[LineKind.SUPPORT][2]
    assert kinds[LineKind.SUPPORT][1] >= 1.8 * kinds[LineKind.SCISSORS][1]
    assert grain[3]


@pytest.mark.parametrize("anchor", list(Anchor))
@pytest.mark.parametrize("is_upright", [False, True])
def test_a_text_is_drawn_where_it_was_measured(anchor: Anchor, *, is_upright: bool) -> None:
    text = Text(
        x=100, y=100, words="E1 380", height=8.0, bold=True, anchor=anchor, is_upright=is_upright
    )
    ink = render(write_pdf([blank_page(text)]))
    rows, columns = np.flatnonzero(ink.any(axis=1)), np.flatnonzero(ink.any(axis=0))
    drawn = [edge / PIXELS_PER_MM for edge in (columns[0], rows[0], columns[-1] + 1, rows[-1] + 1)]
    box = text_box(text)
    # A figure's advance is wider than its ink by its side bearings, less than a millimetre here.
    for edge, measured in zip(drawn, (box.left, box.top, box.right, box.bottom), strict=True):
        assert abs(edge - measured) < 1.1
    if is_upright:
        assert drawn[0] == pytest.approx(box.left, abs=0.15)
    else:
        assert drawn[1] == pytest.approx(box.top, abs=0.15)


def test_no_pages_are_still_a_file() -> None:
    assert write_pdf([]).startswith(b"%PDF")


@pytest.mark.benchmark
def test_ten_pages_take_less_than_a_second_with_everything_loaded_fresh() -> None:
    program = (
        "import pickle, sys, time; start = time.perf_counter();"
        "from plans.writers.pdf import write_pdf;"
        "pages = pickle.loads(sys.stdin.buffer.read());"
        "write_pdf(pages); print(time.perf_counter() - start)"
    )
    import pickle  # noqa: PLC0415 - only here, and only our own pages

    done = subprocess.run(
        [sys.executable, "-c", program],
        input=pickle.dumps(PAGES[:10]),
        capture_output=True,
        check=True,
    )
    assert float(done.stdout) < 1.0
