"""The tables of the store. Records are only ever added to; what is summed has its own column.

Moments (`..._utc`) are aware UTC; `at_local` is the naive wall clock of the sugarbush and `on`
a local day.
"""

from __future__ import annotations

from datetime import date, datetime
from typing import Any

from pydantic import NaiveDatetime
from sqlalchemy import JSON, Column, DateTime, Index, Table, Text, UniqueConstraint, text
from sqlmodel import Field, SQLModel

# Stable names for every constraint, so that a migration can name what it changes.
SQLModel.metadata.naming_convention = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}


class Person(SQLModel, table=True):
    """Somebody who texts. `units` is what they spoke in last, "us" or "metric", None at first.

    alerts_by: how unasked texts go, "text", "mail" or "both"; None for the first address.
    hears_helpers: an owner who wishes to hear each day what the helpers logged.
    """

    __tablename__ = "person"

    id: int | None = Field(default=None, primary_key=True)
    units: str | None = None
    met_utc: datetime
    alerts_by: str | None = None
    hears_helpers: bool | None = None


class Address(SQLModel, table=True):
    """One address of a person: a phone number in E.164, an e-mail address, a console name.

    muted_utc: since when nothing may go there unasked, None while it may.
    """

    __tablename__ = "address"

    id: int | None = Field(default=None, primary_key=True)
    person_id: int = Field(foreign_key="person.id", index=True)
    address: str = Field(unique=True)
    linked_utc: datetime
    muted_utc: datetime | None = None


class Sugarbush(SQLModel, table=True):
    """The trees that one or more people keep a tally of together."""

    __tablename__ = "sugarbush"

    id: int | None = Field(default=None, primary_key=True)
    made_utc: datetime


class Member(SQLModel, table=True):
    """Who belongs to which sugarbush, or is invited to it.

    role: "owner" or "helper". An invitation has no `person_id` and no `joined_utc` yet; it is
    closed by joining or, when it is taken back, by `left_utc`. A person belongs where they
    joined and have not left.
    """

    __tablename__ = "member"
    __table_args__ = (
        Index(
            "uq_member_person_id_current",
            "person_id",
            unique=True,
            sqlite_where=text("joined_utc IS NOT NULL AND left_utc IS NULL"),
            postgresql_where=text("joined_utc IS NOT NULL AND left_utc IS NULL"),
        ),
    )

    id: int | None = Field(default=None, primary_key=True)
    sugarbush_id: int = Field(foreign_key="sugarbush.id", index=True)
    role: str
    address: str = Field(index=True)
    person_id: int | None = Field(default=None, foreign_key="person.id")
    invited_by_id: int | None = Field(default=None, foreign_key="person.id")
    invited_utc: datetime | None = None
    joined_utc: datetime | None = None
    left_utc: datetime | None = None


class InboxText(SQLModel, table=True):
    """A text as it arrived, kept before it is read; then its reply.

    `read_utc` is None until its records and its reply are committed. `tries` counts the
    readings that failed. `reply_owed` says that the reply could not go out in the door's own
    answer and still has to be sent.
    """

    __tablename__ = "inbox"
    __table_args__ = (
        UniqueConstraint("door", "provider_id"),
        Index("ix_inbox_sender_arrived_utc", "sender", "arrived_utc"),
        Index(
            "ix_inbox_unread",
            "id",
            sqlite_where=text("read_utc IS NULL"),
            postgresql_where=text("read_utc IS NULL"),
        ),
    )

    id: int | None = Field(default=None, primary_key=True)
    door: str
    provider_id: str
    sender: str
    to: str = ""
    text: str = Field(sa_column=Column(Text, nullable=False))
    media: int = 0
    opt_out: str | None = None
    arrived_utc: datetime
    tries: int = 0
    read_utc: datetime | None = None
    reply: str | None = Field(default=None, sa_column=Column(Text, nullable=True))
    reply_owed: bool = False


