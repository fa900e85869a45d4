"""What no kind may take is asked about: a minus, a range, "a few", a day to come, one of two
amounts, a bare figure behind a word for sap."""

from __future__ import annotations

import re

from bot.reading.calendar_days import FURTHEST_BACK_DAYS
from bot.reading.clause import Clause
from bot.reading.frames import FRAME_TAGS
from bot.reading.items import Item
from bot.reading.kinds.sap import Sap
from bot.reading.leftovers import ask_what, short
from bot.reading.notes import Notes
from bot.reading.puzzling import PLAIN_WORDS
from bot.reading.signs import Sought


def dangling(clause: Clause, notes: Notes) -> None:
    """`sap: 14`, `got 5`: a bare figure right behind a word for sap must not be lost."""
    if clause.plan or clause.negated:
        return
    for item in clause.free("number"):
        before = clause.preceding(item, 2)
        after = clause.following(item, 1)
        near = next((each for each in before if each.sort == "word"), None)
        named = bool(after) and after[0].text == "from" and bool(clause.tree or clause.lot)
        listed = _after_a_name_in_a_list(clause, notes, item)
        about_sap = near is not None and bool(near.tags & {"SAP", "GATHER"})
        if item.part or not (named or about_sap or listed):
            continue
        if before and before[0].text in ("#", "no", "."):
            continue
        if (
            near is not None
            and near.text in ("run", "runs", "gather", "collection")
            and after
            and after[0].text == ":"
        ):
            continue
        if (
            after
            and not named
            and after[0].sort == "word"
            and after[0].text not in ("today", "total", "in", "now", "more", "so")
        ):
            continue
        item.used = True
        ask_what(notes, clause, item)
        return


def _after_a_name_in_a_list(clause: Clause, notes: Notes, item: Item) -> bool:
    """`tree 1 2 gal, wilma 3.5`: what wilma is we do not know, but her figure must not be lost."""
    said = [each for each in clause.items if each.sort != "sign"]
    before = notes.last(Sap)
    if len(said) != 2 or said[1] is not item or before is None:
        return False
    stranger = said[0].sort == "word" and not said[0].tags
    stranger = stranger and said[0].text not in (PLAIN_WORDS - _ONE_OF_US) | _OF_THE_WEATHER
    stranger = stranger or bool(said[0].tags & {"COMPASS", "LOTN"}) or said[0].text in _PLACES
    return stranger and clause.sentence - notes.clauses[before.clause].sentence <= 1


_OF_A_BIT = Sought("bit", r"\d/\d\d?\b.*\bbit\b")
_PLACES = frozenset("creek brook field hillside driveway road barn lane backyard".split())
_ONE_OF_US = frozenset("me mine us ours kids boys girls wife husband dad mom son daughter".split())
_OF_THE_WEATHER = frozenset("low high lows highs temp temps".split())
_MEASURED = frozenset(
    ("number", "volume", "brix", "temp", "vessels", "hours", "mass", "length", "money", "cords")
)


def doubtful(clause: Clause, notes: Notes) -> bool:
    """Asks about what is doubtful in a clause. Says whether it had to."""
    return (
        _no_plain_figure(clause, notes)
        or _no_plain_day(clause, notes)
        or _two_days(clause, notes)
        or _less_than(clause, notes)
        or _to_come(clause, notes)
        or _done_or_to_come(clause, notes)
    )


def _said(notes: Notes, item: Item) -> str:
    return notes.text[item.start : item.end]


def _left_open(clause: Clause, notes: Notes, part: str, unit: str = "") -> str:
    """The words of a clause with one part of them left open for the answer."""
    fragment = notes.text[clause.items[0].start : clause.items[-1].end]
    before, _, after = fragment.partition(part)
    before = before.replace("{", "").replace("}", "").rstrip("-").removesuffix("minus ")
    return f"{before}{{}} {unit}".rstrip() + after.replace("{", "").replace("}", "")


