"""An SMTP server on loopback that keeps what it takes, and fails as it is told."""

from __future__ import annotations

import socketserver
import threading
from collections import deque
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from email import message_from_bytes, policy
from email.message import EmailMessage
from typing import cast

from bot.channels.email_servers import Servers
from bot.channels.email_smtp import Cover, CoverOf, EmailSmtp
from bot.clock import SystemClock

OWN = "log@pail.example"


@dataclass(frozen=True)
class Taken:
    """A mail as it was taken: to whom, and its bytes."""

    to: tuple[str, ...]
    raw: bytes

    @property
    def mail(self) -> EmailMessage:
        return message_from_bytes(self.raw, policy=policy.default)


@dataclass
class SmtpStub:
    """refusals: the answers to the next receivers, by code. breaks: "before" or "after" the next
    mail is taken, the connection ends without an answer."""

    port: int = 0
    taken: list[Taken] = field(default_factory=list)
    refusals: deque[int] = field(default_factory=deque)
    breaks: deque[str] = field(default_factory=deque)

    @property
    def servers(self) -> Servers:
        url = f"smtp://127.0.0.1:{self.port}"
        return Servers(OWN, "imap://127.0.0.1:1", url, OWN, "")

    def channel(self, cover_of: CoverOf = lambda _outgoing: Cover()) -> EmailSmtp:
        return EmailSmtp(self.servers, SystemClock(), cover_of, self.has_copy)

    def has_copy(self, message_id: str) -> bool:
        """Our own mailbox is what was taken for our own address."""
        return any(OWN in one.to and one.mail["Message-ID"] == message_id for one in self.taken)

    def bodies(self) -> list[str]:
        """The plain words of each mail."""
        found = [one.mail.get_body(("plain",)) for one in self.taken]
        return [str(body.get_content()).rstrip("\n") for body in found if body is not None]


class _Session(socketserver.StreamRequestHandler):
    def handle(self) -> None:
        stub = cast(_Server, self.server).stub
        to: list[str] = []
        self._say(220)
        while line := self.rfile.readline():
            word = line.strip().upper()
            if word.startswith(b"RCPT"):
                code = stub.refusals.popleft() if stub.refusals else 250
                if code == 250:
                    to.append(line.partition(b"<")[2].partition(b">")[0].decode())
                self._say(code)
            elif word == b"DATA":
                self._say(354)
                if not self._take(stub, to):
                    return
            elif word == b"QUIT":
                self._say(221)
                return
            else:
                self._say(250)

    def _take(self, stub: SmtpStub, to: list[str]) -> bool:
        lines = []
        while (line := self.rfile.readline()) not in (b".\r\n", b""):
            lines.append(line[1:] if line.startswith(b".") else line)
        how = stub.breaks.popleft() if stub.breaks else None
        if how != "before":
            stub.taken.append(Taken(tuple(to), b"".join(lines)))
        if how is None:
            self._say(250)
        return how is None

    def _say(self, code: int) -> None:
        self.wfile.write(b"%d stub\r\n" % code)


class _Server(socketserver.ThreadingTCPServer):
    allow_reuse_address = True
    daemon_threads = True
    stub: SmtpStub


@contextmanager
def smtp_stub() -> Iterator[SmtpStub]:
    """A running server that has taken nothing yet."""
    with _Server(("127.0.0.1", 0), _Session) as server:
        server.stub = SmtpStub(port=server.server_address[1])
        running = threading.Thread(target=server.serve_forever, args=(0.05,), daemon=True)
        running.start()
        try:
            yield server.stub
        finally:
            server.shutdown()
            running.join()
