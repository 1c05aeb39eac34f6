from math import hypot

import pytest

from nesting.cabinets.checks_by_hand import (
    CheckLine,
    check_diagonals,
    check_stacks,
    find_diagonal,
    passes,
)
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import Through
from nesting.lengths import Unit, mm
from tests.nesting.cabinets.designs import STEP, design, lay_out
from tests.nesting.cabinets.fit_samples import FRAMED, fit


@pytest.mark.parametrize(
    ("sides", "diagonal"),
    [
        ((2440, 1220), 2728.003),
        ((1525, 1525), 2156.676),
        ((2500, 1250), 2795.085),
        ((300, 400), 500),
    ],
)
def test_diagonals_are_those_of_plain_arithmetic(sides: tuple[int, int], diagonal: float) -> None:
    found = find_diagonal(mm(sides[0]), mm(sides[1]))
    assert found / mm(1) == pytest.approx(diagonal, abs=5e-4)


def test_each_kind_of_panel_and_the_carcass_have_their_diagonals() -> None:
    """Acceptance: sqrt(a^2 + b^2) to 0.1 mm, of the sizes that are cut."""
    lines = {line.name: line for line in check_diagonals(lay_out(FRAMED), STEP, Unit.MM)}
    assert list(lines) == [
        f"{name}: diagonals"
        for name in (
            "Side",
            "Top or bottom",
            "Baffle",
            "Back",
            "Outside, height by width",
            "Outside, height by depth",
        )
    ]
    top = lines["Top or bottom: diagonals"]
    assert top.wanted[0] / mm(1) == pytest.approx(hypot(464.5, 350), abs=1e-5)
    assert top.text == "Top or bottom: diagonals both 581.6 mm, within 1."
    assert lines["Outside, height by width: diagonals"].text == (
        "Outside, height by width: diagonals both 781 mm, within 1."
    )


@pytest.mark.parametrize(
    ("readings", "wanted"),
    [(("781", "781.5"), True), (("780.4", "781.6"), False), (("783", "783"), False)],
)
def test_readings_pass_or_fail(readings: tuple[str, str], *, wanted: bool) -> None:
    """Acceptance: entering readings marks pass or fail; both must agree with each other too."""
    line = CheckLine(name="box", wanted=(mm(781), mm(781)), tolerance=mm(1), text="")
    assert passes(line, (mm(readings[0]), mm(readings[1]))) is wanted


def test_panels_that_match_stand_back_to_back() -> None:
    """Acceptance: one check for each match group."""
    lines = list(check_stacks(lay_out(FRAMED), STEP, Unit.MM))
    assert lines[0].text == (
        "left side, right side, top, bottom: stand them back to back on the edges that are 350 mm "
        "apart. No step is to be felt."
    )


def test_a_stack_is_as_high_as_the_model_says() -> None:
    """Acceptance: true in the model to 0.05 mm. 600 = 564.6 + 2 x 17.7 becomes
    564.5 at a step of 0.5: 0.1 off, so it is not said. Of 18 mm board it holds."""
    wanted = design(
        through=Through.TOP_AND_BOTTOM, baffle=Closing(fit=Fit.PLANTED), back=Closing(fit=Fit.NONE)
    )
    assert not any("against" in line.name for line in check_stacks(lay_out(wanted), STEP, Unit.MM))
    texts = [
        line.text
        for line in check_stacks(lay_out(wanted, mm(18)), STEP, Unit.MM)
        if "against" in line.name
    ]
    assert texts == [
        (
            "Side on its edge, with two of the kind Top or bottom lying on it, is as high as "
            "Baffle on its edge: 600 mm. No step is to be felt."
        )
    ]


def test_checks_are_part_of_the_fit_out() -> None:
    assert len(fit(FRAMED).checks) == 7
