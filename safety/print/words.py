"""The fixed words of our paper in each language, from one table; an English sentence is its own key."""

import csv
from datetime import date
from functools import cache
from pathlib import Path

TABLE = Path(__file__).resolve().parent.parent / "tables" / "words.csv"
ENGLISH = "en"
SHEETS_SPEAK = "What data sheets say stands in the language of the sheet."


class UnknownLanguage(ValueError):
    """A language that the table has no column for."""


class UnknownWords(ValueError):
    """Fixed words that the table does not have."""


@cache
def table() -> dict[str, dict[str, str]]:
    """Return by English sentence its wording in every language."""
    with TABLE.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    return {row["en"]: row for row in rows}


@cache
def languages() -> tuple[str, ...]:
    """Return the languages that the table has a column for, English first."""
    row = next(iter(table().values()))
    return tuple(column for column in row if column and column != "mark")


def language_called(text: str) -> str:
    """Return a language by its two letters; raise UnknownLanguage."""
    found = text.strip().lower()
    if found not in languages():
        raise UnknownLanguage(f"“{text}” is not one of {', '.join(languages())}.")
    return found


def say(english: str, language: str, **filled: object) -> str:
    """Return fixed words in a language with their blanks filled; raise UnknownWords, UnknownLanguage."""
    row = table().get(english)
    if row is None:
        raise UnknownWords(f"“{english}” is not in the table of words.")
    return row[language_called(language)].format(**filled)


def said_or_same(text: str, language: str) -> str:
    """Return fixed words in a language, and as it is whatever a sheet or a person wrote."""
    return table()[text][language] if text in table() else text


def from_memory(language: str) -> bool:
    """Return whether any of the words of a language was typed from memory; raise UnknownLanguage."""
    place = languages().index(language_called(language))
    return any(row["mark"].split()[place] == "M" for row in table().values())


def written(day: date, language: str = ENGLISH) -> str:
    """Return a day in words: 25 November 2026, 25 de noviembre de 2026."""
    months = say(MONTHS, language).split()
    return say("{day} {month} {year}", language, day=day.day, month=months[day.month - 1], year=day.year)


MONTHS = "January February March April May June July August September October November December"
