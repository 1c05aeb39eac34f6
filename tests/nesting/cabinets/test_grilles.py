"""Grilles: the full stack of layers, each side separately."""

import pytest

from nesting.cabinets.closing_design import Closing, Covering, Fit, Margins
from nesting.cabinets.shelving import Grille
from nesting.errors import InputError
from nesting.lengths import mm
from tests.nesting.cabinets.designs import build, design, lay_out

GRILLE = Grille(section=(mm(12), mm(20)), cloth=mm("0.5"), piping=mm(3))
BAFFLE = Closing(fit=Fit.INSET, set_back=mm(15), wrapped=False, held_by="glue")


def test_a_grille_loses_lining_wrap_cloth_piping_and_clearance_on_each_side() -> None:
    """Acceptance: panel = opening - stack left - stack right - 2 x ease, shown as a sum."""
    covered = design(
        baffle=BAFFLE,
        grille=GRILLE,
        covering=Covering(thickness=mm("1.2"), ease=mm(1), lining=mm("0.8")),
    )
    frame = {batten.name: batten for batten in build(covered).battens}
    assert frame["grille frame, across, ends mitred"].sums == (
        (
            "451.5 = 464.6 - 6.5 - 6.5 (451.6, rounded down to 0.5); "
            "opening 464.6 = 500 - 17.7 - 17.7; each side 6.5 = 0.8 lining + 1.2 covering + "
            "0.5 cloth + 3 piping + 1 clearance"
        ),
        "behind the front edge 3 = 3 recess less the frame",
    )


def test_without_covering_only_the_grilles_own_layers_and_clearance_count() -> None:
    bare = build(design(baffle=BAFFLE, grille=GRILLE), step=mm("0.1"))
    across = next(batten for batten in bare.battens if "across" in batten.name)
    assert across.length == mm("464.6") - 2 * (mm("0.5") + mm(3) + mm(1))


def test_a_seam_on_one_side_counts_on_that_side_only() -> None:
    seamed = Closing(fit=Fit.INSET, set_back=mm(15), wrapped=False, extra=Margins(bottom=mm("1.2")))
    covering = Covering(thickness=mm("1.2"))
    built = build(design(baffle=seamed, grille=GRILLE, covering=covering))
    baffle = next(part for part in built.parts if part.name == "Baffle")
    assert baffle.sums[0] == (
        "559 = 564.6 - 3.4 - 2.2; opening 564.6 = 600 - 17.7 - 17.7; "
        "bottom 3.4 = 1.2 covering + 1 clearance + 1.2 more at the bottom; "
        "top 2.2 = 1.2 covering + 1 clearance"
    )
    upright = next(batten for batten in built.battens if "upright" in batten.name)
    assert "bottom 6.9 = " in upright.sums[0]
    assert "top 5.7 = " in upright.sums[0]


def test_the_frame_rests_on_the_baffle_and_stays_behind_the_front_edge() -> None:
    laid = lay_out(design(baffle=BAFFLE, grille=GRILLE))
    assert {(bar.box.low[1], bar.box.high[1]) for bar in laid.bars} == {(mm(3), mm(15))}


@pytest.mark.parametrize(
    ("changed", "message"),
    [
        (
            {"baffle": Closing(fit=Fit.INSET, set_back=mm(10)), "grille": GRILLE},
            "frame and cloth are 12.5 mm thick, the recess before the baffle is 10 deep",
        ),
        (
            {"baffle": BAFFLE, "grille": Grille(section=(mm(12), mm(240)), cloth=0)},
            "its frame fills the opening",
        ),
        (
            {"baffle": Closing(fit=Fit.PLANTED), "grille": GRILLE},
            "it stands in the recess before an inset baffle, and there is none",
        ),
    ],
)
def test_a_grille_that_has_no_place_is_refused(changed: dict[str, object], message: str) -> None:
    with pytest.raises(InputError) as error:
        build(design(**changed))
    assert error.value.faults[0].what == message
