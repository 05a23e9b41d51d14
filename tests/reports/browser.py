"""A real browser without a window, for the tests that need one."""

from __future__ import annotations

import os
import shutil
from typing import TYPE_CHECKING

import pytest
from selenium import webdriver
from selenium.webdriver.chrome.options import Options
from selenium.webdriver.chrome.service import Service

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

_NAMES = ("chromium", "chromium-browser", "google-chrome")


def open_browser(profile: Path) -> Iterator[webdriver.Chrome]:
    """Chromium with a fresh profile; the test is skipped where it or its driver is absent."""
    program = next(filter(None, map(shutil.which, _NAMES)), None)
    driver = shutil.which("chromedriver")
    if program is None or driver is None:
        pytest.skip("Chromium and its driver are not installed (Debian: chromium, chromium-driver)")
    options = Options()
    options.binary_location = program
    arguments = [
        "--headless=new",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--no-first-run",
        f"--user-data-dir={profile}",
    ]
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        arguments.append("--no-sandbox")  # Chromium does not start as root with its sandbox
    for argument in arguments:
        options.add_argument(argument)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL"})
    browser = webdriver.Chrome(options=options, service=Service(driver))
    try:
        yield browser
    finally:
        browser.quit()
