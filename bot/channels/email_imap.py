"""Mails fetched from any mailbox by IMAP, one at a time, in a thread of their own.

A mail is marked as seen only after whoever takes it has committed it: what breaks off in between
is fetched again, and its Message-ID tells that it is the same. The server says when there is news
(IDLE, RFC 2177), and it is asked every minute whatever it says.
"""

from __future__ import annotations

import logging
import random
import re
import ssl
import threading
import time
from collections import Counter
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from io import BufferedReader
from typing import cast

from imap_tools import AND, BaseMailBox, Header, MailMessageFlags

from bot.channels.email_letter import MOST_BYTES, OWN_MARK
from bot.channels.email_servers import IMAP_ERRORS, Servers

log = logging.getLogger(__name__)

# (the mail's bytes, whether they are all of it, when it arrived at the mailbox, aware UTC) -> None,
# when it is safe in the store.
Take = Callable[[bytes, bool, datetime], None]

# A mail whose taking raised this often is passed over until the next start, for a person to see.
MOST_TRIES = 5
# The mailbox is looked at this often whatever the server says. Our own; servers forget clients
# that wait longer than half an hour (RFC 2177 section 3).
POLL_S = 60.0
# The pauses before connecting anew: doubled each time, up to the longest.
FIRST_PAUSE_S, LONGEST_PAUSE_S = 1.0, 120.0
# How quickly a told stop is obeyed.
_STEP_S = 1.0
# The copies of our own mails, by which a lost answer of the server is cleared up, are needed for
# minutes.
_COPIES_KEPT = timedelta(days=2)


class UnreadableAnswerError(OSError):
    """The IMAP server answered a fetch with something that is no mail."""


class Reader(threading.Thread):
    """Takes what comes into the mailbox until told to stop; connects anew whenever it breaks."""

    def __init__(self, servers: Servers, take: Take, *, first_pause_s: float = FIRST_PAUSE_S):
        super().__init__(name="mail", daemon=True)
        self._servers = servers
        self._take = take
        self._first_pause_s = first_pause_s
        self._stopped = threading.Event()
        # Mails that could not be taken, by the mailbox's UIDVALIDITY and their UID: other numbers
        # when the server has numbered the mailbox anew.
        self._failed: Counter[tuple[int, str]] = Counter()

    def stop(self) -> None:
        """End after the mail in hand."""
        self._stopped.set()
        if self.is_alive():
            self.join()

    def run(self) -> None:
        pause_s = self._first_pause_s
        while not self._stopped.is_set():
            began = time.monotonic()
            try:
                self._read()
            except IMAP_ERRORS as error:
                log.warning("The mailbox cannot be read (%s)", type(error).__name__)
            except Exception:
                log.exception("The mailbox cannot be read")
            # What has held for a while was not the server's fault.
            pause_s = self._first_pause_s if time.monotonic() - began > POLL_S else pause_s
            self._stopped.wait(pause_s * random.uniform(0.5, 1.5))
            pause_s = min(2 * pause_s, LONGEST_PAUSE_S)

    def _read(self) -> None:
        """On one connection: take what is there, wait for more, and so on."""
        with self._servers.mailbox() as box:
            numbering = box.folder.status("INBOX", ["UIDVALIDITY"])["UIDVALIDITY"]
            for key in [key for key in self._failed if key[0] != numbering]:
                del self._failed[key]
            _drop_old_copies(box, self._servers.address)
            held = _told(box)  # what was there before is found by the first look
            while not self._stopped.is_set():
                took = self._take_new(box, numbering)
                told = _told(box)
                if took or told not in (None, held):
                    held = held if told is None else told
                    continue
                self._wait(box)

    def _take_new(self, box: BaseMailBox, numbering: int) -> bool:
        """Take what is there; whether any was taken."""
        took = False
        for uid in box.uids(AND(seen=False)):
            key = (numbering, uid)
            if self._stopped.is_set():
                return False
            if self._failed[key] >= MOST_TRIES:
                continue
            told = _size_and_arrival(box, uid)
            if told is None:
                continue  # somebody deleted it meanwhile
            size, arrived_utc = told
            is_whole = size <= MOST_BYTES
            raw = _fetched(box, uid, "BODY.PEEK[]" if is_whole else "BODY.PEEK[HEADER]")
            try:
                self._take(raw, is_whole, arrived_utc)
            except Exception:
                log.exception("A mail could not be taken; it stays in the mailbox, unseen")
                self._failed[key] += 1
                continue
            box.flag([uid], [MailMessageFlags.SEEN], True)
            took = True
        return took

    def _wait(self, box: BaseMailBox) -> None:
        """Until there is news, or it is time to look anyway."""
        until = time.monotonic() + POLL_S
        if "IDLE" not in box.client.capabilities:
            while time.monotonic() < until and not self._stopped.wait(_STEP_S):
                pass
            return
        box.idle.start()  # type: ignore[no-untyped-call]
        while not _is_told(box) and time.monotonic() < until and not self._stopped.is_set():
            asked = time.monotonic()
            # News, or (at once and with nothing) the end of the connection, which stop() tells.
            if box.idle.poll(timeout=_STEP_S) or time.monotonic() - asked < _STEP_S / 2:
                break
        box.idle.stop()  # type: ignore[no-untyped-call]


