"""What concerns one's addresses, one's helpers and one's own data, and no sap.

The reading contract knows no such kind: outside it is a `chat` with fields of its own.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.notes import Notes

# What the words in capitals below stand for.
_WORDS = {
    "EMAIL": r"(?P<address>[^\s@<>,;]+@[a-z0-9-]+(?:\.[a-z0-9-]+)+)",
    "PHONE": r"(?P<phone>\+?\d[\d\s().-]{6,18}\d)",
    "MAIL": r"e-?mails?|mails?",
    "ALERTS": r"(?:the |my |all )?(?:morning )?(?:alerts?|reminders?|alerts and reminders)",
    "TEXT": r"text|phone|sms",
    "BY": r"(?:by|to|via)(?: my)?",
    "LOG": r"(?:log|logged|did|do|write|wrote|text|gather)",
    "HELPERS": r"(?:my |the )?helpers?",
    "SOMEBODY": r"(?:(?:my|a|an|the|another) )?(?:wife|husband|partner|son|daughter|kids?|brother"
    r"|sister|mom|dad|mother|father|friend|neighbou?r|helper|person|people|volunteers?"
    r"|somebody|someone)",
    "HOW": r"(?:how (?:do|can|would|should) (?:i|we)|can (?:i|we)|where do i)",
    "MEND": r"(?:fix|correct|change|undo|delete|edit|amend|take back|put right)",
    "RECORD": r"(?:mistakes?|errors?|records?|entry|entries|one|number|text|amount|typos?|log)",
}
# In this order: the first that fits the whole text is meant.
_SAID = (
    ("unlink", "(?:un-?link|disconnect|take off)(?: my)?(?: MAIL)?(?: address)? EMAIL"),
    ("link", "(?:link|connect)(?: my| this)?(?: MAIL)?(?: address)?:? EMAIL"),
    ("link", "(?:add )?my MAIL(?: address)?(?: is|:)? EMAIL"),
    ("link_by_mail", "(?:link|connect)(?: my)? MAIL(?: address)?"),
    ("link_by_mail", "MAIL code"),
    ("remove", "(?:remove|kick out|drop|take off|take out)(?: my \\w+)? (?:EMAIL|PHONE)"),
    ("how_remove", "(?:remove|kick out|HOW remove) SOMEBODY"),
    ("how_add", "HOW (?:add|invite|bring in) SOMEBODY(?: on(?: here)?| to this| in| too)?"),
    ("how_add", "can SOMEBODY (?:text|log|use this)(?: too| as well)?"),
    ("how_mend", "HOW MEND(?: (?:a|an|the|my|that|it|last|wrong|old|something|in))*(?: RECORD)?"),
    ("leave", "leave(?: (?:the|this|their|your))?(?: sugarbush)?"),
    ("leave", "(?:i am|i'm) leaving (?:the|this|their|your) sugarbush"),
    ("members", "who (?:has )?logged(?: what| it| this)?"),
    ("members", "who (?:did|gathered|wrote) what"),
    ("members", "(?:tell me |show me )?what(?: all)? (?:did|have|has) (?:they|everyone|everybody"
                "|each of us|(?:both )?HELPERS|(?:both|all) of them|the others)"
                "(?: all)? (?:LOG|logged|texted|gathered)(?: today| so far| this season)?"),
    ("members", "who(?:'s| is| are) (?:helping|HELPERS)"),
    ("members", "who(?:'s| is) (?:in|on) (?:my|this|our) sugarbush"),
    ("members", "(?:list )?(?:my )?helpers"),
    ("hear", "(?:tell|text) me (?:each day |daily |every day )?what HELPERS LOG"
             "(?: (?:each|every) day| daily)?"),
    ("hush", "(?:stop telling|don't tell|do not tell) me what HELPERS LOG"),
    ("by_both", "(?:send )?ALERTS BY (?:both|MAIL and (?:TEXT)|(?:TEXT) and MAIL)"),
    ("by_mail", "(?:send )?ALERTS BY MAIL(?: only)?"),
    ("by_mail", "MAIL me ALERTS"),
    ("by_text", "(?:send )?ALERTS BY (?:TEXT)(?: only)?"),
    ("by_text", "text me ALERTS"),
    ("forget", "(?:please )?(?:forget|delete|erase) (?:me|my (?:data|account)|all my data)"),
    ("forget", "(?:please )?(?:forget|delete|erase) everything (?:about|on) me"),
)  # fmt: skip


def _expression(said: str) -> str:
    return re.sub("[A-Z]{2,}", lambda word: f"(?:{_WORDS[word[0]]})", said)


_DEEDS = tuple((deed, re.compile(_expression(said))) for deed, said in _SAID)
_ANY_OF_THEM = re.compile(
    "|".join(re.sub(r"\(\?P<\w+>", "(?:", _expression(said)) for _, said in _SAID)
)
"""All of them at once: most texts are none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Household(Reading):
    """deed: what is to be done. address: the one that it is done with, as it was written."""

    kind: ClassVar[str] = "chat"

    deed: str
    address: str | None = None


_NEVER_IN_IT = ("volume", "brix", "hours", "money", "tree", "vessels", "temp")
"""Amounts and names that no such wish has, and most records have."""


def find_whole(notes: Notes) -> bool:
    """A text that is one such wish, and nothing else. Says whether it is one."""
    if any(clause.free(*_NEVER_IN_IT) for clause in notes.clauses):
        return False
    said = " ".join(notes.text.split()).strip(" .!?")
    if _ANY_OF_THEM.fullmatch(said) is None:
        return False
    for deed, pattern in _DEEDS:
        found = pattern.fullmatch(said)
        if found is not None:
            told = found.groupdict()
            address = told.get("address") or told.get("phone")
            notes.add(Household(deed=deed, address=address), 0)
            return True
    return False
