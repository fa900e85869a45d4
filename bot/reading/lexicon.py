"""Our own word list: which words do what, gathered from the shared file and from every kind.

TAGS: word or phrase (joined by spaces) -> what it does. UNITS: word -> (dimension, unit).
KNOWN: every single word that we know. CORRECTABLE: those that a misspelling may be led to.
"""

from __future__ import annotations

from collections import defaultdict
from importlib import resources

from bot.reading import dates, kinds, numbers


def lines_of(name: str) -> list[tuple[str, str]]:
    """A data file of `name: words` lines; lines that start with # are its heading."""
    text = resources.files("bot.reading").joinpath(name).read_text(encoding="utf-8")
    lines = (line for line in text.splitlines() if line.strip() and not line.startswith("#"))
    return [(head.strip(), words) for head, _, words in (line.partition(":") for line in lines)]


SLANG: dict[str, str] = {
    slip: meant for meant, slips in lines_of("slang.txt") for slip in slips.split()
}
"""What people type -> the word that they mean."""


def _units() -> dict[tuple[str, ...], tuple[str, str]]:
    found = {}
    for head, words in lines_of("units.txt"):
        dimension, _, unit = head.partition(" ")
        for word in words.split():
            found[tuple(word.split("_"))] = (dimension, unit)
    return found


UNIT_PHRASES = {words: unit for words, unit in _units().items() if len(words) > 1}
UNIT_PHRASES_BEGIN = frozenset(words[0] for words in UNIT_PHRASES)
UNITS = {words[0]: unit for words, unit in _units().items() if len(words) == 1}


def _gathered() -> dict[str, frozenset[str]]:
    tags: defaultdict[str, set[str]] = defaultdict(set)
    lists = lines_of("lexicon.txt")
    for family in kinds.FAMILY:
        lists += list(getattr(family, "CUES", {}).items())
    for tag, words in lists:
        for word in words.split():
            tags[word.replace("_", " ")].add(tag)
    return {word: frozenset(names) for word, names in tags.items()}


TAGS: dict[str, frozenset[str]] = _gathered()
PHRASES: dict[tuple[str, str], list[tuple[tuple[str, ...], frozenset[str]]]] = defaultdict(list)
"""Phrases by their first two words, the longest first."""
for _words, _tags in TAGS.items():
    _parts = tuple(_words.split())
    if len(_parts) > 1:
        PHRASES[_parts[0], _parts[1]].append((_parts, _tags))
for _list in PHRASES.values():
    _list.sort(key=lambda entry: -len(entry[0]))


def _words_of(name: str) -> frozenset[str]:
    text = resources.files("bot.reading").joinpath(name).read_text(encoding="utf-8")
    return frozenset(
        word for line in text.splitlines() if not line.startswith("#") for word in line.split()
    )


LOOKALIKES = _words_of("lookalikes.txt")
"""Plain English words that must never be taken for a misspelling of one of ours."""

_singles = {part for words in TAGS for part in words.split()}
CORRECTABLE = sorted(
    word
    for word in _singles
    | set(UNITS)
    | {"yesterday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday",
       "morning", "evening", "tonight", "february", "january", "april", "diameter", "temperature",
       "syrup", "gallons", "maple", "season", "should", "much", "twelve", "eleven", "fifteen",
       "twenty", "thirty", "quarter", "quarters", "dozen"}
    if len(word) >= 4 and word.isalpha()
)  # fmt: skip
KNOWN = (
    _singles
    | set(UNITS)
    | numbers.NUMBER_WORDS
    | set(dates.WEEKDAYS)
    | set(dates.MONTHS)
    | set(CORRECTABLE)
)
