"""The web door with a fake behind it."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Callable, Iterable
from dataclasses import dataclass, field
from datetime import UTC, datetime

import httpx
import pytest
from fastapi import FastAPI

from bot.channels.channel import Report
from bot.channels.twilio_sms import Signatures
from bot.clock import HandClock
from bot.messages import Incoming
from bot.web import Closed, make_app
from tests.doors.twilio_peer import PUBLIC_URL, TOKEN, encoded, headers

NOW_UTC = datetime(2027, 3, 9, 22, 15, tzinfo=UTC)


@dataclass
class Behind:
    """What stands behind the door: remembers each text and gives the reply that is set."""

    reply: str | None = "12 gal at 2.2, Tue."
    texts: list[Incoming] = field(default_factory=list)
    reports: list[Report] = field(default_factory=list)
    error: Exception | None = None

    def receive(self, text: Incoming) -> str | None:
        if self.error is not None:
            raise self.error
        self.texts.append(text)
        return self.reply

    def note(self, report: Report) -> None:
        if self.error is not None:
            raise self.error
        self.reports.append(report)

    def look_at_store(self) -> None:
        if self.error is not None:
            raise self.error


def app(behind: Behind, signatures: Signatures | Closed) -> FastAPI:
    """The door in front of it."""
    clock = HandClock(NOW_UTC)
    return make_app(behind.receive, signatures, clock, behind.look_at_store, behind.note)


class Caller:
    """Calls an application without a network. An error in it is a 500, as on the real server."""

    def __init__(self, app: FastAPI) -> None:
        self.app = app
        self._transport = httpx.ASGITransport(app, raise_app_exceptions=False)

    def get(self, path: str) -> httpx.Response:
        return asyncio.run(self._call("GET", path, b"", {}))

    def post(self, path: str, content: bytes | Iterable[bytes], headers: Headers) -> httpx.Response:
        return asyncio.run(self._call("POST", path, content, headers))

    async def _call(
        self, method: str, path: str, content: bytes | Iterable[bytes], headers: Headers
    ) -> httpx.Response:
        body = content if isinstance(content, bytes) else _in_pieces(content)
        async with httpx.AsyncClient(transport=self._transport, base_url=PUBLIC_URL) as client:
            return await client.request(method, path, content=body, headers=headers)


async def _in_pieces(pieces: Iterable[bytes]) -> AsyncIterator[bytes]:
    for piece in pieces:
        yield piece


Headers = dict[str, str] | dict[bytes, bytes]
Post = Callable[..., httpx.Response]


@pytest.fixture
def behind() -> Behind:
    return Behind()


@pytest.fixture
def client(behind: Behind) -> Caller:
    """Calls the open door."""
    signatures = Signatures(TOKEN, PUBLIC_URL)
    return Caller(app(behind, signatures))


@pytest.fixture
def closed_client(behind: Behind) -> Caller:
    """Calls a door that has no token."""
    closed = Closed("No token.")
    return Caller(app(behind, closed))


@pytest.fixture
def post(client: Caller) -> Post:
    """Posts a form as Twilio does; `signed` are the headers, by default the right ones."""

    def send(
        fields: dict[str, str], signed: Headers | None = None, path: str = "/in/twilio"
    ) -> httpx.Response:
        chosen = headers(fields) if signed is None else signed
        return client.post(path, content=encoded(fields), headers=chosen)

    return send
