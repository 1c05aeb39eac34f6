"""The phone page in a real browser: a phone's size, the network off.

A browser and its driver must be installed (Debian: chromium and chromium-driver).
"""

import json
import shutil
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from selenium.webdriver import Chrome
from selenium.webdriver.chrome.options import Options
from selenium.webdriver.chrome.service import Service
from selenium.webdriver.common.by import By

from nesting.lengths import Unit
from plans.phone.screens import make_phone_page
from plans.plan import Plan
from plans.writers.html import write_phone
from tests.plans.full_plan import full_plan
from tests.plans.pages.plan_samples import make_sample_plan, random_sheet
from tests.plans.phone.helpers import RANDOM, random_plan, two_cabinets_plan

pytestmark = pytest.mark.browser

BROWSERS = ("chromium", "chromium-browser", "google-chrome")
DRIVER = "chromedriver"
WIDTH, HEIGHT = 390, 844
PIXELS_PER_MM = 160 / 25.4
A_MOMENT = 0.45  # seconds after which a second touch counts
GRANTED = """{ request: () => {
  window.asked = (window.asked || 0) + 1;
  return Promise.resolve({ released: false });
} }"""
NASTY = "</title><script>document.title = 'broken'</script><img src=x onerror=alert(1)>"

# Elements of the screen shown that carry text of their own, with the height of their capitals.
CAPITALS = """
const pen = document.createElement("canvas").getContext("2d");
return Array.from(document.querySelectorAll("body *")).filter((element) =>
  element.checkVisibility() && !element.closest(".store") && element.tagName !== "SCRIPT" &&
  Array.from(element.childNodes).some((node) => node.nodeType === 3 && node.data.trim())
).map((element) => {
  const style = getComputedStyle(element);
  pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  const scale = element.ownerSVGElement
    ? element.ownerSVGElement.getBoundingClientRect().width
      / element.ownerSVGElement.viewBox.baseVal.width
    : 1;
  return [element.textContent.trim(), pen.measureText("H").actualBoundingBoxAscent * scale];
});
"""
TARGETS = """
return Array.from(document.querySelectorAll("button, label"))
  .filter((element) => element.checkVisibility())
  .map((element) => {
    const box = element.getBoundingClientRect();
    return [element.textContent.trim(), Math.min(box.width, box.height)];
  });
"""
TOO_WIDE = """
const main = document.querySelector("main");
const found = [];
for (const section of document.querySelectorAll("main > section")) {
  const was = section.hidden;
  document.querySelectorAll("main > section").forEach((other) => { other.hidden = true; });
  section.hidden = false;
  if (main.scrollWidth > main.clientWidth) found.push(section.id);
}
return found;
"""
BOTTOMS = """
const bottom = (element) => element.getBoundingClientRect().bottom;
const section = document.querySelector("main > section:not([hidden])");
return [bottom(section.querySelector(".keep")), bottom(section.querySelector(".guides")),
  document.getElementById("foot").getBoundingClientRect().top];
"""


@pytest.fixture(scope="module")
def browser(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Chrome]:
    program = next(filter(None, map(shutil.which, BROWSERS)), None)
    driver = shutil.which(DRIVER)
    if program is None or driver is None:
        pytest.skip("no browser with its driver is installed")
    options = Options()
    options.binary_location = program
    for switch in (
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
        f"--user-data-dir={tmp_path_factory.mktemp('browser')}",
    ):
        options.add_argument(switch)
    options.add_experimental_option(
        "mobileEmulation", {"deviceMetrics": {"width": WIDTH, "height": HEIGHT, "pixelRatio": 2.0}}
    )
    options.set_capability("goog:loggingPrefs", {"performance": "ALL", "browser": "ALL"})
    window = Chrome(options=options, service=Service(driver))
    window.execute_cdp_cmd("Network.enable", {})
    window.execute_cdp_cmd(
        "Network.emulateNetworkConditions",
        {"offline": True, "latency": 0, "downloadThroughput": 0, "uploadThroughput": 0},
    )
    yield window
    window.quit()


def opened(browser: Chrome, plan: Plan, folder: Path) -> Path:
    """Open a plan's phone page as for the first time."""
    path = folder / "page.html"
    path.write_bytes(write_phone(make_phone_page(plan)))
    browser.get(path.as_uri())
    browser.execute_script("localStorage.clear()")
    log_of(browser, "browser")
    log_of(browser, "performance")
    browser.get(path.as_uri())
    return path


def log_of(browser: Chrome, kind: str) -> list[dict[str, Any]]:
    """Return what the browser has logged since the last call."""
    entries: list[dict[str, Any]] = browser.get_log(kind)  # type: ignore[no-untyped-call]
    return entries


def touch(browser: Chrome, key: str, times: int = 1) -> None:
    for _ in range(times):
        time.sleep(A_MOMENT)
        browser.find_element(By.ID, key).click()


def go_to(browser: Chrome, place: str) -> None:
    touch(browser, "where")
    time.sleep(A_MOMENT)
    browser.find_element(By.CSS_SELECTOR, f"[data-to={place}]").click()
    time.sleep(A_MOMENT)


