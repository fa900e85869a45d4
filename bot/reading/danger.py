"""Texts that cry for help: fire where none should be, somebody burned or worse. Nothing of them is
a record, whatever else they say."""

from __future__ import annotations

import re
from typing import Literal

from bot.reading.signs import either

Danger = Literal["fire", "burn", "harm"]

_PLACES = "house|shack|roof|shed|barn|garage|chimney"
_FIRE = re.compile(
    rf"(?:\b(?:is|are|caught|catching|{_PLACES})|'s) (?:now )?on fire\b"
    r"|\b(?:caught|catching|set) (?:on )?fire\b|\bchimney fire\b|\bgrease fire\b"
    r"|\bfire(?:'s| is)? (?:out of control|spreading|spread)\b"
    rf"|\b(?:{_PLACES}) is burning\b|\bin flames\b"
)
# "pan's on fire since 8": lit.
_LIT = re.compile(r"\blit\b|\bsince\b|\bat \d|\d ?(?:am|pm)\b")
_BODY = (
    r"(?:hands?|arms?|fingers?|face(?! cords?\b)|foot|feet|legs?|skin|eyes?|wrist|neck|chest"
    r"|himself|herself|myself|me(?! back\b)|my kid|the kid|my son|my daughter)"
)
_BURN = re.compile(
    rf"\b(?:burn(?:ed|t)?|scald\w*|splash\w*)\b.*\b{_BODY}\b"
    r"|\bgot (?:burn(?:ed|t)|scalded|splashed)\b|\bburned skin\b"
    rf"|\b(?:syrup|sap|steam|water)\b.*\bon (?:my|his|her|their) {_BODY}\b"
)
_HARM = re.compile(
    r"\bfell (?:in|into|onto|on|against|off) the"
    r" (?:pan|tank|vat|fire|evaporator|sap tank|barrel|arch|ladder|roof)\b"
    r"|\b(?:passed out|unconscious|not breathing|can'?t breathe|carbon monoxide alarm|co alarm)\b"
)


_OF_WOOD = re.compile(
    r"\bburn(?:ed|t)? (?:[\w./]+ ){0,6}(?:cords?|wood|cubic feet|propane|lbs?|pounds?)\b"
    r"|\b(?:cords?|wood|propane|lbs?|pounds?) (?:was |were |got )?burn(?:ed|t)\b"
)
_HURT = re.compile(rf"\b(?:my|his|her|their) {_BODY}\b|\bgot (?:burn|scald)|\bon (?!me\b){_BODY}\b")
# One of these is in every cry for help, and in few other texts.
_MAY_BE = re.compile(
    either(
        (
            *("fire", "flames", "burn", "scald", "splash", "fell ", "passed out", "conscious"),
            *("breath", "alarm", " on my ", " on his ", " on her ", " on their "),
        )
    )
)


_NOBODY = re.compile(
    r"\b(?:nobody|no one|noone|none of us|didn't|never) (?:\w+ )?(?:get |got )?burn"
)


def danger(plain: str) -> Danger | None:
    """What a tidied text cries for help about, None where it does not."""
    if not _MAY_BE.search(plain):
        return None
    if _FIRE.search(plain) and not _LIT.search(plain):
        return "fire"
    if _HARM.search(plain):
        return "harm"
    if _OF_WOOD.search(plain) and not _HURT.search(plain):
        return None  # "burned a third cord, cost me nothing"
    if _NOBODY.search(plain):
        return None
    return "burn" if _BURN.search(plain) else None
