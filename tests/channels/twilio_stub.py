"""A stateful stand-in for Twilio's Messages API on loopback, for the official client to talk to.

It keeps what it accepts, lists it, refuses as it is told to, takes a text and never answers, and
reports deliveries as Twilio does: signed, repeated, out of order; or forged. All invented, like
the account.
"""

from __future__ import annotations

import base64
import json
import re
import threading
from collections import deque
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime
from email.utils import format_datetime
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any
from urllib.parse import parse_qs, urlencode, urlsplit, urlunsplit

import httpx
from twilio.http.http_client import TwilioHttpClient  # type: ignore[import-untyped]
from twilio.request_validator import RequestValidator  # type: ignore[import-untyped]

from bot.channels.twilio_rest import TwilioRest

SID = "AC" + "0" * 32
TOKEN = "0123456789abcdef0123456789abcdef"
OURS = "+15550100099"


@dataclass(frozen=True)
class Refuse:
    """Answer a request with an error: Twilio's code, None for an error that has none."""

    status: int
    code: int | None = None
    body: str | None = None


@dataclass(frozen=True)
class Silence:
    """Never answer a request: the connection breaks, with the text accepted or not."""

    accepted: bool


Manner = Refuse | Silence


@dataclass
class Message:
    """A text that was accepted."""

    sid: str
    form: dict[str, str]
    made_utc: datetime
    status: str = "queued"
    error_code: int | None = None

    @property
    def to(self) -> str:
        return self.form["To"]

    @property
    def body(self) -> str:
        return self.form["Body"]

    def as_json(self) -> dict[str, Any]:
        return {
            "account_sid": SID,
            "api_version": "2010-04-01",
            "body": self.body,
            "date_created": format_datetime(self.made_utc),
            "date_sent": None,
            "date_updated": format_datetime(self.made_utc),
            "direction": "outbound-api",
            "error_code": self.error_code,
            "error_message": None,
            "from": self.form.get("From"),
            "messaging_service_sid": self.form.get("MessagingServiceSid"),
            "num_media": "0",
            "num_segments": "1",
            "price": None,
            "price_unit": "USD",
            "sid": self.sid,
            "status": self.status,
            "subresource_uris": {},
            "to": self.to,
            "uri": f"/2010-04-01/Accounts/{SID}/Messages/{self.sid}.json",
        }


@dataclass
class TwilioStub:
    """What it has accepted, and how it will behave: `next_sends` and `next_lists` are used up one
    by one, and then all goes well."""

    messages: list[Message] = field(default_factory=list)
    next_sends: deque[Manner] = field(default_factory=deque)
    next_lists: deque[Manner] = field(default_factory=deque)
    requests: int = 0
    url: str = ""
    lock: threading.Lock = field(default_factory=threading.Lock)

    def channel(self, **more: Any) -> TwilioRest:
        """Our channel, its official client led here."""
        given = {"http_client": Loopback(self.url), **more}
        return TwilioRest(SID, given.pop("token", TOKEN), given.pop("sender", OURS), **given)

    def bodies(self, to: str | None = None) -> list[str]:
        """What was accepted, in order."""
        with self.lock:
            return [each.body for each in self.messages if to in (None, each.to)]

    def report(
        self,
        message: Message,
        status: str,
        error_code: int | None = None,
        *,
        token: str = TOKEN,
        url: str | None = None,
    ) -> int:
        """Post a delivery report to where the text asked for it; the HTTP status of the answer."""
        target = url or message.form["StatusCallback"]
        fields = report_form(message.sid, message.to, status, error_code)
        signature = RequestValidator(token).compute_signature(target, fields)
        answer = httpx.post(
            target, data=fields, headers={"X-Twilio-Signature": signature}, timeout=30
        )
        return answer.status_code

    # --- what it does with a request ---------------------------------------------------------

    def post(self, form: dict[str, str]) -> tuple[int, str] | None:
        with self.lock:
            self.requests += 1
            manner = self.next_sends.popleft() if self.next_sends else None
            if isinstance(manner, Refuse):
                return _refused(manner)
            if not form.get("To") or not ({"From", "MessagingServiceSid"} & set(form)):
                return _refused(Refuse(400, 21604))
            if isinstance(manner, Silence) and not manner.accepted:
                return None
            number = len(self.messages) + 1
            message = Message(f"SM{number:032x}", form, datetime.now(UTC))
            self.messages.append(message)
            return None if manner is not None else (201, json.dumps(message.as_json()))

    def list(self, query: dict[str, str]) -> tuple[int, str] | None:
        with self.lock:
            manner = self.next_lists.popleft() if self.next_lists else None
            if isinstance(manner, Refuse):
                return _refused(manner)
            if isinstance(manner, Silence):
                return None
            found = [
                each.as_json()
                for each in reversed(self.messages)
                if query.get("To") in (None, each.to)
            ]
        page = {"messages": found, "page": 0, "page_size": 50, "next_page_uri": None}
        return 200, json.dumps(page)


