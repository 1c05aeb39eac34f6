"""An independent judge of plan files for tests, written from what a plan file must be.

It uses nothing of the project: exact fractions and the standard library. Lengths in a plan file
are decimal millimetres written to 0.001, so two agree when they differ by at most 0.002.
"""

from collections import Counter
from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import combinations
from typing import Any, NamedTuple, TypeAlias

Json: TypeAlias = Mapping[str, Any]

WRITTEN = Fraction(2, 1000)
MM_PER_INCH = Fraction(254, 10)


class Area(NamedTuple):
    """A rectangle by its corners, in millimetres."""

    left: Fraction
    low: Fraction
    right: Fraction
    high: Fraction

    @property
    def size(self) -> Fraction:
        return (self.right - self.left) * (self.high - self.low)

    def holds(self, other: "Area") -> bool:
        return (
            other.left >= self.left - WRITTEN
            and other.low >= self.low - WRITTEN
            and other.right <= self.right + WRITTEN
            and other.high <= self.high + WRITTEN
        )

    def is_like(self, other: "Area") -> bool:
        return self.holds(other) and other.holds(self)


def faults_of(document: Json, job_document: Json | None = None) -> list[str]:
    """Return every rule that a plan breaks; with the parsed job file also the job's own.

    Part counts are held to the job only where all its parts stand in [[part]] tables.
    """
    faults = [
        f"sheet {sheet['number']}: {fault}"
        for sheet in document["sheets"]
        for fault in _sheet_faults(sheet, exact(document["saw"]["kerf"]))
    ]
    faults.extend(_plan_faults(document))
    if job_document is not None:
        faults.extend(_job_faults(document, job_document))
    return faults


def exact(number: float | str) -> Fraction:
    return Fraction(str(number))


def area_of(thing: Json) -> Area:
    x, y = exact(thing["x"]), exact(thing["y"])
    return Area(x, y, x + exact(thing["length"]), y + exact(thing["width"]))


def _plan_faults(document: Json) -> Iterator[str]:
    if (document["format"], document["version"]) != ("setout plan", 1):
        yield "it is not a plan of version 1"
    cost = sum((exact(sheet["price"]) for sheet in document["sheets"]), start=Fraction(0))
    if abs(cost - exact(document["cost"])) > Fraction(1, 1000):
        yield f"it costs {document['cost']}, its sheets {float(cost)}"
    if not document["unplaced"] and exact(document["bound"]) > cost + Fraction(1, 1000):
        yield f"it costs {document['cost']}, less than its own bound {document['bound']}"
    codes = Counter(
        thing["code"] for sheet in document["sheets"] for thing in sheet["parts"] + sheet["offcuts"]
    )
    yield from (f"{count} things are called {code}" for code, count in codes.items() if count > 1)
    for entry in document["unplaced"]:
        if entry["count"] < 1 or not entry["reason"] or not entry["name"]:
            yield f"the unplaced entry {entry} is not whole"


def _sheet_faults(sheet: Json, home_kerf: Fraction) -> Iterator[str]:
    yield from _placing_faults(sheet, home_kerf)
    pieces = [Area(Fraction(0), Fraction(0), exact(sheet["length"]), exact(sheet["width"]))]
    whole = pieces[0].size
    dust = Fraction(0)
    for place, cut in enumerate(sheet["cuts"], start=1):
        if cut["number"] != place:
            yield f"cut {place} carries the number {cut['number']}"
        if cut["by"] == "home" and exact(cut["kerf"]) != home_kerf:
            yield f"cut {place}: its kerf is not the saw's"
        crossed = [piece for piece in pieces if _runs_across(cut, piece)]
        if len(crossed) != 1:
            yield f"cut {place} runs from edge to edge across {len(crossed)} pieces"
            return
        pieces.remove(crossed[0])
        yield from (f"cut {place}: {fault}" for fault in _kerf_faults(cut, crossed[0]))
        pieces.extend(_halves(cut, crossed[0]))
        dust += area_of(cut["band"]).size
    total = dust + sum(piece.size for piece in pieces)
    if abs(total - whole) > WRITTEN * (exact(sheet["length"]) + exact(sheet["width"])) * len(
        pieces
    ):
        yield f"pieces and dust make up {float(total)} of {float(whole)} square millimetres"
    for thing in [*sheet["parts"], *sheet["offcuts"]]:
        matching = [piece for piece in pieces if piece.is_like(area_of(thing))]
        if not matching:
            yield f"no piece is {thing['code']} when the last cut is done"
        else:
            pieces.remove(matching[0])


