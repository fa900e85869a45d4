"""Every channel, with what stands behind it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.channels.twilio_stub import TwilioStub, twilio_stub


@pytest.fixture
def stub() -> Iterator[TwilioStub]:
    """A Twilio that has accepted nothing yet."""
    with twilio_stub() as running:
        yield running
