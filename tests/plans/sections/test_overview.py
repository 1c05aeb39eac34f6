"""The first page, and the reason given on every sheet."""

from dataclasses import replace
from itertools import pairwise

from nesting.cabinets.build import CabinetBuild
from nesting.job import Assumption, Job
from nesting.layout import Cut, Direction, Layout, Node, PartLeaf, RestLeaf, SheetLayout, Unplaced
from nesting.lengths import mm
from nesting.parts import Status
from nesting.sheets import Trim
from plans.sections.bound import Bound
from plans.sections.overview import Overview, make_overview
from plans.sections.why import say_why
from tests.nesting.hand_made import BIRCH, SAW, job, part, row, two_cabinets
from tests.plans.sections.helpers import worked_out


def overview(made: Job, layout: Layout) -> Overview:
    return make_overview(worked_out(made, layout), Bound())


def test_the_figures_of_two_cabinets() -> None:
    page = overview(*two_cabinets())
    assert page.what == ("10 parts of 3 kinds",)
    assert page.figures == (
        "1 sheet, 10 parts, 15 cuts, 6 settings, about 47 minutes at the saw",
        "1 sheet to buy, 62.00",
        "3 offcuts worth keeping",
    )
    assert (page.unplaced, page.warnings, page.assumed) == ((), (), ())


def test_cabinets_are_named_with_letters_and_outside_size() -> None:
    made, layout = two_cabinets()
    build = CabinetBuild(
        name="Bass cabinet",
        letters=("A", "B"),
        outside=(mm(600), mm(500), mm(400)),
        parts=(),
        sums=("500 = 17.7 + 464.6 + 17.7",),
        questions=("Which back?",),
        warnings=("The magnet is deep.",),
    )
    page = overview(replace(made, cabinets=(build,)), layout)
    assert page.what == (
        "2 × Bass cabinet (A, B): outside 600 high × 500 wide × 400 deep, mm",
        "10 parts of 3 kinds besides",
    )
    assert (page.sums, page.questions, page.warnings) == (
        build.sums,
        build.questions,
        build.warnings,
    )


def test_assumed_numbers_say_where_they_come_from() -> None:
    made, layout = two_cabinets()
    kerf = Assumption(name="kerf", value="2.4 mm", is_default=True, check="Saw a scrap.")
    guide = replace(kerf, name="guide", value="2700 mm", is_default=False)
    page = overview(replace(made, assumptions=(kerf, guide)), layout)
    assert [(one.name, one.value, one.origin) for one in page.assumed] == [
        ("kerf", "2.4 mm", "default"),
        ("guide", "2700 mm", "from the job file"),
    ]


def test_the_density_of_an_unknown_material_is_an_assumption() -> None:
    made, layout = two_cabinets()
    oak = replace(BIRCH, material="oak board")
    page = overview(replace(made, sheets=(oak,)), layout)
    assert [(one.name, one.value) for one in page.assumed] == [
        ("density of oak board", "700 kg/m³")
    ]


def test_cuts_longer_than_the_guide_are_warned_of_one_by_one() -> None:
    made, layout = two_cabinets()
    page = overview(replace(made, saw=replace(SAW, guide_length=mm(2430))), layout)
    (warning,) = page.warnings
    assert warning == (
        "Sheet 1, cut 1: it is 2440 mm long, and the guide reaches 2430 mm. Join a longer guide, "
        "or have this cut made at the yard."
    )


def test_what_is_not_placed_is_said_with_the_reason() -> None:
    made = job(part("Beam", 2600, 100, 2))
    gap = Unplaced(part=0, count=2, reason="longer than every sheet (2420 mm)")
    page = overview(made, Layout(sheets=(), unplaced=(gap,)))
    assert page.unplaced == ("2 × Beam: longer than every sheet (2420 mm)",)
    assert page.figures[0].startswith("0 sheets, 0 parts, 0 cuts")


def test_the_legend_explains_the_words_of_our_own_and_the_statuses_that_occur() -> None:
    made, layout = two_cabinets()
    words = {word for word, _ in overview(made, layout).legend}
    assert words >= {
        "setting",
        "keep size",
        "rehearsal",
        "final",
        "diagonal hatch",
        "dotted outline",
    }
    assert not words & {"oversize", "measure first"}
    waiting = replace(made.parts[0], status=Status.MEASURE_FIRST)
    other = replace(made, parts=(waiting, *made.parts[1:]))
    assert "measure first" in {word for word, _ in overview(other, layout).legend}


