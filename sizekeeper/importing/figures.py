"""One cell's figure: a length, a range, or the same length in two units, with everything that is printed around it."""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.importing.units import UNIT_WORDS

if TYPE_CHECKING:
    from sizekeeper.importing.grid import GridCell

MISSING = frozenset(
    {
        "-", "–", "—", "−", "--", "---", "/", "\\", "?", ".", "..", "...", "…", "x", "n/a", "na", "n.a.", "n. a.",
        "n.a",
        "none", "nil", "null", "nan", "tbd", "tba", "k.a.", "k. a.", "nvt", "n.v.t.", "s/o", "s.o.", "n.d.", "nd",
        "n/d",
        "*", "•", "·", "#n/a", "#ref!", "#value!", "#div/0!", "#name?", "#num!", "#null!", "keine", "aucun", "geen",
        "‒", "―", "not given", "not applicable", "unknown", "n.b.", "n/v",
    },
)  # fmt: skip
"""What charts print where no figure is given."""

_PLAIN = str.maketrans(
    {
        "″": '"', "”": '"', "“": '"', "„": '"', "＂": '"', "′": "'", "’": "'", "‘": "'", "´": "'", "⁄": "/", "∕": "/",
        "−": "-", "–": "-", "—": "-", "‐": "-", "‑": "-", "‒": "-", "―": "-",
        "\t": " ", "\n": " ", "\r": " ", "～": "~",
        "\u00a0": " ", "\u2009": " ", "\u202f": " ", "\u2007": " ", "\u2008": " ", "\u200a": " ", "\u2002": " ",
        "\u2003": " ",
        "\u2004": " ", "\u2005": " ", "\u2006": " ", "\u3000": " ", "\u200b": None, "\ufeff": None, "\u00ad": None,
        "\u2060": None,
        "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8", "⅓": " 1/3",
        "⅔": " 2/3", "⅕": " 1/5", "⅖": " 2/5", "⅗": " 3/5", "⅘": " 4/5", "⅙": " 1/6", "⅚": " 5/6", "⅒": " 1/10",
    },
)  # fmt: skip
_MARK = re.compile(r"^[*†‡§#‖¶]+\s*|\s*(?:[*†‡§#‖¶¹²³⁴⁵⁶⁷⁸⁹ᵃᵇᶜᵈ]+|\([*†‡]+\)|\[[a-z0-9]\]|(?<=[\d\"])\s*\([a-z1-9]\))$")
_ABOUT = re.compile(
    r"^(?:up to|bis|jusqu'à|tot|hasta|fino a|max\.?|min\.?|over|under|ab|[≤≥<>~≈])\s*(?=\d)"
    r"|(?<=\d)\s*(?:\+|±\s*[\d.,½¼¾]+)$"
    r"|(?<=[\w½¼¾\"])\s*\(?(?:(?:for |in )?all sizes|alle gr(?:ö|oe)(?:ß|ss)en|toutes (?:les )?tailles|alle maten|"
    r"todas las tallas|tutte le taglie|approx\.?|circa)\)?$",
    re.IGNORECASE,
)
_FRACTION = r"\d{1,2}/(?:2|3|4|5|6|8|10|16|32|64)(?!\d)"
_TOKEN = re.compile(
    rf"\s*(?:(?P<mixed>\d+(?:\s+|-){_FRACTION})|(?P<part>{_FRACTION})|(?P<number>\d+(?:[.,]\d+)?|[.,]\d+)"
    r"|(?P<open>[(\[])|(?P<close>[)\]])|(?P<slash>[/|=;])|(?P<sep>-|~|\.\.+|…)|(?P<word>''|[\"']|[^\W\d_]+\.?))",
)
_TO = frozenset({"to", "bis", "à", "a", "al", "tot", "till", "until", "e", "and", "und", "et", "y", "en"})
_SKIP = frozenset({"from", "von", "de", "da", "van", "du", "ca", "ca.", "approx", "approx.", "about", "circa", "env",
"env.",
                   "c.", "c", "etwa", "environ", "aprox", "aprox."})  # fmt: skip
_OR = frozenset({"or", "oder", "ou", "of", "o"})
_LONGEST = 60
_TWO = 2


@dataclass(frozen=True, slots=True)
class Amount:
    """A length or a range as printed. `unit` is None where the cell names none; `step` is the finest step printed."""

    low: Fraction
    high: Fraction
    unit: str | None
    step: Fraction

    def middle(self) -> Fraction:
        """The middle of the range, or the length itself."""
        return (self.low + self.high) / 2

    def times(self, factor: Fraction) -> Amount:
        """The amount counted in a unit `factor` times smaller."""
        return replace(self, low=self.low * factor, high=self.high * factor, step=self.step * factor)


