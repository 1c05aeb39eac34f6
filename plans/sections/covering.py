"""Covering and cloth: the pieces on the roll, their seams, and the order of faces."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.wrapping import WrapPlan
from nesting.job import Job
from nesting.lengths import Length, Unit
from plans.sections.numbers import show, show_size


@dataclass(frozen=True, slots=True, kw_only=True)
class RollPiece:
    """One piece on the roll.

    Attributes:
        number: In the drawing and the list.
        name: What it covers.
        cabinet: Letter of its cabinet.
        size: Across the roll × along the roll, as printed.
        seam: Where it is joined.
        across: Extent across the roll.
        along: Extent along the roll.
        from_edge: From the edge of the roll.
        from_end: From the beginning of the roll.
    """

    number: str
    name: str
    cabinet: str
    size: str
    seam: str
    across: Length
    along: Length
    from_edge: Length
    from_end: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class RollPlan:
    """What comes off one roll.

    Attributes:
        design: Name of the design.
        title: Such as "covering".
        order: How much to buy, in a sentence.
        amount: The same as an amount, such as "5000 mm".
        width: Width of the roll.
        width_text: The same as printed.
        length: Length to buy.
        laid_out: Length that the pieces take.
        laid_out_text: The same as printed.
        pieces: The pieces.
        work: The order of work.
    """

    design: str
    title: str
    order: str
    amount: str
    width: Length
    width_text: str
    length: Length
    laid_out: Length
    laid_out_text: str
    pieces: tuple[RollPiece, ...]
    work: tuple[str, ...]


def make_roll_plans(job: Job) -> tuple[RollPlan, ...]:
    """Return what comes off every roll."""
    return tuple(
        _roll(build, wrap, job.unit)
        for build in job.cabinets
        if build.fit_out
        for wrap in build.fit_out.wraps
    )


def _roll(build: CabinetBuild, wrap: WrapPlan, unit: Unit) -> RollPlan:
    return RollPlan(
        design=build.name,
        title=wrap.what,
        order=wrap.text,
        amount=f"{show(wrap.order, unit)} {unit.value}",
        width=wrap.roll_width,
        width_text=show(wrap.roll_width, unit),
        length=wrap.order,
        laid_out=wrap.laid_out,
        laid_out_text=show(wrap.laid_out, unit),
        pieces=tuple(
            RollPiece(
                number=str(number),
                name=piece.name,
                cabinet=piece.cabinet,
                size=show_size(piece.across, piece.along, unit),
                seam=piece.seam,
                across=piece.across,
                along=piece.along,
                from_edge=piece.from_edge,
                from_end=piece.from_end,
            )
            for number, piece in enumerate(wrap.pieces, start=1)
        ),
        work=tuple(_work(wrap)),
    )


def _work(wrap: WrapPlan) -> Iterator[str]:
    """Yield the order of work and of faces. Common practice, no source."""
    yield (
        "Mark the back of every piece with its number, its cabinet and an arrow up; cut them off "
        "the roll only then."
    )
    seam = next((piece.seam for piece in wrap.pieces if piece.seam_face), "")
    if seam:
        start = seam.partition(",")[0]
        yield (
            f"Band: begin {start} and go round all four faces; it ends there, over its own "
            "beginning."
        )
        yield (
            "Seam: cut through both layers of the overlap along a straight edge, take both strips "
            f"away, and press the edges together. It lies {start}."
        )
    elif wrap.what == "covering":
        yield "Bottom first, then the sides, then the top: what is seen most comes last."
    if wrap.what == "covering":
        yield (
            "Then turn in at the front and the rear; cut away the double layers at the corners, "
            "so that what slides in does not bind."
        )
        yield "Panels that are wrapped themselves come last, their corners thinned the same way."
    else:
        yield "Stretch it from the middle of each side outwards, threads straight, corners last."
