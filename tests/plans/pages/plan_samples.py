"""Plans made by hand and by a seeded generator, for the tests of pages and writers.

Sheets are trees of cuts like those of a real plan, so that everything drawn has somewhere to be.
The prices are invented.
"""

import random
from dataclasses import dataclass

from nesting.layout import Direction, Rect
from nesting.lengths import Unit, format_length, mm
from plans.plan import Plan
from plans.sections.cautions import Caution
from plans.sections.cut_table import CutRow, StripSum
from plans.sections.labels import Label
from plans.sections.offcuts import OffcutRow
from plans.sections.overview import AssumedNumber, Overview
from plans.sections.part_list import PartRow
from plans.sections.sheet_view import CutView, PartView, RestView, SheetView
from plans.sections.shopping import OtherLine, SheetLine, Shopping

LETTERS = "ABCDEFJKRTUVY"
BASE_LEFT, BASE_RIGHT = mm(38), mm(130)


@dataclass(frozen=True, kw_only=True)
class Leaf:
    """A part, an offcut ("L…") or, without a code, waste."""

    code: str = ""
    name: str = ""
    status: str = "final"


@dataclass(frozen=True, kw_only=True)
class Split:
    """A cut: the size kept, what is kept and what is beyond the kerf."""

    direction: Direction
    at: int
    first: "Split | Leaf | None"
    second: "Split | Leaf | None"
    is_trim: bool = False


class SheetMaker:
    """Turns a tree of cuts into a sheet as it is drawn, cut by cut."""

    def __init__(self, unit: Unit, kerf: int, home: str) -> None:
        self.unit, self.kerf, self.home = unit, kerf, home
        self.parts: list[PartView] = []
        self.rests: list[RestView] = []
        self.cuts: list[CutView] = []
        self.rows: list[CutRow] = []
        self.trims: list[Rect] = []
        self.sums: list[StripSum] = []
        self.pieces = 0
        self.settings = 0
        self.last_keep = ""

    def text(self, length: int) -> str:
        return format_length(length, self.unit)

    def size(self, rect: Rect) -> str:
        return f"{self.text(rect.length)} × {self.text(rect.width)}"

    def cut_up(self, node: Split | Leaf | None, rect: Rect, code: str) -> None:
        if node is None or rect.length <= 0 or rect.width <= 0:
            return
        if isinstance(node, Leaf):
            self.leaf(node, rect)
            return
        is_rip = node.direction is Direction.RIP
        extent = rect.width if is_rip else rect.length
        removed = min(self.kerf, extent - node.at)
        beyond = node.at + removed
        if is_rip:
            first = Rect(x=rect.x, y=rect.y, length=rect.length, width=node.at)
            band = Rect(x=rect.x, y=rect.y + node.at, length=rect.length, width=removed)
            second = Rect(
                x=rect.x, y=rect.y + beyond, length=rect.length, width=rect.width - beyond
            )
        else:
            first = Rect(x=rect.x, y=rect.y, length=node.at, width=rect.width)
            band = Rect(x=rect.x + node.at, y=rect.y, length=removed, width=rect.width)
            second = Rect(
                x=rect.x + beyond, y=rect.y, length=rect.length - beyond, width=rect.width
            )
        codes = [self.name_of(side) for side in (node.first, node.second)]
        self.row(node, rect, code, codes)
        number = str(len(self.rows))
        self.cuts.append(
            CutView(number=number, band=band, direction=node.direction, is_trim=node.is_trim)
        )
        if node.is_trim:
            self.trims.append(first)
        else:
            self.cut_up(node.first, first, codes[0])
        self.cut_up(node.second, second, codes[1])

    def name_of(self, node: Split | Leaf | None) -> str:
        if node is None:
            return ""
        if isinstance(node, Leaf):
            return node.code or "WASTE"
        self.pieces += 1
        return f"P{self.pieces}"

    def leaf(self, leaf: Leaf, rect: Rect) -> None:
        if leaf.name:
            self.parts.append(
                PartView(
                    code=leaf.code,
                    name=leaf.name,
                    rect=rect,
                    grain="length",
                    finished=self.size(rect),
                    blank=self.size(rect),
                    status=leaf.status,
                )
            )
        else:
            self.rests.append(
                RestView(
                    code=leaf.code or "WASTE",
                    rect=rect,
                    size=self.size(rect),
                    is_offcut=bool(leaf.code),
                )
            )

    def row(self, node: Split, rect: Rect, hold: str, codes: list[str]) -> None:
        keep = f"trim {self.text(node.at + self.kerf)}" if node.is_trim else self.text(node.at)
        is_same = keep == self.last_keep and not node.is_trim
        self.settings += not is_same
        self.last_keep = keep
        across = "bottom edge" if self.home == "bottom left" else "top edge"
        self.rows.append(
            CutRow(
                number=str(len(self.rows) + 1),
                hold=hold,
                hold_size=self.size(rect),
                hold_mass=f"{rect.length * rect.width * 12.1 / 1e18:.1f}",
                people=2 if rect.length * rect.width > 2.0e18 else 1,
                direction=node.direction,
                measure_from=across if node.direction is Direction.RIP else "left edge",
                keep=keep,
                keep_code=codes[1] if node.is_trim else codes[0],
                guide_left=self.text(node.at - BASE_LEFT),
                guide_right=self.text(node.at + self.kerf + BASE_RIGHT),
                unusable="left" if node.at < BASE_LEFT + mm(60) else "",
                free_code="WASTE" if node.is_trim else codes[1],
                setting=self.settings,
                same_as=str(len(self.rows)) if is_same else "",
                remark="clamp or cut by hand: 45 wide" if node.at < mm(50) else "",
            )
        )


