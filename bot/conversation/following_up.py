"""`and yesterday?` after "how much today": the last question of another day, lot or thing."""

from __future__ import annotations

import re
from collections.abc import Sequence

_LEADS = re.compile(
    r"^(?:ok(?:ay)?,? |so )?(?:(?:and )?(?:what|how) about|and|or|what of)"
    r" (?:(?:for|on|in|from|with|the|of|just) )*(?P<what>.{2,30}?)[ ?.!]*$"
)
_ALONE = re.compile(r"^(?P<what>[a-z0-9' ]{3,24}?) ?\?+$")
_MOST_WORDS = 5
_WEEKDAYS = r"(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|satur|sat|sun)(?:day)?"
_MONTHS = (
    r"(?:january|february|march|april|may|june|july|august|september|october|november|december"
    r"|jan|feb|mar|apr)"
)
_PERIOD = re.compile(
    r"\b(?:(?:for|on|in|during|since|of) )?(?:the )?"
    r"(?:today|yesterday|tonight|this morning|so far"
    r"|(?:this|last|past) (?:week(?:end)?|month|season|year|spring)"
    rf"|(?:last )?{_WEEKDAYS}|{_MONTHS}(?: \d{{1,2}})?|the \d{{1,2}}(?:st|nd|rd|th))\b"
)
_TREE = re.compile(r"\b(?:tree|maple) ?#?(?:\d{1,3}|[a-z]\d{0,2})\b")
_THINGS = re.compile(
    r"\b(?:sap|syrup|jars|sugar|brix|wood|propane|hours|taps|pints|quarts|money|costs?)\b"
)


def followed_up(words: str, about: str, lots: Sequence[str]) -> str | None:
    """The question that a text asks of what the last one was about, None where it asks none.

    words: the text. about: the last question. lots: the names of parts of the bush.
    """
    said = " ".join(words.casefold().split())
    found = _LEADS.match(said) or _ALONE.match(said)
    if found is None or len(found["what"].split()) > _MOST_WORDS:
        return None
    what, last = found["what"].strip(), " ".join(about.casefold().split()).rstrip("?.! ")
    if _PERIOD.fullmatch(what) is not None:
        return f"{_without(_PERIOD, last)} {what}"
    if _TREE.fullmatch(what) is not None:
        if _TREE.search(last) is not None:
            return _TREE.sub(what, last, count=1)
        return f"{last} from {what}"
    named = next((lot for lot in lots if what in (lot.casefold(), f"{lot.casefold()} lot")), None)
    if named is not None:
        others = [lot for lot in lots if re.search(rf"\b{re.escape(lot.casefold())}\b", last)]
        if others:
            return re.sub(rf"\b{re.escape(others[0].casefold())}\b", named, last, count=1)
        return f"{last} from the {named}"
    if _THINGS.fullmatch(what) is not None and _THINGS.search(last) is not None:
        return _THINGS.sub(what, last, count=1)
    if _THINGS.fullmatch(what) is not None:
        period = _PERIOD.search(last)
        return f"how much {what}{'' if period is None else f' {period[0].strip()}'}"
    return None


def _without(pattern: re.Pattern[str], words: str) -> str:
    return " ".join(pattern.sub(" ", words).split())
