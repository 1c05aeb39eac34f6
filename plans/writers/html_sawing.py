"""The screens at the saw: safety, setting up, how a sheet lies, and every cut."""

from collections.abc import Iterable
from html import escape

from plans.phone.lettering import keep_type
from plans.phone.records import Copy, Cut, Guide, Safety, SetUp, SheetStart, Stop
from plans.writers.html_drawing import cut_marks, part_codes, picture
from plans.writers.html_text import (
    code_of,
    named,
    paragraph,
    short_cautions,
    ticks,
    underlined,
)


def safety(screen: Safety) -> Iterable[str]:
    """Yield every caution in full."""
    yield paragraph(screen.introduction)
    for caution in screen.cautions:
        yield f"<h2>{escape(caution.topic)}</h2>{paragraph(caution.full)}"
        yield f"<p><b>Ask: {escape(caution.defer_to)}.</b></p>"


def set_up(screen: SetUp) -> Iterable[str]:
    """Yield how the saw is measured, and the numbers assumed."""
    yield f"<ol>{''.join(f'<li>{escape(line)}</li>' for line in screen.lines)}</ol>"
    yield paragraph(screen.note)
    yield "<h2>Numbers assumed</h2><ul>"
    for number in screen.assumed:
        origin = f"{escape(number.value)}</b>, {escape(number.origin)}"
        yield f"<li>{escape(number.name)}: <b>{origin}</li>"
    yield "</ul>"


def sheet_start(screen: SheetStart) -> Iterable[str]:
    """Yield how a sheet lies before its first cut."""
    view = screen.repeat.view
    yield picture(view, part_codes(view))
    measured = f"measured {view.measured}" if view.measured else "thickness not measured"
    yield f'<p class="size">{escape(view.size)}</p>'
    yield paragraph(f"{view.material}, sheet “{view.stock}”, {measured}, {view.mass} kg")
    yield f"<p><b>{escape(view.grain_text)}</b></p>"
    if screen.alike:
        yield f'<p class="warn">{escape(screen.alike)}</p>'
    yield paragraph(f"{view.face_text} {view.home_text}.")
    yield paragraph(f"Not used along the edges: {view.trim_text}." if view.trim_text else "")
    yield from (f'<p class="warn">{escape(defect.text)}</p>' for defect in view.defects)
    yield paragraph(f"Why this order: {view.why} About {view.minutes} minutes.")
    yield short_cautions(screen.cautions)


def cut(screen: Cut) -> Iterable[str]:
    """Yield one cut: what is held, KEEP, the guide, and what it makes."""
    row = screen.held.row
    yield picture(screen.view, cut_marks(screen))
    yield (
        f'<p>take {code_of(row.hold)} <span class="size">{escape(row.hold_size)}</span><br>'
        f"{escape(row.hold_mass)} kg,"
        f" {'<b>' + screen.people + '</b>' if row.people > 1 else screen.people}</p>"
    )
    if screen.remark:
        yield f'<p class="warn">{escape(screen.remark)}</p>'
    yield f'<div class="set{" same" if row.same_as else ""}"><p>from {escape(row.measure_from)}'
    yield f' <b>KEEP</b></p><p class="keep keep{keep_type(row.keep)}">{_keep(row.keep)}</p>'
    yield paragraph(screen.setting)
    if screen.guides:
        yield f'<div class="guides">{"".join(map(_guide, screen.guides))}</div>'
    yield f"</div><dl><dt>is kept</dt><dd>{named(screen.kept)}</dd>"
    freed = named(screen.freed) if screen.freed[0] else "nothing"
    yield f"<dt>falls free</dt><dd>{freed}</dd></dl>"
    if screen.copies:
        yield f"<h2>Sheets cut so</h2>{ticks(screen.key, map(_copy, screen.copies))}"
    yield short_cautions(screen.cautions)


def stop(screen: Stop) -> Iterable[str]:
    """Yield that the work can be left here."""
    for line in screen.lines:
        yield f'<p class="warn">{escape(line)}</p>'


def _guide(guide: Guide) -> str:
    figure = escape(guide.figure)
    shown = f"<s>{figure}</s>" if guide.is_off else figure
    return f"<div><small>{guide.sign}</small> {shown}</div>"


def _copy(copy: Copy) -> str:
    """Return one of several sheets cut alike; its codes stand as small as its words."""
    made = " and ".join(f"<b>{underlined(code)}</b>" for code in copy.made)
    return f"sheet {copy.number}: take <b>{underlined(copy.hold)}</b>, makes {made}"


def _keep(keep: str) -> str:
    """Return a keep size: a word before it and a fraction behind it are set smaller."""
    words = []
    for word in keep.split(" "):
        kind = "word" if word.isalpha() else "fraction" if "/" in word else ""
        words.append(f'<span class="{kind}">{escape(word)}</span>' if kind else escape(word))
    return " ".join(words)
