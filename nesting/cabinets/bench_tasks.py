"""What is done to panels at the bench: joints, holes and T-nuts, and the screws of a step.

Common practice, no source.
"""

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field

from nesting.cabinets.closing_design import Closing, Covering
from nesting.cabinets.construction import Construction
from nesting.cabinets.ends import CLOSED_BY, find_end
from nesting.cabinets.fittings import AssemblyWishes, CarcassScrews, Hardware, Screws
from nesting.cabinets.fixings import FixingRow
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.holes import Fastener
from nesting.cabinets.panels import Panel
from nesting.lengths import Unit, format_length


@dataclass(frozen=True, slots=True, kw_only=True)
class AssemblyTask:
    """One step before it is known what it shuts out.

    Attributes:
        what: The step in a sentence.
        panels: Panels that stand after it.
        frames: Frames that stand after it.
        fitted: Holes that are filled after it.
        closes: The panel that it closes the cabinet with; empty for none.
    """

    what: str
    panels: tuple[str, ...] = ()
    frames: tuple[str, ...] = ()
    fitted: tuple[str, ...] = ()
    closes: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """What the order of assembly is worked out from.

    Attributes:
        construction: The cabinet.
        holes: Its holes.
        covering: What it is covered with, None for nothing.
        closings: What the design says of "baffle" and "back".
        wishes: What the order has to respect.
        hardware: What is screwed on at the end.
        screws: Its screws; None where they are not planned.
        rows: The screws joint by joint.
        unit: The unit of what is said.
    """

    construction: Construction
    holes: tuple[PlacedHole, ...]
    covering: Covering | None
    closings: dict[str, Closing | None]
    wishes: AssemblyWishes
    hardware: Hardware
    screws: Screws | None
    rows: tuple[FixingRow, ...]
    unit: Unit

    def find_closing(self, panel: Panel) -> Closing | None:
        """Return what the design says of a panel that closes an end."""
        return self.closings.get(CLOSED_BY[find_end(self.construction, panel)])


@dataclass(slots=True, kw_only=True)
class Bench:
    """The plan, and the tasks so far."""

    plan: Plan
    tasks: list[AssemblyTask] = field(default_factory=list)
    inside_is_done: bool = False

    def add(
        self,
        what: str,
        *,
        panels: tuple[str, ...] = (),
        frames: tuple[str, ...] = (),
        fitted: tuple[str, ...] = (),
        closes: str = "",
    ) -> None:
        """Append a step."""
        self.tasks.append(
            AssemblyTask(what=what, panels=panels, frames=frames, fitted=fitted, closes=closes)
        )


def cut_joints(bench: Bench) -> None:
    """Add the rebates, grooves and fingers that are cut while the panels still lie on the bench."""
    inner = [panel.name for panel in bench.plan.construction.inner]
    names: dict[str, dict[str, None]] = {}
    let_in: dict[str, None] = {}
    for panel in bench.plan.construction.panels:
        for cut in panel.cuts:
            holds = cut.what.removeprefix("groove for ")
            if holds in inner:
                let_in[holds] = None
            what = "grooves" if holds in inner else cut.what.replace("finger slot", "fingers")
            names.setdefault(what, {})[panel.name] = None
    for what, panels in names.items():
        said = f"grooves for {', '.join(let_in)}" if what == "grooves" else what
        bench.add(f"Cut the {said} in {', '.join(panels)}, and try it in a scrap first.")


def prepare(bench: Bench, panels: tuple[str, ...]) -> None:
    """Add the holes and T-nuts of panels that still lie on the bench."""
    for placed in bench.plan.holes:
        if placed.panel.name not in panels:
            continue
        bench.add(f"Cut the hole for the {placed.hole.name} in the {placed.panel.name}.")
        if placed.hole.fastener is Fastener.T_NUTS:
            bench.add(
                f"Pull in {placed.hole.bolts} T-nuts of the {placed.hole.name} on the "
                f"{placed.panel.name} with a bolt; do not hammer them."
            )
        if placed.hole.wall:
            bench.add(f"Glue the boards of the {placed.hole.name} behind the {placed.panel.name}.")


def finish_edges(bench: Bench) -> None:
    """Add what is done to the outside edges once the glue of the carcass is dry."""
    plan = bench.plan
    if plan.screws is None:
        return
    has_screws = any(row.kind == "carcass" for row in plan.rows)
    if has_screws and plan.screws.carcass is CarcassScrews.UNTIL_DRY:
        bench.add(
            "When the glue is dry, take the screws of the carcass out again, every one, and fill "
            "their holes: no cutter may meet a screw."
        )
    if plan.screws.round_over:
        radius = f"{format_length(plan.screws.round_over, plan.unit)} {plan.unit.value}"
        bench.add(f"Round the outside edges over, radius {radius}.")


def say_screws(plan: Plan, is_meant: Callable[[FixingRow], bool]) -> str:
    """Return " Drive 12 screws 40 mm." for the joints that are meant, empty where there are none.

    Args:
        plan: The plan.
        is_meant: Whether a joint's screws belong to the step.
    """
    counts: Counter[str] = Counter()
    for row in plan.rows:
        if is_meant(row):
            length = f"{format_length(row.length, plan.unit)} {plan.unit.value}"
            counts[length] += len(row.positions)
    if not counts:
        return ""
    listed = " and ".join(f"{count} screws {length}" for length, count in counts.items())
    return f" Drive {listed}."
