"""What stands on the pages of a PDF, and where."""

from __future__ import annotations

import functools
import io
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np
import pdfplumber
import pypdf
from PIL import Image

if TYPE_CHECKING:
    from collections.abc import Iterator

MARGIN = 15 / 25.4 * 72
"""The margin of the sheets, points."""
HEAD = 20
"""How near the running head and foot may come to the paper's edge, points."""
Box = tuple[float, float, float, float]


def extracted(pdf: bytes) -> str:
    """The text of all pages as a reader finds it, single spaces between words, places to break left away."""
    pages = pypdf.PdfReader(io.BytesIO(pdf)).pages
    text = " ".join(page.extract_text() for page in pages)
    return " ".join(text.replace("\N{ZERO WIDTH SPACE}", "").replace("\N{NO-BREAK SPACE}", " ").split())


def page_texts(pdf: bytes) -> list[str]:
    """The text of each page."""
    with pdfplumber.open(io.BytesIO(pdf)) as file:
        return [page.extract_text() for page in file.pages]


@dataclass(frozen=True)
class Page:
    """A page: its size in points, its visible signs, and the rectangles that are painted on it."""

    width: float
    height: float
    signs: tuple[dict[str, Any], ...]
    rects: tuple[dict[str, Any], ...]


@functools.lru_cache(maxsize=4)
def pages(pdf: bytes) -> tuple[Page, ...]:
    """The pages of a file."""
    with pdfplumber.open(io.BytesIO(pdf)) as file:
        return tuple(
            Page(
                float(page.width),
                float(page.height),
                tuple(char for char in page.chars if char["text"].strip()),
                tuple(page.rects),
            )
            for page in file.pages
        )


@dataclass(frozen=True)
class Cell:
    """A cell with a band: its edges in points, what it says, and how far its text reaches."""

    edges: Box
    said: str
    reach: Box


def band_cells(pdf: bytes) -> Iterator[Cell]:
    """The cells with a band, which are those painted with a cloth, and the signs whose middle lies in them."""
    for page in pages(pdf):
        for rect in page.rects:
            if isinstance(rect["non_stroking_color"], str):
                yield _cell(page, (rect["x0"], rect["top"], rect["x1"], rect["bottom"]))


def _cell(page: Page, edges: Box) -> Cell:
    x0, top, x1, bottom = edges
    inside = [
        c for c in page.signs if x0 < (c["x0"] + c["x1"]) / 2 < x1 and top < (c["top"] + c["bottom"]) / 2 < bottom
    ]
    least = (min(c[key] for c in inside) for key in ("x0", "top"))
    most = (max(c[key] for c in inside) for key in ("x1", "bottom"))
    left, upper, right, lower = (*least, *most)
    return Cell(edges, "".join(c["text"] for c in inside), (left, upper, right, lower))


def signs_outside(pdf: bytes) -> list[str]:
    """The signs that reach beyond the side margins, or the foot of the page, or into the head."""
    return [
        sign["text"]
        for page in pages(pdf)
        for sign in page.signs
        if sign["x0"] < MARGIN - 1
        or sign["x1"] > page.width - MARGIN + 1
        or sign["top"] < HEAD
        or sign["bottom"] > page.height - HEAD
    ]


def ink_outside(image: bytes, ppi: float) -> int:
    """How many dark dots of a page lie outside its margins, the running head and foot left away."""
    dark = np.asarray(Image.open(io.BytesIO(image)).convert("L")) < 200
    edge = int(15 / 25.4 * ppi) - 1
    sides = dark[:, :edge].sum() + dark[:, -edge:].sum()
    return int(sides + dark[: edge // 2].sum() + dark[-edge // 3 :].sum())


def overlapping(pdf: bytes) -> list[tuple[str, str]]:
    """Pairs of signs that are printed over each other."""
    found = []
    for page in pages(pdf):
        x0, x1, top, bottom, size = (
            np.array([sign[key] for sign in page.signs], dtype=np.float32)
            for key in ("x0", "x1", "top", "bottom", "size")
        )
        smaller = np.minimum.outer(size, size)
        across = np.minimum.outer(x1, x1) - np.maximum.outer(x0, x0)
        down = np.minimum.outer(bottom, bottom) - np.maximum.outer(top, top)
        over = np.triu((across > 0.4 * smaller) & (down > 0.7 * smaller), k=1)
        found += [(page.signs[one]["text"], page.signs[other]["text"]) for one, other in np.argwhere(over)]
    return found


def runs_over(pdf: bytes, images: list[bytes], ppi: float) -> list[str]:
    """What runs over on the pages of a file: margins, cells, other signs. Empty where nothing does."""
    found = [f"outside the margins: {sign}" for sign in signs_outside(pdf)]
    found += [f"over each other: {one} {other}" for one, other in overlapping(pdf)]
    found += [f"ink in the margins of page {at}" for at, image in enumerate(images, 1) if ink_outside(image, ppi)]
    for cell in band_cells(pdf):
        (x0, top, x1, bottom), (left, upper, right, lower) = cell.edges, cell.reach
        if left < x0 - 0.5 or right > x1 + 0.5 or upper < top - 1 or lower > bottom + 1:
            found.append(f"out of its cell: {cell.said}")
    return found