@dataclass(frozen=True, slots=True)
class Figure:
    """What a cell says: one amount, or two that state the same length in two units."""

    amounts: tuple[Amount, ...]
    comma: bool = False
    mark: str = ""
    aside: str = ""

    @property
    def ranged(self) -> bool:
        """Whether the cell holds a range."""
        return any(a.low != a.high for a in self.amounts)


@dataclass(frozen=True, slots=True)
class _Number:
    value: Fraction
    step: Fraction
    unit: str | None = None


def plain(text: str) -> str:
    """Marks, dashes, spaces and vulgar fractions in their plain form: `37¾″` becomes `37 3/4"`."""
    return " ".join(text.translate(_PLAIN).split())


def is_missing(text: str) -> bool:
    """Whether a text is one of the marks printed where there is no figure."""
    return text.strip().strip("()").casefold() in MISSING


def figure_of(cell: GridCell) -> Figure | None:
    """The figure in a cell, None where it holds none."""
    if cell.number is not None:
        return _of_number(cell.number, cell.text)
    if cell.date is not None:
        return None
    return figure_in(cell.text)


def _of_number(number: Fraction, text: str) -> Figure | None:
    written = figure_in(text)
    if written and len(written.amounts) == 1 and written.amounts[0].low == number:
        return written
    unit = written.amounts[0].unit if written else None
    step = written.amounts[0].step if written else Fraction(1, 10)
    return Figure((Amount(number, number, unit, step),))


@functools.lru_cache(16384)
def figure_in(text: str) -> Figure | None:
    """The figure a text states, None where it says anything else."""
    if not text or len(text) > _LONGEST or is_missing(text):
        return None
    stripped, mark = _without_mark(text.strip())
    about = _ABOUT.search(stripped)
    shown = plain(_ABOUT.sub("", stripped) if about else stripped)
    negative = re.match(r"[-+±]\s*\d", shown)
    sign = -1 if negative and shown.startswith("-") else 1
    tokens = _tokens(shown[1:] if negative else shown)
    groups = _groups(tokens) if tokens else None
    if not groups:
        return None
    amounts = [_amount(group, sign) for group in groups]
    if any(a is None for a in amounts):
        return None
    comma = any(kind == "number" and "," in word and _thousands(word) is None for kind, word in tokens)
    found = _paired([a for a in amounts if a is not None], comma=comma, mark=mark, text=text)
    return replace(found, aside=about[0].strip()) if found and about else found


def _without_mark(text: str) -> tuple[str, str]:
    marks = ""
    for _ in range(2):
        match = _MARK.search(text)
        if match is None or not match[0] or match[0] == text:
            break
        marks += match[0].strip()
        text = (text[: match.start()] + text[match.end() :]).strip()
    return text, marks


def _tokens(text: str) -> list[tuple[str, str]]:
    """The parts of a text as (kind, word); empty where something does not belong in a figure."""
    tokens: list[tuple[str, str]] = []
    end = 0
    while end < len(text):
        match = _TOKEN.match(text, end)
        if match is None or match.lastgroup is None:
            return []
        kind, word = match.lastgroup, match[match.lastgroup]
        if kind in ("mixed", "part") and not _proper(word):
            match = re.compile(r"\s*(?P<number>\d+)").match(text, end)
            if match is None:
                return []
            kind, word = "number", match["number"]
        end = match.end()
        if kind == "word":
            kind, word = _word_kind(word)
        if kind == "unknown":
            return []
        if kind != "skip":
            tokens.append((kind, word))
    return tokens


def _proper(word: str) -> bool:
    top, _, bottom = re.split(r"[\s-]", word)[-1].partition("/")
    return 0 < int(top) < int(bottom)


def _word_kind(word: str) -> tuple[str, str]:
    low = word.casefold()
    if low in UNIT_WORDS:
        return "unit", UNIT_WORDS[low]
    if low.rstrip(".") in UNIT_WORDS:
        return "unit", UNIT_WORDS[low.rstrip(".")]
    if low in _TO:
        return "sep", low
    if low in _OR:
        return "slash", low
    return ("skip" if low in _SKIP else "unknown"), word


def _thousands(word: str) -> Fraction | None:
    """`1,016` as a thousand and sixteen: no chart prints three decimals."""
    match = re.fullmatch(r"([12])[.,](\d{3})", word)
    return Fraction(match[1] + match[2]) if match and "," in word else None


