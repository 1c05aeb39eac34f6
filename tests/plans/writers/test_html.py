"""The phone page as a file: its numbers, its policy, its silence on the network."""

import base64
import hashlib
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import pytest

from nesting.saw import Face
from plans.phone.lettering import LEAST_TYPE, TARGET
from plans.phone.screens import make_phone_page
from plans.plan import Plan
from plans.sections.repeats import find_repeats
from plans.writers.html import write_phone
from tests.plans.full_plan import full_plan
from tests.plans.phone.helpers import RANDOM, random_plan, two_cabinets_plan
from tests.plans.processes import print_by_seed

ROOT = Path(__file__).parents[3]
NASTY = "</title><script>alert('hall & \"stage\"')</script><img src=x onerror=alert(1)>"


class Reader(HTMLParser):
    """Gathers the text of every section, and that of each class of element within it."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[str] = []
        self.open: list[tuple[str, str]] = []
        self.section = ""
        self.texts: dict[str, dict[str, list[str]]] = {}

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        self.tags.append(tag)
        if tag == "section":
            self.section = given["id"] or ""
            self.texts[self.section] = {}
        if tag not in ("meta", "br", "input"):
            kind = (given.get("class") or tag).split(" ")[0]
            self.open.append((tag, kind))
            if self.section:
                self.texts[self.section].setdefault(kind, []).append("")

    def handle_endtag(self, tag: str) -> None:
        opened, _ = self.open.pop()
        assert opened == tag
        if tag == "section":
            self.section = ""

    def handle_data(self, data: str) -> None:
        for _, kind in self.open:
            if self.section and kind in self.texts[self.section]:
                self.texts[self.section][kind][-1] += data


def written(plan: Plan) -> str:
    return write_phone(make_phone_page(plan)).decode()


def read(plan: Plan) -> Reader:
    reader = Reader()
    reader.feed(written(plan))
    assert reader.open == []
    return reader


def plans() -> Iterator[Plan]:
    yield two_cabinets_plan()
    yield two_cabinets_plan(Face.FRONT)
    yield from map(random_plan, RANDOM)


def test_the_numbers_of_every_cut_are_those_of_the_cut_table() -> None:
    count = 0
    for plan in plans():
        texts = read(plan).texts
        for repeat in find_repeats(plan.sheets):
            view = repeat.view
            for row in view.rows:
                screen = texts[f"sheet-{view.number}-cut-{row.number}"]
                assert screen["keep"] == [row.keep]
                assert screen["guides"] == [f"L {row.guide_left}R {row.guide_right}"]
                assert row.hold_size in screen["size"]
                assert screen["code"] == [
                    code for code in (row.hold, row.keep_code, row.free_code) if code
                ]
                assert f"from {row.measure_from} KEEP" in "".join(screen["section"])
                assert f"{row.hold_mass} kg" in "".join(screen["section"])
                assert f"cut {row.number} of {len(view.rows)}" in "".join(screen["h1"])
                struck = [figure.strip() for figure in screen.get("s", [])]
                assert struck == [
                    figure
                    for side, figure in (("left", row.guide_left), ("right", row.guide_right))
                    if row.unusable in (side, "both")
                ]
                count += 1
    assert count > 200


def test_yard_car_and_holes_say_the_numbers_of_the_paper() -> None:
    _, _, plan = full_plan()
    texts = read(plan).texts
    (yard,) = plan.yard
    said = "".join(texts["yard-1"]["section"])
    for pattern in yard.patterns:
        assert all(cut.text in texts["yard-1"]["size"] for cut in pattern.cuts)
        assert all(
            f"{code} {piece.size}" in said for piece in pattern.pieces for code in piece.codes
        )
    assert f"{yard.price_lines[-1][0]} {yard.price_lines[-1][1]}" in said
    assert plan.car is not None
    assert texts["car"]["code"] == [piece.code for piece in plan.car.pieces]
    assert texts["car"]["size"] == [piece.size for piece in plan.car.pieces]
    for number, panel in enumerate(plan.bench.holes, start=1):
        screen = texts[f"holes-{number}"]
        assert screen["code"] == [hole.code for hole in panel.holes]
        said = "".join(screen["section"])
        for hole in panel.holes:
            assert "centre from {}from {}".format(*hole.centre) in said
            assert "".join(f"{name} {size}" for name, size in hole.sizes) in said
            for bolt in hole.bolts:
                assert "{}. {}, {}".format(bolt.number, *bolt.distances) in screen["li"]


def test_the_hand_decides_which_guide_comes_first() -> None:
    _, _, plan = full_plan()  # a left-handed one
    rows = [row for view in plan.sheets for row in view.rows]
    guides = [
        screen["guides"][0]
        for key, screen in read(plan).texts.items()
        if "-cut-" in key and "guides" in screen
    ]
    assert guides == [f"R {row.guide_right}L {row.guide_left}" for row in rows if row.guide_left]
    assert len(guides) < len(rows)  # the yard's cuts have none


def test_codes_have_their_6_and_9_underlined() -> None:
    texts = read(random_plan(4)).texts
    underlined = {sign for screen in texts.values() for sign in screen.get("u", [])}
    assert underlined == {"6", "9"}


def test_nothing_is_fetched_and_nothing_is_sent() -> None:
    for plan in plans():
        text = written(plan)
        assert not re.search(r"https?:|\bwss?:|//[a-z]|@import|fetch\(|XMLHttp|sendBeacon", text)
        assert not re.search(r"\b(src|srcset|action|data|poster)=", text)
        assert re.findall(r'href="([^"#][^"]*)"', text) == []
        assert re.findall(r"url\(([^#)][^)]*)\)", text) == []


def test_the_policy_allows_this_style_and_this_script_and_nothing_else() -> None:
    text = written(two_cabinets_plan())
    policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]+)"', text)
    assert policy is not None
    (style,) = re.findall(r"<style>(.*?)</style>", text, re.DOTALL)
    (script,) = re.findall(r"<script>(.*?)</script>", text, re.DOTALL)
    hashes = [
        base64.b64encode(hashlib.sha256(part.encode()).digest()).decode()
        for part in (style, script)
    ]
    assert policy[1] == (
        f"default-src 'none'; style-src 'sha256-{hashes[0]}'; script-src 'sha256-{hashes[1]}'; "
        "base-uri 'none'; form-action 'none'"
    )
    assert not re.search(r"<[^>]+ (style|on[a-z]+)=", text.replace(script, ""))


def test_a_job_named_like_a_script_stays_a_text() -> None:
    plain, nasty = read(two_cabinets_plan()), read(two_cabinets_plan(name=NASTY))
    assert plain.tags == nasty.tags
    assert NASTY not in written(two_cabinets_plan(name=NASTY))


def test_the_same_plan_gives_the_same_bytes_in_every_process() -> None:
    code = (
        "import hashlib; from tests.plans.phone.helpers import *; "
        "from plans.phone.screens import *; from plans.writers.html import *; "
        "page = write_phone(make_phone_page(two_cabinets_plan())); "
        "print(hashlib.sha256(page).hexdigest())"
    )
    assert len(print_by_seed(code)) == 1


def test_type_and_targets_are_as_large_as_a_phone_needs() -> None:
    # 0.007 rad at 0.5 m and 15 mm, at 160 CSS pixels an inch, capitals 0.7 of the type size.
    assert LEAST_TYPE * 0.7 / 160 * 25.4 >= 0.007 * 500
    assert TARGET / 160 * 25.4 >= 15
    text = written(two_cabinets_plan())
    sizes = [float(size) for size in re.findall(r"font-size: (?:min\()?([0-9.]+)px", text)]
    assert min(sizes) >= LEAST_TYPE
    assert f"--target: {TARGET}px" in text


@pytest.mark.parametrize("colour", ["rgb", "hsl", "red", "green", "blue"])
def test_no_hue_is_needed(colour: str) -> None:
    (style,) = re.findall(r"<style>(.*?)</style>", written(two_cabinets_plan()), re.DOTALL)
    assert colour not in style
    assert set(re.findall(r"#[0-9a-f]{3,6}\b", style)) <= {"#000", "#fff"}
