"""Readings into entries: what a text says becomes what is kept."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, datetime, time
from typing import Any

from bot.entry import AMOUNT_FIELDS, Entry
from bot.reading.kinds import Boil, Jars, Reading

# What is told of another day without a time is set at noon, to sort the day's entries.
NOON = time(12)


def entry_of(reading: Reading, sent: datetime) -> Entry:
    """The entry that a reading makes; `sent` is the local time of its text.

    What has a column goes there, the rest into `detail`, so that a new kind needs nothing here.
    """
    told = reading.as_dict()
    kind = told.pop("kind")
    on = date.fromisoformat(told.pop("on")) if "on" in told else sent.date()
    amounts = {name: told.pop(name) for name in AMOUNT_FIELDS if name in told}
    entry = Entry(kind=kind, on=on, at_local=_at(on, sent), detail=told, **amounts)
    if isinstance(reading, Jars):
        return replace(entry, gallons=jar_gallons(told["jars"]))
    if isinstance(reading, Boil):
        return _boil(entry, reading)
    return entry


def jar_gallons(jars: list[dict[str, Any]]) -> float:
    """Gallons in jars of `count` and `gallons_each`."""
    return float(sum(jar["count"] * jar["gallons_each"] for jar in jars))


def moved(entry: Entry, on: date) -> Entry:
    """The entry on another day, at the same time of day."""
    return replace(entry, on=on, at_local=datetime.combine(on, entry.at_local.time()))


def with_detail(entry: Entry, changes: Mapping[str, Any]) -> Entry:
    """The entry with some of its detail changed."""
    return replace(entry, detail={**entry.detail, **changes})


def _at(on: date, sent: datetime) -> datetime:
    return sent if on == sent.date() else datetime.combine(on, NOON)


def _boil(entry: Entry, boil: Boil) -> Entry:
    """A stated time of day is when it was; a boil told whole is over, unless sap only goes in."""
    detail = {key: value for key, value in entry.detail.items() if key != "at"}
    if boil.state is None and boil.manner is None:
        detail["state"] = "end"
    at = entry.at_local if boil.at is None else datetime.combine(entry.on, boil.at)
    return replace(entry, at_local=at, detail=detail)
