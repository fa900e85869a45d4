"""Small things remembered about a person: the open question, hints said, consent."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlmodel import Session, col, select

from bot.ledger.tables import Consent, Pending, Said


@dataclass(frozen=True, slots=True)
class Asked:
    """A question that waits for its answer: what, because of which text, and since when."""

    question: dict[str, Any]
    text_id: int
    asked_utc: datetime


class Questions:
    """The one question that each person was asked last."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def open(self, person_id: int) -> Asked | None:
        """The open question, None if there is none."""
        row = self._session.get(Pending, person_id)
        return None if row is None else Asked(row.question, row.text_id, row.asked_utc)

    def ask(self, person_id: int, asked: Asked) -> None:
        """Remember a question in place of the one before."""
        self.drop(person_id)
        self._session.add(
            Pending(
                person_id=person_id,
                text_id=asked.text_id,
                question=asked.question,
                asked_utc=asked.asked_utc,
            )
        )
        self._session.flush()

    def drop(self, person_id: int) -> None:
        """Forget the open question, if there is one."""
        row = self._session.get(Pending, person_id)
        if row is not None:
            self._session.delete(row)
            self._session.flush()


class Hints:
    """What each person was told on which local day."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def said_on(self, person_id: int, what: str) -> date | None:
        """The local day on which it was last said, None if never."""
        row = self._session.get(Said, (person_id, what))
        return None if row is None else row.on

    def say(self, person_id: int, what: str, on: date) -> None:
        """Remember that it was said on a local day."""
        row = self._session.get(Said, (person_id, what))
        if row is None:
            row = Said(person_id=person_id, what=what, on=on)
        row.on = on
        self._session.add(row)
        self._session.flush()


class Consents:
    """The log of consent: only ever added to."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def last(self, person_id: int) -> str | None:
        """What the person said last: "stop", "start", or None if neither."""
        return self._session.exec(
            select(Consent.said)
            .where(col(Consent.person_id) == person_id)
            .order_by(col(Consent.id).desc())
            .limit(1)
        ).first()

    def log(
        self, person_id: int, said: str, how: str, text_id: int | None, at_utc: datetime
    ) -> None:
        """Add a line: "stop" or "start", and how it came ("twilio_sms: STOP")."""
        self._session.add(
            Consent(person_id=person_id, said=said, how=how, text_id=text_id, at_utc=at_utc)
        )
        self._session.flush()
