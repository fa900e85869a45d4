"""`pailtext doctor`: looks at the settings, the store and the way in, and says what to do."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import timedelta
from urllib.parse import urlencode

import httpx
from sqlalchemy.exc import SQLAlchemyError

from bot.channels.channel import Channel, SendError
from bot.channels.twilio_sms import Form
from bot.clock import SystemClock
from bot.ledger import NewerStoreError
from bot.messages import SMS_DOOR, Outgoing
from bot.serving import look_at_store, open_webhook
from bot.settings import Settings, SettingsError, load_settings, misspelt
from bot.web import TWILIO_PATH, Closed
from bot.wiring import Parts, build, channels_of, mail_of, with_folder

# The public way in goes over the internet and back.
_TIMEOUT_S = 10.0
# A worker looks every minute; what waits for several times the longest that a look takes has none.
_OVERDUE = timedelta(minutes=15)
# A signed form that is no text: an open webhook with the same token answers 400 and keeps
# nothing, whatever lies between.
_PROBE = {"Pailtext": "doctor"}


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing looked at. `remedy` says what to do, None where all is well."""

    about: str
    found: str
    remedy: str | None = None

    def __str__(self) -> str:
        if self.remedy is None:
            return f"ok   {self.about}: {self.found}"
        return f"FIX  {self.about}: {self.found}\n     {self.remedy}"


Ask = Callable[[str, dict[str, str], dict[str, str]], int]


def examine(ask: Ask | None = None, twilio: Channel | None = None) -> Iterator[Finding]:
    """Look at everything, in the order in which it has to work.

    `ask` posts a form with headers to a URL and gives the HTTP status; raises httpx.HTTPError
    where there is no answer. `twilio` is what would send texts, where not the settings' own.
    """
    for line in misspelt():
        yield Finding("settings", line, "Correct the name, or remove it.")
    try:
        settings = load_settings()
    except SettingsError as error:
        for line in str(error).splitlines():
            yield Finding("settings", line, "Correct it where it is set, or in .env.")
        return
    yield Finding("settings", "all can be read")
    yield store(settings)
    yield from mail(settings)
    yield from way_in(settings, ask or post)
    yield way_out(settings, twilio)
    yield weather(settings)


def store(settings: Settings) -> Finding:
    """Can the store be opened, brought up to date, and read?"""
    path = settings.sqlite_file
    where = "PostgreSQL" if path is None else str(path)
    try:
        parts = build(with_folder(settings), SystemClock())
    except NewerStoreError as error:
        return Finding("store", where, str(error))
    except (SQLAlchemyError, OSError) as error:
        return Finding("store", f"{where} does not open ({_first_line(error)})", _remedy(settings))
    try:
        look_at_store(parts)
        waits = _waits_in_vain(parts)
    finally:
        parts.ledger.close()
    if path is not None and not os.access(path, os.W_OK):
        return Finding("store", f"{path} may not be written", _remedy(settings))
    if waits:
        return Finding(
            "store",
            f"{where} opens, but texts in it have been due for over"
            f" {_OVERDUE.total_seconds() / 60:g} minutes",
            "Start `pailtext serve`, or `pailtext work` beside `serve --no-worker`: nobody sends.",
        )
    return Finding("store", f"{where} opens")


def _waits_in_vain(parts: Parts) -> bool:
    """True when texts are due for so long that no worker can be at them."""
    with parts.ledger.reading() as book:
        return bool(book.outbox.due(parts.clock.now_utc() - _OVERDUE, 1))


def way_out(settings: Settings, twilio: Channel | None) -> Finding:
    """Do alerts and reminders leave? Twilio is asked for its list of texts, and sends none."""
    given = {
        "PAILTEXT_TWILIO_ACCOUNT_SID": settings.twilio_account_sid,
        "PAILTEXT_TWILIO_AUTH_TOKEN": settings.twilio_auth_token,
        "PAILTEXT_TWILIO_FROM": settings.twilio_from,
    }
    missing = [name for name, value in given.items() if value is None]
    if missing:
        return Finding(
            "sending",
            f"without {' and '.join(missing)} no alert, reminder or late reply leaves by text",
            "Set them: the Twilio console shows the SID under Account Info, and your numbers.",
        )
    channel = twilio or channels_of(settings)[SMS_DOOR]
    probe = Outgoing(str(settings.twilio_from), "Pailtext: doctor")
    try:
        channel.find(probe, SystemClock().now_utc())
    except SendError as error:
        return Finding(
            "sending",
            f"Twilio does not serve this account ({error})",
            "See that SID and token are those of one account, and that it is active and paid for.",
        )
    return Finding("sending", f"Twilio knows the account; texts leave from {settings.twilio_from}")


