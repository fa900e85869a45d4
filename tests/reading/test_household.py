"""Texts about addresses, helpers and one's own data, and those that only sound like it."""

from __future__ import annotations

from datetime import datetime

import pytest

from bot.reading import read
from bot.reading.kinds import Household, Reading

SENT = datetime(2027, 3, 5, 18)


def readings(text: str) -> tuple[Reading, ...]:
    return read(text, SENT).readings


@pytest.mark.parametrize(
    ("text", "deed", "address"),
    [
        ("link ann@maple.example", "link", "ann@maple.example"),
        ("Link my email Ann@Maple.example.", "link", "ann@maple.example"),
        ("my email is ann@maple.example", "link", "ann@maple.example"),
        ("add my e-mail ann@maple.example", "link", "ann@maple.example"),
        ("email code", "link_by_mail", None),
        ("link my mail", "link_by_mail", None),
        ("unlink ann@maple.example", "unlink", "ann@maple.example"),
        ("remove +1 555 010 0002", "remove", "+1 555 010 0002"),
        ("remove my helper 555-010-0002", "remove", "555-010-0002"),
        ("remove ben@maple.example", "remove", "ben@maple.example"),
        ("leave", "leave", None),
        ("leave this sugarbush", "leave", None),
        ("who logged what", "members", None),
        ("Who's helping?", "members", None),
        ("tell me what my helpers log", "hear", None),
        ("text me every day what the helpers did", "hear", None),
        ("stop telling me what my helpers log", "hush", None),
        ("alerts by mail", "by_mail", None),
        ("email me the alerts", "by_mail", None),
        ("send my alerts by text", "by_text", None),
        ("alerts by both", "by_both", None),
        ("reminders by text and email", "by_both", None),
        ("forget me", "forget", None),
        ("please delete my data", "forget", None),
        ("delete everything about me", "forget", None),
        ("how do i add my wife", "how_add", None),
        ("Can my husband text too?", "how_add", None),
        ("remove my brother", "how_remove", None),
        ("how do I fix a mistake?", "how_mend", None),
        ("how can i change the last entry", "how_mend", None),
    ],
)
def test_a_wish_about_the_household_is_read(text: str, deed: str, address: str | None) -> None:
    assert readings(text) == (Household(deed=deed, address=address),)


@pytest.mark.parametrize(
    "text",
    [
        "add ben@maple.example",
        "forget that",
        "forget the last one",
        "delete the 12 gal",
        "remove the last",
        "drop 12 gal",
        "text me at 8",
        "no more alerts",
        "leave the 12 gal for tomorrow",
        "export my data",
        "12 gal at 2.2",
        "how do i fix a leaky bucket",
        "can my sap freeze",
        "STOP",
        "ben@maple.example sells spiles",
    ],
)
def test_what_only_sounds_like_it_is_not(text: str) -> None:
    assert not any(isinstance(reading, Household) for reading in readings(text))
