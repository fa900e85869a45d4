"""The real mail servers, started once, with empty mailboxes for each test."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.mail.peers import Peers, running_peers


@pytest.fixture(scope="session")
def _servers() -> Iterator[Peers]:
    with running_peers() as running:
        yield running


@pytest.fixture
def peers(_servers: Peers) -> Peers:
    """Real postfix and dovecot, nothing in any mailbox."""
    _servers.empty()
    return _servers
