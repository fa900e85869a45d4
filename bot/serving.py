"""`pailtext serve`: from the settings to a running server."""

from __future__ import annotations

import gc
import logging
import signal
import sys

import uvicorn

from bot.channels.twilio_sms import Signatures
from bot.clock import SystemClock
from bot.messages import Incoming
from bot.settings import Settings
from bot.web import Closed, make_app
from bot.wiring import Parts, build

# Texts in hand when the server is told to stop are finished first, as long as Twilio waits.
_LAST_TEXTS_S = 15
# Texts in work at the same time. SQLite has one writer; a second one may be read meanwhile.
# PostgreSQL serves as many as our side holds connections (SQLAlchemy: 5, and 10 more in need).
_AT_ONCE_SQLITE = 2
_AT_ONCE_POSTGRESQL = 10

# An invented person and their texts, one of each sort.
_REHEARSER = "+15550100000"
_REHEARSAL = (
    "I'm in 05843",
    "set 30 taps",
    "gathered 12 gal at 2.2 yesterday",
    "make that 14",
    "how much syrup will that make",
    "how long will my sap keep",
    "how deep do I drill",
)

log = logging.getLogger(__name__)


def serve(settings: Settings, host: str, port: int) -> None:
    """Serve until told to stop (SIGTERM, SIGINT).

    Raises what opening the store raises.
    """
    logging.basicConfig(
        level=logging.INFO, format="%(asctime)s %(levelname)s %(name)s: %(message)s"
    )
    # The addresses asked of the weather services are no news.
    logging.getLogger("httpx").setLevel(logging.WARNING)
    # uvicorn finishes its texts and then lets the signal through, which would end the process
    # before the store is closed.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))
    webhook = open_webhook(settings)
    if isinstance(webhook, Closed):
        log.warning(webhook.reason)
    parts = build(with_folder(settings), SystemClock())
    try:
        taken_up = parts.inbox.take_up_unread()
        if taken_up:
            log.info("Read %d texts that were kept but not read before", taken_up)
        warm()
        app = make_app(
            parts.inbox.receive,
            webhook,
            parts.clock,
            lambda: look_at_store(parts),
            parts.outbox.report,
            _AT_ONCE_SQLITE if settings.is_sqlite else _AT_ONCE_POSTGRESQL,
        )
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
        parts.ledger.close()


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


def with_folder(settings: Settings) -> str:
    """The store's URL; the folder of a SQLite file is made, for its owner's eyes only."""
    path = settings.sqlite_file
    if path is not None:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    return settings.database_url


def look_at_store(parts: Parts) -> None:
    """Raises if the store does not answer."""
    with parts.ledger.reading() as book:
        book.inbox.find("", "")


def warm() -> None:
    """Load now what the first texts would otherwise wait for: word lists, dates, places.

    It is done by answering a few of them on a store that is gone afterwards. What is loaded then
    is kept out of the garbage collector's way: it would look through all of it again and again,
    for a tenth of a second each time.
    """
    clock = SystemClock()
    parts = build("sqlite://", clock)
    try:
        for number, text in enumerate(_REHEARSAL):
            parts.inbox.receive(Incoming("console", str(number), _REHEARSER, text, clock.now_utc()))
    finally:
        parts.ledger.close()
    gc.collect()
    gc.freeze()


__all__ = ["look_at_store", "open_webhook", "serve", "with_folder"]
