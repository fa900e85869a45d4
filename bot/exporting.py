"""One's records as a CSV file (RFC 4180): a row a record that counts, with who logged it."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable

from bot.entry import AMOUNT_FIELDS
from bot.ledger import Book
from bot.ledger.own_data import Line

FILE_NAME = "pailtext.csv"
COLUMNS = ("on", "time_local", "kind", *AMOUNT_FIELDS, "detail", "logged_by", "stored_utc")
# A cell that begins so is a formula to a spreadsheet; a mark in front keeps it text (OWASP, "CSV
# Injection").
_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def export_csv(book: Book, person_id: int) -> str | None:
    """All that counts of the sugarbush that a person belongs to, None where there is no such
    person. Amounts are in the units of the columns' names."""
    who = book.people.lock(person_id)
    if who is None:
        return None
    names = {mate.person_id: mate.address for mate in book.members.of(who.sugarbush_id)}
    names[person_id] = "me"
    return _written(book.own_data.of(who.sugarbush_id), names)


def _written(lines: Iterable[Line], names: dict[int, str]) -> str:
    file = io.StringIO()
    rows = csv.writer(file)
    rows.writerow(COLUMNS)
    for line in lines:
        entry = line.entry
        amounts = (getattr(entry, name) for name in AMOUNT_FIELDS)
        detail = json.dumps(dict(entry.detail), sort_keys=True) if entry.detail else None
        rows.writerow(
            [
                entry.on.isoformat(),
                entry.at_local.isoformat(timespec="minutes").partition("T")[2],
                entry.kind,
                *map(_cell, amounts),
                _cell(detail),
                _cell(names.get(line.person_id, "one who left")),
                line.stored_utc.isoformat(timespec="seconds"),
            ]
        )
    return file.getvalue()


def _cell(value: object) -> object:
    is_formula = isinstance(value, str) and value.startswith(_FORMULA)
    return f"'{value}" if is_formula else value
