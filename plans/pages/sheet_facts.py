"""What is said of a sheet in words: above its drawing, and at the foot of its pages."""

from collections.abc import Mapping, Sequence

from plans.pages.blocks import Block, space, stack
from plans.pages.boxes import Box
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import FIRST_LINE, LINE_STEP, NOTE, heading, paragraph
from plans.pages.shapes import Anchor, Role, Shape, Text
from plans.pages.sheet_marks import grain_arrow
from plans.pages.sum_lines import sum_lines
from plans.pages.support_strip import support_strip
from plans.sections.cautions import Caution
from plans.sections.handed import Handed, say_stand
from plans.sections.repeats import CodePair, Repeat
from plans.sections.sheet_view import SheetView

BETWEEN = 6.0  # white between two columns
NO_TRIM = frozenset({"left 0, right 0, top 0, bottom 0", ""})


def sheet_facts(repeat: Repeat, alike: str, width: float) -> Block:
    """Return what holds for the whole sheet: grain, size, mass, face, home corner, trims.

    Args:
        repeat: The sheet.
        alike: Which of its parts look like others, "" for none.
        width: Of the page.
    """
    view = repeat.view
    blocks = [
        _grain_and_size(view, width),
        paragraph(f"{view.face_text} {view.home_text}.{_trims(view)}", width),
    ]
    blocks += [paragraph(defect.text, width, bold=True) for defect in view.defects]
    if repeat.count > 1:
        blocks.append(paragraph(_alike(repeat), width, bold=True))
    if alike:
        blocks.append(paragraph(alike, width, bold=True))
    return stack([*blocks, space(1.5)])


def sheet_foot(repeat: Repeat, width: float) -> list[Block]:
    """Return how the pieces lie, what each adds up to, and the codes of the copies."""
    view = repeat.view
    blocks = [space(2.0), *support_strip(view, width), *sum_lines(view.sums, width)]
    if repeat.count > 1:
        blocks += _codes_of_copies(repeat, width)
    return blocks


def say_unlettered(codes: Sequence[str], width: float) -> list[Block]:
    """Return which codes and numbers found no room in the drawing, nothing where all did."""
    return [paragraph(f"No room in the drawing for: {', '.join(codes)}.", width)] if codes else []


def say_alike(view: SheetView, alike: Mapping[str, tuple[str, ...]]) -> str:
    """Return which parts of a sheet must not be taken for which others, "" for none.

    Args:
        view: The sheet.
        alike: For every code of a part the codes of those that look like it.
    """
    groups: dict[tuple[str, ...], list[str]] = {}
    for part in view.parts:
        if others := alike.get(part.code):
            groups.setdefault(others, []).append(part.code)
    pairs: dict[frozenset[frozenset[str]], str] = {}  # either way round once
    for others, codes in groups.items():
        both = frozenset((frozenset(codes), frozenset(others)))
        pairs.setdefault(both, f"{', '.join(codes)} ≠ {', '.join(others)}")
    words = "; ".join(pairs.values())
    return f"Look alike: {words}." if words else ""


def say_why(view: SheetView) -> str:
    """Return why the cuts stand in this order, and how long they take."""
    return f"Why this order: {view.why} About {view.minutes} minutes."


def short_cautions(cautions: Sequence[Caution], handed: Handed) -> str:
    """Return where to stand and the short cautions, "" without cautions."""
    lines = [caution.short for caution in cautions if "sheet" in caution.where]
    return " ".join([say_stand(handed), *lines]) if lines else ""


def say_numbers(numbers: Sequence[int]) -> str:
    """Return "8, 9 and 10"."""
    *most, last = map(str, numbers)
    return f"{', '.join(most)} and {last}" if most else last


