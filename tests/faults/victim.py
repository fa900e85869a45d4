"""A worker that can be killed at a named point: run in a process of its own by the tests.

It is put together as `pailtext work` is, with a quicker rhythm, a Twilio on loopback and a round
that owes one text to each of the people there. Two variables of the environment are its own, and
the product knows nothing of them: `PAILTEXT_FAULT` names the point at which it kills itself, as
`kill -9` does, and `PAILTEXT_FAULT_ADDRESS` whose text it has to be about.

    python -m tests.faults.victim DATABASE_URL STUB_URL [INCOMING_SENDER]
"""

from __future__ import annotations

import faulthandler
import os
import signal
import sys
import threading
from collections.abc import Iterable
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from typing import Any

from bot.channels.channel import Channel, Sent
from bot.channels.twilio_rest import TwilioRest
from bot.clock import SystemClock
from bot.conversation import Conversation
from bot.jobs import Rhythm
from bot.ledger import Book, KeptText
from bot.ledger.tables import Address, table_of
from bot.messages import SMS_DOOR, Incoming, Outgoing, Unasked
from bot.outbox import Outbox
from bot.rounds import Round
from bot.serving import leave
from bot.wiring import Parts, build
from bot.worker import working
from tests.channels.twilio_stub import OURS, SID, TOKEN, Loopback

EVERY_SECOND = "* * * * * *"
RHYTHM = Rhythm(
    plan=EVERY_SECOND,
    carry=EVERY_SECOND,
    take_over=EVERY_SECOND,
    texts=100,
    at_once=5,
    period_s=1.0,
    poll_s=0.1,
)
LEASE = timedelta(seconds=2)

POINTS = (
    "text kept",  # the raw text is committed, and nobody has read it
    "text read",  # its records and its reply are written, and not committed
    "planned",  # what is owed is worked out, and not committed
    "owed",  # it is committed, and not queued
    "fetched",  # the engine has begun the job, and the row is not claimed
    "claimed",  # the row is claimed, and Twilio was not called
    "accepted",  # Twilio said yes, and that is not written
    "written",  # it is written, and the engine has not noted that the job is done
)


def die_at(point: str, address: str) -> None:
    """The end, if this is the point, and the text the one it has to be about."""
    wanted = os.environ.get("PAILTEXT_FAULT"), os.environ.get("PAILTEXT_FAULT_ADDRESS")
    if wanted == (point, address):
        os.kill(os.getpid(), signal.SIGKILL)


def noon_zone() -> str:
    """A zone where it is noon now, so that no hour forbids a text."""
    hours = 12 - datetime.now(UTC).hour
    # POSIX counts westward.
    return f"Etc/GMT{-hours:+d}" if hours else "Etc/GMT"


class DyingChannel:
    """Twilio, with a point before and one behind the call."""

    def __init__(self, channel: Channel) -> None:
        self._channel = channel

    def send(self, outgoing: Outgoing) -> Sent:
        die_at("claimed", outgoing.to)
        sent = self._channel.send(outgoing)
        die_at("accepted", outgoing.to)
        return sent

    def find(self, outgoing: Outgoing, since_utc: datetime) -> Sent | None:
        return self._channel.find(outgoing, since_utc)


class DyingOutbox(Outbox):
    """The outbox, with a point before and one behind a delivery."""

    __slots__ = ()

    def deliver(self, text_id: int) -> str:
        with self.ledger.reading() as book:
            text = book.outbox.get(text_id)
        assert text is not None
        die_at("fetched", text.address)
        state = Outbox.deliver(self, text_id)
        if state == "sent":
            die_at("written", text.address)
        return state


class DyingConversation:
    """The conversation, with a point before and one behind the reading."""

    def __init__(self, conversation: Conversation) -> None:
        self._conversation = conversation

    def answer(self, book: Book, text: KeptText, *more: Any, **named: Any) -> str | None:
        die_at("text kept", text.incoming.sender)
        reply = self._conversation.answer(book, text, *more, **named)
        die_at("text read", text.incoming.sender)
        return reply

    def __getattr__(self, name: str) -> Any:
        return getattr(self._conversation, name)


def parts_on(database_url: str, stub_url: str) -> Parts:
    twilio = TwilioRest(SID, TOKEN, OURS, http_client=Loopback(stub_url))
    zone = noon_zone()
    parts = build(database_url, SystemClock(), zone)
    outbox = DyingOutbox(
        parts.ledger, {SMS_DOOR: DyingChannel(twilio)}, parts.clock, zone, lease=LEASE
    )
    inbox = replace(
        parts.inbox,
        conversation=DyingConversation(parts.conversation),
        in_hand=timedelta(0),
    )
    return replace(parts, inbox=inbox, outbox=outbox, rounds=rounds(parts))


def rounds(parts: Parts) -> tuple[Round, ...]:
    """One round: it owes a text to everybody, once."""
    address = table_of(Address)

    def people() -> list[tuple[int, str]]:
        with parts.ledger._store.reading() as connection:
            found = connection.execute(address.select().order_by(address.c.id)).all()
        return [(each.person_id, each.address) for each in found]

    def plan(_since_utc: datetime, until_utc: datetime) -> Iterable[Unasked]:
        there = people()
        for person_id, to in there:
            yield Unasked(
                person_id=person_id,
                to=to,
                kind="reminder",
                key="boil_by",
                local_date=date(2027, 3, 9),
                text=f"Pailtext: boil today, {to[-4:]}.",
                due_utc=until_utc,
                useless_after_utc=until_utc + timedelta(hours=1),
            )
        for _, to in there:
            die_at("planned", to)

    class DyingRound(Round):
        __slots__ = ()

        def go(self) -> int:
            note_tick()
            new = Round.go(self)
            for _, to in people():
                die_at("owed", to)
            return new

    return (DyingRound("test", plan, parts.ledger, parts.clock),)


def note_tick() -> None:
    """A line for each round that was begun, in the file that the test named."""
    path = os.environ.get("VICTIM_TICKS")
    if path:
        with open(path, "a", encoding="ascii") as file:
            file.write(f"{os.getpid()}\n")


def main(database_url: str, stub_url: str, sender: str | None = None) -> None:
    # So that a test that waits in vain can see where it hangs.
    faulthandler.register(signal.SIGUSR1)
    told_to_stop = threading.Event()
    signal.signal(signal.SIGTERM, lambda *_: told_to_stop.set())
    parts = parts_on(database_url, stub_url)
    if sender is not None:
        # As a door does; the process dies before the answer can go out.
        sent_utc = parts.clock.now_utc()
        parts.inbox.receive(
            Incoming(SMS_DOOR, f"SM-in-{sender}", sender, "12 gal at 2.2", sent_utc, OURS)
        )
    with working(parts, database_url, RHYTHM):
        told_to_stop.wait()
    parts.ledger.close()
    leave()


if __name__ == "__main__":
    main(*sys.argv[1:])