def _no_plain_figure(clause: Clause, notes: Notes) -> bool:
    """A minus, a range, or "a few"."""
    if clause.sorts.isdisjoint(_MEASURED):
        return False
    item = next(
        (
            each
            for each in clause.items
            if each.sort in _MEASURED and (each.negative or each.low is not None or each.vague)
        ),
        None,
    )
    if item is None or clause.has("FOREIGN") or not _matters(clause, item):
        return False
    if item.low is not None and not clause.frame & FRAME_TAGS and _asks(clause, notes):
        return False  # "inch and a half or 2 inches, how far in do i drill"
    if item.vague and clause.has("MOTHS", "CLOUDY", "YELLOW", "SMELL"):
        item.used = True
        return False  # "several of the pails have moths in them"
    if item.negative and _is_a_frost(clause, item):
        item.used = True
        return False
    words = _said(notes, item).split()
    unit = words[-1] if item.sort not in ("number", "vessels") and len(words) > 1 else ""
    fill = _left_open(clause, notes, _said(notes, item), unit)
    if item.low is not None and item.high is not None:
        notes.ask(
            f"{item.low:g} to {item.high:g}: which shall I write down, "
            f"{item.low:g}, {item.value:g} or {item.high:g}?",
            fill=fill,
        )
    elif item.negative:
        notes.ask(f"I can't take minus {item.value:g}. What was it?", fill=fill)
    else:
        notes.ask(f'How many is "{" ".join(words)}"? Text the number.', fill=fill)
    return True


def _asks(clause: Clause, notes: Notes) -> bool:
    return any(other.question for other in notes.sentence(clause))


def _is_a_frost(clause: Clause, item: Item) -> bool:
    """`minus 5 last night`, `store tank 2 C outside -4`: how cold it was."""
    if item.sort not in ("number", "temp"):
        return False
    before = [each.text for each in clause.preceding(item, 3)]
    outside = (
        bool({"outside", "it was", "it's", "was", "nights", "days", "lows"} & set(before))
        or "PORCH" in clause.tags
    )
    ours = clause.has("SAP", "STORE", "GATHER", "SUGAR", "TAPN", "BUCKET", "JARN", "COSTV")
    cold = bool({"last night", "overnight", "tonight", "this morning"} & clause.each_word)
    night = clause.holds("date") or cold
    return outside or (not ours and night)


def _no_plain_day(clause: Clause, notes: Notes) -> bool:
    """`the other day`, a day that no month has, one long ago, or two days at once."""
    vague = clause.first("OTHERDAY")
    if vague is not None and not clause.sorts.isdisjoint(_MEASURED):
        open_day = _left_open(clause, notes, _said(notes, vague))
        notes.ask("Which day was that?", fill=open_day, number_only=False)
        return True
    days = clause.of_sort("date")
    if not days:
        return False
    no_day = any(each.on is None and not each.ahead for each in days)
    long_ago = any(
        each.on is not None and (notes.sent.date() - each.on).days > FURTHEST_BACK_DAYS
        for each in days
    )
    if no_day or long_ago or len({each.on for each in days}) > 1:
        notes.ask("Which day was that? I can't tell from what you wrote.")
        return True
    return False


def _less_than(clause: Clause, notes: Notes) -> bool:
    """`under 5 gal`."""
    less = clause.first("LESS")
    volume = next(iter(clause.following(less, 1)), None) if less is not None else None
    if less is None or volume is None or volume.sort not in ("volume", "cords"):
        return False
    part = notes.text[less.start : volume.end]
    fill = _left_open(clause, notes, part, volume.text.split()[-1])
    notes.ask("How much was it, then? Text the number.", fill=fill)
    return True


def _two_days(clause: Clause, notes: Notes) -> bool:
    """`12 gal yesterday and today`: one amount, and two days for it."""
    following = notes.clause_after()
    days = clause.of_sort("date")
    amount = clause.holds("volume", "vessels")
    if following is None or not days or not amount or following.sentence != clause.sentence:
        return False
    bare = all(item.sort in ("date", "sign") or item.text in _TOGETHER for item in following.items)
    if following.joint not in ("and", "&") or not bare:
        return False
    notes.ask("How much was it on each of the two days? Text one day at a time.")
    return True


