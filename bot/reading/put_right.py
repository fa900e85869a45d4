"""The many ways of putting a record right, in the one that the stages behind this one read.

`that wasn't 40 gal, it was 14 gal`, `I said 41 gal, meant 14 gal`, `change $40 to $14` and
`41 gal was a typo, it was 14` all become `not 40 gal, 14 gal`; `don't log that` and `sent by
mistake` become `undo that`.
"""

from __future__ import annotations

import re

from bot.reading.dates import WEEKDAY
from bot.reading.rewrites import Rewrites
from bot.reading.signs import either

_X = r"(?P<x>(?:\$|tree |the |a )?[\w.$%/']+(?: [\w.%/']+){0,2}?)"
_Y = r"(?P<y>(?:only )?(?:\$|tree |the |a )?[\w.$%/']+(?: [\w.%/']+){0,3})"
_LEAD = r"(?:(?:oops|whoops|sorry|no|wait|hey|actually|please|can you|could you)[,.]? )*"
_WAS = r"(?:it was|that was|was|its|it's|it is|should be|make it|really)(?: really| actually)?"

_FORMS = tuple(
    re.compile(form)
    for form in (
        rf"{_LEAD}(?:(?:that|it) )?(?:wasn't|wasnt|was not) {_X}(?: but|,|, but|,? it was|,? was)"
        rf"(?: (?:it|that) was)? {_Y}",
        rf"{_LEAD}(?:i|we|it) (?:didn't|didnt|did not) (?:get|test|make|boil|gather|read) {_X}"
        rf",? (?:i|we|it) (?:got|tested|made|boiled|gathered|read) {_Y}",
        rf"{_LEAD}(?:i |we )?(?:said|told you|put down|texted you|texted|wrote) {_X}"
        rf"(?: for \w+)?(?: by mistake)?(?:,|,? but|,? and|,? when)? "
        rf"(?:(?:i |we )?meant|{_WAS}) {_Y}",
        rf"{_LEAD}(?:i |we )?(?:said|meant|texted|wrote) {_Y},? not {_X}",
        rf"{_LEAD}(?:(?:the |my |our )?(?:receipt|slip|bill|invoice|dipstick|stick|notebook|gauge)"
        rf" (?:says|said|reads|shows)|{_WAS}) {_Y},? (?:but |and )?(?:i|we) "
        rf"(?:told you|said|texted you|texted|wrote|put down) {_X}",
        rf"{_LEAD}(?:scratch|strike|forget|cancel) (?:that|the) (?P<x>\$?\d[\d.]*(?: \w+)?),?"
        rf" (?:{_WAS}) {_Y}",
        rf"{_LEAD}(?:change|switch|correct) (?P<x>(?:\$|tree )?\d[\w.]*(?: [\w.]+){{0,2}}) to {_Y}",
        rf"{_LEAD}(?:the )?(?P<x>\$?\d[\d.]*(?: \w+)?) was a (?:typo|mistake)[,.]?"
        rf"(?: {_WAS})? {_Y}",
    )
)
_MAY_CORRECT = re.compile(
    either(
        (
            *("wasn't", "wasnt", "was not", "didn't", "didnt", "did not", "meant", "said"),
            *("told you", "put down", "texted", "wrote", "change", "switch", "correct"),
            *("scratch", "strike", "forget", "cancel", "typo", "mistake"),
        )
    )
)
_FIGURE_SAID = re.compile(
    r"\d|\b(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty"
    r"|forty|fifty|sixty|seventy|eighty|ninety)\b"
)
_FIGURE_OR_NAME = re.compile(rf"{_FIGURE_SAID.pattern}|\blot\b|\btoday\b|\byesterday\b|day\b")
_LONGEST_TAKEN_BACK = 80
"""Letters of the longest of these."""
_MAY_TAKE_BACK = re.compile(
    r"that|it\b|twice|mistake|wrong|accident|test|the tree|take back|already"
)
_TO_THAT = re.compile(
    rf"{_LEAD}(?:(?:change|switch|move) (?:(?:that|it) to tree|the tree (?:to|two)(?: tree)?)"
    r"|(?:scratch|strike) that,? tree) (\d{1,3})"
)
_THE_LAST_TO = re.compile(
    r"^(?:please |can you |could you )*(?:change|correct|fix|switch) (?:the |that |my )?last "
    r"(?:one|entry|text) to (?=\d)"
)
# "change the hours to 6.5": that field of the last record.
_CHANGE_THE = re.compile(
    r"^(?:please |can you )?(?:make|change|put|correct|fix|set) (?:the |my |those )?"
    r"(hours|gallons|taps|pints|quarts|litres|liters|cords) (?:to|at|as) (\d[\d.]*)$"
)
# "make the brix 2.3": of the last record.
_MAKE_THE = re.compile(
    r"^(?:please |can you )?(?:make|change|put) (?:the |its |my )(?:brix|sugar)(?: to| at)? "
    r"(?=\d[\d.]*%?$)"
)
_ASKED_KINDLY = re.compile(
    r"^(?:please |can you |could you )+(?=(?:make|put|change|move|switch) (?:that|it)\b)"
)
_NO_SUCH_MAPLE = re.compile(
    r"\b(tree \d{1,3}) (?:isn't|isnt|is not) an? (?:\w+ ){1,2}?,? ?(?:it's|its|it is|but) a "
    r"|\b(tree \d{1,3}) (?:isn't|isnt|is not) an? \w+(?: maple)?, (?:it's|its|it is|but) a "
)
_SORRY_BEHIND = re.compile(
    rf"^(tree \w+|(?:the )?\w+ lot|yesterday|{WEEKDAY}),? "
    r"(?:sorry|oops|i mean|i meant)[.!]*$"
)
"""`pond lot, sorry`: the name that the last record should have."""
_LAST_ONE = re.compile(
    r"^(?:(?:sorry|oops|whoops|my bad|actually|oh|ugh),? )?(?:the |that )"
    r"(?:last one|last entry|last text) (?:was|is|belongs|goes) "
    r"(?:(?:for|from|on|to|under) |(?=yesterday|today|tree \d|\w+day\b|(?:the )?\w+ lot\b))"
)
_TAKEN_BACK = re.compile(
    rf"{_LEAD}(?:forget (?:that )?i said (?:that|anything)"
    r"|(?:don't|dont|do not) (?:log|record|save|put down|write down|keep) (?:that|it)(?: down)?"
    r"|(?:don't|dont|do not) (?:put|write) (?:that|it) down"
    r"|(?:i )?(?:sent|texted) (?:that |it )?by (?:mistake|accident)"
    r"|(?:that was )?(?:just )?a test(?: text| message)?"
    r"|that (?:text )?was (?:meant )?for (?:my |the )?\w+,? (?:ignore|forget|disregard) (?:it|that)"
    r"|that (?:entry|record|text|one) was (?:a mistake|wrong)(?:,? (?:can|could) you (?:please )?"
    r"(?:take|remove|delete|undo|erase) (?:it|that)(?: back)?(?: out| off)?)?\??"
    r"|(?:can you )?take that off|(?:that's|thats|that was) a (?:duplicate|repeat)"
    r"|sent (?:it |that )?twice"
    r"|(?:take|pull) back (?:what|the (?:thing|one|text)) i (?:just |last )?"
    r"(?:sent|said|told you|texted|wrote)(?: you)?"
    r"|(?:ugh |oops )?\w+ (?:already|just) (?:logged|sent|texted|told you|put in|entered)(?: you)?"
    r" (?:that|it|this)(?: one)?,? (?:take|cancel|delete|undo|scrap|drop|remove)"
    r" (?:mine|it|that|my one)(?: back)?(?: out| off)?"
    r"|take that one back(?: out| off)?,? (?:it|that) (?:got|was) (?:counted|logged|sent|entered)"
    r" twice"
    r"|i already (?:told you|sent|texted) that one,? (?:ignore|forget)(?: it)?)"
)
_THEN_ANEW = re.compile(
    r"^(?:undo(?: that)?|delete (?:the )?last(?: one)?|ignore (?:that |the |my )?last(?: one"
    r"| text)?"
    r"|disregard (?:that |the |my )?last(?: one| text)?|(?:nevermind|never mind|cancel) that)"
    r"[,.;:]? (?:(?:it|that) was |we got |got |was )?"
    r"(?=\d[\d.]* ?(?:gal|gallons?|qts?|quarts?|pints?|l|liters?|litres?)\b"
    r"(?: (?:of )?sap)?(?: (?:at|@) ?\d[\d.]*(?: brix|%)?)?\.?$)"
)
# What is written anew, in this order (see `rewrites`).
_REWRITES = Rewrites(
    (("sorry", "oops", "i mean"), _SORRY_BEHIND, r"that one was for \1"),
    (("last ",), _LAST_ONE, "that one was for "),
    (("undo", "last", "that"), _THEN_ANEW, "scratch that, "),
    (("last ",), _THE_LAST_TO, "make that "),
    ((" to ", " at ", " as "), _CHANGE_THE, r"make that \2 \1"),
    (("brix", "sugar"), _MAKE_THE, "make that brix "),
    (("tree ",), _NO_SUCH_MAPLE, lambda said: f"{said[1] or said[2]} is a "),
    (("please", "can you", "could you"), _ASKED_KINDLY, ""),
)


