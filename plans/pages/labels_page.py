"""Labels in the order of cutting: equal cards, to cut out or to copy on to masking tape.

A label is stuck on before the cut that frees its part, on the face that ends up hidden, with its
arrow up as the part stands in the finished work. All cards of a plan are of one size, the smallest
at which nothing on any of them is cut short.
"""

from collections.abc import Sequence

from plans.pages.blocks import Block, moved
from plans.pages.frame import Draft, body_room
from plans.pages.label_card import CardSize, draw_card, needed_height
from plans.pages.paper import Paper
from plans.pages.shapes import Line, LineKind, Shape
from plans.plan import Plan
from plans.sections.labels import Label

GRIDS = ((3, 5), (2, 6), (3, 4), (2, 5), (2, 4), (2, 3))
"""Columns and rows of cards on a page, the most cards first."""


def labels_pages(plan: Plan, paper: Paper) -> tuple[Draft, ...]:
    """Return pages of labels, as many cards on each as keep everything that they must carry."""
    columns, size = _grid(plan.labels, paper)
    each = columns * int(body_room(paper) / size.height + 0.01)
    return tuple(
        Draft(
            title="Labels",
            beside="on the hidden face, before the freeing cut",
            paper=paper,
            body=_cards(plan.labels[start : start + each], plan.fingerprint, columns, size),
        )
        for start in range(0, len(plan.labels), each)
    )


def _grid(labels: Sequence[Label], paper: Paper) -> tuple[int, CardSize]:
    """Return the number of columns and the size of a card."""
    for columns, rows in GRIDS:
        size = CardSize(width=paper.body_width / columns, height=body_room(paper) / rows)
        if all(needed_height(label, size.width) <= size.height for label in labels):
            break
    return columns, size


def _cards(labels: Sequence[Label], fingerprint: str, columns: int, size: CardSize) -> Block:
    shapes: list[Shape] = []
    for place, label in enumerate(labels):
        down, over = divmod(place, columns)
        card = draw_card(label, fingerprint, size)
        shapes += moved(card, over * size.width, down * size.height)
    used = -(-len(labels) // columns)
    end = columns * size.width
    for y in (size.height * line for line in range(used + 1)):
        shapes.append(Line(x1=0, y1=y, x2=end, y2=y, kind=LineKind.SCISSORS))
    for x in (size.width * line for line in range(columns + 1)):
        shapes.append(Line(x1=x, y1=0, x2=x, y2=used * size.height, kind=LineKind.SCISSORS))
    return Block(height=used * size.height, shapes=tuple(shapes))
