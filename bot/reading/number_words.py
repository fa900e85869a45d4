"""Numbers in words, where a form of words has to know one before the text is taken apart."""

from __future__ import annotations

import re

ONES = {
    word: number
    for number, word in enumerate(
        (
            *("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven"),
            *("twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen"),
            "nineteen",
        ),
        start=2,
    )
}
"""From two on: a lone "one" is as often a pronoun."""
TENS = {
    word: 10 * number
    for number, word in enumerate(
        ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"), start=2
    )
}
_DIGITS = "one|two|three|four|five|six|seven|eight|nine"
FIGURE = (
    rf"(?:\d[\d.]*|(?:{'|'.join(TENS)})(?:[ -](?:{_DIGITS}))?|{'|'.join(reversed(ONES))}"
    r"|a dozen|half|one)"
)
"""A number in figures or in words, as far as an amount has it in front."""
UNIT = r"(?:gal|gals|gallons?|qts?|quarts?|pints?|pts?|l|lit(?:er|re)s?|taps|jars)"
"""What a form of words takes for the unit of an amount."""

_USED = frozenset((*ONES, *TENS, "hundred"))
_TO_NINETY_NINE = rf"(?:({'|'.join(TENS)})(?:[ -]({_DIGITS}))?|({'|'.join(reversed(ONES))}))"
_BEFORE_A_UNIT = re.compile(
    r"(?<!ty )(?<!ty-)(?<!point )(?<!oh )(?<!hundred )(?<!hundred and )(?<!thousand )(?<!-)\b"
    rf"(?:(an?|one|two|three|four|five) hundred(?:(?: and)? {_TO_NINETY_NINE})?|{_TO_NINETY_NINE})"
    r"(?= (?:gal|gals|gallons?|qts?|quarts?|pints?|pts?|lit(?:er|re)s?|hours?|hrs?|taps|spiles|jars"
    r"|cords?)\b)"
)
_BEHIND_A_POINT = re.compile(r"\bpoint \w+ $")
_TWO_DIGITS = 10


def in_figures(text: str) -> str:
    """`nineteen gallons`, `a hundred and two gallons` in figures, where the unit follows."""
    if _USED.isdisjoint(text.replace("-", " ").split()):
        return text
    return _BEFORE_A_UNIT.sub(_written, text)


def _written(said: re.Match[str]) -> str:
    hundreds, *parts = said.groups()
    tens, ones, teens = parts[:3] if hundreds else parts[3:]
    whole = 100 * ONES.get(hundreds, 1) if hundreds else 0
    whole += TENS.get(tens, 0) + ONES.get(teens, 0)
    whole += ONES.get(ones, 1) if ones else 0
    if _BEHIND_A_POINT.search(said.string[: said.start()]) is None:
        return str(whole)
    # "one point two five gallons" is 1.25; "one point nine twelve gallons" is two figures.
    return said[0] if whole < _TWO_DIGITS else f", {whole}"
