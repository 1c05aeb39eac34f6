"""What a PDF asks of the program that prints it, read back by another library."""

import io

import pytest
from pypdf import PdfReader

from plans.pages.pages import make_pages
from plans.pages.paper import A4, LETTER, Paper
from plans.writers.pdf import write_pdf
from tests.plans.full_plan import full_plan

POINTS_PER_MM = 72 / 25.4


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_a_pdf_asks_to_be_printed_at_the_size_of_its_paper_and_of_no_other(paper: Paper) -> None:
    """ISO 32000-1, table 150: PrintScaling None means no scaling by the print dialogue."""
    _, _, plan = full_plan()
    reader = PdfReader(io.BytesIO(write_pdf(make_pages(plan, paper))))
    assert reader.viewer_preferences is not None
    assert str(reader.viewer_preferences.print_scaling) == "/None"
    for page in reader.pages:
        sides = sorted(float(side) / POINTS_PER_MM for side in page.mediabox[2:])
        assert sides == pytest.approx(sorted((paper.width_mm, paper.height_mm)), abs=0.01)
