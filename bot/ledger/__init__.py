"""The ledger: people, texts and records. The only place that speaks SQL."""

from __future__ import annotations

from bot.ledger.book import Book, CollisionError, Ledger
from bot.ledger.editions import Edition
from bot.ledger.inbox import KeptText
from bot.ledger.mail import Code, Day, Thread
from bot.ledger.members import Hearer, Logged, Mate
from bot.ledger.notes import Asked, Word
from bot.ledger.outbox import Due, NewText, OwedText
from bot.ledger.own_data import Line
from bot.ledger.people import HELPER, OWNER, Invitation, Who
from bot.ledger.records import Kept, Records, Undone, Writer
from bot.ledger.roll import ByPerson, Enrolled, Told
from bot.ledger.schema import NewerStoreError
from bot.ledger.store import IN_MEMORY, Store
from bot.ledger.sums import KindSum, NamedSap, NamedSugar, Source, TimedSap, with_entry

__all__ = [
    "HELPER",
    "IN_MEMORY",
    "OWNER",
    "Asked",
    "Book",
    "ByPerson",
    "Code",
    "CollisionError",
    "Day",
    "Due",
    "Edition",
    "Enrolled",
    "Hearer",
    "Invitation",
    "Kept",
    "KeptText",
    "KindSum",
    "Ledger",
    "Line",
    "Logged",
    "Mate",
    "NamedSap",
    "NamedSugar",
    "NewText",
    "NewerStoreError",
    "OwedText",
    "Records",
    "Source",
    "Store",
    "Thread",
    "TimedSap",
    "Told",
    "Undone",
    "Who",
    "Word",
    "Writer",
    "with_entry",
]
