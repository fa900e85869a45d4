"""`pailtext replay`: conversations lived through on a simulated clock, in a fresh store.

In, JSON lines `{"at", "from", "text"}`, `at` being the wall clock of the sender (before their
place is known, of the first sender). Out, JSON lines `{"at", "to", "text", "re"}` for every
text that leaves, `re` being the text that it answers; one that leaves unasked has null there and
a `kind`, "alert" or "reminder". Then `{"final": {...}}` with the season's totals of the first
sender.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

from bot.channels.channel import Sent
from bot.clock import HandClock, local_time, season_of, utc_time
from bot.ledger import IN_MEMORY
from bot.messages import CONSOLE_DOOR, EMAIL_DOOR, SMS_DOOR, Incoming, Outgoing
from bot.outbox import owe
from bot.standing import boil_sums, know, season_boils, season_tally
from bot.wiring import DEFAULT_ZONE, Parts, build, file_skies

DOOR = "replay"


@dataclass(frozen=True, slots=True)
class Step:
    """One text: the sender's wall clock (naive), the sender, the words."""

    at: datetime
    sender: str
    text: str


@dataclass
class Collector:
    """A way out that keeps what leaves."""

    sent: list[Outgoing] = field(default_factory=list)

    def send(self, outgoing: Outgoing) -> Sent:
        """Take it, as a provider would."""
        self.sent.append(outgoing)
        return Sent(f"replay-{outgoing.text_id}")

    def find(self, outgoing: Outgoing, since_utc: datetime) -> Sent | None:
        """Nothing is ever unclear here."""
        return None


def replay(
    lines: Iterable[str], hours_csv: Iterable[str] | None = None, until: str | None = None
) -> Iterator[str]:
    """The lines that come out.

    hours_csv: the lines of a file of hourly temperatures, the weather that it lives in; without
    it there is no forecast. until: local ISO time, the clock runs on to it after the last text.
    Raises ValueError on a line that is not a step, and on hours or a time that cannot be read.
    """
    steps = [_step(number, line) for number, line in enumerate(lines, 1) if line.strip()]
    ends = None if until is None else _wall_clock("--until", until)
    skies = None if hours_csv is None else file_skies(hours_csv)
    clock = HandClock(datetime.now(UTC))
    collector = Collector()
    # An address by any door leaves here.
    channels = dict.fromkeys((SMS_DOOR, EMAIL_DOOR, CONSOLE_DOOR), collector)
    parts = build(IN_MEMORY, clock, channels=channels, skies=skies)
    first = steps[0].sender if steps else ""
    unasked = _Unasked(parts, clock, collector, first)
    try:
        for index, step in enumerate(steps):
            at_utc = utc_time(step.at, _zone(parts, step.sender, first))
            if index:
                yield from unasked.until(at_utc)
            else:
                unasked.begin(at_utc)
            clock.set(at_utc)
            reply = parts.inbox.receive(
                Incoming(DOOR, str(index), step.sender, step.text, clock.now_utc())
            )
            if reply is not None:
                yield _line(at=_shown(step.at), to=step.sender, text=reply, re=index)
        if steps and ends is not None:
            yield from unasked.until(utc_time(ends, _zone(parts, first, first)))
        if steps:
            yield _line(final=totals_of(parts, first, steps[-1].at))
    finally:
        parts.ledger.close()


class _Unasked:
    """What leaves unasked between the texts: the rounds gone at each moment at which something
    may be owed, and the outbox emptied, as the worker does by the clock."""

    def __init__(self, parts: Parts, clock: HandClock, collector: Collector, first: str) -> None:
        self._parts = parts
        self._clock = clock
        self._collector = collector
        self._first = first
        self._planned_utc = clock.now_utc()

    def begin(self, at_utc: datetime) -> None:
        """The first text arrives: nothing was owed before."""
        self._planned_utc = at_utc

    def until(self, until_utc: datetime) -> Iterator[str]:
        """Let the clock run on, and give what leaves."""
        while True:
            owing = (self._parts.planner, self._parts.helper_lines)
            moments = [one.next_utc(self._planned_utc) for one in owing]
            at_utc = min((moment for moment in moments if moment is not None), default=None)
            if at_utc is None or at_utc > until_utc:
                break
            self._clock.set(at_utc)
            self._owe(at_utc)
            self._planned_utc = at_utc
            yield from self._sent(at_utc)
        if until_utc > self._planned_utc:
            self._planned_utc = until_utc

    def _owe(self, at_utc: datetime) -> None:
        planner = self._parts.planner
        evening = self._parts.helper_lines
        for plan in (planner.plan_mornings, planner.plan_reminders, evening.plan):
            texts = list(plan(self._planned_utc, at_utc))
            if texts:
                with self._parts.ledger.writing() as book:
                    owe(book, texts, at_utc)

    def _sent(self, at_utc: datetime) -> Iterator[str]:
        self._parts.outbox.deliver_due()
        for out in self._collector.sent:
            at = local_time(at_utc, _zone(self._parts, out.to, self._first))
            yield _line(at=_shown(at), to=out.to, text=out.text, re=None, kind=out.kind)
        self._collector.sent.clear()


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
        return Step(_wall_clock('"at"', told["at"]), str(told["from"]), str(told["text"]))
    except (KeyError, TypeError, ValueError) as error:
        raise ValueError(f"line {number}: {error!r}") from error


def _wall_clock(name: str, told: str) -> datetime:
    at = datetime.fromisoformat(told)
    if at.tzinfo is not None:
        raise ValueError(f"{name} is {told}, but should be without offset")
    return at


def _shown(at: datetime) -> str:
    return at.isoformat(timespec="minutes" if not at.second else "seconds")


def _line(**fields: Any) -> str:
    return json.dumps(fields)
