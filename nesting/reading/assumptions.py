"""The numbers that a plan rests on, with how to check them before the first cut."""

from collections.abc import Iterator
from decimal import Decimal

from nesting.job import Assumption
from nesting.lengths import Length, Unit, format_length, inch, mm, round_to
from nesting.reading.plain_parts import ReadPart
from nesting.reading.tables import Table
from nesting.reading.values import with_unit
from nesting.saw import MOST_SPREAD, Face, Keep, Saw, Times, spread_of
from nesting.sheets import Sheet, SheetGrain, Trim

METRES_PER_FOOT = Decimal("0.3048")
CHECK_KERF = "Saw a scrap, push it together and measure what is missing."
SPREAD_STEP = {Unit.MM: mm("0.1"), Unit.INCH: inch("0.005")}
FROM_EDGE = {Unit.MM: "50 mm", Unit.INCH: "2 in"}  # where the thickness is read


def _assume_kerf(saw: Saw, table: Table) -> Assumption:
    """Return the kerf; where it was tested, from how many cuts, and whether the tests agree."""
    value, check = with_unit(saw.kerf, table.unit), CHECK_KERF
    if saw.kerf_tests:
        cuts = sum(test.cuts for test in saw.kerf_tests)
        value += f", the mean of {cuts} cut{'s' if cuts > 1 else ''}"
    if (spread := spread_of(saw.kerf_tests)) > MOST_SPREAD:
        differ = with_unit(round_to(spread, SPREAD_STEP[table.unit]), table.unit)
        check = (
            f"The tests differ by {differ} a cut: see that the guide stays, the blade runs true "
            "and all cuts are counted, and test again."
        )
    has_kerf = table.has("kerf") or bool(saw.kerf_tests)
    return Assumption(name="kerf", value=value, is_default=not has_kerf, check=check)


def assume_saw(saw: Saw, table: Table) -> Iterator[Assumption]:
    """Yield what the plan takes for granted about the saw, its guide and the person."""
    unit = table.unit
    yield _assume_kerf(saw, table)
    for key, name, length, check in (
        (
            "base_left",
            "left edge of the base plate to the kerf",
            saw.base_left,
            "Saw into a scrap along the guide and measure from the guide to the kerf.",
        ),
        (
            "base_right",
            "kerf to the right edge of the base plate",
            saw.base_right,
            "Saw into a scrap along the guide and measure from the kerf to the guide.",
        ),
        (
            "guide_length",
            "longest guided cut",
            saw.guide_length,
            "Measure the guide less what the base plate needs at both ends.",
        ),
        (
            "smallest_held",
            "narrowest piece that can be held",
            saw.smallest_held,
            "Clamp a piece this wide and look whether the base plate is carried.",
        ),
        (
            "guide_width",
            "width of the guide",
            saw.guide_width,
            "Measure from the edge that the saw runs along to the far edge, clamps included.",
        ),
    ):
        value = with_unit(length, unit)
        yield Assumption(name=name, value=value, is_default=not table.has(key), check=check)
    yield Assumption(
        name="marked face",
        value="good face up" if saw.marked_face is Face.FRONT else "good face down, back marked",
        is_default=not table.has("marked_face"),
        check="Saw a scrap and see on which face the edge is clean.",
        is_choice=True,
    )
    yield Assumption(
        name="hand at the saw",
        value=saw.hand.value,
        is_default=not table.has("hand"),
        check="Hold the saw as its manual shows, unplugged.",
        is_choice=True,
    )
    yield Assumption(
        name="one person lifts",
        value=f"{saw.lift_limit_kg:f} kg",
        is_default=not table.has("lift_limit_kg"),
        check="Lift a sheet by one corner; ask for help with more.",
    )


def assume_step(step: Length, table: Table) -> Assumption:
    """Return what sizes are rounded to."""
    return Assumption(
        name="sizes are rounded to",
        value=with_unit(step, table.unit),
        is_default=not table.has("step"),
        check="See that the rule shows it.",
        is_choice=True,
    )


