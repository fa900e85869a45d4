"""The answer to a question of ours, in one word, becomes a whole text."""

from __future__ import annotations

import re

from bot.reading import numbers, tidy, tokens
from bot.reading.understanding import Doubt


def settle(doubt: Doubt, answer: str) -> str | None:
    """The text that an answer to a doubt makes; "" records nothing, None does not fit."""
    said = tidy.tidy(answer).strip(" .!?\n")
    for choice in doubt.choices:
        if said in choice.words:
            return choice.text
    bare = said.removeprefix("it was ").removeprefix("it's ").removeprefix("was ")
    bare = bare.removeprefix("the ").removeprefix("a ").removeprefix("of ").strip()
    bare = _ABOUT.sub("", bare)
    for choice in doubt.choices:
        if bare in choice.words:
            return choice.text
    return _filled(doubt, bare)


def _filled(doubt: Doubt, said: str) -> str | None:
    if doubt.fill is None or not said or len(said) > LONGEST_ANSWER:
        return None
    if not doubt.number_only:
        return doubt.fill.format(said)
    run = tokens.tokens(said)
    number = numbers.match(run, 0) if run else None
    if number is None or number.article or number.vague:
        return None
    rest = " ".join(token.text for token in run[number.length :])
    before, _, after = doubt.fill.partition("{}")
    if rest and not after.strip().startswith(rest.rstrip("s")) and rest not in _SAYABLE_UNITS:
        return None
    if rest and rest in _SAYABLE_UNITS and after.strip().split(" ")[0] in _SAYABLE_UNITS:
        after = " " + rest + " " + " ".join(after.split()[1:])
    return f"{before}{number.value:g}{after}"


_ABOUT = re.compile(r"^(?:about|around|maybe|roughly|like|probably|i think|i'd say|say|~) ?")
LONGEST_ANSWER = 40
_SAYABLE_UNITS = frozenset(
    "gal gals gallon gallons l litres liters litre liter qt "
    "qts quart quarts pint pints brix % percent f c "
    "hours hrs hour inches in taps lb lbs cord cords dollars bucks of".split()
)
