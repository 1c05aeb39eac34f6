import pytest

from nesting.errors import Fault, InputError, LayoutError, NestingError, NoFitError


def test_a_fault_says_where_what_and_what_to_do() -> None:
    fault = Fault(
        where="parts.csv, row 7, column 'width'",
        what="'11 5/9' is not on a tape measure",
        remedy="Use halves, quarters, 8ths, 16ths, 32nds or 64ths of an inch, or a decimal.",
        excerpt=("Side panel, 600 mm, 11 5/9, 2", " " * 20 + "^^^^^^"),
    )
    assert str(fault) == (
        "parts.csv, row 7, column 'width': '11 5/9' is not on a tape measure.\n"
        "    Side panel, 600 mm, 11 5/9, 2\n"
        "                        ^^^^^^\n"
        "Use halves, quarters, 8ths, 16ths, 32nds or 64ths of an inch, or a decimal."
    )


def test_a_fault_without_a_place_begins_with_what_is_wrong() -> None:
    assert str(Fault(where="", what="'x' is not a length", remedy="Write a number.")) == (
        "'x' is not a length.\nWrite a number."
    )


def test_an_input_error_tells_all_its_faults_in_order() -> None:
    faults = [Fault(where=f"row {n}", what="it is wrong", remedy="Put it right.") for n in (1, 2)]
    error = InputError(iter(faults))
    assert error.faults == tuple(faults)
    assert str(error) == ("row 1: it is wrong.\nPut it right.\nrow 2: it is wrong.\nPut it right.")


def test_an_input_error_without_a_fault_is_a_mistake_of_ours() -> None:
    with pytest.raises(AssertionError, match="an InputError needs a fault"):
        InputError([])


@pytest.mark.parametrize("kind", [InputError, NoFitError, LayoutError])
def test_every_error_on_purpose_has_one_base(kind: type[Exception]) -> None:
    assert issubclass(kind, NestingError)
