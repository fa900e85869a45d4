"""Somebody to let in: a phone number in E.164 or an e-mail address."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.clauses import Clause
    from bot.reading.notes import Notes

CUES = {
    "ADD": (
        "add invite adding inviting let include sign_up bring_in_my put_my add_my_wife "
        "add_my_husband hook_up "
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Helper(Reading):
    """Somebody to let in: a phone number in E.164 or an e-mail address."""

    kind: ClassVar[str] = "helper"

    address: str


def find(clause: Clause, notes: Notes) -> None:
    """Somebody to let in, by phone number or e-mail address."""
    addresses = clause.free("phone", "email")
    if not clause.about("ADD") and not _asked_before(notes):
        for item in addresses:
            item.used = True
        return
    for item in addresses:
        item.used = True
        address = item.text if item.sort == "email" else _e164(item.text)
        if address is None:
            notes.ask(
                "I need the number with its area code, like +1 802 555 0102. What is it?",
                fill="add {}",
                number_only=False,
            )
            continue
        notes.add(Helper(address=address), item.start)
    if (
        clause.has("ADD")
        and not addresses
        and not any(other.free("phone", "email") for other in notes.clauses)
        and _a_person(clause)
    ):
        short = [item for item in clause.free("number") if item.value > 99_999]
        notes.ask(
            "I need the number with its area code. What is it?"
            if short
            else "What is their number or e-mail?",
            fill="add {}",
            number_only=False,
        )
        for item in short:
            item.used = True


def _asked_before(notes: Notes) -> bool:
    return any(clause.has("ADD") for clause in notes.clauses)


_PEOPLE = frozenset(
    "wife husband son daughter brother sister dad mom father mother partner friend helper kid "
    "neighbor cousin uncle aunt volunteer grandson granddaughter buddy him her them".split()
)


def _a_person(clause: Clause) -> bool:
    return bool(_PEOPLE & set(clause.words())) and not clause.free("volume")


def _e164(text: str) -> str | None:
    """A phone number's digits in E.164; ten digits are North American. None if too short."""
    digits = re.sub(r"\D", "", text)
    if text.startswith("+"):
        return "+" + digits if 8 <= len(digits) <= 15 else None
    if len(digits) == 11 and digits[0] == "1":
        return "+" + digits
    return "+1" + digits if len(digits) == 10 else None
