from xml.etree import ElementTree as ET

import pytest

from plans.pages.fonts import CAPITAL, text_width
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Page, Solid, Text
from plans.pages.strokes import strokes_of
from plans.writers.svg import write_svg
from tests.plans.pages.plan_samples import two_bass_cabinets_plan

SVG = "{http://www.w3.org/2000/svg}"
PAGES = make_pages(two_bass_cabinets_plan(), A4)
SHEET = next(page for page in PAGES if page.title == "Sheet 1")


def test_a_page_is_millimetres_from_edge_to_edge() -> None:
    root = ET.fromstring(write_svg(SHEET))  # noqa: S314 - our own text
    assert root.attrib["width"] == "210mm"
    assert root.attrib["height"] == "297mm"
    assert root.attrib["viewBox"] == "0 0 210 297"


def test_every_shape_is_drawn_once() -> None:
    root = ET.fromstring(write_svg(SHEET))  # noqa: S314 - our own text
    texts = [shape for shape in SHEET.shapes if isinstance(shape, Text)]
    strokes = [
        stroke
        for shape in SHEET.shapes
        if not isinstance(shape, Solid)
        for stroke in strokes_of(shape)
    ]
    assert [element.text for element in root.iter(f"{SVG}text")] == [text.words for text in texts]
    assert len(list(root.iter(f"{SVG}line"))) == len(strokes)
    solids = sum(isinstance(shape, Solid) for shape in SHEET.shapes)
    assert len(list(root.iter(f"{SVG}polygon"))) == solids


def test_a_text_says_how_high_and_how_long_it_is() -> None:
    root = ET.fromstring(write_svg(SHEET))  # noqa: S314 - our own text
    texts = [shape for shape in SHEET.shapes if isinstance(shape, Text)]
    for element, text in zip(root.iter(f"{SVG}text"), texts, strict=True):
        assert float(element.attrib["font-size"]) * CAPITAL == pytest.approx(text.height, abs=0.01)
        width = text_width(text.words, text.height, bold=text.bold)
        assert float(element.attrib["textLength"]) == pytest.approx(width, abs=0.01)


def test_the_same_page_gives_the_same_text() -> None:
    again = make_pages(two_bass_cabinets_plan(), A4)
    assert [write_svg(page) for page in again] == [write_svg(page) for page in PAGES]


def test_signs_of_the_file_format_in_a_name_stay_text() -> None:
    page = Page(
        width_mm=210,
        height_mm=297,
        title="<Sheet & more>",
        job_name='"A" & <B>',
        fingerprint="KTU-30718",
        shapes=(Text(x=10, y=20, words='<b> & "quoted"', height=3),),
    )
    root = ET.fromstring(write_svg(page))  # noqa: S314 - our own text
    assert next(root.iter(f"{SVG}text")).text == '<b> & "quoted"'
    title = root.find(f"{SVG}title")
    assert title is not None
    assert title.text == '"A" & <B>, <Sheet & more>, plan KTU-30718'
