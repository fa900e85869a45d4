"""Ask one question of a sugarbush with a little in its books, without first contact."""

from __future__ import annotations

from collections.abc import Sequence

from tests.conversation.checks import numbers, volumes
from tests.conversation.stage import Stage

AT = "2027-03-05T09:00"


def asked(question: str, *told: str, place: str = "05760", at: str = AT) -> str:
    """The reply to a question at a wall-clock time, after texts told earlier that day."""
    stage = Stage()
    stage.text("hello", "2027-02-20T12:00")
    stage.text(place, "2027-02-20T12:01")
    day = at[:10]
    for minute, words in enumerate(told):
        stage.text(words, f"{day}T00:{minute:02d}")
    return stage.text(question, at)


def has_number(reply: str, low: float, high: float) -> bool:
    """True when some number of the reply lies between two bounds."""
    return any(low <= value <= high for value in numbers(reply))


def has_volume(reply: str, low: float, high: float) -> bool:
    """True when some volume of the reply lies between two bounds, in US gallons."""
    return any(low <= value <= high for value in volumes(reply))


def all_said(stage: Stage, question: str, at: str = AT) -> Sequence[str]:
    """The reply to a question and every text that "more" brings."""
    said = [stage.text(question, at)]
    while said[-1].endswith('Text "more".'):
        said.append(stage.text("more", at))
    return said
