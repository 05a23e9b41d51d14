"""What every test must leave behind: nothing."""

from __future__ import annotations

import os
import threading
from typing import TYPE_CHECKING

import pytest
from hypothesis import HealthCheck, settings

if TYPE_CHECKING:
    from collections.abc import Iterator

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# No test is timed: a slow machine, or one that does something else meanwhile, fails none.
settings.register_profile("untimed", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("untimed")


@pytest.fixture(autouse=True)
def no_leaked_threads() -> Iterator[None]:
    """Fail a test that leaves a thread running."""
    before = set(threading.enumerate())
    yield
    leaked = [thread for thread in threading.enumerate() if thread not in before and thread.is_alive()]
    for thread in leaked:
        thread.join(timeout=1)
    left = [thread.name for thread in leaked if thread.is_alive()]
    assert not left, f"threads still running: {left}; close the writer (or whatever started them) in the test"


@pytest.hookimpl(hookwrapper=True)
def pytest_runtest_makereport(item: pytest.Item, call: pytest.CallInfo[None]) -> Iterator[None]:
    """Under SIZEKEEPER_REQUIRE_ALL=1 a skipped test fails: on the machine that checks, nothing may be missing."""
    outcome = yield
    report = outcome.get_result()  # type: ignore[attr-defined]
    if report.skipped and not hasattr(report, "wasxfail") and os.environ.get("SIZEKEEPER_REQUIRE_ALL") == "1":
        report.outcome = "failed"
        report.longrepr = f"skipped although everything is required here: {report.longrepr}"
