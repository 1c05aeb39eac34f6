"""Sheets drawn as text, so that a test can show what it expects."""

from nesting.job import Job
from nesting.layout import PartLeaf, Rect, RestLeaf, SheetLayout, walk
from nesting.lengths import Length


def draw_sheet(job: Job, layout: SheetLayout, step: Length) -> str:
    """Return a sheet as text, its top edge first: a letter a part, '.' offcut, '-' waste, ' ' dust.

    Args:
        job: The job; its first part is 'A'.
        layout: The sheet.
        step: Length that one character stands for; every edge should be a multiple of it.
    """
    sheet = job.sheets[layout.sheet]
    rows = [[" " for _ in range(sheet.length // step)] for _ in range(sheet.width // step)]
    whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
    for place in walk(layout.root, whole):
        if isinstance(place.node, PartLeaf):
            sign = chr(ord("A") + place.node.part)
        elif isinstance(place.node, RestLeaf):
            sign = "." if place.node.is_offcut else "-"
        else:
            continue
        rect = place.rect
        for y in range(rect.y // step, (rect.y + rect.width) // step):
            for x in range(rect.x // step, (rect.x + rect.length) // step):
                rows[y][x] = sign
    return "\n".join("".join(row).rstrip() for row in reversed(rows))
