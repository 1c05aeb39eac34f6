"""Parts that are easily forgotten: asked for until the builder has said something about each.

Common practice, no source: what is not on the drawing is not bought.
"""

from collections.abc import Iterator
from enum import Enum

from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.holes import HoleKind
from nesting.cabinets.wedge_design import WedgeDesign


class HiddenPart(Enum):
    """A part that is easily forgotten; its value is the key of the answer."""

    FEET = "feet"
    GRILLE = "grille"
    HANDLES = "handles"
    PORT_RINGS = "port_rings"
    SPARE = "spare"


QUESTIONS = {
    HiddenPart.FEET: "Does it stand on feet, castors or skids? They add to its height.",
    HiddenPart.GRILLE: "Does a grille go before the baffle? It needs a frame, cloth and a recess.",
    HiddenPart.HANDLES: "How is it carried? Handles need holes, and sometimes boards behind them.",
    HiddenPart.PORT_RINGS: "Is there a port? Its rings or boards are parts too.",
    HiddenPart.SPARE: "Is one spare panel wanted, of the kind that is hardest to cut again?",
}


def ask_for_hidden_parts(design: BoxDesign | WedgeDesign) -> Iterator[str]:
    """Yield a question for each part that nothing is said about."""
    answered = {name for name, _ in design.answers} | {
        part.value for part in _find_designed(design)
    }
    for part in _list_possible(design):
        if part.value not in answered:
            yield (
                f'{QUESTIONS[part]} Answer with {part.value} = "..." under [cabinet.answers]; '
                '"none" will do.'
            )


def _find_designed(design: BoxDesign | WedgeDesign) -> Iterator[HiddenPart]:
    """Yield the parts that the design has already."""
    fittings = design.fittings
    kinds = {hole.kind for hole in fittings.holes}
    if fittings.hardware.feet:
        yield HiddenPart.FEET
    if fittings.cloth is not None or (isinstance(design, BoxDesign) and design.grille is not None):
        yield HiddenPart.GRILLE
    if fittings.hardware.handles or HoleKind.HANDLE in kinds:
        yield HiddenPart.HANDLES
    if HoleKind.PORT in kinds:
        yield HiddenPart.PORT_RINGS


def _list_possible(design: BoxDesign | WedgeDesign) -> Iterator[HiddenPart]:
    has_baffle = _is_there(design.baffle)
    yield HiddenPart.FEET
    if has_baffle:
        yield HiddenPart.GRILLE
        yield HiddenPart.HANDLES
    if has_baffle and _is_there(design.back):
        yield HiddenPart.PORT_RINGS
    yield HiddenPart.SPARE


def _is_there(closing: Closing | None) -> bool:
    return closing is not None and closing.fit is not Fit.NONE