def _number(kind: str, word: str) -> _Number:
    if kind == "number":
        thousands = _thousands(word)
        if thousands is not None:
            return _Number(thousands, Fraction(1))
        whole, _, decimals = word.replace(",", ".").partition(".")
        return _Number(Fraction(f"{whole or 0}.{decimals or 0}"), Fraction(1, 10 ** len(decimals)))
    whole, _, part = word.replace("-", " ").rpartition(" ")
    fraction = Fraction(part)
    return _Number(Fraction(whole or 0) + fraction, Fraction(1, int(part.partition("/")[2])))


def _groups(tokens: list[tuple[str, str]]) -> list[list[_Number | str]] | None:
    """Numbers with their units and the joints between them, one list for each statement of the length."""
    groups: list[list[_Number | str]] = [[]]
    for kind, word in tokens:
        group = groups[-1]
        last = group[-1] if group else None
        if kind in ("number", "mixed", "part"):
            number = _number(kind, word)
            if isinstance(last, _Number):
                if last.unit is None:
                    return None
                groups.append([number])
            else:
                group.append(number)
        elif kind == "unit":
            if not isinstance(last, _Number) or last.unit is not None:
                return None
            group[-1] = replace(last, unit=word)
        elif kind == "sep":
            group.append("-")
        elif kind in ("slash", "open"):
            groups.append([])
    return [group for group in _feet_joined(groups) if group]


def _feet_joined(groups: list[list[_Number | str]]) -> list[list[_Number | str]]:
    """`5′ 6″` and `1 yd 4 in` are one length, not two."""
    joined: list[list[_Number | str]] = []
    for group in groups:
        before = joined[-1][-1] if joined and joined[-1] else None
        first = group[0] if group else None
        if (
            isinstance(before, _Number)
            and isinstance(first, _Number)
            and before.unit in ("ft", "yd")
            and first.unit in ("in", "ft", None)
            and first.value < 36  # noqa: PLR2004 - inches to the yard
        ):
            feet = before.value * (12 if before.unit == "ft" else 36)
            joined[-1][-1] = _Number(feet + first.value * (12 if first.unit == "ft" else 1), first.step, "in")
            joined[-1].extend(group[1:])
        else:
            joined.append(list(group))
    return joined


def _amount(group: list[_Number | str], sign: int) -> Amount | None:
    numbers = [part for part in group if isinstance(part, _Number)]
    shape = "".join("n" if isinstance(part, _Number) else "-" for part in group)
    if shape == "n":
        n = numbers[0]
        return Amount(n.value * sign, n.value * sign, n.unit, n.step)
    if shape not in ("n-n", "n--n"):
        return None
    first, second = numbers
    low, high = first.value * sign, second.value
    if low > high:
        low, high = high, low
    return Amount(low, high, second.unit or first.unit, min(first.step, second.step))


def _paired(amounts: list[Amount], *, comma: bool, mark: str, text: str) -> Figure | None:
    """One amount, or two that are the same length in two units; else a range, or a figure with an aside."""
    if len(amounts) == 1:
        return Figure((amounts[0],), comma, mark)
    if len(amounts) != _TWO:
        return None
    first, second = amounts
    both = _in_two_units(first, second)
    if both is not None or (first.unit and second.unit) or not first.low or not second.low:
        return Figure(both, comma, mark) if both else None
    single = first.low == first.high and second.low == second.high
    if "/" in text and single and Fraction(1) < second.low / first.low < Fraction(5, 4):
        return Figure((Amount(first.low, second.high, second.unit or first.unit, first.step),), comma, mark)
    if "(" in text or "[" in text:
        return Figure((first,), comma, mark, aside=text[text.find("(") :] if "(" in text else text)
    return None


def _in_two_units(first: Amount, second: Amount) -> tuple[Amount, Amount] | None:
    """The amounts with their units, where they are named or stand to each other as inches and centimetres do."""
    if first.unit and second.unit:
        return (first, second) if first.unit != second.unit else None
    if not first.low or not second.low:
        return None
    ratio = second.middle() / first.middle()
    if Fraction(2) < ratio < Fraction(31, 10):
        return replace(first, unit=first.unit or "in"), replace(second, unit=second.unit or "cm")
    if Fraction(10, 31) < ratio < Fraction(1, 2):
        return replace(first, unit=first.unit or "cm"), replace(second, unit=second.unit or "in")
    return None
