"""The words that charts are labelled with, in six languages: kinds, half widths, views, variants, cups and size words.

The lists are common practice of printed patterns, no source, each in English, French, German, Dutch, Spanish, Italian.
"""

from __future__ import annotations

import functools
import re
import unicodedata
from typing import Literal

from sizekeeper.importing.units import without_units

Kind = Literal["body", "finished"]


def _words(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{pattern})(?!\w)", re.IGNORECASE)


BODY = _words(
    r"(?<!upper )(?<!lower )body(?! (?:rise|length|width))|bodies|to fit|fits|fitting|"
    r"your(?! (?:sizes?|pattern|copy)\b)|wearer'?s?|of the wearer|actual measurements|"
    r"k[oö]rperma(?:ß|ss)e?n?|k[oö]rperma(?:ß|ss)tabelle|k[oö]rper|passend f[uü]r|passt|"
    r"(?:mesures|mensurations|tour)? ?(?:du |de )?corps|mensurations|corporelles?|"
    r"lichaams?(?:maten|maat)?|lichaam|past bij|"
    r"(?:del )?cuerpo|corporal(?:es)?|(?:del )?corpo|corporee",
)
FINISHED = _words(
    r"finished|garments?|final|completed|made[- ]up|finished size|"
    r"fertig(?:e[sn]?|ma(?:ß|ss)e?n?)?|kleidungsst[uü]ck(?:e?s|ma(?:ß|ss)e)?|kleiderma(?:ß|ss)e|"
    r"fertiges kleidungsst[uü]ck|"
    r"finie?s?|v[eê]tements?|termin[eé]e?s?|"
    r"afgewerkte?|eindma(?:at|ten)|kledingstuk(?:maten)?|kledingmaten|voltooide?|"
    r"prendas?|terminad[oa]s?|acabad[oa]s?|"
    r"capo|finit[oaie]|indument[oi]|confezionat[oaie]",
)
NEITHER = _words(
    r"measurements?|measures?|dimensions?|sizing|chart|table|guide|ma(?:ß|ss)e|ma(?:ß|ss)tabelle|mesures?|"
    r"tableau|maten|"
    r"maattabel|medidas?|tabla|misure?|tabella|these|are|all|given|figures|values|of|the|in|du|de|del|des|della|von|van",
)
HALF = re.compile(
    r"½|(?<![\w/.,½¼¾-])(?<!\d )1/2(?![\w/])|(?<!\w)(?:half|halbe[rsn]?|halb|halve|demi|mi|semi|medi[oa]|mitad|"
    r"mezz[oa]|met[aà]|"
    r"laid flat|lying flat|measured flat|flat|flach(?: gemessen)?|[aà] plat|plat(?: gemeten)?|vlak|en plano|"
    r"plano|in piano|"
    r"piatto|pit to pit|(?:armpit|underarm|edge|side|seam) to (?:armpit|underarm|edge|side|seam)|"
    r"(?:across,? ?|width,? ?)?(?:\(|, ?)?(?:[x×] ?2|(?-i:2 ?[x×]))\)?)(?!\w)",
    re.IGNORECASE,
)
QUARTER = re.compile(
    r"¼|(?<![\w/.,½¼¾-])(?<!\d )1/4(?![\w/])|(?<!\w)(?:quarter|viertel|quart|kwart|cuarto|quarto|(?:[x×] ?4|"
    r"4 ?[x×]))(?!\w)",
    re.IGNORECASE,
)
VIEW = re.compile(
    r"(?<!\w)(?:views?|version|style|ansicht|ausführung|vue|modèle|aanzicht|versie|vista|versión|versione|"
    r"variante|modell|"
    r"modello|modelo)\s*[:.]?\s+(?P<view>[A-Z0-9]{1,2}(?:\s*(?:,|&|/|\+|and|und|et|en|y|e)\s*[A-Z0-9]{1,2})*)(?!\w)",
    re.IGNORECASE,
)
VIEW_HEAD = _words(
    r"views?|version|style|ansicht|vue|modèle|aanzicht|versie|vista|versión|versione|modell|modello|modelo"
)
CUP = re.compile(
    r"(?<!\w)(?:(?P<a>[A-K]{1,3}(?:\s*[/–-]\s*[A-K]{1,3})?)[\s-]*(?:cups?|k[oö]rbchen|cupmaat)|"
    r"(?:cups?|k[oö]rbchen|bonnets?|copa|coppa|cupmaat)\s*[:.]?\s*(?P<b>[A-K]{1,3}(?:\s*[/–-]\s*[A-K]{1,3})?))(?!\w)",
    re.IGNORECASE,
)
CUP_HEAD = _words(r"cups?|cup size|k[oö]rbchen|k[oö]rbchengr[oö](?:ß|ss)e|bonnets?|copa|coppa|cupmaat")
VARIANT = _words(
    r"petites?|regular|reg|tall|plus(?: size)?|misses|women's|womens|junior|average|slim|husky|"
    r"langgr[oö](?:ß|ss)en?|kurzgr[oö](?:ß|ss)en?|normalgr[oö](?:ß|ss)en?",
)
VARIANT_ALONE = _words(
    r"petites?|regular|reg|tall|plus(?: size)?|misses|misses'|miss|women's|womens|women|men|men's|girls?|boys?|"
    r"junior|average|"
    r"slim|husky|short|long|standard|normal|extra long|kurz|lang|gro(?:ß|ss)|damen|herren|court|courte|longue?|"
    r"normale?|"
    r"grande|standaard|kort|normaal|corto|cort[oa]|larg[oa]|alt[oa]|baj[oa]|lungo|lunga|regolare|maternity",
)
VARIANT_HEAD = _words(
    r"variant|fit|length type|figure|figure type|height group|range|leg|passform|figurtyp|coupe|type de taille|"
    r"lengtemaat|tipo",
)
KIND_HEAD = _words(r"type|kind|body/garment|body or garment|what|art|genre|soort|tipo|typ|of")
UNIT_HEAD = _words(r"units?|einheit(?:en)?|unité|unités|eenheid|unidad(?:es)?|unità|measured in|uom")
SIZE = _words(
    r"sizes?|sz|size range|pattern size|(?:kurz|lang|normal)?gr(?:ö|oe|o)(?:ß|ss)en?|"
    r"gr|tg|mt|konfektionsgr(?:ö|oe)(?:ß|ss)e|tailles?|pointures?|"
    r"ma(?:at|ten)|kledingmaat|confectiema(?:at|ten)|tallas?|tagli[ae]|misura taglia|age|ages|alter|âge|"
    r"leeftijd|edad|età|"
    r"uk|us|usa|eu|eur|euro|europe|european|american|british|french|german|italian|int|international|aus|"
    r"fr|it|de|nl|es|jp|au|ru|alpha|numeric",
)
GENERIC = _words(
    r"measurements?|measures?|measuring|points?|of|the|in|all|chart|table|guide|size|sizes|dimension|dimensions|"
    r"description|"
    r"ma(?:ß|ss)e?|ma(?:ß|ss)tabelle|mesures?|tableau|des|de|du|maten|maattabel|medidas?|tabla|misure?|tabella|"
    r"part|area|"
    r"where|name|bezeichnung|désignation|omschrijving|descripción|descrizione|label|region|taglie|tallas",
)
NOTIONS = _words(
    r"(?:\w+ )?fabrics?|stoff\w*|tissus?|stof(?:fen)?|telas?|tessut[oi]|interfacing|einlage|vlieseline|"
    r"entoilage|fliselina|"
    r"lining|futter|doublure|voering|forro|fodera|yardage|elastic|gummiband|élastique|elastiek|elástico|elastico|"
    r"(?:number of )?buttons?|knöpfe|boutons?|knopen|botones|bottoni|zip(?:per)?s?|rei(?:ß|ss)verschl\w+|thread|"
    r"garn|ribbon|"
    r"prices?|preis|prix|prijs|precio|prezzo|pages?|(?:body )?weight|k[oö]rpergewicht|gewicht|poids|peso|kgs?|lbs?",
)
"""Rows that are about cloth, notions and what things weigh, not about measures."""

