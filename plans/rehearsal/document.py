"""The content of a plan file, read into records. Says what is missing; judges no size."""

from collections.abc import Iterable, Mapping
from functools import partial

from nesting.errors import Fault
from plans.rehearsal.defects import read_defects
from plans.rehearsal.fields import Fields
from plans.rehearsal.gauge_blocks import read_blocks, read_places
from plans.rehearsal.hole_parts import read_hole_parts
from plans.rehearsal.printed import (
    UNITS,
    KeepSize,
    Nanometres,
    PrintedUnit,
    Sum,
    read_figure,
    read_keep,
    read_size,
    read_sum,
    read_trims,
)
from plans.rehearsal.records import (
    Blocks,
    Edge,
    Offcut,
    Part,
    PlanFile,
    Row,
    Saw,
    Sheet,
    WholeFirst,
    Yard,
)

FORMAT = "setout plan"
VERSION = 1

_NO_SIZE = (0, 0)
_GRAIN_OF_PART = ("length", "width", "any")
_GRAIN_OF_SHEET = ("length", "width", "none")
_STATUSES = ("final", "oversize", "measure first")
# Drawn as seen from the marked face: with the back up, the sheet is turned over about its length.
_EDGES = {
    "back": {
        "left edge": Edge.X_LOW,
        "right edge": Edge.X_HIGH,
        "top edge": Edge.Y_LOW,
        "bottom edge": Edge.Y_HIGH,
    },
    "front": {
        "left edge": Edge.X_LOW,
        "right edge": Edge.X_HIGH,
        "bottom edge": Edge.Y_LOW,
        "top edge": Edge.Y_HIGH,
    },
}


def read_document(document: object) -> tuple[PlanFile | None, tuple[Fault, ...]]:
    """Return the plan of a document, or every fault of its form and no plan."""
    strange = stranger(document)
    if strange is not None:
        return None, (strange,)
    assert isinstance(document, Mapping)
    faults: list[Fault] = []
    plan = _plan(Fields(table=document, where="plan", faults=faults))
    return (None if faults else plan), tuple(faults)


def stranger(document: object) -> Fault | None:
    """Return why a document is no plan of a kind known here, None where it is one."""
    if not isinstance(document, Mapping) or document.get("format") != FORMAT:
        return Fault(where="plan", what="it is not a plan file of setout", remedy="Name a plan.")
    version = document.get("version")
    if isinstance(version, bool) or version != VERSION:
        return Fault(
            where="plan",
            what=f"it is not of version {VERSION}, which this program reads",
            remedy="Make the plan again with 'setout plan'.",
        )
    return None


def _plan(fields: Fields) -> PlanFile:
    unit = UNITS.get(fields.choice("unit", tuple(UNITS)), UNITS["mm"])
    edges = _EDGES.get(fields.choice("marked_face", tuple(_EDGES)), _EDGES["back"])
    for key in ("job", "fingerprint"):
        fields.text(key)
    fields.number("minutes")
    blocks = read_blocks(fields, unit)
    sheets = tuple(
        _sheet(sheet, unit, edges, blocks) for sheet in fields.children("sheets", "sheet")
    )
    return PlanFile(
        unit=unit,
        saw=_saw(fields.child("saw", "saw")),
        cost=fields.number("cost"),
        bound=fields.number("bound"),
        is_complete=not _unplaced(fields),
        sheets=sheets,
        yard=_yard(fields),
        blocks=blocks,
        hole_parts=tuple(read_hole_parts(fields, unit)),
        finished=_finished(fields),
        whole_first=_whole_first(fields),
    )


def _saw(fields: Fields) -> Saw:
    fields.number("lift_limit_kg")
    fields.length("guide_length")
    return Saw(
        kerf=fields.length("kerf"),
        base_left=fields.length("base_left"),
        base_right=fields.length("base_right"),
    )


