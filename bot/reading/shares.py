"""A part of an amount: `28 of the 30 gal`, `half the 30 gal`, `28 gal of the 30`; and a row of
trees: `B1-B4`.

What was done, was done to the part; the whole was told before.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.reading.items import Item

_WHOSE = frozenset("the my our those these that".split())
_JOINTS = frozenset(("of", "-", "to", "thru", "through"))
_JAR_UNITS = frozenset(("milliliter", "fluid_ounce", "half_pint"))
"""Sizes of jars: `10 of the 500 mL` are counted."""
_VESSELS = ("BUCKET", "JARN", "STORE")


def of_a_whole(found: Sequence[Item]) -> list[Item]:
    """The items, with each part of an amount and its whole as one volume: that of the part. A row
    of trees is one item."""
    if not any(item.text in _JOINTS or item.part for item in found):
        return list(found)
    out: list[Item] = []
    i = 0
    while i < len(found):
        joined = _row_of_trees(found, i) or _part_first(found, i) or _whole_behind(found, i)
        item, length = joined if joined is not None else (found[i], 1)
        out.append(item)
        i += length
    return out


_LABEL = re.compile(r"([a-z]*)(\d+)", re.IGNORECASE)
MOST_IN_A_ROW = 60


def _row_of_trees(found: Sequence[Item], i: int) -> tuple[Item, int] | None:
    """`B1-B4`, `trees 3 to 6`: every tree of the row."""
    if i + 2 >= len(found) or found[i].sort not in ("tree", "trees"):
        return None
    if found[i + 1].text not in ("-", "to", "thru", "through") or found[i + 2].sort not in (
        "tree",
        "number",
    ):
        return None
    first = _LABEL.fullmatch(found[i].text.split()[-1])
    last = _LABEL.fullmatch(found[i + 2].text)
    if first is None or last is None or last[1] not in ("", first[1]):
        return None
    low, high = int(first[2]), int(last[2])
    if not low < high <= low + MOST_IN_A_ROW:
        return None
    labels = " ".join(f"{first[1]}{n}" for n in range(low, high + 1))
    return replace(found[i], sort="trees", text=labels, end=found[i + 2].end), 3


def _part_first(found: Sequence[Item], i: int) -> tuple[Item, int] | None:
    """`28 of the 30 gal`; of `3 of the 5 gal pails` only those are an amount that were full."""
    at = _behind_of(found, i)
    if at is None or at >= len(found):
        return None
    part, whole = found[i], found[at]
    if not _is_plain(part, "number") or not _is_plain(whole, "volume") or whole.article:
        return None
    noun = found[at + 1] if at + 1 < len(found) else None
    if noun is not None and not noun.tags.isdisjoint(_VESSELS):
        return _filled(found, part, whole, at, i)
    value = part.value * whole.value if part.part and part.value < 1 else part.value
    if value > whole.value or whole.unit in _JAR_UNITS:
        return None
    return _amount(value, part, whole), at + 1 - i


def _filled(
    found: Sequence[Item], part: Item, whole: Item, at: int, i: int
) -> tuple[Item, int] | None:
    """`2 of the 5 gal pails were full`: ten gallons."""
    full = any("FULL" in each.tags or each.text == "filled" for each in found[max(i - 3, 0) :])
    if not full or "BUCKET" not in found[at + 1].tags or part.value % 1:
        return None
    return _amount(part.value * whole.value, part, whole), at + 2 - i


def _amount(value: float, part: Item, whole: Item) -> Item:
    unit = whole.text.split()[-1]
    return replace(whole, value=value, text=f"{value:g} {unit}", start=part.start)


def _whole_behind(found: Sequence[Item], i: int) -> tuple[Item, int] | None:
    """`28 gal of the 30`."""
    at = _behind_of(found, i)
    if at is None or at >= len(found):
        return None
    part, whole = found[i], found[at]
    ends = at + 1 == len(found) or found[at + 1].sort in ("sign", "date")
    if not ends or not _is_plain(part, "volume") or not _is_plain(whole, "number"):
        return None
    if found[at - 1].text == "of" or whole.part or whole.value < part.value:
        return None
    return replace(part, end=whole.end), at + 1 - i


def _behind_of(found: Sequence[Item], i: int) -> int | None:
    """Where the amount behind "of the" would stand, None where no such words follow. A share of
    something (`half the 30 gal`) holds its "of" already."""
    at = i + 1
    said_of = at < len(found) and found[at].text == "of"
    at += said_of
    whose = at < len(found) and found[at].text in _WHOSE
    if not said_of and not (whose and found[i].part):
        return None
    return at + whose


def _is_plain(item: Item, sort: str) -> bool:
    return (
        item.sort == sort
        and not (item.article and not item.part)
        and not (item.vague or item.negative or item.parts)
        and item.low is None
    )
