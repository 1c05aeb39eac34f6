"""The cut tables of a finished PDF, read back from where its words stand.

Nothing of what made the pages is used but the meaning of the columns: they are found by their
heads, rows by the number of their cut, and what is struck out by the stroke through it.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Any

import pdfplumber

Json = dict[str, Any]

POINTS_PER_MM = 72 / 25.4
HEADS = ("cut", "take", "measure", "guide", "is")
SECOND_HEADS = {"KEEP", "its", "size", "from", "falls", "free"}
FIRST_LINE = -5.2  # of a row, in mm from the baseline of its cut number
LINE_STEP = 6.5
NEAR = 0.6
_TITLE = re.compile(r"Sheet (?P<number>\d+)(?: × (?P<count>\d+))?(?:, page \d+)?(?=\s|$)")
_ALIKE = re.compile(r"SHEETS ARE CUT ALIKE: ([\d, and]+)\.")
_SIZE = re.compile(r"(\S+(?: \d+/\d+)? × \S+?(?: \d+/\d+)?), (?:measured|thickness not)")
_TRIMS = re.compile(
    r"Not used along the edges: (left .+?, right .+?, top .+?, bottom .+?)\.(?=\s|$)"
)


@dataclass(frozen=True, slots=True)
class Word:
    """A word, its start and baseline in mm from the top left of the page, its size in points."""

    text: str
    x: float
    end: float
    baseline: float
    is_bold: bool = False
    size: float = 0.0


@dataclass(frozen=True, slots=True)
class PrintedSheet:
    """What the pages say of one sheet."""

    number: int
    size: str
    trims: str
    rows: tuple[Json, ...]


def read_sheets(pdf: bytes) -> list[PrintedSheet]:
    """Return the sheets of a plan's PDF with their cut tables, over all their pages.

    Sheets that are cut alike stand there once: the rows of the copies carry their own codes.
    """
    pages: dict[int, list[Any]] = {}
    found = []
    with pdfplumber.open(BytesIO(pdf)) as document:
        for page in document.pages:
            title = _TITLE.match(page_text(page))
            if title is not None:
                pages.setdefault(int(title["number"]), []).append(page)
        for number, own in pages.items():
            text = " ".join(map(page_text, own))
            size, trims, alike = (pattern.search(text) for pattern in (_SIZE, _TRIMS, _ALIKE))
            rows = _with_settings([row for page in own for row in _rows(page)])
            copies = [int(other) for other in re.findall(r"\d+", alike[1])] if alike else [number]
            codes = _codes_of_copies(own, text, copies[1:])
            found += [
                PrintedSheet(
                    number=copy,
                    size=size[1] if size else "",
                    trims=trims[1] if trims else "",
                    rows=tuple(_renamed(row, number, copy, codes) for row in rows),
                )
                for copy in copies
            ]
    return sorted(found, key=lambda sheet: sheet.number)


def page_text(page: Any) -> str:  # noqa: ANN401
    """Return the words of a page, line by line, one white between them."""
    return " ".join(page.extract_text(x_tolerance=1.2).split())


def _codes_of_copies(
    pages: Sequence[Any], text: str, copies: Sequence[int]
) -> dict[tuple[int, str], str]:
    """Return for a copy and a code drawn the code that stands at the foot for it."""
    codes: dict[tuple[int, str], str] = {}
    for page in pages if copies else ():
        words = page_words(page)
        heads = [word for word in words if word.text == "drawn," and word.is_bold]
        drawn, place = "", 0
        for word in words:
            if not heads or word.baseline < heads[0].baseline + 2:
                continue
            if word.is_bold:
                drawn, place = word.text, 0
            elif drawn and place < len(copies):
                codes[copies[place], drawn] = word.text.rstrip(",")
                place += 1
    for copy in copies:
        pairs = re.search(rf"Sheet {copy}: ((?:\w+ is \w+,? ?)+)\.", text)
        for first, second in re.findall(r"(\w+) is (\w+)", pairs[1]) if pairs else ():
            codes[copy, first] = second
        step = re.search(rf"Sheet {copy}: add (\d+) to the figure of every P", text)
        if step:
            codes[copy, "P"] = step[1]
    return codes


def _renamed(row: Json, first: int, copy: int, codes: dict[tuple[int, str], str]) -> Json:
    """Return a row with the codes of a copy."""

    def rename(code: str) -> str:
        if copy == first or code in ("", "WASTE"):
            return code
        if code == f"S{first}":
            return f"S{copy}"
        if code.startswith("P") and (copy, "P") in codes:
            return f"P{int(code[1:]) + int(codes[copy, 'P'])}"
        return codes.get((copy, code), f"no code for {code}")

    return row | {key: rename(row[key]) for key in ("hold", "keep_code", "free_code")}


def _rows(page: Any) -> Iterator[Json]:  # noqa: ANN401
    words = page_words(page)
    head = next(_heads(words), None)
    if head is None:
        return
    columns, top = head
    numbers = sorted(
        (word for word in words if abs(word.x - columns["cut"]) < NEAR and word.baseline > top),
        key=lambda word: word.baseline,
    )
    foot = min(
        (word.baseline for word in words if word.x < columns["cut"] - 2 and word.baseline > top),
        default=1e9,
    )
    numbers = [word for word in numbers if word.baseline < foot and word.text.isdigit()]
    for number in numbers:
        yield _row(number, words, columns, _strikes(page))


def _heads(words: Sequence[Word]) -> Iterator[tuple[dict[str, float], float]]:
    """Yield where the columns of a table begin, and the baseline of the second line of heads."""
    for keep in words:
        if keep.text != "KEEP":
            continue
        second = {word.text for word in words if abs(word.baseline - keep.baseline) < NEAR}
        if second < SECOND_HEADS:
            continue
        first = [word for word in words if 0 < keep.baseline - word.baseline < LINE_STEP]
        columns = {word.text: word.x for word in first if word.text in HEADS}
        if set(columns) == set(HEADS):
            yield {**columns, "keep": keep.x}, keep.baseline


def _row(
    number: Word, words: Sequence[Word], columns: dict[str, float], strikes: Sequence[Word]
) -> Json:
    first = number.baseline + FIRST_LINE

    def line(column: str, after: str, baseline: float) -> list[Word]:
        start, end = columns[column] - NEAR, columns[after] - NEAR if after else 1e9
        found = [
            word for word in words if start <= word.x < end and abs(word.baseline - baseline) < NEAR
        ]
        return sorted(found, key=lambda word: word.x)

    def text(column: str, after: str, baseline: float) -> str:
        return " ".join(word.text for word in line(column, after, baseline))

    second = first + LINE_STEP
    size = text("take", "measure", second)
    if size.endswith("×"):
        size = f"{size} {text('take', 'measure', second + LINE_STEP)}"
    edge, below = text("measure", "keep", first), text("measure", "keep", second)
    guides = {"left": line("guide", "is", first), "right": line("guide", "is", second)}
    struck = [
        side
        for side, figure in guides.items()
        if any(
            stroke.x < figure[-1].end
            and stroke.end > figure[-1].x
            and 0.8 < figure[-1].baseline - stroke.baseline < 4.5
            for stroke in strikes
            if figure
        )
    ]
    return {
        "number": number.text,
        "hold": line("take", "measure", first)[0].text,
        "hold_size": size,
        "direction": "crosscut" if edge == "left" else "rip",
        "measure_from": f"{edge} edge",
        "keep": text("keep", "guide", number.baseline),
        "keep_code": text("is", "", first),
        "guide_left": " ".join(word.text for word in guides["left"]).removeprefix("L "),
        "guide_right": " ".join(word.text for word in guides["right"]).removeprefix("R "),
        "unusable": {0: "", 1: "".join(struck), 2: "both"}[len(struck)],
        "free_code": text("is", "", second),
        "same_as": below.removeprefix("as cut ") if below.startswith("as cut ") else "",
    }


def _with_settings(rows: Sequence[Json]) -> list[Json]:
    """Number the settings as a person counts them: a new one wherever no older one is named."""
    numbered, setting = [], 0
    for row in rows:
        setting += not row["same_as"]
        numbered.append({key: row[key] for key in row if key != "same_as"} | {"setting": setting})
    return numbered


def page_words(page: Any) -> list[Word]:  # noqa: ANN401
    """Return the level words of a page."""
    words = page.extract_words(
        x_tolerance=1.2, extra_attrs=["size", "fontname", "upright"], return_chars=True
    )
    return [
        Word(
            word["text"],
            word["x0"] / POINTS_PER_MM,
            word["x1"] / POINTS_PER_MM,
            (float(page.height) - word["chars"][0]["matrix"][5]) / POINTS_PER_MM,
            "Bold" in word["fontname"],
            word["size"],
        )
        for word in words
        if word["upright"]
    ]


def _strikes(page: Any) -> list[Word]:  # noqa: ANN401
    """Return every level stroke of the page."""
    return [
        Word(
            "",
            line["x0"] / POINTS_PER_MM,
            line["x1"] / POINTS_PER_MM,
            line["top"] / POINTS_PER_MM,
        )
        for line in page.lines
        if abs(line["top"] - line["bottom"]) < 1
    ]
