"""One text being answered: what is known, what is written, and what is to be said."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta
from functools import cached_property, partial
from typing import Protocol

from bot.clock import local_time, season_of
from bot.conversation.pending import Question, Rest, WhereAsked, from_json, to_json
from bot.conversation.reach import Reach
from bot.conversation.words import lots_named, trees_named
from bot.entry import Entry
from bot.ledger import OWNER, Asked, Book, Kept, KeptText, KindSum, Who, Writer, with_entry
from bot.messages import EMAIL_DOOR
from bot.outdoors import Looked, NoWeather, Outdoors, Skies, weather_for
from bot.reading import Doubt, Profile, Understanding
from bot.reading.kinds import Gear
from bot.reckoning.storage import Stored
from bot.standing import Boil, Known, season_boils, season_tally, stored_sap
from bot.standing.gear import gear_of
from bot.standing.known import Told, told_of
from bot.standing.memory import Memories, Memory, What
from bot.tally import Tally
from bot.wording.compose import Part
from bot.wording.style import Style, Units


class FoundPlace(Protocol):
    """A place on the map: its name, the codes of its region and country, its zone; no point
    where only the province is known."""

    @property
    def name(self) -> str: ...
    @property
    def region(self) -> str | None: ...
    @property
    def country(self) -> str: ...
    @property
    def zone(self) -> str: ...
    @property
    def latitude(self) -> float | None: ...
    @property
    def longitude(self) -> float | None: ...


Read = Callable[[str, datetime, Profile], Understanding]
Settle = Callable[[Doubt, str], str | None]
FindPlace = Callable[[str], FoundPlace | None]
LikelyPlaces = Callable[[str], Sequence[FoundPlace]]


@dataclass(frozen=True, slots=True)
class Senses:
    """How a text is understood: reading it, settling a doubt, finding the one place on the map
    that it names, and those that it may mean."""

    read: Read
    settle: Settle
    find_place: FindPlace
    likely_places: LikelyPlaces


@dataclass
class Reply:
    """What is to be said, in the order it is said in; `tables` go below it all in a mail."""

    receipts: list[str] = field(default_factory=list)
    notes: list[Part] = field(default_factory=list)
    answers: list[str] = field(default_factory=list)
    question: str | None = None
    closing: list[Part] = field(default_factory=list)
    tables: list[str] = field(default_factory=list)

    def parts(self) -> list[Part]:
        """All of it, as parts that can be left out."""
        asked = [] if self.question is None else [Part(self.question)]
        return [
            *(Part(receipt) for receipt in self.receipts),
            *self.notes,
            *(Part(answer) for answer in self.answers),
            *asked,
            *self.closing,
        ]

    @property
    def is_plain(self) -> bool:
        """True for receipts alone, which have to fit one segment."""
        return not self.answers and self.question is None


class Turn:
    """A text of a person, within one transaction of the ledger.

    zone: of the sugarbush; sent: its wall clock when the text arrived (naive). words: the text
    that is read, which is the completed one when a doubt was settled (`is_settled`).
    recorded, changed, undone: the entries written anew, put right, and taken back. topics:
    those that were answered. is_silent: nothing may be sent. is_carrier_word: STOP, START or
    HELP. drops_question: an undo would only drop the open question. is_forgotten: the sender is no
    more in the ledger.
    """

    def __init__(
        self,
        book: Book,
        who: Who,
        text: KeptText,
        senses: Senses,
        zone: str,
        *,
        is_new: bool,
        told: Told,
        skies: Skies | None = None,
        looked: Looked | None = None,
        reach: Reach | None = None,
        memories: Memories | None = None,
    ) -> None:
        self.book = book
        self.who = who
        self.text = text
        self.senses = senses
        self.zone = zone
        self.sent = local_time(text.incoming.arrived_utc, zone)
        self.is_new = is_new
        self.told = told
        self.skies = skies
        self._looked = looked
        self.reach = reach or Reach()
        self._memories = memories or Memories()
        self.words = text.incoming.text
        self.reply = Reply()
        self.recorded: list[Entry] = []
        self.changed: list[Entry] = []
        self.undone: list[Entry] = []
        self.is_silent = False
        self.is_carrier_word = False
        self.is_settled = False
        self.drops_question = False
        self.is_forgotten = False
        self.asked: Question | None = None
        self.hints: dict[str, str] = {}
        self.topics: set[str] = set()
        self.rest: tuple[str, ...] = ()
        self.about = ""
        self._sums: tuple[KindSum, ...] | None = None

    # --- what is known ---------------------------------------------------------------------

    @cached_property
    def told(self) -> Told:
        """What the ledger was told of the sugarbush, as of the last record."""
        return told_of(self.book, self.who.sugarbush_id, self.season)

    @cached_property
    def known(self) -> Known:
        """The same, held against the clock."""
        return self.told.at(self.sent)

    @cached_property
    def tally(self) -> Tally:
        """The season of this text in numbers, as of the last record."""
        sums = self._season_sums()
        return season_tally(self.book, self.who.sugarbush_id, self.season, self.syrup_brix, sums)

    def _season_sums(self) -> tuple[KindSum, ...]:
        """What the season adds up to, as of the last record."""
        if self._sums is None:
            self._sums = self._remembered(
                self._memories.sums,
                self.season,
                lambda: tuple(self.book.sums.season(self.who.sugarbush_id, self.season)),
            )
        return self._sums

    def weather(self) -> Outdoors | NoWeather:
        """The weather over the sugarbush, or why none is known. Raises WeatherWantedError where
        it has to be looked up first."""
        place = self.known.place
        zone = (None if place is None else place.detail.get("zone")) or self.zone
        return weather_for(self.skies, place, zone, self.now_utc, self._looked)

    @property
    def season(self) -> int:
        """The season in which the text was sent."""
        return season_of(self.sent.date())

    @property
    def today(self) -> date:
        """The local day on which the text was sent."""
        return self.sent.date()

    @property
    def now_utc(self) -> datetime:
        """When the text arrived, aware UTC."""
        return self.text.incoming.arrived_utc

    @property
    def syrup_brix(self) -> float:
        """The density at which syrup is expected: the least that the law allows here."""
        return self.known.law.min_brix

    @property
    def style(self) -> Style:
        """In which units to speak, and what day it is for the reader."""
        home: Units = "metric" if self.known.is_in_canada else "us"
        return Style(self.who.units or home, self.today)

    @property
    def profile(self) -> Profile:
        """What helps to read their texts."""
        known = self.known
        return Profile(
            units=self.style.units,
            bucket_gallons=known.bucket_gallons,
            taps=None if known.taps is None else known.taps.count or None,
            tree_labels=known.trees,
            lots=known.lots,
            boiling=known.boil is not None,
        )

    @property
    def is_mail(self) -> bool:
        """True when the text came by mail, and so will its answer."""
        return self.text.incoming.door == EMAIL_DOOR

    @property
    def is_owner(self) -> bool:
        """True when the sugarbush is theirs."""
        return self.who.role == OWNER

    def gear(self) -> Gear:
        """Their gear as last told."""
        return gear_of(self.book, self.who.sugarbush_id, self.sent)

    def ago(self, text_id: int) -> timedelta:
        """How long before this text another came."""
        return self.now_utc - self.book.inbox.times([text_id])[text_id]

    def store(self) -> Stored:
        """The sap that waits, with the days to boil it by, as of the last record."""
        hangs_on = (self.season, self.today, self.tally.expected_brix, self.syrup_brix)
        return self._remembered(
            self._memories.stored,
            hangs_on,
            lambda: stored_sap(self.book, self.who.sugarbush_id, *hangs_on),
        )

    def boils(self) -> tuple[Boil, ...]:
        """The boils of this season by the wall clock, as of the last record."""
        return self._remembered(
            self._memories.boils,
            self.season,
            lambda: tuple(season_boils(self.book, self.who.sugarbush_id, self.season)),
        )

    def _remembered(
        self, memory: Memory[What], hangs_on: Hashable, make: Callable[[], What]
    ) -> What:
        edition = self.book.edition(self.who.sugarbush_id)
        what = memory.of(edition, hangs_on)
        if what is None:
            what = make()
            if edition is not None:
                self.book.afterwards(partial(memory.keep, edition, hangs_on, what))
        return what

    # --- what is written -------------------------------------------------------------------

    @property
    def writer(self) -> Writer:
        """Under whose name records of this text are written."""
        return Writer(self.who.sugarbush_id, self.who.person_id, self.text.id, self.now_utc)

    def add(self, entry: Entry) -> None:
        """Write a record. Sums that are at hand have it added in, and need not be looked up."""
        edition = self.book.edition(self.who.sugarbush_id)
        sums = self._sums
        if sums is None:
            sums = self._memories.sums.of(edition, self.season)
        self.book.records.add(self.writer, entry)
        if self.known.is_unmoved_by(entry):
            self.__dict__.pop("tally", None)
        else:
            self.forget()
        if sums is None:
            self._sums = None
            return
        self._sums = with_entry(sums, entry) if entry.season == self.season else sums
        edition = self.book.edition(self.who.sugarbush_id)
        if edition is not None:
            keep = self._memories.sums.keep
            self.book.afterwards(partial(keep, edition, self.season, self._sums))

    def amend(self, kept: Kept, entry: Entry) -> None:
        """Write a record in place of another."""
        self.book.records.amend(self.writer, kept, entry)
        self.forget()

    def recorded_again(self, entry: Entry) -> None:
        """Say a changed record back."""
        self.changed.append(entry)

    def forget(self) -> None:
        """What was known before the last record is known no more."""
        for name in ("told", "known", "tally"):
            self.__dict__.pop(name, None)
        self._sums = None

    # --- what is asked and said ------------------------------------------------------------

    def understand(self, words: str) -> Understanding:
        """Read words as theirs, sent now. A part of the bush may be named for the first time."""
        profile = self.profile
        lots = tuple(dict.fromkeys((*profile.lots, *lots_named(words))))
        trees = tuple(dict.fromkeys((*profile.tree_labels, *trees_named(words))))
        return self.senses.read(words, self.sent, replace(profile, lots=lots, tree_labels=trees))

    def ask(self, question: str, pending: Question | None) -> None:
        """Ask; `pending` is what an answer will be held against, None if none can be."""
        if self.reply.question is None:
            self.reply.question = question
            self.asked = pending

    def note(self, words: str, spare: int, shorter: str | None = None) -> None:
        """Say something that may be left out; the higher `spare`, the sooner."""
        if words:
            self.reply.notes.append(Part(words, spare, shorter))

    def hint(self, what: str, words: str, spare: int) -> None:
        """A note that is said once a day at most: `what` names it."""
        if self.may_hint(what):
            self.hints[what] = words
            self.note(words, spare)

    def may_hint(self, what: str) -> bool:
        """True when this person has not heard it today."""
        return what not in self._said_today

    @cached_property
    def _said_today(self) -> frozenset[str]:
        return self.book.hints.all_said(self.who.person_id, self.today)

    def close(self, said: str) -> None:
        """After the reply is made: remember what was asked and which hints went out."""
        if self.is_forgotten:
            return
        for what, words in self.hints.items():
            if words in said:
                self.book.hints.say(self.who.person_id, what, self.today)
        if self.rest and (self.asked is None or isinstance(self.asked, WhereAsked)):
            # A place is understood unasked too, "more" is not.
            self.asked = Rest(self.rest, self.about)
        if self.about and self.asked is None:
            self.asked = Rest((), self.about)
        if self.asked is not None:
            asked = Asked(to_json(self.asked), self.text.id, self.now_utc)
            self.book.questions.ask(self.who.person_id, asked)


@dataclass(frozen=True, slots=True)
class Open:
    """The question that is open, and the text that raised it."""

    question: Question
    text_id: int

    @property
    def is_where(self) -> bool:
        """True for "where are your trees?"."""
        return isinstance(self.question, WhereAsked)


def open_question(turn: Turn, answerable_for: timedelta) -> Open | None:
    """The question that this text may answer; one that waited too long is forgotten."""
    found = turn.book.questions.open(turn.who.person_id)
    if found is None:
        return None
    if abs(turn.now_utc - found.asked_utc) > answerable_for:
        turn.book.questions.drop(turn.who.person_id)
        return None
    return Open(from_json(found.question), found.text_id)


def kinds_of(entries: Sequence[Entry]) -> list[str]:
    """The kinds among entries, each once, in order."""
    return list(dict.fromkeys(entry.kind for entry in entries))
