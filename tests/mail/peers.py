"""Real mail servers for tests: postfix and dovecot (2.3) on loopback, configured here.

SMTP -> postfix -> Maildir -> dovecot -> IMAP, both with STARTTLS by a certificate made here. The
system's own services are not used and need not run. Nothing leaves: there is no relay.
"""

from __future__ import annotations

import datetime as dt
import ipaddress
import os
import shutil
import smtplib
import socket
import ssl
import subprocess
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from email.message import EmailMessage, Message
from pathlib import Path

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from imap_tools import MailBoxUnencrypted

from bot.channels.email_servers import Servers

OWN = "log@pail.example"
ANN, BEN = "ann@maple.example", "ben@maple.example"
# Refused at once, for now and for good; taken and then sent back.
FULL_NOW, FULL_FOR_GOOD, FULL_LATER = (f"{name}@maple.example" for name in ("now", "good", "later"))
PASSWORD = "spile"
_USER = "mail"  # Debian has it; the mailboxes belong to it
_PATIENCE_S = 60.0  # a busy machine is slow

_MAIN_CF = """
compatibility_level = 3.6
queue_directory = {here}/spool
data_directory = {here}/data
command_directory = /usr/sbin
daemon_directory = /usr/lib/postfix/sbin
mail_owner = postfix
setgid_group = postdrop
myhostname = mx.pail.example
mydestination =
inet_interfaces = 127.0.0.1
inet_protocols = ipv4
mynetworks = 127.0.0.0/8
relayhost =
default_transport = error:5.7.1 nothing leaves this test
relay_transport = error:5.7.1 nothing leaves this test
transport_maps = inline:{{ {{{later} = full:}} }}
virtual_mailbox_domains = pail.example maple.example
virtual_mailbox_base = {here}/mail
virtual_mailbox_maps = inline:{{ {{{own} = log/}} {{{ann} = ann/}} {{{ben} = ben/}} \
 {{{now} = now/}} {{{good} = good/}} {{{later} = later/}} }}
virtual_minimum_uid = 1
virtual_uid_maps = static:{uid}
virtual_gid_maps = static:{gid}
virtual_mailbox_limit = 41943040
message_size_limit = 41943040
smtpd_relay_restrictions = permit_mynetworks, reject
smtpd_recipient_restrictions = reject_unlisted_recipient, \
 check_recipient_access inline:{{ {{{now} = 452 4.2.2 full}} {{{good} = 552 5.2.2 full}} }}, \
 permit_mynetworks, reject
smtpd_tls_cert_file = {here}/cert.pem
smtpd_tls_key_file = {here}/key.pem
smtpd_tls_security_level = may
disable_dns_lookups = yes
smtp_dns_support_level = disabled
alias_maps =
alias_database =
biff = no
append_dot_mydomain = no
maillog_file = {here}/log/postfix.log
maillog_file_prefixes = {here}
"""
_MASTER_CF = """
127.0.0.1:{smtp} inet n - n - - smtpd
pickup unix n - n 60 1 pickup
cleanup unix n - n - 0 cleanup
qmgr unix n - n 300 1 qmgr
tlsmgr unix - - n 1000? 1 tlsmgr
rewrite unix - - n - - trivial-rewrite
bounce unix - - n - 0 bounce
defer unix - - n - 0 bounce
trace unix - - n - 0 bounce
verify unix - - n - 1 verify
error unix - - n - - error
retry unix - - n - - error
full unix - n n - - pipe user=mail argv={here}/full
virtual unix - n n - - virtual
anvil unix - - n - 1 anvil
proxymap unix - - n - - proxymap
postlog unix-dgram n - n - 1 postlogd
showq unix n - n - - showq
flush unix n - n 1000? 0 flush
"""
_DOVECOT_CONF = """
base_dir = {here}/run
state_dir = {here}/run
log_path = {here}/log/dovecot.log
protocols = imap
listen = 127.0.0.1
ssl = yes
ssl_cert = <{here}/cert.pem
ssl_key = <{here}/key.pem
disable_plaintext_auth = no
auth_mechanisms = plain login
auth_failure_delay = 0
first_valid_uid = 1
mail_location = maildir:{here}/mail/%n
default_internal_user = dovecot
default_login_user = dovenull
passdb {{
  driver = static
  args = password={password}
}}
userdb {{
  driver = static
  args = uid={uid} gid={gid} home={here}/mail/%n allow_all_users=yes
}}
service imap-login {{
  inet_listener imap {{
    address = 127.0.0.1
    port = {imap}
  }}
  inet_listener imaps {{
    port = 0
  }}
  chroot =
}}
service stats {{
  chroot =
}}
service anvil {{
  chroot =
}}
"""