def make_sheet(
    tree: Split | Leaf,
    length: int,
    width: int,
    *,
    number: int = 1,
    unit: Unit = Unit.MM,
    kerf: int = mm("2.4"),
    home: str = "top left",
) -> SheetView:
    """Return a sheet cut up as a tree says."""
    maker = SheetMaker(unit, kerf, home)
    maker.cut_up(tree, Rect(x=0, y=0, length=length, width=width), f"S{number}")
    along = maker.text(length)
    for cut in maker.rows[2:8]:
        maker.sums.append(
            StripSum(
                piece=cut.hold,
                text=f"{cut.hold_size.split(' × ')[0]} = {cut.keep} + {maker.text(kerf)} left",
                slack="5.2",
                is_tight=cut.number == "4",
            )
        )
    return SheetView(
        number=number,
        stock="birch 18",
        material="birch plywood 18",
        measured="17.7" if unit is Unit.MM else "45/64",
        length=length,
        width=width,
        size=maker.size(Rect(x=0, y=0, length=length, width=width)),
        mass="36.7",
        grain="length",
        grain_text=f"GRAIN RUNS ALONG THE {along}",
        face_text="Drawn as seen from the BACK: the good face lies down.",
        home_text=f"HOME CORNER: {home} as you stand",
        home=home,
        trims=tuple(maker.trims),
        parts=tuple(sorted(maker.parts, key=lambda part: (part.code[0], int(part.code[1:])))),
        rests=tuple(maker.rests),
        cuts=tuple(maker.cuts),
        rows=tuple(maker.rows),
        sums=tuple(maker.sums),
        why="crosscuts first, because the pieces shorten at once and every side then comes off"
        " one setting.",
        settings=maker.settings,
        minutes=3 * len(maker.rows),
    )


def trimmed(tree: Split | Leaf, kerf: int = mm("2.4"), trim: int = mm(10)) -> Split:
    """Return a tree with the left and the home edge trimmed first."""
    inner = Split(direction=Direction.RIP, at=trim - kerf, first=Leaf(), second=tree, is_trim=True)
    return Split(
        direction=Direction.CROSSCUT, at=trim - kerf, first=Leaf(), second=inner, is_trim=True
    )