def _yard(fields: Fields) -> Yard | None:
    """Return the yard; a plan that is cut at home has none."""
    if fields.table.get("yard") is None:
        return None
    yard = fields.child("yard", "yard")
    return Yard(kerf=yard.length("kerf"), rough=yard.length("rough"))


def _whole_first(fields: Fields) -> WholeFirst | None:
    """Return the cabinet that comes first; most plans have none."""
    if fields.table.get("whole_first") is None:
        return None
    first = fields.child("whole_first", "whole_first")
    return WholeFirst(
        cabinet=first.text("cabinet"),
        cuts=first.text("cuts"),
        pauses=tuple(
            (pause.whole("sheet"), pause.whole("cut")) for pause in first.children("after", "pause")
        ),
    )


def _finished(fields: Fields) -> frozenset[str]:
    """Return the codes of what earlier plans cut; a new plan goes on from none."""
    if fields.table.get("earlier") is None:
        return frozenset()
    earlier = fields.child("earlier", "earlier")
    return frozenset(part.text("code") for part in earlier.children("finished", "finished part"))


def _unplaced(fields: Fields) -> int:
    """Return how many parts stayed unplaced; each kind needs a name, a number and a reason."""
    total = 0
    for entry in fields.children("unplaced", "unplaced part"):
        entry.text("name")
        entry.text("reason")
        total += entry.whole("count")
    return total


def _sheet(
    fields: Fields, unit: PrintedUnit, edges: Mapping[str, Edge], blocks: Blocks | None
) -> Sheet:
    printed = fields.child("printed")
    trim = fields.child("trim")
    fields.text("material")
    thickness = fields.length("thickness")
    measured = fields.optional_length("measured")
    return Sheet(
        number=fields.whole("number"),
        stock=fields.text("stock"),
        thickness=thickness,
        real_thickness=thickness if measured is None else measured,
        length=fields.length("length"),
        width=fields.length("width"),
        grain=fields.choice("grain", _GRAIN_OF_SHEET),
        price=fields.number("price"),
        trim=(
            (Edge.X_LOW, trim.length("left")),
            (Edge.X_HIGH, trim.length("right")),
            (Edge.Y_LOW, trim.length("bottom")),
            (Edge.Y_HIGH, trim.length("top")),
        ),
        printed_size=printed.printed("size", partial(read_size, unit=unit), _NO_SIZE),
        printed_trim=tuple(
            (edges[name], width)
            for name, width in printed.printed("trims", partial(read_trims, unit=unit), _NO_TRIMS)
        ),
        parts=tuple(_parts(fields, printed, unit)),
        rows=tuple(_rows(fields, printed, unit, edges, blocks)),
        offcuts=tuple(_offcuts(fields, printed, unit)),
        sums=tuple(
            (entry.text("piece"), entry.printed("text", partial(read_sum, unit=unit), _NO_SUM))
            for entry in printed.children("sums", "sum")
        ),
        defects=tuple(read_defects(fields, printed, unit)),
    )


_NO_SUM = Sum(total=0, terms=())
_NO_TRIMS: tuple[tuple[str, Nanometres], ...] = ()


def _parts(fields: Fields, printed: Fields, unit: PrintedUnit) -> Iterable[Part]:
    size = partial(read_size, unit=unit)
    for drawn, line in _pairs_by_code(fields, printed, "parts", "part"):
        yield Part(
            code=drawn.text("code"),
            name=drawn.text("name"),
            rect=drawn.rect(),
            is_turned=drawn.flag("turned"),
            grain=drawn.choice("grain", _GRAIN_OF_PART),
            finished=drawn.pair("finished"),
            printed_finished=line.printed("finished", size, _NO_SIZE),
            printed_blank=line.printed("blank", size, _NO_SIZE),
            printed_thickness=line.printed("thickness", partial(read_figure, unit=unit), 0),
            status=line.choice("status", _STATUSES),
            is_hidden="hidden" in drawn.table and drawn.flag("hidden"),
        )


