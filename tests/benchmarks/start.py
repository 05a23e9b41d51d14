"""From process start to the first paint with the demo library, against a bare PySide6 table window.

Run by hand: `.venv/bin/python -m tests.benchmarks.start` (under Xvfb or offscreen). Aim: at most twice the bare window.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROUNDS = 9

BARE = """
from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QApplication, QTableWidget
app = QApplication([])
table = QTableWidget(40, 12)
table.resize(1280, 800)
class Painted(QObject):
    def eventFilter(self, watched, event):
        if event.type() == QEvent.Type.Paint:
            QTimer.singleShot(0, app.quit)
        return False
watch = Painted()
table.viewport().installEventFilter(watch)
table.show()
app.exec()
"""

OURS = """
import sys
from pathlib import Path
from PySide6.QtCore import QEvent, QObject, QTimer
from sizekeeper.ui import app
running = app.application()
class Painted(QObject):
    def eventFilter(self, watched, event):
        if event.type() == QEvent.Type.Paint and watched.isWindow():
            running.removeEventFilter(self)
            QTimer.singleShot(0, running.quit)
        return False
watch = Painted()
running.installEventFilter(watch)
sys.exit(app.run(Path(sys.argv[1])))
"""

MAKE = """
import sys
from pathlib import Path
from datetime import datetime
from sizekeeper.demo import demo_values
from sizekeeper.store.codec import new_id
from sizekeeper.store.library import Library
with_clock = Library.open(Path(sys.argv[1]), now=lambda: datetime.now().astimezone())
with_clock.save("Demo", [(None, value) for value in demo_values(new_id)])
with_clock.close()
"""


def seconds(code: str, *arguments: str) -> float:
    """How long one process takes."""
    start = time.perf_counter()
    subprocess.run([sys.executable, "-c", code, *arguments], check=True, capture_output=True)  # noqa: S603 - our own code
    return time.perf_counter() - start


def main() -> None:
    """Print both times, taken in turns, and their ratio."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    with tempfile.TemporaryDirectory() as folder:
        os.environ["XDG_CONFIG_HOME"] = os.environ["XDG_DATA_HOME"] = os.environ["XDG_STATE_HOME"] = folder
        library = str(Path(folder) / "demo.sizekeeper")
        seconds(MAKE, library)
        for code in (BARE, OURS):
            seconds(code, library)
        bare, ours = zip(*[(seconds(BARE, library), seconds(OURS, library)) for _ in range(ROUNDS)], strict=True)
    plain, own = statistics.median(bare), statistics.median(ours)
    print(f"bare table {plain * 1000:.0f} ms, Sizekeeper {own * 1000:.0f} ms, ratio {own / plain:.2f} (aim: at most 2)")


if __name__ == "__main__":
    main()