def why_not() -> str | None:
    """Why there can be no such servers here, None where there can."""
    if os.geteuid() != 0:
        return "postfix and dovecot start as root only"
    missing = [name for name in ("postfix", "dovecot") if shutil.which(name) is None]
    return f"{' and '.join(missing)} not installed" if missing else None


@dataclass(frozen=True)
class Peers:
    """Both servers, running."""

    here: Path
    smtp: int
    imap: int
    tls: ssl.SSLContext

    def servers(self, address: str = OWN, imap: int | None = None) -> Servers:
        """The servers as a host sets them for an address; `imap`: another port that leads there.

        Encrypted, but through another port.
        """
        return Servers(
            address=address,
            imap=f"imap://127.0.0.1:{imap or self.imap}",
            smtp=f"smtp://127.0.0.1:{self.smtp}",
            user=address,
            password=PASSWORD,
            tls=self.tls if imap is None else None,
        )

    def send(self, mail: EmailMessage | bytes, sender: str = ANN, to: str = OWN) -> None:
        """Somebody's program hands a mail over."""
        raw = mail if isinstance(mail, bytes) else mail.as_bytes()
        with smtplib.SMTP("127.0.0.1", self.smtp, timeout=60) as smtp:
            smtp.sendmail(sender, [to], raw)

    def mailbox(self, address: str) -> list[Message]:
        """What lies in somebody's mailbox, oldest first; nothing is marked."""
        with MailBoxUnencrypted("127.0.0.1", self.imap, timeout=60) as box:
            box.login(address, PASSWORD)
            return [mail.obj for mail in box.fetch(mark_seen=False)]

    def seen(self, address: str = OWN) -> list[bool]:
        """Which of somebody's mails are marked as seen, oldest first."""
        with MailBoxUnencrypted("127.0.0.1", self.imap, timeout=60) as box:
            box.login(address, PASSWORD)
            mails = box.fetch(mark_seen=False, headers_only=True)
            return ["\\Seen" in mail.flags for mail in mails]

    def delivered(self, address: str = OWN) -> int:
        """How many mails lie in somebody's mailbox that no program has seen there yet."""
        return len(list((self.here / "mail" / address.partition("@")[0] / "new").glob("*")))

    def renumber(self, address: str = OWN) -> None:
        """Number somebody's mails anew, as after a repair, and end every connection to them."""
        folder = self.here / "mail" / address.partition("@")[0]
        for path in folder.glob("dovecot*"):
            path.unlink()
        _run("doveadm", "-c", f"{self.here}/dovecot.conf", "kick", address)

    def numbering(self, address: str = OWN) -> int:
        """The UIDVALIDITY of somebody's mailbox."""
        with MailBoxUnencrypted("127.0.0.1", self.imap, timeout=60) as box:
            box.login(address, PASSWORD)
            return box.folder.status("INBOX", ["UIDVALIDITY"])["UIDVALIDITY"]

    def empty(self) -> None:
        """Nothing lies in any mailbox."""
        for address in (OWN, ANN, BEN):
            with MailBoxUnencrypted("127.0.0.1", self.imap, timeout=60) as box:
                box.login(address, PASSWORD)
                box.delete(box.uids())


def wait_until(holds: Callable[[], bool], patience_s: float = _PATIENCE_S) -> None:
    """Return as soon as it holds, fail when it does not within some seconds."""
    until = time.monotonic() + patience_s
    while not holds():
        assert time.monotonic() < until, f"not within {patience_s:g} s"
        time.sleep(0.05)


@contextmanager
def running_peers() -> Iterator[Peers]:
    """Start both servers, and stop them at the end; skips where there can be none, but in CI."""
    reason = why_not()
    if reason is not None:
        assert os.environ.get("CI") != "true", reason
        pytest.skip(reason)
    # Below pytest's own folder nobody but its user may look.
    here = Path(tempfile.mkdtemp(prefix="pailtext-mail-", dir="/tmp"))
    try:
        peers = _configured(here)
        _run("postfix", "-c", f"{here}/postfix", "start")
        _run("dovecot", "-c", f"{here}/dovecot.conf")
        for port in (peers.smtp, peers.imap):
            wait_until(lambda port=port: _answers(port))  # type: ignore[misc]
        yield peers
    finally:
        with suppress(subprocess.CalledProcessError, FileNotFoundError):
            _run("doveadm", "-c", f"{here}/dovecot.conf", "stop")
        with suppress(subprocess.CalledProcessError):
            _run("postfix", "-c", f"{here}/postfix", "stop")
        shutil.rmtree(here, ignore_errors=True)