def weather(settings: Settings) -> Finding:
    """Is there a forecast at all?"""
    if settings.weather_contact is None:
        return Finding(
            "weather",
            "without PAILTEXT_WEATHER_CONTACT there is no forecast and no morning alert",
            "Set it to a mail address or site of yours: the services ask whom to write to.",
        )
    return Finding("weather", f"the services are told to write to {settings.weather_contact}")


def mail(settings: Settings) -> Iterator[Finding]:
    """Can mails be read and sent, where the settings name a mailbox?"""
    found = mail_of(settings)
    if found is None:
        yield Finding("mail", "none is set up; PAILTEXT_MAIL_ADDRESS and its servers would open it")
        return
    # What mail needs takes a tenth of a second to import.
    from bot.doctor_mail import look_at_mail

    for looked in look_at_mail(found.servers, settings.mail_authserv_id):
        yield Finding(looked.about, looked.found, looked.remedy)


def way_in(settings: Settings, ask: Ask) -> Iterator[Finding]:
    """Does Twilio reach a running server under the public URL, and is its signature known?"""
    signatures = open_webhook(settings)
    if isinstance(signatures, Closed):
        yield Finding(
            "webhook",
            signatures.reason,
            "Set PAILTEXT_TWILIO_AUTH_TOKEN (Twilio console, Account Info) and"
            " PAILTEXT_PUBLIC_URL (the https address of this server).",
        )
        return
    url = f"{settings.public_url}{TWILIO_PATH}"
    if url.startswith("http://") and not settings.is_local:
        yield Finding(
            "public URL",
            f"{settings.public_url} is not encrypted",
            "Put a TLS proxy in front and set the https address, or texts can be read on the way.",
        )
    form = Form(_PROBE.items())
    signed = signatures.headers(TWILIO_PATH, form)
    try:
        status = ask(url, _PROBE, signed)
    except httpx.HTTPError as error:
        yield Finding(
            "webhook",
            f"{url} does not answer ({type(error).__name__})",
            "Start `pailtext serve`, and see that the name, the proxy and the firewall lead to it.",
        )
        return
    yield _answered(url, status)


def _answered(url: str, status: int) -> Finding:
    if status == 400:
        return Finding(
            "webhook",
            f"{url} answers and knows our signature; enter this address at Twilio, under"
            " Messaging, as the number's webhook for incoming messages (HTTP POST)",
        )
    remedies = {
        403: "The server runs with another token or another public URL than this command: give"
        " both the same settings, and start the server anew.",
        404: "Something else answers there: lead the path to `pailtext serve`, unchanged.",
        503: "The server runs without a token or public URL: start it with these settings.",
    }
    return Finding(
        "webhook",
        f"{url} answers {status}",
        remedies.get(status, "Lead the path to `pailtext serve`, unchanged."),
    )


def post(url: str, form: dict[str, str], headers: dict[str, str]) -> int:
    """Post a form; the HTTP status of the answer. Raises httpx.HTTPError."""
    kind = {"Content-Type": "application/x-www-form-urlencoded"}
    body = urlencode(form).encode("ascii")
    return httpx.post(url, content=body, headers=headers | kind, timeout=_TIMEOUT_S).status_code


def _remedy(settings: Settings) -> str:
    if settings.sqlite_file is None:
        return "See that the server runs, and that PAILTEXT_DATABASE_URL names it rightly."
    return "See that its folder exists and may be written, or set PAILTEXT_DATABASE_URL."


def _first_line(error: Exception) -> str:
    return str(error).partition("\n")[0]
