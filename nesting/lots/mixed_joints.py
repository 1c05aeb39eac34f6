"""Lots: parts that meet in one joint, but come from sheets of different thickness.

A groove set on one sheet does not fit a part from another one. Readings belong to the stock that
they stand with in the job file, or to the single sheet once it has been measured in the garage.
"""

from collections import defaultdict
from dataclasses import dataclass
from itertools import product

from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.contacts import find_contacts
from nesting.job import Job
from nesting.layout import Layout, list_parts
from nesting.lengths import Length, mm
from nesting.sheets import Sheet

SAME_LOT = mm("0.2")
"""Sheets whose mean thickness differs by more belong to different lots (judgement)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MixedJoint:
    """A joint whose two parts may come from different lots.

    Attributes:
        cabinet: Letter of the cabinet.
        parts: Names of the parts that meet.
        stocks: Names of the sheets that they come from.
        thicknesses: Mean readings of these sheets.
    """

    cabinet: str
    parts: tuple[str, str]
    stocks: tuple[str, str]
    thicknesses: tuple[Length, Length]


def find_mixed_joints(
    job: Job, layout: Layout, *, limit: Length = SAME_LOT
) -> tuple[MixedJoint, ...]:
    """Return every joint of two parts of one board that come from sheets too different.

    Parts of one kind are interchangeable, so that a joint counts where any copy that may stand in
    it comes from such a sheet. Sheets without readings are not compared.

    Args:
        job: The job.
        layout: Where its parts come from.
        limit: By how much the means of two sheets may differ.
    """
    sources = _sources(job, layout)
    found: dict[MixedJoint, None] = {}
    for build in job.cabinets:
        joints = list_joints(build)
        for letter in build.letters:
            for first, second in joints:
                pairs = product(sources[letter, first], sources[letter, second])
                for one, other in pairs:
                    sheets = job.sheets[one], job.sheets[other]
                    if not are_of_one_lot(*sheets, limit=limit):
                        joint = MixedJoint(
                            cabinet=letter,
                            parts=(first, second),
                            stocks=(sheets[0].name, sheets[1].name),
                            thicknesses=(sheets[0].real_thickness, sheets[1].real_thickness),
                        )
                        found[joint] = None
    return tuple(found)


def _sources(job: Job, layout: Layout) -> dict[tuple[str, str], list[int]]:
    """Return for cabinet and name of a part the kinds of sheet that its copies come from."""
    sources: defaultdict[tuple[str, str], list[int]] = defaultdict(list)
    for sheet in layout.sheets:
        for leaf in list_parts(sheet.root):
            part = job.parts[leaf.part]
            kinds = sources[part.cabinet, part.name]
            if sheet.sheet not in kinds:
                kinds.append(sheet.sheet)
    return sources


def are_of_one_lot(one: Sheet, other: Sheet, *, limit: Length = SAME_LOT) -> bool:
    """Return whether two sheets are as thick as each other, as far as both were measured.

    Sheets of different boards are never joined as one: nothing is said of them.
    """
    is_measured = one.measured and other.measured
    is_one_board = (one.material, one.thickness) == (other.material, other.thickness)
    far = abs(one.real_thickness - other.real_thickness) > limit
    return not (is_measured and is_one_board and far)


def list_joints(build: CabinetBuild) -> tuple[tuple[str, str], ...]:
    """Return the names of parts that touch in a cabinet, each pair once."""
    kinds = {panel.name: panel.kind for panel in build.panels}
    contacts = find_contacts((panel.name, panel.box) for panel in build.panels)
    return tuple(dict.fromkeys((kinds[each.first], kinds[each.second]) for each in contacts))
