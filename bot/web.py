"""The web door: Twilio's webhook, and two questions for whoever watches over the server.

`POST /in/twilio` takes a text and answers with the reply as TwiML. In this order:

1. Without an auth token and a public URL it is closed (503): nobody could tell Twilio's texts
   from forged ones.
2. A body over the bound is not read (413); nor is one that does not come (408).
3. What Twilio did not sign is refused (403), and nothing of it is stored.
4. A signed form that is no text is refused (400).
5. The text is handed on, in a thread; its reply, or an empty answer, is written (200). An error
   there is a 500: Twilio then asks the fallback URL, if it has one.

`POST /in/twilio/status` takes Twilio's delivery reports by the same steps, and answers nothing
(200); also for a text that is not known, or Twilio would only note an error.

`GET /health` answers while the process lives; `GET /ready` while the store answers too.
"""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Callable
from dataclasses import dataclass
from urllib.parse import parse_qsl

from anyio import CapacityLimiter, to_thread
from fastapi import FastAPI, Request, Response
from fastapi.responses import JSONResponse
from starlette.concurrency import run_in_threadpool
from starlette.requests import ClientDisconnect

from bot.channels.channel import Report
from bot.channels.twilio_sms import (
    Form,
    Signatures,
    UnreadableFormError,
    incoming,
    may_be_answered,
    report,
    twiml,
)
from bot.clock import Clock
from bot.messages import TWILIO_PATH as TWILIO_PATH
from bot.messages import TWILIO_STATUS_PATH, Incoming

# A text has up to 1,600 characters (Twilio's page "Webhook request"), each up to 12 bytes in a
# form; beside it stand a few dozen short fields. Ten times that is surely no text.
MOST_BODY_BYTES = 256 * 1024
MOST_FIELDS = 500
# Twilio gives up after 15 s (error 11205); a body that takes longer than this is not on its way.
BODY_TIMEOUT_S = 10.0

log = logging.getLogger(__name__)

Receive = Callable[[Incoming], str | None]
Note = Callable[[Report], None]


@dataclass(frozen=True, slots=True)
class Closed:
    """Why the webhook is not open, in a sentence."""

    reason: str


def make_app(
    receive: Receive,
    signatures: Signatures | Closed,
    clock: Clock,
    look_at_store: Callable[[], None],
    note: Note,
    at_once: int = 4,
) -> FastAPI:
    """The web application.

    receive: keeps a text and gives the reply, None for none; called in threads. look_at_store:
    raises if the store does not answer; note: keeps a delivery report; called in threads too.
    at_once: texts in work at the same time. The others wait in the order in which they came:
    left to fight for the store's lock, the unluckiest waits four times longer.
    """
    turns = CapacityLimiter(at_once)
    app = FastAPI(title="Pailtext", docs_url=None, redoc_url=None, openapi_url=None)

    async def in_twilio(request: Request) -> Response:
        try:
            form = await _signed_form(request, TWILIO_PATH, signatures)
            text = incoming(form, clock.now_utc())
        except _RefusedError as error:
            return _refused(error.status, str(error))
        except UnreadableFormError as error:
            return _refused(400, str(error))
        reply = await to_thread.run_sync(receive, text, limiter=turns)
        answer = twiml(reply if may_be_answered(text) else None)
        return Response(answer, media_type="text/xml")

    async def twilio_status(request: Request) -> Response:
        try:
            form = await _signed_form(request, TWILIO_STATUS_PATH, signatures)
            told = report(form, request.url.query)
        except _RefusedError as error:
            return _refused(error.status, str(error))
        except UnreadableFormError as error:
            return _refused(400, str(error))
        if told is not None:
            await to_thread.run_sync(note, told, limiter=turns)
        return Response()

    # What Twilio posts is taken as it comes: there is nothing for FastAPI to take apart and check
    # before, which would cost every text a tenth of its time.
    app.add_route(TWILIO_PATH, in_twilio, methods=["POST"])
    app.add_route(TWILIO_STATUS_PATH, twilio_status, methods=["POST"])

    @app.get("/health")
    async def health() -> JSONResponse:
        return JSONResponse({"status": "ok"})

    @app.get("/ready")
    async def ready() -> JSONResponse:
        try:
            await run_in_threadpool(look_at_store)
        except Exception:
            log.exception("The store does not answer")
            return JSONResponse({"status": "the store does not answer"}, status_code=503)
        webhook = signatures.reason if isinstance(signatures, Closed) else "open"
        return JSONResponse({"status": "ok", "twilio": webhook})

    return app


class _RefusedError(Exception):
    """The body is not taken; `status` is the HTTP status that says so."""

    def __init__(self, status: int, reason: str) -> None:
        super().__init__(reason)
        self.status = status


async def _signed_form(request: Request, path: str, signatures: Signatures | Closed) -> Form:
    """The form of a request to `path` that Twilio signed. Raises _RefusedError."""
    if isinstance(signatures, Closed):
        raise _RefusedError(503, signatures.reason)
    body = await _body(request)
    try:
        form = _form(body)
    except ValueError:
        raise _RefusedError(400, "The form has too many fields") from None
    query = request.scope["query_string"].decode("ascii", "replace")
    if not signatures.are_right(path, query, form, request.headers):
        log.warning("Refused what Twilio did not sign")
        raise _RefusedError(403, "The signature is not that of this account and this address")
    return form


async def _body(request: Request) -> bytes:
    """The body, read up to the bound. Raises _RefusedError."""
    too_large = _RefusedError(413, f"The body is over {MOST_BODY_BYTES} bytes")
    announced = request.headers.get("content-length", "")
    if announced.isdecimal() and int(announced) > MOST_BODY_BYTES:
        raise too_large
    body = bytearray()
    try:
        async with asyncio.timeout(BODY_TIMEOUT_S):
            async for chunk in request.stream():
                body += chunk
                if len(body) > MOST_BODY_BYTES:
                    raise too_large
    except TimeoutError:
        raise _RefusedError(408, f"The body took over {BODY_TIMEOUT_S:g} s") from None
    except ClientDisconnect:
        raise _RefusedError(400, "The body broke off") from None
    return bytes(body)


def _form(body: bytes) -> Form:
    """The fields of an urlencoded form. Raises ValueError when there are far too many."""
    text = body.decode("utf-8", "replace")
    return Form(parse_qsl(text, keep_blank_values=True, max_num_fields=MOST_FIELDS))


def _refused(status: int, reason: str) -> Response:
    return Response(reason + "\n", status_code=status, media_type="text/plain")
