"""The wrap plan: pieces of covering and cloth, laid on the roll.

The carcass is wrapped with one band round its four panels, joined on the underside. A covering
with a pattern gets a piece for each panel instead, so that the pattern stands upright on both
sides. A baffle or back that is wrapped itself has its own piece, and so has
every panel of a cabinet that is no box.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from nesting.cabinets.closing_design import Closing, Covering
from nesting.cabinets.construction import Construction
from nesting.cabinets.ends import CLOSED_BY, find_closings, find_end
from nesting.cabinets.fittings import BandFace, Pattern, Roll
from nesting.cabinets.space import Axis
from nesting.errors import Fault, InputError
from nesting.lengths import Length, Unit, format_length

NAMES = {BandFace.BOTTOM: "underside"}
AT_EDGES = "none within the face; pieces meet at the edges, under the corner pieces"


@dataclass(frozen=True, slots=True, kw_only=True)
class WrapPiece:
    """One piece of covering or cloth, where it lies on the roll.

    Attributes:
        name: What it covers, in words.
        cabinet: Letter of its cabinet.
        faces: The faces that it covers.
        seam: Where it is joined, in words.
        seam_face: The face that the joint lies in; empty where it lies in none.
        across: Extent across the roll.
        along: Extent along the roll.
        from_edge: From the edge of the roll to the piece.
        from_end: From the beginning of the roll to the piece.
        is_turned: Whether it lies the other way round than it was worked out.
    """

    name: str
    cabinet: str
    faces: tuple[str, ...]
    seam: str
    seam_face: str = ""
    across: Length
    along: Length
    from_edge: Length = 0
    from_end: Length = 0
    is_turned: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class WrapPlan:
    """The pieces of one roll.

    Attributes:
        what: "covering" or "cloth".
        roll_width: Width of the roll.
        pieces: The pieces, from the beginning of the roll on.
        laid_out: The length that they take.
        order: The length to buy: with the spare, rounded up to how it is sold.
        text: The order in a sentence.
    """

    what: str
    roll_width: Length
    pieces: tuple[WrapPiece, ...]
    laid_out: Length
    order: Length
    text: str


def plan_wrap(
    construction: Construction,
    covering: Covering,
    closings: dict[str, Closing | None],
    roll: Roll,
    *,
    letters: tuple[str, ...],
    unit: Unit,
) -> WrapPlan:
    """Return the covering of all cabinets of a design, laid on the roll.

    Args:
        construction: One of the cabinets.
        covering: What it is covered with.
        closings: What the design says of "baffle" and "back".
        roll: The roll.
        letters: Letters of the cabinets.
        unit: The unit of messages.

    Raises:
        InputError: A piece is wider than the roll, whichever way it is laid.
    """
    faces = [face for face in BandFace if face not in roll.no_seam]
    band = _make_band(construction, covering, roll, faces[0]) if faces else None
    if construction.outline is not None:
        pieces = list(_make_boards(construction, roll))
    elif band is not None and roll.pattern is Pattern.NONE and _fits(band, roll):
        pieces = [band]
    else:
        pieces = list(_make_panels(construction, covering, roll))
    pieces += _make_closings(construction, closings, roll)
    return _lay_out("covering", pieces, roll, letters, unit)


def plan_cloth(
    construction: Construction, roll: Roll, *, letters: tuple[str, ...], unit: Unit
) -> WrapPlan:
    """Return the cloth for a grille before the baffle, turned over its frame all round.

    Raises:
        InputError: It is wider than the roll.
    """
    width, _, height = construction.outside
    frame = [bar.box for bar in construction.bars if bar.name.startswith("grille")]
    shown = frame or [panel.box for panel in find_closings(construction, "front")]
    if shown:
        width, height = (
            max(box.high[axis.index] for box in shown) - min(box.low[axis.index] for box in shown)
            for axis in (Axis.WIDTH, Axis.HEIGHT)
        )
    piece = WrapPiece(
        name="grille cloth, threads upright",
        cabinet="",
        faces=("grille",),
        seam="none",
        across=width + 2 * roll.turn_in,
        along=height + 2 * roll.turn_in,
    )
    return _lay_out("cloth", [piece], roll, letters, unit)


def _make_band(
    construction: Construction, covering: Covering, roll: Roll, seam: BandFace
) -> WrapPiece:
    """Return the band; round the outside of the covering, so that it is never too short."""
    width, _, height = construction.outside
    round_about = 2 * (width + height) + 8 * covering.thickness
    return WrapPiece(
        name="band round both sides, top and bottom",
        cabinet="",
        faces=tuple(face.value for face in BandFace),
        seam=f"on the {NAMES.get(seam, seam.value)}, where the band meets",
        seam_face=seam.value,
        across=_carcass_depth(construction) + 2 * roll.turn_in,
        along=round_about + roll.overlap,
    )


def _make_panels(construction: Construction, covering: Covering, roll: Roll) -> Iterator[WrapPiece]:
    """Yield a piece for each panel of the carcass, its pattern running up or from the front."""
    width, _, height = construction.outside
    deep = _carcass_depth(construction) + 2 * roll.turn_in
    beyond = 2 * covering.thickness + roll.overlap
    for face, across, along in (
        ("left side", deep, height + beyond),
        ("right side", deep, height + beyond),
        ("top", width + beyond, deep),
        ("bottom", width + beyond, deep),
    ):
        yield WrapPiece(
            name=face, cabinet="", faces=(face,), seam=AT_EDGES, across=across, along=along
        )


def _make_boards(construction: Construction, roll: Roll) -> Iterator[WrapPiece]:
    """Yield a piece for each carcass panel of a cabinet that is no box, cut to shape on the panel.

    Each is as large as the panel's longest and widest, turned over all round.
    """
    closings = find_closings(construction)
    for panel in construction.shell:
        if panel not in closings:
            yield WrapPiece(
                name=panel.name,
                cabinet="",
                faces=(panel.name,),
                seam=AT_EDGES,
                across=panel.width.size + 2 * roll.turn_in,
                along=panel.length.size + 2 * roll.turn_in,
            )


def _make_closings(
    construction: Construction, closings: dict[str, Closing | None], roll: Roll
) -> Iterator[WrapPiece]:
    for panel in find_closings(construction):
        closing = closings.get(CLOSED_BY[find_end(construction, panel)])
        if closing is not None and closing.wrapped:
            yield WrapPiece(
                name=f"{panel.name}, turned over its edges",
                cabinet="",
                faces=(panel.name,),
                seam="none",
                across=panel.width.size + 2 * roll.turn_in,
                along=panel.length.size + 2 * roll.turn_in,
            )


def _carcass_depth(construction: Construction) -> Length:
    return max(
        panel.box.size(Axis.DEPTH) for panel in construction.shell if panel.normal is not Axis.DEPTH
    )


def _fits(piece: WrapPiece, roll: Roll) -> bool:
    if roll.pattern is Pattern.ALONG:
        return piece.across <= roll.width
    return min(piece.across, piece.along) <= roll.width


def _lay_out(
    what: str, pieces: list[WrapPiece], roll: Roll, letters: tuple[str, ...], unit: Unit
) -> WrapPlan:
    faults = [
        Fault(
            where=what,
            what=f"the {piece.name} is {format_length(piece.across, unit)} {unit.value} wide, and "
            f"the roll {format_length(roll.width, unit)} {unit.value}",
            remedy="Take a wider roll, or one that may be laid any way round.",
        )
        for piece in pieces
        if not _fits(piece, roll)
    ]
    if faults:
        raise InputError(faults)
    copies = [replace(piece, cabinet=letter) for letter in letters for piece in pieces]
    laid, used = lay_on_roll(copies, roll)
    order = -(-(used + roll.spare) // roll.sold_by) * roll.sold_by
    return WrapPlan(
        what=what,
        roll_width=roll.width,
        pieces=laid,
        laid_out=used,
        order=order,
        text=f"{what.capitalize()}: {format_length(order, unit)} {unit.value} of a roll "
        f"{format_length(roll.width, unit)} {unit.value} wide (laid out "
        f"{format_length(used, unit)}, spare {format_length(roll.spare, unit)}, sold by "
        f"{format_length(roll.sold_by, unit)}).",
    )


def lay_on_roll(pieces: list[WrapPiece], roll: Roll) -> tuple[tuple[WrapPiece, ...], Length]:
    """Return the pieces in rows across the roll, and the length that they take.

    The longest come first; a piece goes into the first row that it fits into. Without a pattern
    a piece lies with its shorter side along the roll where the roll is wide enough.
    """
    turned = [_turn(piece, roll) for piece in pieces]
    rows: list[list[WrapPiece]] = []
    for piece in sorted(turned, key=lambda piece: -piece.along):
        for row in rows:
            if sum(each.across for each in row) + piece.across <= roll.width:
                row.append(piece)
                break
        else:
            rows.append([piece])
    laid, end = [], 0
    for row in rows:
        edge = 0
        for piece in row:
            laid.append(replace(piece, from_edge=edge, from_end=end))
            edge += piece.across
        end += row[0].along
    return tuple(laid), end


def _turn(piece: WrapPiece, roll: Roll) -> WrapPiece:
    longer = max(piece.across, piece.along)
    across = longer if longer <= roll.width else min(piece.across, piece.along)
    if roll.pattern is Pattern.ALONG or across == piece.across:
        return piece
    return replace(piece, across=piece.along, along=piece.across, is_turned=True)