class Record(SQLModel, table=True):
    """One thing that a text said. Never changed and never deleted.

    `text_id` is the text that the record stands for, `made_by_text_id` the one that caused it;
    they differ where an undo brought an earlier version back. `replaces_id` is the record that
    this one amends, undoes or restores over. A record counts while nothing replaces it, and
    kind "undo" never counts.
    """

    __tablename__ = "record"
    __table_args__ = (
        # What a season adds up to, kind by kind. It holds all that is summed, so that a sum
        # never looks at the records themselves.
        Index(
            "ix_record_season",
            *("sugarbush_id", "season", "kind", "brix", "on"),
            *("gallons", "dollars", "cords", "propane_lb", "id"),
        ),
        # The latest of a kind: place, bucket size, boils. And the sap of a time, which is added up
        # without a look at the records themselves.
        Index(
            "ix_record_latest",
            *("sugarbush_id", "kind", "at_local", "on", "season", "gallons", "id"),
        ),
        # What each tree and lot gave, and their names.
        *(
            Index(
                f"ix_record_{name}",
                *("sugarbush_id", "season", name, "kind", "brix", "gallons", "on", "id"),
                sqlite_where=text(f"{name} IS NOT NULL"),
                postgresql_where=text(f"{name} IS NOT NULL"),
            )
            for name in ("tree", "lot")
        ),
        *(
            Index(
                f"ix_record_{name}_names",
                *("sugarbush_id", name),
                sqlite_where=text(f"{name} IS NOT NULL"),
                postgresql_where=text(f"{name} IS NOT NULL"),
            )
            for name in ("tree", "lot")
        ),
        # What has been replaced; each record at most once, however many ask at the same time.
        Index(
            "uq_record_replaces",
            "sugarbush_id",
            "replaces_id",
            unique=True,
            sqlite_where=text("replaces_id IS NOT NULL"),
            postgresql_where=text("replaces_id IS NOT NULL"),
        ),
        # What a person's last text wrote.
        Index("ix_record_person_text", "person_id", "text_id"),
    )

    id: int | None = Field(default=None, primary_key=True)
    sugarbush_id: int = Field(foreign_key="sugarbush.id")
    person_id: int = Field(foreign_key="person.id")
    text_id: int = Field(foreign_key="inbox.id")
    made_by_text_id: int = Field(foreign_key="inbox.id")
    replaces_id: int | None = Field(default=None, foreign_key="record.id")
    kind: str
    on: date
    at_local: NaiveDatetime = Field(sa_column=Column(DateTime(timezone=False), nullable=False))
    season: int
    gallons: float | None = None
    brix: float | None = None
    count: int | None = None
    hours: float | None = None
    dollars: float | None = None
    fahrenheit: float | None = None
    cords: float | None = None
    propane_lb: float | None = None
    tree: str | None = None
    lot: str | None = None
    detail: dict[str, Any] = Field(default_factory=dict, sa_column=Column(JSON, nullable=False))
    stored_utc: datetime


class SeasonSum(SQLModel, table=True):
    """What the records of a kind that count add up to in a season, by one of their sides.

    side: "brix", "day", "lot" or "tree"; name: which of them, a Brix as its shortest decimals
    ("" for none told), a day in ISO form. tested_gallons: of those that told a Brix; sugar:
    gallons times Brix. A sum is None when no record told that amount.
    """

    __tablename__ = "season_sum"

    sugarbush_id: int = Field(primary_key=True, foreign_key="sugarbush.id")
    season: int = Field(primary_key=True)
    side: str = Field(primary_key=True)
    kind: str = Field(primary_key=True)
    name: str = Field(primary_key=True)
    records: int
    last_on: date
    gallons: float | None = None
    dollars: float | None = None
    cords: float | None = None
    propane_lb: float | None = None
    brix: float | None = None
    tested_gallons: float | None = None
    sugar: float | None = None


class Consent(SQLModel, table=True):
    """The log of who allowed or forbade texts, when, and how. Only ever added to.

    said: "stop" or "start". how: the door and the word or error that said it. address: the one
    it came by.
    """

    __tablename__ = "consent"

    id: int | None = Field(default=None, primary_key=True)
    person_id: int = Field(foreign_key="person.id", index=True)
    said: str
    how: str
    address: str | None = None
    text_id: int | None = Field(default=None, foreign_key="inbox.id")
    at_utc: datetime


class Pending(SQLModel, table=True):
    """The question that a person was asked last and has not answered, as JSON."""

    __tablename__ = "pending"

    person_id: int = Field(primary_key=True, foreign_key="person.id")
    text_id: int = Field(foreign_key="inbox.id")
    question: dict[str, Any] = Field(sa_column=Column(JSON, nullable=False))
    asked_utc: datetime


class Said(SQLModel, table=True):
    """The local day on which a person last heard a hint, so that it is not said twice a day."""

    __tablename__ = "said"

    person_id: int = Field(primary_key=True, foreign_key="person.id")
    what: str = Field(primary_key=True)
    on: date


