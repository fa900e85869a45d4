"""The contract of every channel: what is sent is found, what was not is not, and all that goes
wrong is one of four named errors that names no person."""

from __future__ import annotations

import io
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta

import pytest

from bot.channels.channel import (
    Channel,
    NeverError,
    OptedOutError,
    SendError,
    TryLaterError,
    UnclearError,
)
from bot.channels.console import Console
from bot.messages import Outgoing
from tests.channels.smtp_stub import SmtpStub
from tests.channels.twilio_stub import Refuse, Silence, TwilioStub

ANN, BEN = "+15550100011", "+15550100012"
A_MINUTE_AGO = datetime.now(UTC) - timedelta(minutes=1)


def text(words: str = "Pailtext: boil by Fri.", to: str = ANN, text_id: int = 7) -> Outgoing:
    return Outgoing(to, words, "reminder", text_id=text_id, valid_for=timedelta(hours=2))


@dataclass
class Member:
    """A channel, what was seen to leave by it, and how it is made to fail in each way."""

    channel: Channel
    left: Callable[[], list[str]]
    fail: dict[type[SendError], Callable[[], None]] = field(default_factory=dict)
    # It took the text, and the answer was lost.
    lose_the_answer: Callable[[], None] | None = None


class BreakingConsole(io.StringIO):
    """A console that can be taken away."""

    gone = False

    def write(self, words: str) -> int:
        if self.gone:
            raise BrokenPipeError
        return super().write(words)

    def go(self) -> None:
        self.gone = True


def console() -> Member:
    out = BreakingConsole()
    lines = lambda: [line.partition(": ")[2] for line in out.getvalue().splitlines()]  # noqa: E731
    return Member(Console(out), lines, {UnclearError: out.go})


def twilio(stub: TwilioStub) -> Member:
    def then(manner: Refuse | Silence) -> Callable[[], None]:
        return lambda: stub.next_sends.append(manner)

    return Member(
        stub.channel(),
        stub.bodies,
        {
            TryLaterError: then(Refuse(429, 20429)),
            NeverError: then(Refuse(400, 21211)),
            OptedOutError: then(Refuse(400, 21610)),
            UnclearError: then(Silence(accepted=False)),
        },
        then(Silence(accepted=True)),
    )


def email(post: SmtpStub) -> Member:
    return Member(
        post.channel(),
        post.bodies,
        {
            TryLaterError: lambda: post.refusals.append(452),
            NeverError: lambda: post.refusals.append(550),
            UnclearError: lambda: post.breaks.append("before"),
        },
        lambda: post.breaks.append("after"),
    )


@pytest.fixture(params=["console", "twilio_sms", "email"])
def member(request: pytest.FixtureRequest) -> Iterator[Member]:
    if request.param == "console":
        yield console()
        return
    if request.param == "email":
        yield email(request.getfixturevalue("post"))
        return
    yield twilio(request.getfixturevalue("stub"))


def test_a_text_leaves_as_it_is_and_has_an_id(member: Member) -> None:
    sent = member.channel.send(text("Pailtext: 24F at dawn, 43F by 2 pm."))
    assert member.left() == ["Pailtext: 24F at dawn, 43F by 2 pm."]
    assert sent.provider_id


def test_two_texts_have_two_ids(member: Member) -> None:
    first, second = (member.channel.send(text(text_id=number)) for number in (1, 2))
    assert first.provider_id != second.provider_id


def test_a_text_that_left_is_found_under_its_id(member: Member) -> None:
    sent = member.channel.send(text())
    found = member.channel.find(text(), A_MINUTE_AGO)
    assert found is not None
    assert found.provider_id == sent.provider_id


def test_a_text_that_never_left_is_not_found(member: Member) -> None:
    member.channel.send(text("Pailtext: another.", text_id=8))
    member.channel.send(text(to=BEN, text_id=9))
    assert member.channel.find(text(), A_MINUTE_AGO) is None


@pytest.mark.parametrize("error", [TryLaterError, NeverError, OptedOutError, UnclearError])
def test_each_failure_is_a_named_error_without_number_or_words(
    member: Member, error: type[SendError]
) -> None:
    if error not in member.fail:
        assert error is not UnclearError, "every channel can break off"
        return
    member.fail[error]()
    with pytest.raises(error) as caught:
        member.channel.send(text())
    assert type(caught.value) is error
    assert str(caught.value)
    assert ANN not in str(caught.value)
    assert "boil" not in str(caught.value)
    assert member.left() == []
    assert member.channel.find(text(), A_MINUTE_AGO) is None


def test_a_text_whose_answer_was_lost_is_found(member: Member) -> None:
    if member.lose_the_answer is None:
        assert isinstance(member.channel, Console), "only the console never loses an answer"
        return
    member.lose_the_answer()
    with pytest.raises(UnclearError):
        member.channel.send(text())
    assert member.left() == [text().text]
    assert member.channel.find(text(), A_MINUTE_AGO) is not None
