"""Tables in plain text for the terminal."""

from collections.abc import Sequence


def make_table(
    headings: tuple[str, ...],
    right: tuple[bool, ...],
    rows: Sequence[tuple[tuple[str, ...], Sequence[str]]],
) -> list[str]:
    """Return the lines of a table: columns as wide as they must be, remarks below their row.

    Args:
        headings: One for each column.
        right: Whether a column is set against its right edge.
        rows: Cells, and remarks that stand below them.
    """
    cells = [headings, *(row for row, _ in rows)]
    widths = [max(len(row[column]) for row in cells) for column in range(len(headings))]

    def line(row: tuple[str, ...]) -> str:
        padded = (
            text.rjust(width) if is_right else text.ljust(width)
            for text, width, is_right in zip(row, widths, right, strict=True)
        )
        return "  ".join(padded).rstrip()

    lines = [line(headings), "  ".join("-" * width for width in widths)]
    for row, remarks in rows:
        lines += [line(row), *(f"{' ' * (widths[0] + 4)}{remark}" for remark in remarks)]
    return lines
