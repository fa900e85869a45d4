"""Somebody to let in: a phone number in E.164 or an e-mail address."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.notes import Notes

NEEDS = ("phone", "email", "ADD")
CUES = {
    "ADD": (
        "let allow add invite adding inviting let_him_in let_her_in let_them_in let_my include "
        "sign_up bring_in_my put_my add_my_wife add_my_husband hook_up "
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
    for item in addresses:
        item.used = True
        if not meant(notes):
            continue
        address = item.text if item.sort == "email" else _e164(item.text)
        if address is None:
            _ask_number(notes)
            continue
        notes.add(Helper(address=address), item.start)
    if not clause.has("ADD") or notes.has_address or clause.free("volume") or notes.doubts:
        return
    short = [item for item in clause.free("number") if item.value > 99_999]
    cut_off = "@" in notes.text
    if not _LETS_RUN.isdisjoint(clause.words()):
        return  # "let her go cold", "let him run it"
    named = clause.items[0].text == "add" and len(clause.items) <= NAME_AND_VERB
    if _PEOPLE & set(clause.words()) or short or cut_off or named:
        for item in short:
            item.used = True
        _ask_number(notes)


NAME_AND_VERB = 3
"""`add sam`, `add sam too`: short enough to be nothing else."""


def meant(notes: Notes) -> bool:
    """Does the text let somebody in, rather than tell whose number it is?"""
    if not notes.has_address:
        return False
    words = {word for clause in notes.clauses for word in clause.words()}
    if any(clause.has("ADD") for clause in notes.clauses):
        return True
    return bool(words & _PEOPLE or words & _LETS_IN) and not words & _NOT_MEANT


def _ask_number(notes: Notes) -> None:
    notes.ask(
        "What is their phone number with area code, or their e-mail?",
        fill="add {}",
        number_only=False,
    )


_LETS_RUN = frozenset("go run burn cool die cold down boil sit rip".split())
_LETS_IN = frozenset("put helper helper's helps share access help helping".split())
_NOT_MEANT = frozenset(
    "call reach doctor vet dealer supplier calls sells selling selling. buy order plumber".split()
)
_PEOPLE = frozenset(
    "wife husband wifes wife's husband's partner girlfriend boyfriend neighbor friends crew son "
    "daughter brother sister dad mom father mother partner friend helper kid "
    "neighbor cousin uncle aunt volunteer grandson granddaughter buddy him her them".split()
)


def _e164(text: str) -> str | None:
    """A phone number's digits in E.164; ten digits are North American. None if too short."""
    digits = re.sub(r"\D", "", text)
    if text.startswith("+"):
        return "+" + digits if 8 <= len(digits) <= 15 else None
    if len(digits) == 11 and digits[0] == "1":
        return "+" + digits
    return "+1" + digits if len(digits) == 10 else None
