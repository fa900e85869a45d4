"""What each reading does: most are recorded, the others are in the table at the end."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from typing import Any

from bot.answers import Asked, answer
from bot.consent import Consent
from bot.conversation.addresses import normal_address
from bot.conversation.amending import amend
from bot.conversation.household import drop_invitation, export, household, invite
from bot.conversation.pending import WhereAsked
from bot.conversation.recording import entry_of, with_detail
from bot.conversation.turn import Turn
from bot.conversation.undoing import undo
from bot.conversation.wishing import carry_over, wish
from bot.conversation.wishing import standing as wishes_of
from bot.entry import Entry
from bot.places.regions import spoken
from bot.reading import Choice, Doubt
from bot.reading.kinds import (
    Amend,
    Boil,
    Chat,
    Gear,
    Help,
    Helper,
    Household,
    Join,
    Place,
    PouredOut,
    Question,
    Reading,
    Start,
    Stop,
    TapsPulled,
    TapsSet,
    Undo,
    Wish,
)
from bot.standing import SEASON_OVER, season_boils
from bot.standing.gear import entries_of
from bot.standing.wishes import WISH
from bot.wording import meeting, questions, standing

# A question longer than this is not followed up.
_LONGEST_ABOUT = 120
# More towns of one name than this are not listed in a text.
_MOST_PLACES_NAMED = 4


def handle(turn: Turn, reading: Reading) -> None:
    """Do what a reading says."""
    HANDLERS.get(type(reading), _record)(turn, reading)


def said_back(turn: Turn, entry: Entry) -> Entry:
    """The entry as it is said back: a boil's end with the hours that the fire burned, and the sap
    that went in."""
    ended = entry.kind == "boil" and entry.detail.get("state") == "end"
    if not ended or entry.hours is not None:
        return entry
    boils = season_boils(turn.book, turn.who.sugarbush_id, entry.season)
    run = next((boil for boil in boils if boil.ended_at == entry.at_local), None)
    return entry if run is None else replace(entry, hours=run.hours, gallons=run.gallons)


def _record(turn: Turn, reading: Reading) -> None:
    _write(turn, entry_of(reading, turn.sent))


def _write(turn: Turn, entry: Entry) -> None:
    turn.add(entry)
    turn.recorded.append(entry)


def _boil(turn: Turn, reading: Boil) -> None:
    """A fire lit while one burns is the same fire, said again."""
    burning = turn.known.boil
    if reading.manner == "going" and reading.hours is not None:
        # "been boiling 6 hours": lit six hours ago, where nobody has told that yet.
        lit = turn.sent - timedelta(hours=reading.hours)
        reading = replace(
            reading, on=lit.date(), at=lit.time(), hours=None, state="start", manner=None
        )
    entry = entry_of(reading, turn.sent)
    lit_at = None if burning is None else burning.began_at
    again = reading.state == "start" and reading.gallons is None
    is_lit = burning is not None and burning.is_lit
    if again and is_lit and lit_at is not None and entry.at_local >= lit_at:
        turn.reply.receipts.append(standing.fire_burns(lit_at, turn.style))
        return
    _write(turn, entry)


def _poured_out(turn: Turn, reading: PouredOut) -> None:
    """All of it, where sap waits: that much is asked about, for it changes what is expected."""
    waits = turn.store().gallons if reading.gallons is None else 0.0
    if waits <= 0 or not _ALL_OF_IT.search(turn.words.casefold()):
        _record(turn, reading)
        return
    question = questions.all_that_waits(waits, turn.style)
    unit = "litres" if turn.style.is_metric else "gal"
    all_of_it = f"dumped {waits:.6g} gal on {reading.on.isoformat()}"
    turn.ask(question, Doubt(question, (Choice(_AGREED, all_of_it),), f"dumped {{}} {unit}"))


_ALL_OF_IT = re.compile(r"\b(?:it all|all of it|everything|all the sap|the whole|the sap|it)\b")
_AGREED = ("ok", "all", "all of it", "yes", "y", "yep", "yeah", "everything")


def _taps_set(turn: Turn, reading: TapsSet) -> None:
    """Taps added to those that hang; as many again as hang already could be a restatement."""
    hanging = turn.known.taps
    before = 0 if hanging is None else hanging.count
    there = 0 if hanging is None else hanging.by_lot.get(reading.lot, 0)
    entry = entry_of(reading, turn.sent)
    if reading.manner != "add" or not there:
        _write(turn, entry)
        return
    if reading.count == there and not turn.is_settled:
        place = "" if reading.lot is None else f" on the {reading.lot}"
        question = questions.more_or_in_all(reading.count, there)
        turn.ask(
            question,
            Doubt(
                question,
                (
                    Choice(
                        ("more", "added", "new", "in addition"),
                        f"put in {reading.count} more taps{place}",
                    ),
                    Choice(
                        ("all", "in all", "total", "same"),
                        f"we have {reading.count} taps{place} in all",
                    ),
                ),
            ),
        )
        return
    _write(turn, with_detail(entry, {"more": before > 0}))


def _taps_pulled(turn: Turn, reading: TapsPulled) -> None:
    """More taps out than in is asked about."""
    hanging = turn.known.taps
    if (
        reading.count is not None
        and hanging is not None
        and 0 < hanging.count < reading.count
        and not turn.is_settled
    ):
        question = questions.pulled_too_many(reading.count, hanging.count)
        choices = (Choice(("all", "all of them"), "pulled all the taps"),)
        turn.ask(question, Doubt(question, choices, "pulled {} taps", number_only=True))
        return
    _record(turn, reading)


def _place(turn: Turn, reading: Place) -> None:
    """A place is kept once it is found on the map."""
    found = turn.senses.find_place(reading.text)
    if found is None:
        _ask_which_place(turn, reading.text)
        return
    entry = Entry(
        kind="place",
        on=turn.today,
        at_local=turn.sent,
        detail={
            "text": reading.text,
            "name": found.name,
            "region": found.region,
            "country": found.country,
            "zone": found.zone,
            "latitude": found.latitude,
            "longitude": found.longitude,
        },
    )
    _write(turn, entry)


def _ask_which_place(turn: Turn, words: str) -> None:
    """A town alone, or one misspelt, is asked about; what is on no map is asked for anew."""
    likely = [place for place in turn.senses.likely_places(words) if place.latitude is not None]
    if not 1 <= len(likely) <= _MOST_PLACES_NAMED:
        turn.ask(meeting.unknown_place(words), WhereAsked())
        return
    names = [f"{place.name} {place.region}" for place in likely]
    question = meeting.which_place(names)
    answers: list[tuple[str, ...]] = [
        (name.casefold(), *spoken(place.country, place.region or ""))
        for name, place in zip(names, likely, strict=True)
    ]
    if len(likely) == 1:
        answers[0] = (*answers[0], "ok", "yes", "y", "yep", "yeah", "right")
    choices = tuple(
        Choice(tuple(said), f"I'm in {name}") for said, name in zip(answers, names, strict=True)
    )
    turn.ask(question, Doubt(question, choices))


def _amend(turn: Turn, reading: Amend) -> None:
    amend(turn, reading)


def _question(turn: Turn, reading: Question) -> None:
    turn.topics.add(reading.topic)
    if reading.topic == "export":
        turn.reply.answers.append(export(turn))
        return
    said = answer(
        Asked(
            topic=reading.topic,
            howto=reading.howto,
            also=reading.also,
            text=turn.words,
            book=turn.book,
            sugarbush_id=turn.who.sugarbush_id,
            sent=turn.sent,
            known=turn.known,
            tally=turn.tally,
            style=turn.style,
            told=tuple(turn.recorded),
            weather=turn.weather,
            stored=turn.store,
            boiled=turn.boils,
        )
    )
    if said.ends_season:
        _write(turn, Entry(kind=SEASON_OVER, on=turn.today, at_local=turn.sent))
    if said.text:
        # A mail has room for all of it at once.
        turn.reply.answers.append(said.whole if turn.is_mail else said.opening)
    if turn.is_mail and said.table is not None:
        turn.reply.tables.append(said.table())
    if said.ask is not None:
        turn.ask(said.ask.question, said.ask)
    turn.rest = () if turn.is_mail else said.more
    turn.about = "" if said.ask is not None else turn.words[:_LONGEST_ABOUT]


def _gear(turn: Turn, reading: Gear) -> None:
    """What was told of one's gear is kept, a record a thing."""
    for entry in entries_of(reading, turn.sent):
        _write(turn, entry)


