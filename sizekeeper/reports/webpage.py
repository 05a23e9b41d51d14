"""The decision sheet as one web page for a phone propped on the sewing table: a single file that loads nothing.

Style and script are ours and stand in the page; their digests are all that the page's security policy lets run. What
people typed is escaped by the template engine. Ticks are kept in the browser where it allows that, and the page says
what it found out; without scripts the boxes still tick.
"""

from __future__ import annotations

import base64
import dataclasses
import functools
import hashlib
from typing import TYPE_CHECKING, Any, TypeVar

from sizekeeper import assets
from sizekeeper.core.band_colours import looks
from sizekeeper.core.days import day_words
from sizekeeper.core.preference import BANDS
from sizekeeper.reports.typed_text import clean
from sizekeeper.reports.unbroken import unbroken

if TYPE_CHECKING:
    from jinja2 import Environment

    from sizekeeper.reports.sheet import Sheet

_Value = TypeVar("_Value")


def webpage(sheet: Sheet) -> str:
    """The whole page. It holds no body figure where the sheet is private."""
    from markupsafe import Markup

    page = _environment().get_template("webpage.html")
    style, script = _style(), _script()
    return page.render(
        sheet=cleaned(sheet),
        place=_digest(clean(sheet.key)),
        policy=_policy(style, script),
        style=Markup(style),  # noqa: S704 - our own file, filled with our own colours
        script=Markup(script),  # noqa: S704 - our own file
        bands=_bands(sheet),
        takes_marks=bool(sheet.trace or sheet.measure_again or sheet.work or sheet.toile),
    )


def cleaned(value: _Value) -> _Value:
    """A value with every text in it clean: what HTML cannot hold is taken out."""
    if isinstance(value, str):
        return clean(value)  # type: ignore[return-value]  # a text for a text
    if isinstance(value, tuple):
        return tuple(cleaned(part) for part in value)  # type: ignore[return-value]  # a tuple for a tuple
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        changes: dict[str, Any] = {f.name: cleaned(getattr(value, f.name)) for f in dataclasses.fields(value)}
        return dataclasses.replace(value, **changes)
    return value


def _bands(sheet: Sheet) -> list[str]:
    """The bands that stand in the table, from tight to loose."""
    there = {cell.band for row in sheet.table.rows for cell in row.cells}
    return [band for band in BANDS if band in there]


@functools.cache
def _environment() -> Environment:
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    environment = Environment(
        loader=FileSystemLoader(assets.resource("reports")),
        autoescape=True,
        undefined=StrictUndefined,
        keep_trailing_newline=True,
    )
    environment.filters["day"] = day_words
    environment.filters["unbroken"] = unbroken
    return environment


@functools.cache
def _style() -> str:
    source = _environment().get_template("webpage.css")
    return source.render(light=list(looks(dark=False)), dark=list(looks(dark=True)))


@functools.cache
def _script() -> str:
    return assets.resource("reports", "webpage.js").read_text(encoding="utf-8")


def _policy(style: str, script: str) -> str:
    """No network, no form, no other base; only this style and this script, by their digests (CSP level 2)."""
    return (
        f"default-src 'none'; style-src '{_digest(style)}'; script-src '{_digest(script)}'; "
        "base-uri 'none'; form-action 'none'"
    )


def _digest(text: str) -> str:
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode("utf-8")).digest()).decode("ascii")
