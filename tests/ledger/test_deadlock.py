"""Two transactions on PostgreSQL that wait for each other: one is ended, and may begin again."""

from __future__ import annotations

import threading
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime

from bot.ledger import CollisionError, Ledger
from bot.messages import Incoming

NOW = datetime(2027, 3, 10, 22, 20, tzinfo=UTC)
LONGEST_S = 60.0


def test_one_of_two_that_wait_for_each_other_collides_and_the_other_goes_through(
    postgres_url: str,
) -> None:
    ledger = Ledger.open(postgres_url)
    one, other = (
        ledger.keep(Incoming("test", str(n), f"+1555010000{n}", "12 gal", NOW)).id for n in (1, 2)
    )
    both_hold_one = threading.Barrier(2)

    def claim(first: int, second: int) -> str:
        try:
            with ledger.writing() as book:
                book.inbox.claim(first)
                both_hold_one.wait(LONGEST_S)
                book.inbox.claim(second)
        except CollisionError:
            return "collided"
        return "through"

    with ThreadPoolExecutor(2) as pool:
        ended = [pool.submit(claim, one, other), pool.submit(claim, other, one)]
        assert sorted(each.result(LONGEST_S) for each in ended) == ["collided", "through"]
    ledger.close()