def _told(box: BaseMailBox) -> int | None:
    """How many mails there are by the answers since the last time this was asked (EXISTS), None
    where none told.

    A search finds what was there before it; what it tells beside is not told again.
    """
    _, counts = box.client.response("EXISTS")
    told = [int(count) for count in counts if count is not None]
    return told[-1] if told else None


def _is_told(box: BaseMailBox) -> bool:
    """True when a line came in one piece with the server's go-ahead to wait.

    It lies in the client's buffer, where poll() does not look.
    """
    buffered = cast("BufferedReader", box.client.file)
    bounded_s = box.client.sock.gettimeout()
    box.client.sock.settimeout(0)
    try:
        return bool(buffered.peek(1))
    except (BlockingIOError, ssl.SSLWantReadError):
        return False
    finally:
        box.client.sock.settimeout(bounded_s)


def has_copy(servers: Servers, message_id: str) -> bool:
    """True when the mailbox holds a mail of this Message-ID. Raises one of IMAP_ERRORS."""
    with servers.mailbox() as box:
        return bool(box.uids(AND(header=Header("Message-ID", message_id))))


def _size_and_arrival(box: BaseMailBox, uid: str) -> tuple[int, datetime] | None:
    """Bytes of a mail, and when it came (RFC 3501, RFC822.SIZE and INTERNALDATE)."""
    _, answer = box.client.uid("FETCH", uid, "(RFC822.SIZE INTERNALDATE)")
    for line in answer:
        if isinstance(line, bytes):
            size = re.search(rb"RFC822\.SIZE (\d+)", line)
            came = re.search(rb'INTERNALDATE "([^"]+)"', line)
            if size is not None and came is not None:
                at = datetime.strptime(came[1].decode("ascii").strip(), "%d-%b-%Y %H:%M:%S %z")
                return int(size[1]), at.astimezone(UTC)
    return None


def _fetched(box: BaseMailBox, uid: str, what: str) -> bytes:
    """A mail byte for byte, as a signature wants it."""
    kind, answer = box.client.uid("FETCH", uid, f"({what})")
    for part in answer:
        if kind == "OK" and isinstance(part, tuple) and isinstance(part[1], bytes):
            return part[1]
    raise UnreadableAnswerError(f"the answer to a fetch is {kind} without a mail")


def _drop_old_copies(box: BaseMailBox, own_address: str) -> None:
    before = (datetime.now(UTC) - _COPIES_KEPT).date()
    old = box.uids(AND(header=Header(OWN_MARK, ""), from_=own_address, date_lt=before, seen=True))
    if old:
        box.delete(old)
