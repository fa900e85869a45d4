"""Who is owed what, because their hour struck: the ledger and the weather asked, the decisions
of `alert` and `reminders` taken, the texts given back to be owed.

Plan for the time between two moments, one after the other without a gap: what struck in between,
by each one's own wall clock, is planned once. After a standstill the whole gap may be given: what
is of no use any more is left out. Nothing is written here, and no weather is asked for within a
transaction.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta

from bot.clock import local_time, season_of, utc_time
from bot.entry import Entry
from bot.ledger import ByPerson, Enrolled, Ledger, Told
from bot.messages import Kind, Unasked
from bot.morning import reminders as owed
from bot.morning.alert import MORNING, alert
from bot.morning.bush import Bush, bushes
from bot.morning.gallons import ONE_DAY
from bot.outdoors import Outdoors, Skies
from bot.reckoning.law import legal_density
from bot.standing import part_of_season, season_tally
from bot.standing.wishes import WISH, Wishes, wishes_of
from bot.weather import Place
from bot.wording import reminders as wording
from bot.wording.style import Style, Units

# People read at once: few queries, and little memory (our own).
PAGE = 1000
# Cells asked for at once; the services' own limits hold besides (our own).
_THREADS = 8
# An alert that comes later than this after its hour is no morning's any more (our own).
ALERT_OF_USE = timedelta(hours=4)
# How long before its hour an alert is written, so that it leaves at that hour: the worker's
# quarter of an hour between two rounds, and what a round of everybody may take (our own).
AHEAD = timedelta(minutes=20)
# A time of so many days ahead is looked through for the next hour that strikes.
_LOOK_AHEAD_DAYS = 8


@dataclass(frozen=True, slots=True)
class _Person:
    """Somebody on the roll with what decides their hours."""

    enrolled: Enrolled
    place: Entry | None
    zone: str
    wishes: Wishes


@dataclass(frozen=True, slots=True)
class _Struck:
    """An hour that struck for somebody: which, and when, aware UTC."""

    person: _Person
    what: str
    at_utc: datetime


@dataclass(slots=True)
class _Seen:
    """The weather asked for in one round, once for each area and wall clock: the people of a cell
    share what was judged of it, wherever in it they live."""

    skies: Skies | None
    now_utc: datetime
    _areas: dict[str, str] = field(default_factory=dict)
    _known: dict[tuple[str, str], Outdoors | None] = field(default_factory=dict)

    def look(self, people: Iterable[_Person]) -> None:
        """Ask for all that these people need, several at a time."""
        skies = self.skies
        if skies is None:
            return
        places = [
            (place, person.zone)
            for person in people
            if (place := skies.place(person.place, person.zone)) is not None
        ]
        new = {place.key: place for place, _ in places if place.key not in self._areas}
        with ThreadPoolExecutor(_THREADS) as pool:
            areas = pool.map(lambda place: skies.area(place, self.now_utc), new.values())
            self._areas.update(zip(new, areas, strict=True))
            wanted: dict[tuple[str, str], Place] = {}
            for place, zone in places:
                wanted.setdefault((self._areas[place.key], zone), place)
            missing = [key for key in wanted if key not in self._known]
            found = pool.map(lambda key: skies.over(wanted[key], key[1], self.now_utc), missing)
            self._known.update(zip(missing, found, strict=True))

    def over(self, person: _Person) -> Outdoors | None:
        """What `look` found for somebody; None where nothing is known of the hours ahead."""
        if self.skies is None:
            return None
        place = self.skies.place(person.place, person.zone)
        area = None if place is None else self._areas.get(place.key)
        out = None if area is None else self._known.get((area, person.zone))
        return out if out is not None and out.knows_ahead else None


@dataclass(frozen=True, slots=True)
class Planner:
    """Plans what is owed. skies: None where no weather source is set: then no alert goes, and the
    reminders that need none still do. default_zone: of people whose place is not known."""

    ledger: Ledger
    skies: Skies | None
    default_zone: str

    def plan_mornings(self, since_utc: datetime, now_utc: datetime) -> Iterator[Unasked]:
        """The alerts of everybody whose hour struck after `since_utc` and by `now_utc`."""
        yield from self._mornings(since_utc, now_utc, now_utc)

    def plan_mornings_ahead(self, since_utc: datetime, now_utc: datetime) -> Iterator[Unasked]:
        """The same, and the alerts of the hours that strike within `AHEAD`, due at their hour.

        What was planned ahead by the last round is looked at once more: whoever named another
        hour since, or had no weather then, is not left out.
        """
        yield from self._mornings(since_utc, now_utc + AHEAD, now_utc)

    def _mornings(
        self, since_utc: datetime, until_utc: datetime, now_utc: datetime
    ) -> Iterator[Unasked]:
        if self.skies is None:
            return
        seen = _Seen(self.skies, now_utc)
        for people in self._pages():
            struck = [
                one
                for one in _struck(people, since_utc, until_utc, alerts=True)
                if one.at_utc + ALERT_OF_USE > now_utc
            ]
            for here in _by_zone(struck):
                yield from self._alerts(here, seen, now_utc)

    def plan_reminders(self, since_utc: datetime, now_utc: datetime) -> Iterator[Unasked]:
        """The reminders of everybody for whom an hour of theirs struck in the same time."""
        seen = _Seen(self.skies, now_utc)
        for people in self._pages():
            willing = [person for person in people if person.wishes.wants_reminders]
            struck = _struck(people, since_utc, now_utc, alerts=False)
            for here in _by_zone(struck):
                yield from self._rounds(here, seen, now_utc)
            for of_zone in _by_zone_of(willing):
                yield from self._fires(of_zone, since_utc, now_utc)

    def next_utc(self, after_utc: datetime) -> datetime | None:
        """The next moment at which something may be owed to anybody; None without people."""
        until_utc = after_utc + timedelta(days=_LOOK_AHEAD_DAYS)
        moments: list[datetime] = []
        for people in self._pages():
            for alerts in (True, False):
                moments += [
                    one.at_utc for one in _struck(people, after_utc, until_utc, alerts=alerts)
                ]
            for here in _by_zone_of(people):
                moments += [
                    at_utc
                    for at_utc, _ in self._fires_at(here, after_utc)
                    if after_utc < at_utc <= until_utc
                ]
        return min(moments, default=None)

    # --- who ---------------------------------------------------------------------------------

    def _pages(self) -> Iterator[list[_Person]]:
        after: int | None = 0
        while after is not None:
            with self.ledger.reading() as book:
                enrolled, after = book.roll.page(after, PAGE)
                lasting = book.roll.of_kinds(
                    {one.sugarbush_id for one in enrolled}, ("place", WISH)
                )
            yield [self._person(one, lasting.get(one.sugarbush_id, ())) for one in enrolled]

    def _person(self, enrolled: Enrolled, lasting: Sequence[ByPerson]) -> _Person:
        places = [one.entry for one in lasting if one.entry.kind == "place"]
        place = places[-1] if places else None
        zone = (None if place is None else place.detail.get("zone")) or self.default_zone
        wishes = wishes_of(
            one.entry
            for one in lasting
            if one.entry.kind == WISH and one.person_id == enrolled.person_id
        )
        return _Person(enrolled, place, zone, wishes)

    # --- alerts ------------------------------------------------------------------------------

    def _alerts(
        self, struck: Sequence[_Struck], seen: _Seen, now_utc: datetime
    ) -> Iterator[Unasked]:
        facts = self._facts([one.person for one in struck], now_utc)
        new = [one for one in struck if not _has_alert(one, facts.of(one.person)[1])]
        seen.look(one.person for one in new)
        for one in new:
            person, out = one.person, seen.over(one.person)
            if out is None:
                continue
            bush, told = facts.of(person)
            style = _style(person, bush, out.today)
            due_told = any(
                each.key == owed.BOIL_BY and each.local_date == bush.stored.boil_by for each in told
            )
            found = alert(
                bush,
                out,
                person.wishes,
                style,
                knows_hour=any(each.key == MORNING for each in told),
                knows_what_waits=due_told,
            )
            if found is not None:
                until_utc = one.at_utc + ALERT_OF_USE
                yield _unasked(
                    person, "alert", found.key, found.local_date, found.text, one.at_utc, until_utc
                )

    # --- reminders ---------------------------------------------------------------------------

    def _rounds(
        self, struck: Sequence[_Struck], seen: _Seen, now_utc: datetime
    ) -> Iterator[Unasked]:
        """The forenoon's, the afternoon's and the week's round of one wall clock."""
        facts = self._facts([one.person for one in struck], now_utc)
        busy = [one for one in struck if one.what != _WEEK and facts.of(one.person)[0].is_tapped]
        stored = [one for one in struck if facts.of(one.person)[0].stored.gallons > 0]
        seen.look(one.person for one in (*busy, *stored))
        for one in struck:
            bush, told = facts.of(one.person)
            found = self._reminder(one, bush, told, seen, now_utc)
            if found is None:
                continue
            until_utc = utc_time(found.until_local, one.person.zone)
            if until_utc > now_utc:
                yield _unasked(
                    one.person,
                    "reminder",
                    found.key,
                    found.local_date,
                    found.text,
                    one.at_utc,
                    until_utc,
                )

    def _reminder(
        self, one: _Struck, bush: Bush, told: Sequence[Told], seen: _Seen, now_utc: datetime
    ) -> owed.Reminder | None:
        style = _style(one.person, bush, local_time(now_utc, one.person.zone).date())
        if one.what == _WEEK:
            return self._week(one.person, bush, style)
        out = seen.over(one.person)
        if one.what == _FORENOON:
            return owed.forenoon(bush, out, told, style)
        return None if out is None else owed.afternoon(bush, out, told, style)

    def _week(self, person: _Person, bush: Bush, style: Style) -> owed.Reminder | None:
        """The week from Monday on; nothing where nothing has come this season."""
        today, sugarbush = style.today, person.enrolled.sugarbush_id
        season = season_of(today)
        try:
            law = legal_density(bush.region)
        except ValueError:
            law = legal_density(None)
        monday = today - 6 * ONE_DAY
        with self.ledger.reading() as book:
            tally = season_tally(book, sugarbush, season, law.min_brix)
            week = part_of_season(book, sugarbush, season, law.min_brix, first=monday, last=today)
        if tally.is_empty or (bush.is_over and week.is_empty):
            return None
        text = wording.week(week.sap_gallons, week.syrup_gallons, tally, style)
        return owed.Reminder(owed.WEEK, today, text, datetime.combine(today, owed.WEEK_UNTIL))

    def _fires(
        self, people: Sequence[_Person], since_utc: datetime, now_utc: datetime
    ) -> Iterator[Unasked]:
        """Fires whose ten hours ended in this time, of one wall clock."""
        for at_utc, person in self._fires_at(people, now_utc):
            if not since_utc < at_utc <= now_utc:
                continue
            facts = self._facts([person], now_utc)
            bush, told = facts.of(person)
            style = _style(person, bush, local_time(now_utc, person.zone).date())
            found = owed.fire(bush, told, style)
            if found is not None:
                until_utc = utc_time(found.until_local, person.zone)
                yield _unasked(
                    person, "reminder", found.key, found.local_date, found.text, at_utc, until_utc
                )

    def _fires_at(
        self, people: Sequence[_Person], now_utc: datetime
    ) -> list[tuple[datetime, _Person]]:
        """When each fire that burns is to be asked after."""
        if not people:
            return []
        zone = people[0].zone
        since = local_time(now_utc, zone) - owed.FIRE_UNTIL
        with self.ledger.reading() as book:
            boils = book.roll.of_kinds(
                {one.enrolled.sugarbush_id for one in people}, ("boil",), since
            )
        found = []
        for person in people:
            told = boils.get(person.enrolled.sugarbush_id)
            last = told[-1].entry if told else None
            if last is not None and last.detail.get("state") == "start":
                found.append((utc_time(owed.fire_at(last.at_local), zone), person))
        return found

    # --- facts -------------------------------------------------------------------------------

    def _facts(self, people: Sequence[_Person], now_utc: datetime) -> _Facts:
        """The sugarbushes of people of one wall clock, and what they were told lately."""
        if not people:
            return _Facts({}, {})
        now_local = local_time(now_utc, people[0].zone)
        since = now_local.date() - timedelta(days=owed.TOLD_FOR_DAYS)
        with self.ledger.reading() as book:
            found = bushes(book, {one.enrolled.sugarbush_id for one in people}, now_local)
            told = book.roll.told({one.enrolled.person_id for one in people}, since)
        return _Facts(found, told)


