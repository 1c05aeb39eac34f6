"""What stands on each screen of the phone page, as HTML; every text is escaped."""

from collections.abc import Iterable
from functools import singledispatch
from html import escape

from plans.phone.lettering import keep_type
from plans.phone.screens import Cut, End, Safety, Screen, SetUp, SheetStart, Shop
from plans.sections.shopping import OtherLine, SheetLine
from plans.writers.html_drawing import cut_marks, part_codes, picture


@singledispatch
def screen_body(screen: Screen) -> Iterable[str]:
    """Return what stands on a screen."""
    raise TypeError(f"{type(screen).__name__} is no screen")


@screen_body.register
def _shop(screen: Shop) -> Iterable[str]:
    shopping = screen.shopping
    yield "<ul>"
    for number, line in enumerate(shopping.sheets, start=1):
        yield _tick(f"sheets-{number}", _sheet_line(line))
    yield "</ul>"
    yield f'<p class="total">total {escape(shopping.cost)}</p>'
    yield _paragraph(shopping.bound_text)
    if shopping.others:
        yield "<h2>Besides the sheets</h2><ul>"
        for number, other in enumerate(shopping.others, start=1):
            yield _tick(f"others-{number}", _other_line(other))
        yield "</ul>"
    yield "<h2>Choosing sheets off the stack</h2><ul>"
    for number, advice in enumerate(shopping.card, start=1):
        yield _tick(f"card-{number}", escape(advice))
    yield "</ul>"
    yield _cautions(screen.cautions)


def _sheet_line(line: SheetLine) -> str:
    price = f"{escape(line.each)} each, {escape(line.total)}" if line.total else escape(line.each)
    return (
        f'<span class="code">{line.count} × {escape(line.material)}</span><br>'
        f'<span class="size">{escape(line.size)}</span><br><b>{escape(line.grain_text)}</b><br>'
        f"“{escape(line.stock)}”, {escape(line.mass)} kg each<br>{price}"
    )


def _other_line(line: OtherLine) -> str:
    return f"<b>{escape(line.amount)}</b> {escape(line.what)}<br>{escape(line.purpose)}"


def _tick(key: str, content: str) -> str:
    return (
        f'<li class="tick"><label><input type="checkbox" id="tick-{key}"><span>{content}</span>'
        "</label></li>"
    )


@screen_body.register
def _safety(screen: Safety) -> Iterable[str]:
    yield _paragraph(screen.introduction)
    for caution in screen.cautions:
        yield f"<h2>{escape(caution.topic)}</h2>{_paragraph(caution.full)}"
        yield f"<p><b>Ask: {escape(caution.defer_to)}.</b></p>"


@screen_body.register
def _set_up(screen: SetUp) -> Iterable[str]:
    yield f"<ol>{''.join(f'<li>{escape(line)}</li>' for line in screen.lines)}</ol>"
    yield "<h2>Numbers assumed</h2><ul>"
    for number in screen.assumed:
        origin = f"{escape(number.value)}</b>, {escape(number.origin)}"
        yield f"<li>{escape(number.name)}: <b>{origin}</li>"
    yield "</ul>"


@screen_body.register
def _sheet_start(screen: SheetStart) -> Iterable[str]:
    view = screen.view
    yield picture(view, part_codes(view))
    measured = f"measured {view.measured}" if view.measured else "thickness not measured"
    yield f'<p class="size">{escape(view.size)}</p>'
    yield _paragraph(f"{view.material}, sheet “{view.stock}”, {measured}, {view.mass} kg")
    yield f"<p><b>{escape(view.grain_text)}</b></p>"
    yield _paragraph(f"{view.face_text} {view.home_text}.")
    yield _paragraph(f"Not used along the edges: {view.trim_text}." if view.trim_text else "")
    yield _paragraph(
        f"Why this order: {view.why} {view.settings} settings of the guide, about"
        f" {view.minutes} minutes."
    )
    yield _cautions(screen.cautions)


@screen_body.register
def _cut(screen: Cut) -> Iterable[str]:
    row = screen.held.row
    is_same = bool(row.same_as)
    yield picture(screen.view, cut_marks(screen))
    yield (
        f'<p>hold <span class="code">{_code(row.hold)}</span> '
        f'<span class="size">{escape(row.hold_size)}</span><br>{escape(row.hold_mass)} kg,'
        f" {'<b>' + screen.people + '</b>' if row.people > 1 else screen.people}</p>"
    )
    if screen.remark:
        yield f'<p class="warn">{escape(screen.remark)}</p>'
    yield f'<div class="set{" same" if is_same else ""}"><p>from {escape(row.measure_from)}'
    yield f' <b>KEEP</b></p><p class="keep keep{keep_type(row.keep)}">{_keep(row.keep)}</p>'
    yield f"<p>{escape(screen.setting)}</p>"
    yield '<div class="guides">'
    guides = (("left", "L", row.guide_left), ("right", "R", row.guide_right))
    for side, sign, figure in guides if any(figure for _, _, figure in guides) else ():
        is_off = row.unusable in (side, "both")
        shown = f"<s>{escape(figure)}</s>" if is_off else escape(figure)
        yield f"<div><small>{sign}</small> {shown}</div>"
    yield "</div></div><dl>"
    yield f"<dt>is kept</dt><dd>{_named(screen.kept)}</dd>"
    freed = _named(screen.freed) if screen.freed[0] else "nothing"
    yield f"<dt>falls free</dt><dd>{freed}</dd></dl>"
    yield _cautions(screen.cautions)


@screen_body.register
def _end(screen: End) -> Iterable[str]:
    if screen.unplaced:
        yield "<h2>Did not fit</h2>"
        yield from map(_paragraph, screen.unplaced)
    if screen.offcuts:
        yield "<h2>Keep these offcuts</h2><ul>"
        for code, size in screen.offcuts:
            yield f'<li><span class="code">{_code(code)}</span> {escape(size)}</li>'
        yield "</ul>"
    yield _paragraph("Measure every part against its label before anything is glued.")


def _paragraph(words: str) -> str:
    return f"<p>{escape(words)}</p>" if words else ""


def _cautions(lines: Iterable[str]) -> str:
    words = " ".join(lines)
    return f'<p class="cautions">{escape(words)}</p>' if words else ""


def _code(code: str) -> str:
    """Return a code with 6 and 9 underlined, as on paper."""
    return "".join(f"<u>{sign}</u>" if sign in "69" else escape(sign) for sign in code)


def _named(named: tuple[str, str]) -> str:
    code, name = named
    return f'<span class="code">{_code(code)}</span>' + (f" {escape(name)}" if name else "")


def _keep(keep: str) -> str:
    """Return a keep size: a word before it and a fraction behind it are set smaller."""
    words = []
    for word in keep.split(" "):
        kind = "word" if word.isalpha() else "fraction" if "/" in word else ""
        words.append(f'<span class="{kind}">{escape(word)}</span>' if kind else escape(word))
    return " ".join(words)
