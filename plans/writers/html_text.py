"""Small pieces that several screens of the phone page share, as HTML; every text is escaped."""

from collections.abc import Iterable
from html import escape


def paragraph(words: str) -> str:
    """Return a paragraph, nothing without words."""
    return f"<p>{escape(words)}</p>" if words else ""


def short_cautions(lines: Iterable[str]) -> str:
    """Return short cautions as one paragraph that stands apart."""
    words = " ".join(lines)
    return f'<p class="cautions">{escape(words)}</p>' if words else ""


def tick(key: str, content: str) -> str:
    """Return an entry of a list with a box to tick; what is ticked is remembered by its key."""
    return (
        f'<li class="tick"><label><input type="checkbox" id="tick-{key}"><span>{content}</span>'
        "</label></li>"
    )


def ticks(prefix: str, contents: Iterable[str]) -> str:
    """Return a list of entries with boxes to tick."""
    entries = (tick(f"{prefix}-{place}", content) for place, content in enumerate(contents, 1))
    return f"<ul>{''.join(entries)}</ul>"


def underlined(code: str) -> str:
    """Return a code with 6 and 9 underlined, as on paper."""
    return "".join(f"<u>{sign}</u>" if sign in "69" else escape(sign) for sign in code)


def code_of(code: str) -> str:
    """Return a code in large type."""
    return f'<span class="code">{underlined(code)}</span>'


def named(code_and_name: tuple[str, str]) -> str:
    """Return a code in large type with the name behind it."""
    code, name = code_and_name
    return code_of(code) + (f" {escape(name)}" if name else "")
