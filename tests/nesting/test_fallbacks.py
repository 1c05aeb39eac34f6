"""What a spoilt part can become, checked by laying the smaller parts out one by one."""

from hypothesis import given
from hypothesis import strategies as st

from nesting.fallbacks import Blank, Fallback, find_fallbacks
from nesting.lengths import Length, mm
from nesting.parts import Grain
from nesting.sheets import SheetGrain

KERF = mm("2.4")


def blank(name: str, length: int, width: int, grain: Grain = Grain.ANY) -> Blank:
    return Blank(name=name, length=mm(length), width=mm(width), grain=grain)


def found(
    length: int | str, width: int | str, *blanks: Blank, **changes: bool
) -> list[tuple[str, int]]:
    results = find_fallbacks(mm(length), mm(width), SheetGrain.LENGTH, blanks, kerf=KERF, **changes)
    return [(each.name, each.count) for each in results]


def test_a_kerf_is_lost_in_both_directions() -> None:
    assert found("602.4", "302.4", blank("Shelf", 600, 300)) == [("Shelf", 1)]
    assert found("602.3", "302.4", blank("Shelf", 600, 300)) == []
    assert found("602.4", "302.3", blank("Shelf", 600, 300)) == []


def test_what_is_sound_loses_nothing() -> None:
    assert found(600, 300, blank("Shelf", 600, 300), is_spoilt=False) == [("Shelf", 1)]


def test_the_grain_decides_how_a_part_may_lie() -> None:
    assert found(700, 320, blank("Rail", 300, 600, Grain.LENGTH)) == []
    assert found(700, 320, blank("Rail", 300, 600, Grain.WIDTH)) == [("Rail", 1)]
    assert found(700, 320, blank("Rail", 600, 300, Grain.LENGTH)) == [("Rail", 1)]


def test_the_largest_part_comes_first() -> None:
    assert found(700, 320, blank("Cleat", 200, 60), blank("Rail", 600, 300)) == [
        ("Rail", 1),
        ("Cleat", 15),
    ]


sizes = st.integers(20, 400)


@given(length=sizes, width=sizes, along=sizes, across=sizes)
def test_what_is_counted_can_be_cut_and_one_more_row_cannot(
    length: int, width: int, along: int, across: int
) -> None:
    fixed = blank("Part", along, across, Grain.LENGTH)
    results = find_fallbacks(mm(length), mm(width), SheetGrain.LENGTH, [fixed], kerf=KERF)
    columns = in_a_row(mm(length) - KERF, mm(along))
    rows = in_a_row(mm(width) - KERF, mm(across))
    expected = (Fallback(name="Part", count=columns * rows),) if columns * rows else ()
    assert results == expected


def in_a_row(room: Length, size: Length) -> int:
    """Cut one after the other until no more comes off."""
    count = 0
    while room >= size:
        room -= size + KERF
        count += 1
    return count
