"""A conversation to test with: people text at wall-clock times, and are answered.

The places are a handful of our own, so that no test waits for the map.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from itertools import count
from typing import Any

from bot import wiring
from bot.clock import HandClock, utc_time
from bot.conversation import Conversation, Senses
from bot.ledger import IN_MEMORY
from bot.messages import Incoming
from bot.reading import read, settle
from bot.replay import totals_of
from bot.wiring import DEFAULT_ZONE, Parts

ANN, BEN, CAL = "+15550100011", "+15550100012", "+15550100013"


@dataclass(frozen=True, slots=True)
class TestPlace:
    """A place as the map gives it."""

    __test__ = False

    name: str
    region: str
    country: str
    zone: str
    latitude: float | None = 44.0
    longitude: float | None = -73.0


PLACES = {
    "05760": TestPlace("Orwell", "VT", "US", "America/New_York"),
    "orwell vt": TestPlace("Orwell", "VT", "US", "America/New_York"),
    "13343": TestPlace("Lowville", "NY", "US", "America/New_York"),
    "54837": TestPlace("Frederic", "WI", "US", "America/Chicago"),
    "49855": TestPlace("Marquette", "MI", "US", "America/Detroit"),
    "k0a 1a0": TestPlace("Almonte", "ON", "CA", "America/Toronto"),
    "almonte ontario": TestPlace("Almonte", "ON", "CA", "America/Toronto"),
    "b0n 1t0": TestPlace("Wentworth", "NS", "CA", "America/Halifax"),
}


def find_place(words: str) -> TestPlace | None:
    """The place, if it is one of ours."""
    return PLACES.get(" ".join(words.casefold().replace(",", " ").split()))


def likely_places(words: str) -> tuple[TestPlace, ...]:
    """Those that a town alone may mean; one that is nearly spelt right."""
    if words.casefold() == "orwell":
        return PLACES["orwell vt"], TestPlace("Orwell", "NY", "US", "America/New_York")
    return (PLACES["orwell vt"],) if words.casefold() == "orwel vt" else ()


def build(url: str = IN_MEMORY, zone: str = DEFAULT_ZONE) -> Parts:
    """Pailtext with our places, on an empty store."""
    parts = wiring.build(url, HandClock(datetime(2027, 3, 1, tzinfo=UTC)), zone)
    conversation = Conversation(Senses(read, settle, find_place, likely_places), zone)
    inbox = replace(parts.inbox, conversation=conversation)
    return replace(parts, conversation=conversation, inbox=inbox)


@dataclass
class Stage:
    """Texts in, replies out."""

    parts: Parts = field(default_factory=build)
    _ids: Callable[[], int] = field(default_factory=lambda: count(1).__next__)

    def text(self, words: str, at: str = "2027-03-05T18:00", sender: str = ANN, **more: Any) -> str:
        """Somebody texts at a wall-clock time of their place; the reply, "" for none."""
        return self.deliver(self.next_id(), words, at, sender, **more)

    def next_id(self) -> str:
        """An id that no text had before."""
        return str(self._ids())

    def deliver(self, provider_id: str, words: str, at: str, sender: str = ANN, **more: Any) -> str:
        """A text arrives under its provider's id."""
        with self.parts.ledger.reading() as book:
            zone = self.parts.conversation.zone(book, sender) or DEFAULT_ZONE
        arrived = utc_time(datetime.fromisoformat(at), zone)
        incoming = Incoming("test", provider_id, sender, words, arrived, **more)
        return self.parts.inbox.receive(incoming) or ""

    def settled(self, sender: str = ANN) -> None:
        """First contact is over and the place told, so that replies hold nothing of it."""
        self.text("hello", "2027-02-20T12:00", sender)
        self.text("I'm in 13343", "2027-02-20T12:01", sender)

    def totals(self, sender: str = ANN, at: str = "2027-03-05T18:00") -> dict[str, Any]:
        """The season's totals of somebody's sugarbush."""
        return totals_of(self.parts, sender, datetime.fromisoformat(at))
