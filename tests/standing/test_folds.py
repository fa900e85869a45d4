"""Boils, taps and stored sap out of what was texted about them."""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from typing import Any

import pytest

from bot.entry import Entry
from bot.ledger import TimedSap
from bot.reckoning.balance import sap_per_syrup
from bot.standing import BoilSums, Taps, boil_sums, boils_of, open_boil, sap_on_hand, taps_of

DAY = date(2027, 3, 6)


def at(hour: float, on: date = DAY) -> datetime:
    """A wall clock of the day."""
    return datetime.combine(on, time()) + timedelta(hours=hour)


def entry(
    kind: str, hour: float, *, on: date = DAY, state: str | None = None, **more: Any
) -> Entry:
    """An entry at an hour of the day."""
    detail = dict(more.pop("detail", {}))
    if state is not None:
        detail["state"] = state
    return Entry(kind=kind, on=on, at_local=at(hour, on), detail=detail, **more)


def lit(hour: float, on: date = DAY, **more: Any) -> Entry:
    return entry("boil", hour, on=on, state="start", **more)


def goes_in(hour: float, gallons: float) -> Entry:
    return entry("boil", hour, gallons=gallons, detail={"manner": "in"})


def out(hour: float, on: date = DAY, **more: Any) -> Entry:
    return entry("boil", hour, on=on, state="end", **more)


@pytest.mark.parametrize(
    ("told", "hours"),
    [
        ([lit(10), out(18)], [8.0]),
        ([lit(10), out(18, hours=7.0)], [7.0]),
        ([lit(10), out(17, gallons=40.0)], [7.0]),
        ([out(17, gallons=40.0, hours=7.0)], [7.0]),
        ([out(17)], [None]),
        # Lit again while it burns: the same fire.
        ([lit(10), lit(12), out(18)], [8.0]),
        # Past midnight.
        ([lit(20), out(1.5, DAY + timedelta(days=1))], [5.5]),
        # Two boils of a day.
        ([lit(8), out(12), lit(14), out(20)], [4.0, 6.0]),
        # Told again soon after it ended: the same boil, with the hours that were said.
        ([lit(10), out(18), out(19, gallons=40.0, hours=7.5)], [7.5]),
        ([lit(10), out(17, gallons=40.0), out(18)], [8.0]),
        # Told long after, or with other figures: another boil.
        ([lit(8), out(10), out(17, hours=3.0)], [2.0, 3.0]),
        ([out(9, hours=2.0), out(12, hours=3.0)], [2.0, 3.0]),
        # Forgotten overnight: given up, and what ends later has no start.
        ([lit(10), out(20, DAY + timedelta(days=1))], [None]),
        ([lit(10), lit(10, DAY + timedelta(days=1)), out(15, DAY + timedelta(days=1))], [5.0]),
        ([lit(10)], [None]),
    ],
)
def test_hours_of_boils(told: list[Entry], hours: list[float | None]) -> None:
    assert [boil.hours for boil in boils_of(told)] == hours


def test_boils_add_up_without_the_one_that_burns() -> None:
    told = [lit(8), out(12, gallons=20.0), lit(14)]
    assert boil_sums(boils_of(told)) == BoilSums(boils=1, hours=4.0, gallons=20.0)


@pytest.mark.parametrize(
    ("told", "hour", "burns"),
    [
        ([], 12, False),
        ([lit(10)], 12, True),
        ([out(11)], 12, False),
        ([lit(10)], 31, False),
        ([lit(10), goes_in(11, 12.0)], 12, True),
        ([lit(10), goes_in(11, 12.0), out(12)], 13, False),
        ([goes_in(11, 12.0)], 12, False),
    ],
)
def test_whether_a_fire_burns(told: list[Entry], hour: float, burns: bool) -> None:
    assert (open_boil(told, at(hour)) is not None) is burns


def test_sap_that_goes_in_is_of_the_boil_that_burns() -> None:
    told = [lit(8, gallons=10.0), goes_in(9, 12.0), goes_in(11, 8.0), out(12)]
    assert boil_sums(boils_of(told)) == BoilSums(boils=1, hours=4.0, gallons=30.0)
    assert boils_of([*told[:-1], out(12, gallons=28.0)])[0].gallons == 28.0