def assume_keep(keep: Keep, table: Table) -> Assumption:
    """Return which leftovers are kept."""
    unit = table.unit
    return Assumption(
        name="smallest offcut worth keeping",
        value=f"{format_length(keep.length, unit)} × {with_unit(keep.width, unit)}",
        is_default=not (table.has("length") and table.has("width")),
        check="Think of what was made from leftovers before.",
        is_choice=True,
    )


def assume_times(times: Times, table: Table) -> Assumption:
    """Return the minutes that work is reckoned with."""
    run = f"{times.metre:f} a metre"
    if table.unit is Unit.INCH:
        run = f"{times.metre * METRES_PER_FOOT:.2f} a foot"
    return Assumption(
        name="minutes of work",
        value=f"{times.setting:f} a setting, {times.cut:f} a cut, {run}, "
        f"{times.lift:f} a lift, {times.turn:f} a turn",
        is_default=any(key not in table.values for key in Times.__dataclass_fields__),
        check="Time the first sheet.",
        is_choice=True,
    )


def assume_sheet(sheet: Sheet, table: Table) -> Iterator[Assumption]:
    """Yield what the plan takes for granted about one kind of sheet."""
    unit = table.unit
    thickness = f"{with_unit(sheet.thickness, unit)}, nominal"
    if sheet.measured:
        many = "1 reading" if len(sheet.measured) == 1 else f"{len(sheet.measured)} readings"
        thickness = f"{with_unit(sheet.real_thickness, unit)}, mean of {many}"
    yield Assumption(
        name=f"thickness of {sheet.name}",
        value=thickness,
        is_default=not sheet.measured,
        check=f"Measure each sheet at 8 points, {FROM_EDGE[unit]} from the edges at corners and "
        "mid-sides.",
    )
    yield Assumption(
        name=f"size of {sheet.name}",
        value=f"{format_length(sheet.length, unit)} × {with_unit(sheet.width, unit)}",
        is_default=False,
        check="Measure both sides at both ends, and both diagonals.",
    )
    grain = table.has("grain")
    yield Assumption(
        name=f"face grain of {sheet.name}",
        value={
            SheetGrain.LENGTH: f"along the length, {with_unit(sheet.length, unit)}",
            SheetGrain.WIDTH: f"along the width, {with_unit(sheet.width, unit)}",
            SheetGrain.NONE: "none",
        }[sheet.grain],
        is_default=not grain,
        check="Look along the face which side its lines follow.",
    )
    yield Assumption(
        name=f"trim of {sheet.name}",
        value=_trim_text(sheet.trim, table),
        is_default=_has_default_trim(table),
        check="Look for crushed edges, and lay a square on the corner to measure from.",
    )
    if not sheet.owned and not table.has("price"):
        yield Assumption(
            name=f"price of {sheet.name}",
            value="none given, reckoned as 0",
            is_default=True,
            check="Ask the yard, and write price into the job file.",
        )


def assume_grain(parts: list[ReadPart]) -> Iterator[Assumption]:
    """Yield that parts may be turned where nothing was said about their grain."""
    names = [read.part.name for read in parts if read.has_default_grain]
    if names:
        yield Assumption(
            name="grain of " + ", ".join(names),
            value="any: these parts may be turned",
            is_default=True,
            check="Write grain for each part whose look or strength depends on it.",
            is_choice=True,
        )


def _trim_text(trim: Trim, table: Table) -> str:
    sides = (trim.left, trim.right, trim.top, trim.bottom)
    if len(set(sides)) == 1:
        return f"{with_unit(trim.left, table.unit)} on each edge"
    names = ("left", "right", "top", "bottom")
    return ", ".join(
        f"{name} {with_unit(side, table.unit)}" for name, side in zip(names, sides, strict=True)
    )


def _has_default_trim(table: Table) -> bool:
    trim = table.values.get("trim")
    return trim is None or (isinstance(trim, dict) and len(trim) < len(Trim.__dataclass_fields__))
