"""What is read before all else and by itself: gear that is told, instruments that are asked about.

"my pan is 2x3 ft" and "hydrometer 60.4 at 185, is that done" are full of figures that the kinds
of records would take for sap, taps or sugar.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from bot.reading.amounts import amounts
from bot.reading.instruments import (
    Batch,
    Bottling,
    Density,
    IceOut,
    Light,
    SapTest,
    Shown,
    SyrupTest,
    shown_in,
)
from bot.reading.kinds import gear
from bot.reading.kinds.chat import Chat
from bot.reading.kinds.question import Question
from bot.reading.kinds.store_temp import StoreTemp
from bot.reading.signs import Sought
from bot.reading.understanding import Profile, Understanding

# Where each instrument's figures are asked about, as topic and howto. A sap test is a record of
# sugar, and no question of its own.
_ASKED: dict[type[Shown], tuple[str, str | None]] = {
    SyrupTest: ("finish_point", None),
    Batch: ("howto", "finishing"),
    IceOut: ("syrup_expected", None),
    Light: ("howto", "grading"),
    Bottling: ("howto", "bottling"),
    Density: ("finish_point", None),
}
_ASKS_FOR_JARS = Sought(
    "how many",
    r"\bhow many (?:\w+[- ])?(?:\w+[- ])?(?:jars?|pints?|quarts?|bottles?|jugs?)\b.*"
    r"\b(?:for|from|out of|fill|need|in)\b|\b(?:jars?|bottles?|jugs?)\b.*\bhow many do i need\b",
)
_ASKS_FOR_TAPS = Sought(
    "how many| tap|big enough",
    r"\bhow many (?:taps?|spiles|spouts|buckets|pails)\b|\b(?:can|should) (?:i|we) tap\b"
    r"|\bbig enough\b",
)


_TELLS_OF_ICE = re.compile(
    r"^(?!.*(?:\?|\bhow\b|\bwhat\b))(?=.*\bice\b).*"
    r"(?:\bice (?:out of|from|off) (?:the |my |our )?(?:buckets|pails|bags|jugs)\b|\btoday\b"
    r"|\bgot\b|\blost\b|,|[.;!]\s+\w"
    r"|\n|\b(?:boiled|bottled|canned|jarred|filled|drew|made|paid|set|pulled)\b)",
    re.S,
)
_LONGEST_ASKED = 160
"""Characters of one segment: a longer text without a question mark tells of a day's work."""


def apart(
    plain: str, profile: Profile, read: Callable[[str], Understanding]
) -> Understanding | None:
    """The meaning of a tidied text that tells gear or asks about an instrument, None where it
    does neither. `read` gives the meaning of what is left of the text."""
    told, rest, doubt = gear.stated(plain, metric=profile.units == "metric")
    if told is None and doubt is None:
        letter = len(plain) > _LONGEST_ASKED and "?" not in plain
        asked = None if letter else _instrument(plain, profile)
        return None if asked is None else Understanding((asked,))
    below = read(rest) if rest else Understanding()
    readings = tuple(one for one in below.readings if not isinstance(one, Chat))
    if isinstance(shown_in(plain, profile), SapTest):
        # The heat of the sap in the test cup is not that of the barrel, and what the reading
        # comes to is said with its receipt.
        readings = tuple(one for one in readings if not isinstance(one, StoreTemp | Question))
    if told is None:
        return Understanding(readings, below.doubt or doubt)
    also: tuple[Question, ...] = ()
    if told.bit_in is not None and not readings:
        also = (Question(topic="howto", howto="which_bit"),)
    elif told.price is not None and not readings:
        also = (Question(topic="costs"),)
    return Understanding((told, *readings, *also), below.doubt or doubt)


def _instrument(plain: str, profile: Profile) -> Question | None:
    if _ASKS_FOR_TAPS.search(plain):
        sorts = {one.sort for one in amounts(plain, profile)}
        return Question(topic="tap_plan") if "length" in sorts and "volume" not in sorts else None
    if _ASKS_FOR_JARS.search(plain):
        sorts = {one.sort for one in amounts(plain, profile)}
        return Question(topic="syrup_expected") if "volume" in sorts else None
    found = shown_in(plain, profile)
    if isinstance(found, IceOut) and _TELLS_OF_ICE.search(plain):
        return None  # "12 gal today, threw out 2 gal of ice": both are records
    target = None if found is None else _ASKED.get(type(found))
    return None if target is None else Question(topic=target[0], howto=target[1])
