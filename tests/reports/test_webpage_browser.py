"""The web page in a real browser: ticks, what is kept, a phone's width, light and dark, accessibility."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from axe_selenium_python import Axe
from selenium.webdriver.common.by import By

from sizekeeper.reports.webpage import webpage
from tests.reports.browser import open_browser
from tests.reports.sheets import hostile, longest, private, small

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from selenium.webdriver import Chrome
    from selenium.webdriver.remote.webelement import WebElement

    from sizekeeper.reports.sheet import Sheet

pytestmark = pytest.mark.browser

REFUSE = "Object.defineProperty(window, '{}', {{ get() {{ throw new DOMException('no', 'SecurityError'); }} }});"
TALL_ENOUGH = 44
"""The least height of what a finger hits, CSS pixels (WCAG 2.2, success criterion 2.5.5)."""


@pytest.fixture(scope="module")
def chromium(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Chrome]:
    """One browser for all tests of this module."""
    yield from open_browser(tmp_path_factory.mktemp("profile"))


@pytest.fixture
def browser(chromium: Chrome) -> Iterator[Chrome]:
    """The browser with a phone's screen in the light, and nothing kept; everything that a test set is unset."""
    screen(chromium, 390, 844)
    scheme(chromium, "light")
    yield chromium
    chromium.get("about:blank")


