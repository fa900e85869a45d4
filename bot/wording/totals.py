"""Answers to "how much": sap, syrup, sugar, taps, jars."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime

from bot.tally import Tally
from bot.wording import amounts, receipts, tables
from bot.wording.compose import sentence
from bot.wording.days import date_of_year, day
from bot.wording.gsm import plain
from bot.wording.style import Style

NO_SAP = "No sap in the tally yet this season. Text it like: 12 gal at 2.2."


@dataclass(slots=True)
class Week:
    """A week from its Monday on: gallons of sap and syrup, the sap whose sugar was told, and
    gallons times Brix of that."""

    monday: date
    sap_gallons: float = 0.0
    tested_gallons: float = 0.0
    sugar: float = 0.0
    syrup_gallons: float = 0.0


def by_week(weeks: Sequence[Week], style: Style) -> str:
    """A table of weeks, "" for none."""
    return tables.lines(
        ("Week from", "Sap", "Brix", "Syrup"),
        [
            (
                date_of_year(week.monday),
                amounts.volume(week.sap_gallons, style),
                amounts.mean_brix(week.sugar / week.tested_gallons) if week.tested_gallons else "",
                amounts.syrup(week.syrup_gallons, style) if week.syrup_gallons else "",
            )
            for week in weeks
        ],
    )


def weeks(told: Sequence[Week], style: Style) -> str:
    """The season's weeks in a text."""
    said = [
        f"{date_of_year(week.monday)} {' and '.join(_of_week(week, style))}"
        for week in told
        if week.sap_gallons or week.syrup_gallons
    ]
    return f"Weeks from {'; '.join(said)}." if said else NO_SAP


def each_day(told: Sequence[tuple[date, float]], style: Style) -> str:
    """The last days that brought sap."""
    said = [f"{day(on, style.today)} {amounts.volume(gallons, style)}" for on, gallons in told]
    return f"{'; '.join(said)}." if said else NO_SAP


def ratio(tally: Tally, style: Style) -> str:
    """Sap to the syrup drawn of it, and what the sap's sugar lets expect."""
    if not tally.sap_records or tally.expected_syrup_gallons <= 0:
        return NO_SAP
    should = f"By its sugar {tally.sap_gallons / tally.expected_syrup_gallons:.0f} to 1."
    if not tally.syrup_records or tally.syrup_gallons <= 0:
        return f"No syrup drawn yet. {should}"
    sap = amounts.volume(tally.sap_gallons, style)
    drawn = amounts.syrup(tally.syrup_gallons, style)
    real = tally.sap_gallons / tally.syrup_gallons
    return f"{sap} of sap to {drawn} drawn: {real:.0f} to 1, all sap counted. {should}"


def _of_week(week: Week, style: Style) -> list[str]:
    said = [amounts.volume(week.sap_gallons, style)] if week.sap_gallons else []
    if week.syrup_gallons:
        said.append(f"{amounts.syrup(week.syrup_gallons, style)} syrup")
    return said


def per_tap(tally: Tally, taps: int, style: Style) -> str:
    """The season's sap, one tap with another."""
    sap = amounts.volume(tally.sap_gallons / taps, style)
    made = amounts.about_syrup(tally.expected_syrup_gallons / taps, style)
    return f"{sap} of sap a tap so far ({taps} in), {made} of syrup."


def season(tally: Tally, style: Style) -> str:
    """The whole season in a text."""
    said = []
    if tally.sap_records:
        said.append(f"Season {_sap(tally, style)}, {_expected(tally, style)}.")
    if tally.syrup_records:
        said.append(f"Drawn {amounts.syrup(tally.syrup_gallons, style)}.")
    if tally.jars_gallons:
        said.append(f"In jars {amounts.in_pints(tally.jars_gallons, style)}.")
    if tally.poured_out_gallons and not tally.sap_records:
        said.append(f"Poured out {amounts.volume(tally.poured_out_gallons, style)}.")
    return " ".join(said) or NO_SAP


def closing(season_said: str, *, taps_hang: bool) -> str:
    """The season's last word: what it came to, and the work that is left."""
    left = "Pull the spiles, then wash" if taps_hang else "Wash"
    return f"{season_said} {left} pails, lines and pans with hot water, no soap, and dry them."


