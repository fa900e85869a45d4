"""What became due is planned without a gap and owed once, through crashes and standstills."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta
from itertools import pairwise

import pytest

from bot.messages import Unasked
from bot.rounds import FIRST_LOOK_BACK, LONGEST_LOOK_BACK, Round
from tests.outbox.post_office import HOUR, MINUTE, NOW_UTC, Office

QUARTER = timedelta(minutes=15)


class Plan:
    """Owes Ann a text an hour, on the hour; dies as told."""

    def __init__(self, office: Office) -> None:
        self.office = office
        self.ann = office.meet()
        self.asked: list[tuple[datetime, datetime]] = []
        self.dies_after: int | None = None

    def __call__(self, since_utc: datetime, until_utc: datetime) -> Iterable[Unasked]:
        self.asked.append((since_utc, until_utc))
        hour = since_utc.replace(minute=0, second=0) + HOUR
        given = 0
        while hour <= until_utc:
            if given == self.dies_after:
                raise RuntimeError
            yield self.office.unasked(self.ann, key=f"at {hour:%d %H}", due_utc=hour)
            given += 1
            hour += HOUR

    def round(self) -> Round:
        return Round("hours", self, self.office.ledger, self.office.clock)


def keys(plan: Plan) -> list[str]:
    return [row.key for row in plan.office.rows(plan.ann)]


def test_the_stretches_follow_one_another_without_a_gap(office: Office) -> None:
    plan = Plan(office)
    for _ in range(9):
        plan.round().go()
        office.clock.advance(QUARTER)
    assert plan.asked[0] == (NOW_UTC - FIRST_LOOK_BACK, NOW_UTC)
    for earlier, later in pairwise(plan.asked):
        assert later[0] == earlier[1]
    assert keys(plan) == ["at 09 15", "at 09 16", "at 09 17"]


def test_a_round_that_is_gone_twice_owes_nothing_anew(office: Office) -> None:
    plan = Plan(office)
    office.clock.advance(HOUR)
    assert plan.round().go() == 1
    assert plan.round().go() == 0
    assert len(plan.asked) == 1


def test_a_round_that_broke_off_is_gone_again_from_where_it_began(office: Office) -> None:
    plan = Plan(office)
    plan.round().go()
    office.clock.advance(3 * HOUR)
    plan.dies_after = 2
    with pytest.raises(RuntimeError):
        plan.round().go()
    plan.dies_after = None
    office.clock.advance(MINUTE)
    plan.round().go()
    assert plan.asked[-1] == (NOW_UTC, NOW_UTC + 3 * HOUR + MINUTE)
    assert keys(plan) == ["at 09 15", "at 09 16", "at 09 17", "at 09 18"]


def test_after_a_standstill_what_it_missed_is_planned_up_to_a_day(office: Office) -> None:
    plan = Plan(office)
    plan.round().go()
    office.clock.advance(30 * HOUR)
    plan.round().go()
    assert plan.asked[-1] == (office.now - LONGEST_LOOK_BACK, office.now)


def test_a_clock_that_was_set_back_plans_nothing_twice(office: Office) -> None:
    plan = Plan(office)
    plan.round().go()
    office.clock.advance(-HOUR)
    assert plan.round().go() == 0
    office.clock.advance(HOUR + QUARTER)
    plan.round().go()
    assert plan.asked[-1] == (NOW_UTC, NOW_UTC + QUARTER)


def test_each_plan_has_a_mark_of_its_own(office: Office) -> None:
    plan = Plan(office)
    plan.round().go()
    Round("others", plan, office.ledger, office.clock).go()
    assert plan.asked == [(NOW_UTC - FIRST_LOOK_BACK, NOW_UTC)] * 2


def test_many_texts_are_owed_in_several_transactions(office: Office) -> None:
    ann = office.meet()

    def plan(since_utc: datetime, until_utc: datetime) -> Iterable[Unasked]:
        return [office.unasked(ann, key=str(number)) for number in range(1201)]

    assert Round("many", plan, office.ledger, office.clock).go() == 1201
    assert len(office.rows(ann)) == 1201
