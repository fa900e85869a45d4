"""A deed whose two words stand apart: `put 6 pints up`, `turned 20 gal of sap into steam`.

The first word then means what the two mean together in our word list (put_up).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.reading import lexicon
from bot.reading.frames import FRAME_TAGS
from bot.reading.items import Item

MOST_BETWEEN = 5
"""Items that may stand between the two (our own)."""
_AMOUNTS = ("volume", "vessels")


def rejoined(found: Sequence[Item]) -> list[Item]:
    """The items, with the first word of each parted deed meaning the whole of it."""
    out = list(found)
    if not any(item.sort in _AMOUNTS for item in found):
        return out
    for at, item in enumerate(found):
        if item.sort != "word" or not FRAME_TAGS.isdisjoint(item.tags):
            continue
        tags = _together(found, at)
        if tags is not None:
            out[at] = replace(item, tags=item.tags | tags)
    return out


_OF_TWO_WORDS: dict[str, dict[str, frozenset[str]]] = {}
"""The second words of our phrases of two, by the first."""
for (_first, _second), _entries in lexicon.PHRASES.items():
    for _parts, _tags in _entries:
        if len(_parts) == 2:
            _OF_TWO_WORDS.setdefault(_first, {})[_second] = _tags


def _together(found: Sequence[Item], at: int) -> frozenset[str] | None:
    """What the word at `at` means with one behind the next amount."""
    phrases = _OF_TWO_WORDS.get(found[at].text)
    if phrases is None:
        return None
    counted = False
    for each in found[at + 1 : at + 2 + MOST_BETWEEN]:
        if each.sort == "sign":
            return None
        counted = counted or each.sort in _AMOUNTS
        if counted and each.text in phrases and not FRAME_TAGS.isdisjoint(phrases[each.text]):
            return phrases[each.text]
    return None
