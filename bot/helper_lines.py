"""The owner's line of an evening: what the helpers logged that day, where the owner wishes it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from bot.clock import local_time, season_of, utc_time
from bot.conversation.household import logged_lines
from bot.ledger import Book, Hearer, Ledger
from bot.messages import Unasked
from bot.standing import know, season_tally
from bot.standing.known import zone_of
from bot.wording import household as wording
from bot.wording import standing
from bot.wording.gsm import plain
from bot.wording.style import Style, Units

# By the clock of the sugarbush. After the day's gathering, before the hours of a reminder end at
# 21:00. Our own.
AT = time(19, 30)
USELESS_AFTER = timedelta(minutes=80)


@dataclass(frozen=True, slots=True)
class HelperLines:
    """Plans the line; default_zone: of those whose place is not known."""

    ledger: Ledger
    default_zone: str

    def plan(self, since_utc: datetime, until_utc: datetime) -> Iterator[Unasked]:
        """The lines of the evenings that struck after the first moment, up to the second."""
        for hearer in self._hearers():
            with self.ledger.reading() as book:
                zone = self._zone(book, hearer)
                on = local_time(until_utc, zone).date()
                due_utc = utc_time(datetime.combine(on, AT), zone)
                if since_utc < due_utc <= until_utc:
                    yield from _line(book, hearer, on, due_utc)

    def next_utc(self, after_utc: datetime) -> datetime | None:
        """The next evening at which a line may be owed; None where nobody wishes any."""
        moments = []
        for hearer in self._hearers():
            with self.ledger.reading() as book:
                zone = self._zone(book, hearer)
            today = local_time(after_utc, zone).date()
            evenings = (datetime.combine(today + timedelta(days=days), AT) for days in (0, 1))
            due = (utc_time(evening, zone) for evening in evenings)
            moments.append(next(at_utc for at_utc in due if at_utc > after_utc))
        return min(moments, default=None)

    def _hearers(self) -> list[Hearer]:
        with self.ledger.reading() as book:
            return book.members.hearers()

    def _zone(self, book: Book, hearer: Hearer) -> str:
        return zone_of(book, hearer.sugarbush_id) or self.default_zone


def _line(book: Book, hearer: Hearer, on: date, due_utc: datetime) -> Iterator[Unasked]:
    bush, season = hearer.sugarbush_id, season_of(on)
    logged = [
        one for one in book.members.logged_on(bush, season, on) if one.person_id != hearer.person_id
    ]
    if not logged:
        return
    addresses = book.people.addresses(hearer.person_id)
    names = {mate.person_id: plain(mate.address) for mate in book.members.of(bush)}
    known = know(book, bush, datetime.combine(on, AT))
    home: Units = "metric" if known.is_in_canada else "us"
    spoken: Units = "metric" if hearer.units == "metric" else "us"
    style = Style(home if hearer.units is None else spoken, on)
    tally = season_tally(book, bush, season, known.law.min_brix)
    where = standing.season(tally, style)
    yield Unasked(
        person_id=hearer.person_id,
        to=addresses[0],
        kind="reminder",
        key="helpers",
        local_date=on,
        text=wording.helpers_today(logged_lines(logged, names, style), where),
        due_utc=due_utc,
        useless_after_utc=due_utc + USELESS_AFTER,
    )
