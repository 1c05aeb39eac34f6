"""The read-aloud sheet: figures sign by sign, and no code that is another one upside-down."""

import re

import pytest

from nesting.saw import Face
from plans.sections.codes import WASTE
from plans.sections.read_aloud import make_spoken, spell, spell_code, underlined_signs
from tests.plans.phone.helpers import RANDOM, random_plan, two_cabinets_plan

# Signs that look like another one when turned by 180 degrees (from memory).
TURNED = {"0": "0", "1": "1", "6": "9", "8": "8", "9": "6", "S": "S", "H": "H", "N": "N", "Z": "Z"}


def unspell(spoken: str) -> str:
    """Return the figure that a listener writes down."""
    words = spoken.replace(" and ", " ").replace(" over ", "/").replace(" point ", ".")
    return words.replace("-", "")


def test_a_cut_is_read_as_the_table_says() -> None:
    spoken = make_spoken(two_cabinets_plan().sheets[0])
    assert spoken[0].number == "cut 1"
    assert spoken[0].keep == "trim 1-0, from the top edge"
    assert spoken[0].guide == "guide right 1-4-0"
    assert spoken[0].gives == "gives P-1, and waste falls free"


@pytest.mark.parametrize("seed", RANDOM)
def test_what_is_heard_is_what_is_printed(seed: int) -> None:
    for view in random_plan(seed).sheets:
        for row, spoken in zip(view.rows, make_spoken(view), strict=True):
            verb, _, rest = spoken.keep.partition(" ")
            figure, _, edge = rest.partition(", from the ")
            heard = unspell(figure)
            assert (f"trim {heard}" if verb == "trim" else heard) == row.keep
            assert edge == row.measure_from
            assert spoken.hold.removeprefix("take ").replace("-", "") == row.hold
            assert unspell(spoken.number.removeprefix("cut ")) == row.number


@pytest.mark.parametrize("seed", RANDOM)
def test_only_figures_that_can_be_used_are_read_and_a_setting_only_once(seed: int) -> None:
    for view in random_plan(seed).sheets:
        for row, spoken in zip(view.rows, make_spoken(view), strict=True):
            if row.same_as:
                assert spoken.guide == f"guide stays as in cut {spell(row.same_as)}"
                continue
            said = dict(re.findall(r"(left|right) ([^,]+)", spoken.guide))
            heard = {side: unspell(figure) for side, figure in said.items()}
            usable = {"left": row.guide_left, "right": row.guide_right}
            for side in ("left", "right"):
                if row.unusable in (side, "both"):
                    del usable[side]
            assert heard == usable


@pytest.mark.parametrize("seed", RANDOM)
def test_no_code_upside_down_is_another_code_of_the_plan(seed: int) -> None:
    codes = {
        code
        for view in random_plan(seed).sheets
        for row in view.rows
        for code in (row.hold, row.keep_code, row.free_code)
        if code not in ("", WASTE)
    }
    for code in codes:
        turned = "".join(TURNED.get(sign, "?") for sign in reversed(code))
        assert turned == code or turned not in codes


def test_every_6_and_9_of_a_line_is_underlined() -> None:
    line = make_spoken(two_cabinets_plan(Face.BACK).sheets[0])[8].number
    assert line == "cut 9"
    assert [line[place] for place in underlined_signs(line)] == ["9"]
    assert underlined_signs(spell("1696.4")) == (2, 4, 6)


def test_codes_are_read_sign_by_sign() -> None:
    assert [spell_code(code) for code in ("A16", "L2", WASTE)] == ["A-1-6", "L-2", "waste"]
