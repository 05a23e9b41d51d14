"""From process start to the first paint with the demo's entries as the user's own library, against a bare table window.

Both are whole processes; ours is the command `sizekeeper`, watched.

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

ROUNDS = 15

BARE = """
import time
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QTableWidget
app = QApplication([])
class Table(QTableWidget):
    def paintEvent(self, event):
        super().paintEvent(event)
        print(time.time(), flush=True)
        QTimer.singleShot(0, app.quit)
table = Table(40, 12)
table.resize(1280, 800)
table.show()
app.exec()
"""

OURS = """
import sys
import time
from sizekeeper.cli.main import main
from PySide6.QtCore import QCoreApplication, QTimer
from sizekeeper.ui import app, window
def page_made(name):
    print(time.time(), flush=True)
    QTimer.singleShot(0, QCoreApplication.quit)
def watch(self, event, paint=window.MainWindow.paintEvent):
    paint(self, event)
    print(time.time(), flush=True)
    self.pages.turned.connect(page_made)
    window.MainWindow.paintEvent = paint
window.MainWindow.paintEvent = watch
sys.exit(main([]))
"""

MAKE = """
import sys
from pathlib import Path
from datetime import datetime
from sizekeeper.demo import demo_values
from sizekeeper.store.codec import new_id
from sizekeeper.store.library import Library
Path(sys.argv[1]).parent.mkdir()
with_clock = Library.open(Path(sys.argv[1]), now=lambda: datetime.now().astimezone())
with_clock.save("Demo", [(None, value) for value in demo_values(new_id)])
with_clock.close()
"""


def seconds(code: str, *arguments: str) -> list[float]:
    """How long after its start a process says that something is on the screen, once or twice."""
    start = time.time()
    done = subprocess.run([sys.executable, "-c", code, *arguments], check=True, capture_output=True, text=True)  # noqa: S603 - our own code
    return [float(line) - start for line in done.stdout.splitlines()[:2]]


def main() -> None:
    """Print the times, taken in turns, and their ratios."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)  # an installed program has its bytecode
    with tempfile.TemporaryDirectory() as folder:
        os.environ["XDG_CONFIG_HOME"] = os.environ["XDG_DATA_HOME"] = os.environ["XDG_STATE_HOME"] = folder
        library = str(Path(folder) / "sizekeeper" / "home.sizekeeper")
        seconds(MAKE, library)
        for code in (BARE, OURS):
            seconds(code, library)
        times = [seconds(BARE, library)[:1] + seconds(OURS, library) for _ in range(ROUNDS)]
    for name, of in (("median", statistics.median), ("fastest", min)):
        plain, first, page = (of(column) * 1000 for column in zip(*times, strict=True))
        print(f"{name} of {ROUNDS}: bare table {plain:.0f} ms, Sizekeeper {first:.0f} ms")
        print(f"  ratio {first / plain:.2f} (aim: at most 2), with the page in front made as well {page / plain:.2f}")


if __name__ == "__main__":
    main()
