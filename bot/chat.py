"""`pailtext chat`: the conversation in the terminal, with history and line editing."""

from __future__ import annotations

import atexit
import re
import sys
from collections.abc import Callable, Iterable
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path
from uuid import uuid4

from bot.clock import HandClock, SystemClock, utc_time
from bot.messages import Incoming
from bot.wiring import DEFAULT_ZONE, Parts, SkiesOver, build, invented_skies

DOOR = "console"
# An invented number: people here text by phone, and so does the one at the terminal.
DEFAULT_SENDER = "+15550100001"

GREETING = (
    'Text as you would from the sugarbush, like "12 gal at 2.2".'
    " Leave with an empty line or Ctrl-D."
)
CLOCK_HELP = (
    'A line that starts with "@" moves the pretended time: "@+3h", "@+1d", "@2027-03-04T17:20".'
)
_MOVE = re.compile(r"@\+\s*(?P<amount>\d+(?:\.\d+)?)\s*(?P<unit>[mhd])$", re.IGNORECASE)
_STEPS = {"m": timedelta(minutes=1), "h": timedelta(hours=1), "d": timedelta(days=1)}
_MOST_HISTORY = 1000


@dataclass
class PretendedTime:
    """A wall clock that starts where it is told, and runs on only when it is moved."""

    local: datetime

    def move(self, words: str) -> bool:
        """Move it by "@+3h" or to "@2027-03-04T17:20". Says whether the words were that."""
        found = _MOVE.match(words)
        if found is not None:
            self.local += float(found["amount"]) * _STEPS[found["unit"].casefold()]
            return True
        try:
            moved = datetime.fromisoformat(words.removeprefix("@").strip())
        except ValueError:
            return False
        self.local = moved.replace(tzinfo=None)
        return True


class Chat:
    """One person at the terminal. With a pretended time, each text is sent then."""

    def __init__(self, parts: Parts, sender: str, pretended: PretendedTime | None) -> None:
        self._parts = parts
        self._sender = sender
        self._pretended = pretended
        # Ids must not repeat over sessions on one store.
        self._session = uuid4().hex

    def answer(self, number: int, words: str) -> str:
        """The reply to the text of this number in the session, "" for none."""
        if words.startswith("@") and self._pretended is not None:
            if not self._pretended.move(words):
                return CLOCK_HELP
            return f"It is now {self._pretended.local:%a %d %b %Y %H:%M}."
        incoming = Incoming(DOOR, f"{self._session}-{number}", self._sender, words, self._now_utc())
        return self._parts.inbox.receive(incoming) or ""

    def _now_utc(self) -> datetime:
        if self._pretended is None:
            return SystemClock().now_utc()
        with self._parts.ledger.reading() as book:
            zone = self._parts.conversation.zone(book, self._sender) or DEFAULT_ZONE
        now = utc_time(self._pretended.local, zone)
        if isinstance(self._parts.clock, HandClock):
            self._parts.clock.set(now)
        return now


def converse(chat: Chat, lines: Iterable[str], say: Callable[[str], None]) -> None:
    """Answer line after line until an empty one."""
    for number, line in enumerate(lines):
        words = line.strip()
        if not words:
            return
        say(chat.answer(number, words) or "(no reply)")


def run(
    url: str, *, sender: str, at: datetime | None, history: Path | None, skies: SkiesOver | None
) -> None:
    """Chat on the store at `url`, from the terminal or from standard input. skies: where the
    weather comes from; invented, unless given."""
    pretended = None if at is None else PretendedTime(at)
    clock = SystemClock() if at is None else HandClock(utc_time(at, DEFAULT_ZONE))
    parts = build(url, clock, skies=skies or invented_skies)
    try:
        chat = Chat(parts, sender, pretended)
        if not sys.stdin.isatty():
            converse(chat, sys.stdin, print)
            return
        print(GREETING)
        if pretended is not None:
            print(CLOCK_HELP)
        if history is not None:
            _keep_history(history)
        converse(chat, _typed(), print)
    finally:
        parts.ledger.close()


def fresh_store(path: Path) -> str:
    """The URL of an empty SQLite store at `path`; what was there is removed."""
    for name in (path, path.with_name(path.name + "-wal"), path.with_name(path.name + "-shm")):
        name.unlink(missing_ok=True)
    return store_url(path)


def store_url(path: Path) -> str:
    """The URL of a SQLite store at `path`."""
    return f"sqlite:///{path}"


def _typed() -> Iterable[str]:
    while True:
        try:
            yield input("> ")
        except (EOFError, KeyboardInterrupt):
            print()
            return


def _keep_history(path: Path) -> None:
    """Arrow keys and earlier texts, where the platform has readline."""
    try:
        import readline
    except ImportError:
        return
    with suppress(OSError):
        readline.read_history_file(path)
    readline.set_history_length(_MOST_HISTORY)
    atexit.register(readline.write_history_file, path)


__all__ = ["DEFAULT_SENDER", "Chat", "converse", "fresh_store", "run", "store_url"]
