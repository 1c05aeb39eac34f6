"""The cut table of one sheet: one row a cut, every figure as it is printed.

The figures are texts on purpose: they are rounded to the printed step here, once, and the page,
the plan file and the rehearsal all use these very texts. Where rounding would add up to more than
a part may be off, the figures that are set at the saw are printed finer, see `precision`.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from nesting.cut_sequence import Step, is_over_limit, piece_mass_kg
from nesting.job import Job
from nesting.layout import By, Cut, Direction, Rect
from nesting.lengths import Length, mm
from nesting.saw import Face, SetWith
from nesting.supports import GuideRoom, Supports, find_guide_room, place_supports
from plans.sections.codes import WASTE
from plans.sections.gauge_blocks import BLOCKS, NO_BLOCK, OFF_THE_PIECE, find_mark
from plans.sections.numbers import show, show_kg, show_size, show_with_unit
from plans.sections.precision import needs_fine_figures, show_keep
from plans.sections.whole_first import say_pause
from plans.sections.worked import WorkedSheet

ON_A_BOARD = "lay it on a board that may be sawn into"
LEAST_BEARING = mm(1)
"""A guide whose edge lies nearer than this to the end of the piece, or beyond, lies off it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutRow:
    """One cut as the person at the saw reads it.

    Attributes:
        number: Number of the cut on its sheet, from 1, in the order of doing.
        hold: Code of the piece in hand: "S2" for whole sheet 2, "P5" for a piece cut before.
        hold_size: Its size as it is drawn, across the drawing first: "2440 × 1220".
        hold_mass: Its mass in kilograms, "36.7".
        people: 1, or 2 where the piece is over the lift limit.
        direction: Rip or crosscut.
        measure_from: Name of the edge as drawn: "left edge", "top edge" or "bottom edge".
        keep: Distance from that edge to the fresh edge, "356"; for a trim cut "trim 10": what
            comes off, fresh edge at 10 from the raw edge.
        keep_code: Code of the piece between the edge and the blade: a part, a piece, an offcut, or
            "WASTE"; for a trim cut the code of what is left after the raw edge is off.
        guide_left: Where the guide goes on the near side, from the same edge; "" for the yard.
        guide_right: Where the guide goes on the far side, from the same edge; "" for the yard.
        unusable: "left", "right", "both" or "": the figure that is struck out, because the guide
            would lie off the piece.
        blocks: Where blocks set the guide, so that no figure of it is printed, those that can be
            used: "A or B", "A", "B", "B beyond" (the piece), or "none"; else "".
        mark: Where the mark stands that they are laid against; "" where there is none.
        free_code: What falls free: a part, a piece, an offcut, or "WASTE".
        setting: Number of the setting on its sheet, from 1; rows that share it are consecutive.
        same_as: Number of the cut whose setting still stands, "" for a new one.
        remark: A short line, such as "clamp or cut by hand: 45 wide".
        guide_room: "left", "right", "either" or "none": on which side of the blade the guide and
            its clamps lie wholly on the piece; "" for the yard.
        support: How the piece is carried, where battens on both sides do not do; else "".
    """

    number: str
    hold: str
    hold_size: str
    hold_mass: str
    people: int
    direction: Direction
    measure_from: str
    keep: str
    keep_code: str
    guide_left: str
    guide_right: str
    unusable: str
    free_code: str
    setting: int
    same_as: str
    remark: str
    guide_room: str = ""
    support: str = ""
    blocks: str = ""
    mark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StripSum:
    """What a piece that is cut into a row of pieces adds up to.

    Attributes:
        piece: Code of the piece.
        text: "2430 = 562 + 2.4 + 562 + 2.4 + 1301.2 left".
        slack: What is left at the end, as text.
        is_tight: True where the slack is less than 1 mm a cut and 2 mm.
    """

    piece: str
    text: str
    slack: str
    is_tight: bool


def make_rows(job: Job, worked: WorkedSheet) -> tuple[CutRow, ...]:
    """Return the cut table of one sheet, in the order of doing."""
    first_of_setting: dict[int, int] = {}
    rows = []
    is_fine = needs_fine_figures(job, worked)
    for step in worked.sequence.steps:
        first = first_of_setting.setdefault(step.setting, step.number)
        rows.append(_make_row(job, worked, step, first, is_fine=is_fine))
    return tuple(rows)


def edge_measured_from(direction: Direction, face: Face) -> str:
    """Return the name of the edge at the home corner that a cut is measured from, as drawn."""
    if direction is Direction.CROSSCUT:
        return "left edge"
    return "top edge" if face is Face.BACK else "bottom edge"


def guide_positions(job: Job, step: Step) -> tuple[Length, Length]:
    """Return where the guide goes on the near and on the far side, from the edge measured from.

    A keep size w has the kerf k beyond it: w - base_left and w + k + base_right. A trim t has it
    before: t - k - base_left and t + base_right. The two always differ by the base plate.
    """
    saw = job.saw
    near_side = step.keep - saw.kerf if step.is_trim else step.keep
    return near_side - saw.base_left, near_side + saw.kerf + saw.base_right


