"""Frame and joints, then the order of assembly with its screws."""

from plans.pages.blocks import Block, Section, moved, side_by_side, space, stack
from plans.pages.cabinet_picture import cabinet_picture
from plans.pages.corner_pictures import corner_pictures
from plans.pages.fonts import printable
from plans.pages.lettering import NOTE, fit, heading, paragraph
from plans.pages.paper import Paper
from plans.pages.rows import dashed, marked_lines, rule
from plans.pages.steps import two_columns
from plans.pages.stick_bars import stick_bars
from plans.plan import Plan
from plans.sections.frame import FixingText, Frame, StepText
from plans.sections.picture import Picture

PICTURE = 70.0
PICTURE_HEIGHT = 78.0
GAP = 6.0
JOINTS = 0.44  # of the width; the rest holds the places of the screws, on one line if it can
PLACES = 3.6


def frame_section(plan: Plan, paper: Paper) -> Section:
    """Return corners, set-backs and battens; nothing where no cabinet is built."""
    width = paper.body_width
    blocks: list[Block] = []
    for frame, picture in zip(plan.bench.frames, plan.bench.pictures, strict=True):
        blocks += _frame(frame, picture, width)
    if plan.bench.battens:
        blocks.append(heading("Cutting the battens", width))
        for section in plan.bench.battens:
            blocks += stick_bars(section, width)
        blocks.append(space(2.0))
    if blocks:
        cautions = [caution.short for caution in plan.cautions if "frame" in caution.where]
        blocks += [space(1.0), *(dashed(line, width, bold=True) for line in cautions)]
    return Section(title="Frame and joints", blocks=tuple(blocks))


def _frame(frame: Frame, picture: Picture, width: float) -> list[Block]:
    rest = width - PICTURE - GAP
    lines = [heading("Who runs through", rest)]
    lines += [paragraph(line, rest) for line in frame.runs_through]
    if frame.set_backs:
        lines += [space(2.0), heading("Where the battens stand", rest)]
        lines += [paragraph(line, rest) for line in frame.set_backs]
    beside = stack(lines)
    drawn = cabinet_picture(picture, PICTURE, PICTURE_HEIGHT)
    upper = side_by_side([(0.0, drawn), (PICTURE + GAP, beside)])
    return [
        heading(f"{frame.name}: {frame.letters}", width),
        Block(height=upper.height + 3.0, shapes=upper.shapes),
        corner_pictures(frame.corners, width),
        *marked_lines("At the saw and the bench", frame.advice, width),
        space(3.0),
    ]


def _fixings(frame: Frame, width: float) -> list[Block]:
    blocks = [heading(f"Screws of {frame.name}, each counted from the end that is named", width)]
    return [*blocks, *(_fixing(fixing, width) for fixing in frame.fixings), space(2.0)]


def _fixing(fixing: FixingText, width: float) -> Block:
    half = width * JOINTS
    joints = paragraph("; ".join(fixing.joints), half - 3.0)
    height = fit(printable(fixing.positions), width - half, PLACES, NOTE, bold=True) or PLACES
    figures = stack(
        [
            paragraph(fixing.screws, width - half, x=half),
            paragraph(fixing.positions, width - half, x=half, height=height, bold=True),
        ]
    )
    shapes = (rule(width), *moved((*joints.shapes, *figures.shapes), 0.0, 0.6))
    return Block(height=max(joints.height, figures.height) + 1.2, shapes=shapes)


def assembly_section(plan: Plan, paper: Paper) -> Section:
    """Return the order of assembly, with what each step makes impossible, and the screws."""
    width = paper.body_width
    blocks: list[Block] = []
    for frame in plan.bench.frames:
        if frame.steps:
            blocks.append(heading(f"{frame.name}: {frame.letters}", width))
            blocks += two_columns([_step(step) for step in frame.steps], width)
            blocks.append(space(2.0))
        if frame.fixings:
            blocks += _fixings(frame, width)
    return Section(title="Assembly", blocks=tuple(blocks))


def _step(step: StepText) -> tuple[str, str]:
    warning = f"After this no more: {step.impossible}." if step.impossible else ""
    return f"{step.number}. {step.what}", warning
