"""What `and yesterday?` asks, after the question before it."""

from __future__ import annotations

import pytest

from bot.conversation.following_up import followed_up

LOTS = ("ridge", "creek")


@pytest.mark.parametrize(
    ("words", "about", "asks"),
    [
        ("and yesterday?", "how much today", "how much yesterday"),
        ("what about this week", "how much yesterday?", "how much this week"),
        ("and in march", "how much syrup so far", "how much syrup march"),
        ("yesterday?", "how much today", "how much yesterday"),
        ("and the ridge", "how much today", "how much today from the ridge"),
        ("how about the creek lot?", "how much from the ridge", "how much from the creek"),
        ("and tree 2", "how is tree 4 doing", "how is tree 2 doing"),
        ("what about syrup", "how much sap yesterday", "how much syrup yesterday"),
        ("and jars?", "how much this week", "how much jars this week"),
    ],
)
def test_the_last_question_is_asked_of_something_else(words: str, about: str, asks: str) -> None:
    assert followed_up(words, about, LOTS) == asks


@pytest.mark.parametrize(
    "words",
    ["12 gal", "and 12 gal", "thanks", "what about the dog", "and so it goes on and on", ""],
)
def test_anything_else_follows_up_nothing(words: str) -> None:
    assert followed_up(words, "how much today", LOTS) is None
