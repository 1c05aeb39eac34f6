"""The plan: everything that is printed, as plain data."""

from dataclasses import dataclass

from nesting.lengths import Unit
from plans.sections.cautions import Caution
from plans.sections.labels import Label
from plans.sections.offcuts import OffcutRow
from plans.sections.overview import Overview
from plans.sections.part_list import PartRow
from plans.sections.sheet_view import SheetView
from plans.sections.shopping import Shopping


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """All sections of one printed plan.

    Attributes:
        job_name: Title of the job.
        unit: The one unit of all its pages.
        fingerprint: Code that changes with any size, position or figure; on every page.
        overview: First page.
        shopping: Second page.
        cautions: The notes that apply.
        sheets: One page or more each.
        parts: The parts list, by cabinet and code.
        labels: In the order of cutting.
        offcuts: What is left over.
    """

    job_name: str
    unit: Unit
    fingerprint: str
    overview: Overview
    shopping: Shopping
    cautions: tuple[Caution, ...]
    sheets: tuple[SheetView, ...]
    parts: tuple[PartRow, ...]
    labels: tuple[Label, ...]
    offcuts: tuple[OffcutRow, ...]