_TOGETHER = frozenset("combined together both".split())


def _to_come(clause: Clause, notes: Notes) -> bool:
    """Something already done, on a day that is still to come."""
    day = next((each for each in clause.of_sort("date") if each.ahead), None)
    if day is None and not clause.ahead:
        return False
    if clause.frame.isdisjoint(FRAME_TAGS) and {"rest", "other", "others"} & set(clause.words()):
        return True  # "back at it tomorrow with the other 20 gal": a plan
    shown = "That day" if day is None else short(day.text)
    fill = None if day is None else _left_open(clause, notes, _said(notes, day))
    notes.ask(f"{shown} is still to come. Which day was it?", fill=fill, number_only=False)
    return True


def _done_or_to_come(clause: Clause, notes: Notes) -> bool:
    """`boiling 40 gal saturday`: last Saturday's boil, or next Saturday's?"""
    day = clause.first_of("date")
    if day is None or day.on is None or day.on == notes.sent.date():
        return False
    weekday = day.text.removeprefix("on ")[:3] in _WEEKDAYS and "last" not in day.text
    told = _PRESENT.isdisjoint(clause.words()) or not _HELPS.isdisjoint(clause.words())
    if day.text.endswith("'s"):
        return False  # "monday's boil ate .3 cord"
    here = notes.sentence(clause)
    planned = any(c.plan for c in here)
    measured = planned or not clause.sorts.isdisjoint(_MEASURED)
    bare = not measured and _goes_on_with_a_figure(clause, notes)
    if not weekday or told or not (measured or bare):
        return False
    if bare:
        for each in (each for c in here for each in c.items):
            each.used = True  # "setting friday, 20 taps"
    notes.ask(f"{short(day.text)}: is that done, or to come? If done, text it like: boiled 40 gal.")
    return True


def _goes_on_with_a_figure(clause: Clause, notes: Notes) -> bool:
    """`setting friday, | 20 taps`: nothing but the deed and its day, and then how many."""
    following = notes.clause_after()
    return (
        following is not None
        and following.sentence == clause.sentence
        and following.joint == ","
        and len(clause.items) <= 3
        and following.items[0].sort in _MEASURED
        and not following.has("DONE", "OVER")
    )


_WEEKDAYS = frozenset("mon tue wed thu fri sat sun".split())
_PRESENT = frozenset(
    "boil boils boiling gather gathers gathering collect collects collecting bottle bottles "
    "putting adding installing pounding knocking "
    "bottling setting tapping pulling drilling hanging emptying haul hauls hauling cook cooks "
    "cooking light lights draw draws".split()
)
_HELPS = frozenset("was were been did after while started finished done boiled gathered".split())


def unsure(clause: Clause, notes: Notes) -> bool:
    """`8 pints, or was it 9`: nothing of such a sentence is taken."""
    if _told_by_another(clause, notes) or _compared(clause, notes):
        return True
    if _OF_A_BIT.search(clause.text) or (clause.question and not clause.has("UNSURE")):
        return False  # "5/16 or 7/16 bit for these old spouts"
    if not clause.near("UNSURE", "PERHAPS") and " or " not in notes.text:
        return False
    here = notes.sentence(clause)
    maybes = sum(_maybe_amounts(other) for other in here)
    bare = any(i.sort == "number" and not i.article for i in clause.items)
    twice = maybes > 1 or (maybes == 1 and bare and clause.holds("volume")) or _one_or_other(clause)
    if not twice and not (clause.near("UNSURE") or any(map(_or_amount, here))):
        return False
    if not notes.doubts and not clause.sorts.isdisjoint(_MEASURED):
        notes.ask("Which of the two shall I write down? Text the whole thing again.")
    return True


