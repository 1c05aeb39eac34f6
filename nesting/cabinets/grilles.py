"""Grilles: a frame covered with cloth in the recess before the baffle."""

from collections.abc import Iterator

from nesting.cabinets.carcass import Carcass, rounded_down
from nesting.cabinets.closing_design import Covering
from nesting.cabinets.closings import clear_ends, list_clearance
from nesting.cabinets.design import Battens, Corners
from nesting.cabinets.frames import Frame
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Term, add, list_terms
from nesting.cabinets.waiting import wait
from nesting.lengths import Length, Unit


def place_grille(carcass: Carcass, unit: Unit) -> Iterator[Frame]:
    """Yield the frame of the grille, if there is one; it rests on the face of the baffle.

    On each side the opening loses its lining and covering, the cloth on the frame, the piping and
    the clearance; what the baffle loses besides on one side, the grille loses too.
    """
    grille = carcass.design.grille
    if grille is None:
        return
    covering = carcass.design.covering or Covering(thickness=0)
    own = [
        Term(length=grille.cloth, what="cloth"),
        Term(length=grille.piping, what="piping"),
    ]
    clear = tuple(term for term in list_clearance(covering, own) if term.length)
    extra = carcass.front.extra
    thin, wide = grille.section
    recess = add(carcass.front.before)
    status, oversize, _ = wait(carcass.design)
    yield Frame(
        name="grille frame",
        battens=Battens(section=grille.section, corners=Corners.MITRED),
        across=rounded_down(carcass.across, *clear_ends(clear, extra, Axis.WIDTH)),
        upright=rounded_down(carcass.upright, *clear_ends(clear, extra, Axis.HEIGHT)),
        depth=(recess - thin, recess),
        set_back=list_terms(
            "behind the front edge",
            (Term(length=recess - thin, what="recess less the frame"),),
            unit,
        ),
        status=status,
        oversize=oversize,
        seen=wide,
    )


def find_recess_needed(carcass: Carcass) -> Length:
    """Return how deep the recess must be for the frame and the cloth on its face, 0 for none."""
    grille = carcass.design.grille
    return grille.section[0] + grille.cloth if grille else 0
