"""The outbox: every text that leaves without being a door's own answer.

To owe a text, in the transaction of its cause, so that both are kept or neither:

    with ledger.writing() as book:
        ...
        owe(book, [Unasked(person_id=..., to=..., kind="reminder", key="boil_by", ...)], now_utc)

The same (person, key, local date) again is passed over, so that whoever plans may plan anew at
any time. The row is the truth; what carries it (`jobs`) may lose or repeat what it likes:
`Outbox.due` finds the row again and `Outbox.deliver` sends it once.
"""

from __future__ import annotations

import logging
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import cast

from bot.channels.channel import (
    Channel,
    NeverError,
    OptedOutError,
    Report,
    SendError,
    Sent,
    TryLaterError,
    UnclearError,
    is_further,
)
from bot.clock import Clock, local_time
from bot.consent import Consent, next_open
from bot.ledger import Book, Due, KeptText, Ledger, NewText, OwedText
from bot.ledger.outbox import DROPPED, FAILED, OWED, SENT, TRYING, UNCLEAR
from bot.messages import EMAIL_DOOR, Kind, Outgoing, Unasked, door_of
from bot.standing.known import zone_of
from bot.wording.gsm import segments

log = logging.getLogger(__name__)

# How long a claim holds: longer than any call to a provider takes, and long enough for what the
# provider took to show up in its list.
LEASE = timedelta(minutes=2)
# The pauses after failed tries; the last one repeats.
PAUSES = tuple(timedelta(minutes=minutes) for minutes in (1, 2, 5, 10, 20, 30))
# A text for a door that has no channel here waits for one.
NO_CHANNEL_PAUSE = timedelta(minutes=5)
# So long after a text its late reply wakes nobody. Our own.
STILL_AWAKE = timedelta(hours=1)
# A reply says what was written down, which is worth knowing as long as this. Our own.
LATE_REPLY_FOR = timedelta(days=2)
# Looked at in one round. What is left over is there in the next.
MOST_AT_ONCE = 5000


def owe(book: Book, texts: Iterable[Unasked], now_utc: datetime) -> int:
    """Owe some texts from this transaction on. Gives how many were not owed before.

    Raises ValueError when one would be useless before it is due.
    """
    return book.outbox.owe([_unasked(text) for text in _routed(book, list(texts))], now_utc)


def _routed(book: Book, texts: list[Unasked]) -> Iterable[Unasked]:
    """The texts on the ways that their persons wish: by text, by mail, or by both. The second way
    is owed under a key of its own. Who has no address of that sort gets them as planned."""
    routes = book.mail.routes({text.person_id for text in texts}) if texts else {}
    for text in texts:
        way, addresses = routes.get(text.person_id, ("", []))
        first: dict[bool, str] = {}
        for address in addresses:
            first.setdefault(door_of(address) == EMAIL_DOOR, address)
        wanted = {"text": [False], "mail": [True], "both": [False, True]}.get(way, [])
        to = [first[by_mail] for by_mail in wanted if by_mail in first] or [text.to]
        yield replace(text, to=to[0])
        for another in to[1:]:
            yield replace(text, to=another, key=f"{text.key}:mail")


def _unasked(text: Unasked) -> NewText:
    if text.useless_after_utc <= text.due_utc:
        raise ValueError(
            f"{text.key} is useless after {text.useless_after_utc.isoformat()}, wanted after it"
            f" is due, {text.due_utc.isoformat()}"
        )
    return NewText(
        person_id=text.person_id,
        door=door_of(text.to),
        address=text.to,
        kind=text.kind,
        key=text.key,
        local_date=text.local_date,
        body=text.text,
        segments=segments(text.text),
        due_utc=text.due_utc,
        useless_after_utc=text.useless_after_utc,
    )


