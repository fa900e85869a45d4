"""A mailroom to test with: people who text and mail, a post that keeps what is sent."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from itertools import count
from typing import Any

from bot import wiring
from bot.channels.channel import Sent
from bot.channels.email_proof import proof
from bot.channels.email_smtp import Cover
from bot.clock import HandClock
from bot.conversation.reach import Reach
from bot.conversation.talk import Conversation
from bot.covers import Covers
from bot.inbox import Inbox
from bot.ledger import IN_MEMORY, Ledger
from bot.links import Links, links_on
from bot.mailroom import Mailroom
from bot.messages import EMAIL_DOOR, SMS_DOOR, Incoming, Outgoing
from bot.outbox import Outbox
from tests.mail.letters import ANN, OWN, letter, resolver, signed

PHONE, OTHER_PHONE = "+15550100011", "+15550100012"
PUBLIC_URL = "https://sap.example"
# A Friday, 18:00 in New York.
NOW_UTC = datetime(2027, 3, 5, 23, tzinfo=UTC)


@dataclass
class Post:
    """A channel that keeps what is sent, with the cover that a mail would have."""

    covers: Covers | None = None
    sent: list[tuple[Outgoing, Cover]] = field(default_factory=list)

    def send(self, outgoing: Outgoing) -> Sent:
        cover = Cover() if self.covers is None else self.covers(outgoing)
        self.sent.append((outgoing, cover))
        return Sent(f"<{len(self.sent)}@pail.example>")

    def find(self, _outgoing: Outgoing, _since_utc: datetime) -> Sent | None:
        return None

    def texts(self, to: str) -> list[str]:
        return [outgoing.text for outgoing, _ in self.sent if outgoing.to == to]


class House:
    """Pailtext with mail, on a store of its own."""

    def __init__(self, url: str = IN_MEMORY) -> None:
        self.clock = HandClock(NOW_UTC)
        self.ledger = Ledger.open(url)
        self.links: Links = links_on(self.ledger, PUBLIC_URL)
        self.mails, self.phones = Post(Covers(self.ledger, self.links)), Post()
        built = wiring.build(IN_MEMORY, self.clock)
        senses = built.conversation._senses
        built.ledger.close()
        reach = Reach(OWN, self.links.export_url)
        conversation = Conversation(senses, wiring.DEFAULT_ZONE, None, reach)
        self.inbox = Inbox(self.ledger, conversation, self.clock)
        ways = {EMAIL_DOOR: self.mails, SMS_DOOR: self.phones}
        self.outbox = Outbox(self.ledger, ways, self.clock, wiring.DEFAULT_ZONE)
        self.mailroom = Mailroom(
            ledger=self.ledger,
            inbox=self.inbox,
            outbox=self.outbox,
            post=self.mails,
            proof=proof(None, resolver),
            clock=self.clock,
            own_address=OWN,
        )
        self._numbers = count(1)

    def close(self) -> None:
        self.ledger.close()

    def text(self, words: str, sender: str = PHONE) -> str:
        """Somebody texts; the reply."""
        self.clock.advance(timedelta(minutes=1))
        number = str(next(self._numbers))
        incoming = Incoming(SMS_DOOR, number, sender, words, self.clock.now_utc(), "+15550100099")
        reply = self.inbox.receive(incoming) or ""
        self.outbox.deliver_due()
        return reply

    def mail(self, words: str, sender: str = ANN, *, is_signed: bool = True, **more: Any) -> str:
        """Somebody mails; what goes to their address in answer, "" for nothing."""
        number = next(self._numbers)
        raw = letter(words + "\n", sender, number, **more).as_bytes()
        return self.deliver(signed(raw) if is_signed else raw, sender)

    def deliver(self, raw: bytes, sender: str = ANN) -> str:
        self.clock.advance(timedelta(minutes=1))
        before = len(self.mails.texts(sender))
        self.mailroom.take(raw, True, self.clock.now_utc())
        return "\n".join(self.mails.texts(sender)[before:])

    def link(self, address: str = ANN, phone: str = PHONE) -> str:
        """Link an address by a code that is mailed and texted back; the last reply."""
        self.text(f"link {address}", phone)
        return self.text(self.code(address), phone)

    def code(self, address: str = ANN) -> str:
        """The code that was mailed last."""
        found = re.search(r"\d{6}", self.mails.texts(address)[-1])
        assert found is not None
        return found[0]

    def sap(self, address: str = PHONE) -> float:
        """The season's sap of somebody's sugarbush."""
        with self.ledger.reading() as book:
            who = book.people.find(address)
            if who is None:
                return 0.0
            return sum(
                line.entry.gallons or 0.0
                for line in book.own_data.of(who.sugarbush_id)
                if line.entry.kind == "sap"
            )
