"""Short sentences about one matter are one; others stay apart."""

from __future__ import annotations

import pytest

from bot.reading.in_pieces import put_together


@pytest.mark.parametrize(
    ("text", "whole"),
    [
        (
            "tree 14 is a red maple. 13 inches. one tap",
            "tree 14 is a red maple, 13 inches, one tap",
        ),
        (
            "emptied the pond buckets. it came to 13 gal",
            "emptied the pond buckets, it came to 13 gal",
        ),
        ("tree 5. 2 gal", "tree 5: 2 gal"),
        ("sap's cloudy. dumped it. 6 gal", "sap's cloudy. dumped it, 6 gal"),
        ("sold 4 pints at the fair. $48", "sold 4 pints at the fair for $48"),
        ("8 gal yesterday, 10 gal today. both 2.0", "8 gal at 2.0 yesterday, 10 gal at 2.0 today"),
    ],
)
def test_what_is_told_of_one_matter_becomes_one_sentence(text: str, whole: str) -> None:
    assert put_together(text) == whole


@pytest.mark.parametrize(
    "text",
    [
        "dumped it. 10 gal today from the rest",
        "sold 4 pints. $48 for lids",
        "gonna boil. sunday. 12 gal",
        "emptied the buckets. it was 12 gal short",
        "got 12 gal. boiled 30 gal",
    ],
)
def test_another_matter_stays_a_sentence_of_its_own(text: str) -> None:
    assert put_together(text) == text
