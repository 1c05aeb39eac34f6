"""Cautions: in full once, and as a short line where the hazard is.

A plan is a drawing, not training. No caution says that something is safe.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.fit_out import Hazard
from nesting.cut_sequence import is_over_limit
from plans.sections.worked import Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution.

    Attributes:
        topic: One or two words, such as "Support".
        full: The note on the safety page, own words.
        short: The line at the step.
        where: Which pages carry the short line: any of "overview", "work", "shopping", "sheet",
            "frame", "holes", "covering".
        defer_to: Who or what decides, such as "your saw's manual".
    """

    topic: str
    full: str
    short: str
    where: frozenset[str]
    defer_to: str


_MANUAL = "your saw's manual"


def make_cautions(worked: Worked) -> tuple[Caution, ...]:
    """Return the cautions that apply to this plan, those at the saw first."""
    return (*_at_the_saw(), _mass(worked), *_around_the_work(worked), *_of_the_design(worked))


def _at_the_saw() -> Iterator[Caution]:
    yield Caution(
        topic="Support",
        full="Lay supports close to the line on both sides of every cut, so that neither piece "
        "sags. A kerf that closes grips the blade and throws the saw back.",
        short="Support both sides; the kerf must not close.",
        where=frozenset({"sheet"}),
        defer_to=_MANUAL,
    )
    yield Caution(
        topic="Holding",
        full="Clamp the work. Never hold it in the hand or over the knee, and keep both hands out "
        "of the line of the cut. Cut a piece that is too small to clamp with a hand saw.",
        short="Clamp it; hands out of the line of the cut.",
        where=frozenset({"sheet"}),
        defer_to=_MANUAL,
    )
    yield Caution(
        topic="Guards",
        full="Guards on and moving freely, blade sharp and made for sheet material. Pull the plug "
        "or take the battery out before anything is changed or set. If the saw stalls, let go of "
        "the switch, disconnect it and find the cause.",
        short="Unplug before setting anything.",
        where=frozenset({"sheet"}),
        defer_to=_MANUAL,
    )
    yield Caution(
        topic="Blade depth",
        full="Set the depth of the blade as your saw's manual says.",
        short="Blade depth as your saw's manual says.",
        where=frozenset({"sheet"}),
        defer_to=_MANUAL,
    )
    yield Caution(
        topic="Left hand",
        full="Many circular saws are built for the right hand. Held in the left, the blade, the "
        "dust and the guard are on another side; take more care, or ask for a saw that suits.",
        short="Left-handed: see the safety page.",
        where=frozenset(),
        defer_to="your saw's manual and your dealer",
    )


def _mass(worked: Worked) -> Caution:
    job = worked.job
    heavy = any(
        is_over_limit(job, sheet.sheet, step.piece)
        for sheet in worked.sheets
        for step in sheet.sequence.steps
    )
    short = (
        f"TWO PEOPLE for every piece over {job.saw.lift_limit_kg} kg."
        if heavy
        else "A sheet is awkward to carry; ask for help."
    )
    return Caution(
        topic="Mass",
        full="The mass of every sheet and piece is worked out from usual densities, so weigh what "
        f"seems heavier. Above the {job.saw.lift_limit_kg} kg that you set, the plan says TWO "
        "PEOPLE. No such figure is a limit for everybody, and a wide sheet is worse than a "
        "compact load of the same mass.",
        short=short,
        where=frozenset({"sheet", "shopping"}),
        defer_to="national guidance on lifting, and your own health",
    )


