"""What stands beside a note changes nothing of it: a day, a greeting, thanks, another note.

Each relation is tried on all of our own plain texts. A question in place of a record is no fault
here; a record that is another one is, and of those only one in eighty is borne with.
"""

from __future__ import annotations

import json
import random
import re
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest

from bot.reading.lines import answer
from tests.reading.test_texts import LINES, NOT_YET

SENT = "2027-03-10T17:20"  # a Wednesday
TODAY = "2027-03-10"
LONGEST = 60
MOST_OTHERWISE = 0.012
"""The share of texts that may be read otherwise with something beside them."""
SEED = 11
_DATED = re.compile(
    r"\b(?:to\w*day|tomorrow|tonite|tonight|yesterday|last|this|mon|tue|wed|thu|fri|sat|sun|ago|morning|night"
    r"|\d+/\d+|the \d+|jan|feb|mar|apr|now|just|noon|day|week|am|pm|season|since|ahead|before"
    r"|after|again|so far)|\bperiod\b|\bcomma\b",
    re.IGNORECASE,
)
Reading = dict[str, Any]


def read(text: str, profile: dict[str, Any] | None = None) -> tuple[list[Reading], bool]:
    """The readings of a text sent on the afternoon of the tenth, and whether it is asked about. A
    time of day without am or pm may be the one or the other on another day, so it is left out."""
    meant = answer({"text": text, "sent": SENT, "profile": profile or {}})
    readings = [{name: v for name, v in one.items() if name != "at"} for one in meant["readings"]]
    return readings, meant["ask"] is not None


def plain_notes() -> list[tuple[str, dict[str, Any], Reading]]:
    """Short texts of one sentence that tell one thing of today, with the senders' profiles."""
    found = []
    for line in LINES:
        text = line["text"].rstrip(" .!")
        if line["id"] in NOT_YET or len(text) > LONGEST or _DATED.search(text):
            continue
        if re.search(r"[?,;\n]|[.!] |(?:\d|een|ty)$", text) or line["ask"]:
            continue
        readings, asked = read(text, line.get("profile"))
        if not asked and len(readings) == 1 and readings[0].get("on") == TODAY:
            found.append((text, line.get("profile") or {}, readings[0]))
    return found


NOTES = plain_notes()


def otherwise(
    beside: Callable[[str], str], wanted: Callable[[Reading], list[Reading]]
) -> list[str]:
    """The texts that are read as something else with something beside them."""
    wrong = []
    for text, profile, alone in NOTES:
        readings, asked = read(beside(text), profile)
        kept = [one for one in readings if one["kind"] not in ("chat", "question")]
        if not asked and kept and kept != wanted(alone):
            wrong.append(beside(text))
    return wrong


def test_there_are_enough_plain_notes_to_try() -> None:
    assert len(NOTES) > 450


@pytest.mark.parametrize(
    ("before", "behind", "on"),
    [
        ("yesterday ", "", date(2027, 3, 9)),
        ("yesterday: ", "", date(2027, 3, 9)),
        ("monday ", "", date(2027, 3, 8)),
        ("mar 8 ", "", date(2027, 3, 8)),
        ("3/8: ", "", date(2027, 3, 8)),
        ("", " yesterday", date(2027, 3, 9)),
        ("", " on monday", date(2027, 3, 8)),
        ("", " on march 8", date(2027, 3, 8)),
        ("", " 3/8", date(2027, 3, 8)),
    ],
)
def test_a_day_beside_a_note_is_its_day_and_changes_nothing_else(
    before: str, behind: str, on: date
) -> None:
    wrong = otherwise(
        lambda text: before + text + behind, lambda alone: [{**alone, "on": on.isoformat()}]
    )
    assert len(wrong) <= MOST_OTHERWISE * len(NOTES), wrong


@pytest.mark.parametrize(
    "beside",
    [
        "Hi, {}",
        "hey {}",
        "ok {}",
        "Good morning! {}",
        "please log {}",
        "for the record, {}",
        "{} thanks",
        "{}. Thank you!",
        "{} lol",
        "{}. Tired.",
        "{}. Roads are all mud.",
        "  {}  ",
    ],
)
def test_small_talk_beside_a_note_changes_nothing(beside: str) -> None:
    wrong = otherwise(beside.format, lambda alone: [alone])
    assert len(wrong) <= MOST_OTHERWISE * len(NOTES), wrong


@pytest.mark.parametrize("form", [str.upper, str.title, str.lower, lambda t: t.replace(" ", "  ")])
def test_capitals_and_spaces_change_nothing(form: Callable[[str], str]) -> None:
    assert otherwise(form, lambda alone: [alone]) == []


@pytest.mark.parametrize("between", [". ", "\n"])
def test_two_notes_in_one_text_are_both(between: str) -> None:
    """Of two kinds that do not belong together, as sap and its sugar do."""
    chance = random.Random(SEED)
    apart = [
        (text, alone)
        for text, profile, alone in NOTES
        if not profile and alone["kind"] not in ("sugar", "pan_temp", "water_boils", "tree")
    ]
    wrong, tried = [], 0
    for text, alone in apart:
        other, beside = chance.choice(apart)
        if alone["kind"] == beside["kind"] or (read(text), read(other)) != (
            ([alone], False),
            ([beside], False),
        ):
            continue
        tried += 1
        readings, asked = read(text + between + other)
        if not asked and sorted(map(json.dumps, readings)) != sorted(
            map(json.dumps, (alone, beside))
        ):
            wrong.append(text + between + other)
    assert tried > 300
    assert len(wrong) <= 2 * MOST_OTHERWISE * tried, wrong
