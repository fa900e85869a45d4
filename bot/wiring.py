"""Picks the concrete parts and puts them together. Nothing else does."""

from __future__ import annotations

from dataclasses import dataclass

from bot import places
from bot.clock import Clock
from bot.conversation import Conversation, Senses
from bot.inbox import Inbox
from bot.ledger import Ledger
from bot.reading import read, settle

# People whose place is not known yet are taken to live by this clock (our own: most who
# sugar do).
DEFAULT_ZONE = "America/New_York"


@dataclass(frozen=True, slots=True)
class Parts:
    """Pailtext, put together."""

    ledger: Ledger
    conversation: Conversation
    inbox: Inbox
    clock: Clock


def build(database_url: str, clock: Clock, default_zone: str = DEFAULT_ZONE) -> Parts:
    """Pailtext on the store at `database_url`, with its tables brought up to date."""
    ledger = Ledger.open(database_url)
    senses = Senses(
        read=read, settle=settle, find_place=places.find, likely_places=places.candidates
    )
    conversation = Conversation(senses, default_zone)
    return Parts(ledger, conversation, Inbox(ledger, conversation, clock), clock)