def _grain_and_size(view: SheetView, width: float) -> Block:
    thickness = f"measured {view.measured}" if view.measured else "thickness not measured"
    grain, size = printable(view.grain_text), printable(f"{view.size}, {thickness}, {view.mass} kg")
    start, arrow = text_width(grain, NOTE, bold=True) + 3.0, 16.0
    first = NOTE * FIRST_LINE
    step = NOTE * LINE_STEP
    is_one_line = start + arrow + 3.0 + text_width(size, NOTE) <= width
    second = first if is_one_line else first + step
    shapes: list[Shape] = [
        Text(x=0, y=first, words=grain, height=NOTE, bold=True),
        Text(x=width, y=second, words=size, height=NOTE, anchor=Anchor.END),
    ]
    middle = first - NOTE / 2
    if view.grain == "length":
        shapes += grain_arrow(Box(start, middle - 0.9, start + arrow, middle + 0.9))
    elif view.grain == "width":
        shapes += grain_arrow(Box(start, middle - 3.2, start + 1.8, middle + 3.2))
    return Block(height=step if is_one_line else 2 * step, shapes=tuple(shapes))


def _trims(view: SheetView) -> str:
    return "" if view.trim_text in NO_TRIM else f" Not used along the edges: {view.trim_text}."


def _alike(repeat: Repeat) -> str:
    return (
        f"{repeat.count} SHEETS ARE CUT ALIKE: {say_numbers(repeat.numbers)}. "
        f"The codes drawn are those of sheet {repeat.view.number}; the others' stand at the foot. "
        "Each cut has a box for each sheet."
    )


def _codes_of_copies(repeat: Repeat, width: float) -> list[Block]:
    """Return which code stands for which on every sheet that is cut alike."""
    sheets = ", ".join(f"sheet {number}" for number in repeat.numbers[1:])
    return [
        heading(f"Code drawn, then its codes on {sheets}", width),
        *_cells(repeat.places, width),
        *(paragraph(line, width) for line in _pieces(repeat)),
    ]


def _pieces(repeat: Repeat) -> list[str]:
    """Return how the pieces on the way are called on the copies: their figures run on alike."""
    lines = []
    for place, number in enumerate(repeat.numbers[1:]):
        figures = [(_figure(pair.drawn), _figure(pair.copies[place])) for pair in repeat.pieces]
        steps = {copy - drawn for drawn, copy in figures}
        if len(steps) == 1:
            lines.append(f"Sheet {number}: add {steps.pop()} to the figure of every P.")
        elif steps:
            pairs = (f"{pair.drawn} is {pair.copies[place]}" for pair in repeat.pieces)
            lines.append(f"Sheet {number}: {', '.join(pairs)}.")
    return lines


def _figure(code: str) -> int:
    return int("".join(sign for sign in code if sign.isdigit()) or 0)


def _cells(pairs: Sequence[CodePair], width: float) -> list[Block]:
    """Return pairs of codes in a grid of equal columns."""
    if not pairs:
        return []
    texts = [(printable(pair.drawn), printable(", ".join(pair.copies))) for pair in pairs]
    first = max(text_width(drawn, NOTE, bold=True) for drawn, _ in texts) + 2.5
    cell = first + max(text_width(copies, NOTE) for _, copies in texts) + BETWEEN
    if cell - BETWEEN > width:  # more copies than stand on one line
        lines = (f"{drawn}: {copies}" for drawn, copies in texts)
        return [paragraph(line, width, role=Role.CODE) for line in lines]
    each = max(1, int((width + BETWEEN) // cell))
    rows = [texts[start : start + each] for start in range(0, len(texts), each)]
    # The underlines of 6 and 9 hang below the line, so the rows stand further apart.
    step, baseline = 1.8 * NOTE, NOTE * FIRST_LINE
    return [
        Block(
            height=step,
            shapes=tuple(
                shape
                for place, (drawn, copies) in enumerate(row)
                for shape in _cell(drawn, copies, place * cell, first, baseline)
            ),
        )
        for row in rows
    ]


def _cell(drawn: str, copies: str, x: float, first: float, y: float) -> tuple[Shape, ...]:
    bold = Text(x=x, y=y, words=drawn, height=NOTE, role=Role.CODE, bold=True)
    plain = Text(x=x + first, y=y, words=copies, height=NOTE, role=Role.CODE)
    return (bold, plain)
