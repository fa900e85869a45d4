"""Date phrases, said on a Wednesday, and the local day that each means."""

from __future__ import annotations

from datetime import date, datetime

import pytest

from bot.reading import read
from bot.reading.calendar_days import DateHit
from bot.reading.dates import match
from bot.reading.tidy import tidy
from bot.reading.tokens import tokens

WEDNESDAY = datetime(2027, 3, 10, 18, 5)
PAST_MIDNIGHT = datetime(2027, 3, 10, 0, 30)
IN_JANUARY = datetime(2027, 1, 2, 8, 0)


def hit(phrase: str, sent: datetime = WEDNESDAY) -> DateHit | None:
    """The date phrase at the start of a text."""
    return match(tokens(tidy(phrase)), 0, sent)


@pytest.mark.parametrize(
    ("phrase", "day"),
    [
        ("today", 10), ("this morning", 10), ("tonight", 10), ("earlier today", 10),
        ("yesterday", 9), ("yest", 9), ("yesterday morning", 9), ("last night", 9),
        ("day before yesterday", 8), ("the day before yesterday", 8), ("the night before last", 8),
        ("2 days ago", 8), ("two days ago", 8), ("a couple days ago", 8), ("a week ago", 3),
        ("a week ago today", 3), ("mon", 8), ("monday", 8), ("on monday", 8), ("last monday", 8),
        ("wed", 10), ("last wed", 3), ("thurs", 4), ("weds", 10), ("this past saturday", 6),
        ("sat", 6), ("saturday before last", None), ("the 4th", 4), ("on the 9th", 9),
        ("march 4", 4),
        ("mar 4th", 4), ("march the 4th", 4), ("4th of march", 4), ("4 march", 4), ("3/4", None),
        ("3/7", 7), ("on 3/4", 4), ("3/7/27", 7), ("2027-03-07", 7), ("mon night", 8),
    ],
)  # fmt: skip
def test_a_phrase_means_the_day_that_a_person_would_take_it_for(
    phrase: str, day: int | None
) -> None:
    """None: no date of this month (a fraction, or a day of the month before)."""
    found = hit(phrase)
    meant = found.on if found is not None else None
    if day is None:
        assert meant is None or meant.month != WEDNESDAY.month
    else:
        assert meant == date(2027, 3, day)


@pytest.mark.parametrize(
    "phrase", ["5", "may", "march", "2.2", "12 gal", "3rd house", "4 taps", "1/2", "sun is out"]
)
def test_what_is_no_date_is_never_taken_for_one(phrase: str) -> None:
    """A library that searches whole messages finds dates in all of these."""
    found = hit(phrase)
    assert found is None


def test_last_night_said_past_midnight_is_the_evening_that_has_just_been() -> None:
    """The person has not slept yet."""
    found = hit("last night", PAST_MIDNIGHT)
    assert found is not None
    assert found.on == date(2027, 3, 9)


def test_a_december_day_said_in_january_is_of_the_year_before() -> None:
    """The nearest such day is meant."""
    found = hit("dec 30", IN_JANUARY)
    assert found is not None
    assert found.on == date(2026, 12, 30)
    assert not found.ahead


@pytest.mark.parametrize(
    "text",
    [
        "12 gal on feb 30",
        "12 gal on the 35th",
        "12 gal on april 20",
        "12 gal the other day",
        "12 gal on 3/7/26",
    ],
)
def test_a_day_that_cannot_be_meant_is_asked_about_and_nothing_recorded(text: str) -> None:
    """No such day, a day to come, one that is not told, or one of another year."""
    understood = read(text, WEDNESDAY)
    assert understood.ask
    assert not understood.readings