def taps(kind: str, count: int | None, lot: str | None = None, manner: str = "add") -> Entry:
    """Taps put in, stated or pulled."""
    detail = {"manner": manner} if kind == "taps_set" else {}
    return entry(kind, 9, count=count, lot=lot, detail=detail)


@pytest.mark.parametrize(
    ("told", "by_lot"),
    [
        ([taps("taps_set", 14)], {None: 14}),
        ([taps("taps_set", 14), taps("taps_set", 6)], {None: 20}),
        ([taps("taps_set", 14), taps("taps_set", 16, manner="total")], {None: 16}),
        ([taps("taps_set", 6, "ridge"), taps("taps_set", 10, "road")], {"ridge": 6, "road": 10}),
        # A total without a lot keeps the lots that fit into it.
        (
            [taps("taps_set", 6, "ridge"), taps("taps_set", 16, manner="total")],
            {"ridge": 6, None: 10},
        ),
        ([taps("taps_set", 26, "ridge"), taps("taps_set", 16, manner="total")], {None: 16}),
        ([taps("taps_set", 14), taps("taps_pulled", 4)], {None: 10}),
        ([taps("taps_set", 14, "ridge"), taps("taps_pulled", 4)], {"ridge": 10}),
        ([taps("taps_set", 14), taps("taps_pulled", None)], {}),
        ([taps("taps_set", 4), taps("taps_pulled", 9)], {None: 0}),
    ],
)
def test_taps(told: list[Entry], by_lot: dict[str | None, int]) -> None:
    found = taps_of(told)
    assert found == Taps(by_lot)
    assert found.count == sum(by_lot.values())


def test_taps_never_told_are_unknown_and_not_none_hanging() -> None:
    assert taps_of([]) is None


def sap(gallons: float, hour: float, on: date = DAY) -> TimedSap:
    return TimedSap(at(hour, on), on, gallons)


def waits(gathered: list[TimedSap], others: list[Entry], today: date = DAY) -> list[float]:
    """Gallons of the lots that wait."""
    return [round(lot.gallons, 3) for lot in sap_on_hand(gathered, others, today, 2.0, 66.0)]


def test_what_is_gathered_waits_a_day_a_lot() -> None:
    earlier = DAY - timedelta(days=1)
    assert waits([sap(5, 17, earlier), sap(2, 9), sap(3, 17)], []) == [5, 5]


def test_a_boil_takes_the_oldest_first() -> None:
    earlier = DAY - timedelta(days=1)
    assert waits([sap(5, 17, earlier), sap(8, 9)], [out(15, gallons=7.0)]) == [6]


def test_a_boil_without_an_amount_takes_all_there_was() -> None:
    assert waits([sap(20, 9), sap(4, 19)], [lit(10), out(17)]) == [4]


def test_sap_in_the_pan_waits_until_the_fire_is_out() -> None:
    assert waits([sap(20, 9)], [lit(10)]) == [20]


def test_what_is_poured_out_is_gone() -> None:
    assert waits([sap(20, 9)], [entry("poured_out", 12, gallons=5.0)]) == [15]
    assert waits([sap(20, 9)], [entry("poured_out", 12)]) == []


def test_syrup_drawn_without_a_boil_took_its_sap() -> None:
    drawn = [entry("syrup", 20, gallons=0.25)]
    assert waits([sap(20, 9)], drawn) == [round(20 - 0.25 * sap_per_syrup(2.0, 66.0), 3)]


def test_syrup_of_a_boil_takes_nothing_more() -> None:
    told = [lit(10), out(17, gallons=10.0), entry("syrup", 18, gallons=0.25)]
    assert waits([sap(20, 9)], told) == [10]


def test_a_temperature_marks_what_was_there() -> None:
    lots = sap_on_hand(
        [sap(5, 9), sap(3, 17)], [entry("store_temp", 12, fahrenheit=47.0)], DAY, 2.0, 66.0
    )
    assert [(lot.gallons, lot.fahrenheit) for lot in lots] == [(5, 47.0), (3, None)]


def test_sap_of_three_weeks_ago_is_no_longer_reckoned_with() -> None:
    assert waits([sap(5, 9, DAY - timedelta(days=21)), sap(3, 9)], []) == [3]


def test_sap_of_tomorrow_does_not_wait_today() -> None:
    assert waits([sap(5, 9, DAY + timedelta(days=1))], []) == []
