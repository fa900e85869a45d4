"""May we text this person, and now? Who allowed or forbade it, when, and how.

Three ways out: the word STOP, the provider's refusal to send to somebody who opted out, and its
report of the same later. START brings back, with all records kept. The last word counts, and it
is asked at the moment of sending.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from bot.clock import local_time, utc_time
from bot.ledger import Book, KeptText, Word
from bot.messages import Kind

STOP = "stop"
START = "start"

# The hours, by the receiver's clock, in which a text of each kind may come: from the first up to,
# not including, the second. A reply was just asked for. Our own; the law of the United States has
# the same evening (47 CFR 64.1200(c)(1): not before 8, not after 21). The morning alert comes at
# the hour that the person was told and may change, within these.
HOURS: dict[Kind, tuple[time, time] | None] = {
    "reply": None,
    "alert": (time(5), time(21)),
    "reminder": (time(8), time(21)),
    "notice": (time(8), time(21)),
}
UNASKED: tuple[Kind, ...] = ("alert", "reminder", "notice")
# Our own: a morning alert and four reminders. More in one local day is a fault, not a service.
MOST_UNASKED_A_DAY = 5


@dataclass(frozen=True, slots=True)
class WhyNot:
    """Why a text may not go now. until_utc: when it may, None for not at all."""

    reason: str
    until_utc: datetime | None = None


class Consent:
    """The consent log, within one transaction."""

    def __init__(self, book: Book) -> None:
        self._log = book.consents
        self._outbox = book.outbox
        self._mail = book.mail

    def may_text(self, person_id: int) -> bool:
        """True unless the person's last word was STOP."""
        return self._log.last(person_id) != STOP

    def may_send(
        self, person_id: int, kind: Kind, now_utc: datetime, zone: str, address: str = ""
    ) -> WhyNot | None:
        """None when a text of this kind may go to the person now, else why not.

        `zone` is the receiver's, `address` the one that it goes to. In this order: STOP, an
        address that wants nothing unasked, the hours of the kind, the daily cap.
        """
        if not self.may_text(person_id):
            return WhyNot("they said stop")
        if kind in UNASKED and self._mail.is_muted(address):
            return WhyNot("they unsubscribed that address")
        opens_utc = next_open(kind, now_utc, zone)
        if opens_utc > now_utc:
            return WhyNot("not at this hour", opens_utc)
        if kind in UNASKED:
            since_utc, until_utc = _day(local_time(now_utc, zone).date(), zone)
            if self._outbox.gone_out(person_id, UNASKED, since_utc, until_utc) >= (
                MOST_UNASKED_A_DAY
            ):
                return WhyNot("enough for one day", next_open(kind, until_utc, zone))
        return None

    def met(self, person_id: int, text: KeptText) -> None:
        """The person texted us first, and was told what that brings and how to stop it."""
        how = f"{text.incoming.door}: first text"
        self._say(person_id, START, how, text.incoming.sender, text.id, text.incoming.arrived_utc)

    def stop(self, person_id: int, text: KeptText) -> None:
        """The person's text says that nothing more may be sent."""
        self._said(person_id, STOP, text)

    def start(self, person_id: int, text: KeptText) -> None:
        """The person's text says that texts are welcome again, also where it came from."""
        self._mail.mute(text.incoming.sender, None)
        self._said(person_id, START, text)

    def opted_out(
        self, person_id: int, address: str, how: str, as_of_utc: datetime, now_utc: datetime
    ) -> bool:
        """The provider says that the person has opted out. Gives whether that is news.

        as_of_utc: when the text was sent that it says this of. Somebody who has said START since
        is back, however late the news comes.
        """
        last_utc = self._log.last_at(person_id)
        if not self.may_text(person_id) or (last_utc is not None and last_utc > as_of_utc):
            return False
        self._say(person_id, STOP, how, address, None, now_utc)
        return True

    def _said(self, person_id: int, said: str, text: KeptText) -> None:
        incoming = text.incoming
        how = f"{incoming.door}: {incoming.opt_out or incoming.text.strip()[:40]}"
        self._say(person_id, said, how, incoming.sender, text.id, incoming.arrived_utc)

    def _say(
        self,
        person_id: int,
        said: str,
        how: str,
        address: str,
        text_id: int | None,
        at_utc: datetime,
    ) -> None:
        self._log.log(person_id, Word(said, how, address, text_id, at_utc))


def next_open(kind: Kind, now_utc: datetime, zone: str) -> datetime:
    """The first moment from `now_utc` on, aware UTC, at which a text of this kind may come."""
    hours = HOURS[kind]
    if hours is None:
        return now_utc
    opens, closes = hours
    local = local_time(now_utc, zone)
    if opens <= local.time() < closes:
        return now_utc
    day = local.date() if local.time() < opens else local.date() + timedelta(days=1)
    return utc_time(datetime.combine(day, opens), zone)


def _day(on: date, zone: str) -> tuple[datetime, datetime]:
    """The first moments of a local day and of the next, aware UTC: 23 to 25 hours apart."""
    midnights = (datetime.combine(day, time()) for day in (on, on + timedelta(days=1)))
    since_utc, until_utc = (utc_time(midnight, zone) for midnight in midnights)
    return since_utc, until_utc
