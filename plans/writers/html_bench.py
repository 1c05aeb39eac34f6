"""The screens at the bench: the holes of a panel, and what is left after the last cut."""

from collections.abc import Iterable
from html import escape

from plans.phone.records import End, Holes
from plans.sections.holes import HoleText
from plans.writers.html_text import code_of, paragraph, short_cautions


def holes(screen: Holes) -> Iterable[str]:
    """Yield the holes of one panel: centre first, then the sizes and the bolts."""
    panel = screen.panel
    yield paragraph(f"{panel.panel} of {panel.design}: {panel.letters}")
    yield paragraph(f"Seen on the {panel.face}, {panel.size}. {panel.when}")
    for hole in panel.holes:
        yield from _hole(hole)
    yield paragraph("Order of work and templates: see the paper.")
    yield short_cautions(screen.cautions)


def _hole(hole: HoleText) -> Iterable[str]:
    (edge, _, at), (other, _, up) = (words.partition(" ") for words in hole.centre)
    yield f"<h2>{code_of(hole.code)} {escape(hole.name)}</h2>"
    yield f"<p>centre from {_figure(edge, at)}<br>from {_figure(other, up)}</p>"
    yield f"<p>{'<br>'.join(_figure(name, size) for name, size in hole.sizes)}</p>"
    if not hole.bolts:
        return
    yield paragraph(f"bolts: from {edge}, from {other}, {hole.chord} from one to the next")
    yield "<ul>"
    for bolt in hole.bolts:
        across, along = map(escape, bolt.distances)
        yield f'<li>{escape(bolt.number)}. <b class="size">{across}</b>, <b>{along}</b></li>'
    yield "</ul>"


def _figure(name: str, figure: str) -> str:
    return f'{escape(name)} <b class="size">{escape(figure)}</b>'


def end(screen: End) -> Iterable[str]:
    """Yield what did not fit, what is left over, and what only the paper shows."""
    if screen.unplaced:
        yield "<h2>Did not fit</h2>"
        yield from map(paragraph, screen.unplaced)
    if screen.offcuts:
        yield "<h2>Keep these offcuts</h2><ul>"
        for code, size in screen.offcuts:
            yield f"<li>{code_of(code)} {escape(size)}</li>"
        yield "</ul>"
    yield paragraph("Measure every part against its label before anything is glued.")
    yield paragraph(screen.on_paper)
