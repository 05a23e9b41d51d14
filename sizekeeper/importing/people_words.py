"""The words with which tables of people are headed and filled in, in six languages.

Common practice of class lists, cast lists and measurement sheets, no source.
"""

from __future__ import annotations

import functools
import re
from typing import TYPE_CHECKING

from sizekeeper.core.people_headings import OF_READING
from sizekeeper.importing.vocabulary import folded

if TYPE_CHECKING:
    from sizekeeper.core.measure import MeasuredBy


def _each(text: str) -> frozenset[str]:
    return frozenset(folded(word) for word in text.split("|"))


FIELDS: dict[str, frozenset[str]] = {
    "name": _each(
        "name|names|full name|person|people|who|wearer|client|customer|pupil|student|actor|performer|name of person|"
        "nom|noms|nom complet|nom et prénom|nom prénom|prénom et nom|personne|élève|cliente|"
        "vor- und nachname|vorname und nachname|name, vorname|kundin|kunde|schülerin|schüler|"
        "naam|namen|volledige naam|persoon|klant|leerling|"
        "nombre|nombres|nombre completo|nombre y apellidos|persona|cliente|alumna|alumno|"
        "nome|nomi|nome completo|nome e cognome|allieva|allievo",
    ),
    "given": _each(
        "first name|first names|firstname|given name|given names|forename|vorname|vornamen|rufname|prénom|prénoms|"
        "voornaam|nombre de pila|primer nombre|nome di battesimo",
    ),
    "family": _each(
        "last name|lastname|surname|family name|nachname|familienname|zuname|nom de famille|achternaam|familienaam|"
        "apellido|apellidos|cognome",
    ),
    "groups": _each(
        "group|groups|household|class|form|cast|team|troupe|family|gruppe|gruppen|haushalt|klasse|ensemble|familie|"
        "groupe|groupes|ménage|foyer|classe|distribution|famille|groep|groepen|huishouden|gezin|klas|"
        "grupo|grupos|hogar|clase|elenco|reparto|familia|gruppo|gruppi|famiglia",
    ),
    "born": _each(
        "born|birth date|birthdate|date of birth|birthday|dob|d.o.b.|born on|geboren|geboren am|geburtsdatum|"
        "geburtstag|geb.|né le|née le|né(e) le|date de naissance|naissance|geboortedatum|geboren op|"
        "fecha de nacimiento|nacimiento|nacida|nacido|data di nascita|nascita|nata il|nato il",
    ),
    "child": _each(
        "child|is a child|child?|minor|kind|enfant|mineur|minderjarig|niño|niña|niño/a|menor|bambino|bambina|minorenne",
    ),
    "unit": _each("unit|units|einheit|einheiten|maßeinheit|unité|unités|eenheid|unidad|unidades|unità|uom|measured in"),
    "on": _each(
        "measured on|date measured|measured|date of measurement|date of measuring|measurement date|taken on|when|"
        "gemessen am|messdatum|gemessen|mesuré le|mesurée le|mesuré(e) le|date de mesure|date des mesures|"
        "gemeten op|meetdatum|gemeten|medida el|medido el|fecha de medida|fecha de medición|"
        "data misura|data di misura|data della misura|misurata il|misurato il",
    ),
    "by": _each(
        "measured by|who measured|taken by|by|gemessen von|wer hat gemessen|mesuré par|mesurée par|mesures prises par|"
        "prises par|gemeten door|medida por|medido por|misurata da|misurato da",
    ),
    "over": _each(
        "measured over|over|over what|worn|wearing|clothes worn|gemessen über|über|getragen|kleidung|mesuré sur|"
        "mesurée sur|sur|porté|gemeten over|gedragen|medida sobre|medido sobre|sobre|misurata su|misurato su|sopra",
    ),
    "notes": _each(
        "note|notes|remark|remarks|comment|comments|notiz|notizen|bemerkung|bemerkungen|anmerkung|anmerkungen|"
        "remarque|remarques|commentaire|commentaires|opmerking|opmerkingen|aantekening|aantekeningen|"
        "nota|notas|observaciones|comentarios|osservazioni|commenti",
    ),
}
"""What a column is headed with, by what stands in it."""