CLOTH_NEEDED = _words(
    r"required|requirements?|needed|needs?|amounts?|quantit(?:y|ies|é|és|à)|yardage|consumption|benötigt|bedarf|"
    r"verbrauch|\w+(?:bedarf|verbrauch)|nécessaires?|métrage|benodigd\w*|\w+verbruik|necesari[oa]s?|consumo|"
    r"necessari[oae]|occorrente|m|mtr|met(?:er|re)s?|yds?|yards?",
)
"""What headings above tables of cloth say beside its name."""

EASE = _words(
    r"(?:wearing |design |fitting )?ease(?: allowed| included| added)?|bequemlichkeits(?:zugabe|weite)|mehrweite|"
    r"(?:weiten)?zugaben?|aisance|overwijdte|holgura|vestibilit[aà]|agio",
)
"""The ease that some charts print beside body and garment; it is worked out here, never read."""

NO_SIZE = _words(
    r"tol(?:\.|erances?)?|toler\w+|±|\+/-|grad(?:e|ing)(?: rule)?|increments?|steps?|sprung(?:wert)?|difference|notes?|"
    r"comments?|remarks?|bemerkung(?:en)?|remarques?|opmerking(?:en)?|notas?|code|no|nr|pom|"
    r"average|avg|mean|totals?|sum|durchschnitt|mittelwert|summe|gemiddelde?|totaal|promedio|totale?",
)
"""Heads of columns that stand among the sizes and are none."""

