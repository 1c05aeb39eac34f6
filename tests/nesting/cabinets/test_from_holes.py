"""Parts from holes: which come out, what is left for the sheets, and when they are cut."""

from dataclasses import replace

import pytest

from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.fittings import Fittings
from nesting.cabinets.from_holes import offer_from_holes, take_plain
from nesting.cabinets.holes import Hole, HoleKind
from nesting.errors import InputError
from nesting.lengths import Unit, mm
from nesting.parts import Grain, Part
from tests.nesting.cabinets.designs import BIRCH, build
from tests.nesting.cabinets.fit_samples import FRAMED, woofer

WINDOW = Hole(
    name="handle", kind=HoleKind.HANDLE, panel="left side", window=(mm(200), mm(90)), gives="Cleat"
)


def cleat(length_mm: int = 100, width_mm: int = 60, **changes: object) -> Part:
    part = Part(
        name="Cleat",
        length=mm(length_mm),
        width=mm(width_mm),
        count=4,
        material=BIRCH.material,
        thickness=BIRCH.thickness,
    )
    return replace(part, **changes)  # type: ignore[arg-type]


def built(*holes: Hole, count: int = 1, wanted: BoxDesign = FRAMED) -> CabinetBuild:
    return build(replace(wanted, count=count, fittings=Fittings(holes=holes)))


def test_a_part_from_a_disc_is_not_cut_from_a_sheet() -> None:
    """Two cabinets with one such hole each: of four cleats two are left for the sheets."""
    (left,), after = take_plain([cleat()], built(woofer(gives="Cleat"), count=2), Unit.MM)
    assert left == cleat(count=2)
    assert [(each.cabinet, each.panel, each.part) for each in after.from_holes] == [
        ("A", "Baffle", cleat(count=1)),
        ("B", "Baffle", cleat(count=1)),
    ]


def test_the_last_copy_takes_the_part_off_the_list() -> None:
    left, after = take_plain([cleat(count=1)], built(woofer(gives="Cleat")), Unit.MM)
    assert left == ()
    assert len(after.from_holes) == 1


def test_the_part_is_cut_after_its_hole() -> None:
    """Acceptance: order puts the disc's parts after the hole."""
    _, after = take_plain([cleat()], built(woofer(gives="Cleat")), Unit.MM)
    assert after.fit_out is not None
    (sheet,) = after.fit_out.holes
    (hole,) = [place for place, step in enumerate(sheet.order) if step.startswith("Cut the hole")]
    (part,) = [place for place, step in enumerate(sheet.order) if "cut the Cleat" in step]
    assert hole < part
    assert sheet.order[part] == (
        "From the disc cut the Cleat, 100 × 60: beside its pivot hole, 3 off every edge of it, by "
        "hand or with a jigsaw, the disc clamped to the bench."
    )


def test_a_part_too_large_for_its_disc_is_refused() -> None:
    with pytest.raises(InputError, match="a piece of 200 × 60 does not come out of its disc"):
        take_plain(
            [
                cleat(200),
            ],
            built(woofer(cut_out=mm(200), bolt_circle=mm(220), flange=mm(240), gives="Cleat")),
            Unit.MM,
        )


def test_a_part_of_another_board_is_refused() -> None:
    with pytest.raises(InputError, match="not of the board that the baffle is cut from"):
        take_plain([cleat(thickness=mm(12))], built(woofer(gives="Cleat")), Unit.MM)


def test_more_parts_than_are_needed_are_refused() -> None:
    with pytest.raises(InputError, match="of which nothing is left to cut"):
        take_plain([cleat(count=1)], built(woofer(gives="Cleat"), count=2), Unit.MM)


def test_a_cabinet_takes_parts_of_its_own_too() -> None:
    """The upper board of a slot port comes out of the driver's hole."""
    slot = Hole(
        name="slot",
        kind=HoleKind.PORT,
        panel="back",
        window=(mm(60), mm(40)),
        depth=mm(60),
        wall=mm(18),
    )
    plain = built(slot, woofer())
    names = {part.name: part.count for part in plain.parts}
    taken = built(slot, woofer(gives="Board of the slot, left or right"))
    assert names["Board of the slot, left or right"] == 2
    (one,) = [part for part in taken.parts if part.name == "Board of the slot, left or right"]
    assert one.count == 1
    assert [each.part.name for each in taken.from_holes] == [one.name]


@pytest.mark.parametrize(
    ("length", "width", "grain", "fits"),
    [
        # The window leaves 200 - 22 by 90 - 22: 178 from front to rear, 68 up, grain upright.
        (178, 68, Grain.ANY, True),
        (68, 178, Grain.ANY, True),
        (178, 68, Grain.WIDTH, True),
        (178, 68, Grain.LENGTH, False),
        (68, 178, Grain.LENGTH, True),
        (179, 68, Grain.ANY, False),
    ],
)
def test_the_piece_of_a_window_keeps_its_grain(
    length: int, width: int, grain: Grain, *, fits: bool
) -> None:
    part = cleat(length, width, grain=grain)
    if fits:
        assert take_plain([part], built(WINDOW), Unit.MM)[1].from_holes
    else:
        with pytest.raises(InputError, match="does not come out of its piece"):
            take_plain([part], built(WINDOW), Unit.MM)


def test_what_would_come_out_is_offered_until_it_is_taken() -> None:
    (offer,) = offer_from_holes(built(woofer()), [cleat(), cleat(400, name="Rail")], Unit.MM)
    assert offer == (
        'Cleat would come out of the disc of the woofer: write gives = "Cleat" there, and no sheet '
        "is cut for it."
    )
    assert not list(offer_from_holes(built(woofer(gives="Cleat")), [cleat()], Unit.MM))
