"""Is my sap still good: how much waits, and by when it should be boiled."""

from __future__ import annotations

from bot import figures
from bot.answers.asked import Asked
from bot.reckoning.storage import stored
from bot.standing import sap_on_hand
from bot.standing.store import KINDS
from bot.wording import storage as wording


def answer(asked: Asked) -> str:
    """By a rule of thumb from its age and the temperature told; the nose overrules it."""
    entries = asked.book.records.of_kinds(asked.sugarbush_id, KINDS, asked.season)
    lots = sap_on_hand(entries, asked.today, asked.tally.expected_brix, asked.tally.syrup_brix)
    store = stored(lots, asked.today)
    if store.boil_by is None:
        return wording.nothing_waits(figures.STORE_COLD_F, asked.style)
    warmest = [lot.fahrenheit for lot in lots if lot.fahrenheit is not None]
    oldest = min(lot.gathered_on for lot in lots)
    return wording.waiting(
        store.gallons,
        oldest,
        store.boil_by,
        max(warmest) if warmest else None,
        store.overdue_gallons,
        asked.style,
    )
