"""Pages below the public URL that are reached by a link which proves what it is for.

`GET /page/{token}` gives somebody's records as a file until the link expires (410 then, 404 for
what is no link of ours). `POST /unsubscribe/{token}` ends unasked mails to an address at one click
(RFC 8058); `GET` of the same only asks, since mail programs fetch links by themselves.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from fastapi import FastAPI, Response
from starlette.concurrency import run_in_threadpool

from bot.clock import Clock
from bot.exporting import FILE_NAME, export_csv
from bot.ledger import Ledger
from bot.links import PAGE_PATH, UNSUBSCRIBE_PATH, ExpiredError, Links

NOT_OURS = "There is nothing here. Text Pailtext export for a new link.\n"
EXPIRED = "This link is over. Text Pailtext export for a new one.\n"
UNSUBSCRIBED = "No more unasked mails will come. Text or mail START to get them again.\n"
_ASK = (
    "<!doctype html><title>Pailtext</title><form method=post>"
    "<p>No more alerts and reminders by mail?</p><button>No more mails</button></form>"
)
# What is under a secret link is for one reader, who is not to leave it with others.
_PRIVATE = {
    "Cache-Control": "no-store",
    "Referrer-Policy": "no-referrer",
    "X-Robots-Tag": "noindex",
}


@dataclass(frozen=True, slots=True)
class Pages:
    """What the pages show and do; called in threads."""

    ledger: Ledger
    links: Links
    clock: Clock

    def records(self, token: str) -> str | None:
        """The file behind a link, None where the link is not ours or the person is gone. Raises
        ExpiredError."""
        person_id = self.links.exported(token, self.clock.now_utc())
        if person_id is None:
            return None
        with self.ledger.reading() as book:
            return export_csv(book, person_id)

    def unsubscribe(self, token: str) -> bool:
        """End unasked mails to the address of a link; whether the link is ours. Also where the
        address is not known any more: then none will come either."""
        address = self.links.unsubscribed(token)
        if address is None:
            return False
        with self.ledger.writing() as book:
            book.mail.mute(address, self.clock.now_utc())
        return True

    def knows(self, token: str) -> bool:
        """True for a link out of unasked mails that is ours."""
        return self.links.unsubscribed(token) is not None


def add_pages(app: FastAPI, pages: Pages) -> None:
    """Open the pages."""
    _add(app.get, f"{PAGE_PATH}/{{token}}", lambda token: _records(pages, token))
    _add(app.get, f"{UNSUBSCRIBE_PATH}/{{token}}", lambda token: _ask(pages, token))
    _add(app.post, f"{UNSUBSCRIBE_PATH}/{{token}}", lambda token: _unsubscribe(pages, token))


def _add(method: Callable[..., Callable[..., object]], path: str, answer: Answer) -> None:
    @method(path)
    async def page(token: str) -> Response:
        return await run_in_threadpool(answer, token)


Answer = Callable[[str], Response]


def _records(pages: Pages, token: str) -> Response:
    try:
        file = pages.records(token)
    except ExpiredError:
        return _plain(EXPIRED, 410)
    if file is None:
        return _plain(NOT_OURS, 404)
    headers = {**_PRIVATE, "Content-Disposition": f'attachment; filename="{FILE_NAME}"'}
    return Response(file, media_type="text/csv", headers=headers)


def _ask(pages: Pages, token: str) -> Response:
    if not pages.knows(token):
        return _plain(NOT_OURS, 404)
    return Response(_ASK, media_type="text/html", headers=_PRIVATE)


def _unsubscribe(pages: Pages, token: str) -> Response:
    if not pages.unsubscribe(token):
        return _plain(NOT_OURS, 404)
    return _plain(UNSUBSCRIBED, 200)


def _plain(words: str, status: int) -> Response:
    return Response(words, status_code=status, media_type="text/plain", headers=_PRIVATE)