EITHER: dict[str, tuple[str, ...]] = dict.fromkeys(
    _each("date|day|datum|tag|dag|fecha|día|data|giorno|jour"), ("born", "on")
)
"""Headings that can mean one thing or another."""

_CORNER = _each(
    "measurement|measurements|measure|measures|maß|maße|mesure|mesures|mensurations|maat|maten|medida|medidas|misura|"
    "misure|no|nr|#|",
)
_BRACKETS = re.compile(r"[(\[][^()\[\]]*[)\]]")


@functools.lru_cache(4096)
def field_of(heading: str) -> str:
    """What a heading says stands in its column, besides figures; empty where it names none of these."""
    for text in (heading, _BRACKETS.sub(" ", heading)):
        name = folded(text)
        for field, names in FIELDS.items():
            if name and name in names:
                return field
    return ""


def either_of(heading: str) -> tuple[str, ...]:
    """The things a heading may mean, where it may mean more than one."""
    return EITHER.get(folded(_BRACKETS.sub(" ", heading)), ())


def is_corner(heading: str) -> bool:
    """Whether a heading says nothing of what stands below it, as where the names meet the measures."""
    return folded(heading) in _CORNER


def of_reading(heading: str) -> tuple[str, str]:
    """A heading such as `Bust: measured on` as the measure's name and what is told of its figures; else two empties."""
    name, colon, rest = heading.rpartition(":")
    said = folded(rest)
    for part in OF_READING:
        if colon and (said == folded(OF_READING[part]) or (part != "note" and said in FIELDS[part])):
            return name.strip(), part
    return ("", "")


_BY: dict[str, MeasuredBy] = {
    **dict.fromkeys(
        _each(
            "trained|professional|tailor|dressmaker|seamstress|teacher|geschult|fachkraft|schneiderin|schneider|"
            "formée|professionnelle|professionnel|couturière|couturier|tailleur|opgeleid|vakvrouw|kleermaker|"
            "naaister|profesional|modista|sastre|formada|professionista|sarta|sarto|formata",
        ),
        "trained",
    ),
    **dict.fromkeys(
        _each(
            "helped|with help|by a friend|friend|someone else|mit hilfe|hilfe|freundin|aidée|aidé|avec aide|amie|"
            "geholpen|met hulp|vriendin|con ayuda|ayudada|amiga|con aiuto|aiutata|amica",
        ),
        "helped",
    ),
    **dict.fromkeys(
        _each(
            "alone|self|myself|herself|himself|by myself|own|allein|alleine|selbst|seule|seul|soi-même|elle-même|"
            "alleen|zelf|sola|solo|ella misma|da sola|da solo",
        ),
        "alone",
    ),
}
_YES = _each("x|yes|y|true|1|ja|j|oui|o|vrai|sí|s|verdadero|vero|child|kind|enfant|niña|niño|bambina|bambino|✓|✔|wahr")
_NO = _each("no|n|false|0|nein|non|faux|nee|falso|adult|grown|grown up|erwachsen|adulte|volwassen|adulta|adulto|falsch")


_SUMS = _each(
    "total|totals|sum|average|averages|mean|median|minimum|maximum|min|max|count|range|std dev|standard deviation|"
    "summe|gesamt|insgesamt|durchschnitt|mittel|mittelwert|anzahl|somme|moyenne|médiane|nombre total|"
    "totaal|gemiddelde|som|aantal|suma|promedio|media|total general|totale|somma",
)


def is_sum(name: str) -> bool:
    """Whether a row is called as a sum or a mean at the foot of a table is, and not as somebody."""
    return folded(name) in _SUMS


def hand(text: str) -> MeasuredBy | None:
    """Who held the tape, None where the words do not say it."""
    return _BY.get(folded(text))


def yes_or_no(text: str) -> bool | None:
    """Whether a cell says yes, None where it says neither; an empty dash says no."""
    word = folded(text)
    if word in _YES and (word or text.strip() in ("✓", "✔")):
        return True
    return False if word in _NO or not re.search(r"\w", text) else None