_ENDS = re.compile(r"[.!]+ (?!\d)|\n+")
_SHAPES = re.compile(r"\b\d+s\b")
"""`my 4s look like 9s`: no amounts."""
_MAY_BE_ONE = re.compile(
    r"\b(?:not|no|nope|sorry|oops|whoops|meant|said|was|wasn't|wrong|change|make|fix|actually|correction"
    r"|should be|undo|scratch|delete|take|lied|instead|strike|remove|ignore|didn't)\b"
)
_TELLS_MORE = re.compile(
    r"\?|\b(?:spill|spilt|dump|threw|gave|los|burn|fed|pull|sold|toss|pour|froze|leak|drew|hung|bottl)\w*\b"
    r"|\b(?:sap|gal\w*|syrup|taps?|boil\w*|fire|arch|brix|sugar|trees?|buckets?|pails?|jars?|lit|moths?"
    r"|buds|cloudy|pints?|quarts?|pan|tank|lot|how|what|when|can|should|do|is|will|no|not|sorry)\b"
)


def before_idle_talk(text: str) -> str | None:
    """The first sentence of a tidy text, which may correct, where what follows tells nothing:
    `make that 2.3%. i need new glasses`. None where it does not stand so."""
    several = ". " in text or "! " in text or "\n" in text
    end = _ENDS.search(text) if several else None
    if end is None or not _MAY_BE_ONE.search(text[: end.start()]):
        return None
    rest = _SHAPES.sub("", text[end.end() :])
    more = _TELLS_MORE.search(rest) or _FIGURE_SAID.search(rest)
    return None if more else text[: end.start()]


