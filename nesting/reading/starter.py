"""A first job file: commented, and one that plans as it stands."""

import json
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal, InvalidOperation
from pathlib import Path
from string import Template
from typing import Final

from nesting.errors import Fault, InputError
from nesting.lengths import Unit
from nesting.reading.cabinet_table import MOST_CABINETS
from nesting.reading.job_toml import read_job_text
from nesting.reading.values import as_choice, as_length, as_number, as_text, as_whole, refusal

_BARE = re.compile(r"(0|[1-9][0-9]*)(\.[0-9]+)?")


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question about the job.

    Attributes:
        key: Under which the answer is handed on.
        text: The question as it is asked.
        in_mm: The default where the job is in millimetres, or in whatever unit.
        in_inches: The default where the job is in inches; empty where it is the same.
        check: Returns the answer as it is written into the file, or raises an `InputError`
            without a place.
    """

    key: str
    text: str
    in_mm: str
    in_inches: str = ""
    check: Callable[[str, Unit], str]

    def default(self, answers: Mapping[str, str]) -> str:
        """Return what is proposed, given the answers to the questions before."""
        is_inch = answers.get("units", "").strip().lower() == Unit.INCH.value
        return self.in_inches if is_inch and self.in_inches else self.in_mm


def _write_text(answer: str, _unit: Unit) -> str:
    return json.dumps(as_text(answer), ensure_ascii=False)


def _write_unit(answer: str, _unit: Unit) -> str:
    return json.dumps(as_choice(answer, Unit).value)


def _write_length(answer: str, unit: Unit) -> str:
    as_length(answer, unit)
    return _write_figures(answer)


def _write_kerf(answer: str, unit: Unit) -> str:
    as_length(answer, unit, may_be_zero=True)
    return _write_figures(answer)


def _write_figures(answer: str) -> str:
    plain = answer.strip()
    return plain if _BARE.fullmatch(plain) else json.dumps(plain, ensure_ascii=False)


def _write_count(answer: str, _unit: Unit) -> str:
    plain = answer.strip()
    number = int(plain) if re.fullmatch(r"-?[0-9]{1,9}", plain) else answer
    return str(as_whole(number, least=1, most=MOST_CABINETS))


def _write_price(answer: str, _unit: Unit) -> str:
    try:
        price = Decimal(answer.strip())
    except InvalidOperation:
        raise refusal(f"{answer!r} is not a number", "Write a price such as 62.50.") from None
    return f"{as_number(price, least=Decimal(0)):f}"


QUESTIONS: Final = (
    Question(key="name", text="Title of the job", in_mm="Hall cabinets", check=_write_text),
    Question(key="units", text="Unit of bare numbers, mm or in", in_mm="mm", check=_write_unit),
    Question(
        key="height",
        text="Outside height of a cabinet",
        in_mm="900",
        in_inches="35 1/2",
        check=_write_length,
    ),
    Question(
        key="width", text="Outside width", in_mm="480", in_inches="18 7/8", check=_write_length
    ),
    Question(
        key="depth", text="Outside depth", in_mm="450", in_inches="17 3/4", check=_write_length
    ),
    Question(key="count", text="How many cabinets", in_mm="2", check=_write_count),
    Question(
        key="sheet_length",
        text="Length of a sheet, along its face grain",
        in_mm="2440",
        in_inches="96",
        check=_write_length,
    ),
    Question(
        key="sheet_width",
        text="Width of a sheet",
        in_mm="1220",
        in_inches="48",
        check=_write_length,
    ),
    Question(
        key="thickness",
        text="Thickness that the sheet is sold as",
        in_mm="18",
        in_inches="3/4",
        check=_write_length,
    ),
    Question(key="price", text="Price of a sheet", in_mm="60.00", check=_write_price),
    Question(key="kerf", text="Kerf of the saw", in_mm="2.4", in_inches="3/32", check=_write_kerf),
)

_USUAL: Final = {
    Unit.MM: {
        "trim": "10",
        "set_back": "20",
        "section": "[20, 30]",
        "guide": "2700",
        "left": "38",
        "right": "130",
        "shelf": "562",
        "shelf_width": "300",
    },
    Unit.INCH: {
        "trim": '"3/8"',
        "set_back": '"3/4"',
        "section": '["3/4", "1 1/8"]',
        "guide": "106",
        "left": '"1 1/2"',
        "right": '"5 1/8"',
        "shelf": '"22 1/8"',
        "shelf_width": '"11 3/4"',
    },
}
_REMARK = re.compile(r"(?m)^(.*)\t# ")  # no answer has a tab
_REMARKS_AT: Final = 34

_TEXT: Final = Template("""\
# A job for setout. Whatever follows a # is a remark. Bare numbers are in the unit named below;
# text in quotes may name its own, such as "18 mm" or "23/32 in".

[job]
name = $name
units = $units

[saw]
kerf = $kerf\t# cut a scrap in two and measure what is missing
# guide_length = $guide\t# the longest cut that your guide can lead
# base_left = $left\t# left edge of the base plate to the kerf
# base_right = $right\t# kerf to the right edge of the base plate
# marked_face = "back"\t# "back": the good face lies down; "front": it lies up

[[sheet]]
name = "plywood"
material = "plywood"
thickness = $thickness\t# as it is sold
# measured = ["17.7 mm", "17.8 mm"]\t# readings of the sheets in hand
length = $sheet_length
width = $sheet_width
grain = "length"\t# the side that the face grain runs along: "length", "width" or "none"
price = $price\t# of one sheet
trim = $trim\t# not used along each edge

[[cabinet]]
name = "Cabinet"
family = "box"
count = $count
height = $height\t# outside, bare wood
width = $width
depth = $depth
through = "sides"\t# these run past top and bottom; or "top and bottom"
baffle = { fit = "inset", set_back = $set_back, wrapped = false }
back = { fit = "inset", wrapped = false }
battens = { section = $section }

[cabinet.answers]\t# parts that are easily forgotten: say what you have decided
feet = "none"
grille = "none"
handles = "none"
port_rings = "none"
spare = "none"

# More parts, one table for each; take the # away from its lines:
# [[part]]
# name = "Shelf"
# length = $shelf
# width = $shelf_width
# grain = "length"\t# the side that must run with the face grain: "length", "width" or "any"
""")


def starter_job(answers: Mapping[str, str]) -> str:
    """Return the text of a job file made from the answers to `QUESTIONS`.

    Args:
        answers: An answer for each question, under its key.

    Raises:
        InputError: An answer will not do, or no cabinet can be built from them all.
    """
    try:
        unit = as_choice(answers["units"], Unit)
    except InputError:
        unit = Unit.MM
    written: dict[str, str] = {}
    faults: list[Fault] = []
    for question in QUESTIONS:
        try:
            written[question.key] = question.check(answers[question.key], unit)
        except InputError as error:
            faults += [replace(fault, where=question.text) for fault in error.faults]
    if faults:
        raise InputError(faults)
    text = _TEXT.substitute(written, **_USUAL[unit])
    text = _REMARK.sub(lambda found: f"{found[1]:<{_REMARKS_AT}}  # ", text)
    read_job_text(text, Path("the job file"))
    return text
