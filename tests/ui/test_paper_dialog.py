"""Every window beside the main one lies on the same paper."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from sizekeeper import ui
from sizekeeper.ui import theme
from sizekeeper.ui.pattern_views import ViewDialog

if TYPE_CHECKING:
    from PySide6.QtGui import QPalette
    from pytestqt.qtbot import QtBot

MODULES = sorted(Path(ui.__path__[0]).glob("*.py"))


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.stem)
def test_no_dialog_has_a_ground_of_its_own(path: Path) -> None:
    classes = (node for node in ast.walk(ast.parse(path.read_text("utf-8"))) if isinstance(node, ast.ClassDef))
    bare = [c.name for c in classes if any(isinstance(b, ast.Name) and b.id == "QDialog" for b in c.bases)]
    assert bare == (["PaperDialog"] if path.stem == "paper_dialog" else [])


def test_the_question_for_a_view_lies_on_the_paper_of_the_pages(dark: QPalette, qtbot: QtBot) -> None:
    dialog = ViewDialog((), copied="All views")
    qtbot.addWidget(dialog)
    assert dialog.grab().toImage().pixelColor(2, 2) == theme.paper(dark)