STATED_FOR_ALL = re.compile(
    r"(?:measured|gemessen|mesurée?s?|gemeten|medid[oa]s?|misurat[oaie])(?: flat| flach| plat)? (?:in |"
    r"en )(?:cm|mm|inch(?:es)?|"
    r"zoll|pouces)\b|(?:all |these |the )?(?:measurements?|figures?|sizes|dimensions|ma(?:ß|ss)e|mesures|maten|"
    r"medidas|misure|angaben|"
    r"alles|everything)[^.]{0,40}?(?:\bin\b|\ben\b|given|are|sind|sont|zijn|sono|:)\s*(?:in |en )?"
    r"(?:cm|mm|inch|inches|centimet\w+|zentimetern?|zoll|pouces|duim|pulgadas|pollici|millimet\w+)\b",
    re.IGNORECASE,
)

_KEEP = re.compile(r"[^\w½¼⅛]+", re.UNICODE)


@functools.lru_cache(8192)
def folded(text: str) -> str:
    """A text for comparing: lower case, no accents, one space between words, no punctuation."""
    bare = unicodedata.normalize("NFKD", text.casefold())
    return " ".join(_KEEP.sub(" ", "".join(c for c in bare if not unicodedata.combining(c))).split())


def kind_in(text: str) -> Kind | None:
    """What a text says of the figures' kind; None where it says nothing or both."""
    body, finished = BODY.search(text), FINISHED.search(text)
    if body and finished:
        return None
    return "body" if body else "finished" if finished else None


def view_in(text: str) -> str | None:
    """The view a text names: `Length, view B` gives B."""
    match = VIEW.search(text)
    return match["view"].upper() if match else None


def cup_in(text: str) -> str | None:
    """The cup a text names: `Bust, C cup` gives `C cup`."""
    match = CUP.search(text)
    return f"{(match['a'] or match['b']).upper()} cup" if match else None


def only(pattern: re.Pattern[str], text: str) -> bool:
    """Whether nothing but the pattern's words, small words and punctuation stands in a text."""
    if not pattern.search(text):
        return False
    return not re.search(r"\w", NEITHER.sub("", pattern.sub("", text)))


def topic_in(heading: str) -> Literal["", "cloth", "ease"]:
    """What a heading's rows are about where they are no measures of body or garment: cloth and notions, or ease."""
    if kind_in(heading):
        return ""
    heading = without_units(heading)
    if only(EASE, heading):
        return "ease"
    notions = NOTIONS.search(heading)
    return "cloth" if notions and only(NOTIONS, CLOTH_NEEDED.sub(" ", heading)) else ""


_LOW = _words(r"min(?:imum|i)?\.?|from|low(?:er|est)?|von|de|da|van|desde|dès|smallest")
_HIGH = _words(r"max(?:imum|i)?\.?|to|high(?:er|est)?|upper|bis|à|a|tot|hasta|jusqu'à|fino a|largest")


def bound_in(text: str) -> Literal["", "low", "high"]:
    """Which end of a range a label stands for: `Bust min` the low one, `to` the high one; nothing for others.

    Small words count only where they stand alone or at the end: `to fit bust` is no end of a range.
    """
    last = text.replace("_", " ").strip(" ():.,-").split()[-1:] or [""]
    word = last[0].strip("().,:")
    if _LOW.fullmatch(word):
        return "low"
    return "high" if _HIGH.fullmatch(word) else ""
