"""A day at the head or the end of a text: what stands beside it is the same text without it."""

from __future__ import annotations

import re

from bot.reading.dates import MONTHS, WEEKDAY

_DAY = (
    rf"(?:yesterday|{WEEKDAY}|mon|tues?|wed|thurs?|fri|sat|sun|\d{{1,2}}/\d{{1,2}}"
    rf"|(?:{'|'.join(MONTHS)}) \d{{1,2}}(?:st|nd|rd|th)?|the \d{{1,2}}(?:st|nd|rd|th))"
    r"(?: (?:morning|afternoon|evening|night))?"
)
_HEAD = re.compile(rf"(?:on |for )?{_DAY}(?:[:,]? | - )(?=[^\W\d])")
_NOT_BEHIND = "".join(
    rf"(?<!\b{word})" for word in "since from than like till until before and for of as".split()
)
_END = re.compile(rf"(?<=\w){_NOT_BEHIND},? (?:on )?{_DAY}[.!]*$")


def apart_from_its_day(text: str) -> tuple[str, str, str] | None:
    """What stands before a tidy text's day, the text without it, and what stands behind. None
    where it names no day at its head or end."""
    head, end = _HEAD.match(text), _END.search(text)
    start, stop = head.end() if head else 0, end.start() if end else len(text)
    if (head is None and end is None) or start >= stop:
        return None
    return text[:start], text[start:stop], text[stop:]
