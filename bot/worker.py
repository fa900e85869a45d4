"""The worker: sends what is owed and goes the rounds, in `serve` or apart by `pailtext work`."""

from __future__ import annotations

import logging
import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace

from bot.jobs import Jobs, Rhythm, Work
from bot.ledger.presence import presence_on
from bot.settings import Settings
from bot.wiring import Parts, build_all, with_folder

log = logging.getLogger(__name__)


@contextmanager
def working(parts: Parts, database_url: str, rhythm: Rhythm | None = None) -> Iterator[None]:
    """Work on the store until the end of the block.

    Raises `presence.NoRoomError`.
    """
    work = Work(
        rounds=tuple(each.go for each in parts.rounds),
        take_up=parts.inbox.sweep,
        due=parts.outbox.due,
        deliver=parts.outbox.deliver,
    )
    jobs = Jobs(database_url, presence_on(database_url), work, rhythm)
    jobs.start()
    log.info("Sending what is owed by %s", ", ".join(sorted(parts.outbox.channels)) or "nothing")
    try:
        with reading_mail(parts):
            yield
    finally:
        jobs.stop()


def rhythm_of(settings: Settings) -> Rhythm:
    """The usual rhythm, at the rate that the settings allow a sender."""
    usual = Rhythm()
    texts = max(1, round(settings.texts_per_second * usual.period_s))
    return replace(usual, texts=texts)


@contextmanager
def reading_mail(parts: Parts) -> Iterator[None]:
    """Take in what comes by mail, in a thread of its own, until the end of the block; nothing is
    done where no mail is set up."""
    if parts.mail is None or parts.mailroom is None:
        yield
        return
    from bot.channels.email_imap import Reader

    reader = Reader(parts.mail.servers, parts.mailroom.take)
    reader.start()
    log.info("Reading the mailbox")
    try:
        yield
    finally:
        reader.stop()


def work(settings: Settings) -> None:
    """Work until told to stop (SIGTERM, SIGINT). Raises what `working` and opening the store
    raise."""
    told_to_stop = threading.Event()
    for name in (signal.SIGTERM, signal.SIGINT):
        signal.signal(name, lambda *_: told_to_stop.set())
    database_url = with_folder(settings)
    parts = build_all(settings, database_url)
    try:
        with working(parts, database_url, rhythm_of(settings)):
            told_to_stop.wait()
    finally:
        parts.ledger.close()
