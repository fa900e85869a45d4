"""What is said in passing beside a record and is no part of it, and deeds in roundabout words.

`sorry, no signal. 12 gal`, `not as good as yesterday, 9 gal` and `16 gal, low of 24 tonight` tell
the same as the bare amount: what is said beside it goes, so that it cannot be misread.
"""

from __future__ import annotations

import re

from bot.reading.dates import WEEKDAY
from bot.reading.rewrites import Rewrite, rewritten

_ONES = "one|two|three|four|five|six|seven|eight|nine"
_TENS = "twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety"
_TEENS = (
    "ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|a dozen|half"
)
_FIGURE = rf"(?:\d[\d.]*|(?:{_TENS})(?:[ -](?:{_ONES}))?|{_TEENS}|{_ONES})"
"""A number in figures or in words, as far as an amount has it in front."""
_UNIT = r"(?:gal|gals|gallons?|qts?|quarts?|pints?|pts?|l|lit(?:er|re)s?|taps|jars)"
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
    r"^(?:dumped|pitched|tossed|threw out) (?:some |the )?ice,? (?:and )?(?=\d)"
    r"|,? (?:and )?(?:dumped|pitched|tossed|threw out) (?:some |the )?ice$"
)
# "filled 7 jars and only burned one finger": no cry for help.
_A_FINGER = re.compile(
    r",? (?:and |but )?(?:only burn(?:ed|t) (?:one|a|1|two|my) fingers?|burn(?:ed|t) (?:our|my|a)"
    r" (?:fingers?|thumbs?|tongues?|mouth)(?: a bit| a little| again| doing it)?)$"
)
# "boiled the 30 gal we got yesterday": of today.
_BOILED_WHAT = re.compile(
    r"\b(boiled(?: down)?) the (\d[\d.]* ?(?:gal\w*|l|lit\w+)) (?:that )?(?:we |i )?"
    r"(?:collected|gathered|got|left(?: over)?|leftover|hauled)(?: from| on)? "
    r"(?:yesterday|last night|the other day|\w+day)\b"
)
# "bottled yesterday's 3 qts as 6 pints", "filled 6 pints out of the 3 qts": the jars count.
_AS_JARS = re.compile(
    r"\b(bottled|canned|jarred|packed|put up) "
    r"(?:(?:the|all|my|our|yesterday'?s|today'?s|last night'?s) )*"
    r"[\d.]+ ?(?:gal\w*|qts?|quarts?|l|lit\w+)(?: of syrup)? (?:as|into) (?=\d)"
)
_OUT_OF_IT = re.compile(
    r"\b((?:bottled|canned|jarred|filled|got) [\d.]+ (?:half[ -])?"
    r"(?:pints?|pts?|quarts?|qts?|jars|bottles)) (?:out of|from) "
    r"(?:the|that|yesterday'?s|today'?s) [\d.]+ ?(?:gal\w*|qts?|quarts?|l|lit\w+)$"
)
# "picked up lids for $14": bought, where sap is picked up too.
_PICKED_UP = re.compile(r"\bpicked up (?=(?:(?!gal)[a-z0-9]+ ){0,5}(?:for )?\$\d)")
# "fire out, 7 hours start to finish".
_START_TO_FINISH = re.compile(
    r"^((?:the )?(?:fire|arch|pan)(?:'s| is)? (?:out|off|done|dead))[.,;] ?"
    r"([\d.]+ ?(?:hrs?|hours)) (?:from )?start to finish"
)
# "boiled 12 gal start to finish".
_ALL_OF_IT = re.compile(r",? (?:from )?start to finish(?=$|[.,;!])")
# "2.3 on our sap": tested.
_ON_OUR_SAP = re.compile(r"\b(\d\.\d+)(?:%| brix)? (?:on|for) (?:our|the|my) sap\b")
# "all 18 taps are in".
_ALL_TAPS_IN = re.compile(
    rf"\ball ({_FIGURE}) (?:of (?:the|our|my) )?(taps|spiles|spouts)(?: are| were| is)? in\b"
    r"(?! (?:the (?:shed|barn|box|truck|mail)|my|a box))"
)
# "we have finished emptying the buckets, 13 gal".
_DONE_GATHERING = re.compile(
    r"\b(?:(?:have |has |just |got |all )?(?:finished(?: up)?|done)) "
    r"(?=(?:emptying|gathering|collecting|hauling)\b)"
)
# "i poured it in a juice pitcher": kept.
_POURED_INTO = re.compile(
    r"[,.;]? (?:then |and )?(?:i |we )?(?:poured|emptied|tipped|strained|dumped)"
    r"(?: it| them| that)(?: all)? in(?:to)? "
    r"(?:an?|the|my|our) (?:\w+ )?(?:pitcher|crock|jug|jar|pot|bowl|pail|bucket|cooler|carboy"
    r"|jugs|jars"
    r"|container|tub|bin|milk can|stock ?pot)\b(?! (?:and|to) boil)"
)
# "put it all through the sieve into the canner": strained.
_STRAINED = re.compile(
    r"\b(?:put|poured|ran|strained|passed) (?:it |them |that |everything )?(?:all )?"
    r"(?:through|thru) (?:an?|the|my|our) (?:\w+ )?(?:sieve|strainer|filter|cheesecloth|cloth"
    r"|screen|colander|sock|towel|pillowcase)(?: in(?:to)? (?:an?|the|my|our) \w+)?"
)
# "started boiling on the stove out on the porch".
_ON_THE_PORCH = re.compile(
    r"\b(boiling\b[^.;,\d]*?) (?:out )?(?:on|in) (?:the|my|our) (?:back |front )?"
    r"(?:porch|deck|patio|driveway|garage|carport)(?=$|[.,;!])"
)
# "pot's on with 4 gal in it".
_ON_WITH = re.compile(
    rf"\b(?:pots?|pans?|kettle)(?:'s| is| are) on,? with ({_FIGURE} {_UNIT})(?: of sap)?"
    r"(?: in (?:it|them))?"
)
# "bought another filter, don't ask what it cost"; "some sap in the pails, not sure how much".
_DO_NOT_ASK = re.compile(
    r",? (?:and |but )?(?:don't|dont|do not) ask (?:me )?(?:what|how much)\b.*$"
)
_NOT_SURE_HOW_MUCH = re.compile(
    r",? (?:but )?(?:i'm |im )?not sure (?:exactly )?how (?:much|many)(?: it was| exactly)?$"
)
# "let's call it 12 gal".
_CALL_IT = re.compile(
    r"^(?:so |well |ok |okay )?(?:let's |lets |we'll |i'd )?call it (?:about )?"
    rf"(?={_FIGURE} {_UNIT}\b)"
)
# "26 taps in before first bell".
_TAPS_IN_BY = re.compile(
    r"^(\d+) (taps|spiles|spouts) in (?=(?:before|by|after|this|at|today|tonight|already|so)\b)"
)
# "pulled 18 taps on the south side the rest are still dripping".
_REST_STILL_DRIP = re.compile(
    r",? (?:and |but )?(?:the )?(?:rest|others) (?:are|is) still "
    r"(?:dripping|running|going|flowing|in)\b[^\d]*$"
)
# "stuck a thermometer in the sap barrel and its forty four".
_THERMOMETER_IN = re.compile(
    r"\b(?:stuck|put|dropped|hung|dipped) (?:an?|the|my|our) thermometer in (?:the|my|our) "
    r"((?:sap )?(?:barrel|tank|tote|drum|cooler|vat)),? (?:and )?(?:it's|its|it was|it is|it read"
    rf"|it reads|it says|it said|got) (?={_FIGURE})"
)
# "went around twice today first time 5 gal".
_TWICE_ROUND = re.compile(
    r"\b(?:went|came|been) (?:a?round|out) twice(?: today)?,? (?=(?:the )?first\b)"
)
# "used 9 kg of propane on the boil": no boil begins.
_FUEL_ON_THE_BOIL = re.compile(
    r"\b(propane|wood|cords?|lbs?|pounds|kg) on (?:the|this|that|today's|tonight's) boil\b"
)
# "2 gal of buddy sap": it is no buddy's.
_BUDDY_SAP = re.compile(r"\bbuddy (?=(?:sap|stuff|tasting|smell\w*)\b)")
# "and still put 39 gal in the tank".
_STILL_GOT = re.compile(r"\bstill (?=(?:put|brought|hauled|carried|gathered|collected) )")
# "between 1 and 3 pm": when it was.
_BETWEEN_HOURS = re.compile(
    r",? between (\d{1,2}(?::\d\d)?(?: ?[ap]m)?) and (\d{1,2}(?::\d\d)? ?[ap]m)\b"
)
# "kindly record 9 gal".
_KINDLY = re.compile(
    r"^(?:kindly|do|would you (?:please|kindly)) (?=(?:record|log|note|enter|write|put)\b)"
)
# "with 1.25 gallons of syrup drawn off".
_WITH_DRAWN = re.compile(
    rf",? with ({_FIGURE}(?: and a half)? {_UNIT})(?: of syrup)?"
    r" (?:drawn off|drawn|made|taken off)\b"
)
_STARTS = re.compile(r"\bstart(?:ing|ed) to boil(?=$|[.,;!]| now\b| at (?:\d|noon))")
# "pulled all 120": of taps, since nothing else is pulled by the number.
_PULLED_ALL = re.compile(
    r"(?:^|, )((?:we |i )?(?:pulled|yanked)) (all|the whole|the last|the rest,?|the final) "
    r"(\d{1,3})(?=$|[.,;])"
)
# "the sap was really going": praise, where "was really 14" corrects.
_REALLY = re.compile(
    r"\b(was|were) really (?=(?!nothing|something)\w+ing\b|good|slow|fast|nice|cold|warm|hot|dark"
    r"|light|thick|sweet|strong|hard|happy|tired|sticky|clear|close)"
)
_NOT_MUCH = re.compile(
    r"^not (?:much|a lot|a whole lot)(?: sap| of a run)?"
    r"(?:[,.;:] ?(?=\d)| (?=(?:today|yesterday)[,.;:] ?\d))"
)
_NOT_AS = re.compile(
    r"(?:^|,? )not (?:as|so|quite as) (?:good|much|big|strong|sweet|fast|well) as "
    rf"(?:yesterday|{WEEKDAY}|last \w+)"
    r"(?:'?s)?(?: \d[\d.]*(?: gal\w*)?)?(?P<end>[,.] |$)"
)
_AWAY = ("dumped", "pitched", "tossed", "threw")
# "forgive me, that was 13", "my b, tree 9": sorry.
_FORGIVE = re.compile(
    r"^(?:forgive me|my apologies|my bad|my b|my fault|whoopsie|beg (?:your )?pardon|mea culpa)"
    r"[,.!;:]+ (?=\w)"
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
# "came within an inch of dumping 5 gal".
_NEARLY = re.compile(
    r"\b(?:came|was|got|were) (?:(?:with)?in an inch of|this close to|so close to"
    r"|inches from|a hair from|within a hair of|one step from) "
    r"(?:dumping|spilling|losing|tipping|scorching|burning|knocking over|pouring out)"
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
# "other 30 gal made the tank": it is in there.
_MADE_THE_TANK = re.compile(
    r"\bmade (?:it (?:in)?to |it in )?the (?=(?:tank|barrel|tote|drum|vat|sugarhouse|shack)\b)"
)
# "red maple, 14 inch, call it tree 31": that tree.
_CALLED_TREE = re.compile(
    r"^((?:sugar|red|silver|black|norway|hard|soft) maple,? [\d.]+ ?(?:in|inch|inches|cm|\")"
    r"(?: (?:across|around|through))?),? (?:call (?:it|that|her|him)|that's|its|it's|is|make it"
    r"|mark it|log it as) (tree \w+)$"
)
# "better or worse than last spring": asked, with no word that asks.
_BETTER_OR_WORSE = re.compile(
    r"^(?:so )?(?=(?:better or worse|ahead or behind|up or down|ahead of or behind)\b)"
)
# "tree 3 ran 2 gal, 4 was dry, 6 had 1 gal": each of them a tree.
_TREES_IN_A_ROW = re.compile(r"(?<=, )(\d{1,3})(?= (?:was|ran|gave|had|did|got|made|is) )")
# "i am sorry to say we had to tip out 4 gal".
_SORRY_TO_SAY = re.compile(
    r"^(?:well,? |so,? )?(?:i am|i'm|im|we are|we're)? ?(?:sorry|happy|glad|sad|proud|pleased"
    r"|thrilled|delighted|here) to (?:say|report|tell you|announce|inform you)(?: that)?,? "
)
# "tree 31, the double trunk by the gate, filled 9.5 l", "the favorite, tree 6, gave a gallon".
_APPOSED = re.compile(
    r"^(tree \w+), (?:the|our|my|that) (?!\w* ?maple)[^,.\d]{3,40}, (?=(?:filled|gave|had|ran|made"
    r"|got|is|was|did|tested|tests|put out)\b)"
    r"|^(?:the|our|my) [^,.\d]{3,40}, (tree \w+), (?=(?:filled|gave|had|ran|made|got|is|was|did"
    r"|tested|tests|put out)\b)"
)
# "the stove ate half a cord".
_ATE_WOOD = re.compile(
    r"\b((?:stove|arch|evaporator|fire|firebox|burner|rig|it|she)) (?:ate|ate up|swallowed"
    r"|chewed through|drank|guzzled) (?:up |through )?"
    r"(?=(?:about |almost |nearly |over |a good |a whole |a |the )*(?:half |\d[\d./]* ?)?(?:an? )?"
    r"(?:cord|face cord|lb|pound|\d+ ?lb))"
)
# "dumped out the bags and it came to 18 gal": emptied.
_DUMPED_AND_GOT = re.compile(
    r"\bdumped(?: out)? (?=(?:all )?(?:the |our |my )?(?:bags|buckets|pails) and"
    r" (?:it|that|they|we)(?: all)? (?:came to|made|was|got|had|measured))"
)
# "split it into 8 pints".
_SPLIT_INTO = re.compile(
    r"\b(?:split|divided|portioned|put|poured)(?: it| that| them)?(?: all)?(?: up| out)? in(?:to)? "
    r"(?=\d+ (?:half[ -])?(?:pints?|pts?|quarts?|qts?|jars|bottles)\b)"
)
# "the club card got charged $63.20 for tubing".
_CHARGED = re.compile(
    r"\b(?:got|was|were|been) charged (?=\$)|\bcharged (?:me|us|it|the card) (?=\$)"
)
# "pan has just gone on over the coals".
_GONE_ON = re.compile(
    r"\b(pans?|pots?|kettle) (?:has|have|had)? ?(?:just )?(?:gone|went) on(?: over)?(?= the\b)"
)
# "five gal jugs of sap plus one about half full so seventeen and a half gallons": that is the sum.
_SO_MUCH_IN_ALL = re.compile(
    rf"^(?=[^.]*\b(?:jugs|buckets|pails|bags|barrels|cans|totes)\b).*\b(?:so|so that's|so thats"
    r"|so that makes|which makes|that makes) (?:about |around )?"
    rf"({_FIGURE}(?: and (?:a half|a quarter|three quarters))? (?:gal|gals|gallons)"
    r"(?: (?:of sap|total|in all|altogether))?)$"
)
# "thirteen gallons no fourteen gallons": the second.
_SAID_ANEW = re.compile(
    rf"\b{_FIGURE}(?: and a half)? ({_UNIT}),? (?:no|no wait|wait no|wait|i mean|er|uh|make that)"
    rf",? (?={_FIGURE}(?: and a half)? \1\b)"
)
# "quick one before i lose signal nine gallons".
_QUICK_ONE = re.compile(
    r"^(?:just )?(?:a )?(?:real )?quick (?:one|note|update|text|report)"
    rf"(?: (?:before|while|cuz|because) (?:i|my|we) [a-z ]{{1,30}}?)?[,:]? (?={_FIGURE} {_UNIT}\b)"
)
# "make that thirty one dollars i forgot the tax".
_WHY_IT_CHANGED = re.compile(
    r"^((?:make (?:that|it)|no|oops|sorry|actually|correction|it was|should be)\b"
    rf".*\b{_FIGURE}\b.*?),?(?: because| cause| cuz| since)?"
    r" i (?:forgot|missed|misread|miscounted|didn't count|left out)"
    r" (?:the|to|about|one|some|a)\b[^\d,.;]*$"
)
# "picked up some lids forgot what i paid".
_FORGOT_WHAT = re.compile(
    r",? (?:i )?(?:forgot|forget|can't remember|dont remember|don't remember) (?:what|how much)"
    r" (?:i|we|it) (?:paid|spent|cost|was)\b"
)
# "bottled at 190, 9 pts": how hot, where jars are counted.
_BOTTLED_HOT = re.compile(
    r"\b(bottled|canned|jarred|packed)(?: hot| it| it hot)? at (?:1[6-9]\d|20\d|21\d)"
    r"(?: ?(?:f|deg|degrees)(?: f)?)?\b,? (?=\d)"
)
# "the rest went in 5 half pints".
_WENT_IN_JARS = re.compile(
    r"\b(?:the )?(?:rest|remainder|last of it|leftover) (?:went|all went|got put|fit) in(?:to)? "
    r"(?=\d+ (?:half[ -])?(?:pints?|pts?|quarts?|qts?|jars|bottles)\b)"
)


def _of_trees(said: re.Match[str]) -> str:
    """`tree 3 ran 2 gal, 4 was dry`: tree 4."""
    return f"tree {said[1]}" if said.string.startswith("tree ") else said[1]


def _between_hours(said: re.Match[str]) -> str:
    """`boiled between 1 and 3 pm`: from one to the other; of all else it only says when."""
    return f" from {said[1]} to {said[2]}" if "boil" in said.string else ""


def _pulled_all(said: re.Match[str]) -> str:
    """`pulled all 120`: all of them; `pulled the last 14`: so many."""
    joint = ", " if said[0].startswith(",") else ""
    every = "all " if said[2] in ("all", "the whole") else ""
    return f"{joint}{said[1]} {every}{said[3]} taps"


# In this order (see `rewrites`).
_REWRITES: tuple[Rewrite, ...] = (
    (("forgive", "my ", "whoopsie", "pardon", "mea "), _FORGIVE, "sorry, "),
    (
        ("thing", "buddy", "pal", "bot", "helper", "machine", "computer", "keeper", "friend"),
        _SPOKEN_TO,
        r"\1, ",
    ),
    ((" i ", " we "), _WHEN_POURED, lambda said: f"{said[1]} {said[2].rstrip()}"),
    (("inch", "close to", " hair "), _NEARLY, "nearly dumped"),
    (
        ("befor", "when ", "as ", "after ", "while ", "till ", "until ", "by the time"),
        _BEFORE_IT,
        "",
    ),
    (("sorry", "apologies"), _EXCUSED, ""),
    (("oops", "mistake", "sorry"), _MISHAP, ""),
    (("actually",), _RAN_WELL, ""),
    ((" like ",), _LIKE_THEN, ""),
    ((" than ",), _THAN_THEN, ""),
    (("same as", "like"), _SAME_AS, ""),
    (("counting", "including"), _NOT_COUNTING, ""),
    (("low ", "high "), _LOW_TONIGHT, ""),
    (("mine", "ours"), _BESIDE_OURS, ""),
    (_AWAY, _ICE_AWAY, ""),
    (("finger",), _A_FINGER, ""),
    (("boiled",), _BOILED_WHAT, r"\1 \2"),
    ((" so ", "makes "), _SO_MUCH_IN_ALL, r"\1"),
    ((" no", " wait", " i mean", " er ", " uh ", "make that"), _SAID_ANEW, ""),
    (("quick ",), _QUICK_ONE, ""),
    ((" i forgot", " i mis", " i didn't", " i left"), _WHY_IT_CHANGED, r"\1"),
    (("forgot", "forget", "remember"), _FORGOT_WHAT, ""),
    ((" to say", " to report", " to tell", " to ann", " to inf"), _SORRY_TO_SAY, ""),
    (("tree ",), _APPOSED, lambda said: f"{said[1] or said[2]} "),
    (("cord", "lb", "pound"), _ATE_WOOD, r"\1 burned "),
    (("dumped",), _DUMPED_AND_GOT, "emptied "),
    ((" in ", " into "), _SPLIT_INTO, "bottled "),
    (("charged",), _CHARGED, "paid "),
    ((" on the", " on over"), _GONE_ON, r"\1 is on"),
    (("better", "ahead", "up or"), _BETTER_OR_WORSE, "are we "),
    (("tree ",), _TREES_IN_A_ROW, _of_trees),
    ((" maple",), _CALLED_TREE, r"\2: \1"),
    (("made ",), _MADE_THE_TANK, "went into the "),
    ((" at 1", " at 2"), _BOTTLED_HOT, r"\1 "),
    ((" in ", " into "), _WENT_IN_JARS, "bottled "),
    ((" as ", " into "), _AS_JARS, r"\1 "),
    ((" out of ", " from "), _OUT_OF_IT, r"\1"),
    (("picked up",), _PICKED_UP, "bought "),
    (("start to finish",), _START_TO_FINISH, r"\1, boiled \2"),
    (("start to finish",), _ALL_OF_IT, ""),
    ((" sap",), _ON_OUR_SAP, r"sap tested \1"),
    ((" in",), _ALL_TAPS_IN, r"set \1 \2"),
    (("emptying", "gathering", "collecting", "hauling"), _DONE_GATHERING, ""),
    ((" in",), _POURED_INTO, ""),
    (("through", "thru"), _STRAINED, "strained it"),
    (("boiling",), _ON_THE_PORCH, r"\1"),
    ((" on with ", " on, with "), _ON_WITH, r"boiling \1"),
    ((" ask ",), _DO_NOT_ASK, ", it cost plenty"),
    (("not sure",), _NOT_SURE_HOW_MUCH, ", a few"),
    (("call it",), _CALL_IT, ""),
    ((" in ",), _TAPS_IN_BY, r"set \1 \2 "),
    (("still ",), _REST_STILL_DRIP, ""),
    (("thermometer",), _THERMOMETER_IN, r"\1 temp "),
    (("twice",), _TWICE_ROUND, ""),
    (("boil",), _FUEL_ON_THE_BOIL, r"\1"),
    (("buddy ",), _BUDDY_SAP, "bad "),
    (("still ",), _STILL_GOT, ""),
    (("between ",), _BETWEEN_HOURS, _between_hours),
    (("kindly", "do ", "would you"), _KINDLY, "please "),
    (("with ",), _WITH_DRAWN, r", drew off \1 of syrup"),
    ((" to boil",), _STARTS, "started boiling"),
    (("pulled", "yanked"), _PULLED_ALL, _pulled_all),
    (("really",), _REALLY, r"\1 "),
    (("not ",), _NOT_MUCH, ""),
    (("not ",), _NOT_AS, lambda said: "" if said.start() == 0 else said["end"]),
)


def without_asides(text: str) -> str:
    """A tidy text without what is said in passing, its roundabout deeds in plain words."""
    return rewritten(text, _REWRITES)
