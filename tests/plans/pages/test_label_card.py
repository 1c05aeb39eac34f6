"""Cards of handed sides: an arrow to the front, which nothing else stands on."""

import pytest

from plans.pages.blocks import moved
from plans.pages.clashes import find_clashes
from plans.pages.label_card import CardSize, draw_card, needed_height
from plans.pages.shapes import Page, Solid, Text, TickBox
from plans.sections.labels import Label


def side(front: str, face: str) -> Label:
    """Return the label of a side."""
    return Label(
        code="A1",
        copy="1 of 1",
        name="Side, left, cabinet A",
        size="900 × 450 × 17.7",
        blank="",
        grain="grain along the 900",
        grain_along_length=True,
        face=face,
        status="final",
        to_do=("cut the hole for the left handle",),
        look_alikes=("A2", "B2"),
        origin="sheet 1, cut 10",
        hand="left",
        share="left",
        front=front,
    )


@pytest.mark.parametrize("width", [62.6, 94.0])
@pytest.mark.parametrize("face", ["BACK face: inside", "FRONT face: outside"])
@pytest.mark.parametrize("front", ["left", "right"])
def test_an_arrow_points_to_the_front_instead_of_boxes(front: str, face: str, width: float) -> None:
    label = side(front, face)
    card = draw_card(label, "ABC-123", CardSize(width=width, height=needed_height(label, width)))
    word = next(shape for shape in card if isinstance(shape, Text) and shape.words == "front")
    heads = [
        shape
        for shape in card
        if isinstance(shape, Solid) and abs(shape.points[0][1] - word.y) < 6.0
    ]
    tip, *base = heads[-1].points
    assert (tip[0] < base[0][0]) is (front == "left")
    assert not any(isinstance(shape, TickBox) for shape in card)
    page = Page(
        width_mm=210.0,
        height_mm=120.0,
        title="",
        job_name="",
        fingerprint="",
        shapes=moved(card, 30.0, 20.0),
    )
    assert find_clashes(page) == ()


def test_boxes_are_ticked_where_the_front_is_not_known() -> None:
    label = side("", "this is the BACK face")
    card = draw_card(label, "ABC-123", CardSize(width=94.0, height=70.0))
    assert sum(isinstance(shape, TickBox) for shape in card) == 2
