"""What can be told from the bare words of a text."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from datetime import date, timedelta
from typing import Literal

from bot.reading import figures_spoken

Units = Literal["us", "metric"]

# A postal code (K0G 1K0, J0L 2A0) measures nothing.
_LITRES = re.compile(
    r"(?<![a-z])\d+\s*(?:l|lts?|ltrs?|lit(?:er|re)s?)\b|\blit(?:er|re)s?\b", re.IGNORECASE
)
_GALLONS = re.compile(
    r"(?<![a-z])\d+\s*(?:g|gals?|gallons?|qts?|quarts?)\b|\bgallons?\b", re.IGNORECASE
)
_CORRECTS = re.compile(
    r"^\W*(?:no+pe?|no|oops|sorry|wait|actually|i\s+meant?|meant|make\s+(?:that|it))\b[\s,.:;-]*",
    re.IGNORECASE,
)


_NEVER_MIND = frozenset(
    (
        *("never mind", "nevermind", "nvm", "never mind that", "forget it", "forget that"),
        *("skip", "skip it", "skip that", "drop it", "drop that", "neither", "none", "no matter"),
        *("doesn't matter", "doesnt matter", "ignore that", "ignore it", "leave it", "nothing"),
        *("dont", "don't", "no dont", "no don't", "keep it", "nvm keep it", "no keep it"),
        *("no thanks", "no thank you", "dont know", "don't know", "i dont know", "i don't know"),
        *("idk", "no idea", "not sure"),
    )
)


_MORE = frozenset(
    (
        *("more", "more please", "more pls", "tell me more", "go on", "continue", "next"),
        *("the rest", "what else", "keep going", "say more", "moer", "mroe", "moar"),
        *("more?", "what else?", "yes more", "ok more", "anything else?"),
    )
)


# A figure, but none that counts records: "undo the last 2", "scratch 2 entries".
_FIGURE = re.compile(
    r"(?<![\w.,/])(?<!last )(?<!past )\$?(\d+(?:\.\d+)?)(?![\w/]|[.,]\d)"
    r"(?! ?(?:entries|records|texts|things|ones|times)\b)"
)
_COUNTED = re.compile(
    r"\b(?:last|past) (?P<last>[2-5]|two|three|four|five|couple)\b(?! ?(?:gal|lit|pint|quart|qt))"
    r"|\b(?P<ones>[2-5]|two|three|four|five) (?:entries|records|texts|things|ones)\b"
    r"|\b(?P<both>both)\b",
    re.IGNORECASE,
)
_COUNTS = {"two": 2, "couple": 2, "both": 2, "three": 3, "four": 4, "five": 5}
_KINDS = (
    (r"sap", ("sap",)),
    (r"syrup|draws?|draw-?offs?", ("syrup",)),
    (r"jars?|bottles|bottling|bottled|jarred|canned|canning", ("jars",)),
    (r"boils?|boiling|boiled|fire", ("boil",)),
    (r"taps?|spiles?|spouts?", ("taps_set", "taps_pulled")),
    (r"costs?|money|spent|spending|dollars|bucks|receipt", ("cost",)),
    (r"wood|cords?|propane|fuel", ("fuel",)),
    (r"brix|sugar|sugar test|test", ("sugar",)),
    (r"dump(?:ed)?|spill(?:ed)?|poured", ("poured_out",)),
    (r"buds?|moths?|cloudy|yellow|sign", ("sign",)),
)
# Right behind the word that takes it back, or behind what only says which one it was.
_KIND = re.compile(
    r"\b(?:undo|scratch|delete|remove|forget|drop|strike|erase|cancel|take (?:out|back|off)|nix"
    r"|ignore|disregard|never ?mind)"
    r"(?:\s+(?:the|that|my|our|last|this|those|one|\$?\d+(?:\.\d+)?|gals?|gallons?|l|lit\w+|pints?"
    r"|quarts?|qts?|of|today'?s|yesterday'?s|morning'?s|\w+day'?s|extra|second|first))*"
    rf"\s+({'|'.join(words for words, _ in _KINDS)})\b",
    re.IGNORECASE,
)


def kinds_of_a_record(text: str) -> frozenset[str]:
    """The kinds that say which record is meant: "scratch the jars"."""
    named = _KIND.search(text)
    if named is None:
        return frozenset()
    return frozenset(
        next(kinds for words, kinds in _KINDS if re.fullmatch(words, named[1].lower()))
    )


def counted_texts(text: str) -> int:
    """Of how many texts the records are meant: 2 in "undo the last two", else 1."""
    said = _COUNTED.search(text)
    if said is None:
        return 1
    count = (said["last"] or said["ones"] or said["both"]).casefold()
    return _COUNTS.get(count) or int(count)


def figures_of_a_record(text: str) -> frozenset[str]:
    """The figures that say which record is meant: "remove the 6.5" has 6.5, "undo nine gallons"
    has 9."""
    said = _FIGURE.findall(text) or ([] if counted_texts(text) > 1 else figures_spoken(text))
    return frozenset(f"{float(figure):g}" for figure in said)


_WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_DAY = re.compile(
    r"(?<!\bthat, )\b(yesterday"
    r"|(mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?)(?:'?s)?\b",
    re.IGNORECASE,
)


def names_a_place(text: str, names: Sequence[str | None]) -> frozenset[str]:
    """Those of some trees and lots that a text names: "scratch the home lot", "the A3 one".

    A tree that is a figure or a letter is named with "tree" alone; what is "not the front", and the
    "back" of "take back", is no name.
    """
    spoken = re.sub(r"[^a-z0-9]+", " ", text.casefold())
    spoken = _NO_NAMES.sub(" ", f" {spoken} ")
    return frozenset(name for name in names if name is not None and _is_named(name, spoken))


def _is_named(name: str, spoken: str) -> bool:
    plain = re.escape(name.casefold())
    if name.isdigit() or len(name) == 1:
        return re.search(rf" (?:tree|trees|maple|number) {plain} ", spoken) is not None
    return re.search(rf" {plain} ", spoken) is not None


_NO_NAMES = re.compile(
    r" (?:take|took|put|back|bring|brought|give|move) (?:it |that |them )?(?:back|off|out|up|down)"
    r"(?= )| (?:not|no) (?:the )?\w+(?= )"
)


def day_of_a_record(text: str, today: date) -> date | None:
    """The day that says which record is meant: "delete last friday", "undo yesterday's"."""
    said = _DAY.search(text)
    if said is None:
        return None
    if said[2] is None:
        return today - timedelta(days=1)
    back = (today.weekday() - _WEEKDAYS.index(said[2][:3].casefold())) % 7
    week_ago = f"last {said[2].casefold()}" in text.casefold()
    return today - timedelta(days=back or (7 if week_ago else 0))


def wants_more(text: str) -> bool:
    """True when the text asks for the rest of the last answer."""
    return same_words(text) in _MORE


def lets_it_be(text: str) -> bool:
    """True when the text says to leave an open question."""
    return same_words(text).replace("\u2019", "'") in _NEVER_MIND


def units_used(text: str) -> Units | None:
    """The units that a text measures in, None when it names neither or both.

    Millilitres say nothing: jars are sold in them to people who gather in gallons.
    """
    litres, gallons = bool(_LITRES.search(text)), bool(_GALLONS.search(text))
    if litres == gallons:
        return None
    return "metric" if litres else "us"


_US_VOLUMES = (
    (re.compile(r"(?:half|1/2)[ -]?pints?\b", re.IGNORECASE), 1 / 16),
    (re.compile(r"\b(?:pints?|pts?)\b", re.IGNORECASE), 1 / 8),
    (re.compile(r"\b(?:quarts?|qts?)\b", re.IGNORECASE), 1 / 4),
    (re.compile(r"\b(?:cups?)\b", re.IGNORECASE), 1 / 16),
    (re.compile(r"\b(?:gal(?:lon)?s?|g)\b", re.IGNORECASE), 1.0),
)


def gallons_in_its_unit(text: str) -> float | None:
    """US gallons in the one unit of volume that a text measures in; None where it names none or
    several."""
    said = text
    found = []
    for pattern, gallons in _US_VOLUMES:
        if pattern.search(said):
            found.append(gallons)
            said = pattern.sub(" ", said)
    return found[0] if len(found) == 1 else None


def nearest_unit(value: float, gallons: float) -> float:
    """US gallons in the unit in which a bare figure is nearest to an amount: gallons, unless they
    are far off."""
    if gallons <= 0 or value <= 0 or 1 / _FAR <= value / gallons <= _FAR:
        return 1.0
    units = (1.0, 1 / 4, 1 / 8)
    return min(units, key=lambda unit: abs(math.log(value * unit / gallons)))


# A corrected figure is hardly further off than this, by ratio (our own).
_FAR = 4.0


def units_spoken(text: str, before: Units | None, country: str | None) -> Units | None:
    """The units that somebody speaks in after this text: what they use, but one text in the
    other units does not turn those around who measure as their country does."""
    used = units_used(text)
    if used is None or before is None or country is None:
        return used or before
    home: Units = "metric" if country == "CA" else "us"
    return before if before == home else used


# A part of the bush: "the north lot", "upper woods"; or a lie of the land with a word of place
# before it: "on the ridge", "from the orchard".
_LOT = re.compile(
    r"\b([a-z]+) (?:lot|woodlot|section|stand|woods|bush|trail|loop|grove|patch)\b", re.IGNORECASE
)
_LIES = (
    r"(ridge|hollow|hill|hillside|orchard|swamp|pasture|creek|brook|road|roadside|driveway|yard"
    r"|lane|bottom|knoll|meadow|field|gully|ravine|valley|cemetery|church|school|barn|fence)"
)
_LAND = re.compile(
    rf"\b(?:on|from|in|at|by|along|off|up|down) the {_LIES}\b(?! of\b)"
    rf"|\b(?:on|from|emptied|gathered|collected|checked) (?:the )?{_LIES}\b(?! (?:of|trip|run)\b)",
    re.IGNORECASE,
)
# The lie of the land right beside an amount: "14 gal ridge at 2.2", "ridge: 14 gal".
_BESIDE = re.compile(
    rf"\b(?:gal(?:lon)?s?|l|lit(?:er|re)s?|quarts?|qts?|taps?)(?: of sap)?,? {_LIES}"
    r"(?=\s*(?:$|[.,;:!&@]|and\b|at\b|today\b|yesterday\b|\d))",
    re.IGNORECASE,
)
_AHEAD = re.compile(rf"(?:^|[.,;]\s*){_LIES}[:,-]? (?=\d)", re.IGNORECASE)
# A side of the bush right ahead of an amount: "upper 85 gal, lower 60 gal".
_SIDE_AHEAD = re.compile(
    r"(?:^|[.,;]\s*|\band )(upper|lower|middle|north|south|east|west|front|back)[:,-]? "
    r"(?=\d+(?:\.\d+)? ?(?:gal|l\b|lit|taps?\b))",
    re.IGNORECASE,
)
# The same alone at the end: "10 gal this morning and 7 more after lunch, ridge".
_LAST = re.compile(rf"[.,;-]\s*{_LIES}[ .!]*$", re.IGNORECASE)
# A side of the bush, where no other word follows: "from the back", "75 in the front".
_SIDE = re.compile(
    r"\b(?:from|in|on) the (back|front|north|south|east|west)"
    r"(?=\s*(?:$|[.,;:!?&]|and\b|at\b|today\b|\d))",
    re.IGNORECASE,
)
_NO_LOTS = frozenset(
    (
        *("a", "the", "my", "our", "whole", "parking", "this", "that", "each", "every", "other"),
        *("last", "same", "one", "another", "any", "what", "which", "in", "wood", "car", "quite"),
        *("sugar", "maple", "first", "second", "by", "per", "best", "of", "and", "from", "an"),
    )
)


_LIE = re.compile(_LIES, re.IGNORECASE)
_BY_ITSELF = (_BESIDE, _AHEAD, _LAST)


def lots_named(text: str) -> tuple[str, ...]:
    """Names of parts of the bush that a text speaks of, though they were never told before."""
    looks: tuple[re.Pattern[str], ...] = (_LOT, _SIDE, _SIDE_AHEAD)
    if _LIE.search(text) is not None:
        looks = (*looks, _LAND, *_BY_ITSELF)
    named = [
        next(filter(None, match.groups())).casefold()
        for look in looks
        for match in look.finditer(text)
    ]
    return tuple(name for name in dict.fromkeys(named) if name not in _NO_LOTS)


# A tree that is called by a name: "tree bess 3 gal", "a maple called old bess".
_TREE = re.compile(
    r"\b(?:tree|maple) (?:called |named |we call |i call )((?:old |big |little )?[a-z]{3,})\b"
    r"|\btree ((?:old |big |little )?[a-z]{3,})(?=:? +(?:\d|gave\b|is an?\b|has\b|tested\b))",
    re.IGNORECASE,
)
_NO_TREES = frozenset(
    "number tag the was and called named old big little that this near with each one has gave is "
    "sugar red silver black norway maple sap today only about".split()
)


def trees_named(text: str) -> tuple[str, ...]:
    """Names of trees that a text calls by a name for the first time."""
    if not {"tree", "maple"} & set(text.casefold().split()):
        return ()
    named = [(match[1] or match[2]).casefold() for match in _TREE.finditer(text)]
    return tuple(name for name in dict.fromkeys(named) if name not in _NO_TREES)


def same_words(text: str) -> str:
    """A text for comparing: case, spaces and closing marks do not matter."""
    return " ".join(text.casefold().split()).strip(" .!")


def without_correction(text: str) -> str:
    """The text without the "no," or "I meant" that opens a correction."""
    return _CORRECTS.sub("", text, count=1)
