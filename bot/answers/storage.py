"""Is my sap still good: how much waits, and by when it should be boiled."""

from __future__ import annotations

from bot import figures
from bot.answers.asked import Asked
from bot.standing import stored_sap
from bot.wording import storage as wording


def answer(asked: Asked) -> str:
    """By a rule of thumb from its age and the temperature told; the nose overrules it."""
    tally = asked.tally
    store = stored_sap(
        asked.book,
        asked.sugarbush_id,
        asked.season,
        asked.today,
        tally.expected_brix,
        tally.syrup_brix,
    )
    if store.boil_by is None:
        return wording.nothing_waits(figures.STORE_COLD_F, asked.style)
    lots = [dated.lot for dated in store.lots]
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