class OutboxText(SQLModel, table=True):
    """A text that is owed to somebody, committed with its cause; then what became of it.

    key: what it is owed for ("morning", "boil_by:17", "reply:45"); one person is owed it once a
    local day. kind: "alert", "reminder", "notice" or "reply". sent_from: the address it has to
    leave by, "" for the usual one.
    state: "owed"; "trying" from just before the provider is called until its answer is written;
    "unclear" when nobody knows whether the provider took it; "sent"; "dropped" when it may not or
    need not go any more; "failed" when the provider will never take it. reason: why, in a few
    words.
    look_utc: when to look at it next: when it is due, then when a claim or a pause runs out.
    tries counts the claims, and tells one from the next.
    status: what the provider reported last.
    """

    __tablename__ = "outbox"
    __table_args__ = (
        UniqueConstraint("person_id", "key", "local_date"),
        Index(
            "ix_outbox_look",
            "look_utc",
            "id",
            sqlite_where=text("state IN ('owed', 'trying', 'unclear')"),
            postgresql_where=text("state IN ('owed', 'trying', 'unclear')"),
        ),
        Index("ix_outbox_person_id_sent_utc", "person_id", "sent_utc"),
        Index("ix_outbox_provider_id", "provider_id"),
    )

    id: int | None = Field(default=None, primary_key=True)
    person_id: int = Field(foreign_key="person.id")
    door: str
    address: str
    sent_from: str = ""
    kind: str
    key: str
    local_date: date
    body: str = Field(sa_column=Column(Text, nullable=False))
    segments: int
    made_utc: datetime
    due_utc: datetime
    useless_after_utc: datetime
    look_utc: datetime
    state: str
    reason: str | None = None
    tries: int = 0
    trying_since_utc: datetime | None = None
    sent_utc: datetime | None = None
    provider_id: str | None = None
    status: str | None = None


class Letter(SQLModel, table=True):
    """What a text that came by mail needs for its answer: the thread that it belongs to.

    message_ids: the References of the answer, oldest first, separated by spaces. attach: what the
    answer carries, "" or "export".
    """

    __tablename__ = "letter"

    text_id: int = Field(primary_key=True, foreign_key="inbox.id")
    message_id: str
    subject: str
    message_ids: str = Field(sa_column=Column(Text, nullable=False))
    attach: str = ""


class LinkCode(SQLModel, table=True):
    """A code that links a mail address to a person, at most one a person.

    address: the one that the code was mailed to; None where it is to be mailed from any.
    tries: how often a wrong one was given.
    """

    __tablename__ = "link_code"

    person_id: int = Field(primary_key=True, foreign_key="person.id")
    address: str | None = None
    code: str = Field(index=True)
    tries: int = 0
    expires_utc: datetime


class Stranger(SQLModel, table=True):
    """A mail address that nobody linked, and when it last wrote: how often it tried a code and
    whether it was answered, both since the day in `since_utc` began for it."""

    __tablename__ = "stranger"

    address: str = Field(primary_key=True)
    since_utc: datetime = Field(index=True)
    tries: int = 0
    is_answered: bool = False


class Secret(SQLModel, table=True):
    """What this store signs its links with, made once and shared by all its processes."""

    __tablename__ = "secret"

    name: str = Field(primary_key=True)
    value: str


class ForecastKept(SQLModel, table=True):
    """The last good forecast of a weather source for one of its cells, as `told`, JSON."""

    __tablename__ = "forecast"

    source: str = Field(primary_key=True)
    cell_key: str = Field(primary_key=True)
    fetched_utc: datetime
    told: str = Field(sa_column=Column(Text, nullable=False))


class CellFound(SQLModel, table=True):
    """The cell that a weather source found for a place; no `cell_key` where it covers none."""

    __tablename__ = "forecast_cell"

    source: str = Field(primary_key=True)
    place_key: str = Field(primary_key=True)
    cell_key: str | None = None
    zone: str | None = None
    asked_utc: datetime


class WeatherDay(SQLModel, table=True):
    """A local day of an area of the weather (a cell of a source), as it was judged last.

    score: 0 to 1, how surely sap ran; low_f and high_f: its lowest and highest hour, F.
    """

    __tablename__ = "weather_day"

    area: str = Field(primary_key=True)
    on: date = Field(primary_key=True)
    score: float
    low_f: float
    high_f: float


class Mark(SQLModel, table=True):
    """How far something has come that goes on by the clock: up to which moment it is done."""

    __tablename__ = "mark"

    name: str = Field(primary_key=True)
    done_until_utc: datetime


def table_of(model: type[SQLModel]) -> Table:
    """The plain table of a model. Statements are made of it once, when a module is imported:
    building one takes ten times as long as running it."""
    table = SQLModel.metadata.tables[str(model.__tablename__)]
    assert isinstance(table, Table)
    return table
