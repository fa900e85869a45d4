"""What is said in passing beside a record and is no part of it.

`sorry, no signal. 12 gal`, `not as good as yesterday, 9 gal` and `16 gal, low of 24 tonight` tell
the same as the bare amount: what is said beside it goes, so that it cannot be misread.
"""

from __future__ import annotations

import re

from bot.reading.dates import WEEKDAY
from bot.reading.number_words import FIGURE, UNIT
from bot.reading.rewrites import Rewrites

_ANEW = r"(?:^|(?<=, )|(?<= and ))"
"""Where something else begins."""
_EXCUSED = re.compile(
    r"^(?:sorry|apologies)[,.]? (?:i've |ive |i |we've |weve |we )?"
    r"(?:been (?:busy|away|sick|out|quiet)|no signal|(?:my )?phone (?:was )?(?:died|dead)"
    r"|late|for the (?:wait|delay|silence)"
    r"|(?:for|about) (?:the |my |all (?:the |these ))?(?:caps|typos?|spelling|late text|long text"
    r"|mess|texts|mistakes|bother|bothering you|shouting))[,.;:!]+ (?=\w)"
)
_MISHAP = re.compile(
    r"^(?:oops|whoops|my mistake|sorry to say|sorry)[,.]? (?=(?:we |i )?(?:let|left|lost|dumped"
    r"|spilled|spilt|scorched|burned the|burnt the|kicked|knocked|tripped)\b)"
)
_RAN_WELL = re.compile(
    r"^actually,? (?=(?:it |they |it's |its )?(?:ran|running|flowing|dripping)\b)"
)
_LIKE_THEN = re.compile(r",? not (?:the )?\d[\d.]*(?: gal\w*)? like (?:yesterday|last \w+)")
_THAN_THEN = re.compile(
    r"^(?:less|more|better|worse|slower|sweeter|way less|way more) than (?:yesterday|last \w+)"
    r"(?:'?s)?(?: run)?[,.;:] (?=\d)"
)
# "12 gal same as yesterday": of today.
_SAME_AS = re.compile(
    r",? (?:again,? )?(?:(?:about )?(?:the )?same as|(?:just )?like)"
    r" (?:yesterday|last \w+|on \w+day)(?:'?s)?$"
)
# "14 gal not counting tree 3".
_NOT_COUNTING = re.compile(r",? not (?:counting|including) (?:tree \d{1,3}|what (?:was )?\w+)$")
# "16 gal today, low tonight 26": the weather.
_LOW_TONIGHT = re.compile(
    r",? (?:and )?(?:a )?(?:low|high) (?:of |tonight |tomorrow |today |tonight of )+-?\d{1,3}$"
)
# "Ed got 30 gal, mine was 12": a neighbour's, beside ours.
_BESIDE_OURS = re.compile(
    r"^(?!i\b|we\b|tree|just\b|today|only\b|also\b|got\b|and\b)\w+ "
    r"(?:got|had|made|boiled|says his|says theirs) [^,.]*\d[^,.]*(?:\.\d+)?[^,.]*[,.]"
    r" (?:and |but )?(?=(?:mine|ours)\b)"
)
# "pitched the ice, 14 gal".
_ICE_AWAY = re.compile(
    rf"{_ANEW}(?:dumped|pitched|tossed|threw out|took out|picked out|pulled out|lifted out|took"
    r"|threw)"
    r" (?:some |the )?ice(?: out)?(?: of (?:the|my|our) (?:buckets|pails))?,? (?:and )?(?:got"
    rf" |had )?(?={FIGURE} ?{UNIT}\b)"
    r"|,? (?:and )?(?:dumped|pitched|tossed|threw out) (?:some |the )?ice$"
)
# "filled 7 jars and only burned one finger": no cry for help.
_A_FINGER = re.compile(
    r",? (?:and |but )?(?:only burn(?:ed|t) (?:one|a|1|two|my) fingers?|burn(?:ed|t) (?:our|my|a)"
    r" (?:fingers?|thumbs?|tongues?|mouth)(?: a bit| a little| again| doing it)?)$"
)
# "boiled 12 gal start to finish".
_ALL_OF_IT = re.compile(r",? (?:from )?start to finish(?=$|[.,;!])")
# "i poured it in a juice pitcher": kept.
_POURED_INTO = re.compile(
    r"[,.;]? (?:then |and )?(?:i |we )?(?:poured|emptied|tipped|strained|dumped)"
    r"(?: it| them| that)(?: all)? in(?:to)? "
    r"(?:an?|the|my|our) (?:\w+ )?(?:pitcher|crock|jug|jar|pot|bowl|pail|bucket|cooler|carboy"
    r"|jugs|jars"
    r"|container|tub|bin|milk can|stock ?pot)\b(?! (?:and|to) boil)"
)
# "started boiling on the stove out on the porch".
_ON_THE_PORCH = re.compile(
    r"\b(boiling\b[^.;,\d]*?) (?:out )?(?:on|in) (?:the|my|our) (?:back |front )?"
    r"(?:porch|deck|patio|driveway|garage|carport)(?=$|[.,;!])"
)
_NOT_SURE_HOW_MUCH = re.compile(
    r",? (?:but )?(?:i'm |im )?not sure (?:exactly )?how (?:much|many)(?: it was| exactly)?$"
)
# "let's call it 12 gal".
_CALL_IT = re.compile(
    r"^(?:so |well |ok |okay )?(?:let's |lets |we'll |i'd )?call it (?:about )?"
    rf"(?={FIGURE} {UNIT}\b)"
)
# "pulled 18 taps on the south side the rest are still dripping".
_REST_STILL_DRIP = re.compile(
    r",? (?:and |but )?(?:the )?(?:rest|others) (?:are|is) still "
    r"(?:dripping|running|going|flowing|in)\b[^\d]*$"
)
# "sap is cloudy oh no": nothing is denied.
_OH_NO = re.compile(r",? (?:oh|aw|ah|uh oh) no+[!.]*$")
# "and still put 39 gal in the tank".
_STILL_GOT = re.compile(
    r"(?<!can )(?<!could )(?<!ll )(?<!will )\bstill "
    r"(?=(?:put|brought|hauled|carried|gathered|collected) )"
)
# "the sap was really going": praise, where "was really 14" corrects.
_REALLY = re.compile(
    r"\b(was|were) really (?=(?!nothing|something)\w+ing\b|good|slow|fast|nice|cold|warm|hot|dark"
    r"|light|thick|sweet|strong|hard|happy|tired|sticky|clear|close)"
)
_NOT_MUCH = re.compile(
    r"^not (?:much|a lot|a whole lot)(?: sap| of a run)?"
    r"(?:[,.;:] ?(?=\d)| (?=(?:today|yesterday)[,.;:] ?\d))"
    r"|(?<=\w),?(?: lol| haha| but)* not (?:much|a lot|great)$"
)
_NOT_AS = re.compile(
    r"(?:^|,? )not (?:as|so|quite as) (?:good|much|big|strong|sweet|fast|well) as "
    rf"(?:yesterday|{WEEKDAY}|last \w+)"
    r"(?:'?s)?(?: \d[\d.]*(?: gal\w*)?)?(?P<end>[,.] |$)"
)
_AWAY = ("dumped", "pitched", "tossed", "threw", "took ", "picked out", "pulled out", "lifted")
# "forgive me, that was 13", "my b, tree 9": sorry.
_FORGIVE = re.compile(
    r"^(?:forgive me|my apologies|my bad|my b|my fault|whoopsie|beg (?:your )?pardon|mea culpa)"
    r"[,.!;:]+ (?=(?:that|it|i|should|make|no|tree|wrong)\b)"
)
# "hey maple thing eleven gal": who is spoken to.
_SPOKEN_TO = re.compile(
    r"^(hey|hi|hello|ok|okay|yo)(?: there)? (?:(?:maple|sugar|sap|syrup|text|log|record) )?"
    r"(?:thing|thingy|buddy|pal|bot|helper|robot|machine|computer|keeper|friend)[,.!:]? (?=\w)"
)
# "when i poured it": beside what it looked like, nothing is lost.
_WHEN_POURED = re.compile(
    r"\b(looks?|looked|smells?|smelled|smelt|tastes?|tasted|seems|seemed|was|is) "
    r"((?:\w+ ){1,5})(?:when|as|while) (?:i|we) (?:poured|dumped|emptied|tipped|gathered|strained)"
    r"(?: (?:it|them|the \w+))?(?: (?:in|out|through|up))?(?=$|[,.;])"
)
# "before the power went out", "while the kids napped": when it was, and nothing more.
_BEFORE_IT = re.compile(
    r",? (?:just |right |and then )?(?:before?|when|as|after|while|till|until|by the time) "
    r"(?:the |my |our )?(?:power|lights?|rain|snow|storm|sleet|sun|kids|school bus|bus|store|phone"
    r"|battery|truck|dog|company|guests|wind) "
    r"(?:went out|went off|came out|came up|came down|came in|came back|came home|came on|got home"
    r"|got here|came|started|began|hit|quit|died|closed|failed|set|napped|slept|left|showed up"
    r"|arrived|ate|moved in|blew in)(?=$|[,.;])"
)
# "i am sorry to say we had to tip out 4 gal".
_SORRY_TO_SAY = re.compile(
    rf"{_ANEW}(?:well,? |so,? )?(?:i am|i'm|im|we are|we're)? ?(?:sorry|happy|glad|sad|proud"
    r"|pleased|thrilled|delighted|here) to (?:say|report|tell you|announce|inform you)(?: that)?,? "
)
# "thirteen gallons no fourteen gallons": the second.
_SAID_ANEW = re.compile(
    rf"\b{FIGURE}(?: and a half)? ({UNIT}),? (?:no|no wait|wait no|wait|i mean|er|uh|make that)"
    rf",? (?={FIGURE}(?: and a half)? \1(?:$|[.,;!]| of | at \d| and | today| tonight| yesterday))"
)
# "quick one before i lose signal nine gallons".
_QUICK_ONE = re.compile(
    r"^(?:just )?(?:a )?(?:real )?quick (?:one|note|update|text|report)"
    rf"(?: (?:before|while|cuz|because) (?:i|my|we) [a-z ]{{1,30}}?)?[,:]? (?={FIGURE} {UNIT}\b)"
)
# "make that thirty one dollars i forgot the tax".
_WHY_IT_CHANGED = re.compile(
    r"^((?:make (?:that|it)|no|correction|it was|should be)\b"
    rf".*\b{FIGURE}\b.*?),?(?: because| cause| cuz| since)?"
    r" i (?:forgot (?:the|one)|missed|misread|miscounted|didn't count|left out)\b[^\d,.;]*$"
)
# "picked up some lids forgot what i paid".
_FORGOT_WHAT = re.compile(
    r",? (?:i )?(?:forgot|forget|can't remember|dont remember|don't remember) (?:what|how much)"
    r" (?:i|we|it) (?:paid|spent|cost|was)\b"
)


