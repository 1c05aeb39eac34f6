"""The car's page: what goes in, in the order of loading, and what to check before driving."""

from plans.pages.blocks import Block, flow, moved, space
from plans.pages.car_picture import car_pictures
from plans.pages.fonts import printable, text_width
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import BIG, FIGURE, NOTE, fit, heading, paragraph
from plans.pages.paper import Paper
from plans.pages.rows import TICK, framed, marked_lines, rule, ticked
from plans.pages.shapes import Role, Shape, Text, TickBox
from plans.plan import Plan
from plans.sections.car import CarPage, CarPiece

NUMBER_X = 10.0
CODE_X = 29.0
SIZE_X = 58.0
LIE_X = 114.0


def car_pages(plan: Plan, paper: Paper) -> tuple[Draft, ...]:
    """Return how the car is loaded; nothing where the job names none."""
    if plan.car is None:
        return ()
    blocks = _blocks(plan.car, paper.body_width)
    return tuple(
        Draft(title="Into the car", paper=paper, body=body)
        for body in flow(blocks, body_room(paper))
    )


def _blocks(page: CarPage, width: float) -> list[Block]:
    blocks = [
        paragraph(page.total, width, height=FIGURE, bold=True),
        paragraph(f"{page.opening}; {page.floor}; {page.clearance}.", width),
        space(2.0),
        car_pictures(page, width),
    ]
    if page.does_not_fit:
        blocks += [framed("DOES NOT GO IN", page.does_not_fit, width), space(2.0)]
    load = 0
    for piece in page.pieces:
        if piece.load != load:
            load = piece.load
            words = (
                f"Trip {load} of {page.loads}, in this order" if page.loads > 1 else "In this order"
            )
            blocks.append(heading(words, width))
        blocks.append(_piece(piece, width))
    blocks.append(space(3.0))
    blocks += marked_lines("Nothing is cut from these: leave them, or see", page.left_behind, width)
    blocks += [space(2.0), heading("Before you drive", width)]
    return [*blocks, *(ticked(note, width) for note in page.notes)]


def _piece(piece: CarPiece, width: float) -> Block:
    code, size = printable(piece.code), printable(piece.size)
    number = str(piece.number)
    code_height = fit(code, SIZE_X - CODE_X - 2.0, BIG, FIGURE, bold=True) or FIGURE
    size_height = fit(size, LIE_X - SIZE_X - 2.0, FIGURE, NOTE) or NOTE
    mass = printable(f"{piece.mass} kg")
    people = "TWO PEOPLE" if piece.people > 1 else ""
    lie = paragraph(piece.lie, width - LIE_X, x=LIE_X, bold=True)
    check = paragraph(piece.check, width - LIE_X, x=LIE_X)
    words = f"sheet {piece.sheet}, {piece.material}"
    origin = paragraph(words, LIE_X - SIZE_X - 2.0, x=SIZE_X)
    shapes: list[Shape] = [
        rule(width),
        TickBox(x=0.25, y=3.2, size=TICK),
        Text(x=NUMBER_X, y=12.0, words=number, height=BIG, role=Role.CUT_NUMBER, bold=True),
        Text(x=CODE_X, y=12.0, words=code, height=code_height, role=Role.CODE, bold=True),
        Text(x=SIZE_X, y=7.0, words=size, height=size_height, role=Role.FIGURE),
        Text(x=SIZE_X, y=12.0, words=mass, height=NOTE),
    ]
    if people:
        x = SIZE_X + text_width(mass, NOTE) + 3.0
        shapes.append(Text(x=x, y=12.0, words=people, height=NOTE, bold=True))
    shapes += moved(lie.shapes, 0.0, 1.0)
    shapes += moved(check.shapes, 0.0, 1.0 + lie.height)
    shapes += moved(origin.shapes, 0.0, 12.6)
    height = max(12.6 + origin.height, 1.4 + lie.height + check.height)
    return Block(height=height + 1.4, shapes=tuple(shapes))
