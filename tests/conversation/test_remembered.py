"""What was told is remembered between texts, and never when it is no longer so."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from itertools import count
from pathlib import Path
from unittest.mock import patch

import pytest

from bot.clock import HandClock
from bot.ledger.sums import Sums
from bot.messages import Incoming
from bot.wiring import Parts, build

ANN, BEN = "+15550100011", "+15550100012"
NOW = datetime(2027, 3, 8, 22, tzinfo=UTC)


class House:
    """Processes on one store; each is told texts."""

    def __init__(self, folder: Path) -> None:
        self.url = f"sqlite:///{folder / 'house.sqlite'}"
        self.one, self.other = self._process(), self._process()
        self._number = count(1)

    def _process(self) -> Parts:
        return build(self.url, HandClock(NOW))

    def text(self, parts: Parts, words: str, sender: str = ANN) -> str:
        number = next(self._number)
        # Far apart, so that the same words are no repetition.
        at = NOW + timedelta(minutes=20 * number)
        return parts.inbox.receive(Incoming("test", str(number), sender, words, at)) or ""

    def looks(self, words: str) -> int:
        """How often a text looks at what was told."""
        with patch.object(Sums, "all_names", autospec=True, side_effect=Sums.all_names) as looked:
            self.text(self.one, words)
        return looked.call_count


@pytest.fixture
def house(tmp_path: Path) -> Iterator[House]:
    house = House(tmp_path)
    house.text(house.one, "I'm in 05843")
    house.text(house.one, "set 30 taps")
    yield house
    house.one.ledger.close()
    house.other.ledger.close()


def test_what_stands_is_not_looked_up_again(house: House) -> None:
    assert house.looks("12 gal at 2.2") == 0
    assert house.looks("how much so far") == 0


def test_what_another_process_was_told_counts_at_once(house: House) -> None:
    house.text(house.other, "set 12 taps")
    assert "50" in house.text(house.one, "set 8 taps")


def test_taps_told_in_one_text_count_in_the_next(house: House) -> None:
    house.text(house.one, "set 12 taps")
    assert "50" in house.text(house.one, "set 8 taps")


def test_taps_taken_back_count_no_more(house: House) -> None:
    house.text(house.one, "set 12 taps")
    house.text(house.one, "undo")
    assert "38" in house.text(house.one, "set 8 taps")


def test_a_text_that_broke_leaves_nothing_behind(
    house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as patched:
        patched.setattr("bot.conversation.talk.fit", _breaks)
        house.text(house.one, "set 12 taps")
    assert "38" in house.text(house.one, "set 8 taps")


def test_the_sap_that_waits_is_worked_out_anew_after_each_record(house: House) -> None:
    house.text(house.one, "12 gal at 2.2")
    assert "12 gal" in house.text(house.one, "how much sap is waiting")
    house.text(house.one, "dumped 2 gal")
    assert "10 gal" in house.text(house.one, "how much sap is waiting?")
    house.text(house.one, "undo")
    assert "12 gal" in house.text(house.one, "how much sap is waiting now")


def test_the_sap_that_another_process_was_told_of_waits_too(house: House) -> None:
    house.text(house.one, "12 gal at 2.2")
    house.text(house.one, "how much sap is waiting")
    house.text(house.other, "5 gal at 2")
    assert "17 gal" in house.text(house.one, "how much sap is waiting now")


def test_the_boils_are_counted_anew_after_each_record(house: House) -> None:
    house.text(house.one, "boiled 40 gal in 7 hours")
    assert "7 h" in house.text(house.one, "how many hours have we boiled")
    house.text(house.other, "boiled 10 gal in 2 hours")
    assert "9 h" in house.text(house.one, "how many hours have we boiled so far")


def test_sap_that_waited_grows_old_by_the_clock(house: House) -> None:
    house.text(house.one, "12 gal at 2.2")
    house.text(house.one, "is my sap still good")
    late = Incoming("test", "late", ANN, "is my sap still good", NOW + timedelta(days=9))
    assert "past" in (house.one.inbox.receive(late) or "").casefold()


def test_somebody_new_knows_nothing_of_who_was_forgotten(house: House) -> None:
    house.text(house.one, "forget me")
    house.text(house.one, "yes")
    assert "38" not in house.text(house.one, "set 8 taps", BEN)


def _breaks(*_anything: object) -> str:
    raise ZeroDivisionError