def report_form(sid: str, to: str, status: str, error_code: int | None = None) -> dict[str, str]:
    """The form of a delivery report."""
    fields = {
        "SmsSid": sid,
        "SmsStatus": status,
        "MessageStatus": status,
        "To": to,
        "MessageSid": sid,
        "AccountSid": SID,
        "From": OURS,
        "ApiVersion": "2010-04-01",
    }
    return fields if error_code is None else fields | {"ErrorCode": str(error_code)}


def _refused(manner: Refuse) -> tuple[int, str]:
    if manner.body is not None:
        return manner.status, manner.body
    told = {"message": "Invented refusal", "status": manner.status}
    if manner.code is not None:
        told |= {
            "code": manner.code,
            "more_info": f"https://www.twilio.com/docs/errors/{manner.code}",
        }
    return manner.status, json.dumps(told)


class Loopback(TwilioHttpClient):  # type: ignore[misc]
    """Keeps Twilio's path, query and form; swaps only scheme and host."""

    def __init__(self, base: str, timeout: float = 5.0) -> None:
        super().__init__(timeout=timeout)
        self._base = urlsplit(base)

    def request(self, method: str, url: str, *given: Any, **named: Any) -> Any:
        here = urlsplit(url)._replace(scheme=self._base.scheme, netloc=self._base.netloc)
        return super().request(method, urlunsplit(here), *given, **named)

    def close(self) -> None:
        """Close the connections that it keeps."""
        self.session.close()


class _Handler(BaseHTTPRequestHandler):
    stub: TwilioStub
    protocol_version = "HTTP/1.1"
    _PATH = re.compile(rf"/2010-04-01/Accounts/{SID}/Messages\.json")

    def do_POST(self) -> None:
        length = int(self.headers.get("Content-Length", "0"))
        told = parse_qs(self.rfile.read(length).decode(), keep_blank_values=True)
        self._answer(lambda: self.stub.post({name: each[0] for name, each in told.items()}))

    def do_GET(self) -> None:
        told = parse_qs(urlsplit(self.path).query)
        self._answer(lambda: self.stub.list({name: each[0] for name, each in told.items()}))

    def _answer(self, work: Any) -> None:
        if not self._PATH.fullmatch(urlsplit(self.path).path):
            answer: tuple[int, str] | None = _refused(Refuse(404, 20404))
        elif not self._is_known():
            answer = _refused(Refuse(401, 20003))
        else:
            answer = work()
        if answer is None:
            # The other side sees its connection break, as after a timeout.
            self.close_connection = True
            return
        status, body = answer
        self.send_response(status)
        self.send_header("Content-Type", "application/json")
        self.send_header("Content-Length", str(len(body.encode())))
        self.send_header("Connection", "close")
        self.end_headers()
        self.wfile.write(body.encode())
        self.close_connection = True

    def _is_known(self) -> bool:
        given = self.headers.get("Authorization", "").removeprefix("Basic ")
        return base64.b64decode(given).decode() == f"{SID}:{TOKEN}"

    def log_message(self, format: str, *args: Any) -> None:
        """Nothing."""


@contextmanager
def twilio_stub() -> Iterator[TwilioStub]:
    """Run one until the end of the block."""
    stub = TwilioStub()
    handler = type("Handler", (_Handler,), {"stub": stub})
    server = ThreadingHTTPServer(("127.0.0.1", 0), handler)
    server.daemon_threads = True
    stub.url = f"http://127.0.0.1:{server.server_port}"
    thread = threading.Thread(target=server.serve_forever, args=(0.05,), daemon=True)
    thread.start()
    try:
        yield stub
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def encoded(fields: dict[str, str]) -> bytes:
    """A form as it goes over the wire."""
    return urlencode(fields).encode("ascii")
