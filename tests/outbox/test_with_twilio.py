"""The outbox, the official Twilio client, a Twilio that misbehaves, and its reports at our door."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from urllib.parse import urlsplit

import httpx
import pytest

from bot.channels.twilio_sms import Signatures
from bot.clock import HandClock
from bot.ledger import Ledger, Who
from bot.messages import SMS_DOOR, TWILIO_STATUS_PATH
from bot.outbox import LEASE, Outbox
from bot.web import make_app
from tests.channels.twilio_stub import (
    TOKEN,
    Refuse,
    Silence,
    TwilioStub,
    encoded,
    report_form,
    twilio_stub,
)
from tests.doors.conftest import Caller
from tests.doors.twilio_peer import PUBLIC_URL, headers
from tests.outbox.post_office import MINUTE, Office

# Twilio's own clock is the machine's: ours begins there, at noon by the clock of those who text.
NOON = datetime.now(UTC)
ZONE = f"Etc/GMT{-(12 - NOON.hour):+d}" if NOON.hour != 12 else "Etc/GMT"


class Line:
    """Us and Twilio, each reaching the other."""

    def __init__(self, office: Office, twilio: TwilioStub) -> None:
        self.office, self.twilio = office, twilio
        channel = twilio.channel(status_url=PUBLIC_URL + TWILIO_STATUS_PATH)
        self.outbox = Outbox(office.ledger, {SMS_DOOR: channel}, office.clock, ZONE)
        app = make_app(
            lambda _: None,
            Signatures(TOKEN, PUBLIC_URL),
            office.clock,
            lambda: None,
            self.outbox.report,
        )
        self._door = Caller(app)

    def go(self, later: timedelta = timedelta(0)) -> None:
        self.office.clock.advance(later)
        self.outbox.deliver_due()

    def report(
        self, number: int, status: str, code: int | None = None, token: str = TOKEN
    ) -> httpx.Response:
        """Twilio reports on the text that it accepted as the first, second, and so on."""
        message = self.twilio.messages[number - 1]
        url = message.form["StatusCallback"]
        fields = report_form(message.sid, message.to, status, code)
        parts = urlsplit(url)
        return self._door.post(
            f"{parts.path}?{parts.query}",
            content=encoded(fields),
            headers=headers(fields, url, token),
        )

    def state(self, who: Who) -> tuple[str, str | None]:
        row = self.office.row(who)
        return row.state, row.status


@pytest.fixture
def line(tmp_path: Path) -> Iterator[Line]:
    ledger = Ledger.open(f"sqlite:///{tmp_path / 'a.sqlite3'}")
    with twilio_stub() as twilio:
        yield Line(Office(ledger, HandClock(NOON), zone=ZONE), twilio)
    ledger.close()


def test_reports_that_are_repeated_and_out_of_order_end_where_they_should(line: Line) -> None:
    ann = line.office.meet()
    line.office.owe(ann)
    line.go()
    for status in ("delivered", "queued", "sent", "delivered", "sent"):
        assert line.report(1, status).status_code == 200
    assert line.state(ann) == ("sent", "delivered")


def test_a_timeout_after_accepting_is_answered_by_the_report(line: Line) -> None:
    ann = line.office.meet()
    line.office.owe(ann)
    line.twilio.next_sends.append(Silence(accepted=True))
    line.go()
    assert line.state(ann) == ("unclear", None)
    line.report(1, "sent")
    assert line.state(ann) == ("sent", "sent")
    line.go(2 * LEASE)
    assert len(line.twilio.messages) == 1


def test_a_timeout_after_accepting_is_found_in_the_list(line: Line) -> None:
    ann = line.office.meet()
    line.office.owe(ann)
    line.twilio.next_sends.append(Silence(accepted=True))
    line.go()
    line.go(LEASE)
    assert line.state(ann) == ("sent", "accepted")
    assert line.office.row(ann).provider_id == line.twilio.messages[0].sid
    assert len(line.twilio.messages) == 1


def test_a_timeout_before_accepting_is_sent_again(line: Line) -> None:
    ann = line.office.meet()
    line.office.owe(ann)
    line.twilio.next_sends.append(Silence(accepted=False))
    line.go()
    line.go(LEASE)
    assert line.state(ann) == ("sent", "accepted")
    assert len(line.twilio.messages) == 1
    assert line.twilio.requests == 2


def test_a_forged_report_silences_nobody(line: Line) -> None:
    ann = line.office.meet()
    line.office.owe(ann)
    line.go()
    assert line.report(1, "undelivered", 21610, token="f" * 32).status_code == 403
    assert line.state(ann) == ("sent", "accepted")
    line.office.owe(ann, key="gather")
    line.go(MINUTE)
    assert len(line.twilio.messages) == 2


def test_whoever_opted_out_at_twilio_gets_no_second_try_until_start(line: Line) -> None:
    ann = line.office.meet()
    line.office.owe(ann)
    line.office.owe(ann, key="gather", due_utc=line.office.now + MINUTE)
    line.twilio.next_sends.append(Refuse(400, 21610))
    line.go()
    line.go(MINUTE)
    assert line.office.states(ann) == ["failed", "dropped"]
    assert line.twilio.requests == 1
    line.office.say(ann, "START")
    line.office.owe(ann, key="taps")
    line.go(MINUTE)
    assert line.office.states(ann) == ["failed", "dropped", "sent"]
