"""How long an answer takes on a full ledger, against an empty one.

    python -m tests.bench.bench_answers [--seasons 10] [--records 1000] [--rounds 60]

Two stores in files: one with so many seasons of so many invented records, one of the same
person with none. Each question is texted to both in turn; printed are medians:

- own: from the kept text to the reply, before the commit; wanted under 5 ms on the full one.
  What the records come to is remembered while none is added, so "new" is the same where a record
  came just before; wanted under 5 ms too;
- whole: from the door to the reply, with both commits, as a sugarer waits for it; wanted on
  the full ledger under 1.5 times the empty one.
"""

from __future__ import annotations

import argparse
import random
import statistics
import sys
import tempfile
import time
from datetime import UTC, date, datetime, timedelta
from datetime import time as clock_time
from pathlib import Path

from bot.clock import HandClock
from bot.entry import Entry
from bot.ledger import Writer
from bot.messages import Incoming
from bot.wiring import Parts, build

SENDER = "+15550100099"
NOW = datetime(2027, 3, 20, 22, tzinfo=UTC)
QUESTIONS = (
    "how much so far",
    "how much syrup will i get",
    "which tree gives the most",
    "are we ahead of last season",
    "what have i spent",
    "is my sap still good",
    "what temp do i draw at",
    "how long will 40 gal take to boil in a 2x3 pan",
    "when do i light the fire for 40 gal to be done before dark",
    "how much wood for 40 gal",
    "how many taps should i put in",
    "how many pints can i fill",
    "why so little syrup",
    "what is it worth at $60 a gallon",
    "which trees havent i emptied lately",
    "hydrometer 60.4 at 185 is that done",
    "1 gal at 70 brix too thick",
    "how do i store sap",
    "more",
)
RECORD = "3 gal at 2.2"
MOST_MS = 5.0
MOST_RATIO = 1.5
WARM_UP = 5
NEW, AFTER_ROUNDS = 9, 70


def fill(parts: Parts, seasons: int, records: int) -> None:
    """Write invented records: mostly sap by tree, some boils, syrup, jars and costs."""
    chance = random.Random(7)
    kept = parts.ledger.keep(Incoming("bench", "fill", SENDER, "fill", NOW))
    with parts.ledger.writing() as book:
        who = book.people.find(SENDER)
        assert who is not None
        writer = Writer(who.sugarbush_id, who.person_id, kept.id, NOW)
        for season in range(2027 - seasons + 1, 2028):
            for _ in range(records):
                # Up to the day of the question, so that "so far" has all of them.
                on = date(season, 2, 10) + timedelta(days=chance.randrange(38))
                book.records.add(writer, _entry(chance, on))


def _entry(chance: random.Random, on: date) -> Entry:
    at = datetime.combine(on, clock_time(chance.randrange(7, 21), chance.randrange(60)))
    kind = chance.choices(
        ("sap", "boil", "syrup", "jars", "cost", "sugar", "fuel"), (80, 5, 4, 3, 4, 3, 1)
    )[0]
    tree = str(chance.randrange(1, 40))
    gallons = round(chance.uniform(0.5, 4), 1)
    brix = round(chance.uniform(1.5, 3.0), 1)
    if kind == "sap":
        return Entry(kind="sap", on=on, at_local=at, gallons=gallons, brix=brix, tree=tree)
    if kind == "boil":
        detail = {"state": "end"}
        return Entry(kind=kind, on=on, at_local=at, gallons=40, hours=7, detail=detail)
    if kind == "sugar":
        return Entry(kind=kind, on=on, at_local=at, brix=brix, tree=tree)
    if kind == "cost":
        return Entry(kind=kind, on=on, at_local=at, dollars=gallons, detail={"item": "lids"})
    if kind == "fuel":
        return Entry(kind=kind, on=on, at_local=at, cords=0.1)
    if kind == "jars":
        jars = {"jars": [{"count": 8, "gallons_each": 0.125}]}
        return Entry(kind=kind, on=on, at_local=at, gallons=1.0, detail=jars)
    return Entry(kind=kind, on=on, at_local=at, gallons=gallons / 40)


def own_time(parts: Parts, words: str, number: int) -> float:
    """Milliseconds from the kept text to the reply, before the commit."""
    sent = NOW + timedelta(minutes=40 * number)
    kept = parts.ledger.keep(Incoming("bench", f"own {words} {number}", SENDER, words, sent))
    with parts.ledger.writing() as book:
        began = time.perf_counter()
        reply = parts.conversation.answer(book, book.inbox.claim(kept.id))
        took = time.perf_counter() - began
        book.inbox.answer(kept.id, reply, sent, owed=False)
    return took * 1000


def own_after_a_record(parts: Parts, words: str, number: int) -> float:
    """The same where a record came just before."""
    number += AFTER_ROUNDS
    at = NOW + timedelta(minutes=40 * number - 1)
    told = f"{number}.{QUESTIONS.index(words) if words in QUESTIONS else 99:02d} gal at 2"
    parts.inbox.receive(Incoming("bench", f"new {words} {number}", SENDER, told, at))
    return own_time(parts, words, number)


def whole_time(parts: Parts, words: str, number: int) -> float:
    """Milliseconds from the door to the reply, both commits included."""
    sent = NOW + timedelta(minutes=40 * number + 20)
    incoming = Incoming("bench", f"whole {words} {number}", SENDER, words, sent)
    began = time.perf_counter()
    parts.inbox.receive(incoming)
    return (time.perf_counter() - began) * 1000


def main() -> int:
    """Print the table; the exit code says whether both wishes are met."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--seasons", type=int, default=10)
    asked.add_argument("--records", type=int, default=1000)
    asked.add_argument("--rounds", type=int, default=60)
    told = asked.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        both = []
        for name in ("empty", "full"):
            parts = build(f"sqlite:///{Path(folder) / name}.sqlite", HandClock(NOW))
            parts.inbox.receive(Incoming("bench", "hello", SENDER, "hello", NOW))
            both.append(parts)
        fill(both[1], told.seasons, told.records)
        good = True
        print(f"{'':28} {'own ms':>26} {'whole ms':>17}")
        print(
            f"{'text':28} {'empty':>8} {'full':>8} {'new':>8} {'empty':>8} {'full':>8} {'ratio':>6}"
        )
        for words in (*QUESTIONS, RECORD):
            own: tuple[list[float], list[float]] = ([], [])
            whole: tuple[list[float], list[float]] = ([], [])
            for number in range(told.rounds + WARM_UP):
                for parts, own_ms, whole_ms in zip(both, own, whole, strict=True):
                    own_ms.append(own_time(parts, words, number))
                    whole_ms.append(whole_time(parts, words, number))
            own_empty, own_full = (statistics.median(taken[WARM_UP:]) for taken in own)
            empty, full = (statistics.median(taken[WARM_UP:]) for taken in whole)
            own_new = statistics.median(own_after_a_record(both[1], words, n) for n in range(NEW))
            good = good and max(own_full, own_new) < MOST_MS and full / empty < MOST_RATIO
            print(
                f"{words:28.28} {own_empty:8.2f} {own_full:8.2f} {own_new:8.2f}"
                f" {empty:8.2f} {full:8.2f} {full / empty:6.2f}"
            )
        for parts in both:
            parts.ledger.close()
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())
