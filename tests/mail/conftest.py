"""The real mail servers, started once, with empty mailboxes for each test; a house with mail."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.mail.peers import Peers, running_peers
from tests.mail.stage import House


@pytest.fixture(scope="session")
def _servers() -> Iterator[Peers]:
    with running_peers() as running:
        yield running


@pytest.fixture
def peers(_servers: Peers) -> Peers:
    """Real postfix and dovecot, nothing in any mailbox."""
    _servers.empty()
    return _servers


@pytest.fixture
def house() -> Iterator[House]:
    """Pailtext with mail, in memory; Ann has texted from her phone."""
    built = House()
    built.text("I'm in 05673")
    yield built
    built.close()
