"""Mails sent by submission to the host's SMTP server, plain text first (RFC 6409, RFC 5321).

Each has a Message-ID of its own making, and a copy goes to our own mailbox: that tells whether a
mail went out whose answer was lost. Threads by RFC 5322 section 3.6.4, leaving by one click by
RFC 8058, and marked as a program's by RFC 3834.
"""

from __future__ import annotations

import logging
import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import datetime
from email.message import EmailMessage
from email.utils import format_datetime
from hashlib import sha256
from html import escape
from smtplib import (
    SMTP,
    SMTPAuthenticationError,
    SMTPException,
    SMTPNotSupportedError,
    SMTPResponseException,
)
from uuid import uuid4

from bot.channels.channel import NeverError, Sent, TryLaterError, UnclearError
from bot.channels.email_letter import OWN_MARK
from bot.channels.email_servers import IMAP_ERRORS, Servers
from bot.clock import Clock
from bot.messages import Outgoing
from bot.wording import tables

log = logging.getLogger(__name__)

NAME = "Pailtext"
# A subject is cut here: what phones show of one. Our own.
_MOST_SUBJECT = 70


@dataclass(frozen=True, slots=True)
class Enclosure:
    """A file that goes along: its name, and its text."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class Cover:
    """What a mail has beyond its words.

    subject: of the mail that is answered, None where none is. message_ids: its thread, oldest
    first. unsubscribe_url: where one click ends the unasked mails, None where there is no such
    place.
    """

    subject: str | None = None
    message_ids: tuple[str, ...] = ()
    unsubscribe_url: str | None = None
    enclosure: Enclosure | None = None


CoverOf = Callable[[Outgoing], Cover]
# Is a mail of this Message-ID in our own mailbox? Raises one of IMAP_ERRORS.
HasCopy = Callable[[str], bool]


class EmailSmtp:
    """The channel "email", outgoing."""

    def __init__(
        self, servers: Servers, clock: Clock, cover_of: CoverOf, has_copy: HasCopy
    ) -> None:
        self._servers = servers
        self._clock = clock
        self._cover_of = cover_of
        self._has_copy = has_copy

    def send(self, outgoing: Outgoing) -> Sent:
        """Hand a mail to the server. Raises TryLaterError, NeverError and UnclearError."""
        mail = self._mail(outgoing)
        with _connected(self._servers) as smtp:
            with _before_it_is_told():
                _accepted(smtp.mail(self._servers.address))
                _accepted(smtp.rcpt(outgoing.to))
                # Without its copy a lost answer cannot be cleared up, which is no reason to fail.
                if smtp.rcpt(self._servers.address)[0] >= 400:
                    log.warning("The mail server refuses copies to our own address")
            with _while_it_is_told():
                _accepted(smtp.data(mail.as_bytes()))
        return Sent(str(mail["Message-ID"]))

    def find(self, outgoing: Outgoing, since_utc: datetime) -> Sent | None:
        """Whether its copy came to our mailbox. Raises TryLaterError when nobody can tell."""
        message_id = self._message_id(outgoing)
        try:
            return Sent(message_id) if self._has_copy(message_id) else None
        except IMAP_ERRORS as error:
            raise TryLaterError(f"the own mailbox: {type(error).__name__}") from error

    def _message_id(self, outgoing: Outgoing) -> str:
        """The same for the same text of the outbox, however often it is tried."""
        number = uuid4().hex if outgoing.text_id is None else str(outgoing.text_id)
        told = "\0".join((number, outgoing.to, outgoing.text))
        domain = self._servers.address.rpartition("@")[2]
        return f"<{number}.{sha256(told.encode()).hexdigest()[:24]}@{domain}>"

    def _mail(self, outgoing: Outgoing) -> EmailMessage:
        cover = self._cover_of(outgoing)
        mail = EmailMessage()
        mail["From"] = f"{NAME} <{self._servers.address}>"
        mail["To"] = outgoing.to
        mail["Subject"] = _subject(cover.subject, outgoing.text)
        mail["Date"] = format_datetime(self._clock.now_utc())
        mail["Message-ID"] = self._message_id(outgoing)
        if cover.message_ids:
            mail["In-Reply-To"] = cover.message_ids[-1]
            mail["References"] = " ".join(cover.message_ids)
        mail["Auto-Submitted"] = "auto-replied" if outgoing.kind == "reply" else "auto-generated"
        # What Outlook's automatic replies obey, which know nothing of the line above.
        mail["X-Auto-Response-Suppress"] = "All"
        mail[OWN_MARK] = "1"
        if cover.unsubscribe_url is not None:
            mail["List-Unsubscribe"] = f"<{cover.unsubscribe_url}>"
            mail["List-Unsubscribe-Post"] = "List-Unsubscribe=One-Click"
        mail.set_content(outgoing.text + "\n")
        mail.add_alternative(_html(outgoing.text, cover.unsubscribe_url), subtype="html")
        if cover.enclosure is not None:
            mail.add_attachment(cover.enclosure.text, subtype="csv", filename=cover.enclosure.name)
        return mail


def _subject(answered: str | None, text: str) -> str:
    if answered is not None:
        said = " ".join(answered.split()) or "your note"
        is_reply = re.match(r"re\s*:", said, re.IGNORECASE)
        return said if is_reply else f"Re: {said}"
    said = re.split(r"(?<=[.?!])\s", " ".join(text.split()), maxsplit=1)[0].rstrip(".")
    return said if len(said) <= _MOST_SUBJECT else said[: _MOST_SUBJECT - 3].rstrip() + "..."


def _html(text: str, unsubscribe_url: str | None) -> str:
    said = "\n".join(
        _said(block) if isinstance(block, str) else _table(block) for block in tables.blocks(text)
    )
    leave = (
        ""
        if unsubscribe_url is None
        else f'<p><small><a href="{escape(unsubscribe_url)}">No more of these mails</a></small></p>'
    )
    return f"<html><body>{said}{leave}</body></html>\n"


def _said(text: str) -> str:
    lines = "<br>\n".join(map(escape, text.split("\n")))
    return f'<p style="font-size:1.1em">{lines}</p>'


def _table(rows: list[tuple[str, ...]]) -> str:
    """A table with its headings; mail programs know no style sheets, so each cell has its own."""
    cell = 'style="padding:2px 12px 2px 0;text-align:left"'
    made = [
        "".join(f"<{tag} {cell}>{escape(each)}</{tag}>" for each in row)
        for tag, row in zip(["th", *["td"] * (len(rows) - 1)], rows, strict=True)
    ]
    return "<table>\n" + "\n".join(f"<tr>{row}</tr>" for row in made) + "\n</table>"


def _accepted(answer: tuple[int, bytes]) -> None:
    """Raises what the server's refusal means; its own words may name the receiver."""
    code = answer[0]
    if 400 <= code < 500:
        raise TryLaterError(f"the mail server says {code}, not now")
    if code >= 500 or code < 200:
        raise NeverError(f"the mail server says {code}, never")