@dataclass(frozen=True, slots=True)
class _Facts:
    """Sugarbushes by number, and what was told by person."""

    bushes: Mapping[int, Bush]
    told: Mapping[int, Sequence[Told]]

    def of(self, person: _Person) -> tuple[Bush, Sequence[Told]]:
        """Somebody's sugarbush, and what they were told in the last days."""
        enrolled = person.enrolled
        return self.bushes[enrolled.sugarbush_id], self.told.get(enrolled.person_id, ())


_ALERT, _FORENOON, _AFTERNOON, _WEEK = "alert", "forenoon", "afternoon", "week"


def _struck(
    people: Iterable[_Person], since_utc: datetime, now_utc: datetime, *, alerts: bool
) -> list[_Struck]:
    """The hours that struck in this time: the alert's, or those of the reminders' rounds."""
    found = []
    moments: dict[tuple[str, date, time], datetime] = {}
    for person in people:
        first = local_time(since_utc, person.zone).date()
        last = local_time(now_utc, person.zone).date()
        for n in range((last - first).days + 1):
            on = first + n * ONE_DAY
            for what, at in _hours_of(person.wishes, on, alerts=alerts):
                key = (person.zone, on, at)
                at_utc = moments.get(key)
                if at_utc is None:
                    at_utc = moments[key] = utc_time(datetime.combine(on, at), person.zone)
                if since_utc < at_utc <= now_utc:
                    found.append(_Struck(person, what, at_utc))
    return found


