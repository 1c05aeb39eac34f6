"""The screens for the way there and back: the shop's aisle, the yard's counter, the car."""

from collections.abc import Iterable
from html import escape

from plans.phone.records import Loading, Shop, Yard
from plans.sections.car import CarPiece
from plans.sections.shopping import OtherLine, SheetLine
from plans.sections.yard import YardPattern
from plans.writers.html_text import code_of, paragraph, short_cautions, ticks


def shop(screen: Shop) -> Iterable[str]:
    """Yield what to buy, and how to choose it."""
    shopping = screen.shopping
    yield ticks("sheets", map(_sheet_line, shopping.sheets))
    yield f'<p class="total">total {escape(shopping.cost)}</p>'
    yield paragraph(shopping.bound_text)
    if shopping.others:
        yield f"<h2>Besides the sheets</h2>{ticks('others', map(_other_line, shopping.others))}"
    yield f"<h2>Choosing sheets off the stack</h2>{ticks('card', map(escape, shopping.card))}"
    yield short_cautions(screen.cautions)


def yard(screen: Yard) -> Iterable[str]:
    """Yield what is cut at the yard, in the unit of its page."""
    page = screen.page
    yield f"<p><b>{escape(page.heading)}</b></p>"
    yield f"<p><b>{escape(f'{page.grain_text}. {page.mass_text}. {page.total_text}.')}</b></p>"
    yield paragraph(f"{page.unit_text}.")
    for words in (page.line_text, page.order_text, page.rough_text):
        yield paragraph(words)
    for place, pattern in enumerate(page.patterns, start=1):
        yield from _pattern(f"{screen.key}-{place}", pattern)
    yield "<h2>Price</h2>"
    for words, amount in page.price_lines:
        yield paragraph(f"{words} {amount}".strip())


def _pattern(key: str, pattern: YardPattern) -> Iterable[str]:
    """Yield how some sheets are cut, and a box for each of them with the codes of its pieces."""
    yield f"<h2>{escape(pattern.heading)}</h2>"
    for cut in pattern.cuts:
        yield f'<p class="size">{escape(cut.text)}</p>'
    yield ticks(
        key,
        (
            f"sheet {number}: write on its pieces<br>"
            + "<br>".join(
                f"{code_of(piece.codes[place])} {escape(piece.size)}" for piece in pattern.pieces
            )
            for place, number in enumerate(pattern.sheets)
        ),
    )


def loading(screen: Loading) -> Iterable[str]:
    """Yield what goes into the car, in order, and what to look to before driving."""
    page = screen.page
    yield f"<p><b>{escape(page.total)}</b></p>"
    yield paragraph(f"{page.opening}; {page.floor}; {page.clearance}.")
    if page.does_not_fit:
        yield "<h2>Does not go in</h2>"
        yield from map(paragraph, page.does_not_fit)
    for load in range(1, page.loads + 1):
        yield f"<h2>Trip {load} of {page.loads}, in this order</h2>"
        yield ticks(f"load-{load}", (_piece(piece) for piece in page.pieces if piece.load == load))
    if page.left_behind:
        yield "<h2>Nothing is cut from these: leave them, or see</h2>"
        yield from map(paragraph, page.left_behind)
    yield f"<h2>Before you drive</h2>{ticks('drive', map(escape, page.notes))}"


def _piece(piece: CarPiece) -> str:
    people = ", <b>TWO PEOPLE</b>" if piece.people > 1 else ""
    return (
        f'{code_of(piece.code)} <span class="size">{escape(piece.size)}</span><br>'
        f"{escape(piece.mass)} kg{people}, sheet {piece.sheet}, {escape(piece.material)}<br>"
        f"<b>{escape(piece.lie)}</b><br>{escape(piece.check)}"
    )


def _sheet_line(line: SheetLine) -> str:
    price = f"{escape(line.each)} each, {escape(line.total)}" if line.total else escape(line.each)
    return (
        f'<span class="code">{line.count} × {escape(line.material)}</span><br>'
        f'<span class="size">{escape(line.size)}</span><br><b>{escape(line.grain_text)}</b><br>'
        f"“{escape(line.stock)}”, {escape(line.mass)} kg each<br>{price}"
    )


def _other_line(line: OtherLine) -> str:
    return f"<b>{escape(line.amount)}</b> {escape(line.what)}<br>{escape(line.purpose)}"