def _configured(here: Path) -> Peers:
    here.chmod(0o755)
    for name in ("postfix", "spool", "data", "mail", "run", "log"):
        (here / name).mkdir()
    shutil.chown(here / "data", "postfix")
    shutil.chown(here / "mail", _USER, _USER)
    owner = (here / "mail").stat()
    smtp, imap = _free_port(), _free_port()
    tls = _certificate(here)
    given = {"here": here, "uid": owner.st_uid, "gid": owner.st_gid, "smtp": smtp, "imap": imap}
    (here / "full").write_text("#!/bin/sh\necho '5.2.2 mailbox full'\nexit 69\n", encoding="ascii")
    (here / "full").chmod(0o755)
    names = {"own": OWN, "ann": ANN, "ben": BEN, "now": FULL_NOW, "good": FULL_FOR_GOOD}
    told = {**given, **names, "later": FULL_LATER, "password": PASSWORD}
    for path, words in (
        ("postfix/main.cf", _MAIN_CF),
        ("postfix/master.cf", _MASTER_CF),
        ("dovecot.conf", _DOVECOT_CONF),
    ):
        (here / path).write_text(words.format(**told), encoding="ascii")
    return Peers(here, smtp, imap, tls)


def _certificate(here: Path) -> ssl.SSLContext:
    """A certificate for 127.0.0.1, and a context that trusts it alone."""
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(x509.NameOID.COMMON_NAME, "127.0.0.1")])
    now = dt.datetime.now(dt.UTC)
    made = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - dt.timedelta(days=1))
        .not_valid_after(now + dt.timedelta(days=1))
        .add_extension(
            x509.SubjectAlternativeName([x509.IPAddress(ipaddress.ip_address("127.0.0.1"))]), False
        )
        .sign(key, hashes.SHA256())
    )
    (here / "cert.pem").write_bytes(made.public_bytes(serialization.Encoding.PEM))
    (here / "key.pem").write_bytes(
        key.private_bytes(
            serialization.Encoding.PEM,
            serialization.PrivateFormat.PKCS8,
            serialization.NoEncryption(),
        )
    )
    (here / "key.pem").chmod(0o600)
    return ssl.create_default_context(cafile=str(here / "cert.pem"))


def _run(*command: str) -> None:
    # A server that stays would hold a pipe open for ever.
    quiet = subprocess.DEVNULL
    subprocess.run(command, check=True, stdin=quiet, stdout=quiet, stderr=quiet, timeout=30)


def _free_port() -> int:
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        port: int = listening.getsockname()[1]
        return port


def _answers(port: int) -> bool:
    try:
        with socket.create_connection(("127.0.0.1", port), timeout=1) as found:
            return bool(found.recv(1))
    except OSError:
        return False


@dataclass
class Breaking:
    """A way to a port that breaks off: in the middle of the next answer that holds `at`.

    port: where it is. cuts: how often it did.
    """

    to: int
    at: bytes = b""
    port: int = 0
    cuts: int = 0
    _listening: socket.socket = field(default_factory=socket.socket)

    def __enter__(self) -> Breaking:
        self._listening.bind(("127.0.0.1", 0))
        self._listening.listen()
        self.port = self._listening.getsockname()[1]
        threading.Thread(target=self._accept, daemon=True).start()
        return self

    def __exit__(self, *_error: object) -> None:
        self._listening.close()

    def _accept(self) -> None:
        with suppress(OSError):
            while True:
                ours, _ = self._listening.accept()
                theirs = socket.create_connection(("127.0.0.1", self.to))
                for pair in ((ours, theirs, False), (theirs, ours, True)):
                    threading.Thread(target=self._carry, args=pair, daemon=True).start()

    def _carry(self, source: socket.socket, target: socket.socket, answers: bool) -> None:
        with suppress(OSError):
            while data := source.recv(65536):
                if answers and self.at and self.at in data:
                    target.sendall(data[: data.index(self.at) + len(self.at) + 4])
                    self.at = b""
                    self.cuts += 1
                    break
                target.sendall(data)
        for each in (source, target):
            with suppress(OSError):
                each.shutdown(socket.SHUT_RDWR)
            each.close()
