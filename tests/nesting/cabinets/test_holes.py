import pytest

from nesting.cabinets.holes import Fastener, Hole, HoleKind
from nesting.errors import InputError
from nesting.lengths import inch, mm
from tests.nesting.cabinets.fit_samples import WOOFER, woofer


def refused(**changes: object) -> str:
    with pytest.raises(InputError) as error:
        woofer(**changes)
    return str(error.value)


@pytest.mark.parametrize("cut_out", [mm(305), mm(306)])
def test_a_cut_out_that_is_not_inside_the_bolt_circle_is_refused(cut_out: int) -> None:
    """Acceptance: refuses cut-out >= bolt circle."""
    assert refused(cut_out=cut_out, confirmed=True) == (
        "hole 'woofer', cut_out: the cut-out is not smaller than the bolt circle.\n"
        "From the inside out a driver has cut-out, bolt circle and flange. Check which is which "
        "on its data sheet."
    )


@pytest.mark.parametrize("flange", [mm(305), mm(300)])
def test_a_bolt_circle_that_is_not_inside_the_flange_is_refused(flange: int) -> None:
    """Acceptance: refuses bolt circle >= flange."""
    assert "the bolt circle is not smaller than the flange" in refused(flange=flange)


def test_a_cut_out_is_smaller_than_the_traced_outline() -> None:
    """Common practice, no source: trace the flange and the driver falls through."""
    message = refused(cut_out=mm(320), bolt_circle=0)
    assert "the cut-out is not smaller than the flange" in message


@pytest.mark.parametrize(
    ("cut_out", "nominal"),
    [(inch(12), inch(12)), (mm(300), mm(300)), (inch(12), 0), (mm(305), 0)],
)
def test_a_cut_out_as_large_as_the_drivers_name_needs_a_word(cut_out: int, nominal: int) -> None:
    """Acceptance: refuses equality with the nominal size without confirmation."""
    sizes = {"bolt_circle": mm(320), "flange": mm(340), "nominal": nominal}
    assert "as large as the size that such drivers are called by" in refused(
        cut_out=cut_out, **sizes
    )
    assert woofer(cut_out=cut_out, confirmed=True, **sizes).cut_out == cut_out


@pytest.mark.parametrize(
    ("size", "least", "most"), [(10, "9", "9.2"), (12, "11.1", "11.25"), (15, "13.75", "14.2")]
)
def test_published_cut_outs_are_smaller_than_what_the_drivers_are_called(
    size: int, least: str, most: str
) -> None:
    """Enclosure builders' articles and plans: 10 in about 9.1, 12 in 11.1 to 11.25, 15 in 13.75
    to 14.2 in. The refusal above must not catch any of them."""
    for cut_out in (inch(least), inch(most)):
        hole = Hole(
            name="driver",
            kind=HoleKind.DRIVER,
            panel="baffle",
            cut_out=cut_out,
            nominal=inch(size),
            flange=inch(size) + mm(10),
        )
        assert hole.cut_out < inch(size)


def test_a_hole_is_round_or_a_window_but_not_both() -> None:
    for sizes in ({"window": (mm(100), mm(50))}, {"cut_out": 0}):
        assert "either a round cut-out or a window" in refused(**sizes)


def test_a_recess_needs_a_flange() -> None:
    assert "a recess takes the flange" in refused(flange=0)


def test_bolts_need_something_to_go_into() -> None:
    assert "it has bolts, and nothing that they go into" in refused(fastener=Fastener.NONE)


def test_a_basket_is_no_deeper_than_the_driver() -> None:
    assert "the basket reaches in further" in refused(basket=mm(131))


def test_the_outline_is_the_flange_or_the_bolts_whichever_is_larger() -> None:
    assert WOOFER.outline == (mm(320), mm(320))
    assert woofer(flange=0, recess=0).outline == (mm(310), mm(310))
