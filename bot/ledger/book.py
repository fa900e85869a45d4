"""The ledger: every transaction on the store, and the only way to it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager

from sqlalchemy import Connection
from sqlalchemy.exc import IntegrityError, OperationalError

from bot.ledger.editions import Edition, Editions
from bot.ledger.forecasts import ForecastRows
from bot.ledger.inbox import InboxRows, KeptText
from bot.ledger.mail import MailRows
from bot.ledger.members import Members
from bot.ledger.notes import Consents, Hints, Questions
from bot.ledger.outbox import OutboxRows
from bot.ledger.own_data import OwnData
from bot.ledger.people import People, Who
from bot.ledger.records import Records
from bot.ledger.roll import Roll
from bot.ledger.store import Store
from bot.ledger.sums import Sums
from bot.messages import Incoming

_DEADLOCK = "40P01"
"""SQLSTATE of a transaction that PostgreSQL ended because two waited for each other: see
https://www.postgresql.org/docs/current/errcodes-appendix.html."""


class CollisionError(Exception):
    """Another thread or process wrote the same at the same time. Begin again: it will be seen."""


class Book:
    """The ledger opened for one transaction: all that is written in it commits together.

    editions: the count of what this process writes; None in a transaction that only looks.
    """

    def __init__(self, connection: Connection, editions: Editions | None = None) -> None:
        self._connection = connection
        self._editions = editions
        self._afterwards: list[Callable[[], None]] = []
        self.inbox = InboxRows(connection)
        self.people = People(connection)
        self.records = Records(connection, editions)
        self.sums = Sums(connection)
        self.questions = Questions(connection)
        self.hints = Hints(connection)
        self.consents = Consents(connection)
        self.outbox = OutboxRows(connection)
        self.forecasts = ForecastRows(connection)
        self.roll = Roll(connection)
        self.mail = MailRows(connection)
        self.members = Members(connection)
        self.own_data = OwnData(connection, editions)

    def sender(self, address: str) -> Who | None:
        """The person who texts from an address, locked until the transaction ends; None if
        unknown. What is open with them is looked up on the way where that is safe."""
        if self._connection.dialect.name != "sqlite":
            return self.people.find(address)
        found = self.people.find_with_notes(address)
        if found is None:
            return None
        who, said, asked = found
        self.consents.seen(who.person_id, said)
        self.questions.seen(who.person_id, asked)
        return who

    def edition(self, sugarbush_id: int) -> Edition | None:
        """The state of a sugarbush's records as of the last one written here, None where it
        cannot be told. Two that are equal tell that no record was added in between."""
        if self._editions is None:
            return None
        return self._editions.of(self._connection, sugarbush_id)

    def afterwards(self, act: Callable[[], None]) -> None:
        """Do something once all of this is committed; not at all if it is not."""
        self._afterwards.append(act)

    def committed(self) -> None:
        """All of it is committed."""
        for act in self._afterwards:
            act()


class Ledger:
    """The store as a book of texts, people and records."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._editions = Editions()

    @classmethod
    def open(cls, url: str) -> Ledger:
        """Open the ledger at a database URL and bring its tables up to date."""
        return cls(Store(url))

    @contextmanager
    def writing(self) -> Iterator[Book]:
        """A transaction: committed at the end, undone as a whole if anything raises.

        Raises CollisionError when another transaction came first with what had to be the only
        one of its kind, or when the two waited for each other and this one was ended.
        """
        try:
            with self._store.writing() as connection:
                book = Book(connection, self._editions)
                yield book
        except IntegrityError as error:
            raise CollisionError("Somebody else wrote the same at the same time") from error
        except OperationalError as error:
            if getattr(error.orig, "sqlstate", None) != _DEADLOCK:
                raise
            raise CollisionError("Somebody else and this one waited for each other") from error
        book.committed()

    @contextmanager
    def reading(self) -> Iterator[Book]:
        """A transaction that only looks."""
        with self._store.reading() as connection:
            yield Book(connection)

    def keep(self, incoming: Incoming) -> KeptText:
        """Commit the raw text under its provider's id, or give back the one already there."""
        try:
            with self.writing() as book:
                return book.inbox.keep(incoming)
        except CollisionError:
            with self.reading() as book:
                found = book.inbox.find(incoming.door, incoming.provider_id)
            if found is None:
                raise
            return found

    def close(self) -> None:
        """Close the store."""
        self._store.close()