def test_what_is_asked_of_several_kinds_of_sheet_is_asked_once_with_a_blank_for_each() -> None:
    made, layout = two_cabinets()
    other = replace(made.sheets[0], name="another")
    asked = [
        Assumption(
            name=f"size of {sheet.name}", value=value, is_default=False, check="Measure both sides."
        )
        for sheet, value in ((made.sheets[0], "2440 × 1220 mm"), (other, "1220 × 1220 mm"))
    ]
    two_kinds = replace(made, sheets=(*made.sheets, other), assumptions=tuple(asked))
    sizes = [
        number
        for number in overview(two_kinds, layout).assumed
        if number.name.startswith("size of")
    ]
    assert [(number.name, number.value, number.readings) for number in sizes] == [
        (f"size of {made.sheets[0].name} / another", "2440 × 1220 mm / 1220 × 1220 mm", 2)
    ]


def test_kinds_of_sheet_that_share_a_value_stand_together_before_it() -> None:
    made, layout = two_cabinets()
    names = ("first", "second", "third")
    sheets = tuple(replace(made.sheets[0], name=name) for name in names)
    asked = tuple(
        Assumption(name=f"trim of {name}", value=value, is_default=False, check="Look.")
        for name, value in zip(names, ("10 mm", "0 mm", "10 mm"), strict=True)
    )
    (trim,) = overview(replace(made, sheets=sheets, assumptions=asked), layout).assumed
    assert (trim.name, trim.value) == ("trim of first, third / second", "10 mm / 0 mm")


def why(made: Job, sheet: SheetLayout) -> str:
    return say_why(made, worked_out(made, Layout(sheets=(sheet,))).sheets[0])


def test_the_reason_is_that_equal_cuts_share_settings() -> None:
    made, layout = two_cabinets()
    assert why(made, layout.sheets[0]) == (
        "15 cuts come off 6 settings of the guide, one for each size, so that equal parts come "
        "out equal; the trims come first, so that everything is measured from a cut edge. To "
        "finish each piece before the next is begun would cost 2 settings and 8 minutes more."
    )


def test_the_price_of_another_order_is_that_of_the_order_itself() -> None:
    made, layout = two_cabinets()
    (sheet,) = worked_out(made, layout).sheets
    steps = sorted(sheet.sequence.steps, key=lambda step: step.path)
    kinds = [(step.direction, step.is_trim, step.keep) for step in steps]
    settings = 1 + sum(before != after for before, after in pairwise(kinds))
    turns = sum(before[0] is not after[0] for before, after in pairwise(kinds))
    more = settings - sheet.sequence.settings
    # the default times: 2 minutes a setting, 1 a turn
    longer = 2 * more + turns - sheet.sequence.turns
    assert f"would cost {more} settings and {longer} minutes more." in why(made, layout.sheets[0])


def test_a_sheet_that_is_the_part_has_no_cut_to_explain() -> None:
    made = job(part("Table top", 2440, 1220), sheets=[replace(BIRCH, trim=Trim())])
    assert why(made, SheetLayout(sheet=0, root=PartLeaf(part=0, copy=0))) == (
        "No cut: the whole sheet is the part."
    )


def test_a_short_guide_is_the_reason_only_where_it_bars_the_other_way() -> None:
    made = job(part("Panel", 1000, 1220), sheets=[replace(BIRCH, trim=Trim())])
    root = row(Direction.CROSSCUT, mm(2440), [(mm(1000), PartLeaf(part=0, copy=0))], made.saw.kerf)
    assert isinstance(root, Cut)
    sheet = SheetLayout(sheet=0, root=root)
    assert "guide (" not in why(made, sheet)
    short = replace(made, saw=replace(SAW, guide_length=mm(1400)))
    assert "the guide (1400 mm) does not reach along the sheet" in why(short, sheet)


def test_a_setting_that_comes_back_is_owned_up_to() -> None:
    # A block comes off at 300, is ripped, and what is inside is cut at 300 too: the second 300
    # exists only after the rip, so no order saves the third setting.
    made = job(part("Panel", 300, 500), sheets=[replace(BIRCH, trim=Trim())])
    kerf = made.saw.kerf
    inner = row(Direction.CROSSCUT, mm(700), [(mm(300), PartLeaf(part=0, copy=0))], kerf)
    block = row(Direction.RIP, mm(1220), [(mm(500), inner)], kerf)
    items: list[tuple[int, Node]] = [(mm(700), block), (mm(300), RestLeaf())]
    sheets = [
        SheetLayout(sheet=0, root=row(Direction.CROSSCUT, mm(2440), order, kerf))
        for order in (items, items[::-1])
    ]
    assert "one for each size" in why(made, sheets[0])
    assert "1 setting comes back" in why(made, sheets[1])