def plain_correction(text: str) -> str:
    """A tidy text with its correction, if it is one, in the plainest words."""
    bare = text.strip(" .!")
    if _MAY_CORRECT.search(text):
        for form in _FORMS:
            said = form.fullmatch(bare)
            if said and _alike(said["x"], said["y"]):
                return _not_but(said["x"], said["y"].removeprefix("only "))
    if len(bare) <= _LONGEST_TAKEN_BACK and _MAY_TAKE_BACK.search(bare):
        if _TAKEN_BACK.fullmatch(bare):
            return "undo that"
        tree = _TO_THAT.fullmatch(bare)
        if tree:
            return f"make it tree {tree[1]}"
    return _REWRITES.of(text)


def _not_but(was: str, now: str) -> str:
    """`i said 12 gal, its really 21`: 21 of the same."""
    figure, _, unit = was.partition(" ")
    bare = _BARE.fullmatch(now) is not None and _BARE.fullmatch(figure) is not None
    if was.startswith("tree ") and _BARE.fullmatch(now):
        return f"not {was}, tree {now}"
    return f"not {was}, {now} {unit}".rstrip() if bare else f"not {was}, {now}"


_BARE = re.compile(r"\d[\d.]*")


def _alike(was: str, now: str) -> bool:
    """Both are figures, or both are names or days: `12` may become `14 gal`, never `friday`."""
    figures = [_FIGURE_SAID.search(said) is not None for said in (was, now)]
    told = all(_FIGURE_OR_NAME.search(said) for said in (was, now))
    return figures[0] == figures[1] and told
