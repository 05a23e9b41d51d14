"""What the program says to whoever uses it speaks of nobody as a woman: the one who sews may be anybody."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PRONOUN = re.compile(r"\b(she|her|hers|herself)\b", re.IGNORECASE)
READ_IN = {"people_words.py"}
"""Words that are understood in somebody's table, not said."""


def docstrings(tree: ast.AST) -> set[ast.AST]:
    """Every text that stands alone as a statement: a docstring, or the note below a name."""
    return {node.value for node in ast.walk(tree) if isinstance(node, ast.Expr)}


def said(source: str) -> list[str]:
    """The texts of a module that are no docstrings."""
    tree = ast.parse(source)
    left_out = docstrings(tree)
    nodes = (node for node in ast.walk(tree) if isinstance(node, ast.Constant) and node not in left_out)
    return [node.value for node in nodes if isinstance(node.value, str)]


@pytest.mark.parametrize("path", sorted((ROOT / "sizekeeper").rglob("*.py")), ids=lambda path: path.name)
def test_no_text_of_the_program_says_she_or_her(path: Path) -> None:
    texts = [] if path.name in READ_IN else said(path.read_text("utf-8"))
    assert [text for text in texts if PRONOUN.search(text)] == []


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md", "resources/measures.toml", "resources/pieces.toml"])
def test_no_page_says_she_or_her(name: str) -> None:
    assert not PRONOUN.search((ROOT / name).read_text("utf-8"))


def test_a_text_with_a_pronoun_would_be_found() -> None:
    found = said('"""Her."""\nx = f"for {1} her"\ny = "there"')
    assert [text for text in found if PRONOUN.search(text)] == [" her"]
