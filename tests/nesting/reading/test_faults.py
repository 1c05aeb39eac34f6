import pytest

from nesting.errors import Fault, InputError
from nesting.reading.faults import Faults


def fault(name: str) -> Fault:
    return Fault(where=name, what="it is wrong", remedy="Put it right.")


def test_faults_come_in_the_order_of_the_file_and_of_its_part_lists() -> None:
    faults = Faults()
    faults.add(fault("row 9 of the list of line 5"), line=5, row=9)
    faults.add(fault("line 7"), line=7)
    faults.add(fault("row 2 of the list of line 5"), line=5, row=2)
    faults.add(fault("the whole file"), line=0)
    assert [found.where for found in faults.in_order()] == [
        "the whole file",
        "row 2 of the list of line 5",
        "row 9 of the list of line 5",
        "line 7",
    ]


def test_faults_of_one_place_stay_in_the_order_they_were_found_in() -> None:
    faults = Faults()
    for name in ("b", "a"):
        faults.add(fault(name), line=1)
    assert [found.where for found in faults.in_order()] == ["b", "a"]


def test_no_fault_raises_nothing() -> None:
    Faults().raise_any()


def test_all_faults_are_raised_together() -> None:
    faults = Faults()
    faults.add(fault("line 2"), line=2)
    faults.add(fault("line 1"), line=1)
    with pytest.raises(InputError) as refused:
        faults.raise_any()
    assert refused.value.faults == faults.in_order()
    assert len(faults) == 2
