"""What a finished PDF says besides its cut tables: sums, the parts list, the yard's pages.

Read back from the words of its pages alone; nothing of what made them is used.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from io import BytesIO

import pdfplumber

from tests.plans.pdf_reading import NEAR, Word, page_text, page_words

SUMS = "What each piece adds up to"
_FIGURE = r"\d+(?: \d+/\d+)?(?:\.\d+)?|\d+/\d+"
_SUM = re.compile(rf"\b((?:[SP]\d+, )*[SP]\d+) ((?:{_FIGURE}) = .*? left)\b")
_SLACK = re.compile(rf" ?\bslack (?:{_FIGURE})(?: TIGHT)?")
_SHEET = re.compile(r"Sheet (\d+)\b")
_CODE = re.compile(r"[A-Z]{1,2}\d+")
_CUT = re.compile(
    rf"CUT (\d+): ({_FIGURE}) from the (left|top|bottom) edge(?: of the piece of "
    rf"({_FIGURE}) × ({_FIGURE}))?"
)
_PATTERN = re.compile(r"sheets?, cut like this (.*?) For us: sheets? ([\d, and]+) of the plan")
_PIECE = re.compile(rf"({_FIGURE}) × ({_FIGURE})")
LARGE = 17.0  # points; sizes of the parts list are set larger, notes smaller


@dataclass(frozen=True, slots=True)
class PrintedPart:
    """A line of the parts list: where a part comes from, and its finished size."""

    finished: str
    sheet: str
    cut: str


@dataclass(frozen=True, slots=True)
class PrintedPattern:
    """How the yard cuts some sheets: their numbers, each cut's size, edge and piece, the codes."""

    sheets: tuple[int, ...]
    cuts: tuple[tuple[str, str], ...]
    codes: frozenset[str]
    unit: str


def read_sums(pdf: bytes) -> dict[int, dict[str, str]]:
    """Return for the number of every sheet its sums by piece; pieces may share one."""
    texts: dict[int, str] = {}
    with pdfplumber.open(BytesIO(pdf)) as document:
        for page in document.pages:
            text = page_text(page)
            title = _SHEET.match(text)
            if title is None:
                continue
            number = int(title[1])
            if number in texts:
                # a sum list that goes on has no heading of its own, but its page's head before it
                _, _, after = text.partition(SUMS)
                texts[number] += " " + (after if SUMS in text else _below_head(text))
            elif SUMS in text:
                texts[number] = text.partition(SUMS)[2]
    return {
        number: {
            code: words
            for codes, words in _SUM.findall(_SLACK.sub("", text))
            for code in codes.split(", ")
        }
        for number, text in texts.items()
    }


def _below_head(text: str) -> str:
    return text if "KEEP" not in text else ""


def read_parts(pdf: bytes) -> dict[str, PrintedPart]:
    """Return the parts list by code. Copies stand below the size that they share."""
    found: dict[str, PrintedPart] = {}
    size = ""
    with pdfplumber.open(BytesIO(pdf)) as document:
        for page in document.pages:
            if not page_text(page).startswith("Parts"):
                continue
            words = page_words(page)
            top = max(word.baseline for word in words if word.text == "code")
            lines = dict(_sizes(words, top))
            for code in sorted(_codes(words, top), key=lambda word: (word.baseline, word.x)):
                own = [line for line in lines if line < code.baseline + 1.0]
                size = lines[max(own)] if own else size
                sheet, cut = (_beside(code, name, words) for name in ("sheet", "cut"))
                if sheet:  # the page may go on with parts that are measured first
                    found[code.text] = PrintedPart(finished=size, sheet=sheet, cut=cut)
    return found


def _codes(words: list[Word], top: float) -> Iterator[Word]:
    """Yield the codes: bold and large."""
    for word in words:
        is_code = _CODE.fullmatch(word.text) and word.is_bold and word.size > LARGE
        if is_code and word.baseline > top:
            yield word


def _sizes(words: list[Word], top: float) -> Iterator[tuple[float, str]]:
    """Yield the baseline and the text of every finished size; one of two lines is put together."""
    large = [w for w in words if w.size > LARGE and not w.is_bold and w.baseline > top]
    lines: dict[float, list[Word]] = {}
    for word in large:
        line = next((y for y in lines if abs(y - word.baseline) < NEAR), word.baseline)
        lines.setdefault(line, []).append(word)
    texts = {
        y: " ".join(word.text for word in sorted(own, key=lambda word: word.x))
        for y, own in sorted(lines.items())
    }
    for y, text in texts.items():
        if text.endswith("×"):
            yield y, f"{text} {texts[min(below for below in texts if below > y)]}"
        elif "×" in text:
            yield y, text


def _beside(code: Word, name: str, words: list[Word]) -> str:
    """Return what stands behind the nearest such word to the right of a code; "" for none."""
    places = [
        place
        for place, word in enumerate(words)
        if word.text == name and word.x > code.end and -8.0 < word.baseline - code.baseline < 4.0
    ]
    return words[min(places, key=lambda place: words[place].x) + 1].text if places else ""


def read_yard(pdf: bytes) -> list[PrintedPattern]:
    """Return what the yard is asked for, pattern by pattern."""
    found = []
    with pdfplumber.open(BytesIO(pdf)) as document:
        text = " ".join(
            page_text(page) for page in document.pages if page_text(page).startswith("For the yard")
        )
    unit = "in" if "All sizes in inches" in text else "mm"
    for body, numbers in _PATTERN.findall(text):
        found.append(
            PrintedPattern(
                sheets=tuple(map(int, re.findall(r"\d+", numbers))),
                cuts=tuple((size, edge) for _, size, edge, *_ in _CUT.findall(body)),
                codes=frozenset(_CODE.findall(body)),
                unit=unit,
            )
        )
    return found
