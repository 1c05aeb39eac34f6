"""Which panels of a finished cabinet show nowhere: a stain on one of them does no harm.

A panel is hidden where covering lies over its outside, or it stands wholly inside, and where the
cabinet is closed at both ends, so that nobody looks at what lies within. Whatever is open or bare
shows. A grille's cloth hides nothing: light falls through it.
"""

from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.construction import Construction
from nesting.cabinets.ends import CLOSED_BY, find_closings, find_end
from nesting.cabinets.families import Design
from nesting.cabinets.panels import Panel


def find_hidden_kinds(design: Design, construction: Construction) -> frozenset[str]:
    """Return the names of the parts of a cabinet whose every copy is hidden."""
    if not (_closes(design.baffle) and _closes(design.back)):
        return frozenset()
    shown = {panel.kind for panel in construction.shell if _shows(design, construction, panel)}
    return frozenset(panel.kind for panel in construction.panels) - shown


def _closes(closing: Closing | None) -> bool:
    return closing is not None and closing.fit is not Fit.NONE and not closing.gap


def _shows(design: Design, construction: Construction, panel: Panel) -> bool:
    """Return whether a panel of the outside is left bare."""
    if panel not in find_closings(construction):
        return design.covering is None
    is_front = CLOSED_BY[find_end(construction, panel)] == "baffle"
    closing = design.baffle if is_front else design.back
    return closing is None or not closing.wrapped