def _around_the_work(worked: Worked) -> Iterator[Caution]:
    yield Caution(
        topic="Dust, eyes, ears",
        full="Wood dust can cause cancer. Take it away at the tool and wear a mask that seals, "
        "with glasses and ear protection. Treated or coated boards have dangers of their own.",
        short="Glasses, ears, mask, extraction.",
        where=frozenset({"sheet", "holes"}),
        defer_to="national health guidance and the maker's data sheet of the board",
    )
    yield Caution(
        topic="Tiredness",
        full="Stop when tired or hurried. One more cut at the end of the day is where mistakes "
        "and injuries happen.",
        short="Tired? Stop here.",
        where=frozenset({"sheet", "work"}),
        defer_to="yourself",
    )
    if worked.job.terms.evening is not None:
        yield Caution(
            topic="Noise",
            full="A saw is heard through walls. Ask at which hours you may use one, and whether "
            "at all on a balcony or a shared drive. The minutes of this plan are an estimate.",
            short="Saw only where and when noise is allowed.",
            where=frozenset({"work"}),
            defer_to="the local by-laws and your landlord",
        )
    yield Caution(
        topic="Mains",
        full="Unroll the extension lead fully; use a residual-current device outdoors; keep the "
        "lead away from the blade. Mains wiring inside anything you build is no part of this plan.",
        short="Lead unrolled and clear of the blade.",
        where=frozenset({"overview"}),
        defer_to="a licensed electrician and the national wiring rules",
    )


def _of_the_design(worked: Worked) -> Iterator[Caution]:
    hazards = {
        hazard
        for build in worked.job.cabinets
        for hazard in (build.fit_out.hazards if build.fit_out else ())
    }
    yield from _of_the_bench(hazards)
    if worked.job.cabinets:
        yield Caution(
            topic="Hanging",
            full="Never hang a home-made box from handles or from bolts added to it. A stand or a "
            "stack of boxes can fall as well. This plan proves no strength.",
            short="Never hang it from its handles.",
            where=frozenset({"overview", "holes"} if Hazard.HANGING in hazards else {"overview"}),
            defer_to="a qualified rigger or structural engineer",
        )
    yield Caution(
        topic="Strength",
        full="This plan says how to cut, not what the result will carry. Anything that somebody "
        "may climb on, sit under or lean against needs a proof of its own.",
        short="No load is rated here.",
        where=frozenset({"overview"}),
        defer_to="a competent person and the local building rules",
    )


def _of_the_bench(hazards: set[Hazard]) -> Iterator[Caution]:
    """Yield what holes, edges, wires and covering ask for."""
    if Hazard.CIRCLES in hazards:
        yield Caution(
            topic="Circles",
            full="Cut a circle in several shallow passes. Never let the disc come free with the "
            "pivot on it: leave a little standing, or fix the disc to what lies below, and finish "
            "by hand. Clamp the panel down.",
            short="Circles in shallow passes; fix the disc before the last one.",
            where=frozenset({"holes"}),
            defer_to="the manual of the router or saw",
        )
    if Hazard.ROUTER in hazards:
        yield Caution(
            topic="Router",
            full="Both hands on the router, against the turn of the cutter, the cutter as far in "
            "the collet as its maker says. No screw may stand in its way. Pull the plug before the "
            "cutter is changed. Its dust is fine: take it away at the tool, and wear the mask.",
            short="Router: look for screws in its way; unplug to change the cutter; mask on.",
            where=frozenset({"holes", "frame"}),
            defer_to="the manual of the router",
        )
    if Hazard.SOLVENTS in hazards:
        yield Caution(
            topic="Solvents",
            full="The vapour of contact adhesive and other solvents burns and numbs. No flame, "
            "spark, pilot light or heater; windows open on two sides; the tin shut between coats; "
            "rags spread out to dry in the open.",
            short="Solvents: air through the room, no flame, no spark, no heater.",
            where=frozenset({"covering"}),
            defer_to="the data sheet of the adhesive",
        )
    if Hazard.MAINS in hazards:
        yield Caution(
            topic="Connector",
            full="The hole for a connector or a cable is all that this plan says of wiring. "
            "Whatever is joined to the mains is planned, made and tested by somebody qualified.",
            short="Connectors: mains wiring is no part of this plan.",
            where=frozenset({"holes"}),
            defer_to="a licensed electrician and the national wiring rules",
        )
