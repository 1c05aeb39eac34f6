"""The piece in hand, sawn from the drawing, against what the table and the layout say of it."""

import pytest

from nesting.lengths import Unit
from nesting.saw import Face
from plans.phone.held import held_pieces
from plans.plan import Plan
from plans.sections.codes import WASTE
from plans.sections.numbers import show_size
from tests.plans.phone.helpers import RANDOM, random_plan, two_cabinets_plan


@pytest.mark.parametrize("face", Face)
def test_every_piece_in_hand_has_the_size_of_its_row(face: Face) -> None:
    sizes_agree(two_cabinets_plan(face))


@pytest.mark.parametrize("seed", RANDOM)
def test_pieces_of_random_plans_have_the_sizes_of_their_rows(seed: int) -> None:
    sizes_agree(random_plan(seed))


def sizes_agree(plan: Plan) -> None:
    for view in plan.sheets:
        lies = {part.code: part.rect for part in view.parts}
        lies |= {rest.code: rest.rect for rest in view.rests if rest.code != WASTE}
        for held in held_pieces(view):
            row = held.row
            assert show_size(held.piece.length, held.piece.width, plan.unit) == row.hold_size
            for code, rect in ((row.keep_code, held.kept), (row.free_code, held.freed)):
                if code in lies:
                    assert rect == lies.pop(code)
        assert not lies or not view.rows


def test_seen_from_the_front_a_rip_keeps_the_piece_at_the_bottom() -> None:
    plan = two_cabinets_plan(Face.FRONT)
    assert plan.unit is Unit.MM
    held = next(
        one
        for one in held_pieces(plan.sheets[0])
        if one.row.measure_from == "bottom edge" and not one.cut.is_trim
    )
    assert held.kept.y > held.freed.y
    assert held.kept.y + held.kept.width == held.piece.y + held.piece.width
