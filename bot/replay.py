"""`pailtext replay`: conversations lived through on a simulated clock, in a fresh store.

In, JSON lines `{"at", "from", "text"}`, `at` being the wall clock of the sender (before their
place is known, of the first sender). Out, JSON lines `{"at", "to", "text", "re"}` for every
text that leaves, then `{"final": {...}}` with the season's totals of the first sender.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from bot.clock import HandClock, season_of, utc_time
from bot.ledger import IN_MEMORY
from bot.messages import Incoming
from bot.standing import boil_sums, know, season_boils, season_tally
from bot.wiring import DEFAULT_ZONE, Parts, build

DOOR = "replay"


@dataclass(frozen=True, slots=True)
class Step:
    """One text: the sender's wall clock (naive), the sender, the words."""

    at: datetime
    sender: str
    text: str


def replay(lines: Iterable[str]) -> Iterator[str]:
    """The lines that come out. Raises ValueError on a line that is not a step."""
    steps = [_step(number, line) for number, line in enumerate(lines, 1) if line.strip()]
    clock = HandClock(datetime.now(UTC))
    parts = build(IN_MEMORY, clock)
    first = steps[0].sender if steps else ""
    try:
        for index, step in enumerate(steps):
            clock.set(utc_time(step.at, _zone(parts, step.sender, first)))
            reply = parts.inbox.receive(
                Incoming(DOOR, str(index), step.sender, step.text, clock.now_utc())
            )
            if reply is not None:
                yield _line(at=_shown(step.at), to=step.sender, text=reply, re=index)
        if steps:
            yield _line(final=totals_of(parts, first, steps[-1].at))
    finally:
        parts.ledger.close()


def totals_of(parts: Parts, address: str, at: datetime) -> dict[str, Any]:
    """The totals of an address's sugarbush, for the season of a local time."""
    with parts.ledger.reading() as book:
        who = book.people.find(address)
        if who is None:
            return {}
        known = know(book, who.sugarbush_id, at)
        season = season_of(at.date())
        tally = season_tally(book, who.sugarbush_id, season, known.law.min_brix)
        boiled = boil_sums(season_boils(book, who.sugarbush_id, season))
    totals = {
        "sap_gallons": tally.sap_gallons,
        "syrup_gallons": tally.syrup_gallons,
        "sap_brix_mean": tally.sap_brix_mean,
        "taps": None if known.taps is None else known.taps.count,
        "poured_out_gallons": tally.poured_out_gallons,
        "jars_gallons": tally.jars_gallons,
        "cost_dollars": tally.cost_dollars,
        "boil_hours": boiled.hours,
    }
    return {
        name: round(value, 4) if isinstance(value, float) else value
        for name, value in totals.items()
    }


def _zone(parts: Parts, sender: str, first: str) -> str:
    """The sender's zone; before their place is known the first sender's."""
    with parts.ledger.reading() as book:
        return (
            parts.conversation.zone(book, sender)
            or parts.conversation.zone(book, first)
            or DEFAULT_ZONE
        )


def _step(number: int, line: str) -> Step:
    try:
        told = json.loads(line)
        at = datetime.fromisoformat(told["at"])
        if at.tzinfo is not None:
            raise ValueError(f'"at" is {told["at"]}, but should be without offset')
        return Step(at, str(told["from"]), str(told["text"]))
    except (KeyError, TypeError, ValueError) as error:
        raise ValueError(f"line {number}: {error!r}") from error


def _shown(at: datetime) -> str:
    return at.isoformat(timespec="minutes" if not at.second else "seconds")


def _line(**fields: Any) -> str:
    return json.dumps(fields)