def _hours_of(wishes: Wishes, on: date, *, alerts: bool) -> Iterator[tuple[str, time]]:
    if alerts:
        if wishes.wants_reminders:
            yield _ALERT, wishes.alert_at
        return
    if wishes.wants_reminders:
        yield _FORENOON, owed.FORENOON_ROUND
        yield _AFTERNOON, owed.AFTERNOON_ROUND
    if wishes.weekly and on.weekday() == owed.SUNDAY:
        yield _WEEK, owed.WEEK_ROUND


def _has_alert(struck: _Struck, told: Iterable[Told]) -> bool:
    """Whether the alert of that day is owed already, or went."""
    on = local_time(struck.at_utc, struck.person.zone).date()
    return any(each.key == MORNING and each.local_date == on for each in told)


def _by_zone(struck: Iterable[_Struck]) -> list[list[_Struck]]:
    groups: dict[str, list[_Struck]] = defaultdict(list)
    for one in struck:
        groups[one.person.zone].append(one)
    return list(groups.values())


def _by_zone_of(people: Iterable[_Person]) -> list[list[_Person]]:
    groups: dict[str, list[_Person]] = defaultdict(list)
    for person in people:
        groups[person.zone].append(person)
    return list(groups.values())


def _style(person: _Person, bush: Bush, today: date) -> Style:
    home: Units = "metric" if bush.is_in_canada else "us"
    spoken = person.enrolled.units
    units: Units = "metric" if spoken == "metric" else "us" if spoken == "us" else home
    return Style(units, today)


def _unasked(
    person: _Person,
    kind: Kind,
    key: str,
    local_date: date,
    text: str,
    due_utc: datetime,
    useless_after_utc: datetime,
) -> Unasked:
    return Unasked(
        person_id=person.enrolled.person_id,
        to=person.enrolled.address,
        kind=kind,
        key=key,
        local_date=local_date,
        text=text,
        due_utc=due_utc,
        useless_after_utc=useless_after_utc,
    )
