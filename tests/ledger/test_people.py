"""People, addresses and whose sugarbush they belong to. On both databases."""

from __future__ import annotations

import pytest

from bot.ledger import HELPER, OWNER, CollisionError, Ledger
from tests.ledger.desk import ANN, BEN, CAL, START, Desk, sap


def test_a_stranger_is_not_found(ledger: Ledger) -> None:
    with ledger.reading() as book:
        assert book.people.find(ANN) is None


def test_somebody_new_owns_a_sugarbush(ledger: Ledger) -> None:
    with ledger.writing() as book:
        met = book.people.meet(ANN, START)
    with ledger.reading() as book:
        assert book.people.find(ANN) == met
    assert (met.role, met.units) == (OWNER, None)


def test_two_people_are_apart(ledger: Ledger) -> None:
    with ledger.writing() as book:
        assert (
            book.people.meet(ANN, START).sugarbush_id != book.people.meet(BEN, START).sugarbush_id
        )


def test_an_address_belongs_to_one_person(ledger: Ledger) -> None:
    with ledger.writing() as book:
        book.people.meet(ANN, START)

    def meet_again() -> None:
        with ledger.writing() as book:
            book.people.meet(ANN, START)

    with pytest.raises(CollisionError):
        meet_again()


def test_the_units_that_somebody_speaks_are_remembered(ledger: Ledger) -> None:
    with ledger.writing() as book:
        said = book.people.speaks(book.people.meet(ANN, START), "metric")
    with ledger.reading() as book:
        assert book.people.find(ANN) == said
    assert said.units == "metric"


def test_one_who_is_invited_joins_and_shares_the_tally(desk: Desk) -> None:
    desk.write(sap(8))
    with desk.text(ANN) as (book, ann, _):
        book.people.invite(ann.sugarbush_id, BEN, ann.person_id, START)
        assert book.people.is_invited(ann.sugarbush_id, BEN)
        assert not book.people.is_member(ann.sugarbush_id, BEN)
    with desk.text(BEN) as (book, ben, _):
        invitation = book.people.invitation(BEN)
        assert invitation is not None
        assert invitation.by == ANN
        joined = book.people.join(ben, invitation, START)
    assert joined.role == HELPER
    desk.write(sap(12), sender=BEN)
    assert desk.sap(ANN) == desk.sap(BEN) == 20
    with desk.text(ANN) as (book, ann, _):
        assert book.people.is_member(ann.sugarbush_id, BEN)
        assert not book.people.is_invited(ann.sugarbush_id, BEN)
        assert book.people.invitation(BEN) is None


def test_an_invitation_can_be_taken_back(desk: Desk) -> None:
    with desk.text(ANN) as (book, ann, _):
        book.people.invite(ann.sugarbush_id, BEN, ann.person_id, START)
        book.people.withdraw(ann.sugarbush_id, BEN, START)
        assert book.people.invitation(BEN) is None


def test_inviting_twice_leaves_one_invitation(desk: Desk) -> None:
    with desk.text(ANN) as (book, ann, _):
        for _ in range(2):
            book.people.invite(ann.sugarbush_id, BEN, ann.person_id, START)
        book.people.withdraw(ann.sugarbush_id, BEN, START)
        assert book.people.invitation(BEN) is None


def test_the_latest_of_two_invitations_counts(desk: Desk) -> None:
    for owner in (ANN, CAL):
        with desk.text(owner) as (book, who, _):
            book.people.invite(who.sugarbush_id, BEN, who.person_id, START)
    with desk.text(BEN) as (book, _, _):
        invitation = book.people.invitation(BEN)
        assert invitation is not None
        assert invitation.by == CAL
