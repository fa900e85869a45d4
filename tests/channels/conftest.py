"""Every channel, with what stands behind it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.channels.smtp_stub import SmtpStub, smtp_stub
from tests.channels.twilio_stub import TwilioStub, twilio_stub


@pytest.fixture
def stub() -> Iterator[TwilioStub]:
    """A Twilio that has accepted nothing yet."""
    with twilio_stub() as running:
        yield running


@pytest.fixture
def post() -> Iterator[SmtpStub]:
    """A mail server that has taken nothing yet."""
    with smtp_stub() as running:
        yield running
