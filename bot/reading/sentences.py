"""Sentences, and a day at the head or the end of one.

What is said in a sentence means the same with another beside it and with a day before or behind
it, so the forms that are looked for in a whole text are looked for there too.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import lru_cache

from bot.reading.dates import MONTHS, WEEKDAY

_DAY = (
    rf"(?:yesterday|{WEEKDAY}|mon|tues?|wed|thurs?|fri|sat|sun|\d{{1,2}}/\d{{1,2}}"
    rf"|(?:{'|'.join(MONTHS)}) \d{{1,2}}(?:st|nd|rd|th)?|the \d{{1,2}}(?:st|nd|rd|th))"
    r"(?: (?:morning|afternoon|evening|night))?"
)
_HEAD = re.compile(rf"(?:on |for )?{_DAY}(?:[:,]? | - )(?=\w)")
_NOT_BEHIND = "".join(
    rf"(?<!\b{word})" for word in "since from than like till until before and for of as".split()
)
_END = re.compile(rf"(?<=\w){_NOT_BEHIND},? (?:on )?{_DAY}[.!]*$")


# A day ends with one of these, and few other sentences do: that is quick to see.
_LAST = (
    *("yesterday", "day", "mon", "tue", "tues", "wed", "thu", "thur", "thurs", "fri", "sat", "sun"),
    *("st", "nd", "rd", "th", "morning", "afternoon", "evening", "night", *"0123456789"),
)
_SHORT = "".join(
    rf"(?<!\b{word})" for word in "gal qt pt hr gals qts pts hrs lb lbs oz no min".split()
)
"""What is cut short with a point ends no sentence: `14 gal. 2.2`."""
_MAY_END = re.compile(r"[.!?;]\s|\n")
_SENTENCE = re.compile(rf"(?<!\d){_SHORT}[.!?;]+\s+|(?<=\d)[.!?;]+\s+(?=\D)|\n+")


def in_each(text: str, rewrite: Callable[[str], str]) -> str:
    """A tidy text with each of its sentences written anew, and the day beside it kept."""
    spans = _spans(text)
    if not spans:
        return text
    out: list[str] = []
    at = 0
    for start, stop in spans:
        out += (text[at:start], rewrite(text[start:stop]))
        at = stop
    return "".join((*out, text[at:]))


def each(text: str) -> Iterator[str]:
    """The sentences of a tidy text, without the day beside them; not the whole text itself."""
    return (text[start:stop] for start, stop in _spans(text))


@lru_cache(maxsize=16)
def _spans(text: str) -> tuple[tuple[int, int], ...]:
    """Where the sentences stand that are not the whole text."""
    found: list[tuple[int, int]] = []
    several = _MAY_END.search(text) is not None
    ends = [(hit.start(), hit.end()) for hit in _SENTENCE.finditer(text)] if several else []
    start = 0
    for stop, behind in [*ends, (len(text), len(text))]:
        sentence = text[start:stop]
        head = _HEAD.match(sentence)
        end = _END.search(sentence) if sentence.rstrip(".!").endswith(_LAST) else None
        first = start + (head.end() if head else 0)
        last = start + end.start() if end else start + len(sentence.rstrip(".!?;"))
        if first < last and (first, last) != (0, len(text)):
            found.append((first, last))
        start = behind
    return tuple(found)
