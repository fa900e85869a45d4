"""`30 gal total today` after "12 gal": what is told in all is not taken on top of its parts."""

from __future__ import annotations

import re
from collections.abc import Callable

from bot.conversation.amending import went_on
from bot.conversation.recording import entry_of
from bot.conversation.turn import Turn
from bot.entry import Entry
from bot.reading import Choice, Doubt, Understanding
from bot.reading.kinds import Cost, Jars, PouredOut, Sap, Syrup
from bot.wording import amounts, questions
from bot.wording.style import Style

_IN_ALL = re.compile(
    r"\b(?:total|totals|totall?ed|totall?ing|in all|all in|all told|altogether|all together"
    r"|so far|(?:that|which|it) makes|makes it|brings (?:it|us|me|the day) to)\b"
)
_OF_THE_SEASON = re.compile(r"\b(?:season|year|spring|so far)\b")
_KINDS = (Sap, Syrup, Jars, PouredOut, Cost)
_MORE = ("ok", "more", "yes", "yep", "y", "the rest", "difference")
_NEW = ("new", "all new", "all of it", "on top")
_LEAVE = ("ok", "leave", "leave it", "no", "nope", "n")
_LEAST = 1e-6
"""Gallons and dollars that are none."""
_SIZES = {1.0: "gallons", 0.5: "half gallons", 0.25: "quarts", 0.125: "pints", 0.0625: "half pints"}


def ask_if_in_all(turn: Turn, understanding: Understanding) -> bool:
    """Asks where a sum is told whose parts are in the tally already. Whether it had to."""
    if understanding.doubt is not None or len(understanding.readings) != 1:
        return False
    reading = understanding.readings[0]
    words = " ".join(turn.words.casefold().split())
    if not isinstance(reading, _KINDS) or not _IN_ALL.search(words):
        return False
    told = entry_of(reading, turn.sent)
    had = _had(turn, told, whole_season=bool(_OF_THE_SEASON.search(words)))
    amount = told.dollars if told.kind == "cost" else told.gallons
    if amount is None or had < _LEAST:
        return False
    say = _SAID.get(told.kind, amounts.volume)
    left = amount - had
    rest = _text_of(told, left) if left > _LEAST else None
    if rest is None or not _is_understood(turn, rest, told.kind):
        question = questions.in_all_or_new(say(amount, turn.style), say(had, turn.style))
        choices = (Choice(_NEW, turn.words), Choice(_LEAVE, ""))
    else:
        question = questions.in_all(
            say(amount, turn.style), say(had, turn.style), say(left, turn.style)
        )
        choices = (Choice(_MORE, rest), Choice(_NEW, turn.words))
    turn.ask(question, Doubt(question, choices))
    return True


def _say_money(dollars: float, _style: Style) -> str:
    return amounts.dollars(dollars)


_SAID: dict[str, Callable[[float, Style], str]] = {
    "cost": _say_money,
    "syrup": amounts.syrup,
    "jars": amounts.in_pints,
}


def _had(turn: Turn, told: Entry, *, whole_season: bool) -> float:
    """What the tally holds of the kind on the day, or in the season; of the lot, of the item."""
    book, bush = turn.book, turn.who.sugarbush_id
    if told.kind == "cost":
        item = told.detail.get("item")
        return sum(
            dollars
            for of, dollars in book.sums.costs(bush, told.season)
            if item is None or (of is not None and went_on(told, of))
        )
    first = last = None if whole_season else told.on
    sums = book.sums.season(bush, told.season, first=first, last=last, lot=told.lot)
    return sum(one.gallons or 0.0 for one in sums if one.kind == told.kind)


def _text_of(told: Entry, left: float) -> str | None:
    """The text that tells what is left of a sum, None where none does."""
    where = f"tree {told.tree} " if told.tree else f"{told.lot} " if told.lot else ""
    when = f" on {told.on.isoformat()}"
    if told.kind == "cost":
        item = told.detail.get("item")
        return f"spent ${left:.2f}{f' on {item}' if item else ''}"
    if told.kind == "sap":
        sugar = "" if told.brix is None else f" at {told.brix:g}"
        return f"{where}{left:.6g} gal of sap{sugar}{when}"
    if told.kind == "syrup":
        return f"drew off {left:.6g} gal of syrup{when}"
    if told.kind == "poured_out":
        return f"dumped {left:.6g} gal{when}"
    sizes = {jar["gallons_each"] for jar in told.detail["jars"]}
    size = sizes.pop()
    count = round(left / size)
    if sizes or size not in _SIZES or abs(count * size - left) > _LEAST:
        return None
    return f"bottled {count} {_SIZES[size]}{when}"


def _is_understood(turn: Turn, words: str, kind: str) -> bool:
    readings = turn.understand(words).readings
    return [reading.kind for reading in readings] == [kind]