def _make_row(
    job: Job, worked: WorkedSheet, step: Step, first_of_setting: int, *, is_fine: bool
) -> CutRow:
    unit = job.unit
    first, second = (worked.codes.get((*step.path, side), "") for side in (0, 1))
    left, right = guide_positions(job, step)
    is_home = step.by is By.HOME
    keep = show_keep(step.keep, unit, is_fine=is_fine)
    two_people = is_over_limit(job, worked.sheet, step.piece)
    pause = say_pause(job.terms.first_whole, worked, step.number)
    row = CutRow(
        number=str(step.number),
        hold=worked.codes[step.path],
        hold_size=show_size(step.piece.length, step.piece.width, unit),
        hold_mass=show_kg(piece_mass_kg(worked.sheet, step.piece)),
        people=2 if two_people else 1,
        direction=step.direction,
        measure_from=edge_measured_from(step.direction, job.saw.marked_face),
        keep=f"trim {keep}" if step.is_trim else keep,
        keep_code=second if step.is_trim else first,
        guide_left=show_keep(left, unit, is_fine=is_fine) if is_home else "",
        guide_right=show_keep(right, unit, is_fine=is_fine) if is_home else "",
        unusable=_unusable(left, right, extent_across(step.direction, step.piece))
        if is_home
        else "",
        free_code=first if step.is_trim else second,
        setting=step.setting,
        same_as="" if step.number == first_of_setting else str(first_of_setting),
        remark="; ".join(filter(None, (*_remarks(job, worked, step), pause))),
        guide_room=_say_room(find_room(job, step)) if is_home else "",
        support=ON_A_BOARD if is_home and supports_of(worked, step).needs_board else "",
    )
    is_set_with_blocks = is_home and job.saw.set_with is SetWith.BLOCKS
    return _with_blocks(job, step, row, is_fine=is_fine) if is_set_with_blocks else row


def _with_blocks(job: Job, step: Step, row: CutRow, *, is_fine: bool) -> CutRow:
    """Return a row with blocks and their mark in place of the guide's figures."""
    mark = find_mark(job, step)
    without_room = {"left": "right", "right": "left"}.get(row.guide_room, "")
    return replace(
        row,
        guide_left="",
        guide_right="",
        blocks=NO_BLOCK if mark is None else BLOCKS[row.unusable or without_room],
        mark="" if mark is None else show_keep(mark, job.unit, is_fine=is_fine),
        remark="; ".join(filter(None, (row.remark, OFF_THE_PIECE if mark is None else ""))),
    )


def find_room(job: Job, step: Step) -> GuideRoom:
    """Return on which sides of a cut the guide has room."""
    return find_guide_room(job.saw, *_across(step))


def supports_of(worked: WorkedSheet, step: Step) -> Supports:
    """Return the battens under a cut."""
    low, high = (worked.codes.get((*step.path, side), WASTE) == WASTE for side in (0, 1))
    return place_supports(*_across(step), low_is_waste=low, high_is_waste=high)


def _across(step: Step) -> tuple[Length, Length, Length]:
    """Return the extent of the piece across a cut and where the kerf begins and ends on it."""
    if step.direction is Direction.RIP:
        start = step.band.y - step.piece.y
        return step.piece.width, start, start + step.band.width
    start = step.band.x - step.piece.x
    return step.piece.length, start, start + step.band.length


def _say_room(room: GuideRoom) -> str:
    if room.left and room.right:
        return "either"
    return "left" if room.left else "right" if room.right else "none"


def extent_across(direction: Direction, piece: Rect) -> Length:
    """Return the extent of a piece across a cut, the way that its keep size is measured."""
    return piece.width if direction is Direction.RIP else piece.length


def _unusable(left: Length, right: Length, extent: Length) -> str:
    is_left_off = left < LEAST_BEARING
    is_right_off = right > extent - LEAST_BEARING
    if is_left_off and is_right_off:
        return "both"
    return "left" if is_left_off else "right" if is_right_off else ""


def _remarks(job: Job, worked: WorkedSheet, step: Step) -> Iterator[str]:
    """Yield what to look out for at a cut, the most dangerous first."""
    unit = job.unit
    if step.by is By.YARD:
        yield "THE YARD'S CUT"
        return
    if is_over_limit(job, worked.sheet, step.piece):
        yield "TWO PEOPLE"
    cut = worked.places[step.path].node
    if isinstance(cut, Cut) and cut.remark:
        yield cut.remark
    if step.cut_length > job.saw.guide_length:
        yield (
            f"GUIDE TOO SHORT: cut {show(step.cut_length, unit)}, "
            f"guide {show_with_unit(job.saw.guide_length, unit)}"
        )
    narrow = _narrowest(worked, step)
    if narrow < job.saw.smallest_held:
        yield f"clamp or cut by hand: {show(narrow, unit)} wide"
    if find_room(job, step).needs_outrigger:
        yield "no room for the guide: lay a board of the same thickness beside the piece"
    removed = extent_across(step.direction, step.band)
    if removed < job.saw.kerf:
        yield "the blade runs half off the edge" if removed else "the blade runs along the edge"


def _narrowest(worked: WorkedSheet, step: Step) -> Length:
    """Return the smallest extent of the piece in hand and of what comes off it, without waste."""
    widths = [step.piece.length, step.piece.width]
    for side in (0, 1):
        path = (*step.path, side)
        if worked.codes.get(path, WASTE) != WASTE:
            rect = worked.places[path].rect
            widths += [rect.length, rect.width]
    return min(widths)
