"""Cutting battens, against published problems of cutting rolls and bars."""

from collections import Counter
from decimal import Decimal

import pytest

from nesting.lengths import mm
from nesting.search.battens import BattenCutting, cut_battens
from nesting.timber import Timber


def bar(length: int, price: str = "1", count: int | None = None) -> Timber:
    return Timber(
        name=f"bar {length}",
        section=(mm(20), mm(20)),
        length=mm(length),
        price=Decimal(price),
        count=count,
    )


def pieces(demand: str) -> tuple[int, ...]:
    """Return the pieces of a demand written as "length:count length:count"."""
    pairs = (entry.split(":") for entry in demand.split())
    return tuple(mm(length) for length, count in pairs for _ in range(int(count)))


def assert_whole(
    cutting: BattenCutting, wanted: tuple[int, ...], stock: tuple[Timber, ...]
) -> None:
    cut = Counter(length for stick in cutting.sticks for length in stick.lengths)
    assert cut + Counter(cutting.unplaced) == Counter(wanted)
    for stick in cutting.sticks:
        assert sum(stick.lengths) + stick.left <= stock[stick.timber].usable


@pytest.mark.parametrize(
    ("master", "demand", "optimum"),
    [
        pytest.param(
            5600,
            "1380:22 1520:25 1560:12 1710:14 1820:18 1880:18 1930:20 2000:10 2050:12 2100:14 "
            "2140:16 2150:18 2200:20",
            73,
            id="paper mill: Wikipedia, Cutting stock problem, 73 rolls",
        ),
        pytest.param(
            100,
            "45:97 36:610 31:395 14:211",
            453,
            id="Chvatal, Linear Programming (1983), p. 195: LP 452.25, so 453",
        ),
        pytest.param(
            110, "20:48 45:35 50:24 55:10 75:8", 47, id="AMPL book, cut.dat: LP 46.25, so 47"
        ),
        pytest.param(10, "7:2 5:2 3:4", 4, id="MiniZinc cutstock data: 4 by arithmetic"),
    ],
)
def test_published_rolls_need_the_published_number(master: int, demand: str, optimum: int) -> None:
    stock = (bar(master),)
    cutting = cut_battens(pieces(demand), stock, kerf=0)
    assert len(cutting.sticks) == optimum
    assert cutting.is_proven
    assert_whole(cutting, pieces(demand), stock)


def test_priced_lengths_cost_the_published_optimum() -> None:
    """MO-book, notebook 05 cutting-stock, credited to Gilmore and Gomory (1961): cost 170."""
    stock = (bar(5, "6"), bar(6, "7"), bar(9, "10"))
    wanted = pieces("2:20 3:10 4:20")
    cutting = cut_battens(wanted, stock, kerf=0)
    assert cutting.cost == 170
    assert cutting.is_proven
    assert_whole(cutting, wanted, stock)


def test_kerf_is_taken_between_pieces_and_not_at_the_end() -> None:
    """Arithmetic: three 798 and two kerfs of 3 are 2400; three 799 are not."""
    assert len(cut_battens((mm(798),) * 3, (bar(2400),), mm(3)).sticks) == 1
    assert len(cut_battens((mm(799),) * 3, (bar(2400),), mm(3)).sticks) == 2


def test_end_trims_are_not_used() -> None:
    stock = (Timber(name="pine", section=(mm(20), mm(20)), length=mm(2400), trim=mm(10)),)
    assert len(cut_battens((mm(2380),), stock, mm(3)).sticks) == 1
    assert cut_battens((mm(2381),), stock, mm(3)).unplaced == (mm(2381),)


def test_limited_stock_leaves_what_it_cannot_give() -> None:
    stock = (bar(1000, count=1),)
    cutting = cut_battens((mm(600), mm(600)), stock, mm(3))
    assert (len(cutting.sticks), cutting.unplaced) == (1, (mm(600),))


def test_equal_prices_mean_fewest_sticks() -> None:
    stock = (bar(1000, "0"), bar(2400, "0"))
    assert [stick.timber for stick in cut_battens((mm(900),) * 2, stock, mm(3)).sticks] == [1]
