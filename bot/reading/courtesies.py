"""Greetings, thanks and the like around what is told: without them the forms that are looked for at
the head and the end of a text are found there."""

from __future__ import annotations

import re

_TO_ALL = (
    r"(?: there(?! (?:is|are|was|were)\b)| all(?=[,:!.-])| again| everyone| everybody| folks| guys"
    r"| y'all)?"
)
_WHO = r"(?:\w+ )?(?:thing|thingy|buddy|pal|bot|helper|machine|computer|keeper|friend)\b"
"""Who is spoken to, which `in_passing` takes with its greeting."""
_HEAD = re.compile(
    rf"(?:(?:hi|hey|hello|hiya|howdy|ok|okay|fyi|btw){_TO_ALL}(?: ?[,:!.-]+ ?| )(?!{_WHO})"
    rf"|good (?:morning|afternoon|evening|day){_TO_ALL} ?[,:!.-]+ ?"
    r"|(?:alright|update|report|note|log|record|entry|quick (?:note|update)|so|well) ?[,:!-]+ "
    r"|so (?!far|much|many|that|long|it\b|is\b|are\b)|please log:? |for the record,? )+"
    r"(?=[\w$#.+])"
)
_MUCH = r"(?: (?:again|so much|very much|a lot|a bunch|a million|all|buddy|man|guys|everyone))?"
_END = re.compile(
    r"(?:(?<!\bno)(?:(?<=[\w.!,;)%])|^)\s*[,.!;-]*\s*(?:"
    rf"\b(?:(?:many )?thanks|thank you|thank u|thanx|thx|tnx|cheers){_MUCH}"
    r"|\b(?:lol|lmao|haha|hehe)|\bsent from my \w+(?: \w+)?"
    r"|\bhave a good (?:one|day|night|evening)|\bgood ?night|[:;]-?[)(]+)[.! ]*)+$"
)


# Every courtesy ends with one of these, and few other texts do: that is quick to see.
_LAST = tuple(
    "thanks you u thanx thx tnx cheers again much lot bunch million all buddy man guys everyone "
    "lol lmao haha hehe one day night evening ) (".split()
)


def without_courtesies(text: str) -> str:
    """A tidy text without them; as it came where it is nothing else."""
    head = _HEAD.match(text)
    may_end = text.rstrip(" .!\n").endswith(_LAST) or "sent from" in text
    end = _END.search(text) if may_end else None
    start, stop = head.end() if head else 0, end.start() if end else len(text)
    told = text[start:stop]
    return told if " " in told.strip() or any(each.isdigit() for each in told) else text
