"""Dates in figures: `3/7`, `3/7/27`, `2027-03-07`, and the parts of a whole that look like them."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from bot.reading.calendar_days import DateHit, clean, is_of_late, month_day
from bot.reading.tokens import Token, word_at

_FRACTION_BELOW = frozenset((2, 3, 4, 8, 16))
_DEEDS_BEHIND = frozenset(
    "gathered collected got boiled drew am pm brought hauled ran bottled lit pulled "
    "tapped set spent "
    "bought dumped made canned burned emptied put".split()
)


def day_in_figures(
    run: Sequence[Token], i: int, today: date, *, sure: bool = False
) -> DateHit | None:
    """`3/7`, `3/7/27`, `2027-03-07`. A slash that could be a fraction is a date only where it
    stands like one: first in the text or after a stop, and before no unit."""
    text = run[i].text
    if run[i].shape == "isodate":
        year, month, day = (int(part) for part in text.split("-"))
        return clean(f"{year:04d}-{month:02d}-{day:02d}", 1, today)
    parts = [int(part) for part in text.split("/")]
    month, day = parts[0], parts[1]
    if month > 12 >= day and len(parts) == 2:
        # "13/03": the day first, as most of the world writes it; "25/12 ratio" is none.
        turned = month_day(day, month, 1, today)
        return turned if is_of_late(turned, today) else None
    if not (1 <= month <= 12 and 1 <= day <= 31):
        return None
    if len(parts) == 2 and month < day and day in _FRACTION_BELOW and not sure:
        first = i == 0 or run[i - 1].text in (".", ";", "\n", ",")
        following = run[i + 1] if i + 1 < len(run) else None
        late = is_of_late(month_day(month, day, 1, today), today)
        dated = following is not None and (
            following.text in (":", "-", ",") or following.shape in ("number", "mixed")
            or (following.text == "was" and i + 2 < len(run) and run[i + 2].shape == "number")
            or following.text in _DEEDS_BEHIND
            or (late and _heads_a_note(run, i, day))
        )  # fmt: skip
        if not (first and dated) and not (late and _ends_a_note(run, i, day)):
            return None
    if len(parts) == 2:
        return month_day(month, day, 1, today)
    year = parts[2] if parts[2] > 99 else 2000 + parts[2]
    return clean(f"{year:04d}-{month:02d}-{day:02d}", 1, today)


def _heads_a_note(run: Sequence[Token], i: int, day: int) -> bool:
    """`3/4 tree 5 gave 2 gal`: nothing behind it that has parts."""
    following = run[i + 1]
    behind = word_at(run, i + 2)
    measured = following.text in _SAID_OF and behind not in _SHARED
    named = following.text == "the" and behind != "way"
    one = following.text in ("a", "an") and day not in _PARTS_OF_ONE
    has_parts = following.text in _HAS_PARTS and not (measured or named or one)
    return following.shape in ("word", "money", "label") and not has_parts


def _ends_a_note(run: Sequence[Token], i: int, day: int) -> bool:
    """`boiled 20 gal 3/16`, `12 gal at 2.2 3/8, clear`: no word before it that a part
    stands behind."""
    before = run[i - 1] if i > 0 else None
    if before is None or word_at(run, i + 1) not in _ENDS_OR_GOES_ON:
        return False
    if before.text == "on":
        before = run[i - 2] if i > 1 else before  # "pan's on the fire on 3/8"
    tree = i > 1 and run[i - 2].text == "tree"
    whole = before.shape == "number" and "." not in before.text and not tree
    part = before.text in _BEFORE_A_PART or whole
    return not part and not (day in _PARTS_OF_ONE and before.text in _HAS_PARTS)


_BEFORE_A_PART = frozenset(
    "a an and about almost nearly is was at to burned used only just another than over half "
    "down left below - it's now by size line tubing drop bit depth deep".split()
)
"""Words that a part stands behind: `burned about 3/4`, `the tank is at 3/4`."""
_PARTS_OF_ONE = frozenset((2, 3, 4))
"""What a whole is said in: halves, thirds and quarters, as of `the tank 3/4`."""
_ENDS_OR_GOES_ON = frozenset(("", ".", ",", ";", "!", ")", "\n", "and", "&", "at", "from"))
_HAS_PARTS = frozenset(
    "full of a an the inch left way mile empty gone off there more bucket buckets pail "
    "pails bag bags tank barrel jar jug pan tote cord cords load hour hours day through wood pile "
    "and to or tall deep g gal gals gallon gallons qt qts quart quarts pt pts pint pints cup "
    "cups oz ounce ounces l lit liter liters litre litres face rick ricks lb lbs pound pounds "
    "in inches ft foot feet mug thermos".split()
)
"""What a fraction may be of."""
_SAID_OF = frozenset(("tank", "barrel", "pan", "there"))
_SHARED = frozenset(("", "full", "of", "left", "empty", "gone", "and", "."))
"""`3/4 tank left`; but `3/4 tank is at 38`."""
