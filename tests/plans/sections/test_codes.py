"""Codes of parts, pieces and offcuts."""

from dataclasses import replace

from nesting.cabinets.letters import USABLE_LETTERS
from nesting.cut_sequence import order_cuts
from nesting.layout import Place, Rect, RestLeaf
from nesting.parts import Part
from plans.sections.codes import Freed, assign_codes, part_codes, turned_readings
from plans.sections.worked import work_out
from tests.nesting.hand_made import job, part, two_cabinets

# What signs look like when the page is upside-down, as used for words on pocket calculators:
# 3 E, 7 L, 5 S, 6 9, and 0 1 2 8 stay (from memory; no source).
UPSIDE_DOWN = {"0": "0", "1": "1", "2": "2", "3": "E", "5": "S5", "6": "9", "7": "L", "8": "8"}
UPSIDE_DOWN |= {"9": "6", "E": "3", "L": "7", "S": "5"}


def readings(code: str) -> list[str]:
    found = [""]
    for sign in reversed(code):
        found = [text + other for text in found for other in UPSIDE_DOWN.get(sign, "?")]
    return found


def kinds(count: int, cabinet: str = "", copies: int = 1) -> list[Part]:
    return [
        replace(part(f"Kind {number}", 100, 50, copies), cabinet=cabinet) for number in range(count)
    ]


def offcut_codes(count: int) -> list[str]:
    root = Rect(x=0, y=0, length=1, width=1)
    freed = [
        Freed(cut=1, place=Place(path=(number,), node=RestLeaf(is_offcut=True), rect=root))
        for number in range(count)
    ]
    return [code for path, code in assign_codes(job(), [freed]).by_path[0].items() if path]


def test_plain_kinds_have_a_letter_each_and_skip_those_of_cabinets() -> None:
    parts = [*kinds(2, copies=2), *kinds(1, cabinet="A"), *kinds(1, cabinet="C")]
    assert list(part_codes(parts)) == [("B1", "B2"), ("D1", "D2"), ("A1",), ("C1",)]


def test_the_parts_of_a_cabinet_run_on_under_its_letter() -> None:
    parts = [*kinds(2, cabinet="A", copies=2), *kinds(1, cabinet="B"), *kinds(1, cabinet="A")]
    assert list(part_codes(parts)) == [("A1", "A2"), ("A3", "A4"), ("B1",), ("A5",)]


def test_after_thirteen_kinds_letters_are_doubled() -> None:
    assert [codes[0] for codes in part_codes(kinds(15))][-3:] == ["Y1", "AA1", "AB1"]


def test_five_hundred_codes_are_different() -> None:
    parts = [*kinds(40, copies=10), *kinds(20, cabinet="E", copies=5)]
    codes = [code for of_kind in part_codes(parts) for code in of_kind]
    assert len(codes) == len(set(codes)) == 500


def test_no_code_reads_as_another_one_upside_down() -> None:
    parts = [replace(part("Part", 100, 50, 400), cabinet=letter) for letter in USABLE_LETTERS]
    doubled = [replace(part("Part", 100, 50, 400), cabinet=letter * 2) for letter in "AE"]
    codes = {code for of_kind in part_codes([*parts, *doubled]) for code in of_kind}
    codes |= {f"P{figure}" for figure in range(1, 400)}
    codes |= {f"S{figure}" for figure in range(1, 60)}  # S65 and S95 are too many sheets
    codes |= set(offcut_codes(400))
    turned = {code: set(readings(code)) & codes - {code} for code in codes}
    assert {code: others for code, others in turned.items() if others} == {}


def test_a_code_that_would_read_as_an_offcut_is_left_out() -> None:
    assert turned_readings("E7") == ("L3",)
    codes = next(part_codes(kinds(1, cabinet="E", copies=8)))
    assert codes == ("E1", "E2", "E3", "E4", "E6", "E8", "E9", "E10")


def test_codes_follow_the_order_of_cutting_within_a_kind() -> None:
    made, layout = two_cabinets()
    worked = work_out(made, layout, tuple(order_cuts(made, sheet) for sheet in layout.sheets))
    for letter in "ABC":
        codes = [
            code
            for freed in worked.sheets[0].freed
            if (code := worked.sheets[0].codes[freed.place.path])[0] == letter
        ]
        assert codes == [f"{letter}{figure}" for figure in range(1, len(codes) + 1)]


def test_every_piece_of_the_plan_has_a_code_of_its_own() -> None:
    made, layout = two_cabinets()
    twice = replace(layout, sheets=layout.sheets * 2)
    double = replace(made, parts=tuple(replace(kind, count=kind.count * 2) for kind in made.parts))
    worked = work_out(double, twice, tuple(order_cuts(double, sheet) for sheet in twice.sheets))
    codes = [code for sheet in worked.sheets for code in sheet.codes.values() if code != "WASTE"]
    assert len(codes) == len(set(codes))
    assert {"S1", "S2"} < set(codes)
    pieces = sorted(int(code[1:]) for code in codes if code[0] == "P")
    assert pieces == list(range(1, len(pieces) + 1))