def _told_by_another(clause: Clause, notes: Notes) -> bool:
    """`she said she dumped 10 gal`: whose that is, nobody knows."""
    if clause.sorts.isdisjoint(_MEASURED):
        return False
    told = clause.near("REPORTED") or _SOMEBODYS_KIN.match(clause.text) is not None
    if not told and not (_KIN_DID.search(notes.text) and _AND_I.search(notes.text)):
        return False
    if not notes.doubts:
        notes.ask("Is that of your own sugarbush? If so, text it again without who said it.")
    return True


_SOMEBODYS_KIN = Sought(
    "'s |my ",
    r"(?:and |but )?\w+'s (?:brother|sister|dad|mom|uncle|aunt|cousin|son|daughter|friend|neighbor"
    r"|buddy|crew|outfit|place|bush|camp|operation) (?:\w+ )?"
    r"(?:got|had|hauled|gathered|collected|made|boiled|ran|brought)\b"
    r"|my (?:brother|sister|dad|mom|uncle|aunt|cousin|son|daughter|friend|neighbor|buddy|boss)"
    r" (?:over |up |down |out )*(?:in|at|near|from) \w+",
)
"""`denny's brother hauled in 200 gal`: whose sap is that?"""


_KIN_DID = Sought(
    " did| got| made| boiled| had| collected| gathered| hauled",
    r"\b(?:brother|sister|dad|mom|uncle|aunt|cousin|son|daughter|friend|buddy|neighbor|\w+'s place)"
    r" (?:did|got|made|boiled|had|collected|gathered|hauled) (?:about )?\d",
)
_AND_I = re.compile(r"\b(?:i|we|mine|ours) (?:did|got|made|boiled|had|used|only|was|gave|were)\b")
"""`brother did 50 gal, i did 30`: whose is which, we had rather ask."""


def _compared(clause: Clause, notes: Notes) -> bool:
    """`20 L more than yesterday`: how much that is, is not said."""
    for item in clause.free("volume", "vessels"):
        behind = [each.text for each in clause.following(item, 3)]
        against = clause.following(item, 3)[2:] if behind[:2] in _THAN else []
        if against and (
            against[0].sort == "date" or against[0].text in ("usual", "before", "last")
        ):
            notes.ask("How many gal of sap was it, then?", fill="{} gal of sap")
            item.used = True
            return True
    return False


_THAN = (["more", "than"], ["less", "than"], ["over", "than"])


def _maybe_amounts(clause: Clause) -> int:
    """How many amounts are said with a maybe."""
    return sum(
        "PERHAPS" in item.tags and any(n.sort in _MEASURED for n in clause.following(item, 1))
        for item in clause.items
    )


def _one_or_other(clause: Clause) -> bool:
    """`$12 or $15 for gaskets`."""
    return any(
        b.text == "or" and a.sort == c.sort and a.sort in _MEASURED
        for a, b, c in zip(clause.items, clause.items[1:], clause.items[2:], strict=False)
    )


def _or_amount(clause: Clause) -> bool:
    """`tapped 12, well 10, | or 12`."""
    return (
        len(clause.items) == 2
        and clause.items[0].text == "or"
        and clause.items[1].sort in _MEASURED
    )


_FIGURES_WANTED_BY = frozenset(
    "SETV PULLV TAPN BOTTLE SUGAR STORE PANN COSTV WATERN GATHER BUCKET".split()
)
_COUNTED = ("TAPN", "JARN", "BUCKET")


def _matters(clause: Clause, item: Item) -> bool:
    """Would a kind want this figure? Of others nothing is asked."""
    if item.sort != "number" or item.negative:
        return True
    if item.vague:
        counted = clause.has(*_COUNTED) or "tapped" in clause.words()
        told = clause.about("SETV", "PULLV", "BOTTLE", "POUR") and counted
        return told or clause.about("COSTV") or clause.has("SUGAR")
    return not clause.frame.isdisjoint(_FIGURES_WANTED_BY) or clause.tree is not None
