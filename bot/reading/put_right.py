"""The many ways of putting a record right, in the one that the stages behind this one read.

`that wasn't 40 gal, it was 14 gal`, `I said 41 gal, meant 14 gal`, `change $40 to $14` and
`41 gal was a typo, it was 14` all become `not 40 gal, 14 gal`; `don't log that` and `sent by
mistake` become `undo that`; an apology for silence goes, since it corrects nothing.
"""

from __future__ import annotations

import re

from bot.reading.dates import WEEKDAY

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
        rf"{_LEAD}(?:change|switch|correct) (?P<x>(?:\$|tree )?\d[\w.]*(?: [\w.]+){{0,2}}) to {_Y}",
        rf"{_LEAD}(?:the )?(?P<x>\$?\d[\d.]*(?: \w+)?) was a (?:typo|mistake)[,.]?"
        rf"(?: {_WAS})? {_Y}",
    )
)
_MAY_CORRECT = re.compile(
    r"\b(?:wasn't|wasnt|was not|didn't|didnt|did not|meant|said|told you|put down|texted"
    r"|wrote|change|switch|correct"
    r"|typo|mistake)\b"
)
_FIGURE_OR_NAME = re.compile(r"\d|\blot\b|\btoday\b|\byesterday\b|day\b")
_LONGEST_TAKEN_BACK = 80
"""Letters of the longest of these."""
_MAY_TAKE_BACK = re.compile(r"that|it\b|twice|mistake|wrong|accident|test|the tree")
_TO_THAT = re.compile(
    rf"{_LEAD}(?:(?:change|switch|move) (?:(?:that|it) to tree|the tree (?:to|two)(?: tree)?)"
    r"|(?:scratch|strike) that,? tree) (\d{1,3})"
)
_THE_LAST_TO = re.compile(
    r"^(?:please |can you |could you )*(?:change|correct|fix|switch) (?:the |that |my )?last "
    r"(?:one|entry|text) to (?=\d)"
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
    r"^(?:the |that )(?:last one|last entry|last text) (?:was|is) "
    r"(?:(?:for|from|on) |(?=yesterday|today|\w+day\b|(?:the )?\w+ lot\b))"
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
_EXCUSED = re.compile(
    r"^(?:sorry|apologies)[,.]? (?:i've |ive |i |we've |weve |we )?"
    r"(?:been (?:busy|away|sick|out|quiet)|no signal|(?:my )?phone (?:was )?(?:died|dead)"
    r"|late|for the (?:wait|delay|silence))[,.;:] (?=.*\d)"
)
_MISHAP = re.compile(
    r"^(?:oops|whoops|my mistake|sorry to say|sorry)[,.]? (?=(?:we |i )?(?:let|left|lost|dumped"
    r"|spilled|spilt|scorched|burned the|burnt the|kicked|knocked|tripped)\b)"
)
_RAN_WELL = re.compile(
    r"^actually,? (?=(?:it |they |it's |its )?(?:ran|running|flowing|dripping)\b)"
)
_NOT_MUCH = re.compile(
    r"^not (?:much|a lot|a whole lot)(?: sap| of a run)?(?=(?: today| yesterday)?[,.;:] ?\d)"
)
_NOT_AS = re.compile(
    r"(?:^|,? )not (?:as|so|quite as) (?:good|much|big|strong|sweet|fast|well) as "
    rf"(?:yesterday|{WEEKDAY}|last \w+)"
    r"(?:'?s)?(?: \d[\d.]*(?: gal\w*)?)?(?P<end>[,.] |$)"
)
_THAN_THEN = re.compile(
    r"^(?:less|more|better|worse|slower|sweeter|way less|way more) than (?:yesterday|last \w+)"
    r"(?:'?s)?(?: run)?[,.;:] (?=\d)"
)
_LIKE_THEN = re.compile(r",? not (?:the )?\d[\d.]*(?: gal\w*)? like (?:yesterday|last \w+)")


_PASSING = (
    # "12 gal same as yesterday": of today.
    r",? (?:again,? )?(?:(?:about )?(?:the )?same as|(?:just )?like)"
    r" (?:yesterday|last \w+|on \w+day)(?:'?s)?$",
    # "14 gal not counting tree 3".
    r",? not (?:counting|including) (?:tree \d{1,3}|what (?:was )?\w+)$",
    # "16 gal today, low tonight 26": the weather.
    r",? (?:and )?(?:a )?(?:low|high) (?:of |tonight |tomorrow |today |tonight of )+-?\d{1,3}$",
    # "Ed got 30 gal, mine was 12": a neighbour's, beside ours.
    r"^(?!i\b|we\b|tree|just\b|today|only\b|also\b|got\b|and\b)\w+ "
    r"(?:got|had|made|boiled|says his|says theirs) [^,.]*\d[^,.]*(?:\.\d+)?[^,.]*[,.]"
    r" (?:and |but )?(?=(?:mine|ours)\b)",
    # "pitched the ice, 14 gal".
    r"^(?:dumped|pitched|tossed|threw out) (?:some |the )?ice,? (?:and )?(?=\d)",
    r",? (?:and )?(?:dumped|pitched|tossed|threw out) (?:some |the )?ice$",
    # "filled 7 jars and only burned one finger": no cry for help.
    r",? (?:and |but )?only burn(?:ed|t) (?:one|a|1|two|my) fingers?$",
)
_PASSED = re.compile("|".join(f"(?:{each})" for each in _PASSING))
"""What is said in passing beside a record, and is no part of it."""
_BOILED_WHAT = re.compile(
    r"\b(boiled(?: down)?) the (\d[\d.]* ?(?:gal\w*|l|lit\w+)) (?:that )?(?:we |i )?"
    r"(?:collected|gathered|got|left(?: over)?|leftover|hauled)(?: from| on)? "
    r"(?:yesterday|last night|the other day|\w+day)\b"
)
_START_TO_FINISH = re.compile(
    r"^((?:the )?(?:fire|arch|pan)(?:'s| is)? (?:out|off|done|dead))[.,;] ?"
    r"([\d.]+ ?(?:hrs?|hours)) (?:from )?start to finish"
)
# "the sap was really going": praise, where "was really 14" corrects.
_REALLY = re.compile(
    r"\b(was|were) really (?=(?!nothing|something)\w+ing\b|good|slow|fast|nice|cold|warm|hot|dark"
    r"|light|thick|sweet|strong|hard|happy|tired|sticky|clear|close)"
)
# "pulled all 120": of taps, since nothing else is pulled by the number.
_PULLED_ALL = re.compile(r"^((?:we |i )?(?:pulled|yanked)) (?:all|the whole) (\d{1,3})(?=$|[.,;])")
_STARTS = re.compile(r"\bstart(?:ing|ed) to boil(?=$|[.,;!]| now\b| at (?:\d|noon))")
_PICKED_UP = re.compile(r"\bpicked up (?=(?:(?!gal)[a-z0-9]+ ){1,5}(?:for )?\$\d)")


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
    text = _SORRY_BEHIND.sub(r"that was \1", text)
    text = _LAST_ONE.sub("that one was for ", text)
    text = _THEN_ANEW.sub("scratch that, ", text)
    text = _THE_LAST_TO.sub("make that ", text)
    text = _MAKE_THE.sub("make that brix ", text)
    text = _NO_SUCH_MAPLE.sub(lambda said: f"{said[1] or said[2]} is a ", text)
    for passing in (_ASKED_KINDLY, _EXCUSED, _MISHAP, _RAN_WELL, _LIKE_THEN, _THAN_THEN):
        text = passing.sub("", text)
    text = _PICKED_UP.sub("bought ", _BOILED_WHAT.sub(r"\1 \2", _PASSED.sub("", text)))
    text = _START_TO_FINISH.sub(r"\1, boiled \2", text)
    text = _STARTS.sub("started boiling", text)
    text = _PULLED_ALL.sub(r"\1 all \2 taps", text)
    text = _REALLY.sub(r"\1 ", text)
    text = _NOT_MUCH.sub("", text).lstrip(" ,.;:") if _NOT_MUCH.match(text) else text
    return _NOT_AS.sub(lambda said: "" if said.start() == 0 else said["end"], text)


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
    figures = [re.search(r"\d", said) is not None for said in (was, now)]
    told = all(_FIGURE_OR_NAME.search(said) for said in (was, now))
    return figures[0] == figures[1] and told
