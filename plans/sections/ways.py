"""Ways to buy and near misses, in words."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from nesting.buying import Lot, Sawing, Way, list_compromises
from nesting.grades import CARCASS, Cheaper, Swap
from nesting.lengths import NM_PER_MM, Unit
from nesting.near_misses import NearMiss
from nesting.terms import Dimension
from plans.sections.numbers import show, show_money, show_size, to_whole
from plans.sections.part_words import full_name

MOST_RECUT = 6
"""How many kinds of parts to be cut again are named; the others are counted."""

MOST_LEFT = 3
"""How many leftovers of a way are named; the others are counted."""

_ADJECTIVES = {
    Dimension.HEIGHT: "high",
    Dimension.WIDTH: "wide",
    Dimension.DEPTH: "deep",
    Dimension.LENGTH: "long",
}
_NM3_PER_LITRE = (100 * NM_PER_MM) ** 3


@dataclass(frozen=True, slots=True, kw_only=True)
class WayLine:
    """One way to buy, as a line of a table.

    Attributes:
        label: "A".
        title: What it does without, such as "without birch 18 half".
        when: When it is the one to choose: "if there is no birch 18 half".
        sheets: What is bought and what is taken from the garage.
        price: Price of the sheets.
        besides: What is paid besides, with what for; "" for nothing.
        total: All that is paid.
        minutes: Minutes at the saw.
        left: The largest leftovers worth keeping.
        verdict: How close to cheapest it is proven to be, for this stock, and what work it makes.
    """

    label: str
    title: str
    when: str
    sheets: str
    price: str
    besides: str
    total: str
    minutes: str
    left: str
    verdict: str


def make_way_lines(ways: Sequence[Way]) -> tuple[WayLine, ...]:
    """Return a line for every way to buy, in their order."""
    return tuple(_line(way) for way in ways)


def make_compromise_lines(ways: Sequence[Way]) -> tuple[tuple[str, ...], ...]:
    """Return label, sheets, total, layouts, settings and minutes of each way worth weighing up.

    Nothing where one is best in all of them.
    """
    lines = tuple(
        (
            way.label,
            str(sum(lot.count for lot in way.lots)),
            show_money(way.cost),
            str(way.layouts),
            str(way.settings),
            str(to_whole(way.minutes)),
        )
        for way in list_compromises(ways)
    )
    return lines if len(lines) > 1 else ()


def say_near_miss(miss: NearMiss, unit: Unit) -> str:
    """Return a near miss as a sentence.

    Such as "Bass cabinet: 342 instead of 350 deep needs one sheet fewer and saves 62.00 (inside
    volume 61.2 l instead of 62.7 l)."
    """
    fewer = miss.sheets_before - miss.sheets
    saved = miss.cost_before - miss.cost
    gain = f"saves {show_money(saved)}"
    if fewer > 0:
        gain = f"needs {_fewer(fewer)}" + (f" and {gain}" if saved else "")
    sizes: dict[str, list[str]] = {}
    rooms: dict[str, str] = {}
    for change in miss.changes:
        of = change.free.of
        after, before = show(change.after, unit), show(change.before, unit)
        sizes.setdefault(of, []).append(
            f"{after} instead of {before} {_ADJECTIVES[change.free.dimension]}"
        )
        if change.room is not None and change.room_before is not None:
            rooms[of] = (
                f"{show_litres(change.room)} l instead of {show_litres(change.room_before)} l"
            )
    what = ", and ".join(f"{of}: {' and '.join(words)}" for of, words in sizes.items())
    joined = ", ".join(f"{of} {room}" if len(rooms) > 1 else room for of, room in rooms.items())
    inside = f" (inside volume {joined})" if joined else ""
    return f"{what}{',' if len(sizes) > 1 else ''} {gain}{inside}."


def say_cheaper_stock(cheaper: Cheaper) -> str:
    """Return parts that could come from cheaper stock as a sentence, with where to write it.

    Such as "Brace of Bass cabinet from poplar plywood saves 20.00 (94.00 instead of 114.00): write
    material = "poplar plywood" under [cabinet.braces]."
    """
    material = cheaper.swaps[0].material
    what = "; ".join(
        f"{', '.join(swap.parts)} of {swap.of}" if swap.what else swap.of for swap in cheaper.swaps
    )
    places = " and ".join(dict.fromkeys(_say_place(swap) for swap in cheaper.swaps))
    saved = show_money(cheaper.cost_before - cheaper.cost)
    prices = f"{show_money(cheaper.cost)} instead of {show_money(cheaper.cost_before)}"
    return (
        f"{what} from {material} saves {saved} ({prices}): "
        f'write material = "{material}" under {places}.'
    )


def _say_place(swap: Swap) -> str:
    if not swap.what:
        return f"[[part]] {swap.of}"
    return f"[[cabinet]] {swap.of}" if swap.what == CARCASS else f"[cabinet.{swap.what}]"


def show_litres(volume: int) -> str:
    """Return cubic nanometres as litres to 0.1.

    >>> show_litres(61_249 * 10**21)
    '61.2'
    """
    tenths = (2 * volume * 10 + _NM3_PER_LITRE) // (2 * _NM3_PER_LITRE)
    return f"{tenths // 10}.{tenths % 10}"


def _line(way: Way) -> WayLine:
    restriction = way.restriction
    besides = ""
    if way.extra_cost:
        is_delivered = restriction.sawing is Sawing.DELIVERED
        what = "delivery" if is_delivered else "the yard's cuts"
        besides = f"{show_money(way.extra_cost)} for {what}"
    return WayLine(
        label=way.label,
        title=restriction.title,
        when=_say_when(restriction.title),
        sheets=", ".join(_say_lot(lot) for lot in way.lots) or "nothing",
        price=show_money(way.sheets_cost),
        besides=besides,
        total=show_money(way.cost),
        minutes=str(to_whole(way.minutes)),
        left=_say_left(way),
        verdict="; ".join((_verdict(way), _say_work(way), *_say_recut(way))),
    )


def _say_when(title: str) -> str:
    """Return when a way is the one to choose, from what it does without."""
    missing = title.removeprefix("without ")
    is_in_shop = missing not in (title, "your own pieces")
    return f"if there is no {missing}" if is_in_shop else title


def _say_lot(lot: Lot) -> str:
    return f"{lot.count} × {lot.stock}" + (" (yours)" if lot.owned else "")


def _say_left(way: Way) -> str:
    sizes = [show_size(left.length, left.width, way.job.unit) for left in way.left]
    more = len(sizes) - MOST_LEFT
    named = ", ".join(sizes[:MOST_LEFT]) or "none"
    return f"{named} and {more} more" if more > 0 else named


def _verdict(way: Way) -> str:
    if way.is_proven:
        return "proven cheapest from this stock"
    return (
        f"at most {show_money(way.sheets_cost - way.bound)} above the bound: from this "
        f"stock no sheets can cost less than {show_money(way.bound)}"
    )


def _say_work(way: Way) -> str:
    layouts = "1 layout" if way.layouts == 1 else f"{way.layouts} layouts"
    settings = "1 setting" if way.settings == 1 else f"{way.settings} settings"
    return f"{layouts}, {settings}"


def _say_recut(way: Way) -> Iterator[str]:
    """Yield which parts come from the yard too large; the minutes are for these."""
    if way.recut:
        named = ", ".join(f"{count} × {full_name(part)}" for part, count in way.recut[:MOST_RECUT])
        more = len(way.recut) - MOST_RECUT
        rest = f" and {more} more" if more > 0 else ""
        yield f"the yard is rough, so cut to size at home: {named}{rest}"


def _fewer(number: int) -> str:
    return "one sheet fewer" if number == 1 else f"{number} sheets fewer"