def screen(browser: Chrome, width: int, height: int) -> None:
    size = {"width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 600}
    browser.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", size)


def scheme(browser: Chrome, name: str) -> None:
    features = [{"name": "prefers-color-scheme", "value": name}]
    browser.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": features})


def show(browser: Chrome, folder: Path, sheet: Sheet) -> None:
    """Open a sheet's page from a file, as she would."""
    file = folder / "sheet.html"
    file.write_text(webpage(sheet), encoding="utf-8")
    browser.get(file.as_uri())


@pytest.fixture
def before_the_page(browser: Chrome) -> Iterator[Callable[[str], None]]:
    """Run a script before the page's own, in every page of one test."""
    kept: list[str] = []

    def run(script: str) -> None:
        made = browser.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": script})
        kept.append(made["identifier"])

    yield run
    for identifier in kept:
        browser.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", {"identifier": identifier})


def box(browser: Chrome, key: str) -> WebElement:
    return browser.find_element(By.CSS_SELECTOR, f"input[data-tick='{key}']")


def kept(browser: Chrome) -> str:
    return browser.find_element(By.ID, "kept").text


def complaints(browser: Chrome) -> list[dict[str, str]]:
    """What the browser has complained about since it was last asked."""
    found: list[dict[str, str]] = browser.get_log("browser")  # type: ignore[no-untyped-call]
    return found


def ticked(browser: Chrome) -> list[str]:
    found = browser.find_elements(By.CSS_SELECTOR, "input[data-tick]")
    return [one.get_attribute("data-tick") or "" for one in found if one.is_selected()]


def test_a_tick_is_still_there_after_the_page_is_loaded_again(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, small(key="ticked"))
    box(browser, "step:s1").click()
    box(browser, "step:s2").click()
    browser.refresh()
    assert ticked(browser) == ["step:s1"]
    assert kept(browser).startswith("Ticks and notes are kept on this device")


def test_what_is_written_about_the_toile_is_still_there(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, small(key="written"))
    browser.find_element(By.ID, "toile-1").send_keys("pulls at the back neck")
    browser.refresh()
    assert browser.find_element(By.ID, "toile-1").get_attribute("value") == "pulls at the back neck"


def test_another_sheet_has_ticks_of_its_own(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, small(key="one"))
    box(browser, "step:s1").click()
    show(browser, tmp_path, small(key="other"))
    assert ticked(browser) == ["step:s2"]


def test_ticks_of_one_page_show_in_the_other_at_once(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, small(key="twice"))
    first = browser.current_window_handle
    browser.switch_to.new_window("tab")
    show(browser, tmp_path, small(key="twice"))
    box(browser, "step:s3").click()
    browser.close()
    browser.switch_to.window(first)
    assert ticked(browser) == ["step:s2", "step:s3"]


def test_where_nothing_lasting_is_let_in_ticks_are_kept_for_the_session(
    browser: Chrome, tmp_path: Path, before_the_page: Callable[[str], None]
) -> None:
    before_the_page(REFUSE.format("localStorage"))
    show(browser, tmp_path, small(key="session"))
    box(browser, "step:s1").click()
    browser.refresh()
    assert ticked(browser) == ["step:s1", "step:s2"]
    assert kept(browser).startswith("Ticks and notes are kept until this page is closed")


def test_where_nothing_is_let_in_the_page_says_so_and_boxes_still_tick(
    browser: Chrome, tmp_path: Path, before_the_page: Callable[[str], None]
) -> None:
    before_the_page(REFUSE.format("localStorage") + REFUSE.format("sessionStorage"))
    show(browser, tmp_path, small(key="nothing"))
    box(browser, "step:s1").click()
    assert ticked(browser) == ["step:s1", "step:s2"]
    assert kept(browser).startswith("Ticks and notes are not kept")


def test_where_there_is_no_room_left_the_page_says_so(
    browser: Chrome, tmp_path: Path, before_the_page: Callable[[str], None]
) -> None:
    before_the_page(
        "const set = Storage.prototype.setItem;"
        "Storage.prototype.setItem = function (key, value) {"
        "  if (!key.endsWith(':try')) throw new DOMException('full', 'QuotaExceededError');"
        "  set.call(this, key, value);"
        "};"
    )
    show(browser, tmp_path, small(key="full"))
    box(browser, "step:s1").click()
    assert kept(browser).startswith("What was ticked or written last could not be kept")


def test_what_another_program_left_in_the_store_does_no_harm(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, small(key="spoilt"))
    for spoilt in ("{", "null", '{"ticks": 7, "notes": [1]}', '{"ticks": {"step:s1": "yes"}}'):
        browser.execute_script("localStorage.setItem('sizekeeper:spoilt', arguments[0])", spoilt)
        browser.refresh()
        assert ticked(browser) == ["step:s2"]


def test_without_scripts_boxes_tick_and_the_page_says_that_nothing_is_kept(browser: Chrome, tmp_path: Path) -> None:
    browser.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": True})
    try:
        show(browser, tmp_path, small(key="no scripts"))
        box(browser, "step:s1").click()
        assert ticked(browser) == ["step:s1", "step:s2"]
        assert kept(browser).startswith("Ticks and notes are not kept")
        assert not browser.find_element(By.CLASS_NAME, "count").is_displayed()
    finally:
        browser.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": False})


def test_what_is_done_is_counted(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, small(key="counted"))
    box(browser, "step:s3").click()
    assert browser.find_element(By.ID, "work").text == "Work list 2 of 3 done"


@pytest.mark.parametrize("width", [320, 390])
@pytest.mark.parametrize("sheet", [small(), longest(), hostile("W" * 60)], ids=["small", "longest", "one long word"])
def test_a_phone_never_scrolls_sideways(browser: Chrome, tmp_path: Path, sheet: Sheet, width: int) -> None:
    screen(browser, width, 844)
    show(browser, tmp_path, sheet)
    assert browser.execute_script("return document.documentElement.scrollWidth") <= width


def test_names_of_regions_stay_while_the_sizes_scroll(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, longest())
    seen = browser.execute_script(
        "const box = document.querySelector('.scroll'); box.scrollLeft = box.scrollWidth;"
        "const name = box.querySelector('tbody th').getBoundingClientRect();"
        "return [box.scrollLeft > 0, name.left >= 0, name.right <= innerWidth];"
    )
    assert seen == [True, True, True]


def test_the_size_to_cut_is_in_sight_at_once(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, longest())
    seen = browser.execute_script(
        "const place = (selector) => document.querySelector(selector).getBoundingClientRect();"
        "return place('thead .chosen').left >= place('tbody th').right && place('thead .chosen').right <= innerWidth;"
    )
    assert seen is True


def test_everything_that_is_tapped_is_large_enough(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, small())
    labels = browser.find_elements(By.CSS_SELECTOR, "label:has(input)")
    assert min(label.size["height"] for label in labels) >= TALL_ENOUGH


def test_the_page_is_dark_where_the_phone_is(browser: Chrome, tmp_path: Path) -> None:
    def ground() -> list[int]:
        show(browser, tmp_path, small())
        colour = browser.execute_script("return getComputedStyle(document.body).backgroundColor")
        return [int(part) for part in colour.removeprefix("rgb(").removesuffix(")").split(",")]

    light = ground()
    scheme(browser, "dark")
    assert min(light) > 200  # of 255
    assert max(ground()) < 60


@pytest.mark.parametrize("name", ["light", "dark"])
@pytest.mark.parametrize("sheet", [small(), longest(), private()], ids=["small", "longest", "private"])
def test_no_rule_of_accessibility_is_broken(browser: Chrome, tmp_path: Path, sheet: Sheet, name: str) -> None:
    scheme(browser, name)
    show(browser, tmp_path, sheet)
    axe = Axe(browser)
    axe.inject()
    found = axe.run()
    assert found["passes"]
    assert [(rule["id"], node["html"]) for rule in found["violations"] for node in rule["nodes"]] == []


@pytest.mark.parametrize("sheet", [small(), hostile("</script><script>alert(1)</script>")], ids=["small", "hostile"])
def test_the_page_runs_without_a_complaint(browser: Chrome, tmp_path: Path, sheet: Sheet) -> None:
    complaints(browser)
    show(browser, tmp_path, sheet)
    assert complaints(browser) == []
    assert kept(browser).startswith("Ticks and notes are kept")


def test_the_page_can_reach_nothing(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, small())
    answer = browser.execute_async_script(
        "const done = arguments[0]; fetch('data:text/plain,x').then(() => done('reached'), () => done('refused'));"
    )
    assert answer == "refused"


def test_a_private_page_shows_no_body_figure(browser: Chrome, tmp_path: Path) -> None:
    show(browser, tmp_path, private("96.7"))
    assert "96.7" not in browser.page_source
    assert "97.7" in browser.find_element(By.TAG_NAME, "main").text
