"""What a clause can be about, by the tags of its words, and what it can measure."""

from __future__ import annotations

QUANTITIES = frozenset(
    ("volume", "brix", "temp", "length", "hours", "cords", "mass", "money", "number")
)


FRAME_TAGS = frozenset(
    "GATHER POUR BOTTLE DRAW SYRUP BOIL FIRE SETV PUTIN "
    "PULLV COSTV BURN SUGAR DRY THROUGH SHUT END LIT".split()
)
"""What a clause can be about; a clause without any goes on about what the one before did."""