def syrup(tally: Tally, style: Style) -> str:
    """Syrup made so far, against what the sap should give."""
    if not tally.syrup_records:
        if not tally.sap_records:
            return NO_SAP
        return f"No syrup drawn yet. Season {_sap(tally, style)}, {_expected(tally, style)}."
    said = f"Drawn this season {amounts.syrup(tally.syrup_gallons, style)} of syrup."
    if tally.jars_gallons:
        said += f" In jars {amounts.in_pints(tally.jars_gallons, style)}."
    if tally.sap_records:
        said += f" {_sap(tally, style)} should make {_about(tally, style)}."
    return said


def expected(tally: Tally, style: Style) -> str:
    """What the season's sap should make."""
    if not tally.sap_records:
        return NO_SAP
    said = f"{_sap(tally, style)} should make {_full(tally, style)} at {tally.syrup_brix:g} Brix."
    if tally.brix_is_assumed:
        said += f" Nobody tested it, so I took {amounts.brix(tally.expected_brix)} Brix."
    if tally.syrup_records:
        said += f" Drawn so far: {amounts.syrup(tally.syrup_gallons, style)}."
    return said


def expected_short(tally: Tally, style: Style) -> str:
    """What the season's sap should make, beside another amount."""
    return f"The season's {_sap(tally, style)}: {_about(tally, style)}."


def makes(
    gallons: float, brix: float, made: float, syrup_brix: float, style: Style, *, assumed: bool
) -> str:
    """What an amount of sap should make."""
    at = f"at an assumed {amounts.mean_brix(brix)}" if assumed else f"at {amounts.brix(brix)}"
    return (
        f"{amounts.volume(gallons, style)} {at} should make"
        f" {amounts.about_syrup_full(made, style)} at {syrup_brix:g} Brix."
    )


def days(name: str, tally: Tally, style: Style) -> str:
    """Some days of the season."""
    if not tally.sap_records and not tally.syrup_records:
        return f"{name}: no sap and no syrup in the tally."
    said = []
    if tally.sap_records:
        said.append(f"{_sap(tally, style)}, {_expected(tally, style)}")
    if tally.syrup_records:
        said.append(f"drawn {amounts.syrup(tally.syrup_gallons, style)}")
    return f"{name}: {'; '.join(said)}."


def last_season(tally: Tally, style: Style) -> str:
    """The season before this."""
    if tally.is_empty:
        return f"I have nothing of the {tally.season} season."
    said = f"Season {tally.season}: {amounts.volume(tally.sap_gallons, style)} of sap"
    if tally.syrup_records:
        said += f", {amounts.syrup(tally.syrup_gallons, style)} of syrup"
    return said + "."


def one_place(name: str, gallons: float, style: Style, when: str | None = None) -> str:
    """One lot's sap this season, or of the days called `when`."""
    sap = f"{amounts.volume(gallons, style)} of sap"
    if when is None:
        return sentence(f"{plain(name)}: {sap} this season")
    return sentence(f"{plain(name)}, {_within(when)}: {sap}")


def sugar_of_place(name: str, brix: float | None) -> str:
    """One lot's mean sugar this season."""
    if brix is None:
        return sentence(f"{plain(name)}: no sugar test in the tally")
    return sentence(f"{plain(name)}: {amounts.mean_brix(brix)} Brix in the mean this season")


def _within(when: str) -> str:
    """The name of some days within a sentence: "yesterday", but "March" and "Mon"."""
    spoken = when.startswith(("Today", "Yesterday", "Last", "This", "Since"))
    return when[0].lower() + when[1:] if spoken else when


def taps(by_lot: Mapping[str | None, int] | None) -> str:
    """Taps that hang, by lot where lots are named."""
    if by_lot is None:
        return "No taps told this season. Text it like: 20 taps."
    said = f"{amounts.plural(sum(by_lot.values()), 'tap')} in"
    named = [(lot, count) for lot, count in by_lot.items() if lot is not None and count]
    if not named:
        return said + "."
    parts = [f"{plain(lot)} {count}" for lot, count in sorted(named)]
    if by_lot.get(None):
        parts.append(f"elsewhere {by_lot[None]}")
    return f"{said}: {', '.join(parts)}."


def best_day(on: date, gallons: float, style: Style) -> str:
    """The day that gave most."""
    return f"{day(on, style.today)} was best: {amounts.volume(gallons, style)} of sap."