@contextmanager
def _connected(servers: Servers) -> Iterator[SMTP]:
    try:
        smtp = servers.submission()
    except SMTPAuthenticationError as error:
        raise TryLaterError("the mail server does not know our user and password") from error
    except SMTPNotSupportedError as error:
        raise TryLaterError("the mail server does not offer STARTTLS") from error
    except (SMTPException, OSError) as error:
        raise TryLaterError(f"no connection to the mail server ({type(error).__name__})") from error
    try:
        yield smtp
    finally:
        with suppress(SMTPException, OSError):
            smtp.quit()
        smtp.close()


@contextmanager
def _before_it_is_told() -> Iterator[None]:
    """Whatever breaks before the words are handed over leaves nothing sent."""
    try:
        yield
    except (SMTPException, OSError) as error:
        raise TryLaterError(f"the mail server broke off ({type(error).__name__})") from error


@contextmanager
def _while_it_is_told() -> Iterator[None]:
    """Whatever breaks from here on may come after the server took it."""
    try:
        yield
    except SMTPResponseException as error:
        # It refused to be told.
        _accepted((error.smtp_code, b""))
        raise UnclearError(f"the mail server says {error.smtp_code}") from error
    except (SMTPException, OSError) as error:
        raise UnclearError(f"the mail server broke off ({type(error).__name__})") from error
