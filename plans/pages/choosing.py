"""Some pages of a plan, by name or number; they keep the numbers that they have in the whole."""

import re
from collections.abc import Iterator, Sequence

from nesting.errors import Fault, InputError
from plans.pages.frame import TITLES_APART
from plans.pages.shapes import Page

_RANGE = re.compile(r"([0-9]+)(?:-([0-9]+))?")
_ONE_OF_MANY = re.compile(r"sheets?( [0-9]+)?|template h[0-9]+")

PAGE_NAMES = (
    "overview",
    "numbers to check",
    "shopping list",
    "for the yard",
    "into the car",
    "safety",
    "setting up",
    "order of work",
    "sheets",
    "read aloud",
    "parts",
    "measure first",
    "frame and joints",
    "assembly",
    "holes",
    "template",
    "checks",
    "covering",
    "labels",
    "offcuts and log",
)
"""What pages of a plan are called, in their order; a plan has those that it needs."""


def check_page_names(wanted: str) -> None:
    """Let nothing pass that no plan can have, before a plan is searched for.

    Args:
        wanted: As for `choose_pages`.

    Raises:
        InputError: A name stands for no page of any plan, or a number for none.
    """
    faults = [
        Fault(
            where="--pages",
            what=f"no page of a plan is called {word!r}",
            remedy=f"Name some of: {', '.join(PAGE_NAMES)}; one sheet as 'sheet 2'; or numbers, "
            "as 3,5-8.",
        )
        for word in (part.strip() for part in wanted.split(","))
        if not _may_exist(word.lower())
    ]
    if faults:
        raise InputError(faults)


def _may_exist(word: str) -> bool:
    """Return whether some plan may have a page of that name or number."""
    numbers = _RANGE.fullmatch(word)
    if numbers:
        return int(numbers[1]) > 0 and int(numbers[2] or numbers[1]) >= int(numbers[1])
    if _ONE_OF_MANY.fullmatch(word):
        return True
    return bool(word) and any(_is_called(title, word) for title in PAGE_NAMES)


def choose_pages(pages: Sequence[Page], wanted: str) -> tuple[Page, ...]:
    """Return the pages asked for, in the order of the plan.

    Args:
        pages: All pages of a plan.
        wanted: Names and numbers with commas between: "overview,sheets,labels", "3,5-8",
            "sheet 2". A name stands for all pages whose title begins with it.

    Raises:
        InputError: A name or number stands for no page.
    """
    chosen: set[int] = set()
    faults = []
    for word in (part.strip() for part in wanted.split(",")):
        found = tuple(_find(pages, word))
        chosen.update(found)
        if not found:
            names = ", ".join(_names(pages))
            faults.append(
                Fault(
                    where="--pages",
                    what=f"no page of this plan is called {word!r}",
                    remedy=f"Name some of: {names}; or numbers from 1 to {len(pages)}, as 3,5-8.",
                )
            )
    if faults:
        raise InputError(faults)
    return tuple(page for number, page in enumerate(pages) if number in chosen)


def _find(pages: Sequence[Page], word: str) -> Iterator[int]:
    """Yield the places, from 0, of the pages that a name or a number or a range stands for."""
    numbers = _RANGE.fullmatch(word)
    if numbers:
        first = int(numbers[1])
        last = int(numbers[2] or first)
        yield from range(max(first, 1) - 1, min(last, len(pages)))
        return
    for place, page in enumerate(pages):
        titles = page.title.lower().split(TITLES_APART)
        if word and any(_is_called(title, word.lower()) for title in titles):
            yield place


def _is_called(title: str, word: str) -> bool:
    """Return whether a title begins with a name, its last word whole: "sheet 1", not "sheet 12"."""
    names = {word, word.removesuffix("s")}
    return any(title == name or re.match(rf"{re.escape(name)}\b", title) for name in names)


def _names(pages: Sequence[Page]) -> tuple[str, ...]:
    """Return what pages are called, those of the sheets together."""
    titles = (
        title.split(",")[0] for page in pages for title in page.title.lower().split(TITLES_APART)
    )
    return tuple(
        dict.fromkeys("sheets" if title.startswith("sheet ") else title for title in titles)
    )
