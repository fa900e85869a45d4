"""A mail as it came, taken apart: who says to have sent it, what of it are their own words, and
whether a program wrote it.

RFC 5322 (headers), RFC 2045 and 2046 (parts), RFC 3676 (flowed text), RFC 3834 (what must never
be answered), RFC 3464 and 8098 (reports of delivery and of reading).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from email import message_from_bytes
from email.errors import HeaderParseError
from email.header import decode_header, make_header
from email.message import Message
from email.utils import getaddresses
from hashlib import sha256
from html.parser import HTMLParser

# The package carries no types.
from mailparser_reply import EmailReplyParser  # type: ignore[import-untyped]

# A larger mail is not fetched: a text is short, the rest is pictures. Our own.
MOST_BYTES = 10 * 1024 * 1024
# More own words than these are surely not a note from the woods. Our own.
MOST_OWN_CHARACTERS = 10_000
# Parts that are looked through; a mail of thousands of nested parts is an attack. Our own.
_MOST_PARTS = 200
_MOST_HEADER = 998  # characters in a line, RFC 5322 section 2.1.1
_MOST_REFERENCES = 20

# Languages of quote headers and signatures that are known: those spoken where maples are tapped,
# and of the phones that people bring along.
_REPLIES = EmailReplyParser(languages=["en", "fr", "de", "es", "it", "nl", "pl"])
# Where something else begins, besides what the parser knows: forwarded chains and old headers.
_NOT_OWN = re.compile(
    r"^(?:>|[-_]{5,}|\W*(?:original|forwarded) message\W*$|begin forwarded message:"
    r"|(?:from|von|de|sent|gesendet|envoy.{1,2}) ?:\s)",
    re.IGNORECASE | re.MULTILINE,
)
_NOT_ANSWERED = re.compile(
    r"(?:mailer-daemon|postmaster|no-?reply|do-?not-?reply|bounces?|[a-z.-]+-bounces)"
    r"(?:[+=-][^@]*)?@",
    re.IGNORECASE,
)
_ADDRESS = re.compile(r"[^\s@<>,;:\"()\[\]\\]{1,64}@[a-z0-9](?:[a-z0-9.-]{0,250}[a-z0-9])?", re.I)
_MESSAGE_ID = re.compile(r"<[^<>\s]{1,250}>")
# What our own mails carry, so that they are known when they come back.
OWN_MARK = "X-Pailtext"


@dataclass(frozen=True, slots=True)
class Letter:
    """A mail taken apart.

    message_id: with its angle brackets; where there is none, a fingerprint of the mail stands in.
    sender: the one address of the one From line, in lower case; "" where it is not just one.
    words: the sender's own words, "" where there are none or nobody can tell.
    references: the Message-IDs of the thread up to this mail, oldest first.
    attachments: pictures, calendars and the like that came with it.
    is_own: one of our own mails. automatic: why a program wrote it, None where a person did.
    """

    message_id: str
    sender: str
    subject: str
    words: str
    references: tuple[str, ...]
    attachments: int
    is_own: bool
    automatic: str | None


def read_letter(raw: bytes, own_address: str) -> Letter:
    """Take a mail apart. Never raises, whatever the bytes are."""
    message = message_from_bytes(raw)
    written, attachments = _parts(message)
    sender = _sender(message)
    ids = _ids(message, "Message-ID")
    message_id = ids[-1] if ids else f"<{sha256(raw).hexdigest()}@no-id.invalid>"
    earlier = _ids(message, "References") or _ids(message, "In-Reply-To")
    is_own = sender == own_address.casefold() or bool(_header(message, OWN_MARK))
    return Letter(
        message_id=message_id,
        sender=sender,
        subject=_header(message, "Subject"),
        words=own_words(written),
        references=(*earlier[-_MOST_REFERENCES:], message_id),
        attachments=attachments,
        is_own=is_own,
        automatic=_automatic(message, sender),
    )


def own_words(written: str) -> str:
    """The part of a mail's text that its sender wrote themselves: without quotes, signature,
    footer and forwarded chains. "" where nobody can tell."""
    if not written.strip():
        return ""
    replies = _REPLIES.read(written).replies
    words = str(replies[0].body) if replies else ""
    cut = _NOT_OWN.search(words)
    words = words if cut is None else words[: cut.start()]
    words = re.sub(r"[ \t\u00a0]+", " ", words).strip()
    return words if len(words) <= MOST_OWN_CHARACTERS else ""


# --- headers -----------------------------------------------------------------------------------


def _header(message: Message, name: str) -> str:
    """A header on one line, decoded as far as it can be."""
    given = message.get(name)
    if given is None:
        return ""
    try:
        said = str(make_header(decode_header(given)))
    except (HeaderParseError, LookupError, ValueError):
        said = str(given)
    said = said.encode("utf-8", "replace").decode("utf-8")
    return " ".join(said.split())[:_MOST_HEADER]


def _sender(message: Message) -> str:
    lines = message.get_all("From", [])
    if len(lines) != 1:
        return ""
    addresses = [found for _, found in getaddresses([str(lines[0])]) if found]
    if len(addresses) != 1 or not _ADDRESS.fullmatch(addresses[0]):
        return ""
    return addresses[0].casefold()


def _ids(message: Message, name: str) -> list[str]:
    return _MESSAGE_ID.findall(" ".join(str(line) for line in message.get_all(name, [])))


def _automatic(message: Message, sender: str) -> str | None:
    """Why a mail must not be answered, None where it may be (RFC 3834 section 2)."""
    submitted = _header(message, "Auto-Submitted").casefold().partition(";")[0].strip()
    if submitted and submitted != "no":
        return "it was submitted by a program"
    if message.get("Return-Path") is not None and _header(message, "Return-Path") in ("<>", ""):
        return "it is a bounce"
    if message.get_content_type() == "multipart/report":
        return "it is a report"
    if message.get_content_type() == "text/calendar":
        return "it is a calendar's"
    if any(message.get(name) is not None for name in ("List-Id", "List-Post", "Mailing-List")):
        return "it came by a list"
    if _header(message, "Precedence").casefold() in ("bulk", "junk", "list", "auto_reply"):
        return "it was sent in bulk"
    if any(message.get(name) is not None for name in ("X-Autoreply", "X-Autorespond")):
        return "it is an automatic reply"
    suppressed = _header(message, "X-Auto-Response-Suppress").casefold()
    if {part.strip() for part in suppressed.split(",")} & {"all", "oof", "autoreply"}:
        return "it asks for no automatic reply"
    if sender and _NOT_ANSWERED.match(sender):
        return "nobody reads what is sent there"
    return None


# --- parts -------------------------------------------------------------------------------------


def _parts(message: Message) -> tuple[str, int]:
    """The text that was written, and how many other things came along. Plain text is taken
    before HTML; what was forwarded as a whole mail is not looked into."""
    plain: list[str] = []
    html: list[str] = []
    attachments = 0
    for part in _leaves(message):
        kind = part.get_content_type()
        is_attached = part.get_content_disposition() == "attachment" or part.get_filename()
        if is_attached or kind not in ("text/plain", "text/html"):
            attachments += 1
        elif kind == "text/plain":
            plain.append(_unflowed(part, _text(part)))
        else:
            html.append(_text(part))
    written = "\n".join(plain)
    if not written.strip() and html:
        written = "\n".join(map(_words_of_html, html))
    return written, attachments


def _leaves(message: Message) -> Iterator[Message]:
    """The parts that hold something, without going into forwarded mails."""
    waiting = [message]
    seen = 0
    while waiting and seen < _MOST_PARTS:
        part = waiting.pop(0)
        seen += 1
        payload = part.get_payload()
        if part.get_content_maintype() == "multipart" and isinstance(payload, list):
            waiting[:0] = [each for each in payload if isinstance(each, Message)]
        else:
            yield part


def _text(part: Message) -> str:
    payload = part.get_payload(decode=True)
    if not isinstance(payload, bytes):
        return ""
    for charset in (part.get_content_charset() or "utf-8", "utf-8"):
        try:
            return payload.decode(charset)
        except (LookupError, ValueError):
            # An unknown name, a codec that is no charset, or bytes that are not of it.
            continue
    return payload.decode("cp1252", "replace")


def _unflowed(part: Message, text: str) -> str:
    """Lines that were only broken to be short, whole again (RFC 3676 section 4)."""
    text = text.replace("\r\n", "\n")
    if str(part.get_param("format", "")).casefold() != "flowed":
        return text
    return re.sub(r"(?<!^--)(?<=\S) \n(?![>\n])", " ", text, flags=re.MULTILINE)


_BLOCKS = frozenset("address br div dd dt h1 h2 h3 h4 hr li p pre table td tr".split())
_UNSEEN = frozenset("head script style title blockquote template".split())
_QUOTES = re.compile(
    r"gmail_quote|gmail_attr|moz-cite|yahoo_quoted|divrplyfwdmsg|appendonsend", re.I
)
_VOID = frozenset("area base br col embed hr img input link meta source track wbr".split())


class _Words(HTMLParser):
    """The words of an HTML mail that a reader sees as not quoted."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.words: list[str] = []
        # The open elements from the first unseen one on.
        self._unseen: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        marks = " ".join(value or "" for name, value in attrs if name in ("class", "id"))
        if tag not in _VOID and (self._unseen or tag in _UNSEEN or _QUOTES.search(marks)):
            self._unseen.append(tag)
        if tag in _BLOCKS:
            self.words.append("\n")

    def handle_endtag(self, tag: str) -> None:
        if tag in self._unseen:
            while self._unseen.pop() != tag:
                pass
        if tag in _BLOCKS:
            self.words.append("\n")

    def handle_data(self, data: str) -> None:
        if not self._unseen:
            self.words.append(re.sub(r"\s+", " ", data))


def _words_of_html(html: str) -> str:
    reader = _Words()
    reader.feed(html)
    reader.close()
    return re.sub(r" ?\n\s*", "\n", "".join(reader.words)).strip()
