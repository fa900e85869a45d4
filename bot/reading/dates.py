"""Date phrases: which tokens are one, and which local day they mean.

Our own word list decides what is a date phrase (libraries that search for dates in whole
messages find years in gallons). Weekdays, bare ordinals and days ago are settled here, dates in
figures in `slashes`; a month with a day goes to dateparser as a clean fragment (`calendar_days`).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from datetime import date, datetime, time, timedelta

from dateutil.easter import easter

from bot.reading.calendar_days import FURTHEST_BACK_DAYS, DateHit, clean, month_day
from bot.reading.numbers import SMALL
from bot.reading.slashes import day_in_figures
from bot.reading.tokens import Token, word_at

WEEKDAYS = {
    name: number
    for number, names in enumerate(
        (
            "mon monday mondays mon's monday's",
            "tue tues tuesday tuesdays tuesday's tuseday teusday",
            "wed weds wednesday wednesdays wednesday's wensday wednsday",
            "thu thur thurs thursday thursdays thursday's thrusday thersday",
            "fri friday fridays friday's firday",
            "sat saturday saturdays saturday's saterday",
            "sun sunday sundays sunday's",
        )
    )
    for name in names.split()
}
MONTHS = {
    name: number
    for number, names in enumerate(
        (
            "jan january", "feb february feburary febuary", "mar march", "apr april", "may",
            "jun june", "jul july", "aug august", "sep sept september", "oct october",
            "nov november", "dec december",
        ),
        start=1,
    )
    for name in names.split()
}  # fmt: skip
_TODAY = frozenset("today todays today's tday tody".split())
_YESTERDAY = frozenset(
    "yesterday yesterdays yesterday's yest yday yesteday yesturday ystrday".split()
)
_DAYPARTS = frozenset(
    "morning mornings morning's evening evening's eve night afternoon afternoon's aft noon "
    "midday lunch am pm nite".split()
)
_DARK = frozenset("night nite nights night's".split())
_TOMORROW = frozenset("tomorrow tomorrow's tmrw tmw tomorow tommorow tommorrow".split())
LATE_NIGHT_ENDS = time(5)
"""Until then, "tonight" and "last night" both mean the evening before."""


def match(run: Sequence[Token], i: int, sent: datetime) -> DateHit | None:
    """The date phrase that starts at token i of the run, or None. `sent` is local."""
    token = run[i]
    today = sent.date()
    text = token.text
    if token.shape in ("isodate", "slash"):
        return day_in_figures(run, i, today)
    if token.shape == "ordinal":
        return _ordinal(run, i, 0, today)
    if token.shape != "word":
        return _number_first(run, i, today)
    if text not in BEGIN:
        return None
    if text in _TODAY:
        return DateHit(today, 1)
    named = _named_day(run, i, today) or _ordinal_word(run, i, today)
    if named is not None:
        return named
    if text in _YESTERDAY:
        return DateHit(today - timedelta(1), 1 + _daypart(run, i + 1))
    if text in _TOMORROW:
        return DateHit(today + timedelta(1), 1 + _daypart(run, i + 1), ahead=True)
    if text == "tonight":
        late = sent.time() < LATE_NIGHT_ENDS
        return DateHit(today - timedelta(1) if late else today, 1)
    following = run[i + 1].text if i + 1 < len(run) else ""
    if text == "this" and following in _DAYPARTS:
        return DateHit(today, 2)
    if text in ("last", "the") and following in _DARK and text == "last":
        return DateHit(today - timedelta(1), 2)
    if text in ("last", "yester") and following in ("evening", "eve"):
        return DateHit(today - timedelta(1), 2)
    if text in ("day", "night") and following == "before":
        after = run[i + 2].text if i + 2 < len(run) else ""
        if after in _YESTERDAY:
            return DateHit(today - timedelta(2), 3 + _daypart(run, i + 3))
        if after == "last":
            return DateHit(today - timedelta(2), 3 + _daypart(run, i + 3))
    if text == "before" and following in _YESTERDAY:
        return DateHit(today - timedelta(2), 2)
    if text == "earlier" and following in _TODAY:
        return DateHit(today, 2)
    return (
        _weekday(run, i, sent)
        or _month_first(run, i, today)
        or _leading(run, i, sent)
        or _number_first(run, i, today)
    )


_FEASTS: dict[tuple[str, ...], tuple[int, int]] = {
    words: on
    for on, names in {
        (2, 2): ("groundhog day", "candlemas"),
        (2, 14): ("valentine's day", "valentines day"),
        (3, 17): (
            "st patrick's day", "st patricks day", "saint patrick's day", "st paddy's day",
            "st paddys day", "paddy's day", "st pat's day", "st pats day", "st patty's day",
            "st pattys day",
        ),
        (1, 1): ("new year's day", "new years day"),
        (4, 1): ("april fools day", "april fool's day", "april fools"),
    }.items()
    for words in (tuple(name.split()) for name in names)
}  # fmt: skip
"""Days that have a name, as (month, day)."""
_FEASTS_BEGIN = frozenset(words[0] for words in _FEASTS)


_MOVABLE: dict[tuple[str, ...], Callable[[int], date]] = {
    ("easter", "sunday"): easter,
    ("easter", "monday"): lambda year: easter(year) + timedelta(1),
    ("good", "friday"): lambda year: easter(year) - timedelta(2),
    ("palm", "sunday"): lambda year: easter(year) - timedelta(7),
    ("ash", "wednesday"): lambda year: easter(year) - timedelta(46),
    ("presidents", "day"): lambda year: _nth(year, 2, 0, 3),
    ("presidents'", "day"): lambda year: _nth(year, 2, 0, 3),
    ("town", "meeting", "day"): lambda year: _nth(year, 3, 1, 1),
    ("easter",): easter,
}
"""Days whose date changes from year to year, the longer names first."""
_MOVABLE_BEGIN = frozenset(words[0] for words in _MOVABLE)


BEGIN = frozenset(
    (
        *(_TODAY | _YESTERDAY | _TOMORROW | _FEASTS_BEGIN | _MOVABLE_BEGIN),
        *(*WEEKDAYS, *(f"{name}'s" for name in WEEKDAYS), *MONTHS, *SMALL, "a", "an", "couple"),
        *("tonight", "this", "last", "the", "yester", "day", "night", "before", "earlier"),
        *("on", "past", "next", "from", "since", "back"),
    )
)
"""The words that a date phrase can begin with: no other is looked at as one."""


def _nth(year: int, month: int, weekday: int, which: int) -> date:
    """The first, second .. such weekday (Monday is 0) of a month."""
    first = date(year, month, 1)
    return first + timedelta((weekday - first.weekday()) % 7 + 7 * (which - 1))


def _movable(run: Sequence[Token], i: int, today: date) -> DateHit | None:
    """`on easter`, `town meeting day`: of this year, or the last where it is still to come."""
    for words, day in _MOVABLE.items():
        found = tuple(token.text for token in run[i : i + len(words)])
        if found == words or (*found[:-1], found[-1].removesuffix("'s")) == words:
            on = day(today.year)
            on = on if on <= today else day(today.year - 1)
            recent = (today - on).days <= FURTHEST_BACK_DAYS
            return DateHit(on if recent else None, len(words))
    return None


def _named_day(run: Sequence[Token], i: int, today: date) -> DateHit | None:
    """`valentine's day`, `st paddy's day`; `day` may go on as `day's`."""
    leads = i == 0 or run[i - 1].text in ("on", "for", "since", "from", ".", ",", ":")
    if leads and run[i].text in _MOVABLE_BEGIN:
        return _movable(run, i, today)
    if run[i].text not in _FEASTS_BEGIN or not leads:
        return None
    for words, (month, day) in _FEASTS.items():
        found = tuple(token.text for token in run[i : i + len(words)])
        last = found[-1].removesuffix("'s") if len(found) == len(words) > 1 else ""
        if found == words or (last == "day" and (*found[:-1], last) == words):
            return month_day(month, day, len(words), today)
    return None


_ORDINAL_WORDS = {
    name: number
    for number, name in enumerate(
        (
            "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth "
            "thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth"
        ).split(),
        start=1,
    )
}


def _ordinal_word(run: Sequence[Token], i: int, today: date) -> DateHit | None:
    """`the fifth: nine gallons`, `march fifth`: only where nothing can be counted by it."""
    if run[i].text == "the" and i + 2 < len(run) and run[i + 1].text in _ORDINAL_WORDS:
        if run[i + 2].text not in (":", "-", "of"):
            return None
        ordinal = Token("ordinal", f"{_ORDINAL_WORDS[run[i + 1].text]}th", 0, 0)
        of_month = run[i + 2].text == "of"
        if of_month and (i + 3 >= len(run) or run[i + 3].text not in MONTHS):
            return None
        return _ordinal([run[i], ordinal, *run[i + 2 :]], 1, 1, today)
    if run[i].text in MONTHS and i + 1 < len(run) and run[i + 1].text in _ORDINAL_WORDS:
        return _in_its_year(run, i, MONTHS[run[i].text], _ORDINAL_WORDS[run[i + 1].text], 2, today)
    return None


def _daypart(run: Sequence[Token], i: int) -> int:
    return 1 if i < len(run) and run[i].text in _DAYPARTS else 0


def _leading(run: Sequence[Token], i: int, sent: datetime) -> DateHit | None:
    """`on the 4th`, `this past saturday`, `last mon`, `next week`, `on 3/12`."""
    word = run[i].text
    if word not in ("on", "the", "this", "last", "past", "next", "from", "since", "back"):
        return None
    j = i + 1
    if j >= len(run):
        return None
    if word == "next" and run[j].text in ("week", "weekend", "month"):
        return DateHit(None, 2, ahead=True)
    if word == "next" and run[j].text in WEEKDAYS:
        return DateHit(sent.date() + timedelta(7), 2, ahead=True)
    if word == "this" and run[j].text == "weekend":
        return DateHit(None, 2, ahead=True)
    while j < len(run) and run[j].text in ("the", "this", "past", "last", "on"):
        j += 1
    if j >= len(run):
        return None
    if run[j].shape == "ordinal":
        return _ordinal(run, j, j - i, sent.date())
    if run[j].text in ("day", "night") and run[j + 1 : j + 2] and run[j + 1].text == "before":
        inner = match(run, j, sent)
        return None if inner is None else DateHit(inner.on, inner.length + j - i)
    if run[j].text in WEEKDAYS:
        if word == "the" and j == i + 1 and run[j].text in _SHORT_AND_COMMON:
            return None
        inner = _weekday(run, j, sent, named=True, last="last" in (t.text for t in run[i:j]))
    elif (
        word in ("on", "from", "since", "back")
        and run[j].shape in ("slash", "isodate")
        and not _unit_follows(run, j + 1)
    ):
        inner = day_in_figures(run, j, sent.date(), sure=True)
    elif word in ("on", "from", "since", "back"):
        inner = match(run, j, sent)
    else:
        inner = None
    return None if inner is None else DateHit(inner.on, inner.length + j - i, inner.ahead)


WEEKDAY = r"(?:mon|tues|wednes|thurs|fri|satur|sun)day"
"""A day of the week in full, as a part of an expression."""
_SITTERS = frozenset("it that which has had the where we i they".split())
_SHORT_AND_COMMON = frozenset(("sat", "sun"))
_SPANS = frozenset("day days hr hrs hour hours week weeks min minutes".split())
_SAT_SO = frozenset(
    "was is came in on out too there for overnight around so since at under by warm idle still all "
    "up down where waiting went set".split()
)
"""Behind them `sat` and `sun` are no days: `sat too long`."""


_SHINES = frozenset("out up down shining coming hot warm going been finally not bright".split())
"""`6 gal, sun's out`: the sun, and no Sunday."""


def _weekday(
    run: Sequence[Token], i: int, sent: datetime, *, named: bool = False, last: bool = False
) -> DateHit | None:
    name = run[i].text
    number = WEEKDAYS.get(name.removesuffix("'s"))
    if number is None:
        return None
    following = run[i + 1].text if i + 1 < len(run) else ""
    if name == "sun's" and following in _SHINES:
        return None
    if name in _SHORT_AND_COMMON and not named:
        # "sat" is also what sap does in a barrel, and "sun" is also the sun.
        ends = i + 1 == len(run) or run[i + 1].text in (*",.;:!)", "and", "&")
        at_edge = (
            i == 0 or run[i - 1].text in ",.:;-/(&\n" or (ends and run[i - 1].text not in _SITTERS)
        )
        before_figure = i + 1 < len(run) and run[i + 1].shape in ("number", "mixed", "clock")
        for_days = i + 2 < len(run) and run[i + 2].text in _SPANS
        before_figure = before_figure and not for_days
        measured = i > 0 and run[i - 1].text in ("gal", "gallons", "gals", "l", "qt", "qts", "%")
        if not ((at_edge and following not in _SAT_SO) or measured
                or before_figure or following in _DAYPARTS or following == ":"):  # fmt: skip
            return None
    back = (sent.weekday() - number) % 7
    if last and back == 0:
        back = 7
    if following == "before" and i + 2 < len(run) and run[i + 2].text == "last":
        return DateHit(sent.date() - timedelta(back + 7), 3)
    length = 1 + _daypart(run, i + 1)
    return DateHit(sent.date() - timedelta(back), length)


def _ordinal(run: Sequence[Token], i: int, before: int, today: date) -> DateHit | None:
    """`the 4th`: the latest such day that is not ahead. `4th of march`, `4th march` too."""
    day = int(run[i].text[:-2])
    j = i + 1
    if j < len(run) and run[j].text == "of":
        j += 1
    if j < len(run) and run[j].text in MONTHS:
        length = j + 1 - i + before
        return _in_its_year(run, i - before, MONTHS[run[j].text], day, length, today)
    if day > 31 and (before or (i > 0 and run[i - 1].text in ("the", "on"))):
        return DateHit(None, before + 1)
    if before == 0 and _heads_a_list(run, i):
        told = _day_of_month(day, today, 1) if day > _ORDERS else None
        recent = told is not None and told.on is not None and (today - told.on).days <= _A_FORTNIGHT
        return told if recent else DateHit(None, 1)
    if before == 0 and not (i > 0 and run[i - 1].text in ("the", "on")):
        return None  # "3rd house", "2nd boil": an ordinal alone is no date
    if j < len(run) and run[j].shape == "word" and run[j].text in _COUNTED:
        return None
    after = run[j + 1].shape if j + 1 < len(run) else ""
    verb = run[j].text if j < len(run) else ""
    if verb in _OF_ONE_IN_A_ROW or (verb in ("is", "was", "had") and after not in _A_FIGURE):
        return None  # "filled 6 pints and the 7th is in the fridge"
    return _day_of_month(day, today, before + 1)


def _day_of_month(day: int, today: date, length: int) -> DateHit | None:
    """The latest day of that number."""
    for months_back in range(3):
        month_index = today.year * 12 + today.month - 1 - months_back
        try:
            on = date(month_index // 12, month_index % 12 + 1, day)
        except ValueError:
            continue
        if on <= today:
            # Of a month without such a day nobody speaks: "the 31st" is no 50 days ago.
            recent = (today - on).days <= _LONGEST_MONTH
            return DateHit(on if recent else None, length)
    return None


_A_FORTNIGHT = 14
_OF_ONE_IN_A_ROW = frozenset("only broke leaked cracked half short didn't wasn't".split())
_A_FIGURE = frozenset(("number", "mixed", "slash", "clock"))
_ORDERS = 3
"""`1st: 7 gal. 2nd: 5 gal` may be days or gatherings; from the 4th on they are days (our own)."""


def _heads_a_list(run: Sequence[Token], i: int) -> bool:
    """`15th: 7 gal`, `16th - 5.5 gal`: what heads a sentence and a figure."""
    first = i == 0 or run[i - 1].shape == "newline" or run[i - 1].text in _ENDS
    colon = i + 2 < len(run) and run[i + 1].text in (":", "-", "=")
    return first and colon and run[i + 2].shape == "number"


_ENDS = frozenset(".,;!/")


_LONGEST_MONTH = 31


_COUNTED = frozenset(
    "run boil batch time tree bucket year day house draw pan tap week lot one round gathering "
    "collection pail person try season night floor warm good big grade grades grader graders class "
    "classes group troop period bucket pail barrel tank".split()
)


def _month_first(run: Sequence[Token], i: int, today: date) -> DateHit | None:
    month = MONTHS.get(run[i].text)
    if month is None or i + 1 >= len(run):
        return None
    j = i + 1
    if run[j].text == ".":
        j += 1
    if j < len(run) and run[j].text == "the":
        j += 1
    if j >= len(run):
        return None
    if run[j].shape == "ordinal":
        day = int(run[j].text[:-2])
    elif run[j].shape == "number" and run[j].text.isdigit() and 1 <= int(run[j].text) <= 31:
        if (
            run[i].text in ("may", "march", "mar")
            and _unit_follows(run, j + 1)
            and run[i].text != "mar"
        ):
            return None
        if _unit_follows(run, j + 1):
            return None
        day = int(run[j].text)
    elif run[j].text in SMALL and 1 <= SMALL[run[j].text] <= 31 and not _unit_follows(run, j + 1):
        day = int(SMALL[run[j].text])
    else:
        return None
    return _in_its_year(run, i, month, day, j + 1 - i, today)


_UNITS_BEHIND_A_DAY = frozenset(
    (
        "gal gals gallon gallons l litres liters qt qts quarts pints pint cord cords face of "
        "taps buckets pails g % brix inches in"
    ).split()
)
"""Words that make the figure before them an amount, and no day of the month."""


def _unit_follows(run: Sequence[Token], j: int) -> bool:
    if ":" in (word_at(run, j + 1), word_at(run, j + 2)) and word_at(run, j) == "taps":
        return False  # "mar 8 taps in: 9"
    return j < len(run) and run[j].text in _UNITS_BEHIND_A_DAY


def _number_first(run: Sequence[Token], i: int, today: date) -> DateHit | None:
    """`3 days ago`, `a week ago`, `couple days ago`, `4 march`."""
    count, j = _small_count(run, i)
    if count is None or j >= len(run):
        return None
    if run[j].text == "of" and j + 1 < len(run):
        j += 1
    if j + 1 < len(run) and run[j + 1].text in ("ago", "back"):
        more = 1 if j + 2 < len(run) and run[j + 2].text in _TODAY else 0
        if run[j].text in ("day", "days", "nights", "night", "mornings"):
            return DateHit(today - timedelta(count), j + 2 + more - i)
        if run[j].text in ("week", "weeks", "wk", "wks"):
            return DateHit(today - timedelta(7 * count), j + 2 + more - i)
    if run[i].shape == "number" and run[j].text in MONTHS and run[j].text != "may":
        return _in_its_year(run, i, MONTHS[run[j].text], count, j + 1 - i, today)
    return None


def _small_count(run: Sequence[Token], i: int) -> tuple[int | None, int]:
    text = run[i].text
    if run[i].shape == "number" and text.isdigit() and len(text) <= 2:
        return int(text), i + 1
    if text in ("a", "an") and i + 1 < len(run) and run[i + 1].text in ("couple", "day", "week"):
        return (2, i + 2) if run[i + 1].text == "couple" else (1, i + 1)
    if text == "couple":
        return 2, i + 1
    if text in SMALL and SMALL[text] <= 31:
        return int(SMALL[text]), i + 1
    return None, i


def _in_its_year(
    run: Sequence[Token], i: int, month: int, day: int, length: int, today: date
) -> DateHit | None:
    """A day with a month, of the year that stands behind it where one does: `march 4, 2027`."""
    j = i + length
    if j < len(run) and run[j].text == ",":
        j += 1
    told = (
        j < len(run)
        and run[j].shape == "number"
        and _YEARS.fullmatch(run[j].text)
        and abs(int(run[j].text) - today.year) <= 1
    )
    if told and not _unit_follows(run, j + 1):
        year = int(run[j].text)
        return clean(f"{year:04d}-{month:02d}-{day:02d}", j + 1 - i, today) or DateHit(
            None, j + 1 - i
        )
    return month_day(month, day, length, today)


_YEARS = re.compile(r"20[12345]\d")