def owe_reply(book: Book, text: KeptText, reply: str, now_utc: datetime, default_zone: str) -> None:
    """Owe the reply to a text that its door could not answer any more, once.

    It goes at once while the one who asked is surely awake; else in the hours of a reminder.
    """
    incoming = text.incoming
    who = book.people.find(incoming.sender)
    if who is None:
        return
    zone = zone_of(book, who.sugarbush_id) or default_zone
    arrived_utc = incoming.arrived_utc
    is_awake = now_utc - arrived_utc < STILL_AWAKE
    due_utc = now_utc if is_awake else next_open("reminder", now_utc, zone)
    book.outbox.owe(
        [
            NewText(
                person_id=who.person_id,
                door=incoming.door,
                address=incoming.sender,
                sent_from=incoming.to,
                kind="reply",
                key=f"reply:{text.id}",
                local_date=local_time(arrived_utc, zone).date(),
                body=reply,
                segments=segments(reply),
                due_utc=due_utc,
                useless_after_utc=max(arrived_utc, now_utc) + LATE_REPLY_FOR,
            )
        ],
        now_utc,
    )


@dataclass(frozen=True, slots=True)
class Outbox:
    """Sends what is owed. Safe in threads and in several processes.

    channels: by the name of their door. default_zone: the time zone of people whose place is not
    known. lease: how long a claim holds.
    """

    ledger: Ledger
    channels: Mapping[str, Channel]
    clock: Clock
    default_zone: str
    lease: timedelta = LEASE

    def due(self) -> list[Due]:
        """The texts to look at now: due, paused long enough, or claimed by somebody who never
        came back."""
        with self.ledger.reading() as book:
            return book.outbox.due(self.clock.now_utc(), MOST_AT_ONCE)

    def deliver_due(self) -> int:
        """Deliver all that is due, one after the other, without an engine. Gives how many."""
        due = self.due()
        for each in due:
            self.deliver(each.id)
        return len(due)

    def deliver(self, text_id: int) -> str:
        """Send one text, if it is due and may go. Gives the state it is in afterwards.

        1. Look at it, with nobody else at it. Settled, or not its time yet: nothing is done.
        2. If somebody began to send it and nobody knows the end, look for it at the provider.
        3. Useless by now, or forbidden: dropped. Not at this hour: put off.
        4. Claim it, and commit that before the provider is called.
        5. Send it, then write what became of it.

        Whoever dies between 4 and 5 leaves a claim that runs out; then it begins again at 2.
        """
        claimed = self._claim(text_id)
        if isinstance(claimed, str):
            return claimed
        if claimed.state == UNCLEAR:
            looked = self._look_for(claimed)
            if isinstance(looked, str):
                return looked
            claimed = looked
        return self._send(claimed)

    # --- step by step ----------------------------------------------------------------------

    def _claim(self, text_id: int) -> OwedText | str:
        """The text, claimed: TRYING to be sent, UNCLEAR to be looked for. Else its state."""
        now_utc = self.clock.now_utc()
        with self.ledger.writing() as book:
            text = book.outbox.lock(text_id)
            if text is None:
                return DROPPED
            if not text.is_open or text.look_utc > now_utc:
                return text.state
            if text.state == OWED:
                return self._claim_to_send(book, text, now_utc)
            # The moment of the try that is in doubt is kept: it is looked for from there on.
            book.outbox.change(
                text_id, state=UNCLEAR, tries=text.tries + 1, look_utc=now_utc + self.lease
            )
            found = book.outbox.get(text_id)
            assert found is not None
            return found

    def _claim_to_send(self, book: Book, text: OwedText, now_utc: datetime) -> OwedText | str:
        change = book.outbox.change
        if now_utc >= text.useless_after_utc:
            return _settled(book, text, DROPPED, text.reason or "useless by now")
        # The person is locked, so that two texts to one cannot both be the last of the day.
        who = book.people.lock(text.person_id)
        if who is None:
            return _settled(book, text, DROPPED, "nobody is there")
        zone = zone_of(book, who.sugarbush_id) or self.default_zone
        kind = cast(Kind, text.kind)
        why_not = Consent(book).may_send(text.person_id, kind, now_utc, zone, text.address)
        if why_not is not None:
            until_utc = why_not.until_utc
            if until_utc is None or until_utc >= text.useless_after_utc:
                return _settled(book, text, DROPPED, why_not.reason)
            change(text.id, state=OWED, reason=why_not.reason, look_utc=until_utc)
            return OWED
        if text.door not in self.channels:
            log.warning("Nothing here sends texts by %s", text.door)
            reason = f"nothing here sends by {text.door}"
            look_utc = min(now_utc + NO_CHANNEL_PAUSE, text.useless_after_utc)
            change(text.id, state=OWED, reason=reason, look_utc=look_utc)
            return OWED
        change(
            text.id,
            state=TRYING,
            tries=text.tries + 1,
            trying_since_utc=now_utc,
            look_utc=now_utc + self.lease,
        )
        found = book.outbox.get(text.id)
        assert found is not None
        return found

    def _look_for(self, text: OwedText) -> OwedText | str:
        """Look at the provider for a text that may have gone. Not there: claimed to be sent."""
        since_utc = text.trying_since_utc or text.made_utc
        try:
            found = self.channels[text.door].find(self._outgoing(text), since_utc)
        except SendError as error:
            return self._put_off(text, UNCLEAR, error)
        if found is not None:
            log.info("Text %d had gone out after all", text.id)
            return self._sent(text, found)
        with self.ledger.writing() as book:
            locked = book.outbox.lock(text.id)
            if locked is None or not _is_ours(locked, text):
                return DROPPED if locked is None else locked.state
            return self._claim_to_send(book, locked, self.clock.now_utc())

    def _send(self, text: OwedText) -> str:
        try:
            sent = self.channels[text.door].send(self._outgoing(text))
        except OptedOutError as error:
            return self._opted_out(text, error)
        except NeverError as error:
            return self._close(text, FAILED, str(error))
        except UnclearError as error:
            return self._put_off(text, UNCLEAR, error)
        except SendError as error:
            return self._put_off(text, OWED, error)
        return self._sent(text, sent)

    def _outgoing(self, text: OwedText) -> Outgoing:
        return Outgoing(
            to=text.address,
            text=text.body,
            kind=cast(Kind, text.kind),
            sent_from=text.sent_from,
            text_id=text.id,
            valid_for=text.useless_after_utc - self.clock.now_utc(),
        )

    # --- what became of it -----------------------------------------------------------------

    def _sent(self, text: OwedText, sent: Sent) -> str:
        now_utc = self.clock.now_utc()
        with self.ledger.writing() as book:
            locked = book.outbox.lock(text.id)
            if locked is None:
                return DROPPED
            if not _is_ours(locked, text):
                # A report was quicker than the answer, or a claim ran out while the provider
                # took its time: what stands is left, but the id is worth having.
                if locked.provider_id is None:
                    book.outbox.change(text.id, provider_id=sent.provider_id)
                return locked.state
            book.outbox.change(
                text.id,
                state=SENT,
                reason=None,
                provider_id=sent.provider_id,
                status=sent.status,
                sent_utc=text.trying_since_utc or now_utc,
            )
            return SENT

    def _opted_out(self, text: OwedText, error: OptedOutError) -> str:
        now_utc = self.clock.now_utc()
        with self.ledger.writing() as book:
            since_utc = text.trying_since_utc or now_utc
            how = f"{text.door}: {error}"
            # An invitation is the inviter's text to an address that is not theirs.
            if text.address in book.people.addresses(text.person_id):
                Consent(book).opted_out(text.person_id, text.address, how, since_utc, now_utc)
            locked = book.outbox.lock(text.id)
            if locked is None or not _is_ours(locked, text):
                return DROPPED if locked is None else locked.state
            return _settled(book, locked, FAILED, str(error))

    def _close(self, text: OwedText, state: str, reason: str) -> str:
        log.warning("Text %d: %s, %s", text.id, state, reason)
        with self.ledger.writing() as book:
            locked = book.outbox.lock(text.id)
            if locked is None or not _is_ours(locked, text):
                return DROPPED if locked is None else locked.state
            return _settled(book, locked, state, reason)

    def _put_off(self, text: OwedText, state: str, error: SendError) -> str:
        """Try later, or look for it later; no later than it is useless, to be dropped then."""
        now_utc = self.clock.now_utc()
        if now_utc >= text.useless_after_utc:
            return self._close(text, DROPPED, f"useless by now, and {state}: {error}")
        log.warning("Text %d: %s, %s", text.id, state, error)
        pause = max(self.lease, _pause(text.tries)) if state == UNCLEAR else _pause(text.tries)
        look_utc = min(now_utc + pause, text.useless_after_utc)
        with self.ledger.writing() as book:
            locked = book.outbox.lock(text.id)
            if locked is None or not _is_ours(locked, text):
                return DROPPED if locked is None else locked.state
            book.outbox.change(text.id, state=state, reason=str(error), look_utc=look_utc)
            return state

    # --- what the provider reports later ---------------------------------------------------

    def report(self, report: Report) -> None:
        """Note what a provider reports on a text; never backwards, whatever order they come in.

        1. Whose text is it? By the provider's id, or by our own number where its answer never
           came to be written: then the report is the answer. Unknown ones only tell of opt-outs.
        2. It opted out: kept in the consent log, whatever else.
        3. It did not arrive: sent again later if that may help and it is still of use.
        """
        now_utc = self.clock.now_utc()
        with self.ledger.writing() as book:
            text = self._reported(book, report)
            if isinstance(report.error, OptedOutError):
                self._log_opt_out(book, report, text, now_utc)
            if text is None or not is_further(report.status, text.status):
                return
            values: dict[str, object] = {
                "status": report.status,
                "provider_id": report.provider_id,
                "state": SENT,
                "reason": None,
                "sent_utc": text.sent_utc or text.trying_since_utc or now_utc,
            }
            if report.status == "undelivered":
                values["reason"] = "" if report.error is None else str(report.error)
                look_utc = now_utc + _pause(text.tries)
                if isinstance(report.error, TryLaterError) and look_utc < text.useless_after_utc:
                    # The provider will not try this one again: it makes way for another.
                    values |= {"state": OWED, "look_utc": look_utc, "sent_utc": None}
                    values |= {"status": None, "provider_id": None}
                else:
                    values["state"] = FAILED
            book.outbox.change(text.id, **values)

    def _reported(self, book: Book, report: Report) -> OwedText | None:
        found = book.outbox.lock_by_provider_id(report.provider_id)
        if found is not None or report.text_id is None:
            return found
        text = book.outbox.lock(report.text_id)
        # Only a text that was tried and has no answer yet can be the one; a signed report of an
        # earlier store or of an earlier try is not for it.
        awaits = text is not None and text.state in (TRYING, UNCLEAR)
        return text if awaits and text is not None and text.address == report.address else None

    def _log_opt_out(
        self, book: Book, report: Report, text: OwedText | None, now_utc: datetime
    ) -> None:
        how = f"{door_of(report.address)}: {report.error}"
        if text is not None:
            as_of_utc = text.sent_utc or text.trying_since_utc or now_utc
            Consent(book).opted_out(text.person_id, text.address, how, as_of_utc, now_utc)
            return
        who = book.people.find(report.address)
        if who is not None:
            Consent(book).opted_out(who.person_id, report.address, how, now_utc, now_utc)


def _is_ours(now: OwedText, claimed: OwedText) -> bool:
    """True while nobody has claimed or settled it since."""
    return now.is_open and now.tries == claimed.tries


def _settled(book: Book, text: OwedText, state: str, reason: str) -> str:
    book.outbox.change(text.id, state=state, reason=reason)
    return state


def _pause(tries: int) -> timedelta:
    return PAUSES[min(max(tries, 1), len(PAUSES)) - 1]
