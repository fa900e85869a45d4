"""What ways out there are besides the answer to a text: mail, and pages on the web."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta

# How long a link to one's own records leads anywhere. Our own.
EXPORT_FOR = timedelta(hours=24)


@dataclass(frozen=True, slots=True)
class Reach:
    """mail_address: that of Pailtext, None where no mail is set up. export_url: gives the address
    of a page with the records of a person (by their number), good up to a moment (aware UTC); None
    where no public address is set."""

    mail_address: str | None = None
    export_url: Callable[[int, datetime], str] | None = None
