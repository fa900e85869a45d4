"""What a run day may bring: gallons as a range learned from their own gatherings, and pails that
could run over."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from itertools import pairwise

from bot.figures import SAP_PER_TAP_BIG_DAY_GALLONS
from bot.morning.bush import Bush
from bot.outdoors import Outdoors
from bot.reckoning.expected_gallons import GallonsRange, Gathering, expected_gallons
from bot.reckoning.mornings import pails_full_at
from bot.reckoning.outlook_figures import BIG_SCORE

ONE_DAY = timedelta(days=1)
# Sap that came longer ago than this has been gathered, told or not (our own).
_MOST_DAYS_UNGATHERED = 4


@dataclass(frozen=True, slots=True)
class Coming:
    """range: US gallons of the day and of the days since the last gathering, None until learned.
    full_at: when the fullest pails could run over, wall clock, None if they should not."""

    range: GallonsRange | None
    full_at: datetime | None


def coming(bush: Bush, out: Outdoors, on: date) -> Coming:
    """What a known day may bring to pails emptied last on `bush.last_gathered`."""
    if not bush.taps:
        return Coming(None, None)
    scores = out.scores()
    today = scores.get(on, 0.0)
    since = _ungathered(bush, on)
    score = today + sum(scores.get(day, 0.0) for day in since)
    learned = expected_gallons(_gatherings(bush, scores), score, bush.taps)
    if bush.bucket_gallons is None or score <= 0:
        return Coming(learned, None)
    # To be careful the high end: of their own record, else of a published big day.
    high = bush.taps * SAP_PER_TAP_BIG_DAY_GALLONS * score / BIG_SCORE
    if learned is not None:
        high = learned.high
    full_at = pails_full_at(
        out.hours_of(on),
        high * today / score,
        bush.taps,
        bush.bucket_gallons,
        held_gallons=high * (1 - today / score),
    )
    return Coming(learned, full_at)


def _ungathered(bush: Bush, on: date) -> list[date]:
    """The days before `on` whose sap still hangs: since the day of the last gathering."""
    last = bush.last_gathered
    if last is None:
        return []
    days = (on - last).days
    return [last + n * ONE_DAY for n in range(1, days)] if days <= _MOST_DAYS_UNGATHERED else []


def _gatherings(bush: Bush, scores: dict[date, float]) -> list[Gathering]:
    """The gatherings of this season whose days' weather is all known."""
    taps = float(bush.taps or 0)
    found = []
    ordered = sorted(bush.gathered)
    for before, on in pairwise(ordered):
        days = [before + n * ONE_DAY for n in range(1, (on - before).days + 1)]
        if all(day in scores for day in days):
            score = sum(scores[day] for day in days)
            found.append(Gathering(score, bush.gathered[on], taps))
    return found