def rip(at: str, first: Split | Leaf | None, second: Split | Leaf | None) -> Split:
    """Return a cut along the sheet, the size kept in millimetres."""
    return Split(direction=Direction.RIP, at=mm(at), first=first, second=second)


def cross(at: str, first: Split | Leaf | None, second: Split | Leaf | None) -> Split:
    """Return a cut across the sheet, the size kept in millimetres."""
    return Split(direction=Direction.CROSSCUT, at=mm(at), first=first, second=second)


def two_bass_cabinets() -> SheetView:
    """Return the sheet of the hall's bass cabinets: 13 parts, 19 cuts."""
    sides = cross(
        "600",
        rip("380", Leaf(code="A1", name="Side"), rip("380", Leaf(code="A2", name="Side"),
            rip("380", Leaf(code="A3", name="Side"), Leaf()))),
        cross(
            "600",
            rip("380", Leaf(code="A4", name="Side"), rip("380", Leaf(code="B1", name="Top"),
                rip("380", Leaf(code="B2", name="Top"), Leaf()))),
            cross(
                "464.5",
                rip(
                    "582.5",
                    Leaf(code="C1", name="Baffle", status="measure first"),
                    rip("582.5", Leaf(code="C2", name="Baffle", status="measure first"), Leaf()),
                ),
                rip(
                    "400",
                    cross("464.5", Leaf(code="D1", name="Back panel"), Leaf(code="L1")),
                    rip("80", cross("464.5", Leaf(code="E1", name="Brace"),
                        Leaf()), rip("80", cross("464.5", Leaf(code="E2", name="Brace"), Leaf()),
                            Leaf(code="L2"))),
                ),
            ),
        ),
    )  # fmt: skip
    return make_sheet(trimmed(sides), mm(2440), mm(1220))


