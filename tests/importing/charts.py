"""Charts to import for tests, written in one line and opened from a file."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.learned import Learned
from sizekeeper.importing.opened import Answers, Opened, open_pasted, read

if TYPE_CHECKING:
    from collections.abc import Callable

BODY = "Body measurements (cm)|S|M|L / Bust|82|88|94 / Waist|64|70|76"
"""A chart without a question."""
MISSPELT = "Body measurements (cm)|S|M|L / Busst|82|88|94 / Waist|64|70|76"
NO_UNIT = "Body measurements|S|M|L / Bust|82|88|94 / Waist|64|70|76"
NO_KIND = "Size (cm)|S|M|L / Bust|82|88|94 / Waist|64|70|76"
FLAT = "Body (cm)|S|M|L / Bust|86|92|98 / Hip|94|100|106 /  / Garment (cm)|S|M|L / Bust|48|51|54 / Hip|52|55|58"
MISPRINT = "Body measurements (cm)|8|10|12|14|16 / Bust|82|86|90|94|98 / Waist|64|68|27|76|80"
TWO_UNITS = "Body measurements cm (in)|S|M / Bust|82 (32 1/4)|88 (34 5/8) / Waist|64 (25 1/4)|72 (30 3/8)"
WRONG_UNIT = "Body measurements (in)|36|38|40 / Bust|84|88|92 / Waist|68|72|76 / Hip|92|96|100"
ROW_IN_INCHES = "Body measurements (cm)|8|10|12 / Bust|82|86|90 / Waist|25|26 1/2|28 / Hip|90|94|98"
TWICE_HEADED = "Body measurements (cm)|10|12|12|14 / Bust|84|88|92|96"
TWICE_NAMED = "Body measurements (cm)|S|M|L / Bust|86|92|98 / Chest|84|90|96"
NO_TABLE = "Dear diary / today it rained"


def texts(chart: str) -> str:
    """A chart as it lies on the clipboard: `/` ends a row and `|` a cell."""
    return "\n".join(row.replace("|", "\t") for row in chart.replace(" / ", "\n").split("\n"))


def opened(chart: str, learned: Learned | None = None) -> Opened:
    """A chart that was pasted."""
    return open_pasted("", texts(chart), learned or Learned())


def after(before: Opened, change: Callable[[Answers], Answers], learned: Learned | None = None) -> Opened:
    """The reading once something was set by hand."""
    return read(before.name, before.sheets, change(before.answers), learned or Learned())
