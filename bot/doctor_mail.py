"""What `pailtext doctor` finds about mail: can the mailbox be read, may mails be sent, and how is
it proved who sent one?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from imaplib import IMAP4
from smtplib import SMTPAuthenticationError, SMTPException, SMTPNotSupportedError

from imap_tools import MailboxLoginError

from bot.channels.email_servers import IMAP_ERRORS, Servers


@dataclass(frozen=True, slots=True)
class Looked:
    """What was found, and what to do about it; None where all is well."""

    about: str
    found: str
    remedy: str | None = None


def look_at_mail(servers: Servers, authserv_id: str | None) -> Iterator[Looked]:
    """Look at both servers and at the proof. Nothing is sent and nothing is marked."""
    yield _mailbox(servers)
    yield _submission(servers)
    if authserv_id is None:
        yield Looked(
            "mail proof",
            "the DKIM signature of each mail is checked here. Where your provider writes"
            " Authentication-Results into what it receives, its name in PAILTEXT_MAIL_AUTHSERV_ID"
            " lets it vouch instead",
        )
    else:
        yield Looked("mail proof", f"what {authserv_id} writes on top of each mail is believed")


def _mailbox(servers: Servers) -> Looked:
    try:
        with servers.mailbox() as box:
            idles = "IDLE" in box.client.capabilities
    except MailboxLoginError:
        return Looked(
            "mailbox",
            f"{servers.imap} does not know the user {servers.user}, or the password",
            "Correct PAILTEXT_MAIL_USER and PAILTEXT_MAIL_PASSWORD; many providers want a password"
            " made for one app.",
        )
    except IMAP4.error as error:
        return Looked(
            "mailbox",
            f"{servers.imap} does not answer as an IMAP server ({type(error).__name__})",
            "See that PAILTEXT_MAIL_IMAP is the IMAP server, and its port an IMAP port.",
        )
    except IMAP_ERRORS as error:
        return Looked(
            "mailbox",
            f"{servers.imap} cannot be reached ({type(error).__name__})",
            "Correct PAILTEXT_MAIL_IMAP, and see that the firewall lets it through.",
        )
    how = "tells of new mail at once" if idles else "is asked every minute"
    return Looked("mailbox", f"{servers.imap} opens, and {how}")


def _submission(servers: Servers) -> Looked:
    try:
        smtp = servers.submission()
    except SMTPAuthenticationError:
        return Looked(
            "mail out",
            f"{servers.smtp} does not know the user {servers.user}, or the password",
            "Correct PAILTEXT_MAIL_USER and PAILTEXT_MAIL_PASSWORD; many providers want a password"
            " made for one app.",
        )
    except SMTPNotSupportedError:
        return Looked(
            "mail out",
            f"{servers.smtp} offers no encryption (STARTTLS)",
            "Set the submission server (port 587), or smtps:// where it is encrypted throughout.",
        )
    except (SMTPException, OSError) as error:
        return Looked(
            "mail out",
            f"{servers.smtp} cannot be reached ({type(error).__name__})",
            "Correct PAILTEXT_MAIL_SMTP, and see that the firewall lets port 587 through.",
        )
    try:
        code = smtp.mail(servers.address)[0]
        smtp.quit()
    except (SMTPException, OSError) as error:
        return Looked(
            "mail out",
            f"{servers.smtp} broke off ({type(error).__name__})",
            "Try again; if it stays so, ask the provider.",
        )
    if code >= 400:
        return Looked(
            "mail out",
            f"{servers.smtp} does not let {servers.address} send (it says {code})",
            "Set PAILTEXT_MAIL_ADDRESS to an address that this user may send from.",
        )
    return Looked("mail out", f"{servers.smtp} takes mail from {servers.address}")
