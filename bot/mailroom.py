"""Every mail that comes in: who sent it, and whether it may do anything.

A From line proves nothing. A mail counts like a text only if it is proved to come from its
address (`channels.email_proof`) and that address is linked to somebody, or is asked in and says
join. Anything else gets no data and changes nothing; it is answered once a day, the same words
whoever it may be. What a program wrote is never answered (RFC 3834).
"""

from __future__ import annotations

import hmac
import logging
import re
from dataclasses import dataclass
from datetime import datetime, timedelta

from bot.channels.channel import Channel, SendError
from bot.channels.email_letter import Letter, read_letter
from bot.channels.email_proof import Proof
from bot.clock import Clock
from bot.conversation.household import MAILED_LENGTH, MAILED_LETTERS, MOST_WRONG
from bot.inbox import Inbox
from bot.ledger import Book, Code, Ledger, Thread
from bot.messages import EMAIL_DOOR, Incoming, Outgoing
from bot.outbox import Outbox
from bot.reading import read
from bot.reading.kinds import Join
from bot.wording import household as wording

log = logging.getLogger(__name__)

STRANGERS_DAY = timedelta(days=1)
# However many addresses are forged in a day, no more of them get an answer that they did not ask
# for. Our own.
MOST_STRANGERS_ANSWERED = 100
# Two programs that answer each other, both without saying so, are left alone after so many mails
# of one address in an hour: they are kept and read, not answered. Our own.
MOST_AN_HOUR = 30
# Whoever joins says nothing that depends on the time.
_ANY_TIME = datetime(2000, 3, 1)  # noqa: DTZ001  (a wall clock has no zone)
_HALF = MAILED_LENGTH // 2
_CODE = re.compile(
    rf"\b([{MAILED_LETTERS}]{{{_HALF}}})[ -]?([{MAILED_LETTERS}]{{{_HALF}}})\b", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Mailroom:
    """Takes mails. Safe in threads and in several processes.

    own_address: that of Pailtext. proof: tells whether a mail comes from its address. post: sends
    what goes to those who are nobody in the ledger.
    """

    ledger: Ledger
    inbox: Inbox
    outbox: Outbox
    post: Channel
    proof: Proof
    clock: Clock
    own_address: str

    def take(self, raw: bytes, is_whole: bool, arrived_utc: datetime) -> None:
        """Take a mail; when this returns, it is safe in the store or done with.

        1. Our own, a program's, or from nobody in particular: nothing.
        2. Proved, and linked or asked in: kept, read and answered like a text.
        3. Proved, with a code that was texted: its address is linked.
        4. Anything else: the one neutral answer of the day.

        is_whole: False where only the headers were fetched, since the mail is too large.
        """
        letter = read_letter(raw, self.own_address)
        if letter.is_own:
            return
        if letter.automatic is not None or not letter.sender:
            log.info("A mail is not answered: %s", letter.automatic or "it is from nobody")
            return
        if not self.proof(raw, letter.sender):
            self._answer_stranger(letter)
        elif self._is_welcome(letter):
            self._take_text(letter, is_whole, arrived_utc)
        elif not self._took_code(letter):
            self._answer_stranger(letter)

    def _is_welcome(self, letter: Letter) -> bool:
        with self.ledger.reading() as book:
            if book.people.find(letter.sender) is not None:
                return True
            is_invited = book.people.invitation(letter.sender) is not None
        return is_invited and _says_join(letter.words)

    def _take_text(self, letter: Letter, is_whole: bool, arrived_utc: datetime) -> None:
        now_utc = self.clock.now_utc()
        incoming = Incoming(
            door=EMAIL_DOOR,
            # One sender's id says nothing of another's mail.
            provider_id=f"{letter.sender} {letter.message_id}",
            sender=letter.sender,
            text=letter.words,
            arrived_utc=min(arrived_utc, now_utc),
            to=self.own_address,
            media=letter.attachments if is_whole else 1,
        )
        kept = self.ledger.keep(incoming)
        with self.ledger.writing() as book:
            if book.mail.thread(kept.id) is None:
                subject, message_ids = letter.subject, letter.references
                book.mail.keep(Thread(kept.id, letter.message_id, subject, message_ids))
            recent = book.mail.came_since(letter.sender, now_utc - timedelta(hours=1))
        if recent > MOST_AN_HOUR:
            log.warning("An address mails too often to be answered")
        self.inbox.take(incoming, is_answered=recent <= MOST_AN_HOUR)
        if not kept.is_read:
            self._send_reply(kept.id, incoming)

    def _send_reply(self, text_id: int, incoming: Incoming) -> None:
        """At once, where the worker's next round would do it too."""
        with self.ledger.reading() as book:
            who = book.people.find(incoming.sender)
            persons = [] if who is None else [who.person_id]
            owed = book.mail.owed_ids(persons, f"reply:{text_id}", incoming.sender)
            kept = book.inbox.find(incoming.door, incoming.provider_id)
        for each in owed:
            self.outbox.deliver(each)
        if who is None and kept is not None and kept.reply is not None:
            # The outbox owes nothing to whom we were asked to forget.
            self._post(incoming.sender, kept.reply)

    def _took_code(self, letter: Letter) -> bool:
        """Link the address where the mail holds a code that was texted; whether it did."""
        found = _CODE.search(letter.words)
        if found is None:
            return False
        given = (found[1] + found[2]).upper()
        now_utc = self.clock.now_utc()
        with self.ledger.writing() as book:
            day = book.mail.stranger(letter.sender, now_utc - STRANGERS_DAY, now_utc)
            if day.tries >= MOST_WRONG:
                return False
            code = _matching(book.mail.codes_to_mail(now_utc), given)
            if code is None:
                book.mail.note_stranger(letter.sender, day.tries + 1, day.is_answered)
                return False
            _link(book, code, letter.sender, now_utc)
        self._post(letter.sender, wording.LINKED_BY_MAIL)
        return True

    def _answer_stranger(self, letter: Letter) -> None:
        now_utc = self.clock.now_utc()
        with self.ledger.writing() as book:
            day = book.mail.stranger(letter.sender, now_utc - STRANGERS_DAY, now_utc)
            if day.is_answered or book.mail.strangers_answered() >= MOST_STRANGERS_ANSWERED:
                return
            # Written before it is sent: rather no answer than two.
            book.mail.note_stranger(letter.sender, day.tries, is_answered=True)
        self._post(letter.sender, wording.NEUTRAL)

    def _post(self, to: str, words: str) -> None:
        try:
            self.post.send(Outgoing(to, words))
        except SendError as error:
            log.warning("An answer to nobody in the ledger was not sent: %s", error)


def _says_join(words: str) -> bool:
    understood = read(words, _ANY_TIME)
    return any(isinstance(reading, Join) for reading in understood.readings)


def _matching(codes: list[Code], given: str) -> Code | None:
    """The code that was given. All are compared, so that the time taken tells nothing."""
    found = None
    for code in codes:
        if hmac.compare_digest(code.code, given):
            found = code
    return found


def _link(book: Book, code: Code, address: str, now_utc: datetime) -> None:
    book.mail.drop_code(code.person_id)
    book.mail.link(code.person_id, address, now_utc)
