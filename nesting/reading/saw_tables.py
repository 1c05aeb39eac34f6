"""The tables [saw] with [[saw.kerf_test]], [keep] and [time].

What is left out has a default: for the saw of an inch job one that can be read on an inch rule,
otherwise those of the records.
"""

from decimal import Decimal
from typing import Final

from nesting.lengths import Unit, inch, mm
from nesting.reading.tables import Table
from nesting.reading.values import with_unit
from nesting.saw import Face, Hand, Keep, KerfTest, Saw, SetWith, Times, mean_kerf

WIDEST_KERF: Final = mm(10)
WIDEST_BASE: Final = mm(500)
WIDEST_HELD: Final = mm(1000)
WIDEST_GUIDE: Final = mm(500)
MOST_TEST_CUTS: Final = 50
LONGEST_TEST: Final = mm(500)
KERF_STEP: Final = {Unit.MM: mm("0.1"), Unit.INCH: inch("0.005")}
MOST_MINUTES: Final = Decimal(600)
MOST_KG: Final = Decimal(200)

_INCH_SAW: Final = Saw(
    kerf=inch("3/32"),
    guide_length=inch(106),
    base_left=inch("1 1/2"),
    base_right=inch("5 1/8"),
    smallest_held=inch("2 3/8"),
    guide_width=inch(4),
)
_INCH_KEEP: Final = Keep(length=inch(12), width=inch(4))


def read_saw(table: Table) -> Saw:
    """Return the saw of the [saw] table."""
    usual = _INCH_SAW if table.unit is Unit.INCH else Saw()
    tests = _read_kerf_tests(table)
    saw = Saw(
        kerf=mean_kerf(tests, KERF_STEP[table.unit])
        if tests
        else table.length("kerf", usual.kerf, may_be_zero=True, most=WIDEST_KERF),
        guide_length=table.length("guide_length", usual.guide_length),
        base_left=table.length("base_left", usual.base_left, may_be_zero=True, most=WIDEST_BASE),
        base_right=table.length("base_right", usual.base_right, may_be_zero=True, most=WIDEST_BASE),
        marked_face=table.choice("marked_face", Face, usual.marked_face),
        hand=table.choice("hand", Hand, usual.hand),
        set_with=table.choice("set_with", SetWith, usual.set_with),
        lift_limit_kg=table.number(
            "lift_limit_kg", usual.lift_limit_kg, least=Decimal(1), most=MOST_KG
        ),
        smallest_held=table.length(
            "smallest_held", usual.smallest_held, may_be_zero=True, most=WIDEST_HELD
        ),
        guide_width=table.length("guide_width", usual.guide_width, most=WIDEST_GUIDE),
        kerf_tests=tests,
    )
    table.finish()
    return saw


def _read_kerf_tests(table: Table) -> tuple[KerfTest, ...]:
    """Return the [[saw.kerf_test]] tables that can be used."""
    has_kerf, inner = table.has("kerf"), table.tables("kerf_test")
    if has_kerf and inner:
        table.fault(
            "'kerf' is given, and tests of it too",
            "Take 'kerf' out: it is worked out from the tests. Or take the tests out.",
            "kerf",
            names_key=False,
        )
    return tuple(test for test in map(_read_kerf_test, inner) if test is not None)


def _read_kerf_test(table: Table) -> KerfTest | None:
    test = KerfTest(
        cuts=table.whole("cuts", least=1, most=MOST_TEST_CUTS),
        missing=table.length("missing", most=LONGEST_TEST),
    )
    table.finish()
    if table.is_sound and test.kerf > WIDEST_KERF:
        table.fault(
            f"that is more than {with_unit(WIDEST_KERF, table.unit)} a cut",
            "Give what all cuts together took away, and how many there were.",
            "missing",
        )
    return test if table.is_sound else None


def read_keep(table: Table) -> Keep:
    """Return which leftovers are kept, from the [keep] table."""
    usual = _INCH_KEEP if table.unit is Unit.INCH else Keep()
    keep = Keep(
        length=table.length("length", usual.length, may_be_zero=True),
        width=table.length("width", usual.width, may_be_zero=True),
        use_book=table.flag("use_book"),
    )
    table.finish()
    if table.is_sound and keep.length < keep.width:
        table.fault(
            "the length is less than the width",
            "Give the smallest longer side as length and the smallest shorter side as width.",
        )
    return keep


def read_times(table: Table) -> Times:
    """Return the minutes of work of the [time] table."""
    usual = Times()
    times = Times(
        setting=table.number("setting", usual.setting, most=MOST_MINUTES),
        cut=table.number("cut", usual.cut, most=MOST_MINUTES),
        metre=table.number("metre", usual.metre, most=MOST_MINUTES),
        lift=table.number("lift", usual.lift, most=MOST_MINUTES),
        turn=table.number("turn", usual.turn, most=MOST_MINUTES),
    )
    table.finish()
    return times