def _helper(turn: Turn, reading: Helper) -> None:
    """Invite an address to this sugarbush."""
    people, bush = turn.book.people, turn.who.sugarbush_id
    address = normal_address(reading.address, like=turn.who.address)
    if address is None:
        turn.ask(
            meeting.bad_address(reading.address),
            Doubt(meeting.bad_address(reading.address), (), "add {}", number_only=False),
        )
    elif not turn.is_owner:
        turn.reply.answers.append(meeting.OWNER_ONLY)
    elif address == turn.who.address:
        turn.reply.answers.append(meeting.YOURSELF)
    elif people.is_member(bush, address):
        turn.reply.answers.append(meeting.already_member(address))
    else:
        people.invite(bush, address, turn.who.person_id, turn.now_utc)
        turn.add(
            Entry(kind="helper", on=turn.today, at_local=turn.sent, detail={"address": address})
        )
        turn.reply.answers.append(meeting.invited(address))
        invite(turn, address)


def _join(turn: Turn, _reading: Join) -> None:
    """Accept an invitation, before keeping a tally of one's own."""
    people, who = turn.book.people, turn.who
    invitation = people.invitation(who.address)
    if invitation is None:
        turn.reply.answers.append(meeting.already_in(owner_is_self=turn.is_owner))
        return
    if turn.book.records.any_by(who.sugarbush_id, who.person_id, besides=("place", WISH)):
        mine = standing.short(turn.tally, turn.style).rstrip(".")
        turn.reply.answers.append(meeting.own_records_first(mine))
        return
    wishes = wishes_of(turn)
    turn.who = people.join(who, invitation, turn.now_utc)
    drop_invitation(turn, who.address)
    turn.forget()
    carry_over(turn, wishes)
    turn.reply.answers.append(meeting.joined(invitation.by, standing.short(turn.tally, turn.style)))


