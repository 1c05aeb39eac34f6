from decimal import Decimal

from nesting.lengths import Unit, inch, mm
from nesting.reading.saw_tables import read_keep, read_saw, read_times
from nesting.saw import Face, Hand, Keep, Saw, SetWith, Times
from tests.nesting.reading.job_files import said, table


def test_a_saw_is_read_key_by_key() -> None:
    one = table(
        "kerf = 3.2\nguide_length = 1400\nbase_left = 30\nbase_right = 110\n"
        'marked_face = "front"\nlift_limit_kg = 15.5\nsmallest_held = 80\nguide_width = 140\n'
    )
    assert read_saw(one) == Saw(
        kerf=mm("3.2"),
        guide_length=mm(1400),
        base_left=mm(30),
        base_right=mm(110),
        marked_face=Face.FRONT,
        lift_limit_kg=Decimal("15.5"),
        smallest_held=mm(80),
        guide_width=mm(140),
    )
    assert said(one) == ""


def test_a_saw_that_is_not_described_is_the_usual_one() -> None:
    assert read_saw(table("")) == Saw()


def test_a_saw_of_an_inch_job_can_be_read_on_an_inch_rule() -> None:
    saw = read_saw(table("", Unit.INCH))
    lengths = (
        saw.kerf,
        saw.guide_length,
        saw.base_left,
        saw.base_right,
        saw.smallest_held,
        saw.guide_width,
    )
    assert [length % inch("1/32") for length in lengths] == [0] * 6
    usual = Saw()
    assert abs(saw.kerf - usual.kerf) < mm("0.1")
    assert abs(saw.guide_length - usual.guide_length) < mm(10)
    assert abs(saw.base_left - usual.base_left) < mm("0.5")
    assert abs(saw.base_right - usual.base_right) < mm("0.5")
    assert abs(saw.smallest_held - usual.smallest_held) < mm("0.5")


def test_a_kerf_of_zero_is_legal() -> None:
    one = table("kerf = 0")
    assert read_saw(one).kerf == 0
    assert said(one) == ""


def test_a_kerf_ten_times_too_wide_is_refused() -> None:
    one = table("[saw]\nkerf = 24\n").table("saw")
    read_saw(one)
    assert said(one) == (
        "job.toml, line 2, [saw], key 'kerf': '24' is more than 10 mm, too long to be meant.\n"
        "    kerf = 24\n"
        "           ^^\n"
        "Check the figures and the unit: bare numbers are in mm here."
    )


def test_all_faults_of_a_saw_are_told() -> None:
    one = table(
        '[saw]\nkerf = -1\nmarked_face = "good"\nlift_limit_kg = 0\nguide = 5\nguide_length = 0\n'
    ).table("saw")
    read_saw(one)
    assert said(one) == (
        "job.toml, line 2, [saw], key 'kerf': '-1' is negative.\n"
        "    kerf = -1\n"
        "           ^^\n"
        "Write a length of 0 or more.\n"
        "job.toml, line 3, [saw], key 'marked_face': 'good' is not one of the choices.\n"
        '    marked_face = "good"\n'
        "                  ^^^^^^\n"
        "Write 'front' or 'back'.\n"
        "job.toml, line 4, [saw], key 'lift_limit_kg': 0 is less than 1.\n"
        "    lift_limit_kg = 0\n"
        "                    ^\n"
        "Write a number of 1 or more.\n"
        "job.toml, line 5, [saw]: 'guide' is not known here.\n"
        "    guide = 5\n"
        "    ^^^^^\n"
        "Did you mean 'guide_width'? Known here: 'kerf', 'kerf_test', 'guide_length', "
        "'base_left', 'base_right', 'marked_face', 'hand', 'set_with', 'lift_limit_kg', "
        "'smallest_held' and 'guide_width'.\n"
        "job.toml, line 6, [saw], key 'guide_length': '0' is zero.\n"
        "    guide_length = 0\n"
        "                   ^\n"
        "Write a length of more than 0."
    )


def test_what_is_kept_is_read_or_usual() -> None:
    assert read_keep(table("length = 400\nwidth = 0")) == Keep(length=mm(400), width=0)
    assert read_keep(table("")) == Keep()
    assert read_keep(table("", Unit.INCH)) == Keep(length=inch(12), width=inch(4))


def test_a_longer_side_shorter_than_the_shorter_one_is_refused() -> None:
    one = table("[keep]\nlength = 100\nwidth = 300\n").table("keep")
    read_keep(one)
    assert said(one) == (
        "job.toml, line 1, [keep]: the length is less than the width.\n"
        "Give the smallest longer side as length and the smallest shorter side as width."
    )


def test_minutes_of_work_are_read_or_usual() -> None:
    one = table("setting = 3\ncut = 0\nmetre = 0.5\nlift = 2\nturn = 1.25\n")
    assert read_times(one) == Times(
        setting=Decimal(3),
        cut=Decimal(0),
        metre=Decimal("0.5"),
        lift=Decimal(2),
        turn=Decimal("1.25"),
    )
    assert read_times(table("")) == Times()


def test_hours_instead_of_minutes_are_refused() -> None:
    one = table("[time]\ncut = 1000\nlifts = 1\n").table("time")
    read_times(one)
    assert said(one) == (
        "job.toml, line 2, [time], key 'cut': it is more than 600.\n"
        "    cut = 1000\n"
        "          ^^^^\n"
        "Check the figure.\n"
        "job.toml, line 3, [time]: 'lifts' is not known here.\n"
        "    lifts = 1\n"
        "    ^^^^^\n"
        "Did you mean 'lift'? Known here: 'setting', 'cut', 'metre', 'lift' and 'turn'."
    )


def test_the_hand_at_the_saw_is_right_unless_said() -> None:
    assert read_saw(table("")).hand is Hand.RIGHT
    assert read_saw(table('hand = "left"')).hand is Hand.LEFT


def test_blocks_set_the_guide_where_the_table_says_so() -> None:
    assert read_saw(table("")).set_with is SetWith.TAPE
    assert read_saw(table('set_with = "blocks"')).set_with is SetWith.BLOCKS
