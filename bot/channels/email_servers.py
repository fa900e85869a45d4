"""The host's two mail servers: where they are and how they are spoken to."""

from __future__ import annotations

import ssl
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from imaplib import IMAP4
from smtplib import SMTP, SMTP_SSL, SMTPException
from urllib.parse import urlsplit

from imap_tools import BaseMailBox, ImapToolsError, MailBox, MailBoxStartTls, MailBoxUnencrypted

# For the connection and for each wait on it; well under the lease that a claim has.
TIMEOUT_S = 20.0
_PORTS = {"imaps": 993, "imap": 143, "smtps": 465, "smtp": 587}
_LOOPBACK = frozenset({"localhost", "127.0.0.1", "::1"})

# All that goes wrong between us and the mailbox.
IMAP_ERRORS = (ImapToolsError, IMAP4.error, OSError)


@dataclass(frozen=True, slots=True)
class Servers:
    """address: that of Pailtext. imap, smtp: URLs; "imaps" and "smtps" are encrypted from the
    start, "imap" and "smtp" by STARTTLS before anything is said; only on this very machine they
    may do without. password: "" where none is asked for. tls: whom to trust, where that is not
    whom the system trusts; then this machine's own servers are spoken to by STARTTLS as well."""

    address: str
    imap: str
    smtp: str
    user: str
    password: str
    tls: ssl.SSLContext | None = None

    @contextmanager
    def mailbox(self) -> Iterator[BaseMailBox]:
        """The inbox, open until the end of the block. Raises one of IMAP_ERRORS."""
        box = self._opened()
        try:
            yield box
        finally:
            with suppress(*IMAP_ERRORS):
                box.logout()
            # Saying goodbye on a broken line leaves it open.
            with suppress(OSError):
                box.client.shutdown()

    def _opened(self) -> BaseMailBox:
        url = urlsplit(self.imap)
        host, port = url.hostname or "", url.port or _PORTS[url.scheme]
        box: BaseMailBox
        if url.scheme == "imaps":
            box = MailBox(host, port, timeout=TIMEOUT_S, ssl_context=self._tls())
        elif self._is_plain(host):
            box = MailBoxUnencrypted(host, port, timeout=TIMEOUT_S)
        else:
            box = MailBoxStartTls(host, port, timeout=TIMEOUT_S, ssl_context=self._tls())
        try:
            box.login(self.user, self.password)
        except BaseException:
            with suppress(OSError):
                box.client.shutdown()
            raise
        return box

    def submission(self) -> SMTP:
        """A connection on which mail may be sent. Raises SMTPException and OSError."""
        url = urlsplit(self.smtp)
        host, port = url.hostname or "", url.port or _PORTS[url.scheme]
        if url.scheme == "smtps":
            smtp: SMTP = SMTP_SSL(host, port, timeout=TIMEOUT_S, context=self._tls())
        else:
            smtp = SMTP(host, port, timeout=TIMEOUT_S)
        try:
            if url.scheme == "smtp" and not self._is_plain(host):
                smtp.starttls(context=self._tls())
            smtp.ehlo_or_helo_if_needed()
            if self.password and smtp.has_extn("auth"):
                smtp.login(self.user, self.password)
        except BaseException:
            with suppress(SMTPException, OSError):
                smtp.close()
            raise
        return smtp

    def _tls(self) -> ssl.SSLContext:
        return self.tls or ssl.create_default_context()

    def _is_plain(self, host: str) -> bool:
        return self.tls is None and host in _LOOPBACK
