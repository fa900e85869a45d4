"""A question with all that an answer may need."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime

from bot.clock import season_of
from bot.entry import Entry
from bot.ledger import Book
from bot.standing import Known, part_of_season, season_tally
from bot.tally import Tally
from bot.wording.style import Style


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked, by whom and when.

    topic, howto: as the reading tells. text: the words, for what the topic leaves open (which
    lot, which week). sent: the naive wall clock of the sugarbush. tally: this season's.
    told: what the same text recorded.
    """

    topic: str
    howto: str | None
    text: str
    book: Book
    sugarbush_id: int
    sent: datetime
    known: Known
    tally: Tally
    style: Style
    told: tuple[Entry, ...] = ()

    @property
    def today(self) -> date:
        """The local day of the question."""
        return self.sent.date()

    @property
    def season(self) -> int:
        """The season of the question."""
        return season_of(self.today)

    def tally_of(self, season: int) -> Tally:
        """A whole season in numbers."""
        if season == self.tally.season:
            return self.tally
        return season_tally(self.book, self.sugarbush_id, season, self.tally.syrup_brix)

    def part(self, season: int, first: date | None, last: date | None) -> Tally:
        """Some days of a season in numbers, both included."""
        return part_of_season(
            self.book, self.sugarbush_id, season, self.tally.syrup_brix, first=first, last=last
        )

    def says(self, *words: str) -> bool:
        """True when the question has one of these words in it."""
        spoken = set("".join(c if c.isalnum() else " " for c in self.text.casefold()).split())
        return any(word in spoken for word in words)
