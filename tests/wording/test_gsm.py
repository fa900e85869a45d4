"""Segments are counted as the phone network counts them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.wording.gsm import in_gsm, is_gsm, plain, segments


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("", 0),
        ("a" * 160, 1),
        ("a" * 161, 2),
        ("a" * 306, 2),
        ("a" * 307, 3),
        # The euro sign and brackets cost two.
        ("[" * 80, 1),
        ("[" * 81, 2),
        # 152 of one unit and then one of two, which may not straddle the cut at 153.
        ("a" * 152 + "[" + "a" * 152, 3),
        # One character outside the alphabet and 70 fit.
        ("\u2019" + "a" * 69, 1),
        ("\u2019" + "a" * 70, 2),
        ("\U0001f341" * 35, 1),
        ("\U0001f341" * 36, 2),
    ],
)
def test_segments(text: str, count: int) -> None:
    assert segments(text) == count


@pytest.mark.parametrize("char", "\u00b0\u00bd\u2019\u2192\u00ea\u00a0\u2013\U0001f341")
def test_the_usual_offenders_are_outside_the_alphabet(char: str) -> None:
    assert not is_gsm(char)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("Qu\u00e9bec", "Qu\u00e9bec"),
        ("for\u00eat du nord", "foret du nord"),
        ("Mike\u2019s lot", "Mike's lot"),
        ("7\u00bd acres", "7 1/2 acres"),
        ("gar\u00e7on", "garcon"),
        ("a\tb\nc", "a b c"),
        ("\U0001f341", "?"),
        ("x" * 50, "x" * 37 + "..."),
    ],
)
def test_peoples_own_words_are_said_back_within_the_alphabet(words: str, said: str) -> None:
    assert plain(words) == said


@given(st.text(max_size=200))
def test_any_text_can_be_brought_into_the_alphabet(text: str) -> None:
    assert is_gsm(in_gsm(text))


@given(st.text(max_size=400))
def test_more_text_never_takes_fewer_segments(text: str) -> None:
    assert segments(text) <= segments(text + "a")
