from dataclasses import replace
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from nesting.lengths import mm
from nesting.sheets import SheetGrain, Trim
from plans.book.entries import Entry, Offcut, Rule, as_sheet, is_worth_keeping, list_to_throw

OFFCUT = Offcut(
    material="birch plywood",
    thickness=mm(18),
    measured=mm("17.7"),
    length=mm(600),
    width=mm(300),
    grain=SheetGrain.WIDTH,
    good_edges=("left", "bottom"),
    added="2026-05-01",
)


def entry(number: int, added: str, length: int, width: int, holder: str = "") -> Entry:
    offcut = replace(OFFCUT, length=mm(length), width=mm(width), added=added)
    return Entry(number=number, offcut=offcut, holder=holder)


entries = st.lists(
    st.builds(
        entry,
        st.integers(1, 99),
        st.sampled_from(["2026-01-01", "2026-03-02", "2026-03-01"]),
        st.integers(300, 2000),
        st.integers(100, 1000),
        st.sampled_from(["", "", "job.toml"]),
    ),
    max_size=12,
    unique_by=lambda found: found.number,
)


def test_the_rule_looks_at_the_longer_and_the_shorter_side() -> None:
    rule = Rule(length=mm(300), width=mm(100))
    assert is_worth_keeping(rule, mm(100), mm(300))
    assert not is_worth_keeping(rule, mm(299), mm(299))
    assert not is_worth_keeping(rule, mm("99.9"), mm(2440))


def test_the_oldest_goes_first_and_of_one_day_the_smallest() -> None:
    shelf = [
        entry(1, "2026-03-01", 1000, 1000),
        entry(2, "2026-01-01", 1000, 900),
        entry(3, "2026-01-01", 1000, 800),
    ]
    thrown = list_to_throw(Rule(space_m2=Decimal("1.2")), shelf)
    assert [found.number for found in thrown] == [3, 2]


@given(shelf=entries, room=st.decimals(0, 8, places=2))
def test_what_stays_has_room_and_nothing_is_thrown_in_vain(
    shelf: list[Entry], room: Decimal
) -> None:
    thrown = list_to_throw(Rule(space_m2=room), shelf)
    assert thrown == list_to_throw(Rule(space_m2=room), shelf[::-1])
    stays = sum(found.area for found in shelf if found not in thrown)
    has_room = stays <= room * mm(1000) ** 2
    assert has_room or all(found.holder or found in thrown for found in shelf)
    if thrown:
        assert stays + thrown[-1].area > room * mm(1000) ** 2
    assert not any(found.holder for found in thrown)


def test_without_a_limit_nothing_is_thrown() -> None:
    assert list_to_throw(Rule(), [entry(1, "2026-01-01", 2000, 1000)]) == ()


def test_an_entry_is_a_sheet_with_its_thickness_grain_and_good_edges() -> None:
    sheet = as_sheet(Entry(number=12, offcut=OFFCUT), mm(10))
    assert (sheet.name, sheet.count, sheet.owned) == ("offcut 12 of the book", 1, True)
    assert (sheet.real_thickness, sheet.grain) == (mm("17.7"), SheetGrain.WIDTH)
    assert sheet.trim == Trim(left=0, right=mm(10), top=mm(10), bottom=0)