def shown(browser: Chrome) -> str:
    """Return the name of the one screen that is shown."""
    found: list[str] = browser.execute_script(
        "return Array.from(document.querySelectorAll('main > section'))"
        ".filter((one) => one.checkVisibility()).map((one) => one.id)"
    )
    (screen,) = found
    return screen


def plan_in_inches() -> Plan:
    return next(plan for plan in map(random_plan, RANDOM) if plan.unit is Unit.INCH)


def test_it_starts_with_the_shopping_list_and_goes_on_with_safety(
    browser: Chrome, tmp_path: Path
) -> None:
    opened(browser, two_cabinets_plan(), tmp_path)
    passed = [shown(browser)]
    for _ in range(4):
        touch(browser, "next")
        passed.append(shown(browser))
    assert passed == ["shop", "safety", "set-up", "sheet-1", "sheet-1-cut-1"]
    assert browser.find_element(By.ID, "count").text == "cut 1 of 15"


def test_the_step_survives_a_reload_and_undo_goes_back(browser: Chrome, tmp_path: Path) -> None:
    opened(browser, two_cabinets_plan(), tmp_path)
    go_to(browser, "sheet-1")
    touch(browser, "next", 3)
    browser.refresh()
    assert shown(browser) == "sheet-1-cut-3"
    touch(browser, "undo")
    assert shown(browser) == "sheet-1-cut-2"


def test_another_plan_begins_anew_and_leaves_this_ones_step_alone(
    browser: Chrome, tmp_path: Path
) -> None:
    path = opened(browser, two_cabinets_plan(), tmp_path)
    go_to(browser, "sheet-1")
    other = tmp_path / "other.html"
    other.write_bytes(write_phone(make_phone_page(two_cabinets_plan(name="Other"))))
    browser.get(other.as_uri())
    assert shown(browser) == "shop"
    browser.get(path.as_uri())
    assert shown(browser) == "sheet-1"


def test_jumping_to_a_sheet_comes_back_to_the_cut_where_one_stopped(
    browser: Chrome, tmp_path: Path
) -> None:
    opened(browser, two_cabinets_plan(), tmp_path)
    go_to(browser, "sheet-1")
    touch(browser, "next", 2)
    go_to(browser, "safety")
    assert shown(browser) == "safety"
    go_to(browser, "sheet-1")
    assert shown(browser) == "sheet-1-cut-2"


def test_a_touch_with_the_side_of_a_finger_counts_once(browser: Chrome, tmp_path: Path) -> None:
    opened(browser, two_cabinets_plan(), tmp_path)
    time.sleep(A_MOMENT)
    browser.execute_script("for (let n = 0; n < 3; n += 1) document.getElementById('next').click()")
    assert shown(browser) == "safety"


def test_ticks_of_the_shopping_list_are_remembered(browser: Chrome, tmp_path: Path) -> None:
    opened(browser, two_cabinets_plan(), tmp_path)
    for key in ("tick-sheets-1", "tick-card-2"):
        browser.find_element(By.CSS_SELECTOR, f"label:has(#{key})").click()
    browser.refresh()
    ticked = browser.execute_script(
        "return Array.from(document.querySelectorAll('input:checked')).map((one) => one.id)"
    )
    assert ticked == ["tick-sheets-1", "tick-card-2"]


@pytest.mark.parametrize("name", ["mm", "in"])
def test_every_text_can_be_read_at_half_a_metre(browser: Chrome, tmp_path: Path, name: str) -> None:
    plan = two_cabinets_plan() if name == "mm" else plan_in_inches()
    opened(browser, plan, tmp_path)
    count = 0
    for place in ("shop", "safety", "set-up", "sheet-1", "sheet-1-cut-1", "sheet-1-cut-4"):
        browser.execute_script(SHOW, place)
        texts: list[tuple[str, float]] = browser.execute_script(CAPITALS)
        count += len(texts)
        low = [(text, height) for text, height in texts if height / PIXELS_PER_MM < 0.007 * 500]
        assert low == [], place
    assert count > 80


SHOW = """
document.querySelectorAll("main > section").forEach((one) => {
  one.hidden = one.id !== arguments[0];
});
"""


def test_every_screen_of_a_whole_job_can_be_read_touched_and_seen_in_full(
    browser: Chrome, tmp_path: Path
) -> None:
    _, _, plan = full_plan()
    opened(browser, plan, tmp_path)
    assert browser.execute_script(TOO_WIDE) == []
    for place in ("shop", "yard-1", "car", "set-up", "sheet-1", "holes-1", "end"):
        browser.execute_script(SHOW, place)
        texts: list[tuple[str, float]] = browser.execute_script(CAPITALS)
        assert [one for one in texts if one[1] / PIXELS_PER_MM < 0.007 * 500] == [], place
        targets: list[tuple[str, float]] = browser.execute_script(TARGETS)
        assert [target for target in targets if target[1] / PIXELS_PER_MM < 15] == [], place