def _offcuts(fields: Fields, printed: Fields, unit: PrintedUnit) -> Iterable[Offcut]:
    size = partial(read_size, unit=unit)
    for drawn, line in _pairs_by_code(fields, printed, "offcuts", "offcut"):
        yield Offcut(
            code=drawn.text("code"),
            rect=drawn.rect(),
            printed_size=line.printed("size", size, _NO_SIZE),
        )


def _pairs_by_code(
    fields: Fields, printed: Fields, key: str, noun: str
) -> Iterable[tuple[Fields, Fields]]:
    """Yield what stands on the sheet together with its printed line of the same code."""
    lines: dict[str, Fields] = {}
    for line in printed.children(key, noun):
        code = line.text("code")
        if code in lines:
            line.fault(f"{code!r} is printed twice")
        lines[code] = line
    for drawn in fields.children(key, noun):
        code = drawn.text("code")
        line_of = lines.pop(code, None)
        if line_of is None:
            drawn.fault(f"{code!r} is not printed, or stands there twice")
        else:
            yield drawn, line_of
    for code, line in lines.items():
        line.fault(f"{code!r} is printed but not on the sheet")


def _rows(
    fields: Fields,
    printed: Fields,
    unit: PrintedUnit,
    edges: Mapping[str, Edge],
    blocks: Blocks | None,
) -> Iterable[Row]:
    cuts = list(fields.children("cuts", "cut"))
    lines = list(printed.children("rows", "row"))
    if len(cuts) != len(lines):
        fields.fault(f"{len(cuts)} cuts are drawn, {len(lines)} are printed")
    for place, (cut, line) in enumerate(zip(cuts, lines, strict=False), start=1):
        if cut.whole("number") != place or line.text("number") != str(place):
            line.fault(f"cut {place} does not carry the number {place}")
        yield _row(place, cut, line, unit, edges, blocks)


def _row(
    number: int,
    cut: Fields,
    line: Fields,
    unit: PrintedUnit,
    edges: Mapping[str, Edge],
    blocks: Blocks | None,
) -> Row:
    direction = cut.choice("direction", ("rip", "crosscut"))
    if line.choice("direction", ("rip", "crosscut")) != direction:
        line.fault(f"it is printed as another direction than the {direction} that is drawn")
    is_at_home = cut.choice("by", ("home", "yard")) == "home"
    if blocks is not None and is_at_home:
        guides, unusable = read_places(line, blocks, unit)
    else:
        guides, unusable = _guides(line, unit, is_at_home=is_at_home)
    return Row(
        number=number,
        hold=line.text("hold"),
        hold_size=line.printed("hold_size", partial(read_size, unit=unit), _NO_SIZE),
        is_rip=direction == "rip",
        edge=edges.get(line.choice("measure_from", tuple(edges)), Edge.X_LOW),
        keep=line.printed("keep", partial(read_keep, unit=unit), _NO_KEEP),
        keep_code=line.text("keep_code"),
        guides=guides,
        unusable=unusable,
        free_code=line.text("free_code", may_be_empty=True),
        setting=line.whole("setting"),
        band=cut.child("band", f"{cut.where}, band").rect(),
        kerf=cut.length("kerf"),
        is_at_home=is_at_home,
    )


def _guides(
    line: Fields, unit: PrintedUnit, *, is_at_home: bool
) -> tuple[tuple[Nanometres, Nanometres] | None, str]:
    """Return the two places of the guide, and which of them is struck out."""
    unusable = line.choice("unusable", ("", "left", "right", "both"))
    if not (is_at_home or line.table.get("guide_left") or line.table.get("guide_right")):
        return None, unusable
    figure = partial(read_figure, unit=unit)
    return (
        line.printed("guide_left", figure, 0),
        line.printed("guide_right", figure, 0),
    ), unusable


_NO_KEEP = KeepSize(is_trim=False, size=0)
