"""Parts that stand opposite each other, or share a size, are rounded alike."""

from hypothesis import given
from hypothesis import strategies as st

from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.shelving import Shelves
from nesting.lengths import Length, inch, mm
from tests.nesting.cabinets.designs import box_designs, build, design

STEPS = [mm("0.1"), mm("0.5"), mm(1), inch(1) // 32]
THICKNESSES = st.integers(1680, 1920).map(lambda hundredths: hundredths * mm("0.01"))
PAIRS = [("left side", "right side"), ("top", "bottom")]


@given(
    wanted=box_designs(),
    thickness=THICKNESSES,
    step=st.sampled_from(STEPS),
)
def test_panels_opposite_each_other_have_the_same_size(
    wanted: BoxDesign, thickness: Length, step: Length
) -> None:
    built = build(wanted, thickness=thickness, step=step)
    sizes = {part.name: (part.length, part.width) for part in built.parts}
    kinds = {panel.name: panel.kind for panel in built.panels}
    for one, other in PAIRS:
        assert sizes[kinds[one]] == sizes[kinds[other]]


@given(
    wanted=box_designs(),
    thickness=THICKNESSES,
    step=st.sampled_from(STEPS),
)
def test_parts_that_must_match_share_a_size_to_the_last_figure(
    wanted: BoxDesign, thickness: Length, step: Length
) -> None:
    groups: dict[str, list[set[Length]]] = {}
    for part in build(wanted, thickness=thickness, step=step).parts:
        if part.match:
            groups.setdefault(part.match, []).append({part.blank_length, part.blank_width})
    assert groups
    assert all(set.intersection(*sizes) for sizes in groups.values())


@given(thickness=THICKNESSES, step=st.sampled_from(STEPS))
def test_a_left_and_a_right_side_of_their_own_kinds_are_rounded_alike(
    thickness: Length, step: Length
) -> None:
    shelves = Shelves(clear=(mm(100),), groove=mm(6), set_back=mm(15))
    wanted = design(baffle=Closing(fit=Fit.NONE), shelves=shelves)
    built = build(wanted, thickness=thickness, step=step)
    left, right = (part for part in built.parts if part.name in {"Side, left", "Side, right"})
    assert (left.length, left.width) == (right.length, right.width)
