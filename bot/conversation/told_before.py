"""The same facts told again in other words, by the same person a little later or by another of the
sugarbush: most likely one thing, so that it is asked about before it counts twice."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import timedelta

from bot.conversation.recording import entry_of
from bot.conversation.turn import Turn
from bot.conversation.understanding import SAME_WORDS_WITHIN
from bot.entry import Entry
from bot.ledger import Kept
from bot.reading import Understanding
from bot.reading.kinds import Cost, Fuel, Jars, PouredOut, Sap, Syrup

# So soon after it was told sap is hardly one more gathering of the same size (our own). Draws,
# jars and the like may well follow each other.
SAP_WITHIN = timedelta(minutes=30)
_ADDS_UP = (Sap, Syrup, Jars, PouredOut, Cost, Fuel)
_ONE_MORE = re.compile(
    r"\b(?:more|another|again|second|2nd|third|3rd|extra|additional|also|too|plus|each|next)\b"
)


def told_before(turn: Turn, understanding: Understanding) -> bool:
    """Whether all that adds up in a text was told by this person a little before."""
    entries = _entries(turn, understanding)
    if not entries or _ONE_MORE.search(turn.words.casefold()):
        return False
    return all(
        any(
            kept.person_id == turn.who.person_id
            and is_same(kept.entry, entry)
            and (entry.brix is None or entry.brix == kept.entry.brix)
            and turn.ago(kept.text_id) <= (SAP_WITHIN if entry.kind == "sap" else SAME_WORDS_WITHIN)
            for kept in _of_day(turn, entry)
        )
        for entry in entries
    )


def told_by_another(turn: Turn, understanding: Understanding) -> tuple[str, Entry] | None:
    """Who else told the same thing, no sap, of the same day, by their address, and the thing. Sap
    is compared by the day's sum, elsewhere."""
    if not turn.who.is_shared:
        return None
    for entry in _entries(turn, understanding):
        if entry.kind == "sap":
            continue
        for kept in _of_day(turn, entry):
            if kept.person_id != turn.who.person_id and is_same(kept.entry, entry):
                mates = turn.book.members.of(turn.who.sugarbush_id)
                address = {mate.person_id: mate.address for mate in mates}
                return address.get(kept.person_id, ""), entry
    return None


def _entries(turn: Turn, understanding: Understanding) -> list[Entry]:
    made = [
        entry_of(reading, turn.sent)
        for reading in understanding.readings
        if isinstance(reading, _ADDS_UP)
    ]
    return [entry for entry in made if entry.kind != "sap" or (entry.gallons or 0.0) > 0]


def _of_day(turn: Turn, entry: Entry) -> Sequence[Kept]:
    book, bush = turn.book, turn.who.sugarbush_id
    return book.records.of_day(bush, entry.kind, entry.season, entry.on)


def is_same(one: Entry, other: Entry) -> bool:
    """The same amounts of the same thing: one of the two may leave the sugar or the place out."""
    return (
        (one.kind, one.on, one.gallons, one.dollars, one.cords, one.propane_lb)
        == (other.kind, other.on, other.gallons, other.dollars, other.cords, other.propane_lb)
        and _agree(one.brix, other.brix)
        and one.lot == other.lot
        and one.tree == other.tree
        and one.detail.get("jars") == other.detail.get("jars")
        and _agree(one.detail.get("item"), other.detail.get("item"))
    )


def _agree(one: object, other: object) -> bool:
    return one is None or other is None or one == other