# "12 gal up from 9 gal yesterday": of today.
_UP_FROM = re.compile(
    rf"(?<=\d )({UNIT}),? (?:up|down) from \d[\d.]* ?{UNIT}"
    rf"(?: (?:yesterday|last \w+|on \w+day|{WEEKDAY}))?"
)


def _some(said: re.Match[str]) -> str:
    """`some sap in the pails, not sure how much`: a few; beside a figure as it came."""
    return said[0] if re.search(r"\d", said.string[: said.start()]) else ", a few"


def _said_anew(said: re.Match[str]) -> str:
    """`13 gal no 14 gal`: the second, where no other figure stands before."""
    return said[0] if re.search(r"\d", said.string[: said.start()]) else ""


# In this order (see `rewrites`).
_REWRITES = Rewrites(
    (("forgive", "my ", "whoopsie", "pardon", "mea "), _FORGIVE, "sorry, "),
    (
        ("thing", "buddy", "pal", "bot", "helper", "machine", "computer", "keeper", "friend"),
        _SPOKEN_TO,
        r"\1, ",
    ),
    ((" i ", " we "), _WHEN_POURED, lambda said: f"{said[1]} {said[2].rstrip()}"),
    (
        ("befor", "when ", "as ", "after ", "while ", "till ", "until ", "by the time"),
        _BEFORE_IT,
        "",
    ),
    (("sorry", "apologies"), _EXCUSED, ""),
    (("oops", "mistake", "sorry"), _MISHAP, ""),
    (("actually",), _RAN_WELL, ""),
    ((" from ",), _UP_FROM, r"\1"),
    ((" like ",), _LIKE_THEN, ""),
    ((" than ",), _THAN_THEN, ""),
    (("same as", "like"), _SAME_AS, ""),
    (("counting", "including"), _NOT_COUNTING, ""),
    (("low ", "high "), _LOW_TONIGHT, ""),
    (("mine", "ours"), _BESIDE_OURS, ""),
    (_AWAY, _ICE_AWAY, lambda said: "got " if said.end() < len(said.string) else ""),
    (("burnt", "burned"), _A_FINGER, ""),
    ((" no", " wait", " i mean", " er", " uh", "make that"), _SAID_ANEW, _said_anew),
    (("quick ",), _QUICK_ONE, ""),
    ((" i forgot", " i mis", " i didn't", " i left"), _WHY_IT_CHANGED, r"\1"),
    (("forgot", "forget", "remember"), _FORGOT_WHAT, ", it cost plenty"),
    ((" to say", " to report", " to tell", " to ann", " to inf"), _SORRY_TO_SAY, ""),
    (("start to finish",), _ALL_OF_IT, ""),
    ((" in",), _POURED_INTO, ""),
    (("boiling",), _ON_THE_PORCH, r"\1"),
    (("not sure",), _NOT_SURE_HOW_MUCH, _some),
    (("call it",), _CALL_IT, ""),
    (("still ",), _REST_STILL_DRIP, ""),
    ((" no",), _OH_NO, ""),
    (("still ",), _STILL_GOT, ""),
    (("really",), _REALLY, r"\1 "),
    (("not ",), _NOT_MUCH, ""),
    (("not ",), _NOT_AS, lambda said: "" if said.start() == 0 else said["end"]),
)


def without_asides(text: str) -> str:
    """A tidy text without what is said in passing."""
    return _REWRITES.of(text)


_OF_A_SENTENCE = _REWRITES.of_a_sentence()


def without_asides_in(sentence: str) -> str:
    """One sentence of such a text, without what is said in passing at its head or end."""
    return _OF_A_SENTENCE.of(sentence)