def _stop(turn: Turn, _reading: Stop) -> None:
    Consent(turn.book).stop(turn.who.person_id, turn.text)
    turn.is_silent = True


def _start(turn: Turn, _reading: Start) -> None:
    turn.is_carrier_word = True
    Consent(turn.book).start(turn.who.person_id, turn.text)
    turn.is_silent = turn.text.incoming.opt_out is not None
    if not turn.is_new:
        where = standing.season(turn.tally, turn.style)
        turn.reply.answers.append(meeting.back_on(where))


def _help(turn: Turn, _reading: Help) -> None:
    turn.is_carrier_word = True
    turn.is_silent = turn.text.incoming.opt_out is not None
    if not turn.is_new:
        turn.reply.answers.append(meeting.HELP)


def _chat(turn: Turn, _reading: Chat) -> None:
    """Small talk is answered shortly, and never as if something had been written down."""
    if turn.is_new or turn.recorded or turn.reply.answers:
        return
    where = standing.season(turn.tally, turn.style)
    if any(char.isdigit() for char in turn.words):
        where = f"{questions.NOTHING_WRITTEN} {where}"
    turn.reply.receipts.append(where)


HANDLERS: dict[type[Reading], Callable[[Turn, Any], None]] = {
    Boil: _boil,
    TapsSet: _taps_set,
    PouredOut: _poured_out,
    TapsPulled: _taps_pulled,
    Place: _place,
    Undo: undo,
    Amend: _amend,
    Question: _question,
    Helper: _helper,
    Household: household,
    Join: _join,
    Stop: _stop,
    Start: _start,
    Help: _help,
    Chat: _chat,
    Gear: _gear,
    Wish: wish,
}
