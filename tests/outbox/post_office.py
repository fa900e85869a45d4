"""An outbox to test with: people who were met, a channel that fails as told, a clock moved by
hand."""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from itertools import count
from typing import Any

from bot.channels.channel import Channel, SendError, Sent
from bot.clock import HandClock, local_time
from bot.consent import Consent
from bot.entry import Entry
from bot.ledger import KeptText, Ledger, OwedText, Who, Writer
from bot.messages import Incoming, Outgoing, Unasked
from bot.outbox import Outbox, owe

ANN, BEN = "+15550100011", "+15550100012"
EASTERN = "America/New_York"
# A Tuesday, 10:00 in New York.
NOW_UTC = datetime(2027, 3, 9, 15, tzinfo=UTC)
HOUR = timedelta(hours=1)
MINUTE = timedelta(minutes=1)


@dataclass
class FakeChannel:
    """Sends by noting. `next_errors` are raised one by one; `loses` says that the next error
    comes after the text had left; `finds_errors` are raised when it is asked what left."""

    sent: list[Outgoing] = field(default_factory=list)
    next_errors: deque[SendError] = field(default_factory=deque)
    finds_errors: deque[SendError] = field(default_factory=deque)
    loses: bool = False
    asked_since: list[datetime] = field(default_factory=list)
    looked: int = 0

    def send(self, outgoing: Outgoing) -> Sent:
        error = self.next_errors.popleft() if self.next_errors else None
        if error is None or self.loses:
            self.sent.append(outgoing)
        if error is not None:
            self.loses = False
            raise error
        return Sent(f"SM{len(self.sent)}")

    def find(self, outgoing: Outgoing, since_utc: datetime) -> Sent | None:
        self.looked += 1
        self.asked_since.append(since_utc)
        if self.finds_errors:
            raise self.finds_errors.popleft()
        for number, each in enumerate(self.sent, 1):
            if each.text_id == outgoing.text_id:
                return Sent(f"SM{number}")
        return None


@dataclass
class Office:
    """Everything about the outbox of one store."""

    ledger: Ledger
    clock: HandClock = field(default_factory=lambda: HandClock(NOW_UTC))
    channel: FakeChannel = field(default_factory=FakeChannel)
    zone: str = EASTERN
    _numbers: Any = field(default_factory=lambda: count(1))

    @property
    def outbox(self) -> Outbox:
        channels: dict[str, Channel] = {"twilio_sms": self.channel}
        return Outbox(self.ledger, channels, self.clock, self.zone)

    @property
    def now(self) -> datetime:
        return self.clock.now_utc()

    def meet(self, address: str = ANN, place: str | None = None) -> Who:
        """Somebody, met by their first text; `place` is the zone of their trees."""
        kept = self.text(address, "12 gal")
        with self.ledger.writing() as book:
            who = book.people.meet(address, self.now)
            Consent(book).met(who.person_id, kept)
            if place is not None:
                entry = Entry(
                    kind="place",
                    on=date(2027, 1, 1),
                    at_local=datetime(2027, 1, 1),
                    detail={"zone": place},
                )
                writer = Writer(who.sugarbush_id, who.person_id, kept.id, self.now)
                book.records.add(writer, entry)
        return who

    def text(self, address: str, words: str) -> KeptText:
        """A text that came in."""
        number = str(next(self._numbers))
        return self.ledger.keep(Incoming("twilio_sms", number, address, words, self.now))

    def say(self, who: Who, word: str) -> None:
        """They text STOP or START."""
        kept = self.text(who.address, word)
        with self.ledger.writing() as book:
            consent = Consent(book)
            (consent.stop if word == "STOP" else consent.start)(who.person_id, kept)

    def unasked(self, who: Who, **more: Any) -> Unasked:
        """A reminder that is due now and of use for three hours, unless told otherwise."""
        due_utc = more.pop("due_utc", self.now)
        given: dict[str, Any] = {
            "person_id": who.person_id,
            "to": who.address,
            "kind": "reminder",
            "key": "boil_by",
            "local_date": local_time(due_utc, self.zone).date(),
            "text": "Pailtext: 38 gal waits, boil today.",
            "due_utc": due_utc,
            "useless_after_utc": due_utc + 3 * HOUR,
            **more,
        }
        return Unasked(**given)

    def owe(self, who: Who, **more: Any) -> int:
        """Owe one; how many were new."""
        text = self.unasked(who, **more)
        with self.ledger.writing() as book:
            return owe(book, [text], self.now)

    def go(self, later: timedelta = timedelta(0)) -> None:
        """Some time later, all that is due is delivered."""
        self.clock.advance(later)
        self.outbox.deliver_due()

    def rows(self, who: Who) -> list[OwedText]:
        with self.ledger.reading() as book:
            return book.outbox.of_person(who.person_id)

    def row(self, who: Who) -> OwedText:
        (row,) = self.rows(who)
        return row

    def states(self, who: Who) -> list[str]:
        return [row.state for row in self.rows(who)]

    def words(self, who: Who) -> list[tuple[str, str]]:
        """The consent log of a person: what was said, and how."""
        with self.ledger.reading() as book:
            return [(word.said, word.how) for word in book.consents.of_person(who.person_id)]
