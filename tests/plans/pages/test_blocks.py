import pytest

from plans.pages.blocks import (
    Block,
    Section,
    flow,
    flow_sections,
    move,
    moved,
    side_by_side,
    space,
    stack,
)
from plans.pages.shapes import (
    Gap,
    Hatch,
    HatchKind,
    Line,
    LineKind,
    Rectangle,
    Shape,
    Solid,
    Text,
    TickBox,
)

SHAPES: tuple[Shape, ...] = (
    Line(x1=1, y1=2, x2=3, y2=4, kind=LineKind.CUT),
    Rectangle(x=1, y=2, width=3, height=4, kind=LineKind.BOX),
    TickBox(x=1, y=2, size=6.5),
    Hatch(
        x=1, y=2, width=3, height=4, kind=HatchKind.WASTE,
        gaps=(Gap(x=1, y=2, width=1, height=1),),
    ),
    Solid(points=((1, 2), (3, 4), (5, 6))),
    Text(x=1, y=2, words="A1", height=3),
)  # fmt: skip


def block(height: float, name: str, *, glued: bool = False) -> Block:
    text = Text(x=0, y=height, words=name, height=3)
    return Block(height=height, shapes=(text,), is_glued=glued)


def names(page: Block) -> list[str]:
    return [shape.words for shape in page.shapes if isinstance(shape, Text)]


@pytest.mark.parametrize("shape", SHAPES)
def test_moving_there_and_back_changes_nothing(shape: Shape) -> None:
    assert move(shape, 10, 20) != shape
    assert move(move(shape, 10, 20), -10, -20) == shape


def test_blocks_stack_downwards() -> None:
    one = stack([block(10, "a"), block(5, "b")])
    assert one.height == 15
    assert [shape.y for shape in one.shapes if isinstance(shape, Text)] == [10, 15]


def test_blocks_side_by_side_are_as_high_as_the_highest() -> None:
    both = side_by_side([(0.0, block(10, "a")), (50.0, block(5, "b"))])
    assert both.height == 10
    assert [shape.x for shape in both.shapes if isinstance(shape, Text)] == [0, 50]


def test_what_does_not_fit_goes_on_to_the_next_page_under_its_head() -> None:
    rows = [block(10, f"row {number}") for number in range(5)]
    head = block(5, "head", glued=True)
    pages = flow([head, *rows], 27, later_head=(head,))
    assert [names(page) for page in pages] == [
        ["head", "row 0", "row 1"],
        ["head", "row 2", "row 3"],
        ["head", "row 4"],
    ]
    assert max(page.height for page in pages) <= 27


def test_a_heading_never_stands_alone_at_the_foot_of_a_page() -> None:
    pages = flow([block(20, "text"), block(5, "heading", glued=True), block(10, "below")], 30)
    assert [names(page) for page in pages] == [["text"], ["heading", "below"]]


def test_a_block_higher_than_a_page_still_comes_out_once() -> None:
    pages = flow([block(50, "tall"), block(5, "next")], 30)
    assert [names(page) for page in pages] == [["tall"], ["next"]]


def test_nothing_is_one_empty_page() -> None:
    assert [names(page) for page in flow([], 30)] == [[]]


def test_moved_moves_them_all() -> None:
    assert moved(SHAPES, 0, 0) == SHAPES


def test_white_is_halved_where_that_saves_a_page_of_a_few_lines() -> None:
    line = Line(x1=0, y1=0, x2=1, y2=0, kind=LineKind.RULE)
    row = Block(height=10.0, shapes=(line,))
    blocks = [row, space(4.0), row, space(4.0), row]
    assert [page.height for page in flow(blocks, 38.0)] == [38.0]
    assert [page.height for page in flow(blocks, 36.0)] == [34.0]
    assert [page.height for page in flow(blocks, 33.0)] == [24.0, 14.0]


def test_a_section_shares_a_page_only_where_that_saves_one() -> None:
    def titles(*heights: float) -> list[tuple[str, ...]]:
        sections = [
            Section(title=str(number), blocks=(tall(height),))
            for number, height in enumerate(heights)
        ]
        return [page.titles for page in flow_sections(sections, 100.0, head_of)]

    assert titles(60.0, 20.0) == [("0", "1")]
    assert titles(60.0, 50.0) == [("0",), ("1",)]
    assert titles(30.0, 30.0, 65.0) == [("0", "1"), ("2",)]


def test_a_section_that_goes_on_has_its_head_again_and_begins_with_a_good_start() -> None:
    table = Section(
        title="Table",
        blocks=tuple(tall(15.0) for _ in range(9)),
        later_head=(Block(height=5.0),),
    )
    first = Section(title="First", blocks=(tall(40.0),))
    pages = flow_sections([first, table], 100.0, head_of)
    assert [page.titles for page in pages] == [("First", "Table"), ("Table",)]
    # 40 + 6 between + 4 of title + three rows of 15, then the head of 5 and six rows
    assert [page.body.height for page in pages] == [95.0, 95.0]
    low = Section(title="First", blocks=(tall(52.0),))
    assert [page.titles for page in flow_sections([low, table], 100.0, head_of)] == [
        ("First",),
        ("Table",),
        ("Table",),
    ]


def test_white_at_the_end_of_a_section_takes_no_page() -> None:
    full = Section(title="Full", blocks=(tall(98.0), space(5.0)))
    (page,) = flow_sections([full], 100.0, head_of)
    assert page.body.height == 98.0


def tall(height: float) -> Block:
    return Block(height=height, shapes=SHAPES[:1])


def head_of(_: str) -> Block:
    return Block(height=4.0, is_glued=True)
