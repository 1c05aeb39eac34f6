"""The phone page as one HTML file that needs nothing else.

Its style and its script stand in it and are named by their hashes in the page's policy, so that
nothing is fetched, nothing is sent and no text of the user's can become a script. Without a
script all screens stand below each other.
"""

import base64
import hashlib
from collections.abc import Iterable
from html import escape
from pathlib import Path

from plans.phone.lettering import KEEP_TYPES, LEAST_TYPE, MARGIN, TARGET, WIDTH
from plans.phone.records import Cut, PhonePage, Place, Screen
from plans.writers.html_drawing import shared_drawings
from plans.writers.html_screens import screen_body

_HERE = Path(__file__).parent


def write_phone(page: PhonePage) -> bytes:
    """Return the phone page as one HTML file; the same page gives the same bytes."""
    style = "\n".join([_sizes(), (_HERE / "phone.css").read_text("utf-8")])
    script = (_HERE / "phone.js").read_text("utf-8")
    name = escape(page.job_name)
    lines = [
        "<!doctype html>",
        f'<html lang="en" data-plan="{escape(page.fingerprint)}">',
        "<head>",
        '<meta charset="utf-8">',
        f'<meta http-equiv="Content-Security-Policy" content="{_policy(style, script)}">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '<meta name="generator" content="setout">',
        f"<title>{name}, plan {escape(page.fingerprint)}</title>",
        f"<style>{style}</style>",
        "</head>",
        "<body>",
        *_bars(page),
        shared_drawings(page.views),
        f"<script>{script}</script>",
        "</body>",
        "</html>",
        "",
    ]
    return "\n".join(lines).encode()


def _policy(style: str, script: str) -> str:
    return (
        f"default-src 'none'; style-src '{_hash(style)}'; script-src '{_hash(script)}'; "
        "base-uri 'none'; form-action 'none'"
    )


def _hash(text: str) -> str:
    return f"sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}"


def _sizes() -> str:
    keeps = " ".join(
        f".keep{size} {{ font-size: min({size}px, {100 * size / WIDTH:.2f}vw); }}"
        for size in KEEP_TYPES
    )
    return (
        f":root {{ --target: {TARGET}px; --type: {LEAST_TYPE}px; --margin: {MARGIN}px; }}\n"
        f".name {{ font-size: {LEAST_TYPE}px; }} {keeps}"
    )


def _bars(page: PhonePage) -> Iterable[str]:
    yield (
        '<header id="head" hidden><button id="where" type="button"><span>'
        '<span id="title"></span><span id="count"></span></span>'
        '<span class="go">GO TO</span></button></header>'
    )
    yield "<main>"
    for screen in page.screens:
        yield _section(screen)
    yield "</main>"
    yield (
        '<footer id="foot" hidden><button id="undo" type="button">UNDO</button>'
        '<button id="next" type="button">NEXT</button></footer>'
    )
    yield '<nav id="places" hidden>'
    yield '<button id="close" type="button"><b>BACK</b> to where you were</button>'
    yield from (_place(place) for place in page.places)
    yield f"<p>{escape(page.job_name)}, plan {escape(page.fingerprint)}</p>"
    yield '<p id="forgets" hidden>This browser does not remember the step. Note it on paper.</p>'
    yield "</nav>"


def _place(place: Place) -> str:
    more = f" {escape(place.more)}" if place.more else ""
    return f'<button type="button" data-to="{place.key}"><b>{place.title}</b>{more}</button>'


def _section(screen: Screen) -> str:
    count = screen.count if isinstance(screen, Cut) else ""
    place = screen.key.partition("-cut-")[0]
    title = escape(screen.title)
    return (
        f'<section id="{screen.key}" data-place="{place}" data-title="{title}"'
        f' data-count="{escape(count)}">'
        f"<h1>{title} {escape(count)}</h1>{''.join(screen_body(screen))}</section>"
    )