def _placing_faults(sheet: Json, home_kerf: Fraction) -> Iterator[str]:
    trim = {side: exact(value) for side, value in sheet["trim"].items()}
    usable = Area(
        trim["left"],
        trim["bottom"],
        exact(sheet["length"]) - trim["right"],
        exact(sheet["width"]) - trim["top"],
    )
    kerf = min([home_kerf, *(exact(cut["kerf"]) for cut in sheet["cuts"])])
    for part in sheet["parts"]:
        if not usable.holds(area_of(part)):
            yield f"part {part['code']} leaves the usable area"
        along_x = "width" if part["turned"] else "length"
        # The side that must run with the grain lies along x exactly if the sheet's grain does.
        is_across = (part["grain"] == along_x) != (sheet["grain"] == "length")
        if part["grain"] != "any" and sheet["grain"] != "none" and is_across:
            yield f"part {part['code']} lies across the grain"
    for one, other in combinations(sheet["parts"], 2):
        mine, its = area_of(one), area_of(other)
        apart = max(
            its.left - mine.right, mine.left - its.right, its.low - mine.high, mine.low - its.high
        )
        if apart < kerf - WRITTEN:
            yield f"parts {one['code']} and {other['code']} are less than a kerf apart"


def _runs_across(cut: Json, piece: Area) -> bool:
    band = area_of(cut["band"])
    if not piece.holds(band):
        return False
    if cut["direction"] == "rip":
        return abs(band.left - piece.left) <= WRITTEN and abs(band.right - piece.right) <= WRITTEN
    return abs(band.low - piece.low) <= WRITTEN and abs(band.high - piece.high) <= WRITTEN


def _kerf_faults(cut: Json, piece: Area) -> Iterator[str]:
    band = area_of(cut["band"])
    if cut["direction"] == "rip":
        removed, rest = band.high - band.low, (band.low - piece.low, piece.high - band.high)
    else:
        removed, rest = band.right - band.left, (band.left - piece.left, piece.right - band.right)
    kerf = exact(cut["kerf"])
    if removed > kerf + WRITTEN or (removed < kerf - WRITTEN and min(rest) > WRITTEN):
        yield f"it removes {float(removed)}, the kerf is {float(kerf)}"


def _halves(cut: Json, piece: Area) -> Iterator[Area]:
    band = area_of(cut["band"])
    if cut["direction"] == "rip":
        halves = piece._replace(high=band.low), piece._replace(low=band.high)
    else:
        halves = piece._replace(right=band.left), piece._replace(left=band.right)
    for half in halves:
        if half.right - half.left > WRITTEN and half.high - half.low > WRITTEN:
            yield half


def _job_faults(document: Json, job: Json) -> Iterator[str]:
    wanted = {part["name"]: part for part in job.get("part", [])}
    is_whole = not job.get("cabinet") and not job.get("part_list")
    got: Counter[str] = Counter()
    for sheet in document["sheets"]:
        for part in sheet["parts"]:
            got[part["name"]] += 1
            if part["name"] in wanted:
                yield from _part_faults(part, wanted[part["name"]], sheet, job)
    for entry in document["unplaced"]:
        got[entry["name"]] += entry["count"]
    counts = Counter({name: part.get("count", 1) for name, part in wanted.items()})
    for name in sorted({*counts, *got} if is_whole else counts):
        if counts[name] != got[name]:
            yield f"{counts[name]} of {name!r} are asked for, {got[name]} are accounted for"
    stocks = {stock["name"]: stock for stock in job.get("sheet", [])}
    for name, used in Counter(sheet["stock"] for sheet in document["sheets"]).items():
        if name not in stocks:
            yield f"there is no stock {name!r}"
        elif used > stocks[name].get("count", used):
            yield f"{used} of {stocks[name]['count']} sheets {name!r} are used"


def _part_faults(part: Json, wanted: Json, sheet: Json, job: Json) -> Iterator[str]:
    inches = job.get("job", {}).get("units", "mm") == "in"
    extra = in_mm(wanted.get("oversize", 0), inches=inches)
    lying = exact(part["length"]), exact(part["width"])
    own = lying[::-1] if part["turned"] else lying
    for side, blank, finished in zip(("length", "width"), own, part["finished"], strict=True):
        asked = in_mm(wanted[side], inches=inches)
        if abs(exact(finished) - asked) > WRITTEN:
            yield f"the {side} of {part['code']} is {finished}, not {float(asked)}"
        if abs(blank - asked - extra) > WRITTEN:
            yield f"the blank {side} of {part['code']} is {float(blank)}"
    if part["grain"] != wanted.get("grain", "any"):
        yield f"the grain of {part['code']} is {part['grain']}"
    if sheet["material"] != wanted.get("material", sheet["material"]):
        yield f"{part['code']} is of {sheet['material']}"
    if "thickness" in wanted:
        thickness = in_mm(wanted["thickness"], inches=inches)
        if abs(thickness - exact(sheet["thickness"])) > WRITTEN:
            yield f"{part['code']} is {sheet['thickness']} thick, not {float(thickness)}"


def in_mm(value: float | str, *, inches: bool) -> Fraction:
    """Return millimetres of a job file's length: a number, or text such as "14 1/8 in"."""
    text = str(value).strip()
    for suffix, is_inch in (("mm", False), ("in", True), ('"', True)):
        if text.endswith(suffix):
            text, inches = text.removesuffix(suffix), is_inch
    figures = sum((Fraction(figure) for figure in text.split()), start=Fraction(0))
    return figures * MM_PER_INCH if inches else figures