def best_week(week: Week, style: Style) -> str:
    """The week that gave most."""
    said = " and ".join(_of_week(week, style))
    return f"The week from {date_of_year(week.monday)} was best: {said}."


def taps_of(lots: Sequence[str], by_lot: Mapping[str | None, int]) -> str:
    """Taps that hang in some lots."""
    said = [f"{plain(lot)}: {amounts.plural(by_lot.get(lot, 0), 'tap')} in" for lot in lots]
    return sentence("; ".join(said))


def mean_brix(tally: Tally, style: Style, when: str | None = None) -> str:
    """The mean sugar of the season, or of the days called `when`, weighted by its sugar."""
    if tally.sap_brix_mean is None:
        if when is not None:
            return f"{when}: no sugar test in the tally."
        return "No sugar test in the tally yet. Text it like: 12 gal at 2.2."
    mean = amounts.number(tally.sap_brix_mean, 2)
    name = "Season" if when is None else f"{when}:"
    return f"{name} mean {mean} Brix over {amounts.volume(tally.sap_gallons, style)}."


def jars(tally: Tally, style: Style, when: str | None = None) -> str:
    """What was bottled in the season, or in the days called `when`."""
    if not tally.jars_gallons:
        if when is not None:
            return f"{when}: nothing bottled in the tally."
        return "Nothing bottled in the tally yet. Text it like: bottled 6 pints."
    said = amounts.volume(tally.jars_gallons, style)
    in_pints = amounts.pints(tally.jars_gallons)
    if not style.is_metric and said != in_pints:
        said += f" ({in_pints})"
    if when is not None:
        return f"{when}: {said} in jars."
    if tally.syrup_records:
        said += f" of {amounts.syrup(tally.syrup_gallons, style)} drawn"
    return f"In jars this season {said}."


def poured_out(tally: Tally, style: Style, when: str | None = None) -> str:
    """What was poured out in the season, or in the days called `when`."""
    said = amounts.volume(tally.poured_out_gallons, style)
    if when is not None:
        return f"{when}: {said if tally.poured_out_gallons else 'nothing'} poured out."
    if not tally.poured_out_gallons:
        return "Nothing poured out in the tally this season."
    return f"Poured out {said} of {amounts.volume(tally.sap_gallons, style)} this season."


def boiled(boils: int, hours: float, gallons: float, style: Style, when: str | None = None) -> str:
    """Hours of boiling, and the sap that went in where it was told."""
    if not boils:
        if when is not None:
            return f"{when}: no boil in the tally."
        return "No boil in the tally yet this season. Text it like: lit the fire."
    said = f"{amounts.hours(hours)} in {amounts.plural(boils, 'boil')}"
    if gallons:
        said += f", {amounts.volume(gallons, style)} of sap"
    return f"Boiled {said} this season." if when is None else f"{when}: boiled {said}."


def burns(began_at: datetime, hours: float, style: Style) -> str:
    """A fire that burns still."""
    return f"Fire lit {receipts.started(began_at, style)}, burning {amounts.hours(hours)} so far."


def burned(tally: Tally, style: Style, when: str | None = None) -> str:
    """Fuel burned in the season, or in the days called `when`."""
    told = []
    if tally.cords:
        told.append(amounts.cords(tally.cords))
    if tally.propane_lb:
        told.append(amounts.propane(tally.propane_lb, style))
    if when is not None:
        return f"{when}: {' and '.join(told) or 'no fuel'} burned."
    if not told:
        return "No fuel in the tally yet. Text it like: burned a quarter cord."
    return f"Burned this season: {' and '.join(told)}."


def _sap(tally: Tally, style: Style) -> str:
    said = amounts.volume(tally.sap_gallons, style)
    if tally.sap_brix_mean is not None:
        said += f" at {amounts.mean_brix(tally.sap_brix_mean)}"
    if tally.poured_out_gallons:
        said += f" less {amounts.volume(tally.poured_out_gallons, style)} poured out"
    return said


def _expected(tally: Tally, style: Style) -> str:
    said = f"{_full(tally, style)} syrup"
    return f"{said} if it tests {tally.expected_brix:g}" if tally.brix_is_assumed else said


def _full(tally: Tally, style: Style) -> str:
    return amounts.about_syrup_full(tally.expected_syrup_gallons, style)


def _about(tally: Tally, style: Style) -> str:
    return amounts.about_syrup(tally.expected_syrup_gallons, style)
