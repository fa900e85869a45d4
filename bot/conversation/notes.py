"""After the receipt: where they stand with what was just told, and the one next step."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import timedelta

from bot import figures
from bot.conversation.coach import coach
from bot.conversation.turn import Turn, kinds_of
from bot.conversation.wishing import standing as wishes_of
from bot.entry import Entry
from bot.outdoors import air_of
from bot.reading import Doubt
from bot.reading.instruments import SapTest, shown
from bot.reckoning.balance import sap_per_syrup
from bot.reckoning.checks import ImpossibleError
from bot.reckoning.finish import finish_f, pan_brix
from bot.reckoning.instruments import sap_brix
from bot.reckoning.storage import keeps_days
from bot.reckoning.thickness import water_to_add, water_to_boil_off
from bot.standing import boil_sums, season_boils
from bot.standing.water import water_here
from bot.wording import amounts, know_how, mornings, questions, refusals, standing

# What is left out first when a text would take a second segment.
_ALERT_HOUR, _STANDING, _ASIDE = 1, 2, 5

# Syrup this far over what the sap should give is remarked upon: sap hydrometers are good to
# a tenth in two Brix (our own).
_OVER_YIELD = 1.15
# The same for jars against syrup drawn.
_OVER_JARS = 1.1
# Where water boiled this long ago, the weather may have moved it.
_WATER_IS_FRESH = timedelta(days=1)


# Answers that say where they stand, so that no note has to.
_SAY_IT_ALL = frozenset({"totals", "syrup_expected"})


def add_notes(turn: Turn, entries: Sequence[Entry]) -> None:
    """Say where they stand after entries were written, changed or undone, a kind once."""
    for kind in kinds_of(entries):
        note = NOTES.get(kind)
        if note is not None:
            _say(turn, note, [entry for entry in entries if entry.kind == kind])
    coach(turn)


def _say(turn: Turn, note: Note, entries: Sequence[Entry]) -> None:
    """Say a note; where a figure cannot be, ask after it instead."""
    try:
        note(turn, entries)
    except ImpossibleError as error:
        turn.ask(
            refusals.impossible(error.thing, error.value, error.unit, error.wanted, turn.style),
            None,
        )


def _sap(turn: Turn, entries: Sequence[Entry]) -> None:
    tally = turn.tally
    just_told = sum(entry.gallons or 0.0 for entry in entries if entry in turn.recorded)
    told = sum(1 for entry in entries if entry.gallons)
    if not tally.sap_records:
        turn.note("No sap in the tally now." if turn.undone else "", _STANDING)
    elif turn.topics & _SAY_IT_ALL:
        pass
    elif tally.sap_records == told and abs(tally.sap_gallons - just_told) < 0.005:
        turn.note(standing.just_this(tally, turn.style), _STANDING)
    else:
        short = standing.short(tally, turn.style)
        turn.note(standing.season(tally, turn.style), _STANDING, shorter=short)


def _sugar(turn: Turn, entries: Sequence[Entry]) -> None:
    brix = entries[-1].brix
    test = shown(turn.words, turn.profile)
    if isinstance(test, SapTest) and not turn.undone:
        stem_f = turn.gear().stem_f if test.stem_f is None else test.stem_f
        if stem_f is not None:
            true = sap_brix(test.reading_brix, test.at_f, stem_f)
            words = standing.sap_test(true, test.reading_brix, test.at_f, stem_f, turn.style)
            turn.note(words, 1)
            return
    if len(entries) == 1 and brix and entries[0].tree is None:
        gallons = sap_per_syrup(brix, turn.syrup_brix)
        turn.note(standing.sap_for_a_gallon(gallons, turn.style), _STANDING)


def _poured_out(turn: Turn, entries: Sequence[Entry]) -> None:
    left = turn.store().gallons
    if left > 0:
        turn.note(standing.waits(left, turn.style), _STANDING)


def _boil(turn: Turn, entries: Sequence[Entry]) -> None:
    if turn.undone:
        return
    last = entries[-1]
    if last.detail.get("state") == "start":
        left = turn.store().gallons
        if left > 0:
            turn.note(standing.waits(left, turn.style), _STANDING)
        return
    boils = season_boils(turn.book, turn.who.sugarbush_id, last.season)
    run = next((boil for boil in boils if boil.ended_at == last.at_local), None)
    if run is not None and run.hours is None and last.gallons is None:
        question = questions.boil_hours()
        turn.ask(question, Doubt(question, (), "make that {} hours", number_only=True))
        return
    sums = boil_sums(boils)
    if sums.boils > 1:
        turn.note(standing.boiled(sums.hours), _STANDING)


def _syrup(turn: Turn, entries: Sequence[Entry]) -> None:
    tally = turn.tally
    if not tally.syrup_records:
        return
    over = tally.syrup_gallons > _OVER_YIELD * tally.expected_syrup_gallons
    law, tested = turn.known.law, entries[-1]
    if tested.brix is not None and tested.gallons and not turn.undone:
        judged = law.judge(tested.brix)
        wanted = law.min_brix
        if judged == "too thick":
            water = water_to_add(tested.gallons, tested.brix, wanted)
            turn.note(know_how.thin_it(water.gallons, wanted, turn.style), 1)
            return
        if judged == "too thin" and tested.brix >= figures.THICKNESS_BRIX_LEAST:
            water = water_to_boil_off(tested.gallons, tested.brix, wanted)
            turn.note(know_how.boil_on(water.gallons, wanted, turn.style), 1)
            return
    if tally.sap_records and over and not tally.brix_is_assumed and not turn.undone:
        turn.note(standing.drawn_too_much(tally, turn.style), 1)
    elif not turn.topics & _SAY_IT_ALL:
        told = 0 if turn.undone else len(entries)
        turn.note(standing.drawn(tally, told, turn.style), _STANDING)


def _jars(turn: Turn, entries: Sequence[Entry]) -> None:
    tally = turn.tally
    if tally.syrup_gallons and tally.jars_gallons > _OVER_JARS * tally.syrup_gallons:
        turn.note(standing.jars_too_many(tally, turn.style), 1)
    elif tally.jars_gallons > sum(entry.gallons or 0.0 for entry in entries) + 0.001:
        turn.note(standing.jars(tally, turn.style), _STANDING)


def _taps(turn: Turn, entries: Sequence[Entry]) -> None:
    taps = turn.known.taps
    if taps is None:
        return
    stated = len(entries) == 1 and entries[0].count == taps.count
    if not stated and entries[-1].kind == "taps_set":
        turn.note(standing.taps_hanging(taps.count), _STANDING)
    elif entries[-1].kind == "taps_pulled" and entries[-1].count is not None and taps.count:
        turn.note(standing.taps_left(taps.count), _STANDING)


def _cost(turn: Turn, entries: Sequence[Entry]) -> None:
    if turn.tally.cost_dollars > sum(entry.dollars or 0.0 for entry in entries) + 0.005:
        turn.note(standing.spent(turn.tally), _STANDING)


def _fuel(turn: Turn, entries: Sequence[Entry]) -> None:
    more_cords = turn.tally.cords > sum(entry.cords or 0.0 for entry in entries) + 0.001
    more_gas = turn.tally.propane_lb > sum(entry.propane_lb or 0.0 for entry in entries) + 0.01
    if more_cords or more_gas:
        turn.note(standing.burned(turn.tally, turn.style), _STANDING)


def _store_temp(turn: Turn, entries: Sequence[Entry]) -> None:
    if turn.undone or "storage" in turn.topics:
        return
    store = turn.store()
    if store.boil_by is not None:
        turn.note(standing.boil_by(store.boil_by, turn.style), 1)
    elif entries[-1].fahrenheit is not None:
        turn.note(standing.keeps(keeps_days(entries[-1].fahrenheit)), 1)


def _water_boils(turn: Turn, entries: Sequence[Entry]) -> None:
    water_f = entries[-1].fahrenheit
    if water_f is None or turn.undone:
        return
    draw_f = finish_f(water_f, turn.syrup_brix)
    turn.note(standing.draw_at(draw_f, turn.syrup_brix, turn.style), 1)
    turn.note(standing.confirm(turn.style), _ASIDE)


def _pan_temp(turn: Turn, entries: Sequence[Entry]) -> None:
    """How far the pan is, once it is known where water boils."""
    pan_f = entries[-1].fahrenheit
    if pan_f is None or turn.undone:
        return
    at = entries[-1].at_local
    water = water_here(
        turn.book, turn.who.sugarbush_id, at, turn.gear(), air=lambda: air_of(turn.weather())
    )
    if water is None:
        if "finish_point" not in turn.topics:
            turn.note(standing.water_needed(turn.style), 1)
        return
    draw_f = finish_f(water.fahrenheit, turn.syrup_brix)
    if pan_f < water.fahrenheit:
        turn.note(standing.pan_below_boiling(water.fahrenheit, turn.style), 1)
    elif pan_f >= draw_f:
        turn.note(standing.pan_done(draw_f, turn.style), 1)
    else:
        reached = pan_brix(pan_f, water.fahrenheit)
        left_f = draw_f - pan_f
        turn.note(standing.pan_on_its_way(reached, left_f, draw_f, turn.style), 1)
    if water.basis == "measured" and at.date() - water.on > _WATER_IS_FRESH:
        turn.note(standing.water_is_old(water.on, turn.style), _ASIDE)
    elif water.basis in ("forecast", "ground"):
        turn.note(standing.WATER_BY_FORECAST, _ASIDE)


def _sign(turn: Turn, entries: Sequence[Entry]) -> None:
    if not turn.undone:
        turn.note(standing.SIGNS.get(str(entries[-1].detail.get("sign")), ""), 1)


def _place(turn: Turn, entries: Sequence[Entry]) -> None:
    if turn.undone:
        return
    law = turn.known.law
    turn.note(standing.law(law.name, law.min_brix), _STANDING)
    # When the alert comes is told once, at first contact; that it comes at all needs a forecast.
    never_told = turn.book.hints.said_on(turn.who.person_id, "alert hour") is None
    if turn.skies is not None and never_told:
        at = amounts.clock(wishes_of(turn).alert_at)
        turn.hint("alert hour", mornings.hour_note(at), _ALERT_HOUR)


Note = Callable[[Turn, Sequence[Entry]], None]
NOTES: dict[str, Note] = {
    "sap": _sap,
    "sugar": _sugar,
    "poured_out": _poured_out,
    "boil": _boil,
    "syrup": _syrup,
    "jars": _jars,
    "taps_set": _taps,
    "taps_pulled": _taps,
    "cost": _cost,
    "fuel": _fuel,
    "store_temp": _store_temp,
    "water_boils": _water_boils,
    "pan_temp": _pan_temp,
    "sign": _sign,
    "place": _place,
}
