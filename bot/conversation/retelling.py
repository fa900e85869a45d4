"""`lids were $14` after "$12 on lids", `12 gal at 2.2` after "12 gal": told anew in place of what
was told, or one more?"""

from __future__ import annotations

import re

from bot.conversation.amending import lately, went_on
from bot.conversation.pending import WhichRecord
from bot.conversation.recording import entry_of
from bot.conversation.turn import Turn
from bot.entry import Entry
from bot.ledger import Kept
from bot.reading import Choice, Understanding
from bot.reading.kinds import Amend, Boil, Cost, Sap, Syrup
from bot.wording import questions, receipts

# A thing that is spoken of as known, and its figure: "the boil was 7 hours", "lids were $14".
_WAS = re.compile(
    r"(?:(?:and|so) )?(?P<whose>(?:the|our|my|that|last night'?s"
    r"|(?:yester|to|mon|tues|wednes|thurs|fri|satur|sun)day'?s) )?[a-z0-9#' ]{2,30}? "
    r"(?:was|were|came to|cost|took) (?:(?:only|really|just|about|like) )*\$?[\d.]+.*"
)
_IN_A_ROW = re.compile(r"\b(?:first|second|third|earlier)\b")
_KINDS = (Boil, Cost, Sap, Syrup)
_INSTEAD = ("instead", "in place", "change it", "change", "that one", "same", "same one")
_MORE = ("more", "one more", "both", "another", "as well", "add it", "new")


def ask_which_it_is(turn: Turn, understanding: Understanding) -> bool:
    """Asks where a text may tell a late record anew. Whether it had to."""
    words = " ".join(turn.words.casefold().split())
    if _tells_sugar_too(turn, understanding):
        return True
    found = _WAS.fullmatch(words)
    if found is None or understanding.doubt is not None or len(understanding.readings) != 1:
        return False
    reading = understanding.readings[0]
    if not isinstance(reading, _KINDS):
        return False
    named = isinstance(reading, Sap) and (reading.lot is not None or reading.tree is not None)
    if isinstance(reading, Sap | Syrup) and found["whose"] is None and not named:
        return False
    new = entry_of(reading, turn.sent)
    told = [kept for text in lately(turn) for kept in text]
    old = next((kept for kept in told if _is_told_anew(kept.entry, new)), None)
    corrected = _correction(turn, f"no, {turn.words}")
    if old is not None and _IN_A_ROW.search(words):
        # Which of several it is, its figure tells better than its place in the row.
        turn.ask(questions.WHICH_FIGURE, None)
        return True
    if old is None or corrected is None:
        return False
    _ask(turn, old, new, corrected)
    return True


def _ask(turn: Turn, old: Kept, new: Entry, corrected: Amend) -> None:
    """Instead of that very record, or one more?"""
    told = receipts.short(old.entry, turn.style)
    question = questions.instead(receipts.short(new, turn.style), told)
    other = Choice(_MORE, turn.words)
    turn.ask(question, WhichRecord(((_INSTEAD, old.id),), corrected.as_dict(), other))


def _tells_sugar_too(turn: Turn, understanding: Understanding) -> bool:
    """`home lot 12 gal at 2.2` after "home lot 12 gal": the same sap with its sugar, or as much
    again? Asks, and says whether it had to."""
    if understanding.doubt is not None or len(understanding.readings) != 1:
        return False
    reading = understanding.readings[0]
    if not isinstance(reading, Sap) or reading.brix is None or not reading.gallons:
        return False
    new = entry_of(reading, turn.sent)
    bush = turn.who.sugarbush_id
    if not turn.book.records.told_untested(bush, new.season, new.on, reading.gallons):
        return False
    place = (new.on, new.tree, new.lot, new.gallons)
    told = [kept for text in lately(turn) for kept in text if kept.entry.kind == "sap"]
    old = next(
        (
            kept
            for kept in told
            for one in (kept.entry,)
            if one.brix is None and (one.on, one.tree, one.lot, one.gallons) == place
        ),
        None,
    )
    if old is None:
        return False
    _ask(turn, old, new, Amend(brix=new.brix))
    return True


def _is_told_anew(old: Entry, new: Entry) -> bool:
    """The same thing on the same day, with another figure."""
    if (old.kind, old.on, old.tree, old.lot) != (new.kind, new.on, new.tree, new.lot):
        return False
    if new.kind == "cost":
        item = new.detail.get("item")
        same = item is not None and old.detail.get("item") is not None and went_on(old, str(item))
        return same and old.dollars != new.dollars
    pairs = ((old.gallons, new.gallons), (old.hours, new.hours))
    both = [(was, now) for was, now in pairs if was is not None and now is not None]
    return any(was != now for was, now in both)


def _correction(turn: Turn, words: str) -> Amend | None:
    """The correction that a text makes, None where it makes none."""
    readings = turn.understand(words).readings
    found = readings[0] if len(readings) == 1 else None
    return found if isinstance(found, Amend) else None
