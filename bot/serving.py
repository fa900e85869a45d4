"""`pailtext serve`: from the settings to a running server."""

from __future__ import annotations

import gc
import logging
import os
import signal
import sys
from contextlib import AbstractContextManager, nullcontext, suppress
from typing import NoReturn

import uvicorn

from bot.channels.twilio_sms import Signatures
from bot.clock import SystemClock
from bot.messages import Incoming
from bot.pages import Pages, add_pages
from bot.settings import Settings
from bot.web import Closed, make_app
from bot.wiring import Parts, build, build_all, with_folder

# Texts in hand when the server is told to stop are finished first, as long as Twilio waits.
_LAST_TEXTS_S = 15
# Texts in work at the same time. On SQLite those that wait for their turn to write commit together:
# as many as there may be in one commit.
# PostgreSQL serves as many as our side holds connections (SQLAlchemy: 5, and 10 more in need).
_AT_ONCE_SQLITE = 16
_AT_ONCE_POSTGRESQL = 10

# An invented person and their texts, one of each sort.
_REHEARSER = "+15550100000"
_REHEARSAL = (
    "I'm in 05843",
    "set 30 taps",
    "gathered 12 gal at 2.2 yesterday",
    "make that 14 gal 3 qt",
    "it was 3 C in the tank",
    "how much syrup will that make",
    "how long will my sap keep",
    "how deep do I drill",
)

log = logging.getLogger(__name__)


def log_to_standard_error() -> None:
    """One line for each thing worth knowing, and no addresses or numbers in it."""
    logging.basicConfig(
        level=logging.INFO, format="%(asctime)s %(levelname)s %(name)s: %(message)s"
    )
    # The addresses asked of the weather services and of Twilio are no news.
    for name in ("httpx", "twilio.http_client"):
        logging.getLogger(name).setLevel(logging.WARNING)


def leave(code: int = 0) -> NoReturn:
    """End this process with a code, its store being closed, without waiting for any thread.

    Python waits at its end for the threads of a pool, and those of the engine under the outbox may
    try the database again without end. What they had in hand is done by the next process.
    """
    logging.shutdown()
    for stream in (sys.stdout, sys.stderr):
        with suppress(OSError, ValueError):  # nobody reads it any more
            stream.flush()
    os._exit(code)


def serve(settings: Settings, host: str, port: int, *, with_worker: bool = True) -> None:
    """Serve until told to stop (SIGTERM, SIGINT); the worker runs beside the web, unless told not.

    Raises what opening the store raises, and what `worker.working` raises.
    """
    # uvicorn finishes its texts and then lets the signal through, which would end the process
    # before the store is closed.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))
    webhook = open_webhook(settings)
    if isinstance(webhook, Closed):
        log.warning(webhook.reason)
    database_url = with_folder(settings)
    parts = build_all(settings, database_url)
    app = make_app(
        parts.inbox.receive,
        webhook,
        parts.clock,
        lambda: look_at_store(parts),
        parts.outbox.report,
        _AT_ONCE_SQLITE if settings.is_sqlite else _AT_ONCE_POSTGRESQL,
    )
    if parts.links is not None:
        add_pages(app, Pages(parts.ledger, parts.links, parts.clock))
    try:
        taken_up = parts.inbox.sweep()
        if taken_up:
            log.info("Read %d texts that were kept but not read before", taken_up)
        warm()
        with _worker(parts, database_url, settings) if with_worker else nullcontext():
            _settle()
            uvicorn.run(
                app,
                host=host,
                port=port,
                # A line for each request would tell little, and slow the answers.
                access_log=False,
                server_header=False,
                log_config=None,
                timeout_graceful_shutdown=_LAST_TEXTS_S,
            )
    finally:
        # Told a second time, it closes its store all the same.
        signal.signal(signal.SIGTERM, signal.SIG_IGN)
        parts.ledger.close()


def _worker(parts: Parts, database_url: str, settings: Settings) -> AbstractContextManager[None]:
    # Its engine takes half a second to import.
    from bot.worker import rhythm_of, working

    return working(parts, database_url, rhythm_of(settings))


def open_webhook(settings: Settings) -> Signatures | Closed:
    """What tells Twilio's texts from forged ones, or why that cannot be done."""
    if settings.twilio_auth_token is None or settings.public_url is None:
        missing = " and ".join(
            name
            for name, value in (
                ("PAILTEXT_TWILIO_AUTH_TOKEN", settings.twilio_auth_token),
                ("PAILTEXT_PUBLIC_URL", settings.public_url),
            )
            if value is None
        )
        return Closed(
            f"The Twilio webhook stays closed: without {missing} nobody can tell Twilio's texts"
            " from forged ones."
        )
    return Signatures(settings.twilio_auth_token.get_secret_value(), settings.public_url)


def look_at_store(parts: Parts) -> None:
    """Raises if the store does not answer."""
    with parts.ledger.reading() as book:
        book.inbox.find("", "")


def warm() -> None:
    """Load now what the first texts would otherwise wait for: word lists, dates, places.

    It is done by answering a few of them on a store that is gone afterwards.
    """
    clock = SystemClock()
    parts = build("sqlite://", clock)
    try:
        for number, text in enumerate(_REHEARSAL):
            parts.inbox.receive(Incoming("console", str(number), _REHEARSER, text, clock.now_utc()))
    finally:
        parts.ledger.close()


def _settle() -> None:
    """Keep all that is loaded by now out of the garbage collector's way: it would look through all
    of it again and again, for a tenth of a second each time."""
    gc.collect()
    gc.freeze()


__all__ = ["leave", "look_at_store", "open_webhook", "serve"]