def random_tree(rng: random.Random, rect: tuple[int, int], count: int, step: int) -> Split | Leaf:
    """Return a tree with about count parts."""
    length, width = rect
    if count <= 1:
        return Leaf(code="?", name=rng.choice(NAMES), status=rng.choice(STATUSES))
    is_rip = width > length if rng.random() < 0.7 else rng.random() < 0.5
    extent = width if is_rip else length
    low, high = 12_000_000, extent - 15_000_000
    if high <= low:
        return Leaf(code="?", name=rng.choice(NAMES))
    share = rng.uniform(0.05, 0.95) if rng.random() < 0.3 else rng.uniform(0.3, 0.7)
    at = min(max(int(share * extent) // step * step, low // step * step + step), high)
    mine = max(1, min(count - 1, round(count * at / extent)))
    rest = extent - at - mm("2.4")
    one = (length, at) if is_rip else (at, width)
    two = (length, rest) if is_rip else (rest, width)
    first = random_tree(rng, one, mine, step)
    second: Split | Leaf = random_tree(rng, two, count - mine, step)
    chance = rng.random()
    if isinstance(second, Leaf) and chance < 0.25:
        second = Leaf(code="L?") if chance < 0.12 else Leaf()
    return Split(
        direction=Direction.RIP if is_rip else Direction.CROSSCUT,
        at=at,
        first=first,
        second=second,
    )


NAMES = (
    "Side", "Top", "Bottom", "Baffle", "Back", "Brace", "Shelf", "Rear frame, long",
    "Schallwand für die Bassbox, hinten links", "Tablette supérieure amovible", "Türblatt",
)  # fmt: skip
STATUSES = ("final", "final", "final", "oversize", "measure first")


def coded(tree: Split | Leaf, counts: dict[str, int], rng: random.Random) -> Split | Leaf:
    """Return the tree with its codes made unique."""
    if isinstance(tree, Leaf):
        if not tree.code:
            return tree
        letter = "L" if tree.code.startswith("L") else rng.choice(LETTERS)
        counts[letter] = counts.get(letter, 0) + 1
        return Leaf(code=f"{letter}{counts[letter]}", name=tree.name, status=tree.status)
    return Split(
        direction=tree.direction,
        at=tree.at,
        first=None if tree.first is None else coded(tree.first, counts, rng),
        second=None if tree.second is None else coded(tree.second, counts, rng),
        is_trim=tree.is_trim,
    )


def random_sheet(seed: int, count: int, number: int = 1, unit: Unit | None = None) -> SheetView:
    """Return a sheet with about count parts, one of several sizes, in either unit."""
    rng = random.Random(seed)  # noqa: S311 - repeatable samples, no secrets
    unit = unit or rng.choice((Unit.MM, Unit.INCH))
    sizes = (
        ((mm(2440), mm(1220)), (mm(1525), mm(1525)), (mm(1220), mm(610)), (mm(1250), mm(2500)))
        if unit is Unit.MM
        else ((mm("2438.4"), mm("1219.2")), (mm("1524"), mm("1524")), (mm("609.6"), mm("1219.2")))
    )
    length, width = rng.choice(sizes)
    step = 500_000 if unit is Unit.MM else 396_875
    tree = random_tree(rng, (length - mm(10), width - mm(10)), count, step)
    kerf = mm("2.4") if unit is Unit.MM else 6 * 396_875
    tree = coded(tree, {}, rng)
    if rng.random() < 0.8:
        tree = trimmed(tree, kerf, mm(10) if unit is Unit.MM else 26 * 396_875)
    home = rng.choice(("top left", "bottom left"))
    return make_sheet(tree, length, width, number=number, unit=unit, kerf=kerf, home=home)


CAUTION = Caution(
    topic="Support",
    full="Lay supports close to the line on both sides of every cut, so that neither piece sags.",
    short="Support both sides; the kerf must not close.",
    where=frozenset({"sheet", "shopping", "overview"}),
    defer_to="your saw's manual",
)


def make_sample_plan(
    sheets: tuple[SheetView, ...], *, unit: Unit = Unit.MM, job_name: str = "Hall bass cabinets"
) -> Plan:
    """Return a plan around some sheets, every section filled."""
    rows = (row for view in sheets for row in _part_rows(view))
    parts = tuple(sorted(rows, key=lambda row: (row.code[0], int(row.code[1:]))))
    return Plan(
        job_name=job_name,
        unit=unit,
        fingerprint="KTU-30718",
        overview=_overview(unit),
        shopping=_shopping(sheets),
        cautions=(CAUTION,),
        sheets=sheets,
        parts=parts,
        labels=tuple(label for view in sheets for label in _labels(view)),
        offcuts=tuple(row for view in sheets for row in _offcut_rows(view)),
        sequences=(),
    )


def two_bass_cabinets_plan() -> Plan:
    """Return the plan of the hall's bass cabinets: one sheet, 12 parts."""
    return make_sample_plan((two_bass_cabinets(),))


def random_plan(seed: int, counts: tuple[int, ...], job_name: str = "Bühnenwagen für Ærø") -> Plan:
    """Return a plan of one sheet for each count of parts, all in one unit."""
    unit = Unit.MM if seed % 2 else Unit.INCH
    sheets = tuple(
        random_sheet(seed + number, count, number, unit)
        for number, count in enumerate(counts, start=1)
    )
    return make_sample_plan(sheets, unit=unit, job_name=job_name)


def _overview(unit: Unit) -> Overview:
    return Overview(
        what=("2 × Bass cabinet (A, B): outside 700 high × 600 wide × 380 deep, mm",),
        sums=("600 = 17.7 + 564.6 + 17.7 (width: side, inside, side)",),
        figures=("1 sheet, 12 parts, 19 cuts, 14 settings, about 57 minutes at the saw",),
        bound_text="Proven cheapest: no plan can cost less than 62.00.",
        assumed=(
            AssumedNumber(
                name="kerf",
                value=f"2.4 {unit.value}",
                origin="default",
                check="Saw a scrap, push it together and measure what is missing.",
            ),
            AssumedNumber(
                name="size of birch 18",
                value="2440 × 1220 mm",
                origin="from the job file",
                check="Measure both sides at both ends, and both diagonals.",
            ),
        ),
        questions=("Does the back come off?",),
        warnings=("Side and Top look alike.",),
        unplaced=("1 × Shelf: wider than every sheet. The widest is 1220 mm.",),
        legend=(
            ("setting", "one position of the guide."),
            ("plain outline", "a part."),
            ("diagonal hatch", "waste."),
            ("dotted outline", "an offcut to keep."),
            ("double line", "the edge to measure from."),
            ("6 and 9", "are underlined."),
            ("slack, TIGHT", "how much a row of cuts may grow."),
        ),
    )


def _shopping(sheets: tuple[SheetView, ...]) -> Shopping:
    return Shopping(
        sheets=(
            SheetLine(
                count=len(sheets),
                stock="birch 18",
                material="birch plywood 18 mm",
                size=sheets[0].size,
                grain_text=sheets[0].grain_text,
                each="62.00",
                total=f"{62 * len(sheets)}.00",
                mass="36.7",
            ),
        ),
        others=(OtherLine(amount="10200 mm", what="batten 20 × 30 mm", purpose="rear frames"),),
        cost=f"{62 * len(sheets)}.00",
        bound_text="Proven cheapest.",
        card=("Thickness: measure at eight places.", "Same stack for all, please."),
    )


def _freeing_cut(view: SheetView, code: str) -> str:
    return next((row.number for row in view.rows if code in (row.keep_code, row.free_code)), "1")


def _part_rows(view: SheetView) -> list[PartRow]:
    return [
        PartRow(
            code=part.code,
            name=part.name,
            cabinet=part.code[0],
            copy="1 of 2",
            finished=part.finished,
            blank=part.blank,
            thickness=view.measured,
            grain=f"grain along the {part.finished.split(' × ')[0]}",
            status=part.status,
            sheet=str(view.number),
            cut=_freeing_cut(view, part.code),
            sums=("600 = outside width",),
            look_alikes=("B1",) if part.code == "A1" else (),
            to_do=("cover with the whole carcass, once it is glued",),
            material="birch plywood",
        )
        for part in view.parts
    ]


def _labels(view: SheetView) -> list[Label]:
    parts = [
        Label(
            code=part.code,
            copy="1 of 2",
            name=f"{part.name}, cabinet A",
            size=f"{part.finished} × {view.measured}",
            blank=part.blank if part.status != "final" else "",
            grain=f"grain along the {part.finished.split(' × ')[0]}",
            grain_along_length=True,
            face="this is the BACK face",
            status=part.status,
            to_do=("rebate the front edge", "cover with the whole carcass, once it is glued"),
            look_alikes=("B1", "B2"),
            origin=f"sheet {view.number}, cut {_freeing_cut(view, part.code)}",
            note="interchangeable",
        )
        for part in view.parts
    ]
    offcuts = [
        Label(
            code=rest.code,
            copy="",
            name="Offcut of birch 18",
            size=f"{rest.size} × {view.measured}",
            blank="",
            grain="grain across",
            grain_along_length=False,
            face="this is the BACK face",
            status="offcut, keep",
            to_do=(),
            look_alikes=(),
            origin=f"sheet {view.number}, cut {_freeing_cut(view, rest.code)}",
        )
        for rest in view.rests
        if rest.is_offcut
    ]
    return parts + offcuts


def _offcut_rows(view: SheetView) -> list[OffcutRow]:
    return [
        OffcutRow(
            code=rest.code,
            size=rest.size,
            material=f"birch plywood {view.measured}",
            grain="grain along the sheet",
            sheet=str(view.number),
            cut=_freeing_cut(view, rest.code),
            good_edges="left, top",
            could_be=("A1", "A2"),
        )
        for rest in view.rests
        if rest.is_offcut
    ]
