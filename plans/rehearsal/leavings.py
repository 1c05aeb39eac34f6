"""What lies on the floor after the last cut: is every piece what the page says it is?"""

from collections.abc import Iterator

from shapely import union_all

from nesting.errors import Fault
from plans.rehearsal.pieces import WASTE, Piece
from plans.rehearsal.printed import Nanometres, PrintedUnit
from plans.rehearsal.records import WRITTEN, Edge, Offcut, Part, Sheet
from plans.rehearsal.row_checks import DO_NOT_CUT
from plans.rehearsal.sawing import Sawn

# Rounding of a row of figures adds up to less than this; a slip is larger.
MOST_DRIFT = 1_000_000

Size = tuple[Nanometres, Nanometres]


def check_leavings(sheet: Sheet, sawn: Sawn, unit: PrintedUnit) -> Iterator[Fault]:
    """Yield where the pieces of a sheet are not its parts, its offcuts and waste."""
    found = {piece.code: piece for piece in sawn.pieces if piece.code != WASTE}
    wanted: list[Part | Offcut] = [*sheet.parts, *sheet.offcuts]
    for thing in wanted:
        piece = found.pop(thing.code, None)
        where = f"sheet {sheet.number}, {thing.code}"
        if piece is None:
            yield _fault(where, "no cut makes it")
        elif isinstance(thing, Part):
            yield from _deviation(where, thing, piece, unit)
            yield from (_fault(where, what) for what in _part(sheet, thing, piece, unit))
        else:
            yield from (_fault(where, what) for what in _offcut(thing, piece, unit))
    for code in found:
        yield _fault(f"sheet {sheet.number}, {code}", "it is left over, but is no part or offcut")
    yield from _area(sheet, sawn)


def printed_deviation(part: Part, piece: Piece) -> Nanometres:
    """Return how far a sawn part is off its printed blank size, the worse of its two sides."""
    printed = _as_it_lies(part, part.printed_blank)
    return max(abs(a - b) for a, b in zip(printed, piece.size, strict=True))


def _deviation(where: str, part: Part, piece: Piece, unit: PrintedUnit) -> Iterator[Fault]:
    """Yield a fault where a part that is sawn as printed has not its printed size."""
    deviation = printed_deviation(part, piece)
    if deviation <= unit.part_tolerance:
        return
    printed = _as_it_lies(part, part.printed_blank)
    is_drift = deviation <= MOST_DRIFT and part.rect.is_at(piece.planned)
    yield Fault(
        where=where,
        what=f"it is printed {_show(printed, unit)} as it lies, but comes out as "
        f"{_show(piece.size, unit)}",
        remedy="One side is what other cuts leave, and each of their figures was rounded. "
        f"Give all sizes of the job in whole {unit.step_name}, and plan again."
        if is_drift
        else DO_NOT_CUT,
    )


def _part(sheet: Sheet, part: Part, piece: Piece, unit: PrintedUnit) -> Iterator[str]:
    """Yield where a piece is not the part that it is meant to be."""
    if not part.rect.is_at(piece.planned):
        yield "it is drawn elsewhere, or larger or smaller, than the cuts leave it"
    drawn = _as_it_lies(part, (part.rect.length, part.rect.width))
    yield from _rounded("blank", part.printed_blank, drawn, unit)
    yield from _rounded("finished size", part.printed_finished, part.finished, unit)
    yield from _blank(part, drawn, unit)
    if abs(part.printed_thickness - sheet.real_thickness) > unit.half_step + WRITTEN:
        yield (
            f"it is printed {unit.show(part.printed_thickness)} thick, but its sheet is "
            f"{unit.show(sheet.real_thickness)}"
        )
    if part.grain != "any" and sheet.grain != "none":
        runs_along_x = (part.grain == "length") != part.is_turned
        if runs_along_x != (sheet.grain == "length"):
            yield "it lies across the grain"
    for edge in Edge:
        if edge in piece.raw:
            yield f"its {edge.value} is still raw"
    yield from _trimmed(sheet, part)


def _trimmed(sheet: Sheet, part: Part) -> Iterator[str]:
    """Yield where a part reaches into a trim."""
    rect, trim = part.rect, dict(sheet.trim)
    for edge, distance in (
        (Edge.X_LOW, rect.x),
        (Edge.X_HIGH, sheet.length - rect.x_end),
        (Edge.Y_LOW, rect.y),
        (Edge.Y_HIGH, sheet.width - rect.y_end),
    ):
        if distance < trim[edge] - WRITTEN:
            yield f"it reaches into the trim along the {edge.value}"


def _blank(part: Part, drawn: Size, unit: PrintedUnit) -> Iterator[str]:
    """Yield where the blank is not the finished part and the extra that its status promises."""
    extra = [blank - finished for blank, finished in zip(drawn, part.finished, strict=True)]
    if part.status == "final" and max(map(abs, extra)) > WRITTEN:
        yield f"it is final, but its blank is off its finished size by {unit.show(extra[0])}"
    if part.status == "oversize" and max(extra) <= WRITTEN:
        yield "it is oversize, but its blank is not larger than the finished part"
    if min(extra) < -WRITTEN:
        yield "its blank is smaller than the finished part"


def _offcut(offcut: Offcut, piece: Piece, unit: PrintedUnit) -> Iterator[str]:
    """Yield where a piece is not the offcut that it is meant to be.

    An offcut is what the row of cuts before it leaves, and each printed figure of the row was
    rounded, so only its planned size is held to the printed one.
    """
    if not offcut.rect.is_at(piece.planned):
        yield "it is drawn elsewhere, or larger or smaller, than the cuts leave it"
    drawn = (offcut.rect.length, offcut.rect.width)
    yield from _rounded("size", offcut.printed_size, drawn, unit)


def _rounded(name: str, printed: Size, real: Size, unit: PrintedUnit) -> Iterator[str]:
    if any(abs(a - b) > unit.half_step + WRITTEN for a, b in zip(printed, real, strict=True)):
        yield f"its {name} is printed {_show(printed, unit)}, but is {_show(real, unit)}"


def _area(sheet: Sheet, sawn: Sawn) -> Iterator[Fault]:
    """Yield a fault where wood was made or lost: pieces and dust must make up the sheet."""
    shapes = [*(piece.wood for piece in sawn.pieces), *sawn.dust]
    length, width = sheet.printed_size
    whole = length * width
    areas = (sum(shape.area for shape in shapes), union_all(shapes).area)
    # Areas are floating-point numbers; a millionth of the sheet is far above their rounding.
    if max(abs(area - whole) for area in areas) * 1_000_000 > whole:
        yield _fault(f"sheet {sheet.number}", "its pieces and its dust do not make up the sheet")


def _as_it_lies(part: Part, size: Size) -> Size:
    """Return a part's own length and width as its extents along x and y; and back."""
    return size[::-1] if part.is_turned else size


def _show(size: Size, unit: PrintedUnit) -> str:
    return f"{unit.show(size[0])} × {unit.show(size[1])}"


def _fault(where: str, what: str) -> Fault:
    return Fault(where=where, what=what, remedy=DO_NOT_CUT)