def test_the_boxes_of_sheets_cut_alike_are_large_and_remembered(
    browser: Chrome, tmp_path: Path
) -> None:
    views = tuple(random_sheet(3, 6, number, Unit.MM) for number in range(1, 8))
    opened(browser, make_sample_plan(views), tmp_path)
    go_to(browser, "sheet-1")
    touch(browser, "next", 2)
    labels = browser.find_elements(By.CSS_SELECTOR, "#sheet-1-cut-2 label")
    assert len(labels) == 7
    assert [one for one in browser.execute_script(TARGETS) if one[1] / PIXELS_PER_MM < 15] == []
    labels[2].click()
    browser.refresh()
    ticked = browser.execute_script(
        "return Array.from(document.querySelectorAll('input:checked')).map((one) => one.id)"
    )
    assert ticked == ["tick-sheet-1-cut-2-3"]


def test_the_keep_size_is_by_far_the_largest(browser: Chrome, tmp_path: Path) -> None:
    opened(browser, two_cabinets_plan(), tmp_path)
    browser.execute_script(SHOW, "sheet-1-cut-4")
    texts = dict(browser.execute_script(CAPITALS))
    row = two_cabinets_plan().sheets[0].rows[3]
    keep = texts.pop(row.keep)
    assert keep >= 2 * max(texts.values())


def test_whatever_is_touched_is_15_mm_wide_and_high(browser: Chrome, tmp_path: Path) -> None:
    opened(browser, two_cabinets_plan(), tmp_path)
    targets: list[tuple[str, float]] = browser.execute_script(TARGETS)
    touch(browser, "where")
    targets += browser.execute_script(TARGETS)
    assert len(targets) > 10
    assert [target for target in targets if target[1] / PIXELS_PER_MM < 15] == []


@pytest.mark.parametrize("seed", [None, *RANDOM])
def test_no_screen_is_wider_than_the_phone(
    browser: Chrome, tmp_path: Path, seed: int | None
) -> None:
    opened(browser, two_cabinets_plan() if seed is None else random_plan(seed), tmp_path)
    assert browser.execute_script(TOO_WIDE) == []


def test_keep_size_and_guide_are_seen_without_scrolling(browser: Chrome, tmp_path: Path) -> None:
    plan = two_cabinets_plan()
    opened(browser, plan, tmp_path)
    for row in plan.sheets[0].rows:
        browser.execute_script(SHOW, f"sheet-1-cut-{row.number}")
        keep, guides, foot = browser.execute_script(BOTTOMS)
        assert keep < guides <= foot, row.number


def test_nothing_is_asked_of_the_network_and_nothing_goes_wrong(
    browser: Chrome, tmp_path: Path
) -> None:
    path = opened(browser, two_cabinets_plan(), tmp_path)
    touch(browser, "next", 2)
    go_to(browser, "sheet-1")
    events = [json.loads(entry["message"])["message"] for entry in log_of(browser, "performance")]
    asked = [
        event["params"]["request"]["url"]
        for event in events
        if event["method"] == "Network.requestWillBeSent"
    ]
    assert set(asked) == {path.as_uri()}
    assert log_of(browser, "browser") == []


def test_a_job_named_like_a_script_is_shown_as_it_is_written(
    browser: Chrome, tmp_path: Path
) -> None:
    opened(browser, two_cabinets_plan(name=NASTY), tmp_path)
    touch(browser, "where")
    assert NASTY in browser.find_element(By.ID, "places").text
    assert browser.title.startswith(NASTY[:20])
    assert log_of(browser, "browser") == []


@pytest.mark.parametrize(
    "lock",
    [
        "undefined",
        "{ request: () => Promise.reject(new Error('no')) }",
        GRANTED,
    ],
    ids=["missing", "refused", "granted"],
)
def test_the_screen_is_kept_awake_where_it_can_be(
    browser: Chrome, tmp_path: Path, lock: str
) -> None:
    source = f"Object.defineProperty(navigator, 'wakeLock', {{ value: {lock} }});"
    added: dict[str, Any] = browser.execute_cdp_cmd(
        "Page.addScriptToEvaluateOnNewDocument", {"source": source}
    )
    try:
        opened(browser, two_cabinets_plan(), tmp_path)
        touch(browser, "next")
        assert shown(browser) == "safety"
        assert browser.execute_script("return window.asked || 0") == (1 if "asked" in lock else 0)
        assert log_of(browser, "browser") == []
    finally:
        browser.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", added)


def test_a_browser_that_remembers_nothing_still_turns_pages_and_says_so(
    browser: Chrome, tmp_path: Path
) -> None:
    source = "Storage.prototype.setItem = () => { throw new Error('full'); };"
    added = browser.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": source})
    try:
        opened(browser, two_cabinets_plan(), tmp_path)
        touch(browser, "next")
        assert shown(browser) == "safety"
        touch(browser, "where")
        assert "does not remember" in browser.find_element(By.ID, "places").text
    finally:
        browser.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", added)
